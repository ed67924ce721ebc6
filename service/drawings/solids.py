"""A design as solid boxes: timbers, boards in pieces without holes, the bodies of fire and screen."""

from __future__ import annotations

from enum import StrEnum
from itertools import pairwise
from typing import TYPE_CHECKING

import msgspec

from service.drawings.neighbours import fire_box, screen_box
from service.frame import Box, Layer, Unit

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.brief import Job
    from service.frame import Frame, Panel


CAP_TENTH_MM = 10  # thin


class Stuff(StrEnum):
    """What a solid is of, which decides how it looks."""

    BASE = "base"  # timber of the base frame
    UPPER = "upper"  # timber of the upper frame
    BOARD = "board"  # faces, returns, lid
    INSIDE = "inside"  # linings and backboard
    FIRE = "fire"
    SCREEN = "screen"
    CEILING = "ceiling"  # covers what is open at the top


class Side(StrEnum):
    """A side of a box."""

    LEFT = "left"
    RIGHT = "right"
    LOW = "low"
    HIGH = "high"


class Solid(msgspec.Struct, frozen=True, kw_only=True):
    """One box. Pieces of one board have one mark; `joined` are the sides where it goes on in another piece."""

    mark: str
    stuff: Stuff
    box: Box
    joined: frozenset[Side] = frozenset()


def timbers(frame: Frame) -> tuple[Solid, ...]:
    """All timbers."""
    stuff = {Unit.BASE: Stuff.BASE, Unit.UPPER: Stuff.UPPER}
    return tuple(Solid(mark=member.mark, stuff=stuff[member.unit], box=member.box) for member in frame.members)


def boards(frame: Frame) -> tuple[Solid, ...]:
    """All boards; one with a hole in pieces around it."""
    return tuple(piece for panel in frame.panels for piece in _pieces(panel))


def bodies(frame: Frame, job: Job) -> tuple[Solid, ...]:
    """Fire and screen."""
    screen = screen_box(frame, job)
    fire = (Solid(mark="fire", stuff=Stuff.FIRE, box=fire_box(frame, job)),)
    return (*fire, *((Solid(mark="screen", stuff=Stuff.SCREEN, box=screen),) if screen else ()))


def ceiling_cap(frame: Frame) -> tuple[Solid, ...]:
    """What closes the top of a breast that ends at the ceiling; a part-height one has a lid."""
    if not frame.full_height:
        return ()
    around = [panel.box for panel in frame.panels]
    top = frame.levels.finished_top_tenth_mm
    cap = Box(
        x0_tenth_mm=min(box.x0_tenth_mm for box in around), x1_tenth_mm=max(box.x1_tenth_mm for box in around),
        y0_tenth_mm=0, y1_tenth_mm=max(box.y1_tenth_mm for box in around), z0_tenth_mm=top, z1_tenth_mm=top + CAP_TENTH_MM,
    )  # fmt: skip
    return (Solid(mark="ceiling", stuff=Stuff.CEILING, box=cap),)


def _pieces(panel: Panel) -> tuple[Solid, ...]:
    stuff = Stuff.INSIDE if panel.layer in {Layer.LINING, Layer.BACKBOARD} else Stuff.BOARD
    if not panel.cut_outs:
        return (Solid(mark=panel.mark, stuff=stuff, box=panel.box),)
    at = panel.box
    columns = _grid(at.x0_tenth_mm, at.x1_tenth_mm, [(hole.x_tenth_mm, hole.width_tenth_mm) for hole in panel.cut_outs])
    rows = _grid(at.z0_tenth_mm, at.z1_tenth_mm, [(hole.y_tenth_mm, hole.height_tenth_mm) for hole in panel.cut_outs])
    holes = [
        (
            at.x0_tenth_mm + hole.x_tenth_mm, at.x0_tenth_mm + hole.x_tenth_mm + hole.width_tenth_mm,
            at.z0_tenth_mm + hole.y_tenth_mm, at.z0_tenth_mm + hole.y_tenth_mm + hole.height_tenth_mm,
        )
        for hole in panel.cut_outs
    ]  # fmt: skip
    kept = {
        (column, row)
        for column, (x0, x1) in enumerate(columns)
        for row, (z0, z1) in enumerate(rows)
        if not any(left <= x0 and x1 <= right and low <= z0 and z1 <= high for left, right, low, high in holes)
    }
    beside = ((Side.LEFT, -1, 0), (Side.RIGHT, 1, 0), (Side.LOW, 0, -1), (Side.HIGH, 0, 1))
    return tuple(
        Solid(
            mark=panel.mark,
            stuff=stuff,
            box=_part(at, columns[column], rows[row]),
            joined=frozenset(side for side, along, up in beside if (column + along, row + up) in kept),
        )
        for column, row in sorted(kept)
    )


def _part(whole: Box, x: tuple[int, int], z: tuple[int, int]) -> Box:
    return msgspec.structs.replace(whole, x0_tenth_mm=x[0], x1_tenth_mm=x[1], z0_tenth_mm=z[0], z1_tenth_mm=z[1])


def _grid(low: int, high: int, spans: Iterable[tuple[int, int]]) -> tuple[tuple[int, int], ...]:
    """Stretches between the edges of a board and of its holes."""
    edges = {low, high}
    for start, length in spans:
        edges |= {min(max(low + start, low), high), min(max(low + start + length, low), high)}
    return tuple(pairwise(sorted(edges)))
