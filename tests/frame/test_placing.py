from __future__ import annotations

import pytest

from service.frame import Axis, CutWhen, EndJoint, Fit, Role, Unit
from service.frame.placing import Place, between, box, ceiling_cut, front, length_of, mark_members, rear, spread_half
from tests.examples_of import example_a, example_c
from tests.frame.settings_of import setting_of


def noggin(length: int, *, fit: Fit = Fit.BETWEEN, unit: Unit = Unit.UPPER, from_bar: bool = True) -> Place:
    """A noggin of a length, on edge."""
    role = Role.LADDER_NOGGIN if unit is Unit.UPPER else Role.CROSS_NOGGIN
    return Place(role=role, unit=unit, box=box((0, 380), (890, 890 + length), (0, 890)), along=Axis.Y, fit=fit, from_bar=from_bar)


@pytest.mark.parametrize(
    ("first_mm", "last_mm", "pitch_mm", "centres_mm"),
    [
        (19, 1312, 400, (342.3, 665.5, 988.8)),  # framing.md, 4.2; example C: three studs between the ladder centres
        (97.5, 1229.5, 600, (663.5,)),  # example A: one between the jambs
        (22.5, 1598.5, 600, (547.8, 1073.2)),  # example B
        (0, 600, 600, ()),
        (0, 600.1, 600, (300.1,)),  # 300.05, halves up
        (0, 1200, 400, (400, 800)),
        (10, 10, 400, ()),
    ],
)
def test_spread(first_mm: float, last_mm: float, pitch_mm: float, centres_mm: tuple[float, ...]) -> None:
    """spread(a, c, m): N = ceil((c - a)/m), centres a + (c - a) i/N, each rounded to 0.1 (half up): framing.md, section 1."""
    halves = spread_half(round(first_mm * 20), round(last_mm * 20), round(pitch_mm * 10))

    assert centres_mm == tuple(centre / 10 for centre in halves)


def test_spread_from_half_tenths() -> None:
    """Between two centres at 190.5 and 13120.5 tenths: three gaps of 4310."""
    assert (4501, 8811) == spread_half(381, 26241, 6000)[:1] + spread_half(381, 26241, 4400)[1:]


@pytest.mark.parametrize(("thickness", "there"), [(380, (810, 1190)), (381, (810, 1191))])
def test_between(thickness: int, there: tuple[int, int]) -> None:
    """A half of an odd tenth: the left or lower part is rounded down: framing.md, section 2.1."""
    assert there == between(1000, thickness)


def test_length_of() -> None:
    place = box((0, 1), (0, 20), (0, 300))

    assert [1, 20, 300] == [length_of(place, axis) for axis in Axis]


@pytest.mark.parametrize(
    ("length", "fit", "cut_mm"),
    [
        (1955, Fit.BETWEEN, 195),
        (1959, Fit.BETWEEN, 195),
        (1960, Fit.BETWEEN, 196),
        (1955, Fit.THROUGH, 196),
        (1954, Fit.THROUGH, 195),
    ],
)
def test_cut_lengths(length: int, fit: Fit, cut_mm: int) -> None:
    """Down for a piece fitted between others, to the nearest (half up) for every other: framing.md, section 2.1."""
    (member,) = mark_members([noggin(length, fit=fit)], 300, lambda _role: "C16")

    assert (length, cut_mm, fit) == (member.length_tenth_mm, member.cut_length_mm, member.fit)


@pytest.mark.parametrize(("length", "from_bar"), [(299, False), (300, True)])
def test_short_pieces_are_packs(length: int, *, from_bar: bool) -> None:
    """A piece shorter than 30 is made as a pack, not cut from bar: framing.md, section 9."""
    (member,) = mark_members([noggin(length)], 300, lambda _role: "C16")

    assert from_bar is member.from_bar


def test_packs_stay_packs() -> None:
    (member,) = mark_members([noggin(900, from_bar=False)], 300, lambda _role: "C16")

    assert not member.from_bar


def test_marks_count_by_unit_and_role() -> None:
    places = [noggin(1000), noggin(1000, unit=Unit.BASE), noggin(1000), noggin(1000, unit=Unit.BASE)]

    assert ["U-N1", "B-N1", "U-N2", "B-N2"] == [member.mark for member in mark_members(places, 300, lambda _role: "C16")]


def test_sides_and_joints_of_a_member() -> None:
    (member,) = mark_members([noggin(1000)], 300, lambda _role: "C16")

    assert (380, 890, Axis.Y) == (member.thickness_tenth_mm, member.width_tenth_mm, member.along)
    assert (EndJoint.SCREWED, EndJoint.SCREWED) == (member.start_joint, member.end_joint)


def test_zones_and_cutting() -> None:
    """Front zone Df-d..Df, rear zone 0..d (framing.md, section 4); nothing waits for the ceiling in part height (2.2)."""
    a, c = setting_of(example_a()), setting_of(example_c())

    assert ((4200 - 890, 4200), (0, 890)) == (front(a), rear(a))
    assert (CutWhen.AFTER_MEASURE, CutWhen.NOW) == (ceiling_cut(a), ceiling_cut(c))
