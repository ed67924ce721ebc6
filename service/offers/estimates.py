"""An estimate: the real design at what is told and assumed, and the range of its price over what is not known."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.catalogue import MINOR_PER_MAJOR, money
from service.checks import Audience, cautions_of
from service.cutting import GREEDY
from service.errors import RequestFaultsError, UnbuildableError
from service.offers.answers import with_alternatives
from service.offers.estimate_range import PERCENTILE_SD_RATIO, Percentiles, Spreading, outward, percentiles, spread_over
from service.offers.estimate_survey import PLASTERED, fault_as_asked, survey_of
from service.offers.estimate_unknowns import Base, Unknown, unknowns_of
from service.offers.estimate_wire import EffectAnswer, Estimated, HeadSizes, NotEstimated, QuestionAnswer, Range
from service.price import StepKind
from service.quote import Made, RecessSize, Unbuildable, normalise, origin_of, price_job, take_brief
from service.survey.wishes import CatalogueBoard
from service.units import millimetres

if TYPE_CHECKING:
    from service.brief import Assumption, Job
    from service.frame import Frame
    from service.offers.estimate_wire import EstimateAnswer, EstimateRequest
    from service.quote import Desk
    from service.survey import SurveyRequest
    from service.units import Money

MOST_QUESTIONS_COUNT: Final = 3
MEANING: Final = (
    "Low and high are the 10th and the 90th percentile of what the work may come to: hours by task (low 0.8, high 1.45 of the "
    "likely ones, walls not told 1.8, 10 percent for what slows all tasks together) and each assumption over its range "
    "(Simpson's rule: ends one sixth each, the middle two thirds). Variances are added, as the causes are independent; likely "
    "is the mean. Rounded outward to ten."
)


def answer_estimate(asked: EstimateRequest, desk: Desk) -> EstimateAnswer:
    """The estimate of a handful of answers; raises RequestFaultsError, its faults pointing into the answers."""
    quick, request = msgspec.structs.replace(desk, effort=GREEDY), survey_of(asked, desk.catalogue)
    try:
        return estimate_of(request, quick)
    except RequestFaultsError as error:
        raise RequestFaultsError(tuple(fault_as_asked(fault) for fault in error.faults)) from error


def estimate_of(request: SurveyRequest, desk: Desk) -> EstimateAnswer:
    """The estimate of a survey."""
    job, deal = take_brief(request, desk)
    try:
        made = price_job(job, deal, request, desk)
    except UnbuildableError as error:
        return _not_estimated(error, request, job, desk)
    return _estimated(base_of(made, request, desk))


def base_of(made: Made, request: SurveyRequest, desk: Desk) -> Base:
    """A design as what unknowns are reckoned against; what is designed again begins with its strengthening."""
    return Base(made, request, msgspec.structs.replace(desk, additions=made.frame.additions))


def range_of(base: Base, unknowns: tuple[Unknown, ...]) -> Percentiles:
    """Low, likely and high of a design with so much unknown."""
    return percentiles(base.total_minor, (labour_spread(base), *(_spread(one) for one in unknowns)))


def range_answer(price: Percentiles, currency: str) -> Range:
    """Percentiles as they are shown."""
    low, likely, high = (money(minor, currency) for minor in outward(price, MINOR_PER_MAJOR[currency]))
    return Range(low=low, likely=likely, high=high)


def _not_estimated(error: UnbuildableError, request: SurveyRequest, job: Job, desk: Desk) -> NotEstimated:
    origin = origin_of(normalise(request, desk.catalogue, desk.today, desk.rules.edition), job, desk.catalogue)
    bare = Unbuildable(unmet=error.unmet, assumptions=job.assumptions, doubts=job.doubts, origin=origin)
    found = with_alternatives(bare, request, desk)
    return NotEstimated(
        unmet=found.unmet,
        alternatives=found.alternatives,
        no_alternative=found.no_alternative,
        request=request,
        origin=origin,
    )


def _estimated(base: Base) -> Estimated:
    made, desk, unknowns = base.made, base.desk, unknowns_of(base)
    price, currency = range_of(base, unknowns), made.deal.currency
    missing = _not_in_price(base, unknowns)
    cautions = cautions_of(made.job, made.frame, desk.rules, made.settled.report)
    normal = normalise(base.request, desk.catalogue, desk.today, desk.rules.edition)
    return Estimated(
        price=range_answer(price, currency),
        complete=not missing,
        not_in_price=missing,
        sizes=head_sizes(made.frame),
        on_site_days=made.labour.visit_days,
        assumptions=(*_assumptions(made.job, unknowns, currency), *_board_taken(base.request)),
        narrowing=_questions(base, unknowns, price),
        cautions=tuple(one for one in cautions if Audience.CUSTOMER in one.audience),
        not_proven=_not_proven(made),
        meaning=MEANING,
        picture=None,
        request=base.request,
        origin=origin_of(normal, made.job, desk.catalogue),
    )


def _spread(one: Unknown) -> Spreading:
    return spread_over(one.low_minor, one.likely_minor, one.high_minor)


def labour_spread(base: Base) -> Spreading:
    """The hours' own spread at the mean rate of the job (labour.md, section 5)."""
    labour = base.made.labour
    cost = sum(step.amount_minor for step in base.made.price.steps if step.kind in {StepKind.LABOUR, StepKind.TOOL_WEAR})
    if not labour.person_hours:
        return Spreading(0.0, 0.0)
    each = cost / labour.person_hours * base.per_cost_ratio
    deviation_hours = (labour.high_hours - labour.low_hours) / 2 / PERCENTILE_SD_RATIO
    return Spreading((labour.mean_hours - labour.person_hours) * each, (deviation_hours * each) ** 2)


