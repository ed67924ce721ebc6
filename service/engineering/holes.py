"""Holes and notches that need no check, in joists of the house and in members of the frame."""

from __future__ import annotations

GREATEST_COUNTED_DEPTH_MM = 250.0  # PD 6693-1: deeper joists count as this deep
NOTCH_SHARE, HOLE_SHARE = 0.125, 0.25
NOTCH_FROM, NOTCH_TO = 0.07, 0.25
HOLE_FROM, HOLE_TO = 0.25, 0.40
HOLE_SPACING_DIAMETERS = 3.0
NOTCH_TO_HOLE_MM = 200.0


def greatest_joist_notch_mm(depth_mm: float) -> float:
    """Deepest notch of a joist that needs no check.

    Args:
        depth_mm: depth of the joist, mm.

    Returns:
        Depth of the notch, mm.

    Source: PD 6693-1, sections 10 and 11, from memory.
    """
    return NOTCH_SHARE * min(depth_mm, GREATEST_COUNTED_DEPTH_MM)


def greatest_joist_hole_mm(depth_mm: float) -> float:
    """Widest hole at mid depth of a joist that needs no check.

    Args:
        depth_mm: depth of the joist, mm.

    Returns:
        Diameter, mm.

    Source: PD 6693-1, sections 10 and 11, from memory.
    """
    return HOLE_SHARE * min(depth_mm, GREATEST_COUNTED_DEPTH_MM)


def joist_notch_is_placed(from_support_mm: float, span_mm: float) -> bool:
    """Whether a notch lies where a joist may be notched without a check.

    Args:
        from_support_mm: distance of the notch from the nearer support, mm.
        span_mm: span of the joist, mm.

    Returns:
        Truth.

    Source: PD 6693-1, sections 10 and 11, from memory.
    """
    return NOTCH_FROM * span_mm <= from_support_mm <= NOTCH_TO * span_mm


def joist_hole_is_placed(from_support_mm: float, span_mm: float) -> bool:
    """Whether a hole lies where a joist may be drilled without a check.

    Args:
        from_support_mm: distance of the hole from the nearer support, mm.
        span_mm: span of the joist, mm.

    Returns:
        Truth.

    Source: PD 6693-1, sections 10 and 11, from memory.
    """
    return HOLE_FROM * span_mm <= from_support_mm <= HOLE_TO * span_mm


def least_hole_spacing_mm(diameter_mm: float) -> float:
    """Least distance of the centres of two holes of a joist.

    Args:
        diameter_mm: diameter of the larger hole, mm.

    Returns:
        Distance of centres, mm.

    Source: PD 6693-1, sections 10 and 11, from memory.
    """
    return HOLE_SPACING_DIAMETERS * diameter_mm


def greatest_member_hole_mm(width_mm: float, share_ratio: float) -> float:
    """Widest centred hole of an upright or rail of the frame; none in trimmers and bearers.

    Args:
        width_mm: side of the member that the hole is seen on, mm.
        share_ratio: hole over width.

    Returns:
        Diameter, mm.

    Source: house choice.
    """
    return share_ratio * width_mm


def left_ratio(width_mm: float, hole_mm: float) -> float:
    """What a centred hole leaves of a section in tension or compression.

    Args:
        width_mm: side of the member that the hole is seen on, mm.
        hole_mm: diameter of the hole, mm.

    Returns:
        Net over gross area, 0 to 1.

    Source: EN 1995-1-1, 2004, 5.2(1): net section.
    """
    return 1.0 - hole_mm / width_mm
