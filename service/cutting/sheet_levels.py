"""First fit decreasing height: pieces by falling height on levels from edge to edge, levels on the first sheet with room.

The textbook's plan for sheets, kept so that no plan is ever dearer.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from service.cutting.sheet_greedy import Layout, Placed

if TYPE_CHECKING:
    from service.cutting.meter import Meter
    from service.cutting.sheet_problem import SheetClass, SheetKind, SheetProblem


_SHARE: Final = 0.5  # of the work, for plans beyond the first


class _Lying(NamedTuple):
    """A piece as it lies: its longer side along the level, if it may be turned and fits so."""

    height: int
    width: int
    kind: int


def level_plan(problem: SheetProblem, number: int, meter: Meter) -> tuple[Layout, ...] | None:
    """Cut everything from sheets of one class; None if a piece does not fit, copies are too few, or there are defects.

    Args:
        problem: the bare problem.
        number: of the class.
        meter: counts the work.
    """
    of = problem.classes[number]
    pieces = [piece for at, kind in enumerate(problem.kinds) if (piece := _lying(kind, at, of)) is not None]
    if of.defects or len(pieces) < len(problem.kinds):
        return None
    filling = _Filling(of)
    for piece in sorted(pieces, key=lambda piece: (-piece.height, -piece.width)):
        filling.place(piece, problem.kinds[piece.kind].demand)
    meter.spend(2 * sum(map(len, filling.sheets)) + 0.2 * len(filling.levels) * (len(pieces) + len(filling.sheets)))
    if len(filling.sheets) > of.bars.copies:
        return None
    return tuple(Layout(number, tuple(sorted(sheet))) for sheet in filling.sheets)


def level_plans(problem: SheetProblem, meter: Meter) -> list[tuple[Layout, ...]]:
    """Give the plan of each class alone, as far as there is one; more than the first only while there is work left."""
    plans: list[tuple[Layout, ...]] = []
    for number in range(len(problem.classes)):
        plan = level_plan(problem, number, meter)
        plans += [] if plan is None else [plan]
        if plans and meter.is_over(_SHARE):
            break
    return plans


def _lying(kind: SheetKind, at: int, of: SheetClass) -> _Lying | None:
    """The first way to lie that fits the sheet: for a kind that may be turned, the longer side along it."""
    return next((_Lying(height, width, at) for width, height in kind.ways() if of.holds(width, height)), None)


class _Level:
    """A strip of a sheet, filled from the left."""

    def __init__(self, sheet: int, y: int, height: int) -> None:
        self.sheet, self.y, self.height, self.filled = sheet, y, height, 0


class _Filling:
    """Sheets of one class with their levels so far."""

    def __init__(self, of: SheetClass) -> None:
        self._of = of
        self._tops: list[int] = []  # of each sheet, where the next level would begin
        self.sheets: list[list[Placed]] = []
        self.levels: list[_Level] = []

    def place(self, piece: _Lying, count: int) -> None:
        """Put equal pieces on the first levels that take them, then on new ones."""
        for level in self.levels:
            if level.height >= piece.height:
                count -= self._fill(level, piece, count)
        while count:
            count -= self._fill(self._new_level(piece.height), piece, count)

    def _fill(self, level: _Level, piece: _Lying, count: int) -> int:
        """Put as many pieces on a level as fit; tell how many."""
        placed = min(count, (self._of.width - level.filled) // piece.width)
        for _ in range(placed):
            self.sheets[level.sheet].append(Placed(piece.kind, level.filled, level.y, piece.width, piece.height))
            level.filled += piece.width
        return placed

    def _new_level(self, height: int) -> _Level:
        at = next((at for at, top in enumerate(self._tops) if top + height <= self._of.height), None)
        if at is None:
            at = len(self._tops)
            self._tops.append(0)
            self.sheets.append([])
        level = _Level(at, self._tops[at], height)
        self._tops[at] += height
        self.levels.append(level)
        return level
