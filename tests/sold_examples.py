"""The worked examples A, B, C and C0 as they are sold, and short ways to their stages.

Source: `knowledge/worked-examples.md`: terms stand under "Price A", "Price B" and "Price C". What the checks add comes out of
the checks, and must be what stands under "After checks" of each example. The route of 20 m is the default of
`knowledge/survey.md`, section 9 (4 dust sheets in each bill).
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any
from unittest.mock import patch

import msgspec

from service.catalogue import demo_catalogue
from service.frame import Additions, Role
from service.quote import Desk, answer_quote, design, make_quote
from tests.checks.grounds import rules_without_ladder
from tests.examples_of import DAY, changed, example_a, example_b, example_c, example_c0, job_of, request_of

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.quote import Made, QuoteAnswer

type Request = dict[str, Any]

NAMES = ("A", "B", "C", "C0")
ROUTE = {"/survey/site/parking_distance_mm": 20_000}
CEILING = {"kind": "boarded_joists", "lining_mm": 12.5, "textured_coating": "no"}
TERMS_B = {
    "/terms/appliance_supplied_by": "shop", "/terms/bracket_supplied_by": "shop", "/terms/visit_days_count": 6,
    "/terms/mark_up_ratio": 0.25, "/terms/tax": {"kind": "standard", "rounding": "per_line"},
    "/terms/round_up_to": {"amount": "5.00", "currency": "GBP"},
    "/terms/provisional_sums": [{"name": "new circuit", "amount": {"amount": "500.00", "currency": "GBP"}}],
}  # fmt: skip
TERMS_C = {
    "/survey/ceiling": CEILING, "/survey/provenance": {"/survey": "measured"}, "/survey/services/supply_wanted": "plug_in_reach",
    "/terms/appliance_supplied_by": "customer", "/terms/visit_days_count": 3, "/terms/margin_ratio": 0.25,
    "/terms/round_up_to": {"amount": "1.00", "currency": "GBP"},
}  # fmt: skip


def sold(name: str, **changes: object) -> Request:
    """The request of an example with its terms of sale; changes are pointers with `__` for each `/` but the first."""
    plain = {"A": example_a, "B": example_b, "C": example_c, "C0": example_c0}[name]()
    terms = {"A": {}, "B": TERMS_B, "C": TERMS_C, "C0": TERMS_C}[name]
    more = {f"/{key.replace('__', '/')}": value for key, value in changes.items()}
    return changed(plain, {**ROUTE, **terms, **more})


def desk_of(catalogue: Catalogue | None = None) -> Desk:
    """A desk by the rules that the worked examples are written for: without structure.md 5.13."""
    return Desk(catalogue=catalogue or demo_catalogue(), rules=rules_without_ladder(), today=DAY)


@cache
def made(name: str) -> Made:
    """An example after checks, through all stages."""
    return make_quote(request_of(sold(name)), desk_of())


@cache
def laid_out(name: str) -> Made:
    """An example as it is laid out, through all stages: no check is made, so that nothing is strengthened."""
    with patch("service.checks.register.REGISTER", ()):
        return make_quote(request_of(sold(name)), desk_of())


@cache
def answered(name: str) -> QuoteAnswer:
    """The answer to an example after checks."""
    return answer_quote(request_of(sold(name)), desk_of())


def sell(request: Request, catalogue: Catalogue | None = None) -> Made:
    """Any request through all stages."""
    return make_quote(request_of(request), desk_of(catalogue))


@cache
def strengthened() -> Made:
    """Example C with a trimmer of C24 38 x 63 and a ply of C24 38 x 89, through all stages."""
    added = Additions(ply_count=1, ply_width_tenth_mm=890, strong_class="C24", strong_roles=(Role.TRIMMER, Role.TRIMMER_PLY))
    return make_quote(request_of(sold("C")), msgspec.structs.replace(desk_of(), additions=added))


def _settled(name: str) -> Additions:
    return design(job_of(sold(name)), desk_of()).frame.additions


ADDITIONS = {name: _settled(name) for name in NAMES}  # what the checks add to each example
