"""Where a value of a survey comes from, and whether the pointers that say so point to anything."""

from __future__ import annotations

from typing import TYPE_CHECKING, get_args, get_type_hints

from service.errors import Reason
from service.survey import SurveyRequest
from service.survey.fields import Input
from service.survey.survey import Provenance

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.survey.survey import Survey


def provenance_of(survey: Survey, pointer: str) -> Provenance:
    """How a value that was sent is known: the longest pointer that covers it wins; not named is stated."""
    known = survey.provenance or {}
    covering = [key for key in known if key in {"", pointer} or pointer.startswith(key + "/")]
    return known[max(covering, key=len)] if covering else Provenance.STATED


def check_provenance(survey: Survey, notes: Notes) -> None:
    """Refuse pointers to parts or fields that no request has."""
    for pointer in survey.provenance or {}:
        if pointer and not _is_field(pointer.split("/")[1:]):
            notes.refuse(
                Reason.IMPOSSIBLE_VALUE,
                "/survey/provenance",
                detail=f"{pointer!r} points to nothing in the body",
                remedy="name a field as the body does, such as /survey/wall/lining_mm",
            )


def _is_field(names: list[str]) -> bool:
    """Whether names lead from the body through its parts to a field; what lies inside a field is not looked at."""
    part: type[Input] | None = SurveyRequest
    for name in names:
        if part is None:
            return True
        if name not in part.__struct_fields__:
            return False
        part = _part(part, name)
    return True


def _part(owner: type[Input], name: str) -> type[Input] | None:
    """The struct that a field holds, if it holds just one kind of struct."""
    hint = get_type_hints(owner)[name]
    kinds = [kind for kind in get_args(hint) or (hint,) if isinstance(kind, type) and issubclass(kind, Input)]
    return kinds[0] if len(kinds) == 1 else None
