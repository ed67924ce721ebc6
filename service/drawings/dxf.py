"""The design for a workshop's machine: DXF R2010, model space 1:1 in millimetres.

The front elevation of the frame with real dimensions stands at the origin; every board lies flat to its right as a closed
outline, its holes on a layer of their own, its mark as text that a router leaves alone. Reference: DXF of `ezdxf`.
"""

from __future__ import annotations

import io
from functools import cache
from itertools import pairwise
from typing import TYPE_CHECKING, Any, Final

from service.drawings.hidden_lines import find_edges
from service.drawings.projection import seen_from_front
from service.units import TENTHS_PER_MM

if TYPE_CHECKING:
    from collections.abc import Sequence
    from types import ModuleType

    from service.drawings.hidden_lines import Edge
    from service.frame import Frame, Panel

PLOT_RATIO: Final = 10  # texts and arrows are sized for 1:10
TEXT_MM: Final = 2.5 * PLOT_RATIO
GAP_MM: Final = 200.0  # between parts
DIMENSION_MM: Final = 10.0 * PLOT_RATIO  # first dimension line off the outline (`drawings.md`, section 2)
MILLIMETRES, METRIC = 4, 1  # $INSUNITS and $MEASUREMENT
LAYERS: Final = {  # name: colour of the index, line width in hundredths of a millimetre, line type
    "FRAME-VISIBLE": (7, 35, "CONTINUOUS"),
    "FRAME-HIDDEN": (8, 18, "DASHED"),
    "CUT": (1, 35, "CONTINUOUS"),
    "CUT-OUT": (5, 35, "CONTINUOUS"),
    "DIM": (3, 18, "CONTINUOUS"),
    "MARK": (4, 18, "CONTINUOUS"),
}
STYLE: Final = "WORKSHOP"


def write_dxf(frame: Frame) -> bytes:
    """The whole design as one file; same design, same bytes."""
    document = _ezdxf().new("R2010", setup=["linetypes"])
    document.header["$INSUNITS"] = MILLIMETRES
    document.header["$MEASUREMENT"] = METRIC
    for name, (colour, width, kind) in LAYERS.items():
        document.layers.add(name, color=colour, lineweight=width, linetype=kind)
    _dimension_style(document)
    space = document.modelspace()
    _elevation(space, frame)
    _boards(space, frame)
    page = io.StringIO()
    document.write(page)
    return page.getvalue().encode("utf-8")


@cache
def _ezdxf() -> ModuleType:
    """Loaded at its first use: it takes over a second. Fixed times and names, so that equal designs give equal bytes."""
    import ezdxf  # heavy: first use

    ezdxf.options.write_fixed_meta_data_for_testing = True  # type: ignore[attr-defined]  # a documented name
    return ezdxf


def _dimension_style(document: Any) -> None:  # noqa: ANN401 - untyped by its library
    style = document.dimstyles.new(STYLE)
    style.dxf.dimtxt = TEXT_MM
    style.dxf.dimasz = TEXT_MM
    style.dxf.dimexe = TEXT_MM / 2
    style.dxf.dimexo = TEXT_MM / 2
    style.dxf.dimgap = TEXT_MM / 3
    style.dxf.dimtad = 1  # above the line
    style.dxf.dimdec = 1  # tenths where they are not zero
    style.dxf.dimzin = 8
    style.dxf.dimtsz = TEXT_MM / 2  # oblique strokes


def _mm(length_tenth_mm: int) -> float:
    return length_tenth_mm / TENTHS_PER_MM


def _elevation(space: Any, frame: Frame) -> None:  # noqa: ANN401 - untyped by its library
    edges = find_edges([seen_from_front(member.mark, member.box) for member in frame.members])
    for layer, found in (("FRAME-VISIBLE", edges.visible), ("FRAME-HIDDEN", edges.hidden)):
        for edge in found:
            space.add_line(*_ends(edge), dxfattribs={"layer": layer})
    for member in frame.members:
        at = member.box
        middle = (_mm(at.x0_tenth_mm + at.x1_tenth_mm) / 2, _mm(at.z0_tenth_mm + at.z1_tenth_mm) / 2)
        if at.y1_tenth_mm == frame.sizes.frame_depth_tenth_mm:
            upright = at.z1_tenth_mm - at.z0_tenth_mm > at.x1_tenth_mm - at.x0_tenth_mm
            _text(space, member.mark, middle, turned=upright)
    _dimensions(space, frame)


