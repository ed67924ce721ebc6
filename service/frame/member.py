"""One length of timber and the words for it.

Axes, said once: origin at the floor, the wall face and the left end of the frame as one faces it; x right along the wall,
y out into the room, z up. These axes are left-handed: exporters to glTF and DXF turn them.
"""

from __future__ import annotations

from enum import StrEnum

import msgspec


class Unit(StrEnum):
    """The two units that a breast is built of."""

    BASE = "base"  # stands on the floor and carries the fire
    UPPER = "upper"  # hangs from wall and ceiling


class Role(StrEnum):
    """What a member is called in the trade (`knowledge/framing.md`, sections 1, 3 and 4)."""

    RAIL = "rail"  # of the base
    UPRIGHT = "upright"  # of the base
    CROSS_NOGGIN = "cross_noggin"
    PACK = "pack"  # solid pack under a flat base frame
    LADDER_UPRIGHT = "ladder_upright"
    LADDER_NOGGIN = "ladder_noggin"
    TRIMMER = "trimmer"
    TRIMMER_PLY = "trimmer_ply"
    SILL_RAIL = "sill_rail"
    UPSTAND_RAIL = "upstand_rail"  # stands where the sill would, without a screen
    HEAD_RAIL = "head_rail"
    TOP_RAIL_FRONT = "top_rail_front"
    TOP_RAIL_REAR = "top_rail_rear"
    REAR_BOTTOM_RAIL = "rear_bottom_rail"
    REAR_MID_RAIL = "rear_mid_rail"
    EXTRA_REAR_RAIL = "extra_rear_rail"
    JAMB_STUD = "jamb_stud"
    CRIPPLE_BELOW = "cripple_below"
    CRIPPLE_ABOVE = "cripple_above"
    FRONT_STUD = "front_stud"
    SCREEN_BEARER = "screen_bearer"
    JACK_STUD = "jack_stud"
    CHEEK_NOGGIN = "cheek_noggin"
    CHEEK_STUD = "cheek_stud"
    LID_JOIST = "lid_joist"
    JAMB_PACKER = "jamb_packer"  # ripped to fill between ladder and opening edge


class Fit(StrEnum):
    """How a piece meets its neighbours, which decides how its length is rounded."""

    BETWEEN = "between"  # cut down to whole mm
    THROUGH = "through"  # cut to the nearest whole mm


class CutWhen(StrEnum):
    """When a piece is cut."""

    NOW = "now"
    AFTER_MEASURE = "after_measure"  # its length follows from the ceiling above the fire


class EndJoint(StrEnum):
    """What holds one end of a member (`knowledge/framing.md`, section 10.1)."""

    NONE = "none"  # a through member: others butt against it
    BEARING = "bearing"
    BRACKET = "bracket"
    HEAVY_BRACKET = "heavy_bracket"
    BRACKET_PAIR = "bracket_pair"  # over and under the end
    SCREWED = "screwed"

    @property
    def bracket_count(self) -> int:
        """Brackets at an end, of either size."""
        return {EndJoint.BRACKET: 1, EndJoint.HEAVY_BRACKET: 1, EndJoint.BRACKET_PAIR: 2}.get(self, 0)


class Axis(StrEnum):
    """Direction of a member's length."""

    X = "x"
    Y = "y"
    Z = "z"


class Box(msgspec.Struct, frozen=True, kw_only=True):
    """Where a thing stands, in tenths of a millimetre."""

    x0_tenth_mm: int
    x1_tenth_mm: int
    y0_tenth_mm: int
    y1_tenth_mm: int
    z0_tenth_mm: int
    z1_tenth_mm: int


class Member(msgspec.Struct, frozen=True, kw_only=True):
    """One length of timber, as it is cut and where it stands."""

    mark: str  # "B-R1": base frame, rail 1; the same on drawing, cut plan and check
    role: Role
    unit: Unit
    thickness_tenth_mm: int  # narrow side b
    width_tenth_mm: int  # wide side d
    strength_class: str  # EN 338: the job's, or a stronger one that the checks ask for
    along: Axis
    length_tenth_mm: int
    cut_length_mm: int  # whole mm, rounded once
    fit: Fit
    cut_when: CutWhen
    box: Box
    start_joint: EndJoint  # at the low end of its axis
    end_joint: EndJoint
    from_bar: bool = True  # False: shorter than 30 mm, ripped to fit or of sheet; made as a pack, not cut from a bar
    reason: str = ""  # why strengthening added it


def overlap_tenth_mm(first: Box, second: Box) -> tuple[int, int, int]:
    """How far two boxes share x, y and z, in tenths of a millimetre; not positive: apart or touching on that axis."""
    return (
        min(first.x1_tenth_mm, second.x1_tenth_mm) - max(first.x0_tenth_mm, second.x0_tenth_mm),
        min(first.y1_tenth_mm, second.y1_tenth_mm) - max(first.y0_tenth_mm, second.y0_tenth_mm),
        min(first.z1_tenth_mm, second.z1_tenth_mm) - max(first.z0_tenth_mm, second.z0_tenth_mm),
    )
