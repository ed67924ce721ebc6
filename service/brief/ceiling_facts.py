"""Facts of the ceiling as the layout needs them, every default noted (`knowledge/survey.md`, section 5)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.brief.provenance import provenance_of
from service.survey.ceiling import Ceiling, CeilingKind, JoistDirection, Noggins
from service.survey.fields import Answer
from service.survey.survey import Provenance
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.rules import RuleSet
    from service.survey.survey import Survey

CEILING = "/survey/ceiling"
JOISTED = frozenset({CeilingKind.BOARDED_JOISTS, CeilingKind.LATH_AND_PLASTER, CeilingKind.EXPOSED_BEAMS})
LONGEST_WALL_MM = 15_000  # hard limit of survey.md, section 3
NONE_COUNTS = "no ceiling screw counts; +1.5 h with noggins if they run along the wall"


class CeilingFacts(msgspec.Struct, frozen=True, kw_only=True):
    """What is known of the ceiling; joist positions count from the left end of the wall."""

    joists: JoistDirection
    joists_mm: tuple[float, ...]
    ceiling_lining_tenth_mm: int
    ceiling_holds_screws: bool
    noggins: Noggins


def take_ceiling(survey: Survey, rules: RuleSet, notes: Notes, *, full_height: bool) -> CeilingFacts:
    """Read the ceiling; a part-height breast asks for no joists."""
    ceiling = survey.ceiling or Ceiling()
    coating = "before 2000: presumed to hold asbestos until sampled"
    notes.take(f"{CEILING}/textured_coating", ceiling.textured_coating, Answer.UNKNOWN, coating)
    kind = notes.take(f"{CEILING}/kind", ceiling.kind, CeilingKind.BOARDED_JOISTS, "another ceiling may take no screws")
    direction = JoistDirection.UNKNOWN
    if full_height:
        direction = notes.take(f"{CEILING}/joists", ceiling.joists, JoistDirection.UNKNOWN, NONE_COUNTS)
    lining_mm = notes.take(
        f"{CEILING}/lining_mm", ceiling.lining_mm, rules.defaults.ceiling_lining_mm, "length of the ceiling screws"
    )
    return CeilingFacts(
        joists=direction,
        joists_mm=_joists_mm(ceiling, survey, notes) if direction is JoistDirection.ACROSS_WALL else (),
        ceiling_lining_tenth_mm=tenths(lining_mm),
        ceiling_holds_screws=kind in JOISTED,
        noggins=ceiling.noggins or Noggins.NONE,
    )


def _joists_mm(ceiling: Ceiling, survey: Survey, notes: Notes) -> tuple[float, ...]:
    """Joists found, or derived from one found and a pitch that was measured or stated; an assumed pitch counts none."""
    if ceiling.joist_positions_mm is not None:
        return tuple(sorted(ceiling.joist_positions_mm))
    first_mm, pitch_mm = ceiling.first_joist_mm, ceiling.joist_spacing_mm
    known = all(
        provenance_of(survey, f"{CEILING}/{name}") is not Provenance.ASSUMED for name in ("first_joist_mm", "joist_spacing_mm")
    )
    if first_mm is not None and pitch_mm is not None and known:
        before = int(first_mm // pitch_mm)
        return tuple(first_mm + pitch_mm * step for step in range(-before, int(LONGEST_WALL_MM // pitch_mm)))
    notes.take(f"{CEILING}/joist_positions_mm", None, "not found", "no ceiling screw counts before the joists are found")
    return ()
