"""Answers of the three survey operations: a frame, a bill or a quote, or why there is no design."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks import cautions_of
from service.errors import RequestFaultsError, UnbuildableError
from service.quote.check_body import checks_body, strengthening_body
from service.quote.frame_body import frame_body
from service.quote.lead_times import awaited_of
from service.quote.money_body import bill_body, labour_body, price_body
from service.quote.origin import normalise, origin_of, tidy
from service.quote.plan_body import plan_body
from service.quote.quote import Desk, Made, design_measured, price_job, take_brief
from service.quote.recut import recut_body
from service.quote.standing import exclusions_of, standing_of
from service.quote.wire import BillAnswer, BillDesigned, FrameAnswer, FrameDesigned, QuoteAnswer, QuoteDesigned, Unbuildable

if TYPE_CHECKING:
    from service.brief import Deal, Job
    from service.errors import Unmet
    from service.quote.wire import Origin
    from service.survey import SurveyRequest


def answer_frame(request: SurveyRequest, desk: Desk) -> FrameAnswer:
    """The frame of a survey; raises RequestFaultsError."""
    job, _deal = _take(request, desk)
    origin = origin_of(normalise(request, desk.catalogue, desk.today, desk.rules.edition), job, desk.catalogue)
    try:
        settled, recut = design_measured(request, job, desk)
    except UnbuildableError as error:
        return _unbuildable(error.unmet, job, origin)
    return FrameDesigned(
        frame=frame_body(settled.frame, job, desk.rules),
        recut=recut_body(recut),
        checks=checks_body(settled.report),
        checks_skipped=settled.report.skipped,
        checks_not_made=settled.report.not_made,
        strengthening=strengthening_body(settled),
        cautions=cautions_of(job, settled.frame, desk.rules, settled.report),
        assumptions=job.assumptions,
        doubts=job.doubts,
        origin=origin,
    )


def answer_bill(request: SurveyRequest, desk: Desk) -> BillAnswer:
    """What to buy for a survey, with the cutting plan; raises RequestFaultsError."""
    job, deal = _take(request, desk)
    origin = origin_of(normalise(request, desk.catalogue, desk.today, desk.rules.edition), job, desk.catalogue)
    try:
        made = price_job(job, deal, request, desk)
    except UnbuildableError as error:
        return _unbuildable(error.unmet, job, origin)
    return BillDesigned(
        bill=bill_body(made.bill, made.price),
        cut_plan=plan_body(made.plan, deal.currency),
        recut=recut_body(made.recut),
        checks=checks_body(made.settled.report),
        checks_skipped=made.settled.report.skipped,
        checks_not_made=made.settled.report.not_made,
        strengthening=strengthening_body(made.settled),
        cautions=cautions_of(job, made.frame, desk.rules, made.settled.report),
        assumptions=job.assumptions,
        doubts=job.doubts,
        origin=origin,
    )


def answer_quote(request: SurveyRequest, desk: Desk) -> QuoteAnswer:
    """The whole quote of a survey; raises RequestFaultsError."""
    job, deal = _take(request, desk)
    normal = normalise(request, desk.catalogue, desk.today, desk.rules.edition)
    origin = origin_of(normal, job, desk.catalogue)
    try:
        made = price_job(job, deal, request, desk)
    except UnbuildableError as error:
        return _unbuildable(error.unmet, job, origin)
    return _quote(made, normal, origin, desk)


def _take(request: SurveyRequest, desk: Desk) -> tuple[Job, Deal]:
    """Job and deal of the request as it is however it was written; faults point into the request as it was sent."""
    try:
        return take_brief(tidy(request), desk)
    except RequestFaultsError:
        return take_brief(request, desk)  # the same faults, counted in the sender's lists


def _quote(made: Made, normal: SurveyRequest, origin: Origin, desk: Desk) -> QuoteDesigned:
    job, currency = made.job, made.deal.currency
    awaited = awaited_of(made, desk.catalogue)
    cautions = cautions_of(job, made.frame, desk.rules, made.settled.report, awaited=awaited)
    standing, reasons = standing_of(job, cautions, made.price, made.settled.report)
    return QuoteDesigned(
        reference=made.deal.reference,
        standing=standing,
        standing_reasons=reasons,
        frame=frame_body(made.frame, job, desk.rules),
        recut=recut_body(made.recut),
        checks=checks_body(made.settled.report),
        checks_skipped=made.settled.report.skipped,
        checks_not_made=made.settled.report.not_made,
        strengthening=strengthening_body(made.settled),
        cut_plan=plan_body(made.plan, currency),
        bill=bill_body(made.bill, made.price),
        labour=labour_body(made.labour),
        build_sequence=made.sequence,
        price=price_body(made.price),
        cautions=cautions,
        exclusions=exclusions_of(made.deal),
        assumptions=job.assumptions,
        doubts=job.doubts,
        request=normal,
        origin=origin,
    )


def _unbuildable(unmet: tuple[Unmet, ...], job: Job, origin: Origin) -> Unbuildable:
    return Unbuildable(unmet=unmet, assumptions=job.assumptions, doubts=job.doubts, origin=origin)
