"""Cautions that somebody cleared: only the roles of the row may, and a code or role that cannot is a fault of the request."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks.caution_table import clearing_roles
from service.errors import Fault, Reason

if TYPE_CHECKING:
    from service.survey import Survey
    from service.survey.survey import Cleared


def cleared_by(code: str, survey: Survey) -> Cleared | None:
    """The entry that clears a caution, or None."""
    roles = clearing_roles(code)
    return next((item for item in survey.cleared or () if item.code == code and item.role in roles), None)


def faults_of_cleared(survey: Survey) -> tuple[Fault, ...]:
    """Every entry of `cleared` with an unknown code or the wrong role (`knowledge/survey.md`, section 13)."""
    found = (_fault(index, item) for index, item in enumerate(survey.cleared or ()))
    return tuple(fault for fault in found if fault is not None)


def _fault(index: int, item: Cleared) -> Fault | None:
    roles = clearing_roles(item.code)
    if not roles:
        return Fault(
            pointer=f"/survey/cleared/{index}/code",
            reason=Reason.IMPOSSIBLE_VALUE,
            detail=f"there is no caution {item.code} that can be cleared",
            remedy="send a code of the answer's cautions",
        )
    if item.role in roles:
        return None
    return Fault(
        pointer=f"/survey/cleared/{index}/role",
        reason=Reason.NOT_ALLOWED,
        detail=f"caution {item.code} is not cleared by a {item.role.value.replace('_', ' ')}",
        remedy=f"have it cleared by: {', '.join(role.value for role in roles)}",
        related=(f"/survey/cleared/{index}/code",),
    )
