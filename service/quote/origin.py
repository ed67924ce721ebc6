"""What an answer can be made again from: normalised request, catalogue revision, rule set, engine, day."""

from __future__ import annotations

import hashlib
from importlib.metadata import version
from typing import TYPE_CHECKING, Final

import msgspec

from service.quote.wire import Origin
from service.survey import SurveyRequest, Terms

if TYPE_CHECKING:
    from service.brief import Job
    from service.catalogue import Catalogue

PINNED: Final = ("packingsolver", "highspy")  # solvers whose release may change a plan
ENGINE_VERSION: Final = "; ".join(f"{name} {version(name)}" for name in ("inglewright", *PINNED))


def normalise(request: SurveyRequest, catalogue: Catalogue, today: str) -> SurveyRequest:
    """The request with its day and catalogue revision written in, so that it means the same on any later day."""
    terms = request.terms or Terms()
    dated = msgspec.structs.replace(terms, date=terms.date or today, catalogue_revision=catalogue.revision)
    return msgspec.structs.replace(request, terms=dated)


def origin_of(request: SurveyRequest, job: Job, catalogue: Catalogue) -> Origin:
    """Origin of an answer; `request` is the normalised one."""
    return Origin(
        catalogue_revision=catalogue.revision,
        rule_set=job.rule_edition,
        engine_version=ENGINE_VERSION,
        date=job.today,
        request_digest=hashlib.sha256(msgspec.json.encode(request, order="deterministic")).hexdigest(),
    )
