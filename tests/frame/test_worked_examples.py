"""The worked examples A, B, C and C0 laid out: every number of `knowledge/worked-examples.md` that framing.md alone gives.

Each test names the table that its figures stand in. Tolerances are those of section 0: lengths and positions 0.05 mm (here
exact: all of them are whole tenths), counts and cut lengths exact, masses 1 percent.
"""

from __future__ import annotations

import math
from collections import Counter
from functools import cache
from typing import TYPE_CHECKING

import pytest

from service.frame import CutWhen, Role, Unit
from service.rules import load_rules
from tests import examples_of

if TYPE_CHECKING:
    from service.frame import Frame, Panel

type Table = dict[tuple[Unit, Role, float], int]

EXAMPLES = {
    "A": examples_of.example_a,
    "B": examples_of.example_b,
    "C": examples_of.example_c,
    "C0": examples_of.example_c0,
}


@cache
def laid(name: str) -> Frame:
    """The frame of an example, laid out once."""
    return examples_of.frame_of(EXAMPLES[name]())


def members(frame: Frame) -> Counter[tuple[Unit, Role, float]]:
    """How many members of a unit and role have a length in mm."""
    return Counter((member.unit, member.role, member.length_tenth_mm / 10) for member in frame.members)


def mm(*tenths: int) -> tuple[float, ...]:
    """Tenths of a millimetre as millimetres."""
    return tuple(value / 10 for value in tenths)


def one_each(length_mm: float, *roles: Role) -> Table:
    """One member of each role, all of one length."""
    return {(Unit.UPPER, role, length_mm): 1 for role in roles}


RAILS = (Role.TRIMMER, Role.TOP_RAIL_FRONT, Role.REAR_BOTTOM_RAIL, Role.REAR_MID_RAIL, Role.TOP_RAIL_REAR)
BASE_A: Table = {
    (Unit.BASE, Role.RAIL, 1327): 4,
    (Unit.BASE, Role.UPRIGHT, 354): 8,
    (Unit.BASE, Role.CROSS_NOGGIN, 242): 8,
}
UPPER_A: Table = {
    (Unit.UPPER, Role.LADDER_UPRIGHT, 1585): 4,
    (Unit.UPPER, Role.LADDER_NOGGIN, 242): 10,
    **one_each(1251, *RAILS, Role.SILL_RAIL, Role.HEAD_RAIL, Role.TRIMMER_PLY),
    (Unit.UPPER, Role.SCREEN_BEARER, 1251): 2,
    (Unit.UPPER, Role.JAMB_STUD, 687): 2,
    (Unit.UPPER, Role.CRIPPLE_BELOW, 134): 3,
    (Unit.UPPER, Role.CRIPPLE_ABOVE, 612): 3,
}  # fmt: skip
B: Table = {
    (Unit.BASE, Role.RAIL, 1621): 4,
    (Unit.BASE, Role.UPRIGHT, 160): 8,
    (Unit.BASE, Role.CROSS_NOGGIN, 195.5): 8,
    (Unit.UPPER, Role.LADDER_UPRIGHT, 2360): 2,
    (Unit.UPPER, Role.LADDER_UPRIGHT, 1745): 2,
    (Unit.UPPER, Role.LADDER_NOGGIN, 195.5): 12,
    **one_each(1531, *RAILS, Role.SILL_RAIL, Role.HEAD_RAIL, Role.TRIMMER_PLY),
    (Unit.UPPER, Role.SCREEN_BEARER, 1531): 2,
    (Unit.UPPER, Role.CRIPPLE_BELOW, 90): 2,
    (Unit.UPPER, Role.CRIPPLE_ABOVE, 576): 2,
    (Unit.UPPER, Role.JACK_STUD, 615): 1,
    (Unit.UPPER, Role.CHEEK_NOGGIN, 390): 2,
}  # fmt: skip
UPPER_C: Table = {
    (Unit.UPPER, Role.LADDER_NOGGIN, 162): 6,
    **one_each(1255, *RAILS, Role.UPSTAND_RAIL),
    (Unit.UPPER, Role.CRIPPLE_BELOW, 114): 3,
    (Unit.UPPER, Role.JACK_STUD, 545): 2,
    (Unit.UPPER, Role.CHEEK_NOGGIN, 144.5): 2,
    (Unit.UPPER, Role.CHEEK_NOGGIN, 264.5): 2,
}  # fmt: skip
C: Table = {
    (Unit.BASE, Role.RAIL, 1331): 4,
    (Unit.BASE, Role.UPRIGHT, 58): 10,
    (Unit.BASE, Role.CROSS_NOGGIN, 162): 5,
    (Unit.UPPER, Role.LADDER_UPRIGHT, 1028): 4,
    (Unit.UPPER, Role.FRONT_STUD, 255): 3,
}
C0: Table = {(Unit.UPPER, Role.LADDER_UPRIGHT, 1162): 4, (Unit.UPPER, Role.FRONT_STUD, 389): 3}


