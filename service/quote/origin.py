"""What an answer can be made again from: normalised request, catalogue revision, rule set, engine, day."""

from __future__ import annotations

import hashlib
from importlib.metadata import version
from typing import TYPE_CHECKING, Final

import msgspec

from service.quote.wire import Origin
from service.survey import Options, Survey, SurveyRequest, Terms
from service.survey.ceiling import Ceiling
from service.survey.floor import Floor
from service.survey.room import Room
from service.survey.services import Chimney, Services
from service.survey.site import Site
from service.survey.wall import Wall

if TYPE_CHECKING:
    from service.brief import Job
    from service.catalogue import Catalogue

PINNED: Final = ("packingsolver", "highspy")  # solvers whose release may change a plan
ENGINE_VERSION: Final = "; ".join(f"{name} {version(name)}" for name in ("inglewright", *PINNED))
IN_ORDER: Final = frozenset({"route", "extras", "provisional_sums", "variants", "patch"})  # lists whose order means something
SECTIONS: Final = {
    "room": Room, "wall": Wall, "ceiling": Ceiling, "floor": Floor, "services": Services, "chimney": Chimney, "site": Site,
}  # fmt: skip
_ENCODER: Final = msgspec.json.Encoder(order="deterministic")


def tidy(request: SurveyRequest) -> SurveyRequest:
    """The request however it was written: what holds nothing is left out, lists whose order means nothing are sorted."""
    options = None if request.options is None or request.options == Options() else _sorted_lists(request.options)
    terms = None if request.terms is None else _sorted_lists(request.terms)
    return SurveyRequest(survey=_tidy_survey(request.survey), terms=terms, options=options)


def normalise(request: SurveyRequest, catalogue: Catalogue, today: str, rule_set: str) -> SurveyRequest:
    """The tidy request with its day, catalogue revision and rule set written in, so that it means the same on any later day."""
    plain = tidy(request)
    terms = plain.terms or Terms()
    dated = msgspec.structs.replace(terms, date=terms.date or today, catalogue_revision=catalogue.revision)
    options = msgspec.structs.replace(plain.options or Options(), rule_set=rule_set)
    return msgspec.structs.replace(plain, terms=dated, options=options)


def origin_of(request: SurveyRequest, job: Job, catalogue: Catalogue) -> Origin:
    """Origin of an answer; `request` is the normalised one."""
    return Origin(
        catalogue_revision=catalogue.revision,
        rule_set=job.rule_edition,
        engine_version=ENGINE_VERSION,
        date=job.today,
        request_digest=hashlib.sha256(_ENCODER.encode(request)).hexdigest(),
    )


def _tidy_survey(survey: Survey) -> Survey:
    made = _sorted_lists(survey)
    empty = [name for name, kind in SECTIONS.items() if getattr(made, name) == kind()]
    plain = msgspec.structs.replace(made, **dict.fromkeys(empty))
    return msgspec.structs.replace(plain, provenance=plain.provenance or None, cleared=plain.cleared or None)


def _sorted_lists[T: msgspec.Struct](part: T) -> T:
    """A copy with its lists in order, those of its parts among them."""
    changes: dict[str, object] = {}
    for name in part.__struct_fields__:
        value = getattr(part, name)
        if isinstance(value, msgspec.Struct):
            changes[name] = _sorted_lists(value)
        elif isinstance(value, tuple) and name not in IN_ORDER:
            changes[name] = _in_order(value)
    return msgspec.structs.replace(part, **changes)


def _in_order(items: tuple[object, ...]) -> tuple[object, ...]:
    """Numbers by size, all else by its JSON form."""
    numbers = [item for item in items if isinstance(item, int | float)]
    return tuple(sorted(numbers)) if len(numbers) == len(items) else tuple(sorted(items, key=_ENCODER.encode))
