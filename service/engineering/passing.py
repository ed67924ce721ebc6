"""Long pieces round a right-angled corner, through doors and up under a ceiling: plane geometry."""

from __future__ import annotations

import math


def corner_length_mm(first_mm: float, second_mm: float) -> float:
    """Longest thin bar, carried level, that turns from one corridor into another.

    Args:
        first_mm: width of one corridor, mm.
        second_mm: width of the other, mm.

    Returns:
        Length, mm.

    Source: the ladder problem of the calculus textbooks, (a^(2/3) + b^(2/3))^(3/2).
    """
    return math.pow(math.cbrt(first_mm) ** 2 + math.cbrt(second_mm) ** 2, 1.5)


def corner_board_length_mm(first_mm: float, second_mm: float, width_mm: float) -> float:
    """Longest piece of a width, carried level, that turns from one corridor into another.

    Args:
        first_mm: width of one corridor, mm.
        second_mm: width of the other, mm.
        width_mm: of the piece as it is carried: a board on edge has its thickness, mm.

    Returns:
        Length, mm; 0 for a piece that is as wide as a corridor.

    Source: geometry, least of (a sin t + b cos t - w) / (sin t cos t): its slope is that of a sin^3 t - b cos^3 t + w cos 2t.
    """
    if width_mm >= min(first_mm, second_mm):
        return 0.0
    low, high = 0.0, math.pi / 2.0
    while low < (turn := (low + high) / 2.0) < high:
        slope = first_mm * math.sin(turn) ** 3 - second_mm * math.cos(turn) ** 3 + width_mm * math.cos(2.0 * turn)
        low, high = (turn, high) if slope < 0.0 else (low, turn)
    return (first_mm * math.sin(high) + second_mm * math.cos(high) - width_mm) / (math.sin(high) * math.cos(high))


def passing_length_mm(first_mm: float, second_mm: float, width_mm: float) -> float:
    """Longest piece of a width that gets from one corridor into another, turned or moved sideways.

    Args:
        first_mm: width of one corridor, mm.
        second_mm: width of the other, mm.
        width_mm: of the piece as it is carried, mm.

    Returns:
        Length, mm.

    Source: geometry; a piece no longer than one corridor is wide goes sideways into it.
    """
    sideways_mm = max(
        first_mm if width_mm <= second_mm else 0.0,
        second_mm if width_mm <= first_mm else 0.0,
    )
    return max(corner_board_length_mm(first_mm, second_mm, width_mm), sideways_mm)


def tilted_length_mm(level_mm: float, height_mm: float) -> float:
    """Longest thin bar that turns a corner tilted.

    Args:
        level_mm: longest that turns it level, mm.
        height_mm: clear height of the corridors, mm.

    Returns:
        Length, mm.

    Source: geometry: its projection turns the corner level.
    """
    return math.hypot(level_mm, height_mm)


def swing_reach_mm(height_mm: float, depth_mm: float) -> float:
    """How high the far corner of a frame comes that is turned up about its lower edge.

    Args:
        height_mm: of the frame when it stands, mm.
        depth_mm: of the frame, mm.

    Returns:
        Height above the floor, mm.

    Source: geometry.
    """
    return math.hypot(height_mm, depth_mm)


def tilting_height_mm(room_mm: float, depth_mm: float) -> float:
    """Tallest frame that can be turned up.

    Args:
        room_mm: height of the room less clearance, mm.
        depth_mm: of the frame, mm.

    Returns:
        Height of the frame, mm; 0 where it is deeper than the room is high.

    Source: geometry.
    """
    return math.sqrt(max(0.0, room_mm**2 - depth_mm**2))


def passes_door(section_mm: tuple[float, float], door_mm: tuple[float, float], margin_mm: float) -> bool:
    """Whether a piece goes straight through a door, upright or turned on its side.

    Args:
        section_mm: both sides of its section, mm.
        door_mm: clear width and height, mm.
        margin_mm: kept free, mm.

    Returns:
        Truth.

    Source: house choice: tilted passages are not used.
    """
    pairs = zip(sorted(section_mm), sorted(door_mm), strict=True)
    return all(side_mm <= clear_mm - margin_mm for side_mm, clear_mm in pairs)