@pytest.mark.parametrize(("name", "table"), [("A", BASE_A | UPPER_A), ("B", B), ("C", C | UPPER_C), ("C0", C0 | UPPER_C)])
def test_members_by_role_and_length(name: str, table: dict[tuple[Unit, Role, float], int]) -> None:
    """Tables of laid-out members of A, B and C (the C0 column beside it)."""
    assert table == dict(members(laid(name)))


@pytest.mark.parametrize(
    ("name", "count", "length_mm", "cut_mm"),
    [("A", 52, 34958, 34958), ("B", 53, 37921, 37911), ("C", 47, 22343, 22341), ("C0", 28, 16567, 16565)],
)
def test_number_of_pieces_and_their_sums(name: str, count: int, length_mm: float, cut_mm: int) -> None:
    """Lines "total" of the member tables; B and C with their sums of cut lengths."""
    frame = laid(name)

    assert all(member.from_bar for member in frame.members)
    assert count == len(frame.members)
    assert length_mm == sum(member.length_tenth_mm for member in frame.members) / 10
    assert cut_mm == sum(member.cut_length_mm for member in frame.members)


@pytest.mark.parametrize(
    ("name", "rounded"),
    [("A", {}), ("B", {(195.5, 195): 20}), ("C", {(144.5, 144): 2, (264.5, 264): 2}), ("C0", {(144.5, 144): 2, (264.5, 264): 2})],
)
def test_only_halves_are_rounded_and_down(name: str, rounded: dict[tuple[float, int], int]) -> None:
    """Section 0, cut_length_mm: pieces fitted between others are rounded down, with their slack of 0.5."""
    cut = Counter(
        (member.length_tenth_mm / 10, member.cut_length_mm)
        for member in laid(name).members
        if member.length_tenth_mm != member.cut_length_mm * 10
    )

    assert rounded == dict(cut)


@pytest.mark.parametrize(
    ("name", "waiting"),
    [
        ("A", {Role.LADDER_UPRIGHT: 4, Role.CRIPPLE_ABOVE: 3}),
        ("B", {Role.LADDER_UPRIGHT: 4, Role.CRIPPLE_ABOVE: 2}),
        ("C", {}),
        ("C0", {}),
    ],
)
def test_members_cut_after_measuring(name: str, waiting: dict[Role, int]) -> None:
    """Members marked M in the tables of A and B (7 and 6 pieces, section 0, bar plans); none in part height."""
    cut_later = Counter(member.role for member in laid(name).members if member.cut_when is CutWhen.AFTER_MEASURE)

    assert waiting == dict(cut_later)


