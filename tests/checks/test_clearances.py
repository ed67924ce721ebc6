"""Makers' clearances: `knowledge/heat.md`, sections 2 and 3; levels of the examples: `knowledge/worked-examples.md`."""

from __future__ import annotations

import json
from pathlib import Path

import msgspec
import pytest

from service.checks import Check, Verdict
from service.checks.clearances import (
    CLEAR_ABOVE,
    CLEAR_BEHIND,
    CLEAR_BESIDE,
    CLEAR_FRONT,
    OUTLET_TO_SCREEN,
    OUTLET_TO_SCREEN_USUAL,
    OUTLET_TO_SHELF,
    SCREEN_GAP,
    ZONE_BOARD,
    ZONE_TIMBER,
    clearance_checks,
    zone_checks,
)
from service.survey.wishes import Extra, ExtraKind
from tests.bill.bill_facts import SKIMMED, one_sided
from tests.checks.by_manual import by_manual, under_screen
from tests.checks.grounds import ground_of
from tests.checks.results import the_check, values, why_skipped
from tests.checks.words_of import reviewed, words_of
from tests.examples_of import changed
from tests.sold_examples import sold


@pytest.mark.parametrize(
    ("code", "asked", "there"),
    [
        (CLEAR_ABOVE, 10, 10),  # Az 490 less 480
        (CLEAR_BEHIND, 40, 105),  # D 435 less 330
        (CLEAR_FRONT, 1000, 3765),  # 4200 less 435
        (OUTLET_TO_SCREEN, 200, 730),  # worked-examples.md: (480 - 35) + 10 + 210 + 15 + 50
        (SCREEN_GAP, 50, 50),
    ],
)
def test_clearances_of_a(code: str, asked: float, there: float) -> None:
    """`knowledge/worked-examples.md`, example A."""
    found = the_check(clearance_checks, ground_of(sold("A")), code)

    assert (asked, there) == values(found)
    assert (Verdict.PASS, "") == (found.verdict, found.remedy)


def test_beside_a_fire() -> None:
    """Example B, open at the right: 5 beside the closed end; C: 5 each side; nothing stands beside glass at both ends."""
    b, c = (the_check(clearance_checks, ground_of(sold(name)), CLEAR_BESIDE) for name in ("B", "C"))

    assert (5, 5) == values(b)
    assert (5, 5) == values(c)
    assert "both ends" in why_skipped(clearance_checks, ground_of(sold("A")), CLEAR_BESIDE)


@pytest.mark.parametrize(
    ("figure", "code", "house"),
    [("clear_above_mm", CLEAR_ABOVE, 10), ("clear_side_mm", CLEAR_BESIDE, 5), ("clear_rear_mm", CLEAR_BEHIND, 50)],
)
def test_a_figure_that_the_manual_does_not_state_is_never_a_pass(figure: str, code: str, house: float) -> None:
    """`knowledge/worked-checks.md`, H8: null clearance in the appliance record: provisional."""
    found = the_check(clearance_checks, ground_of(by_manual(**{figure: None})), code)

    assert Verdict.PROVISIONAL is found.verdict
    assert house == found.demand.value
    assert "states no such gap" in found.unverified
    assert found.remedy


def test_a_gap_that_is_too_small_fails_with_the_gap_that_would_do() -> None:
    ground = ground_of(sold("A"))
    thick = msgspec.structs.replace(ground.job.appliance, clear_rear_mm=106)
    job = msgspec.structs.replace(ground.job, appliance=thick)
    found = the_check(clearance_checks, msgspec.structs.replace(ground, job=job), CLEAR_BEHIND)

    assert Verdict.FAIL is found.verdict
    assert "a gap of at least 106 mm" == found.remedy


