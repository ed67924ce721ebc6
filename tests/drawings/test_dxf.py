"""The file is read back by `ezdxf`, whose audit looks for what other programs would stumble over."""

from __future__ import annotations

import io
from typing import Any

import pytest
from ezdxf.filemanagement import read as read_dxf

from service.drawings.dxf import write_dxf
from tests.drawings.cases import REQUESTS, case


def read(name: str) -> Any:  # noqa: ANN401 - untyped by its library
    return read_dxf(io.StringIO(write_dxf(case(name)[0]).decode("utf-8")))


@pytest.mark.parametrize("name", REQUESTS)
def test_the_audit_finds_nothing(name: str) -> None:
    document = read(name)

    assert [] == list(document.audit().errors)
    assert (4, 1) == (document.header["$INSUNITS"], document.header["$MEASUREMENT"])


@pytest.mark.parametrize("name", REQUESTS)
def test_boards_are_closed_outlines_of_their_cut_sizes(name: str) -> None:
    frame, _job = case(name)
    outlines = list(read(name).modelspace().query('LWPOLYLINE[layer=="CUT"]'))
    sizes = []
    for outline in outlines:
        assert outline.closed
        xs, ys = [point[0] for point in outline.get_points()], [point[1] for point in outline.get_points()]
        sizes.append((round(max(xs) - min(xs), 6), round(max(ys) - min(ys), 6)))

    assert [(panel.cut_width_mm, panel.cut_height_mm) for panel in frame.panels] == sizes
    holes = sum(len(panel.cut_outs) for panel in frame.panels)
    assert holes == len(read(name).modelspace().query('LWPOLYLINE[layer=="CUT-OUT"]'))


@pytest.mark.parametrize("name", REQUESTS)
def test_dimensions_measure_the_frame(name: str) -> None:
    frame, _job = case(name)
    found = [round(one.get_measurement(), 1) for one in read(name).modelspace().query("DIMENSION")]
    openings = [(one.x1_tenth_mm - one.x0_tenth_mm) / 10 for one in frame.openings]
    chain = found[1 + len(openings) : -1]

    assert [frame.sizes.frame_width_tenth_mm / 10, *openings] == found[: 1 + len(openings)]
    assert frame.levels.upper_top_tenth_mm / 10 == found[-1]
    assert pytest.approx(found[-1]) == sum(chain)


def test_every_front_timber_and_every_board_is_marked() -> None:
    frame, _job = case("a")
    words = {one.dxf.text for one in read("a").modelspace().query('TEXT[layer=="MARK"]')}
    front = {member.mark for member in frame.members if member.box.y1_tenth_mm == frame.sizes.frame_depth_tenth_mm}

    assert front | {panel.mark for panel in frame.panels} <= words


def test_same_design_same_bytes() -> None:
    assert write_dxf(case("b")[0]) == write_dxf(case("b")[0])