CLOSURES = {
    "A": {
        "width": ((15, 1327, 15), 1357),
        "frame_width": ((38, 1251, 38), 1327),
        "face_width": ((38, 40.5, 38, 1094, 38, 40.5, 38), 1327),
        "depth": ((89, 242, 89, 15), 435),
        "height": ((430, 490, 1585, 10), 2515),
        "base": ((38, 354, 38), 430),
        "face_above_fire": ((38, 134, 38, 687, 38, 612, 38), 1585),
        "recess_depth": ((15, 114, 18, 38, 250), 435),
    },
    "B": {
        "width": ((14.5, 1621, 14.5), 1650),
        "frame_width": ((45, 1531, 45), 1621),
        "depth": ((95, 195.5, 95, 14.5), 400),
        "height": ((250, 615, 1745, 10), 2620),
        "base": ((45, 160, 45), 250),
        "face_above_fire": ((45, 90, 45, 899, 45, 576, 45), 1745),
        "opening_line": ((45, 390, 45, 1141), 1621),
        "recess_depth": ((14.5, 112.5, 18, 45, 210), 400),
    },
    "C": {
        "width": ((12, 1331, 12), 1355),
        "frame_width": ((38, 1255, 38), 1331),
        "opening_line": ((38, 144.5, 38, 770, 38, 264.5, 38), 1331),
        "depth": ((63, 162, 63, 12), 300),
        "height": ((134, 545, 483, 18), 1180),
        "base": ((38, 58, 38), 134),
        "face_above_fire": ((38, 114, 38, 255, 38), 483),
    },
}


@pytest.mark.parametrize("name", CLOSURES)
def test_closure_sums(name: str) -> None:
    """Tables "closure | sum" of A, B and C, part by part."""
    sums = {one.name: (mm(*(term.value_tenth_mm for term in one.terms)), one.total_tenth_mm / 10) for one in laid(name).closures}

    assert CLOSURES[name] == sums


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_closure_closes(name: str) -> None:
    """Framing.md, section 2: exactly, in tenths."""
    for one in laid(name).closures:
        assert one.total_tenth_mm == sum(term.value_tenth_mm for term in one.terms), one.name


def test_sizes_and_levels_of_a() -> None:
    """Line "Derived" of example A."""
    frame = laid("A")
    sizes, levels, recess = frame.sizes, frame.levels, frame.sizes.recess

    assert (1327, 1357, 420, 242, 1251, 490, 1585, 1251) == mm(
        sizes.frame_width_tenth_mm, sizes.finished_width_tenth_mm, sizes.frame_depth_tenth_mm,
        sizes.cross_noggin_length_tenth_mm, sizes.rail_length_tenth_mm, sizes.opening_height_tenth_mm,
        sizes.upper_height_tenth_mm, sizes.trimmer_span_tenth_mm,
    )  # fmt: skip
    assert (430, 920, 2505, 2515) == mm(
        levels.platform_tenth_mm, levels.appliance_top_tenth_mm, levels.upper_top_tenth_mm, levels.finished_top_tenth_mm
    )
    assert recess is not None
    assert (1064, 657, 129, 1094, 687, 40.5, 288) == mm(
        recess.clear_width_tenth_mm, recess.clear_height_tenth_mm, recess.depth_tenth_mm, recess.framing_width_tenth_mm,
        recess.framing_height_tenth_mm, recess.jamb_gap_tenth_mm, recess.bearer_back_tenth_mm,
    )  # fmt: skip
    assert not recess.full_width
    assert (11300, 18170, 14735) == (levels.recess_sill_tenth_mm, levels.recess_head_tenth_mm, levels.screen_centre_tenth_mm)
    assert (1373.5, 1573.5) == mm(*recess.row_levels_tenth_mm)
    assert 1 == frame.ply_count


