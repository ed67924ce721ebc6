"""One list of primitives in paper millimetres: what every view is made of and every writer takes.

Paper axes: x right, y up, in millimetres of the paper at the view's scale; a writer turns them as its format wants.
Line widths and types: ISO 128-2:2022 (widths secondary, types from memory), as chosen in `drawings.md`, sections 2 and 3.
"""

from __future__ import annotations

from enum import StrEnum

import msgspec

type PointMm = tuple[float, float]
type AreaMm = tuple[float, float, float, float]  # left, lower, right, upper edge


class Pen(StrEnum):
    """What a line says; its width and dashes are the writer's."""

    CUT = "cut"  # outline of what the section plane cuts
    VISIBLE = "visible"  # seen edge
    HIDDEN = "hidden"  # edge behind something
    NARROW = "narrow"  # dimension, extension, leader, hatching
    NEIGHBOUR = "neighbour"  # outline of the fire or the screen, which are no part of the frame
    GROUND = "ground"  # floor, wall and ceiling
    PLANE = "plane"  # ends of the section plane


class Fill(StrEnum):
    """What an area says; darkness first, colour second."""

    PAPER = "paper"
    BASE = "base"  # timber of the base frame
    UPPER = "upper"  # timber of the upper frame
    BEHIND = "behind"  # timber further back
    BOARD = "board"
    BASE_SIDE = "base_side"  # of pictures: the same things where less light falls, or more
    BASE_TOP = "base_top"
    UPPER_SIDE = "upper_side"
    UPPER_TOP = "upper_top"
    BOARD_SIDE = "board_side"
    BOARD_TOP = "board_top"
    GLASS = "glass"
    GLASS_SIDE = "glass_side"
    SOLID = "solid"  # cut board, dots, arrow heads


class Anchor(StrEnum):
    """Which end of a text stands at its point."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


class Line(msgspec.Struct, frozen=True, kw_only=True, tag=True):
    """A straight line."""

    start_mm: PointMm
    end_mm: PointMm
    pen: Pen


class Polygon(msgspec.Struct, frozen=True, kw_only=True, tag=True):
    """A closed shape; without a pen it has no outline, without a fill it is open."""

    points_mm: tuple[PointMm, ...]
    pen: Pen | None = None
    fill: Fill | None = None


class Circle(msgspec.Struct, frozen=True, kw_only=True, tag=True):
    """A circle, for origins of running sizes and dots of leaders."""

    centre_mm: PointMm
    radius_mm: float
    pen: Pen | None = None
    fill: Fill | None = None


class Text(msgspec.Struct, frozen=True, kw_only=True, tag=True):
    """One line of text on its baseline; turned: read from the right."""

    at_mm: PointMm
    content: str
    height_mm: float  # of a capital letter
    anchor: Anchor = Anchor.START
    turned: bool = False
    backing: Fill | None = None  # a patch that interrupts the lines under it


type Primitive = Line | Polygon | Circle | Text


class Group(msgspec.Struct, frozen=True, kw_only=True):
    """Primitives that belong together, drawn in their order."""

    name: str
    parts: tuple[Primitive, ...]


class Drawing(msgspec.Struct, frozen=True, kw_only=True):
    """One view, ready for a writer."""

    name: str  # short and of small letters: writers make ids of it
    title: str
    description: str
    scale_ratio: int  # 10 means 1:10
    area_mm: AreaMm
    groups: tuple[Group, ...]
