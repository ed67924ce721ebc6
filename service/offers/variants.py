"""Variants of a quote in one call: each is a request of its own, run through everything, so that differences are computed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.catalogue import money, to_minor
from service.checks import cautions_of
from service.errors import Fault, Reason, RequestFaultsError, UnbuildableError
from service.offers.patch import patched
from service.quote import Operation, VariantAnswer, VariantOutcome, make_quote, standing_of, take_brief
from service.survey import Options
from service.units import millimetres

if TYPE_CHECKING:
    from service.quote import Desk, Made, QuoteDesigned
    from service.survey import SurveyRequest, Variant
    from service.units import Money

VARIANTS: Final = "/options/variants"


def variant_requests(request: SurveyRequest, desk: Desk) -> tuple[tuple[Variant, SurveyRequest], ...]:
    """Every variant with its own request.

    Raises:
        RequestFaultsError: with the faults of all variants, each at the variant that has it.
    """
    variants = (request.options.variants if request.options else None) or ()
    made, faults = [], []
    for place, variant in enumerate(variants):
        try:
            own = _patched(request, variant)
            take_brief(own, desk)
        except RequestFaultsError as error:
            faults += [_at(place, fault) for fault in error.faults]
        else:
            made.append((variant, own))
    if faults:
        raise RequestFaultsError(tuple(faults))
    return tuple(made)


def with_variants(answer: QuoteDesigned, requests: tuple[tuple[Variant, SurveyRequest], ...], desk: Desk) -> QuoteDesigned:
    """The quote with its variants beside it."""
    found = tuple(_variant(variant, request, answer.price.total, desk) for variant, request in requests)
    return msgspec.structs.replace(answer, variants=found) if found else answer


def _patched(request: SurveyRequest, variant: Variant) -> SurveyRequest:
    """The request with the variant's members set, and without variants of its own."""
    options = msgspec.structs.replace(request.options or Options(), variants=None)
    plain = msgspec.structs.replace(request, options=options)
    operations = tuple(Operation(path=step.path, value=step.value) for step in variant.patch)
    try:
        return patched(plain, operations)
    except (msgspec.ValidationError, AttributeError, TypeError) as error:  # also a path through a list or a plain value
        remedy = "set members of objects of the survey, with values that they take"
        fault = Fault(pointer="/patch", reason=Reason.SHAPE, detail=f"the patch makes no survey: {error}", remedy=remedy)
        raise RequestFaultsError((fault,)) from error


def _at(place: int, fault: Fault) -> Fault:
    """A fault of a variant, at its patch; what it is about in the survey stands in the words."""
    own = fault.pointer == "/patch"
    detail = fault.detail if own else f"{fault.pointer}: {fault.detail}"
    return msgspec.structs.replace(fault, pointer=f"{VARIANTS}/{place}/patch", detail=detail, related=())


def _variant(variant: Variant, request: SurveyRequest, total: Money, desk: Desk) -> VariantAnswer:
    try:
        made = make_quote(request, desk)
    except UnbuildableError as error:
        return VariantAnswer(
            name=variant.name,
            outcome=VariantOutcome.UNBUILDABLE,
            standing="",
            total=None,
            difference=None,
            complete=False,
            finished_width_mm=None,
            finished_depth_mm=None,
            finished_top_mm=None,
            screen_diagonal_in=None,
            on_site_days=None,
            unmet=error.unmet,
        )
    return _designed(variant, made, total, desk)


def _designed(variant: Variant, made: Made, total: Money, desk: Desk) -> VariantAnswer:
    cautions = cautions_of(made.job, made.frame, desk.rules, made.settled.report)
    standing, _reasons = standing_of(made.job, cautions, made.price, made.settled.report)
    sizes, currency = made.frame.sizes, made.deal.currency
    return VariantAnswer(
        name=variant.name,
        outcome=VariantOutcome.DESIGNED,
        standing=standing,
        total=money(made.price.total_minor, currency),
        difference=money(made.price.total_minor - to_minor(total.amount, currency), currency),
        complete=not made.price.unpriced,
        finished_width_mm=millimetres(sizes.finished_width_tenth_mm),
        finished_depth_mm=millimetres(sizes.finished_depth_tenth_mm),
        finished_top_mm=millimetres(made.frame.levels.finished_top_tenth_mm),
        screen_diagonal_in=made.job.screen.diagonal_in if made.job.screen else None,
        on_site_days=made.labour.visit_days,
        unmet=(),
    )
