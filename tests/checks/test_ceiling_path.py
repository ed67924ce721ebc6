from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.ceiling_path import JOIST, LIFT, ROW, SHEAR
from service.checks.check import Check, Verdict
from service.checks.hanging import hanging_checks
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import OFF, example, on_wall, with_screen_of, with_wall_load
from tests.checks.results import the_check, values, why_skipped
from tests.sold_examples import ADDITIONS, sold

if TYPE_CHECKING:
    from service.checks.ground import Ground


def of(ground: Ground, code: str, subject: str = "") -> Check:
    return the_check(hanging_checks, ground, code, subject)


def with_screw(ground: Ground, **figures: object) -> Ground:
    screw = ground.hardware.ceiling_screw
    assert screw is not None
    changed = msgspec.structs.replace(screw, **figures)
    return msgspec.structs.replace(ground, hardware=msgspec.structs.replace(ground.hardware, ceiling_screw=changed))


def on_the_ceiling(ground: Ground) -> Ground:
    """The same frame where the wall bears its weight only, so that the ceiling is the main path and binds."""
    return with_wall_load(ground, 0.15, 0.25)


def test_worked_example() -> None:
    """worked-examples.md, A: front row 703.2 of 3716 N, 0.189; per joist 228.4 of 300 N, 0.761."""
    front, joist = of(example("A"), ROW, "U-TF1"), of(example("A"), JOIST)

    assert pytest.approx((703.2, 3716), rel=2e-4) == values(front)
    assert pytest.approx((228.4, 300), abs=0.1) == values(joist)
    assert (0.19, 0.77) == (front.utilisation_ratio, joist.utilisation_ratio)  # 0.189 and 0.761, rounded up
    assert Verdict.PASS is of(example("A"), ROW, "U-TR1").verdict


def test_joists_along_the_wall_give_no_path() -> None:
    assert "the joists run along the wall" in why_skipped(hanging_checks, example("B"), ROW)


@pytest.mark.parametrize(
    ("kind", "why"),
    [("truss_tie", "ask a structural engineer"), ("suspended_grid", "carries nothing"), ("unknown", "is not known"),
     ("concrete_cast", "the layout puts no screws")],
)  # fmt: skip
def test_ceilings_that_take_no_screws(kind: str, why: str) -> None:
    ground = ground_of(sold("A", survey__ceiling__kind=kind), ADDITIONS["A"], OFF)

    assert why in why_skipped(hanging_checks, ground, ROW)


def test_joists_that_nobody_found() -> None:
    ground = ground_of(sold("A", survey__ceiling__joist_positions_mm=[]), ADDITIONS["A"], OFF)

    assert "no joist over the breast was found" in why_skipped(hanging_checks, ground, ROW)


def test_too_few_joists_count_for_nothing_where_the_wall_is_enough() -> None:
    """structure.md, 5.1: 914 N on 2 joists are more than 300 each; the wall alone shows 0.366."""
    ground = ground_of(sold("A", survey__ceiling__joist_positions_mm=[1750, 2150]), ADDITIONS["A"], OFF)
    check = of(ground, JOIST)

    assert (Verdict.ADVISE, "at least 4 joists, the wall alone, or a structural engineer's word") == (check.verdict, check.remedy)
    assert Verdict.FAIL is of(with_wall_load(ground, 0.2, 0.5), JOIST).verdict


def test_the_remedy_of_a_small_head_passes() -> None:
    """fixings.md, section 5: washers of at least x mm, or so many more screws."""
    weak = with_screw(on_the_ceiling(example("A")), head_diameter_mm=5.0)
    check = of(weak, ROW, "U-TF1")
    washer_mm = int(check.remedy.partition("washers of at least ")[2].split()[0])

    assert Verdict.FAIL is check.verdict
    assert of(with_screw(weak, head_diameter_mm=float(washer_mm)), ROW, "U-TF1").holds
    assert not of(with_screw(weak, head_diameter_mm=washer_mm - 1.0), ROW, "U-TF1").holds


def test_the_remedy_of_a_short_thread_passes() -> None:
    weak = with_screw(on_the_ceiling(example("A")), length_mm=70.0)
    check = of(weak, ROW, "U-TF1")
    more_mm = int(check.remedy.partition(" mm more thread")[0].split()[-1])

    assert Verdict.FAIL is check.verdict
    assert of(with_screw(weak, length_mm=70.0 + more_mm), ROW, "U-TF1").holds


def test_a_head_and_a_thread_that_are_both_too_weak_are_mended_together() -> None:
    weak = with_screw(on_the_ceiling(example("A")), length_mm=70.0, head_diameter_mm=3.0)
    remedy = of(weak, ROW, "U-TF1").remedy
    washer_mm = int(remedy.partition("washers of at least ")[2].split()[0])
    more_mm = int(remedy.partition(" mm more thread")[0].split()[-1])

    assert " mm and " in remedy
    assert of(with_screw(weak, length_mm=70.0 + more_mm, head_diameter_mm=float(washer_mm)), ROW, "U-TF1").holds
    assert not of(with_screw(weak, length_mm=70.0 + more_mm), ROW, "U-TF1").holds


def test_no_screw_is_sold() -> None:
    ground = on_the_ceiling(example("A"))
    bare = msgspec.structs.replace(ground, hardware=msgspec.structs.replace(ground.hardware, ceiling_screw=None))

    assert "no screw that is sold" in of(bare, ROW, "U-TF1").remedy


def test_a_row_that_lifts() -> None:
    """worked-checks.md, H5: the load acts outside the rows."""
    ground = example("A")
    screws = tuple(
        msgspec.structs.replace(one, y_tenth_mm=3200 if one.y_tenth_mm < 1000 else one.y_tenth_mm)
        for one in ground.frame.ceiling_screws
    )
    behind = msgspec.structs.replace(ground, frame=msgspec.structs.replace(ground.frame, ceiling_screws=screws))
    check = of(behind, LIFT)

    assert ("one row lifts" in check.says, False) == (True, check.holds)
    assert Verdict.PASS is of(ground, LIFT).verdict


def test_the_ceiling_alone_is_used_to_a_half_and_takes_the_pull_on_the_face() -> None:
    """structure.md, 5.1: a single path within 0.50; H on the rows and in shear where no wall takes it."""
    alone = on_wall("boarded_behind_plasterboard")
    pulled, sheared = of(alone, ROW, "U-TF1"), of(alone, SHEAR)

    assert "used to 0.5 at most" in pulled.says
    assert values(pulled)[0] > 1.5 * 678.5 * 1315 / 331  # the pull on the face alone
    assert pytest.approx(1.5 * 678.5 / 8) == sheared.demand.value
    assert "the wall takes a pull on the face" == why_skipped(hanging_checks, example("A"), SHEAR)


def test_heavier_is_never_less() -> None:
    rows = [of(with_screen_of(example("A"), mass_kg), ROW, "U-TF1").demand.value for mass_kg in (5, 9.5, 20, 40)]

    assert all(lighter < heavier for lighter, heavier in pairwise(rows))
    assert all(map(math.isfinite, rows))


def test_part_height_and_standing() -> None:
    assert "no end is open" in why_skipped(hanging_checks, example("C"), ROW)
    low = ground_of(
        sold("A", survey__brief__top={"kind": "part_height", "height_mm": 2100}, survey__services__cable_scan="done"),
        ADDITIONS["A"],
        OFF,
    )

    assert "the breast ends below the ceiling" == why_skipped(hanging_checks, low, ROW)
