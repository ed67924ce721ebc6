"""A check that fails on some member of a design, for the tests of the steps."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec

from service.checks.step import Stronger, Weak
from tests.checks.grounds import ground_of
from tests.checks.row_cases import MARKET
from tests.checks.test_check import made

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.checks.step import Step
    from service.frame import Additions, Role
    from service.rules import RuleSet


def weak(
    request: dict[str, Any],
    additions: Additions | None = None,
    *,
    role: Role | None = None,
    rules: RuleSet | None = None,
    catalogue: Catalogue | None = None,
) -> Weak:
    """A design whose first member of a role fails a check."""
    ground = ground_of(request, additions, rules)
    mark = next((member.mark for member in ground.frame.members if member.role is role), "the wall")
    check = msgspec.structs.replace(made(2.0, 1.0), subject=mark)
    return Weak(
        check=check, ground=ground, shelf=MARKET if catalogue is None else msgspec.structs.replace(MARKET, catalogue=catalogue)
    )


def said(step: Step, spot: Weak, times: int = 9) -> list[str]:
    """What a step says when it is taken again and again, until it is used up or a number of times."""
    words: list[str] = []
    while len(words) < times and (found := step(spot)):
        words.append(found.says)
        frame = msgspec.structs.replace(
            spot.ground.frame, additions=found.additions, ply_count=found.additions.ply_count or spot.ground.frame.ply_count
        )
        spot = Weak(check=spot.check, ground=msgspec.structs.replace(spot.ground, frame=frame), shelf=spot.shelf)
    return words


def taken(step: Step, spot: Weak) -> Stronger:
    """What a step yields."""
    found = step(spot)
    assert found is not None
    return found