def test_before_the_fire() -> None:
    """A shallow room fails by what is short; an untold one is no check; a silent manual leaves it open."""
    shallow = the_check(clearance_checks, ground_of(sold("A", survey__room__depth_mm=1500)), CLEAR_FRONT)  # 1500 less 435
    narrow = changed(by_manual(clear_front_mm=1500), {"/survey/room/depth_mm": 1700})
    failing = the_check(clearance_checks, ground_of(narrow), CLEAR_FRONT)
    silent = the_check(clearance_checks, ground_of(by_manual(clear_front_mm=None)), CLEAR_FRONT)

    assert Verdict.PASS is shallow.verdict
    assert (Verdict.FAIL, (1500, 1400)) == (failing.verdict, values(failing))
    assert "less deep by 100 mm" in failing.remedy
    assert Verdict.PROVISIONAL is silent.verdict
    assert "caution H14" in why_skipped(clearance_checks, ground_of(sold("C")), CLEAR_FRONT)


@pytest.mark.parametrize("figure", ["outlet_to_screen_least_mm", "outlet_height_mm"])
def test_a_silent_manual_leaves_outlet_to_screen_open(figure: str) -> None:
    found = the_check(clearance_checks, ground_of(under_screen(**{figure: None})), OUTLET_TO_SCREEN)

    assert Verdict.PROVISIONAL is found.verdict
    assert found.resistance is None
    assert "ask the maker" in found.remedy


@pytest.mark.parametrize(("upstand", "there", "verdict"), [(190, 300, Verdict.PROVISIONAL), (189, 299, Verdict.ADVISE)])
def test_a_rule_of_thumb_warns_where_the_maker_is_silent(upstand: int, there: int, verdict: Verdict) -> None:
    """(535 - 500) + 10 + u + 15 + 50, against 300: cautions.md, H03; it permits nothing."""
    request = changed(under_screen(outlet_to_screen_least_mm=None), {"/survey/brief/sill_above_appliance_mm": upstand})
    found = the_check(clearance_checks, ground_of(request), OUTLET_TO_SCREEN_USUAL)

    assert (300, there) == values(found)
    assert verdict is found.verdict
    assert not found.binding
    assert ("higher by 1 mm" in found.remedy) == (verdict is Verdict.ADVISE)


def test_where_no_outlet_needs_a_distance() -> None:
    low = ground_of(under_screen(outlet_to_screen_least_mm=None, outlet_position="front_bottom", outlet_height_mm=40))

    assert "no screen" in why_skipped(clearance_checks, ground_of(sold("C")), OUTLET_TO_SCREEN)
    assert "the maker's own distance" in why_skipped(clearance_checks, ground_of(sold("A")), OUTLET_TO_SCREEN_USUAL)
    assert "high in the face" in why_skipped(clearance_checks, low, OUTLET_TO_SCREEN_USUAL)
    cold = ground_of(under_screen(outlet_position="none", heat_output_w=0))
    assert "no warm air" in why_skipped(clearance_checks, cold, OUTLET_TO_SCREEN)


def test_a_shelf_over_the_fire_is_not_confirmed() -> None:
    """Cautions.md, H08: outside the manual's table, or no table."""
    ground = ground_of(sold("C"))
    brief = msgspec.structs.replace(ground.job.survey.brief, extras=(Extra(kind=ExtraKind.BEAM, depth_mm=150),))
    job = msgspec.structs.replace(ground.job, survey=msgspec.structs.replace(ground.job.survey, brief=brief))
    found = the_check(clearance_checks, msgspec.structs.replace(ground, job=job), OUTLET_TO_SHELF)

    assert Verdict.PROVISIONAL is found.verdict
    assert 300 == found.demand.value
    assert "no shelf" in why_skipped(clearance_checks, ground, OUTLET_TO_SHELF)


def test_a_screen_whose_maker_is_silent_about_air() -> None:
    stated = {
        "kind": "custom", "name": "s", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
        "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
    }  # fmt: skip
    found = the_check(clearance_checks, ground_of(sold("A", survey__brief__screen=stated)), SCREEN_GAP)

    assert Verdict.PROVISIONAL is found.verdict
    assert "ask the maker of the screen" == found.remedy
    assert "no screen" in why_skipped(clearance_checks, ground_of(sold("C")), SCREEN_GAP)


