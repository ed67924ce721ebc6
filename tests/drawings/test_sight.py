"""What is seen where: every member stands in one of the views or in the list."""

from __future__ import annotations

import pytest

from service.drawings.plane import find_plane
from service.drawings.sight import out_of_sight, seen_beyond, seen_in_front
from service.frame import Role
from tests.drawings.cases import REQUESTS, case


@pytest.mark.parametrize("name", REQUESTS)
def test_each_member_is_seen_cut_or_listed(name: str) -> None:
    frame, _ = case(name)
    plane = find_plane(frame)
    cut = {member.mark for member in frame.members if member.box.x0_tenth_mm < plane < member.box.x1_tenth_mm}
    listed = {word for entry in out_of_sight(frame, plane) for word in entry.split(" ") if "-" in word}
    seen = seen_in_front(frame).keys() | seen_beyond(frame, plane).keys() | cut

    assert {member.mark for member in frame.members} == seen | listed
    assert set() == seen & listed


@pytest.mark.parametrize("name", REQUESTS)
def test_every_member_with_its_face_in_the_front_is_seen_from_there(name: str) -> None:
    frame, _ = case(name)
    front = {member.mark for member in frame.members if member.box.y1_tenth_mm == frame.sizes.frame_depth_tenth_mm}

    assert front <= seen_in_front(frame).keys()


def test_rear_rails_level_with_front_rails_are_not_seen_from_the_front() -> None:
    frame, _ = case("a")
    hidden = {member.mark for member in frame.members if member.role in {Role.REAR_MID_RAIL, Role.TOP_RAIL_REAR}}

    assert set() == hidden & seen_in_front(frame).keys()
    assert {member.mark for member in frame.members if member.role is Role.SCREEN_BEARER} <= seen_in_front(frame).keys()


def test_nothing_of_the_left_half_is_seen_beyond_the_plane() -> None:
    frame, _ = case("a")
    plane = find_plane(frame)
    left = {member.mark for member in frame.members if member.box.x1_tenth_mm <= plane}

    assert set() == left & seen_beyond(frame, plane).keys()
