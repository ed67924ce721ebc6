"""The hidden face of an outside wall: `knowledge/heat.md`, section 7; `knowledge/worked-checks.md`, E7 to E9."""

from __future__ import annotations

import re
from typing import Any

import msgspec
import pytest

from service.checks import Verdict
from service.checks.cold_wall import DEW_POINT, MOULD, damp_checks
from tests.checks.grounds import ground_of
from tests.checks.results import the_check, values, why_skipped
from tests.checks.words_of import reviewed, words_of
from tests.sold_examples import sold


def outside(build: str = "solid", **more: object) -> dict[str, Any]:
    changes = {"survey__wall__external": True, "survey__wall__external_build": build, **more}
    return sold("A", **changes)


def test_the_face_of_a_solid_wall() -> None:
    """E8 with 15 mm MDF and 15 mm plaster in place of 18 and 13, by hand: sum of layers; E9: dew point 9.2552 degrees."""
    found = the_check(damp_checks, ground_of(outside()), DEW_POINT)
    before = 0.13 + 0.015 / 0.14 + 0.18
    total = before + 0.015 / 0.57 + 0.215 / 0.77 + 0.04

    assert pytest.approx(9.2552, abs=0.05) == found.demand.value
    assert pytest.approx(20 - 20 * before / total, abs=1e-3) == values(found)[1]
    assert Verdict.ADVISE is found.verdict


def test_the_insulation_named_would_do() -> None:
    """Put back: the hidden face of the wool lies behind board and void, the wool before the wall."""
    before = 0.13 + 0.015 / 0.14 + 0.18
    total = before + 0.015 / 0.57 + 0.215 / 0.77 + 0.04
    found = [the_check(damp_checks, ground_of(outside()), code) for code in (DEW_POINT, MOULD)]
    thick_mm = [float(re.findall(r"or (\d+) mm of mineral wool", one.remedy)[0]) for one in found]
    kept = [1 - before / (total + thick / 1000 / 0.037) for thick in thick_mm]
    thinner = [1 - before / (total + (thick - 5) / 1000 / 0.037) for thick in thick_mm]

    assert kept[0] * 20 >= 9.2552
    assert kept[1] >= 0.75 > thinner[1]
    assert thinner[0] * 20 < 9.2552


def test_a_thicker_wall_stays_warmer_and_an_unknown_one_is_assumed() -> None:
    thick = the_check(damp_checks, ground_of(outside(survey__wall__thickness_mm=450)), DEW_POINT)
    untold = the_check(damp_checks, ground_of(outside(survey__wall__thickness_mm=None)), DEW_POINT)
    unknown = the_check(damp_checks, ground_of(outside("unknown", survey__wall__thickness_mm=None)), MOULD)

    assert Verdict.PASS is thick.verdict
    assert "" == thick.remedy
    assert "a wall of 215 mm is assumed" == untold.unverified
    assert "a wall of 215 mm is assumed, solid brick is assumed" == unknown.unverified


def test_an_open_cavity_keeps_the_face_dry_but_is_assumed() -> None:
    """Two leaves of 102.5 and a cavity of 0.18: the sum by hand."""
    found = the_check(damp_checks, ground_of(outside("cavity_open")), DEW_POINT)
    before = 0.13 + 0.015 / 0.14 + 0.18
    total = before + 0.015 / 0.57 + 2 * 0.1025 / 0.77 + 0.18 + 0.04

    assert pytest.approx(20 - 20 * before / total, abs=1e-3) == values(found)[1]
    assert (Verdict.PROVISIONAL, "find out how the outside wall is built") == (found.verdict, found.remedy)


@pytest.mark.parametrize("build", ["cavity_insulated", "timber_frame"])
def test_insulated_walls_are_not_reckoned(build: str) -> None:
    assert "stays warm enough" in why_skipped(damp_checks, ground_of(outside(build)), DEW_POINT)


def test_an_inside_wall() -> None:
    assert "no outside wall" in why_skipped(damp_checks, ground_of(sold("A")), DEW_POINT)
    assert "no outside wall" in why_skipped(damp_checks, ground_of(sold("A")), MOULD)


def test_plasterboard_before_the_void() -> None:
    """Example B: 12.5 mm of plasterboard at 0.21."""
    changes = {"survey__wall__external": True, "survey__wall__external_build": "solid"}
    found = the_check(damp_checks, ground_of(sold("B", **changes)), MOULD)

    assert pytest.approx(0.13 + 0.0125 / 0.21 + 0.18) == found.inputs[0].value


def test_the_words_are_those_that_were_read() -> None:
    assert reviewed("cold_wall") == words_of("cold_wall"), "python -m tests.checks.words_of, then read the diff"


def test_a_colder_day_wants_more_wool() -> None:
    """Put back at 10 degrees below: the face reaches the dew point with the wool that is named, not with 5 mm less."""
    ground = ground_of(outside())
    colder = msgspec.structs.replace(ground.rules.heat, damp_outside_deg_c=-10.0)
    found = the_check(
        damp_checks, msgspec.structs.replace(ground, rules=msgspec.structs.replace(ground.rules, heat=colder)), DEW_POINT
    )
    before = 0.13 + 0.015 / 0.14 + 0.18
    total = before + 0.015 / 0.57 + 0.215 / 0.77 + 0.04
    thick_mm = float(re.findall(r"or (\d+) mm of mineral wool", found.remedy)[0])
    face = [20 - 30 * before / (total + thick / 1000 / 0.037) for thick in (thick_mm, thick_mm - 5)]

    assert face[0] >= 9.2552 > face[1]
