from __future__ import annotations

import pytest

from service.drawings.solids import Side, Solid, Stuff, boards, bodies, ceiling_cap, timbers
from service.frame import overlap_tenth_mm
from tests.drawings.cases import REQUESTS, case


def volume(solid: Solid) -> int:
    at = solid.box
    return (
        (at.x1_tenth_mm - at.x0_tenth_mm) * (at.y1_tenth_mm - at.y0_tenth_mm) * (at.z1_tenth_mm - at.z0_tenth_mm)
    )  # fmt: skip


@pytest.mark.parametrize("name", REQUESTS)
def test_pieces_of_boards_are_the_boards_without_their_holes(name: str) -> None:
    frame, _job = case(name)
    found = boards(frame)
    for panel in frame.panels:
        own = [piece for piece in found if piece.mark == panel.mark]
        whole = volume(Solid(mark="", stuff=Stuff.BOARD, box=panel.box))
        depth = panel.box.y1_tenth_mm - panel.box.y0_tenth_mm
        holes = sum(hole.width_tenth_mm * hole.height_tenth_mm * depth for hole in panel.cut_outs)

        assert whole - holes == sum(volume(piece) for piece in own)


@pytest.mark.parametrize("name", REQUESTS)
def test_no_two_solids_share_volume(name: str) -> None:
    frame, job = case(name)
    for solids in (timbers(frame), (*boards(frame), *bodies(frame, job), *ceiling_cap(frame))):
        for place, first in enumerate(solids):
            for second in solids[:place]:
                assert min(overlap_tenth_mm(first.box, second.box)) <= 0, (first.mark, second.mark)


def test_pieces_know_where_they_go_on() -> None:
    frame, _job = case("a")
    joined = {side for piece in boards(frame) for side in piece.joined}

    assert set(Side) == joined
    assert all(not piece.joined for piece in boards(case("c")[0]))


def test_only_a_breast_up_to_the_ceiling_has_a_cap() -> None:
    assert 1 == len(ceiling_cap(case("a")[0]))
    assert () == ceiling_cap(case("c")[0])
    assert ("fire", "screen") == tuple(one.mark for one in bodies(*case("a")))
    assert ("fire",) == tuple(one.mark for one in bodies(*case("c")))
