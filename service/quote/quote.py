"""The whole service on one page: survey in, quote out; no clock, no chance, no network.

survey -> brief -> frame <-> checks -> cut plan -> bill -> labour -> price -> quote
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.bill import Bill, Market, take_off
from service.brief import Deal, Job, resolve
from service.catalogue import Catalogue
from service.checks import Settled, faults_of_cleared, refusals_of, settle
from service.cutting import QUICK, STANDARD, Available, Effort, FramePlan, OnHand, SheetLayout, Stop, Yard, cut_frame, never
from service.errors import RequestFaultsError, UnbuildableError
from service.frame import NOTHING_ADDED, Additions, Frame
from service.labour import Labour, Step, build_sequence, estimate, make_site
from service.price import Price, price
from service.quote.recut import Recut, make_recut, timber_there, without_measures
from service.rules import RuleSet
from service.survey import Options
from service.units import tenths

if TYPE_CHECKING:
    from service.survey import SurveyRequest


class Desk(msgspec.Struct, frozen=True, kw_only=True):
    """What a quote depends on besides its request: catalogue, rules, the day, and when to stop searching."""

    catalogue: Catalogue
    rules: RuleSet
    today: str  # RFC 3339 full-date, taken where the terms give none
    stop: Stop = never
    effort: Effort = STANDARD  # of the cutting
    additions: Additions = NOTHING_ADDED  # what strengthening begins with


class Made(msgspec.Struct, frozen=True, kw_only=True):
    """A quote as its stages yield it."""

    job: Job
    deal: Deal
    settled: Settled
    recut: Recut | None = None  # where something was measured on site
    plan: FramePlan
    bill: Bill
    labour: Labour
    sequence: tuple[Step, ...]
    price: Price

    @property
    def frame(self) -> Frame:
        """The settled frame."""
        return self.settled.frame


def make_quote(request: SurveyRequest, desk: Desk) -> Made:
    """Design, cut, take off and price one breast.

    Raises:
        RequestFaultsError: the request is at fault.
        UnbuildableError: the survey is sound but cannot be built.
    """
    job, deal = take_brief(request, desk)
    return price_job(job, deal, request, desk)


def take_brief(request: SurveyRequest, desk: Desk) -> tuple[Job, Deal]:
    """The job and the deal of a request; raises RequestFaultsError with the faults of brief and cleared cautions together."""
    cleared = faults_of_cleared(request.survey)
    try:
        job, deal = resolve(request, desk.catalogue, desk.rules, desk.today)
    except RequestFaultsError as error:
        raise RequestFaultsError((*error.faults, *cleared)) from error
    if cleared:
        raise RequestFaultsError(cleared)
    return job, deal


def price_job(job: Job, deal: Deal, request: SurveyRequest, desk: Desk) -> Made:
    """Everything after the brief; raises UnbuildableError."""
    settled, recut = design_measured(request, job, desk)
    plan = cut_frame(settled.frame, job, yard_of(request, desk, recut))
    return msgspec.structs.replace(price_plan(job, deal, settled, plan, desk=desk), recut=recut)


def price_plan(job: Job, deal: Deal, settled: Settled, plan: FramePlan, *, desk: Desk) -> Made:
    """Everything after the cutting."""
    catalogue, rules, frame = desk.catalogue, desk.rules, settled.frame
    effort = desk.effort if desk.effort.greedy else QUICK
    market = Market(catalogue=catalogue, rules=rules, scope=deal.scope, effort=effort)
    bill = take_off(frame, plan, job, market, hardware=settled.hardware)
    site = make_site(frame, plan, bill, job=job, rules=rules, scope=deal.scope)
    labour = estimate(site, deal, catalogue)
    total = price(bill, labour, job=job, deal=deal, catalogue=catalogue)
    return Made(
        job=job,
        deal=deal,
        settled=settled,
        plan=plan,
        bill=bill,
        labour=labour,
        sequence=build_sequence(site),
        price=total,
    )


def design(job: Job, desk: Desk, *, base_stands: bool = False) -> Settled:
    """The frame of a job, settled with its checks and the hardware that the bill buys; no price is read, so none changes it.

    Where the base stands, strengthening does not change it.

    Raises:
        UnbuildableError: with everything that is refused (gas, a live flue, damp) and every inequality that is not met.
    """
    refused = refusals_of(job)
    try:
        settled = settle(job, desk, desk.additions, base_stands=base_stands)
    except UnbuildableError as error:
        raise UnbuildableError((*refused, *error.unmet)) from error
    if refused:
        raise UnbuildableError(refused)
    return settled


def design_measured(request: SurveyRequest, job: Job, desk: Desk) -> tuple[Settled, Recut | None]:
    """The design of a request, and where something was measured on site what that changed; raises UnbuildableError."""
    measured = request.survey.measured
    if measured is None:
        return design(job, desk), None
    surveyed_job, _deal = take_brief(without_measures(request), desk)
    try:
        surveyed = design(surveyed_job, desk)
    except UnbuildableError:
        surveyed = None
    begun = msgspec.structs.replace(desk, additions=surveyed.frame.additions) if surveyed else desk
    settled = design(job, begun, base_stands=surveyed is not None)
    if surveyed:
        settled = msgspec.structs.replace(settled, steps=(*surveyed.steps, *settled.steps), laid_out=surveyed.laid_out)
    return settled, make_recut(measured, job, settled, surveyed_job=surveyed_job, surveyed=surveyed)


def yard_of(request: SurveyRequest, desk: Desk, recut: Recut | None = None) -> Yard:
    """Stock prices, what is on hand, what is cut already, and saw for the cutting."""
    options = request.options or Options()
    there = timber_there(recut.measured, desk.catalogue) if recut else ()
    return Yard(
        catalogue=desk.catalogue,
        rules=desk.rules,
        kerf_mm=options.kerf_mm,
        offcuts=(
            *there,
            *(
                OnHand(length_tenth_mm=tenths(one.length_mm), offcuts_count=one.offcuts_count)
                for one in options.offcuts_on_hand or ()
            ),
        ),
        cut_already=recut.cut_already if recut else (),
        available=tuple(Available(code=one.code, available_count=one.available_count) for one in options.stock_available or ()),
        stop=desk.stop,
        effort=desk.effort,
        layout=SheetLayout.PLUNGE_SAW if options.plunge_saw else SheetLayout.EDGE_TO_EDGE,
    )
