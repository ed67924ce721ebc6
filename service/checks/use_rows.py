"""Cautions V: viewing, use and finish, as far as no calculation is needed (`knowledge/cautions.md`, section 5)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks.finding import Finding
from service.frame import Layer
from service.survey.floor import Covering
from service.survey.wishes import Finish

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts

WIDE_GAP_TENTH_MM = 900  # common practice, no source


def use_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of viewing, use and finish."""
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
