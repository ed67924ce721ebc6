"""Framing.md, section 14, "against one side wall", and cladding.md, section 6; figures worked by hand from example C."""

from __future__ import annotations

import pytest

from service.frame import PanelRole
from tests.examples_of import Request, changed, example_a, example_b, example_c, frame_of, job_of, unmet_of, without
from tests.properties import laws

ROOM, WALL, BRIEF = "/survey/room", "/survey/wall", "/survey/brief"
CENTRE, LENGTH = f"{ROOM}/breast_centre_from_left_mm", f"{ROOM}/wall_length_mm"
C = without(example_c(), f"{ROOM}/heights", "/survey/floor/levels")  # W 1355, D 300, board 12
LEFT: Request = {CENTRE: 677.5}
RIGHT: Request = {CENTRE: 3322.5}
BOTH: Request = {CENTRE: 677.5, LENGTH: 1355}


@pytest.mark.parametrize(
    ("values", "frame_width", "returns", "fixings"),
    [
        # Wf = W - tf - c with c = 10: 1355 - 12 - 10 = 1333; between two walls 1355 - 2 x 10 = 1335
        (LEFT, 13_330, [PanelRole.RETURN_RIGHT], {True}),
        (RIGHT, 13_330, [PanelRole.RETURN_LEFT], {False}),
        (BOTH, 13_350, [], {True, False}),
    ],
)
def test_an_end_at_a_side_wall(values: Request, frame_width: int, returns: list[PanelRole], fixings: set[bool]) -> None:
    request = changed(C, values)
    frame = frame_of(request)

    assert (13_550, frame_width) == (frame.sizes.finished_width_tenth_mm, frame.sizes.frame_width_tenth_mm)
    assert returns == [panel.role for panel in frame.panels if panel.role.value.startswith("return")]
    assert fixings == {one.left for one in frame.side_fixings}
    assert {} == laws.broken(job_of(request), frame)


def test_fixings_into_the_side_wall() -> None:
    """Through the front upright, 1162 - 134 = 1028 long: ceil(1028/500) + 1 = 4, 75 from its ends."""
    frame = frame_of(changed(C, LEFT))

    assert [2090, 5016, 7943, 10_870] == [one.z_tenth_mm for one in frame.side_fixings]
    assert {"U-L1"} == {one.through for one in frame.side_fixings}
    assert 4 * 2 == len(frame_of(changed(C, BOTH)).side_fixings)


@pytest.mark.parametrize(
    ("square_mm", "width"),
    [
        (0, 13_650),  # frame 1333 + return's edge 12 + packing 10 + scribe 10
        (20, 13_650),  # 20 x 300 / 600 = 10 over the depth: within the scribe
        (22, 13_760),  # 11 over the depth: the scribe grows by it, to 21
        (-22, 13_650),  # the room narrows by 11: packing 21 behind and 10 at the front, the frame 11 narrower
    ],
)
def test_the_face_is_scribed_to_the_side_wall(square_mm: float, width: int) -> None:
    frame = frame_of(changed(C, {**LEFT, f"{WALL}/square_mm": square_mm}))

    assert {width} == {panel.width_tenth_mm for panel in frame.panels if panel.role is PanelRole.FACE_UPPER}
    assert {width} == {panel.width_tenth_mm for panel in frame.panels if panel.role is PanelRole.LID}


@pytest.mark.parametrize(
    ("request_", "values"),
    [
        (example_a(), {CENTRE: 678.5, LENGTH: 3900}),
        (example_b(), {CENTRE: 3175}),  # open at the right, the wall 4000 long
    ],
)
def test_no_glass_to_a_side_wall(request_: Request, values: Request) -> None:
    found = unmet_of(changed(without(request_, f"{ROOM}/heights", "/survey/floor/levels"), values))

    assert [("end_wall", 50.0, 0.0)] == [(one.code, one.asked_mm, one.available_mm) for one in found if one.code == "end_wall"]


def test_what_the_fitter_is_told() -> None:
    notes = frame_of(changed(C, {**LEFT, f"{WALL}/square_mm": 12})).notes

    assert any("the left ladder" in note and "10 behind, 16 at the front" in note for note in notes)
