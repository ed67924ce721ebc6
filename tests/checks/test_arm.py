"""Source of the figures: `knowledge/worked-checks.md`, D1, D2 and A16; otherwise by hand."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.checks.arm import (
    ACCIDENT,
    BEARER,
    CODES,
    HOST,
    PULL,
    SIDEWAYS,
    accidental,
    arm_checks,
    fixing_of,
    persistent,
)
from service.checks.bearer_load import bearer_load
from service.checks.check import Verdict
from service.engineering import fixing_groups
from service.rules import LoadDuration
from service.survey.wall import WallConstruction
from tests.checks.after_checks import after_checks, check_of, checks_of, exact_ratio, of_job, skipped_of
from tests.checks.grounds import ground_of, rules_without_ladder
from tests.examples_of import changed, example_a

if TYPE_CHECKING:
    from service.checks.bearer_load import BearerLoad
    from service.checks.ground import Ground

ARM = {"/survey/brief/screen_bracket": {"kind": "catalogue", "model": "BK-605"}, "/survey/brief/breast_depth_mm": 520}


@cache
def armed() -> Ground:
    """Example A, deeper, with an arm of 510 mm."""
    return ground_of(changed(example_a(), ARM), rules=rules_without_ladder())


def _load(ground: Ground) -> BearerLoad:
    load = bearer_load(ground)
    assert load is not None
    return load


def test_loads_of_a_screen_of_29_kg() -> None:
    """D1: 683.93 N with a hand of 0.2 kN; D2: 3 x 284.39 N and its own weight in an accident, T 2417.3 N at e 0.51, z 0.24."""
    load = msgspec.structs.replace(_load(armed()), screen_n=29 * 9.80665)
    lasting, accident = persistent(load, armed()), accidental(load, armed())

    assert pytest.approx(683.93, rel=1e-4) == lasting.load_n
    assert pytest.approx(4 * 284.39, rel=1e-4) == accident.load_n
    assert pytest.approx(726.68, rel=1e-3) == fixing_groups.prying_tension_n(lasting.load_n, 510, 240, 2)
    assert pytest.approx(1208.7, rel=1e-3) == fixing_groups.prying_tension_n(accident.load_n, 510, 240, 2)
    assert (LoadDuration.SHORT, LoadDuration.INSTANTANEOUS) == (lasting.duration, accident.duration)


def test_pull_on_the_top_fixings() -> None:
    """By hand: 17.3 kg, e = 18 + 510 + 37 mm, z 240 mm, two fixings in the top row."""
    found = {one.symbol: one.value for one in check_of(arm_checks, armed(), PULL).inputs}
    load_n = 1.35 * 17.3 * 9.80665 + 300

    assert pytest.approx(load_n) == found["F_d"]
    assert pytest.approx(load_n * 565 / 240 / 2) == found["T_d"]
    assert pytest.approx(load_n / 4) == found["V_d"]


def test_fall_back_screw() -> None:
    """By hand: 8.5 MPa x 8 x (38 - 8) mm at (310 / 350)^0.8."""
    assert pytest.approx(8.5 * 8 * 30 * (310 / 350) ** 0.8) == fixing_of(_load(armed()), armed()).pull_n


def test_fixings_of_the_maker_are_never_a_pass() -> None:
    results = arm_checks(armed())

    assert {Verdict.PROVISIONAL} == {one.verdict for code in (PULL, ACCIDENT, SIDEWAYS) for one in checks_of(results, code)}
    assert all(one.remedy for code in (PULL, ACCIDENT, SIDEWAYS) for one in checks_of(results, code))


def test_swung_along_the_wall() -> None:
    """By hand: the weight at 565 mm turns the plate about two fixings 200 mm apart, and each has a quarter of it besides."""
    load_n = 1.35 * 17.3 * 9.80665 + 300

    assert pytest.approx(load_n * 565 / 200 / 2 + load_n / 4) == check_of(arm_checks, armed(), SIDEWAYS).demand.value


def test_top_bearer_under_the_arm() -> None:
    found = check_of(arm_checks, armed(), BEARER)

    assert Verdict.FAIL is found.verdict
    assert "bearers of C24" == found.remedy


def test_a_heavy_screen_on_an_arm_wants_bolts() -> None:
    ground = _of_screen(60.0)
    found = check_of(arm_checks, ground, ACCIDENT)

    assert exact_ratio(found) < exact_ratio(check_of(arm_checks, _of_screen(300.0), ACCIDENT))
    assert (
        "bolts through bearer and backboard with washers of at least" in check_of(arm_checks, _of_screen(300.0), ACCIDENT).remedy
    )


@pytest.mark.parametrize(
    ("wall", "studs", "expected"),
    [
        (WallConstruction.SOLID_BRICK, None, Verdict.PASS),
        (WallConstruction.UNKNOWN, None, Verdict.PROVISIONAL),
        (WallConstruction.TIMBER_STUD, None, Verdict.PROVISIONAL),
        (WallConstruction.TIMBER_STUD, (), Verdict.FAIL),
        (WallConstruction.TIMBER_STUD, (2000, 6000), Verdict.PASS),
        (WallConstruction.TIMBER_STUD, (2000, 90_000), Verdict.FAIL),
        (WallConstruction.STEEL_STUD, (2000, 6000), Verdict.FAIL),
        (WallConstruction.BOARDED_BEHIND_PLASTERBOARD, None, Verdict.FAIL),
    ],
)
def test_host_walls(wall: WallConstruction, studs: tuple[int, ...] | None, expected: Verdict) -> None:
    """fixings.md, 2.1 and 2.5: never arms on steel studs, nothing on plasterboard alone; worked-checks.md, H4."""
    found = check_of(arm_checks, of_job(armed(), wall_construction=wall, studs_tenth_mm=studs), HOST)

    assert expected is found.verdict
    assert bool(found.remedy) is (expected is not Verdict.PASS)


def test_flat_brackets_have_no_arm() -> None:
    assert set(CODES) == set(skipped_of(arm_checks, after_checks("A")))
    assert set(CODES) == set(skipped_of(arm_checks, after_checks("C")))


def _of_screen(mass_kg: float) -> Ground:
    ground = armed()
    assert ground.job.screen is not None
    return of_job(ground, screen=msgspec.structs.replace(ground.job.screen, mass_kg=mass_kg))


@given(st.floats(1, 60), st.floats(1, 60))
def test_a_heavier_screen_never_helps(one_kg: float, other_kg: float) -> None:
    light, heavy = (arm_checks(_of_screen(mass_kg)) for mass_kg in sorted((one_kg, other_kg)))

    for code in (PULL, ACCIDENT, SIDEWAYS, BEARER):
        for before, after in zip(checks_of(light, code), checks_of(heavy, code), strict=True):
            assert exact_ratio(after) >= exact_ratio(before)
