"""Front elevation of the frame: its values against the frame, every timber seen from the front marked."""

from __future__ import annotations

from itertools import pairwise

import pytest

from service.drawings.front_elevation import draw_front_elevation
from service.drawings.levels import heights_of
from service.drawings.sight import seen_in_front
from service.frame import Axis, Unit
from service.units import text_mm
from tests.drawings.cases import REQUESTS, case
from tests.drawings.lint import lint, words


@pytest.mark.parametrize("scale", [10, 20])
@pytest.mark.parametrize("name", REQUESTS)
def test_it_is_readable(name: str, scale: int) -> None:
    assert [] == lint(draw_front_elevation(*case(name), scale))


@pytest.mark.parametrize("name", REQUESTS)
def test_levels_and_overall_sizes_are_those_of_the_frame(name: str) -> None:
    frame, job = case(name)
    found = words(draw_front_elevation(frame, job, 10))
    levels = sorted(set(heights_of(frame)))
    parts = [high - low for low, high in pairwise(levels)]

    assert frame.levels.upper_top_tenth_mm == sum(parts)
    assert [] == [part for part in (*parts, sum(parts), frame.sizes.frame_width_tenth_mm) if text_mm(part) not in found]


@pytest.mark.parametrize("name", REQUESTS)
def test_near_faces_of_uprights_and_undersides_of_rails_are_given(name: str) -> None:
    frame, job = case(name)
    found = {word.split(" ")[0] for word in words(draw_front_elevation(frame, job, 10))}
    seen = [member for member in frame.members if member.mark in seen_in_front(frame)]
    wanted = {member.box.x0_tenth_mm for member in seen if member.along is Axis.Z}
    wanted |= {member.box.z0_tenth_mm for member in seen if member.along is Axis.X}

    assert set() == {text_mm(place) for place in wanted} - found


@pytest.mark.parametrize("name", REQUESTS)
def test_what_is_seen_is_marked_once(name: str) -> None:
    frame, job = case(name)
    written = [word for words_ in words(draw_front_elevation(frame, job, 10)) for word in words_.replace(";", "").split(" ")]

    assert sorted(seen_in_front(frame)) == sorted(word for word in written if word.startswith(("B-", "U-")))


def test_the_facts_are_said_in_words() -> None:
    """Example A: 1327 wide, 2505 high, 52 members (`knowledge/worked-examples.md`)."""
    drawing = draw_front_elevation(*case("a"), 10)

    assert drawing.description.startswith("Front elevation of the frame, 1327 wide x 2505 high; 52 timbers, ")
    assert "Scale 1:10, dimensions in mm." in drawing.description


def test_packers_stand_beside_their_places() -> None:
    """25 mm of fall over four stations: 25, 16.7, 8.3 and none."""
    found = words(draw_front_elevation(*case("open at the left, low at the left"), 10))

    assert {"0 pack 25", "525.3 pack 16.7", "1050.7 pack 8.3"} <= set(found)


def test_without_a_base_there_is_no_running_line_for_it() -> None:
    frame, job = case("c0")

    assert [] == [member for member in frame.members if member.unit is Unit.BASE]
    assert 2 == words(draw_front_elevation(frame, job, 10)).count("0")  # above and at the right


@pytest.mark.parametrize(
    ("name", "label", "note"),
    [
        ("low at the back", "323.3 behind: pack 12", "the floor falls by 12 to the back"),
        ("low at the front", "323.3 pack 12", "the floor falls by 12 to the front"),
        ("fall of no known side", "323.3 pack up to 12", "the floor falls by 12; to which side was not said"),
    ],
)
def test_packers_say_where_they_go(name: str, label: str, note: str) -> None:
    found = words(draw_front_elevation(*case(name), 10))

    assert {label, note} <= set(found)


def test_a_flat_base_without_uprights_shows_its_packers() -> None:
    """Platform of 38 in 38 x 63 timber: rails on the floor, packers at the stations (`knowledge/framing.md`, section 3)."""
    frame, job = case("rails on the floor")

    assert [] == [member for member in frame.members if member.unit is Unit.BASE and member.along is Axis.Z]
    assert "323.3 pack up to 12" in words(draw_front_elevation(frame, job, 10))


def test_at_a_scale_too_small_marks_are_listed() -> None:
    frame, job = case("studs in the cheek, at 1:20")
    drawing = draw_front_elevation(frame, job, 100)
    written = {word for line in words(drawing) for word in line.replace(";", "").split(" ")}

    assert any(line.startswith("also seen, not marked above:") for line in words(drawing))
    assert set() == seen_in_front(frame).keys() - written