def test_sizes_and_levels_of_b() -> None:
    """Line "Derived" of example B."""
    frame = laid("B")
    sizes, levels, recess = frame.sizes, frame.levels, frame.sizes.recess

    assert (1621, 385.5, 195.5, 1531, 615, 1745, 1141, 1155.5, 1531) == mm(
        sizes.frame_width_tenth_mm, sizes.frame_depth_tenth_mm, sizes.cross_noggin_length_tenth_mm, sizes.rail_length_tenth_mm,
        sizes.opening_height_tenth_mm, sizes.upper_height_tenth_mm, sizes.opening_width_tenth_mm,
        sizes.board_opening_width_tenth_mm, sizes.trimmer_span_tenth_mm,
    )  # fmt: skip
    assert (865, 2610) == mm(levels.appliance_top_tenth_mm, levels.upper_top_tenth_mm)
    assert recess is not None
    assert recess.full_width
    assert (1531, 1501, 869, 899, 127, 255) == mm(
        recess.framing_width_tenth_mm, recess.clear_width_tenth_mm, recess.clear_height_tenth_mm,
        recess.framing_height_tenth_mm, recess.depth_tenth_mm, recess.bearer_back_tenth_mm,
    )  # fmt: skip
    assert (10450, 19440, 14945) == (levels.recess_sill_tenth_mm, levels.recess_head_tenth_mm, levels.screen_centre_tenth_mm)
    assert (1294.5, 1694.5) == mm(*recess.row_levels_tenth_mm)
    assert (480, 1621) == mm(frame.openings[0].x0_tenth_mm, frame.openings[0].x1_tenth_mm)
    assert 80.5 == (recess.clear_width_tenth_mm / 10 - 1340) / 2  # side gap
    assert 1 == frame.ply_count


def test_sizes_and_levels_of_c() -> None:
    """Line "Derived" of example C."""
    frame = laid("C")
    sizes, levels = frame.sizes, frame.levels

    assert (1331, 288, 162, 1255, 545, 483, 770, 770) == mm(
        sizes.frame_width_tenth_mm, sizes.frame_depth_tenth_mm, sizes.cross_noggin_length_tenth_mm, sizes.rail_length_tenth_mm,
        sizes.opening_height_tenth_mm, sizes.upper_height_tenth_mm, sizes.opening_width_tenth_mm, sizes.trimmer_span_tenth_mm,
    )  # fmt: skip
    assert (679, 1162) == mm(levels.appliance_top_tenth_mm, levels.upper_top_tenth_mm)
    assert (220.5, 990.5) == mm(frame.openings[0].x0_tenth_mm, frame.openings[0].x1_tenth_mm)
    assert (None, None, 0) == (sizes.recess, levels.recess_sill_tenth_mm, frame.ply_count)


def lefts(frame: Frame, role: Role, *, unit: Unit = Unit.UPPER) -> tuple[float, ...]:
    """Left edges of the members of a role, each once, rising."""
    return mm(*sorted({member.box.x0_tenth_mm for member in frame.members if (member.role, member.unit) == (role, unit)}))


def noggins(frame: Frame, *, left: bool) -> tuple[float, ...]:
    """Undersides of the noggins of one ladder."""
    right = frame.sizes.frame_width_tenth_mm
    found = [
        member.box.z0_tenth_mm
        for member in frame.members
        if member.role is Role.LADDER_NOGGIN and (member.box.x0_tenth_mm == 0 if left else member.box.x1_tenth_mm == right)
    ]
    return mm(*sorted(found))


def test_positions_of_a() -> None:
    """Line "Positions" of example A."""
    frame = laid("A")

    assert (0, 429.7, 859.3, 1289) == mm(*(station.x_tenth_mm for station in frame.stations))
    assert (0, 429.7, 859.3, 1289) == lefts(frame, Role.UPRIGHT, unit=Unit.BASE)
    assert (920, 1329, 1529, 1972.5, 2416) == noggins(frame, left=True) == noggins(frame, left=False)
    centres = tuple(left + 19 for left in lefts(frame, Role.CRIPPLE_BELOW))
    assert (97.5, 663.5, 1229.5) == centres
    assert (97.5, 1229.5) == tuple(left + 19 for left in lefts(frame, Role.JAMB_STUD))


def test_positions_of_b() -> None:
    """Line "Positions" of example B: the ply gets a seat at z1 in the closed ladder."""
    frame = laid("B")

    assert (0, 525.3, 1050.7, 1576) == mm(*(station.x_tenth_mm for station in frame.stations))
    assert (0, 3, 6, 9) == mm(*(station.packer_tenth_mm for station in frame.stations))
    assert (250, 557.5, 865, 1247, 1647, 2081, 2515) == noggins(frame, left=True)
    assert (865, 1247, 1647, 2081, 2515) == noggins(frame, left=False)
    assert (547.8, 1073.2) == tuple(round(left + 22.5, 1) for left in lefts(frame, Role.CRIPPLE_ABOVE))


