"""What strengthens a design, by the check that fails: steps in order, each with its limit (`knowledge/framing.md`, 10.2)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from service.checks.check import Check
    from service.checks.ground import Ground
    from service.frame import Additions
    from service.hardware import Shelf


class Weak(NamedTuple):
    """What a step reads: the check that fails, the design that it fails in, and what is sold."""

    check: Check
    ground: Ground
    shelf: Shelf


class Stronger(NamedTuple):
    """What a step adds, and that in words."""

    additions: Additions
    says: str


type Step = Callable[[Weak], Stronger | None]  # None: used up, no room, or not sold


class Row(NamedTuple):
    """One row of the table: the checks that it answers, and its steps, first to last."""

    codes: frozenset[str]
    steps: tuple[Step, ...]


TABLE: Final[tuple[Row, ...]] = ()


def next_steps(failing: tuple[Check, ...], ground: Ground, shelf: Shelf) -> Iterator[tuple[Check, Stronger]]:
    """Every step that is left, in the order of the table, then of the members' marks: the first one is to be taken."""
    return (
        (check, stronger)
        for row in TABLE
        for check in sorted(failing, key=lambda one: one.subject)
        if check.code in row.codes
        for step in row.steps
        if (stronger := step(Weak(check=check, ground=ground, shelf=shelf)))
    )
