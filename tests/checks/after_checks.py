"""The worked examples as they are laid out and as they stand after their checks, and how their results are read.

Source: `knowledge/worked-examples.md`, tables "After checks". They are written without the hung ladder of structure.md 5.13.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import msgspec

from service.checks.check import Check, Skipped
from service.frame import Additions, Role
from tests.checks.grounds import ground_of, rules_without_ladder
from tests.examples_of import example_a, example_b, example_c, example_c0

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.checks.check import Result
    from service.checks.ground import Ground

LID_RAILS = (Role.TOP_RAIL_FRONT, Role.TOP_RAIL_REAR)
REQUESTS = {"A": example_a, "B": example_b, "C": example_c, "C0": example_c0}
ADDED = {
    "A": Additions(bracketed_roles=(Role.SILL_RAIL,)),
    "B": Additions(bracketed_roles=(Role.SILL_RAIL,), extra_rear_rails_tenth_mm=(24_250,)),
    "C": Additions(ply_count=1, bracketed_roles=LID_RAILS),
    "C0": Additions(ply_count=1, bracketed_roles=LID_RAILS),
}


@cache
def laid_out(example: str) -> Ground:
    """An example before any step."""
    return ground_of(REQUESTS[example](), rules=rules_without_ladder())


@cache
def after_checks(example: str) -> Ground:
    """An example with what its checks added."""
    return ground_of(REQUESTS[example](), ADDED[example], rules_without_ladder())


def checks_of(results: tuple[Result, ...], code: str) -> tuple[Check, ...]:
    """Results of one code."""
    return tuple(one for one in results if isinstance(one, Check) and one.code == code)


def check_of(run: Callable[[Ground], tuple[Result, ...]], ground: Ground, code: str, subject: str | None = None) -> Check:
    """The one result of a code, or of a code and a subject."""
    (found,) = (one for one in checks_of(run(ground), code) if subject in {None, one.subject})
    return found


def skipped_of(run: Callable[[Ground], tuple[Result, ...]], ground: Ground) -> dict[str, str]:
    """Codes that do not apply, with the reason."""
    return {one.code: one.why for one in run(ground) if isinstance(one, Skipped)}


def exact_ratio(check: Check) -> float:
    """Demand over resistance, not rounded."""
    assert check.resistance is not None
    return check.demand.value / check.resistance.value


def wished(ground: Ground, **wishes: object) -> Ground:
    """A ground whose brief wishes something else; nothing is laid out again."""
    brief = msgspec.structs.replace(ground.job.survey.brief, **wishes)
    survey = msgspec.structs.replace(ground.job.survey, brief=brief)
    return of_job(ground, survey=survey)


def of_job(ground: Ground, **values: object) -> Ground:
    """A ground whose job says something else; nothing is laid out again."""
    return msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, **values))


def of_hardware(ground: Ground, **values: object) -> Ground:
    """A ground with other hardware."""
    return msgspec.structs.replace(ground, hardware=msgspec.structs.replace(ground.hardware, **values))


def of_additions(ground: Ground, **values: object) -> Ground:
    """A ground whose frame says that something was added; nothing is laid out again."""
    additions = msgspec.structs.replace(ground.frame.additions, **values)
    return msgspec.structs.replace(ground, frame=msgspec.structs.replace(ground.frame, additions=additions))