def _questions(base: Base, unknowns: tuple[Unknown, ...], price: Percentiles) -> tuple[QuestionAnswer, ...]:
    """What narrows most, on average over its answers."""
    found = []
    for one in unknowns:
        rest = tuple(other for other in unknowns if other is not one)
        narrows = price.width_minor - range_of(base, rest).width_minor
        if one.member and narrows >= 1:
            found.append((-narrows, one))
    best = sorted(found, key=lambda pair: (pair[0], pair[1].member))[:MOST_QUESTIONS_COUNT]
    currency = base.made.deal.currency
    return tuple(QuestionAnswer(member=one.member, asks=one.asks, narrows_by=_whole(-by, currency)) for by, one in best)


def _assumptions(job: Job, unknowns: tuple[Unknown, ...], currency: str) -> tuple[EffectAnswer, ...]:
    """What moves the price by amounts, greatest first, then everything else that was assumed."""
    taken = {one.pointer: one for one in job.assumptions}
    ordered = sorted(unknowns, key=lambda one: (one.low_minor - one.high_minor, one.pointer))
    reckoned = tuple(_effect(one, taken.get(one.pointer), currency) for one in ordered)
    known = {one.pointer for one in unknowns}
    others = tuple(
        EffectAnswer(pointer=one.pointer, value=one.value, says=one.effect, effect_low=None, effect_high=None)
        for one in job.assumptions
        if one.pointer not in known
    )
    return (*reckoned, *others)


def _board_taken(request: SurveyRequest) -> tuple[EffectAnswer, ...]:
    """The board that was taken for a finish; a shopper is not asked for it."""
    board = request.survey.brief.board
    if not isinstance(board, CatalogueBoard):
        return ()
    taken = EffectAnswer(pointer="/survey/brief/board", value=board.code, says=PLASTERED, effect_low=None, effect_high=None)
    return (taken,)


def _effect(one: Unknown, taken: Assumption | None, currency: str) -> EffectAnswer:
    return EffectAnswer(
        pointer=one.pointer,
        value=taken.value if taken else None,
        says=one.says,
        effect_low=_whole(one.low_minor, currency),
        effect_high=_whole(one.high_minor, currency),
    )


def _whole(amount_minor: float, currency: str) -> Money:
    """To the nearest whole unit: no pennies of what is not known (labour.md, section 5)."""
    scale = MINOR_PER_MAJOR[currency]
    return money(round(amount_minor / scale) * scale, currency)


def _not_in_price(base: Base, unknowns: tuple[Unknown, ...]) -> tuple[str, ...]:
    """What has no price; a fire of a size class has one in its range."""
    fire = f"1 x fire {base.made.job.appliance.model}" if any(one.member == "appliance" for one in unknowns) else ""
    return tuple(thing for thing in base.made.price.unpriced if thing != fire)


def _not_proven(made: Made) -> tuple[str, ...]:
    report = made.settled.report
    parts = (
        ("checks that fail", report.failing),
        ("checks that are not verified, as the room is not surveyed", report.provisional),
    )
    checks = tuple(f"{what}: {', '.join(sorted({one.code for one in found}))}" for what, found in parts if found)
    return (
        "the cuts are the best of a few greedy plans, checked but not proven to cost least",
        "where the room is varied the design begins with the strengthening of this one, and is not weakened again",
        "days on site are those of the design at what is assumed",
        *checks,
    )


def head_sizes(frame: Frame) -> HeadSizes:
    """The breast in a few sizes."""
    sizes, levels, recess = frame.sizes, frame.levels, frame.sizes.recess
    centre = levels.screen_centre_tenth_mm
    return HeadSizes(
        finished_width_mm=millimetres(sizes.finished_width_tenth_mm),
        finished_depth_mm=millimetres(sizes.finished_depth_tenth_mm),
        finished_top_mm=millimetres(levels.finished_top_tenth_mm),
        platform_mm=millimetres(levels.platform_tenth_mm),
        opening_width_mm=millimetres(sizes.opening_width_tenth_mm),
        opening_height_mm=millimetres(sizes.opening_height_tenth_mm),
        recess_clear=None
        if recess is None
        else RecessSize(
            width_mm=millimetres(recess.clear_width_tenth_mm),
            height_mm=millimetres(recess.clear_height_tenth_mm),
            depth_mm=millimetres(recess.depth_tenth_mm),
        ),
        screen_centre_mm=None if centre is None else millimetres(centre),
    )