def test_positions_of_c() -> None:
    """Line "Positions" of example C, and z of the noggins in the C0 column."""
    frame = laid("C")

    assert (0, 323.3, 646.5, 969.8, 1293) == mm(*(station.x_tenth_mm for station in frame.stations))
    assert (134, 616.5, 1099) == noggins(frame, left=True) == noggins(frame, left=False)
    assert (342.3, 665.5, 988.8) == tuple(round(left + 19, 1) for left in lefts(frame, Role.FRONT_STUD))
    assert (0, 549.5, 1099) == noggins(laid("C0"), left=True)
    assert () == laid("C0").stations


def panel_sizes(frame: Frame) -> list[tuple[str, float, float]]:
    """Role, width and height of every panel, in mm."""
    return sorted((panel.role.value, panel.width_tenth_mm / 10, panel.height_tenth_mm / 10) for panel in frame.panels)


PANELS = {
    "A": [
        ("backboard", 1094, 687), ("face_base", 1357, 430), ("face_upper", 1357, 679), ("face_upper", 1357, 916),
        ("lining_bottom", 1094, 114), ("lining_left", 657, 114), ("lining_right", 657, 114), ("lining_top", 1094, 114),
        ("return_base_left", 430, 430), ("return_base_right", 430, 430), ("return_upper_left", 430, 1595),
        ("return_upper_right", 430, 1595),
    ],
    "B": [
        ("backboard", 1531, 899), ("face_base", 1646, 259), ("face_cheek_left", 492.5, 615), ("face_upper", 1646, 653.5),
        ("face_upper", 1646, 1101.5), ("lining_bottom", 1531, 112.5), ("lining_left", 869, 112.5), ("lining_right", 869, 112.5),
        ("lining_top", 1531, 112.5), ("return_base_right", 395.5, 259), ("return_left", 395.5, 925.5),
        ("return_left", 395.5, 1694.5), ("return_upper_right", 395.5, 1755),
    ],
    "C": [
        ("face_base", 1355, 134), ("face_cheek_left", 232.5, 545), ("face_cheek_right", 352.5, 545), ("face_upper", 1355, 483),
        ("lid", 1355, 310), ("return_left", 298, 1162), ("return_right", 298, 1162),
    ],
    "C0": [
        ("face_cheek_left", 232.5, 545), ("face_cheek_right", 352.5, 545), ("face_upper", 1355, 617), ("lid", 1355, 310),
        ("return_left", 298, 1162), ("return_right", 298, 1162),
    ],
}  # fmt: skip


@pytest.mark.parametrize("name", PANELS)
def test_panels(name: str) -> None:
    """Tables "panel | size" of A, B and C with its C0 column."""
    assert PANELS[name] == panel_sizes(laid(name))


def by_role(frame: Frame, role: str) -> list[Panel]:
    """Panels of a role, from the floor up."""
    return sorted((panel for panel in frame.panels if panel.role == role), key=lambda panel: panel.box.z0_tenth_mm)


@pytest.mark.parametrize(
    ("name", "role", "joint_mm"), [("A", "face_upper", 1836), ("B", "face_upper", 1966.5), ("B", "return_left", 1694.5)]
)
def test_joints_lie_on_timber(name: str, role: str, joint_mm: float) -> None:
    """A: face joint in the centre of the head rail; B: head rail, and the noggin at 1647 for the closed return."""
    lower, upper = by_role(laid(name), role)

    assert joint_mm == lower.box.z1_tenth_mm / 10 == upper.box.z0_tenth_mm / 10
    assert (False, True) == (lower.joint_below, upper.joint_below)


