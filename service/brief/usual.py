"""Values inside their hard limits but outside what is usual: accepted, and said (`knowledge/survey.md`, sections 3 to 10)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.survey.survey import Survey

# Section, field, usual range: the sane range of the field's table. Common practice, no source. 0 means none and is usual.
USUAL: Final = (
    ("room", "wall_length_mm", 2_000, 7_000),
    ("room", "depth_mm", 2_500, 6_000),
    ("room", "seat_distance_mm", 1_500, 6_000),
    ("room", "eye_height_mm", 950, 1_250),
    ("room", "volume_m3", 20, 120),
    ("wall", "lining_mm", 10, 30),
    ("wall", "void_mm", 10, 40),
    ("wall", "stud_width_mm", 38, 50),
    ("wall", "stud_depth_mm", 63, 150),
    ("wall", "plumb_mm", -10, 10),  # over the scribing allowance: the returns are cut wider
    ("wall", "flat_mm", 0, 10),
    ("wall", "square_mm", -10, 10),
    ("wall", "thickness_mm", 75, 350),
    ("ceiling", "lining_mm", 9, 40),
    ("ceiling", "joist_spacing_mm", 300, 650),
    ("ceiling", "joist_thickness_mm", 38, 75),
    ("floor", "fall_mm", 0, 25),
    ("floor", "skirting_height_mm", 45, 300),
    ("floor", "skirting_thickness_mm", 9, 30),
    ("site", "narrowest_door_mm", 600, 1_000),
    ("brief", "platform_height_mm", 0, 700),
)
LOWEST_USUAL_ROOM_MM, HIGHEST_USUAL_ROOM_MM = 2_200, 3_000


def check_usual(survey: Survey, notes: Notes) -> None:
    """Note every number of the survey that is outside its usual range."""
    for section, field, low, high in USUAL:
        value = getattr(getattr(survey, section), field, None)
        if value:
            notes.doubt_outside(f"/survey/{section}/{field}", value, low, high)
    for index, point in enumerate((survey.room.heights if survey.room else None) or ()):
        pointer = f"/survey/room/heights/{index}/height_mm"
        notes.doubt_outside(pointer, point.height_mm, LOWEST_USUAL_ROOM_MM, HIGHEST_USUAL_ROOM_MM)
