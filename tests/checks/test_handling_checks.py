"""Ways in, raising, lifting: `knowledge/handling.md`; `knowledge/worked-checks.md`, G1 to G8."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.checks import Check, Verdict
from service.checks.handling_checks import (
    BAR,
    BOARD,
    BOARDS,
    CARTON,
    HEIGHT,
    LIFT,
    LIFT_END,
    REPLACEMENT,
    TILT,
    corner_mm,
    lifting_checks,
    replacement_checks,
    way_in_checks,
)
from service.survey.site import RouteKind, RoutePart
from tests.bill.bill_facts import one_sided
from tests.checks.grounds import ground_of
from tests.checks.results import the_check, values, why_skipped
from tests.checks.words_of import reviewed, words_of
from tests.examples_of import changed
from tests.sold_examples import sold


def route(*parts: tuple[str, float]) -> list[dict[str, Any]]:
    return [{"kind": kind, "width_mm": width} for kind, width in parts]


def test_the_corner_of_two_corridors() -> None:
    """Published, G1: corridors of 2 and 3 let 7.0234824 through (moving ladder); margins of 20 each side are added here."""
    parts = (RoutePart(kind=RouteKind.CORRIDOR, width_mm=2040), RoutePart(kind=RouteKind.LANDING, width_mm=3040))

    assert pytest.approx(7023.4824, abs=1e-3) == corner_mm(parts, 0.0, 20.0)


def test_a_board_on_edge_turns_shorter() -> None:
    """G4: 1.05 and 0.86 m, thickness 0.11: 2.4761 m."""
    parts = (RoutePart(kind=RouteKind.CORRIDOR, width_mm=1090), RoutePart(kind=RouteKind.DOOR, width_mm=900))

    assert pytest.approx(2476.1, abs=0.1) == corner_mm(parts, 110.0, 20.0)


def test_doors_in_a_row_are_no_corner() -> None:
    doors = (RoutePart(kind=RouteKind.DOOR, width_mm=800), RoutePart(kind=RouteKind.DOOR, width_mm=760))

    assert corner_mm(doors, 0.0, 20.0) is None
    assert corner_mm((), 0.0, 20.0) is None


def test_bars_and_boards_of_a() -> None:
    """Longest member 1585 and 20 for the measure; longest panel 1595 (worked-examples.md); the site lets 4800 and 2440 in."""
    bar, board = (the_check(way_in_checks, ground_of(sold("A")), code) for code in (BAR, BOARD))

    assert (1605, 4800) == values(bar)
    assert (1595, 2440) == values(board)
    assert [Verdict.PASS] * 2 == [bar.verdict, board.verdict]


def test_a_tight_corner_fails_with_the_length_that_passes() -> None:
    """Two corridors of 600 less margins: 2 sqrt(2) 560 less twice the thickness (G3): 1508 for 38, 1554 for 15."""
    ground = ground_of(sold("A", survey__site__route=route(("corridor", 600), ("corridor", 600))))
    bar, board = (the_check(way_in_checks, ground, code) for code in (BAR, BOARD))

    assert [pytest.approx(560 * 8**0.5 - 2 * thick, abs=0.01) for thick in (38, 15)] == [values(one)[1] for one in (bar, board)]
    assert [Verdict.FAIL] * 2 == [bar.verdict, board.verdict]
    assert "at most 1508 mm" in bar.remedy
    assert "at most 1554 mm" in board.remedy
    assert bar.says.startswith("a corner of the way in")


def test_a_wide_corner_leaves_what_was_told() -> None:
    ground = ground_of(sold("A", survey__site__route=route(("corridor", 3000), ("corridor", 3000))))

    assert 4800 == values(the_check(way_in_checks, ground, BAR))[1]


@pytest.mark.parametrize(
    ("field", "code"), [("longest_length_mm", BAR), ("largest_board_length_mm", BOARD), ("narrowest_door_mm", CARTON)]
)
def test_a_way_in_that_was_not_told_is_not_verified(field: str, code: str) -> None:
    found = the_check(way_in_checks, ground_of(sold("A", **{f"survey__site__{field}": None})), code)

    assert Verdict.PROVISIONAL is found.verdict
    assert found.remedy.startswith("measure")


@pytest.mark.parametrize(("door", "verdict"), [(510, Verdict.PASS), (509, Verdict.FAIL)])
def test_the_carton_of_the_fire(door: float, verdict: Verdict) -> None:
    """Survey.md 9: body and 150 each way; A: 330 + 150 and 30 of margin."""
    found = the_check(way_in_checks, ground_of(sold("A", survey__site__narrowest_door_mm=door)), CARTON)

    assert (verdict, 480) == (found.verdict, found.demand.value)
    assert ("unpack" in found.remedy) == (verdict is Verdict.FAIL)


def test_a_door_of_the_route_may_be_the_narrowest() -> None:
    found = the_check(way_in_checks, ground_of(sold("A", survey__site__route=route(("door", 500), ("stair", 800)))), CARTON)

    assert (480, 470) == values(found)


def test_raising_the_frame() -> None:
    """Worked-examples.md, A: diagonal 1639.7 under 2500; G6: sqrt(room^2 - depth^2)."""
    found = the_check(lifting_checks, ground_of(sold("A")), TILT)
    ground = ground_of(sold("A"))
    low = msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, clear_height_tenth_mm=16_000))
    cramped = the_check(lifting_checks, low, TILT)

    assert pytest.approx((1639.7, 2500), abs=0.05) == values(found)
    assert Verdict.ADVISE is cramped.verdict
    assert f"{(1585**2 - 420**2) ** 0.5:.0f} mm would turn up" in cramped.remedy
    assert "part-height" in why_skipped(lifting_checks, ground_of(sold("C")), TILT)


def test_what_is_lifted() -> None:
    """Worked-examples.md, A: frame 37.9, two 17.6, three 19.8: lifter; fire 41, two 27.3, three 30.75: lifter."""
    found = {one.subject: one for one in lifting_checks(ground_of(sold("A"))) if isinstance(one, Check) and one.code == LIFT}

    assert {"base frame", "upper frame", "fire", "screen"} == found.keys()
    assert (37.9, 17.6) == values(found["upper frame"])
    assert (41, 27.3) == values(found["fire"])
    assert {"upper frame": "a lifter", "fire": "a lifter"} == {name: one.remedy for name, one in found.items() if one.remedy}
    assert not any(one.binding for one in found.values())


def test_a_third_person() -> None:
    """Demo AF-106: upper frame between what two and three lift."""
    wide = ground_of(changed(one_sided("AF-105"), {"/survey/brief/breast_depth_mm": 330}))

    assert "a third person" == the_check(lifting_checks, wide, LIFT, "upper frame").remedy


def test_one_end_of_the_frame_from_the_floor() -> None:
    """Handling.md 4: m / 2; two of (10 + 7) / 2 x 0.8 at 2/3 of their sum: 9.07 kg."""
    found = the_check(lifting_checks, ground_of(sold("A")), LIFT_END)
    small = the_check(lifting_checks, ground_of(sold("C")), LIFT_END)

    assert pytest.approx((37.9 / 2, 8.5 * 0.8 * 4 / 3), abs=0.05) == values(found)
    assert (Verdict.ADVISE, Verdict.PASS) == (found.verdict, small.verdict)
    assert "blocks" in found.remedy
    assert "" == small.remedy


def test_boards_that_two_people_carry() -> None:
    """Example B: one strip over 1.5 m2, less its recess; two of (20 + 13) / 2 x 0.8 at 2/3: 17.6 kg. Example A: none."""
    found = the_check(lifting_checks, ground_of(sold("B")), BOARDS)

    assert "P-FU1" == found.subject
    assert pytest.approx(17.6) == values(found)[1]
    assert "one person" in why_skipped(lifting_checks, ground_of(sold("A")), BOARDS)


@pytest.mark.parametrize(("clear_tenth_mm", "verdict"), [(27_000, Verdict.PASS), (27_001, Verdict.ADVISE)])
def test_work_at_height(clear_tenth_mm: int, verdict: Verdict) -> None:
    """Handling.md 5: ceiling fixings over 2.7 m: platform."""
    ground = ground_of(sold("A"))
    high = msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, clear_height_tenth_mm=clear_tenth_mm))
    found = the_check(lifting_checks, high, HEIGHT)

    assert verdict is found.verdict
    assert (found.remedy != "") == (verdict is Verdict.ADVISE)
    assert "ceiling" in why_skipped(lifting_checks, ground_of(sold("C")), HEIGHT)


@pytest.mark.parametrize("name", ["A", "B", "C"])
def test_the_fire_comes_out_again(name: str) -> None:
    """Cautions.md, V11: the opening is never smaller than the body between its frames."""
    found = the_check(replacement_checks, ground_of(sold(name)), REPLACEMENT, "fire")

    assert Verdict.PASS is found.verdict


def test_a_fire_larger_than_its_opening_is_shut_in() -> None:
    ground = ground_of(sold("C"))
    wide = msgspec.structs.replace(ground.job.appliance, body_width_mm=771)
    shut = msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, appliance=wide))
    found = the_check(replacement_checks, shut, REPLACEMENT, "fire")

    assert (Verdict.FAIL, "an opening of at least 771 x 535 mm") == (found.verdict, found.remedy)


def test_the_screen_is_lifted_off() -> None:
    """A: 20 mm of the bracket, 50 over the body."""
    ground = ground_of(sold("A"))
    high = msgspec.structs.replace(ground.job.bracket, lift_height_mm=60)  # type: ignore[type-var]  # A has a bracket
    tight = msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, bracket=high))

    assert (20, 50) == values(the_check(replacement_checks, ground, REPLACEMENT, "screen"))
    assert "a gap over the screen of at least 60 mm" == the_check(replacement_checks, tight, REPLACEMENT, "screen").remedy
    assert "no screen" in why_skipped(replacement_checks, ground_of(sold("C")), REPLACEMENT)


def test_the_words_are_those_that_were_read() -> None:
    assert reviewed("handling_checks") == words_of("handling_checks"), "python -m tests.checks.words_of, then read the diff"