def test_cut_sizes_of_b() -> None:
    """Paragraph "Cut sizes" of example B: the edge of a joint is rounded once, so that a stack adds up."""
    cut = sorted((panel.role.value, panel.cut_width_mm, panel.cut_height_mm) for panel in laid("B").panels)

    expected = [
        ("backboard", 1531, 899), ("face_base", 1646, 259), ("face_cheek_left", 493, 615), ("face_upper", 1646, 653),
        ("face_upper", 1646, 1102), ("lining_bottom", 1531, 112), ("lining_left", 869, 112), ("lining_right", 869, 112),
        ("lining_top", 1531, 112), ("return_base_right", 396, 259), ("return_left", 396, 925), ("return_left", 396, 1695),
        ("return_upper_right", 396, 1755),
    ]  # fmt: skip
    assert expected == cut


@pytest.mark.parametrize(
    ("name", "waiting"),
    [
        ("A", ["face_upper", "return_upper_left", "return_upper_right"]),
        ("B", ["face_upper", "return_left", "return_upper_right"]),
        ("C", []),
    ],
)
def test_panels_cut_after_measuring(name: str, waiting: list[str]) -> None:
    """A: face top strip and both upper returns; B: face top strip, left return upper, right return upper."""
    later = [panel for panel in laid(name).panels if panel.cut_when is CutWhen.AFTER_MEASURE]

    assert waiting == sorted(panel.role.value for panel in later)
    assert all(panel.box.z1_tenth_mm == laid(name).levels.finished_top_tenth_mm for panel in later)


def test_cut_outs_of_the_recess() -> None:
    """A: 1064 x 657 and B: 1501 x 869, whole in the lower strip of the face, its border one lining wide."""
    for name, size_mm, left_mm, low_mm in (("A", (1064, 657), 146.5, 225), ("B", (1501, 869), 72.5, 195)):
        lower, upper = by_role(laid(name), "face_upper")
        (hole,) = lower.cut_outs

        assert () == upper.cut_outs
        assert size_mm == mm(hole.width_tenth_mm, hole.height_tenth_mm)
        assert (left_mm, low_mm) == mm(hole.x_tenth_mm, hole.y_tenth_mm)


def test_boards_at_the_fall_of_b_are_tapered() -> None:
    """Table of panels of B: face base and right return base 250 + 9; the left return stands on the high end."""
    tapers = {panel.role.value: panel.taper_tenth_mm for panel in laid("B").panels if panel.taper_tenth_mm}

    assert {"face_base": 90, "return_base_right": 90} == tapers


def test_areas() -> None:
    """A: facing 4.888 m2 of two sheets' 2.977 each; B: 5.451 m2; C: 1.847 and lid 0.420; C0 the same. Within 0.001 m2."""

    def area_m2(name: str, layer: str) -> float:
        return sum(panel.width_tenth_mm * panel.height_tenth_mm for panel in laid(name).panels if panel.layer == layer) / 1e8

    lined = area_m2("A", "facing") + area_m2("A", "lining")
    assert math.isclose(4.888, lined, abs_tol=0.001)
    assert math.isclose(5.451, area_m2("B", "facing"), abs_tol=0.001)
    assert math.isclose(1.847, area_m2("C", "facing"), abs_tol=0.001)
    assert math.isclose(0.420, area_m2("C", "lid"), abs_tol=0.001)
    assert math.isclose(1.847, area_m2("C0", "facing"), abs_tol=0.001)


@pytest.mark.parametrize(
    ("name", "rows", "count"),
    [
        ("A", {939: 4, 1111: 4, 1569.3: 2, 2027.7: 2, 2486: 4}, 16),
        ("B", {568.8: 1, 887.5: 4, 1022.5: 4, 1544.2: 2, 2065.8: 2}, 13),
        ("C", {416: 2, 698: 4, 850: 4, 1143: 4}, 14),
    ],
)
def test_wall_rows(name: str, rows: dict[float, int], count: int) -> None:
    """Rows of counted wall fixings.

    A at 19, 191, 649.3, 1107.7 and 1566 over z 920 (after checks as laid out); B "without the extra rail", where 1544 and 2066
    stand rounded; C "wall rows".
    """
    frame = laid(name)
    counted = [one for one in frame.wall_fixings if one.counted]

    assert rows == dict(Counter(one.z_tenth_mm / 10 for one in counted))
    assert count == len(counted)


