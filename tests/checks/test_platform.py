"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A, B and C, at their printed precision."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.checks.check import Verdict
from service.checks.platform import BEARING, BENDING, JACK, SAG, SHEAR, UPRIGHT, platform_checks
from tests.checks.after_checks import after_checks, check_of, checks_of, exact_ratio, of_additions, of_job, skipped_of
from tests.engineering.beam_model import beam

if TYPE_CHECKING:
    from service.checks.ground import Ground


@pytest.mark.parametrize(("example", "expected"), [("A", 0.587), ("B", 0.479), ("C", 0.593)])
def test_rail_between_stations(example: str, expected: float) -> None:
    assert pytest.approx(expected, abs=0.0006) == exact_ratio(check_of(platform_checks, after_checks(example), BENDING))


def test_moment_and_sag_against_a_finite_element_beam() -> None:
    """PyNiteFEA: 429.7 mm with 1.35 x 137.0 N and 1500 N at mid bay; worked-examples.md, A: 181.0 N m."""
    bending, sag = (check_of(platform_checks, after_checks("A"), code) for code in (BENDING, SAG))
    stiffness = 8000 * 89 * 38**3 / 12
    found = beam(429.7, stiffness, points=((1.35 * 137.0 + 1500, 429.7 / 2),))
    sagged = beam(429.7, stiffness, points=((1.6 * 137.0 + 1000, 429.7 / 2),))

    assert pytest.approx(found.moment_n_mm, rel=1e-3) == bending.demand.value
    assert pytest.approx(sagged.middle_sag_mm, rel=1e-3) == sag.demand.value


def test_jack_between_uprights() -> None:
    """By hand, C: the jack at x 201.5 stands 140.8 from the upright at 342.3, bay 323.3, 74.8 N of a foot at mid bay."""
    left, right = checks_of(platform_checks(after_checks("C")), JACK)
    end_n = 1.35 * 0.1126 * 770 / 2 + 1500
    by_hand = end_n * 140.8 * 182.5 / 323.3 + 1.35 * 74.8 * 323.3 / 4

    assert pytest.approx(by_hand, rel=1e-3) == left.demand.value
    assert right.demand.value < left.demand.value


def test_a_platform_that_lies_on_the_floor_bends_nowhere() -> None:
    assert {BENDING, JACK, SHEAR, SAG, BEARING, UPRIGHT} == set(skipped_of(platform_checks, after_checks("C0")))
    assert {JACK} == set(skipped_of(platform_checks, after_checks("A")))


def test_pressure_on_rails() -> None:
    """By hand, A: 1.35 x 137.0 + 1500 N on (38 + 30) x 89 at the end of the rail, 2.2 x 0.9 / 1.3 MPa across the grain."""
    outer, inner = checks_of(platform_checks(after_checks("A")), BEARING)

    assert pytest.approx(1684.9 / (68 * 89 * 2.2 * 0.9 / 1.3), rel=1e-3) == exact_ratio(outer)
    assert pytest.approx(68 / 98) == exact_ratio(inner) / exact_ratio(outer)


def test_packers_narrower_than_the_rail_press_more() -> None:
    """B: packers of 3, 6 and 9 mm under the fall of the floor."""
    ground = after_checks("B")
    wide = of_additions(ground, wide_packers=True)
    before, after = (checks_of(platform_checks(one), BEARING)[1] for one in (ground, wide))

    assert exact_ratio(after) < exact_ratio(before)


def test_feet_over_uprights_leave_the_person_only() -> None:
    over = of_additions(after_checks("A"), foot_stations=True)

    assert pytest.approx(1500 * 429.7 / 4) == check_of(platform_checks, over, BENDING).demand.value


def test_bay_that_the_remedy_names_would_pass() -> None:
    """A fire of 200 kg on A: the moment grows with the bay, so the widest bay follows from the utilisation."""
    failing = check_of(platform_checks, _fire_of(600.0), BENDING)
    bay_mm = float(failing.remedy.split(" mm")[0].rsplit(" ", 1)[1])

    assert Verdict.FAIL is failing.verdict
    assert exact_ratio(failing) * bay_mm / 429.7 <= 1 < exact_ratio(failing) * (bay_mm + 1) / 429.7


def test_every_remedy_says_a_number() -> None:
    heavy = platform_checks(_fire_of(60_000.0))

    assert {Verdict.FAIL} == {one.verdict for code in (BENDING, SAG, SHEAR, BEARING) for one in checks_of(heavy, code)}
    assert all(one.remedy for code in (BENDING, SAG, SHEAR, BEARING, UPRIGHT) for one in checks_of(heavy, code))


def _fire_of(mass_kg: float) -> Ground:
    ground = after_checks("A")
    return of_job(ground, appliance=msgspec.structs.replace(ground.job.appliance, mass_kg=mass_kg))


@given(st.floats(3, 200), st.floats(3, 200))
def test_a_heavier_fire_never_helps(one_kg: float, other_kg: float) -> None:
    light, heavy = (platform_checks(_fire_of(mass_kg)) for mass_kg in sorted((one_kg, other_kg)))

    for code in (BENDING, SHEAR, SAG, BEARING, UPRIGHT):
        for before, after in zip(checks_of(light, code), checks_of(heavy, code), strict=True):
            assert exact_ratio(after) >= exact_ratio(before)
