"""What lies beside a breast that stands against a side wall (`knowledge/framing.md`, section 14; `survey.md`, section 4)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.survey.wall import Wall, WallConstruction
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.brief.place import Walls
    from service.rules import RuleSet
    from service.survey.survey import Survey

WALL = "/survey/wall"
SQUARE_OVER_TENTH_MM = 6_000  # a side wall out of square is measured over 600: survey.md, section 4


class Beside(msgspec.Struct, frozen=True, kw_only=True):
    """Side walls that the breast meets, by the names that a job gives them."""

    left_wall: bool
    right_wall: bool
    side_packing_tenth_mm: int
    out_of_square_tenth_mm: int
    side_construction: WallConstruction


def take_beside(survey: Survey, walls: Walls, rules: RuleSet, notes: Notes, *, depth_tenth_mm: int) -> Beside:
    """Read what a side wall asks for; without one nothing is asked."""
    wall = survey.wall or Wall()
    off, construction = 0, wall.construction or WallConstruction.UNKNOWN
    side = construction
    if walls.left_wall or walls.right_wall:
        effect = "scribing of the face to the side wall"
        square_mm = notes.take(f"{WALL}/square_mm", wall.square_mm, rules.defaults.square_mm, effect)
        off = tenths(square_mm) * depth_tenth_mm // SQUARE_OVER_TENTH_MM
        side = notes.suppose(f"{WALL}/side_construction", wall.side_construction, construction, "fixings into the side wall")
    return Beside(
        left_wall=walls.left_wall,
        right_wall=walls.right_wall,
        side_packing_tenth_mm=tenths(rules.frame.side_packing_mm) + max(-off, 0),  # what there is to be at the front
        out_of_square_tenth_mm=off,
        side_construction=side,
    )
