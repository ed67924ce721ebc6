"""How well a survey is known: measured, stated, or assumed in part (`knowledge/survey.md`, section 12)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.brief import provenance_of
from service.survey.survey import Provenance

if TYPE_CHECKING:
    from service.brief import Job

SURVEY = "/survey"


def open_pointers(job: Job) -> tuple[str, ...]:
    """Fields that a firm quote needs and that are assumed: left out, or sent as assumed."""
    left_out = [note.pointer for note in job.assumptions if note.needed_for_firm]
    sent = [pointer for pointer, known in _of_survey(job).items() if known is Provenance.ASSUMED]
    return tuple(dict.fromkeys((*left_out, *sorted(sent))))


def survey_known(job: Job) -> Provenance:
    """Assumed if a needed field is; measured if all of the survey was; else stated."""
    if open_pointers(job):
        return Provenance.ASSUMED
    measured = provenance_of(job.survey, SURVEY) is Provenance.MEASURED
    return Provenance.MEASURED if measured and set(_of_survey(job).values()) <= {Provenance.MEASURED} else Provenance.STATED


def _of_survey(job: Job) -> dict[str, Provenance]:
    """What the request says of the whole survey and its parts; wishes are not measured, so those of the brief do not count."""
    known = job.survey.provenance or {}
    return {pointer: how for pointer, how in known.items() if not pointer.startswith((f"{SURVEY}/brief", "/terms", "/options"))}
