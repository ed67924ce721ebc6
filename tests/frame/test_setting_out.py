"""Framing.md, sections 2, 5, 6 and 8: sizes, levels, opening, recess and the guess of plies."""

from __future__ import annotations

import pytest

from service.errors import UnbuildableError
from service.frame.setting_out import set_out
from service.rules import load_rules
from tests.examples_of import Request, changed, example_a, example_b, example_c, job_of
from tests.frame.settings_of import BRIEF, setting_of, timber

TELEVISION: Request = {
    "kind": "custom", "name": "Own", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
    "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
}  # fmt: skip
PLATE: Request = {
    "kind": "custom",
    "name": "Own",
    "bracket_kind": "fixed",
    "depth_mm": 30,
    "mass_kg": 2,
    "rating_kg": 30,
    "plate_width_mm": 440,
    "plate_height_mm": 240,
    "plate_hole_width_mm": 400,
    "plate_hole_height_mm": 200,
    "screen_pattern_least_width_mm": 100,
    "screen_pattern_greatest_width_mm": 400,
    "screen_pattern_least_height_mm": 100,
    "screen_pattern_greatest_height_mm": 200,
}


def hung(screen: Request | None = None, plate: Request | None = None, **brief: object) -> Request:
    """Example A with its own screen and bracket."""
    return changed(example_a(), {
        f"{BRIEF}/screen": {**TELEVISION, **(screen or {})}, f"{BRIEF}/screen_bracket": {**PLATE, **(plate or {})},
        **{f"{BRIEF}/{name}": value for name, value in brief.items()},
    })  # fmt: skip


def test_an_unmet_inequality_stops_the_setting_out() -> None:
    with pytest.raises(UnbuildableError, match="sets the width"):
        set_out(job_of(changed(example_a(), {f"{BRIEF}/breast_width_mm": 1400})), load_rules())


@pytest.mark.parametrize(("end", "edges_mm", "feet_mm"), [("right", (480, 1621), (250, 865)), ("left", (0, 1141), (865, 250))])
def test_two_sided_openings(end: str, edges_mm: tuple[float, float], feet_mm: tuple[float, float]) -> None:
    """Bw - e + cs from the open end: 1140 - 4 + 5 = 1141; the ladder of the open end starts over the fire."""
    at = setting_of(changed(example_b(), {f"{BRIEF}/open_ends": end}))

    assert edges_mm == (at.opening_left / 10, at.opening_right / 10)
    assert feet_mm == (at.foot(left=True) / 10, at.foot(left=False) / 10)
    assert (end == "right", end == "left") == (at.jack_at(left=True), at.jack_at(left=False))


def test_an_opening_of_an_odd_rest_lies_half_a_tenth_to_the_left() -> None:
    """Section 2.1: a half of an odd tenth: the left part is rounded down."""
    at = setting_of(changed(example_c(), {f"{BRIEF}/appliance_shift_mm": 0, f"{BRIEF}/breast_width_mm": 1355.1}))

    assert (2805, 2806) == (at.opening_left, at.wf - at.opening_right)


@pytest.mark.parametrize(("span_mm", "plies"), [(1200, 0), (1200.1, 1), (1800, 1), (1800.1, 2), (2600, 2)])
def test_starting_guess_of_plies(span_mm: float, plies: int) -> None:
    """L <= 1200: 0; <= 1800: 1; > 1800: 2 (section 8); three-sided, so that L = Lr = Bw - 2e - 2b."""
    fire = {"kind": "size_class", "open_ends_count": 2, "length_mm": span_mm + 8 + 76}
    request = changed(example_a(), {f"{BRIEF}/appliance": fire, f"{BRIEF}/screen": None, f"{BRIEF}/breast_depth_mm": 500})
    at = setting_of(request)

    assert (span_mm, plies) == (at.span / 10, at.ply_count)


@pytest.mark.parametrize(("depth_mm", "plies"), [(312, 2), (298.9, 2), (268.9, 1), (230.9, 0)])
def test_plies_have_room_between_front_and_rear(depth_mm: float, plies: int) -> None:
    """Section 10.2: room p b <= n; the guess gives no ply that would stand in the rear rails."""
    fire = {
        "kind": "custom",
        "name": "flat",
        "open_ends_count": 2,
        "body_width_mm": 2200,
        "body_height_mm": 480,
        "body_depth_mm": 120,
        "mass_kg": 40,
        "heat_output_w": 1000,
        "connection": "plug",
        "outlet_position": "front_bottom",
        "clear_rear_mm": 0,
    }
    at = setting_of(
        changed(example_a(), {f"{BRIEF}/appliance": fire, f"{BRIEF}/screen": None, f"{BRIEF}/breast_depth_mm": depth_mm})
    )

    assert plies == at.ply_count
    assert plies * at.b <= at.n


