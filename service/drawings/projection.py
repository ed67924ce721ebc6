"""From the frame's boxes to flat faces, and the paper areas of faces."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.drawings.hidden_lines import Face

if TYPE_CHECKING:
    from service.drawings.canvas import Canvas
    from service.drawings.hidden_lines import Edge
    from service.drawings.primitives import AreaMm, Pen
    from service.frame import Box


def seen_from_front(mark: str, box: Box) -> Face:
    """A box as seen from the room: x to the right, z up."""
    return Face(
        mark=mark, left_tenth_mm=box.x0_tenth_mm, right_tenth_mm=box.x1_tenth_mm,
        low_tenth_mm=box.z0_tenth_mm, high_tenth_mm=box.z1_tenth_mm,
        near_tenth_mm=-box.y1_tenth_mm,
    )  # fmt: skip


def seen_from_left(mark: str, box: Box, plane_tenth_mm: int) -> Face | None:
    """A box as seen along x from a plane: y to the right, z up; None before the plane. What the plane cuts is nearest."""
    if box.x1_tenth_mm <= plane_tenth_mm:
        return None
    return Face(
        mark=mark, left_tenth_mm=box.y0_tenth_mm, right_tenth_mm=box.y1_tenth_mm,
        low_tenth_mm=box.z0_tenth_mm, high_tenth_mm=box.z1_tenth_mm,
        near_tenth_mm=max(box.x0_tenth_mm, plane_tenth_mm),
    )  # fmt: skip


def area_of(canvas: Canvas, face: Face) -> AreaMm:
    """Where a face lies on the paper."""
    mm = canvas.mm
    return (mm(face.left_tenth_mm), mm(face.low_tenth_mm), mm(face.right_tenth_mm), mm(face.high_tenth_mm))


def draw_edges(canvas: Canvas, edges: tuple[Edge, ...], pen: Pen) -> None:
    """Draw edges with one pen."""
    for edge in edges:
        at, low, high = canvas.mm(edge.at_tenth_mm), canvas.mm(edge.low_tenth_mm), canvas.mm(edge.high_tenth_mm)
        if edge.upright:
            canvas.line((at, low), (at, high), pen)
        else:
            canvas.line((low, at), (high, at), pen)
