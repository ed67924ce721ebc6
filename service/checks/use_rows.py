"""Cautions V: viewing, use and finish (`knowledge/cautions.md`, section 5)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks.finding import Finding, said
from service.checks.handling_checks import REPLACEMENT
from service.checks.viewing import CABLE_ROOM, HEIGHT, SEAT_FAR, SEAT_NEAR, SILL, TOP_EDGE
from service.frame import Layer
from service.survey.floor import Covering
from service.survey.room import ObstacleKind
from service.survey.wishes import CustomScreen, ExtraKind, Finish, Sound

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts

PASSAGE_MM = 900.0  # common practice, no source
WIDE_GAP_TENTH_MM = 900  # common practice, no source


def use_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of viewing, use and finish."""
    yield from _seen(facts)
    yield from _reached(facts)
    job, recess = facts.job, facts.frame.sizes.recess
    if recess and job.screen:
        gap = (recess.clear_width_tenth_mm - round(job.screen.body_width_mm * 10)) // 2
        if recess.full_width or gap > WIDE_GAP_TENTH_MM:
            yield Finding("V03", f"{gap / 10:g} mm of dark recess show at each side of the screen.")
    if job.screen_standing == "size_class":
        yield Finding(
            "V06", "The screen is known by its size only, and the next model may be larger. Name it before the recess is cut."
        )
    if job.board.board_kind == "mdf" and job.finish is Finish.PAINTED and _has_joint(facts):
        yield Finding("V08", "A joint of two MDF boards lies in a visible face. A hairline may show in the heating season.")
    if facts.frame.levels.platform_tenth_mm == 0 and facts.floor.covering is Covering.CARPET:
        yield Finding("V10", "The fire stands on the floor before a carpet. Keep pile out of its air inlet.")


def _has_joint(facts: Facts) -> bool:
    facing = [panel for panel in facts.frame.panels if panel.layer is Layer.FACING]
    return any(panel.joint_below or panel.joint_left for panel in facing) or any("cheek" in panel.role.value for panel in facing)


def _seen(facts: Facts) -> Iterator[Finding]:
    """Advice on height and distance, and what light falls on the screen."""
    for check in facts.unmet(HEIGHT, TOP_EDGE):
        yield Finding("V01", said(check))
    for check in facts.unmet(SEAT_NEAR, SEAT_FAR):
        yield Finding("V02", said(check))
    if facts.frame.screen_hung and any(one.kind is ObstacleKind.WINDOW for one in facts.room.obstacles or ()):
        yield Finding("V05", "A window beside the screen shows in it by day. A blind helps.")
    closed_in = facts.unmet(SILL) or _sound_closed_in(facts)
    if closed_in:
        yield Finding("V07", "Remote control or sound has no free way out of the recess. Keep the gap under the screen open.")


def _sound_closed_in(facts: Facts) -> bool:
    brief = facts.job.survey.brief
    own = brief.screen if isinstance(brief.screen, CustomScreen) else None
    niche = any(one.kind is ExtraKind.SOUNDBAR_NICHE for one in brief.extras or ())
    return niche or (facts.frame.screen_hung and own is not None and own.sound in {Sound.DOWN, Sound.REAR})


def _reached(facts: Facts) -> Iterator[Finding]:
    """Plugs behind the screen, ways out for fire and screen, the passage beside glass."""
    for check in facts.unmet(CABLE_ROOM):
        yield Finding("V04", said(check))
    for check in facts.unmet(REPLACEMENT):
        yield Finding("V11", said(check))
    frame, room = facts.frame, facts.room
    if not (frame.left_open and frame.right_open) or room.wall_length_mm is None or room.breast_centre_from_left_mm is None:
        return
    half_mm = frame.sizes.finished_width_tenth_mm / 20
    left_mm = room.breast_centre_from_left_mm - half_mm
    beside_mm = min(left_mm, room.wall_length_mm - room.breast_centre_from_left_mm - half_mm)
    if beside_mm < PASSAGE_MM:
        yield Finding("V12", f"{beside_mm:g} mm are left to pass beside the glass end. It will be knocked.")
