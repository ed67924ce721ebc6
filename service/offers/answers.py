"""Answers of the survey operations, with alternatives where there is no design."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service import quote
from service.catalogue import money
from service.checks import cautions_of
from service.cutting import QUICK
from service.offers.alternatives import find_alternatives
from service.offers.variants import variant_requests, with_variants
from service.quote import AlternativeAnswer, Unbuildable
from service.units import millimetres

if TYPE_CHECKING:
    from service.offers.alternatives import Found
    from service.quote import BillAnswer, Desk, FrameAnswer, QuoteAnswer
    from service.survey import SurveyRequest


def answer_frame(request: SurveyRequest, desk: Desk) -> FrameAnswer:
    """The frame of a survey; raises RequestFaultsError."""
    answer = quote.answer_frame(request, desk)
    return with_alternatives(answer, request, desk) if isinstance(answer, Unbuildable) else answer


def answer_bill(request: SurveyRequest, desk: Desk) -> BillAnswer:
    """What to buy for a survey; raises RequestFaultsError."""
    answer = quote.answer_bill(request, desk)
    return with_alternatives(answer, request, desk) if isinstance(answer, Unbuildable) else answer


def answer_quote(request: SurveyRequest, desk: Desk) -> QuoteAnswer:
    """The whole quote of a survey with its variants; raises RequestFaultsError."""
    variants = variant_requests(request, desk)
    answer = quote.answer_quote(request, desk)
    if isinstance(answer, Unbuildable):
        return with_alternatives(answer, request, desk)
    return with_variants(answer, variants, desk)


def with_alternatives(answer: Unbuildable, request: SurveyRequest, desk: Desk) -> Unbuildable:
    """The answer with up to three designs that work, or with the reason why there is none."""
    quick = desk if desk.effort.greedy else msgspec.structs.replace(desk, effort=QUICK)
    job, _deal = quote.take_brief(request, quick)
    search = find_alternatives(request, job, answer.unmet, quick)
    return msgspec.structs.replace(
        answer,
        alternatives=tuple(_alternative(one, quick) for one in search.found),
        no_alternative=search.none_because,
    )


def _alternative(found: Found, desk: Desk) -> AlternativeAnswer:
    """A change that works, priced."""
    made = quote.make_quote(found.request, desk)
    cautions = cautions_of(made.job, made.frame, desk.rules, made.settled.report)
    standing, _reasons = quote.standing_of(made.job, cautions, made.price, made.settled.report)
    sizes = made.frame.sizes
    return AlternativeAnswer(
        code=found.code,
        says=found.says,
        patch=found.operations,
        standing=standing,
        total=money(made.price.total_minor, made.deal.currency),
        complete=not made.price.unpriced,
        finished_width_mm=millimetres(sizes.finished_width_tenth_mm),
        finished_depth_mm=millimetres(sizes.finished_depth_tenth_mm),
        finished_top_mm=millimetres(made.frame.levels.finished_top_tenth_mm),
        screen_diagonal_in=made.job.screen.diagonal_in if made.job.screen else None,
    )