def _ends(edge: Edge) -> tuple[tuple[float, float], tuple[float, float]]:
    at, low, high = _mm(edge.at_tenth_mm), _mm(edge.low_tenth_mm), _mm(edge.high_tenth_mm)
    return ((at, low), (at, high)) if edge.upright else ((low, at), (high, at))


def _dimensions(space: Any, frame: Frame) -> None:  # noqa: ANN401 - untyped by its library
    width, top = frame.sizes.frame_width_tenth_mm, frame.levels.upper_top_tenth_mm
    levels = frame.levels
    _across(space, (0, width), -2 * DIMENSION_MM)
    for opening in frame.openings:
        _across(space, (opening.x0_tenth_mm, opening.x1_tenth_mm), _mm(opening.z0_tenth_mm) + DIMENSION_MM)
    heights = sorted(
        {0, levels.platform_tenth_mm, levels.appliance_top_tenth_mm, top}
        | {level for level in (levels.recess_sill_tenth_mm, levels.recess_head_tenth_mm) if level is not None}
    )
    for low, high in pairwise(heights):
        _upward(space, (low, high), -DIMENSION_MM)
    _upward(space, (0, top), -2 * DIMENSION_MM)


def _across(space: Any, ends: tuple[int, int], y_mm: float) -> None:  # noqa: ANN401 - untyped by its library
    left, right = (_mm(end) for end in ends)
    space.add_linear_dim(
        base=(left, y_mm), p1=(left, 0), p2=(right, 0), dimstyle=STYLE, dxfattribs={"layer": "DIM"}
    ).render()  # fmt: skip


def _upward(space: Any, ends: tuple[int, int], x_mm: float) -> None:  # noqa: ANN401 - untyped by its library
    low, high = (_mm(end) for end in ends)
    space.add_linear_dim(
        base=(x_mm, low), p1=(0, low), p2=(0, high), angle=90, dimstyle=STYLE, dxfattribs={"layer": "DIM"}
    ).render()  # fmt: skip


def _boards(space: Any, frame: Frame) -> None:  # noqa: ANN401 - untyped by its library
    """One board after the other, on their floor line; a tapered one keeps its full rectangle, and its text says the taper."""
    left_mm = _mm(frame.sizes.frame_width_tenth_mm) + 3 * GAP_MM
    for panel in frame.panels:
        _board(space, panel, left_mm)
        left_mm += panel.cut_width_mm + GAP_MM


def _board(space: Any, panel: Panel, left_mm: float) -> None:  # noqa: ANN401 - untyped by its library
    width, height = float(panel.cut_width_mm), float(panel.cut_height_mm)
    _outline(space, (left_mm, 0.0, left_mm + width, height), "CUT")
    for hole in panel.cut_outs:
        x, y = left_mm + _mm(hole.x_tenth_mm), _mm(hole.y_tenth_mm)
        _outline(space, (x, y, x + _mm(hole.width_tenth_mm), y + _mm(hole.height_tenth_mm)), "CUT-OUT")
    taper = f", taper {_mm(panel.taper_tenth_mm):g}" if panel.taper_tenth_mm else ""
    words = (panel.mark, panel.role.value.replace("_", " "), f"{panel.thickness_tenth_mm / TENTHS_PER_MM:g} thick{taper}")
    for place, line in enumerate(words):
        _text(space, line, (left_mm + width / 2, -(place + 2) * 1.5 * TEXT_MM))


def _outline(space: Any, area_mm: Sequence[float], layer: str) -> None:  # noqa: ANN401 - untyped by its library
    left, low, right, high = area_mm
    corners = ((left, low), (right, low), (right, high), (left, high))
    space.add_lwpolyline(corners, close=True, dxfattribs={"layer": layer})


def _text(space: Any, content: str, middle_mm: tuple[float, float], *, turned: bool = False) -> None:  # noqa: ANN401 - untyped
    text = space.add_text(content, height=TEXT_MM, rotation=90 if turned else 0, dxfattribs={"layer": "MARK"})
    text.dxf.halign, text.dxf.valign = 1, 2  # centre, middle
    text.dxf.align_point = text.dxf.insert = middle_mm
