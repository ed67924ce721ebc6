"""Short ways to one result of a family of checks."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks.check import Check, Skipped

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.checks.check import Result
    from service.checks.ground import Ground


def the_check(run: Callable[[Ground], tuple[Result, ...]], ground: Ground, code: str, subject: str = "") -> Check:
    """The one check of a code, and of a subject if there are several."""
    found = [one for one in run(ground) if isinstance(one, Check) and one.code == code and subject in {"", one.subject}]
    assert len(found) == 1, (code, subject, found)
    return found[0]


def why_skipped(run: Callable[[Ground], tuple[Result, ...]], ground: Ground, code: str) -> str:
    """Why a check does not apply."""
    found = [one.why for one in run(ground) if isinstance(one, Skipped) and one.code == code]
    assert len(found) == 1, (code, found)
    return found[0]


def values(check: Check) -> tuple[float, float | None]:
    """Demand and resistance."""
    return check.demand.value, None if check.resistance is None else check.resistance.value