def test_the_top_row_of_b_does_not_count() -> None:
    """B: no cable scan, so the row within 150 of the ceiling (z 2587.5) does not count."""
    idle = [one.z_tenth_mm / 10 for one in laid("B").wall_fixings if not one.counted]

    assert [2587.5] * 4 == idle


@pytest.mark.parametrize(("name", "screws"), [("A", 8), ("B", 0), ("C", 0), ("C0", 0)])
def test_ceiling_screws(name: str, screws: int) -> None:
    """A: 4 joists x 2 rows; B: joists along the wall; C: part height."""
    assert screws == len(laid(name).ceiling_screws)


def test_joists_of_a() -> None:
    """Section 0: joists at x = 63.5 + 400 i of the frame; the rows in the centres of the top rails."""
    screws = laid("A").ceiling_screws

    assert [63.5, 463.5, 863.5, 1263.5] == sorted({one.x_tenth_mm / 10 for one in screws})
    assert {44.5, 375.5} == {one.y_tenth_mm / 10 for one in screws}


@pytest.mark.parametrize(
    ("name", "unit", "mass_kg"),
    [
        ("A", Unit.BASE, 15.3), ("A", Unit.UPPER, 37.9), ("B", Unit.BASE, 17.9), ("B", Unit.UPPER, 55.0), ("C", Unit.BASE, 7.2),
        ("C", Unit.UPPER, 16.8), ("C0", Unit.UPPER, 17.8),
    ],
)  # fmt: skip
def test_masses(name: str, unit: Unit, mass_kg: float) -> None:
    """Lines "Masses at 450 kg/m3", laid out, within 1 percent."""
    volume = sum(
        member.cut_length_mm * member.thickness_tenth_mm * member.width_tenth_mm / 100
        for member in laid(name).members
        if member.unit is unit
    )

    assert math.isclose(mass_kg, volume / 1e9 * load_rules().handling.timber_density_kg_m3, rel_tol=0.01)


@pytest.mark.parametrize(("name", "height_mm", "diagonal_mm"), [("A", 1585, 1639.7), ("B", 2360, 2391.3), ("C", 1028, 1067.6)])
def test_tilting_numbers(name: str, height_mm: float, diagonal_mm: float) -> None:
    """Lines "Tilt": height of the upper unit and its diagonal over the frame's depth (C: computed here, 1028 and 288)."""
    frame = laid(name)
    feet = [member.box.z0_tenth_mm for member in frame.members if member.role is Role.LADDER_UPRIGHT]
    height = frame.levels.upper_top_tenth_mm - min(feet)

    assert height_mm == height / 10
    assert math.isclose(diagonal_mm, math.hypot(height, frame.sizes.frame_depth_tenth_mm) / 10, abs_tol=0.05)


@pytest.mark.parametrize(("name", "distance_mm"), [("A", 730), ("B", 305)])
def test_outlet_to_screen(name: str, distance_mm: float) -> None:
    """Lines "Outlet to screen": (480 - 35) + 10 + 210 + 15 + 50 and (605 - 555) + 10 + 180 + 15 + 50."""
    job, levels = examples_of.job_of(EXAMPLES[name]()), laid(name).levels
    outlet_mm = (levels.platform_tenth_mm / 10) + (job.appliance.outlet_height_mm or 0)
    screen = job.screen
    assert screen is not None
    assert levels.screen_centre_tenth_mm is not None
    underside_mm = levels.screen_centre_tenth_mm / 10 - screen.body_height_mm / 2

    assert distance_mm == underside_mm - outlet_mm


def test_nothing_is_left_open_in_example_a() -> None:
    """Every field that a firm quote needs is sent, so that only house choices stand among the assumptions of A."""
    job = examples_of.job_of(examples_of.example_a())

    assert [] == [note.pointer for note in job.assumptions if not note.house_choice]
    assert ((), (), ()) == (job.doubts, job.by_hand, job.missing_figures)