ZONE = {"/survey/brief/breast_depth_mm": 320}
CEMENT = {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2412X"}}


def test_a_board_that_burns_in_the_zone_fails_and_one_that_does_not_passes() -> None:
    """Heat.md 2: only calcium silicate or cement board may stand in the zone; demo AF-106: 100 mm."""
    wood = the_check(zone_checks, ground_of(changed(one_sided("AF-106"), ZONE)), ZONE_BOARD)
    stone = the_check(zone_checks, ground_of(changed(one_sided("AF-106"), {**ZONE, **CEMENT})), ZONE_BOARD)

    assert (Verdict.FAIL, (100, 0)) == (wood.verdict, values(wood))
    assert "for 100 mm" in wood.remedy
    assert (Verdict.PASS, (100, 100), "") == (stone.verdict, values(stone), stone.remedy)


def test_plasterboard_is_no_board_of_the_zone() -> None:
    gypsum = changed(one_sided("AF-106"), {**ZONE, **SKIMMED})

    assert Verdict.FAIL is the_check(zone_checks, ground_of(gypsum), ZONE_BOARD).verdict


def test_linings_of_the_recess_burn_too() -> None:
    """A zone of 200 over an opening whose recess begins 190 over it: the lining is MDF."""
    low = changed(under_screen(non_combustible_above_mm=200), CEMENT)
    found = the_check(zone_checks, ground_of(low), ZONE_BOARD)

    assert (Verdict.FAIL, (200, 190)) == (found.verdict, values(found))


def test_a_zone_beside_the_opening() -> None:
    found = zone_checks(ground_of(by_manual(non_combustible_above_mm=50, non_combustible_side_mm=80)))
    asked = {one.subject: one.demand.value for one in found if isinstance(one, Check)}

    assert {"boards over the opening": 50, "boards beside the opening": 80, "frame behind the zone": 80} == asked


@pytest.mark.parametrize(("said", "verdict"), [("yes", Verdict.PASS), ("no", Verdict.PROVISIONAL), (None, Verdict.PROVISIONAL)])
def test_only_the_maker_allows_timber_behind_the_zone(said: str | None, verdict: Verdict) -> None:
    request = by_manual(non_combustible_above_mm=50, timber_housing=said)
    found = the_check(zone_checks, ground_of(request), ZONE_TIMBER)

    assert verdict is found.verdict
    assert (verdict is Verdict.PASS) == (found.remedy == "")


def test_a_manual_without_a_zone() -> None:
    assert "names no zone" in why_skipped(zone_checks, ground_of(sold("A")), ZONE_BOARD)
    assert "names no zone" in why_skipped(zone_checks, ground_of(sold("A")), ZONE_TIMBER)


def test_the_words_are_those_that_were_read() -> None:
    assert reviewed("clearances") == words_of("clearances"), "python -m tests.checks.words_of, then read the diff"


def test_a_beam_that_is_laid_out_is_measured_from_the_outlet() -> None:
    """Beam 100 over the opening of A: its underside at 920 + 100, the outlet at 430 + 35: 555 mm (tests/examples/beam)."""
    request = json.loads(Path(__file__).parents[1].joinpath("examples", "beam", "request.json").read_text("utf-8"))
    whole = ground_of(request)
    for asked_mm, verdict in ((555.0, Verdict.PASS), (555.1, Verdict.FAIL)):
        appliance = msgspec.structs.replace(whole.job.appliance, outlet_to_shelf_least_mm=asked_mm)
        ground = msgspec.structs.replace(whole, job=msgspec.structs.replace(whole.job, appliance=appliance))
        found = next(one for one in clearance_checks(ground) if one.code == OUTLET_TO_SHELF)

        assert isinstance(found, Check)
        assert verdict is found.verdict
