"""Board elevation: sizes of boards against the cut list, joints, cut-outs and screw lines."""

from __future__ import annotations

import msgspec
import pytest

from service.drawings.board_elevation import FACE_ROLES, draw_board_elevation
from service.drawings.primitives import Line, Pen
from service.units import text_mm
from tests.drawings.cases import REQUESTS, case
from tests.drawings.lint import lint, primitives, words


@pytest.mark.parametrize("scale", [10, 20])
@pytest.mark.parametrize("name", REQUESTS)
def test_it_is_readable(name: str, scale: int) -> None:
    assert [] == lint(draw_board_elevation(*case(name), scale))


@pytest.mark.parametrize("name", REQUESTS)
def test_every_board_is_named_with_its_cut_size(name: str) -> None:
    frame, job = case(name)
    written = " ".join(words(draw_board_elevation(frame, job, 10)))

    for panel in frame.panels:
        size = f"{panel.cut_width_mm} x {panel.cut_height_mm}"
        between = " " if panel.role in FACE_ROLES else f" {panel.role.value.replace('_', ' ')} "
        assert f"{panel.mark}{between}{size}" in written


@pytest.mark.parametrize("name", REQUESTS)
def test_cut_outs_are_given_from_the_left_edge_and_from_the_floor(name: str) -> None:
    frame, job = case(name)
    found = set(words(draw_board_elevation(frame, job, 10)))
    left = min(panel.box.x0_tenth_mm for panel in frame.panels if panel.role in FACE_ROLES)

    for panel in frame.panels:
        for hole in panel.cut_outs:
            x, z = panel.box.x0_tenth_mm + hole.x_tenth_mm - left, panel.box.z0_tenth_mm + hole.y_tenth_mm
            assert {text_mm(x), text_mm(x + hole.width_tenth_mm)} <= found
            assert {f"{text_mm(z)} cut-out", f"{text_mm(z + hole.height_tenth_mm)} cut-out"} <= found


def test_the_boards_of_example_a() -> None:
    """Opening of the recess 1064 x 657 in boards 1357 wide (`knowledge/worked-examples.md`, A): (1357 - 1064) / 2 = 146.5."""
    found = set(words(draw_board_elevation(*case("a"), 10)))

    assert {"146.5", "1210.5", "1145 cut-out", "1802 cut-out", "1357", "2515"} <= found


def test_studs_are_dashed_behind_the_boards() -> None:
    dashed = [
        part for part in primitives(draw_board_elevation(*case("a"), 10)) if isinstance(part, Line) and part.pen is Pen.HIDDEN
    ]
    upright = {line.start_mm[0] for line in dashed if line.start_mm[0] == line.end_mm[0]}

    assert {64.45, 68.25} <= upright  # the middle stud of the example, 644.5 to 682.5


def test_the_facts_are_said_in_words() -> None:
    description = draw_board_elevation(*case("a"), 10).description

    assert description.startswith("Front elevation of the boards, 1357 wide x 2515 high; 3 of 12 boards lie in the face.")


def test_boards_too_small_to_write_on_are_listed() -> None:
    frame, job = case("studs in the cheek, at 1:20")
    found = words(draw_board_elevation(frame, job, 100))
    panels = {panel.mark for panel in frame.panels}

    assert any(line.startswith("also in the face:") for line in found)
    assert set() == panels - {word for line in found for word in line.replace(";", "").split(" ")}


def test_a_plain_front_needs_no_running_line_and_no_list() -> None:
    """Example A without its upper face and its other boards: one board, no cut-out."""
    frame, job = case("a")
    bare = msgspec.structs.replace(frame, panels=tuple(panel for panel in frame.panels if panel.mark == "P-FB1"))
    found = words(draw_board_elevation(bare, job, 10))

    assert [] == [line for line in found if line.startswith("not in the face:")]
    assert 2 == found.count("0")  # above and at the right


def test_a_board_tapered_for_the_floor_says_so() -> None:
    """Example B: the floor falls by 9, so that the base face of 250 is cut 259 high (`knowledge/worked-examples.md`, B)."""
    note = "boards at the floor are cut up to 9 higher than drawn, tapered to the floor"

    assert {note, "1646 x 259"} <= set(words(draw_board_elevation(*case("b"), 10)))
    assert note not in words(draw_board_elevation(*case("a"), 10))