def test_plies_asked_for_have_the_same_limit() -> None:
    assert 3 == setting_of(example_a(), ply_count=3).ply_count
    assert 6 == setting_of(example_a(), ply_count=9).ply_count  # 242 / 38


@pytest.mark.parametrize(("shift_mm", "span_mm"), [(-60, 770), (-204.5, 770), (-205, 807.5), (205, 807.5), (-242.5, 770)])
def test_span_of_the_trimmer(shift_mm: float, span_mm: float) -> None:
    """One-sided: Ao with both jacks, from jack to ladder with one (section 8); -242.5: the opening begins at the ladder."""
    assert span_mm == setting_of(changed(example_c(), {f"{BRIEF}/appliance_shift_mm": shift_mm})).span / 10


@pytest.mark.parametrize(
    ("spacing_mm", "offset_mm", "rows_mm"),
    [
        (200, 0, (1373.5, 1573.5)),
        (200, 20, (1393.5, 1593.5)),
        (200, -35.5, (1338, 1538)),
        (94, 0, (1426.5, 1520.5)),
        (93.9, 0, (1473.5,)),
        (50, 12, (1485.5,)),
        (200.1, 0, (1373.5, 1573.6)),
    ],
)
def test_rows_of_the_bracket(spacing_mm: float, offset_mm: float, rows_mm: tuple[float, ...]) -> None:
    """Rows zc + dz -/+ v/2; one bearer where v < d + 5 = 94; an odd tenth goes to the upper half. Example A: zc 1473.5."""
    recess = setting_of(hung({"hole_centre_offset_mm": offset_mm}, {"plate_hole_height_mm": spacing_mm})).recess

    assert recess is not None
    assert rows_mm == tuple(row / 10 for row in recess.row_levels_tenth_mm)


def test_unequal_gaps_move_the_screen() -> None:
    """Zc = zs + tl + g(bottom) + sh/2; Fh = sh + both gaps + 2 tl."""
    at = setting_of(hung({"gap_bottom_mm": 80, "gap_top_mm": 60}))
    assert at.recess is not None

    assert (1130 + 15 + 80 + 278.5, 557 + 140 + 30) == (at.zc / 10, at.recess.framing_height_tenth_mm / 10)


@pytest.mark.parametrize(
    ("screen", "brief", "depth_mm"),
    [
        ({}, {}, 129),  # 25 + 74 + max(30, 25)
        ({}, {"cable_room_mm": 60}, 159),
        ({"body_depth_mm": 50}, {"glass_set_back_mm": 0}, 86),  # 80, and the bearers behind 89 of timber: 15 + 89 - 18
        ({"body_depth_mm": 56.1}, {"glass_set_back_mm": 0}, 86.1),
    ],
)
def test_depth_of_the_recess(screen: Request, brief: Request, depth_mm: float) -> None:
    """Dr = q + st + max(k, kr), and never so little that the bearers would run through jambs and ladder uprights."""
    at = setting_of(hung(screen, **brief))
    assert at.recess is not None

    assert depth_mm == at.recess.depth_tenth_mm / 10
    assert at.recess.bearer_back_tenth_mm <= at.df - at.d
    assert at.recess.rest_behind_bearers_tenth_mm == at.recess.bearer_back_tenth_mm - at.b


def test_a_recess_in_the_middle_of_an_odd_width() -> None:
    """Section 2.1: gap left and right of a recess: the left part is rounded down."""
    at = setting_of(hung({"body_width_mm": 964.1}))
    assert at.recess is not None
    right = at.wf - at.recess_left - at.recess.framing_width_tenth_mm

    assert 1 == right - at.recess_left


def test_centre_lines_for_joints() -> None:
    """Section 11: z + b/2 of sill and head; example A: 1111 and 1836."""
    at = setting_of(example_a())

    assert (1111, 1836) == (at.sill_joint / 10, at.head_joint / 10)
    odd = setting_of(changed(example_a(), {f"{BRIEF}/timber": timber(38.1, 89)}))
    assert odd.zs - odd.b + 190 == odd.sill_joint


def test_part_height_ends_under_its_lid() -> None:
    """z2 = P - tlid; full height: z2 = H - ct, boards up to H."""
    part, full = setting_of(example_c()), setting_of(example_a())

    assert (1162, 1162, 1180) == (part.z2 / 10, part.zf / 10, part.top / 10)
    assert (2505, 2515, 2515) == (full.z2 / 10, full.zf / 10, full.top / 10)
