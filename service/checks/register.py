"""Every check, in the order of the report. A check takes the ground and yields its results; one that does not apply says why."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.check import Check, Skipped
from service.checks.report import Report

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.checks.check import Result
    from service.checks.ground import Ground

REGISTER: Final[tuple[Callable[[Ground], tuple[Result, ...]], ...]] = ()


def check(ground: Ground) -> Report:
    """Run every check of the register on one design."""
    results = [result for run in REGISTER for result in run(ground)]
    return Report(
        checks=tuple(one for one in results if isinstance(one, Check)),
        skipped=tuple(one for one in results if isinstance(one, Skipped)),
    )
