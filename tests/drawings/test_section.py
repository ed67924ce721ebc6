"""Section A-A: closure of heights and depths, what is cut, and marks that no view shows."""

from __future__ import annotations

from itertools import pairwise

import msgspec
import pytest

from service.drawings.levels import heights_of
from service.drawings.plane import find_plane
from service.drawings.primitives import Fill, Pen, Polygon
from service.drawings.section import draw_section
from service.drawings.sight import out_of_sight, seen_beyond
from service.units import text_mm
from tests.drawings.cases import REQUESTS, case
from tests.drawings.lint import lint, primitives, words


@pytest.mark.parametrize("scale", [10, 20])
@pytest.mark.parametrize("name", REQUESTS)
def test_it_is_readable(name: str, scale: int) -> None:
    assert [] == lint(draw_section(*case(name), scale))


@pytest.mark.parametrize("name", REQUESTS)
def test_heights_sum_to_the_finished_top(name: str) -> None:
    """Identity 3 of `knowledge/framing.md`, section 2: base, opening, upper frame, packing or lid."""
    frame, job = case(name)
    found = words(draw_section(frame, job, 10))
    levels = sorted({*heights_of(frame), frame.levels.finished_top_tenth_mm})
    parts = [high - low for low, high in pairwise(levels)]

    assert frame.levels.finished_top_tenth_mm == sum(parts)
    assert [] == [part for part in (*parts, sum(parts)) if text_mm(part) not in found]


@pytest.mark.parametrize("name", REQUESTS)
def test_depths_sum_to_the_finished_depth(name: str) -> None:
    """Identity 2: d + n + d + tf = D."""
    frame, job = case(name)
    found = words(draw_section(frame, job, 10))
    sizes, timber = frame.sizes, job.timber.width_tenth_mm
    parts = (timber, sizes.cross_noggin_length_tenth_mm, timber, sizes.finished_depth_tenth_mm - sizes.frame_depth_tenth_mm)

    assert sizes.finished_depth_tenth_mm == sum(parts)
    assert [] == [part for part in (*parts, sum(parts)) if text_mm(part) not in found]


@pytest.mark.parametrize("name", REQUESTS)
def test_what_the_plane_cuts_is_marked(name: str) -> None:
    frame, job = case(name)
    plane = find_plane(frame)
    parts = [(member.mark, member.box) for member in frame.members] + [(panel.mark, panel.box) for panel in frame.panels]
    cut = {mark for mark, box in parts if box.x0_tenth_mm < plane < box.x1_tenth_mm}

    assert set() == cut - set(words(draw_section(frame, job, 10)))


def test_the_face_is_cut_away_at_the_recess() -> None:
    """Boards of example A stand solid from 920 to 1145 and from 1802 to 1836, not between: recess opening 657 high."""
    solid = [
        part for part in primitives(draw_section(*case("a"), 10))
        if isinstance(part, Polygon) and part.fill is Fill.SOLID and min(x for x, _ in part.points_mm) == 42.0
    ]  # fmt: skip
    heights = sorted((min(y for _, y in part.points_mm), max(y for _, y in part.points_mm)) for part in solid)

    assert [(0.0, 43.0), (92.0, 114.5), (180.2, 183.6), (183.6, 251.5)] == heights


def test_cut_timbers_have_the_section_of_the_timber() -> None:
    """38 x 89 in example A, outlined at the width of cuts."""
    cut = [part for part in primitives(draw_section(*case("a"), 10)) if isinstance(part, Polygon) and part.pen is Pen.CUT]
    sizes = {
        tuple(sorted((round(max(x) - min(x), 2), round(max(y) - min(y), 2))))
        for x, y in (zip(*part.points_mm, strict=True) for part in cut)
    }

    assert {(3.8, 8.9)} == sizes


def test_the_facts_are_said_in_words() -> None:
    description = draw_section(*case("a"), 10).description

    assert description.startswith("Section A-A through the breast 624.5 from its left end, looking right: 435 deep x 2515 high;")


def test_depths_of_fire_screen_and_recess() -> None:
    """Recess 129 deep: 25 + 74 + 30 (`knowledge/worked-examples.md`, A)."""
    assert {"fire 330 deep", "screen 74 deep", "recess 129 deep"} <= set(words(draw_section(*case("a"), 10)))


def test_at_a_scale_too_small_marks_are_listed() -> None:
    frame, job = case("studs in the cheek, at 1:20")
    drawing = draw_section(frame, job, 100)
    written = {word for line in words(drawing) for word in line.replace(";", "").split(" ")}

    assert any(line.startswith("also seen, not marked above:") for line in words(drawing))
    assert set() == seen_beyond(frame, find_plane(frame)).keys() - written


def test_nothing_is_listed_when_nothing_is_out_of_sight() -> None:
    frame, job = case("a")
    listed = {word for entry in out_of_sight(frame, find_plane(frame)) for word in entry.split(" ")}
    shown = msgspec.structs.replace(frame, members=tuple(member for member in frame.members if member.mark not in listed))

    assert [] == [line for line in words(draw_section(shown, job, 10)) if "out of sight" in line]
