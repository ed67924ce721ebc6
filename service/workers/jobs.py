"""What the workers can do: a task and a catalogue in, the bytes of an answer out. Pure, but for the clock as a guard."""

from __future__ import annotations

import time
from functools import cache
from typing import TYPE_CHECKING, Final

import msgspec

from service.brief import resolve
from service.catalogue import demo_catalogue
from service.cut_plans import answer_cut_plan
from service.drawings import draw
from service.errors import Fault, Reason, RequestFaultsError, UnbuildableError
from service.offers import answer_bill, answer_estimate, answer_frame, answer_quote, answer_shortlist
from service.quote import Desk, QuoteDesigned, design_measured, signed
from service.rules import EDITIONS, NEWEST_EDITION, RuleSet, load_rules
from service.survey import SurveyRequest
from service.workers.attention import is_given_up
from service.workers.example import example_bytes
from service.workers.job import Registry
from service.workers.kinds import (
    JobKind,
    SurveyTask,
    decode_cut_plan_task,
    decode_drawing_task,
    decode_estimate_task,
    decode_shortlist_task,
    decode_survey_task,
    encode_task,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.catalogue import Catalogue
    from service.cutting import Stop
    from service.quote import BillAnswer, FrameAnswer
    from service.workers.kinds import EstimateTask, ShortlistTask

WARM_UP_SECONDS: Final = 10.0
WARM_UP_DAY: Final = "2026-12-01"
_ENCODER: Final = msgspec.json.Encoder()


def make_frame(payload: bytes, catalogue: Catalogue) -> bytes:
    """The frame of a survey, as JSON; raises RequestFaultsError."""
    return _answer(answer_frame, payload, catalogue)


def make_bill(payload: bytes, catalogue: Catalogue) -> bytes:
    """The bill of a survey, as JSON; raises RequestFaultsError."""
    return _answer(answer_bill, payload, catalogue)


def make_quote(payload: bytes, catalogue: Catalogue) -> bytes:
    """The quote of a survey, as JSON, signed where there is a key for it; raises RequestFaultsError."""
    task = decode_survey_task(payload)
    answer = _made(answer_quote, task, catalogue)
    return _ENCODER.encode(signed(answer, task.signing_jwk) if isinstance(answer, QuoteDesigned) else answer)


def make_drawing(payload: bytes, catalogue: Catalogue) -> bytes:
    """One view of the design of a survey, as SVG.

    Raises:
        RequestFaultsError: the request is at fault, or there is no design to draw.
    """
    task = decode_drawing_task(payload)
    desk = Desk(catalogue=catalogue, rules=rules_of(task.request), today=task.today)
    job, _deal = resolve(task.request, catalogue, desk.rules, task.today)
    try:
        frame = design_measured(task.request, job, desk)[0].frame
    except UnbuildableError as error:
        raise RequestFaultsError(tuple(_undrawable(unmet.says, unmet.offer) for unmet in error.unmet)) from error
    return draw(frame, job, task.request.view).encode()


def make_cut_plan(payload: bytes) -> bytes:
    """A cutting plan on its own, as JSON; raises RequestFaultsError."""
    task = decode_cut_plan_task(payload)
    return _ENCODER.encode(answer_cut_plan(task.request, _guard(task.search_seconds), task.most_work_count))


def make_estimate(payload: bytes, catalogue: Catalogue) -> bytes:
    """The price range of a handful of answers, as JSON; raises RequestFaultsError."""
    task = decode_estimate_task(payload)
    return _ENCODER.encode(answer_estimate(task.request, _desk(task, catalogue)))


def make_shortlist(payload: bytes, catalogue: Catalogue) -> bytes:
    """Every fire with every screen in one room, as JSON; raises RequestFaultsError."""
    task = decode_shortlist_task(payload)
    return _ENCODER.encode(answer_shortlist(task.request, _desk(task, catalogue)))


def rules_of(request: SurveyRequest) -> RuleSet:
    """The rule set that a request names, or the newest.

    Raises:
        RequestFaultsError: there is none of that name.
    """
    named = request.options.rule_set if request.options else None
    if named is not None and named not in EDITIONS:
        editions = ", ".join(f'"{edition}"' for edition in EDITIONS)
        detail, remedy = f'there is no rule set "{named}"', f"Leave it out, or send one of {editions}."
        raise RequestFaultsError((Fault(pointer="/options/rule_set", reason=Reason.UNKNOWN_MODEL, detail=detail, remedy=remedy),))
    return _rules(named or NEWEST_EDITION)


def warm_up() -> None:
    """Make one quote, so that the first caller does not wait for libraries and files."""
    request = msgspec.json.decode(example_bytes(), type=SurveyRequest)
    make_quote(encode_task(SurveyTask(request=request, today=WARM_UP_DAY, search_seconds=WARM_UP_SECONDS)), demo_catalogue())


def _answer(make: Callable[[SurveyRequest, Desk], FrameAnswer | BillAnswer], payload: bytes, catalogue: Catalogue) -> bytes:
    return _ENCODER.encode(_made(make, decode_survey_task(payload), catalogue))


def _made[Answer](make: Callable[[SurveyRequest, Desk], Answer], task: SurveyTask, catalogue: Catalogue) -> Answer:
    stop = _guard(task.search_seconds)
    desk = Desk(catalogue=catalogue, rules=rules_of(task.request), today=task.today, stop=stop)
    return make(task.request, desk)


def _desk(task: EstimateTask | ShortlistTask, catalogue: Catalogue) -> Desk:
    """What answers of a shopper are worked out with: the newest rules."""
    return Desk(catalogue=catalogue, rules=_rules(NEWEST_EDITION), today=task.today, stop=_guard(task.search_seconds))


def _guard(search_seconds: float) -> Stop:
    """Stop searching when the time is over, or when nobody waits any more."""
    end = time.perf_counter() + search_seconds
    return lambda: time.perf_counter() > end or is_given_up()


@cache
def _rules(edition: str) -> RuleSet:
    return load_rules(edition)


def _undrawable(says: str, offer: str) -> Fault:
    return Fault(pointer="/survey", reason=Reason.UNBUILDABLE, detail=says, remedy=offer)


JOBS: Final = Registry(
    jobs={
        JobKind.FRAME: make_frame,
        JobKind.BILL: make_bill,
        JobKind.QUOTE: make_quote,
        JobKind.DRAWING: make_drawing,
        JobKind.ESTIMATE: make_estimate,
        JobKind.SHORTLIST: make_shortlist,
    },
    plain_jobs={JobKind.CUT_PLAN: make_cut_plan},
    warm_up=warm_up,
)
