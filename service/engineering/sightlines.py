"""Pictures, distances and angles of a screen: plane geometry."""

from __future__ import annotations

import math

from service.units import MM_PER_INCH

ARC_MINUTE_DEG = 1.0 / 60.0  # what a sound eye resolves: common practice, no source


def picture_width_mm(diagonal_in: float, aspect_width_ratio: float, aspect_height_ratio: float) -> float:
    """Width of a picture.

    Args:
        diagonal_in: diagonal of the visible picture, in.
        aspect_width_ratio: width of its shape, such as 16.
        aspect_height_ratio: height of its shape, such as 9.

    Returns:
        Width, mm.

    Source: geometry.
    """
    return diagonal_in * MM_PER_INCH * aspect_width_ratio / math.hypot(aspect_width_ratio, aspect_height_ratio)


def picture_height_mm(diagonal_in: float, aspect_width_ratio: float, aspect_height_ratio: float) -> float:
    """Height of a picture.

    Args:
        diagonal_in: diagonal of the visible picture, in.
        aspect_width_ratio: width of its shape, such as 16.
        aspect_height_ratio: height of its shape, such as 9.

    Returns:
        Height, mm.

    Source: geometry.
    """
    return picture_width_mm(diagonal_in, aspect_height_ratio, aspect_width_ratio)


def picture_angle_deg(width_mm: float, distance_mm: float) -> float:
    """Angle that a picture fills, seen from in front of its middle.

    Args:
        width_mm: width of the picture, mm.
        distance_mm: of the eye, mm.

    Returns:
        Angle.

    Source: geometry, 2 atan(W / (2 d)).
    """
    return math.degrees(2.0 * math.atan(width_mm / (2.0 * distance_mm)))


def distance_for_angle_mm(width_mm: float, angle_deg: float) -> float:
    """Distance at which a picture fills an angle.

    Args:
        width_mm: width of the picture, mm.
        angle_deg: wanted angle.

    Returns:
        Distance of the eye, mm.

    Source: geometry, W / (2 tan(angle / 2)).
    """
    return width_mm / (2.0 * math.tan(math.radians(angle_deg) / 2.0))


def diagonal_for_angle_in(
    distance_mm: float, angle_deg: float, *, aspect_width_ratio: float, aspect_height_ratio: float
) -> float:
    """Diagonal of a picture that fills an angle at a distance.

    Args:
        distance_mm: of the eye, mm.
        angle_deg: wanted angle.
        aspect_width_ratio: width of its shape, such as 16.
        aspect_height_ratio: height of its shape, such as 9.

    Returns:
        Diagonal, in.

    Source: geometry.
    """
    width_of_one_in_mm = picture_width_mm(1.0, aspect_width_ratio, aspect_height_ratio)
    return distance_mm / distance_for_angle_mm(width_of_one_in_mm, angle_deg)


def off_axis_deg(aside_mm: float, distance_mm: float) -> float:
    """Angle of a seat beside the middle of the screen.

    Args:
        aside_mm: of the seat from the middle, either way, mm.
        distance_mm: of the seat from the screen's plane, mm.

    Returns:
        Angle, 0 or more.

    Source: geometry.
    """
    return math.degrees(math.atan(abs(aside_mm) / distance_mm))


def rise_deg(height_mm: float, eye_height_mm: float, distance_mm: float) -> float:
    """Angle at which an eye looks up at a point.

    Args:
        height_mm: of the point above the floor, mm.
        eye_height_mm: of the eye above the floor, mm.
        distance_mm: of the eye, level, mm.

    Returns:
        Angle, upward positive.

    Source: geometry.
    """
    return math.degrees(math.atan((height_mm - eye_height_mm) / distance_mm))


def height_for_rise_mm(eye_height_mm: float, distance_mm: float, angle_deg: float) -> float:
    """Height of a point that an eye looks up at under an angle.

    Args:
        eye_height_mm: of the eye above the floor, mm.
        distance_mm: of the eye, level, mm.
        angle_deg: upward angle.

    Returns:
        Height above the floor, mm.

    Source: geometry.
    """
    return eye_height_mm + distance_mm * math.tan(math.radians(angle_deg))


def acuity_distance_mm(height_mm: float, line_count: int) -> float:
    """Distance beyond which an eye no longer parts the lines of a picture.

    Args:
        height_mm: height of the picture, mm.
        line_count: lines of the picture.

    Returns:
        Distance, mm.

    Source: geometry with one arc minute a line: common practice, no source.
    """
    return height_mm / (line_count * math.tan(math.radians(ARC_MINUTE_DEG)))


def recess_clear_mm(body_mm: float, first_gap_mm: float, second_gap_mm: float) -> float:
    """Clear opening of a recess in one direction.

    Args:
        body_mm: body of the screen, mm.
        first_gap_mm: air at one side, mm.
        second_gap_mm: air at the other side, mm.

    Returns:
        Opening, mm.

    Source: geometry.
    """
    return body_mm + first_gap_mm + second_gap_mm


def hidden_mm(set_back_mm: float, angle_deg: float) -> float:
    """Height of a screen that the sill of its recess hides from an eye that looks up.

    Args:
        set_back_mm: of the screen behind the face, mm.
        angle_deg: at which the eye looks up at the sill; looking down hides nothing.

    Returns:
        Height, mm.

    Source: geometry.
    """
    return set_back_mm * max(0.0, math.tan(math.radians(angle_deg)))
