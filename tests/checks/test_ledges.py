"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A, B and C, at their printed precision."""

from __future__ import annotations

import json
from pathlib import Path

import msgspec
import pytest

from service.checks.check import Verdict
from service.checks.ledges import (
    SHELF,
    SILL,
    SILL_SAG,
    SILL_SHEAR,
    Ledge,
    bend_ledge,
    ledge_checks,
    ledge_of,
    sag_ledge,
    shear_ledge,
    shelf_checks,
)
from service.checks.timber import Beam, of_roles
from service.engineering import fixing_groups
from service.frame import Role
from service.rules import load_rules
from service.survey.wishes import Extra, ExtraKind
from tests.checks.after_checks import after_checks, check_of, checks_of, exact_ratio, skipped_of, wished
from tests.checks.grounds import ground_of
from tests.engineering.beam_model import beam

C16 = load_rules().strength_class("C16")


@pytest.mark.parametrize(("example", "expected"), [("A", 0.688), ("B", 0.436), ("C", 0.555)])
def test_sill_or_rail_at_the_upstand(example: str, expected: float) -> None:
    assert pytest.approx(expected, abs=0.0006) == exact_ratio(check_of(ledge_checks, after_checks(example), SILL))


def test_moment_and_sag_against_a_finite_element_beam() -> None:
    """PyNiteFEA: the sill of A between cripples 566 apart, 1.5 kN and 1.0 kN at mid bay."""
    stiffness = 8000 * 89 * 38**3 / 12
    bending, sag = (check_of(ledge_checks, after_checks("A"), code) for code in (SILL, SILL_SAG))

    assert pytest.approx(beam(566, stiffness, points=((1500, 283),)).moment_n_mm, rel=1e-4) == bending.demand.value
    assert pytest.approx(beam(566, stiffness, points=((1000, 283),)).middle_sag_mm, rel=1e-4) == sag.demand.value


def test_shear_beside_a_support() -> None:
    """By hand: 1.5 kN on 2/3 x 0.67 x 38 x 89 mm2 of 3.2 x 0.9 / 1.3 MPa."""
    by_hand = 1500 / (2 / 3 * 0.67 * 38 * 89 * 3.2 * 0.9 / 1.3)

    assert pytest.approx(by_hand) == exact_ratio(check_of(ledge_checks, after_checks("A"), SILL_SHEAR))


def test_remedies_pass() -> None:
    """A remedy applied makes that check pass: the bay that is named, not a millimetre more."""
    ground, ledge = after_checks("A"), Ledge("U-S1", Beam(89, 38, C16), 1200.0, 1000.0)
    for run in (bend_ledge, sag_ledge):
        failing = run(SILL, ledge, ground)
        bay_mm = float(failing.remedy.split(" mm")[0].rsplit(" ", 1)[1])

        assert Verdict.FAIL is failing.verdict
        assert exact_ratio(run(SILL, ledge._replace(bay_mm=bay_mm), ground)) <= 1
        assert exact_ratio(run(SILL, ledge._replace(bay_mm=bay_mm + 1), ground)) > 1
    assert "or of C22" in bend_ledge(SILL, ledge._replace(bay_mm=1050.0), ground).remedy
    assert "a thicker rail" == shear_ledge(SILL, ledge._replace(load_n=5000.0), ground).remedy


def test_fixings_that_do_not_count_leave_a_rear_rail_not_verified() -> None:
    whole = after_checks("C")
    rail = of_roles(whole, Role.TOP_RAIL_REAR)[0]
    fixings = tuple(msgspec.structs.replace(one, counted=False) for one in whole.frame.wall_fixings)
    ground = msgspec.structs.replace(whole, frame=msgspec.structs.replace(whole.frame, wall_fixings=fixings))

    assert not ledge_of(rail, 1000.0, whole).unverified
    assert ledge_of(rail, 1000.0, ground).unverified
    assert ledge_of(rail, 1000.0, whole).bay_mm == ledge_of(rail, 1000.0, ground).bay_mm


def test_pull_on_a_shelf() -> None:
    """worked-checks.md, D7: 1.0 kN at 220 mm, z 180 mm, 2 brackets: 916.67 N per top fixing."""
    shelf = Extra(kind=ExtraKind.SHELF, width_mm=600, height_mm=180, depth_mm=220)
    (found,) = checks_of(shelf_checks(wished(after_checks("A"), extras=(shelf,))), SHELF)

    assert pytest.approx(916.67, rel=1e-4) == found.demand.value == fixing_groups.prying_tension_n(1500, 220, 180, 2)
    assert Verdict.PROVISIONAL is found.verdict
    assert "brackets at 2 studs with at least 917 N of pull each" == found.remedy


def test_a_shelf_of_unknown_size_is_taken_deep_and_thin() -> None:
    (found,) = checks_of(shelf_checks(wished(after_checks("A"), extras=(Extra(kind=ExtraKind.BEAM),))), SHELF)

    assert pytest.approx(1500 * 300 / 40 / 2) == found.demand.value


def test_no_shelf() -> None:
    assert {SHELF} == set(skipped_of(shelf_checks, after_checks("A")))


def test_a_beam_that_is_laid_out_hangs_on_the_studs_that_it_crosses() -> None:
    request = json.loads(Path(__file__).parents[1].joinpath("examples", "beam", "request.json").read_text("utf-8"))
    ground = ground_of(request)
    (found,) = checks_of(shelf_checks(ground), SHELF)

    assert 4 <= ground.frame.ledges[0].fixings_count == int(found.inputs[-1].value)
