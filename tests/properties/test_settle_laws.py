"""Laws of strengthening: it ends, what it returns passes or has no step left, no order and no price changes it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
from hypothesis import HealthCheck, assume, event, given, settings
from hypothesis import strategies as st

from service.checks import settle
from service.checks.ground import Ground
from service.checks.register import check
from service.checks.steps import next_steps
from service.errors import RequestFaultsError, UnbuildableError
from tests.checks.row_cases import MARKET
from tests.examples_of import job_of
from tests.properties import laws
from tests.strategies import requests

if TYPE_CHECKING:
    from service.brief import Job
    from service.checks import Settled
    from service.frame import Frame
    from tests.examples_of import Request

SOME = settings(
    max_examples=max(40, settings.default.max_examples // 5 if settings.default else 0),
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much],
)


def settled(request: Request) -> tuple[Job, Settled]:
    """The settled design of a request; what is refused is not counted."""
    try:
        job = job_of(request)
        return job, settle(job, MARKET)
    except (UnbuildableError, RequestFaultsError) as error:
        event(type(error).__name__)
        assume(False)  # noqa: FBT003 - the argument is a condition
        raise


@given(requests())
@SOME
def test_what_is_returned_passes_or_has_no_step_left(request: Request) -> None:
    """Framing.md, 10.2: a design with a failing check has used up every step that would change it."""
    job, made = settled(request)
    ground = Ground(job=job, frame=made.frame, rules=MARKET.rules, hardware=made.hardware)
    event(f"steps: {len(made.steps)}, failing: {len(made.report.failing)}")

    assert made.report == check(ground)
    again = settle(job, MARKET, made.frame.additions)
    assert () == again.steps
    for one, stronger in next_steps(made.report.failing, ground, MARKET):
        assert one in made.report.failing
        assert stronger.additions != made.frame.additions


@given(requests())
@SOME
def test_what_is_added_keeps_the_laws_of_the_frame(request: Request) -> None:
    job, made = settled(request)
    event(f"steps: {len(made.steps)}")

    assert {} == laws.broken(job, made.frame)


@given(requests())
@SOME
def test_each_step_is_for_a_check_that_failed_and_helps_it(request: Request) -> None:
    _job, made = settled(request)

    assert all(one.before_ratio is None or one.before_ratio > 1.0 for one in made.steps)
    assert all(one.done and one.check and one.subject for one in made.steps)
    assert all(one.after_ratio <= one.before_ratio for one in made.steps if one.before_ratio and one.after_ratio)
    answered = {(one.check, one.subject) for one in made.steps} - {(one.code, one.subject) for one in made.report.failing}
    event(f"answered: {len(answered)} of {len({(one.check, one.subject) for one in made.steps})}")


@given(requests(), st.integers(min_value=1, max_value=40))
@SOME
def test_order_of_members_changes_no_result(request: Request, first: int) -> None:
    """Checks find members by role, mark and place, not by where they stand in a list."""
    job, made = settled(request)
    frame = _shuffled(made.frame, first)
    ground = Ground(job=job, frame=frame, rules=MARKET.rules, hardware=made.hardware)
    key = lambda one: (one.code, one.subject, one.demand.symbol)  # noqa: E731 - of this test alone

    assert [(one.code, one.subject, one.verdict, one.utilisation_ratio) for one in sorted(made.report.checks, key=key)] == [
        (one.code, one.subject, one.verdict, one.utilisation_ratio) for one in sorted(check(ground).checks, key=key)
    ]


@given(requests(), st.integers(min_value=2, max_value=9))
@SOME
def test_prices_change_no_design(request: Request, factor: int) -> None:
    """Design.md, section 7: the same frame, hardware and results at other prices."""
    job, made = settled(request)
    catalogue = MARKET.catalogue
    prices = {
        code: tuple(msgspec.structs.replace(step, amount_minor=step.amount_minor * factor + 1) for step in steps)
        for code, steps in catalogue.prices.items()
    }
    dear = msgspec.structs.replace(MARKET, catalogue=msgspec.structs.replace(catalogue, prices=prices))

    assert made == settle(job, dear)


def _shuffled(frame: Frame, first: int) -> Frame:
    members = tuple(reversed((*frame.members[first:], *frame.members[:first])))
    return msgspec.structs.replace(frame, members=members, panels=tuple(reversed(frame.panels)))
