"""Counted work: the one thing that ends a search, so that the same job gives the same plan on every machine."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.cutting.plan import Stopped

if TYPE_CHECKING:
    from service.cutting.pieces import Effort, Stop

MICROS_PER_UNIT: Final = 1_000  # a work unit is about a millisecond, so a micro is about a microsecond


class Meter:
    """Counts work done and says when a search must end. The caller's clock is asked only as a guard."""

    def __init__(self, effort: Effort, stop: Stop) -> None:
        """Start at nothing done."""
        self._each_micros = self._limit_micros = effort.work_count * MICROS_PER_UNIT
        self._micros = 0
        self._stop = stop
        self._clock_rang = False

    def spend(self, micros: float) -> None:
        """Count work, in thousandths of a unit."""
        self._micros += int(micros)

    def renew(self) -> None:
        """Allow as much work again, for another search of the same job."""
        self._limit_micros = self._micros + self._each_micros

    def is_over(self, share: float = 1.0) -> bool:
        """Tell whether that share of the limit is spent, or the caller's time is over."""
        return self.rang() or self._micros >= self._limit_micros * share

    def rang(self) -> bool:
        """Tell whether the caller's time is over."""
        if not self._clock_rang and self._stop():
            self._clock_rang = True
        return self._clock_rang

    def left_micros(self) -> int:
        """Give the work that may still be done, in thousandths of a unit."""
        return max(0, self._limit_micros - self._micros)

    @property
    def work_count(self) -> int:
        """Whole work units done."""
        return self._micros // MICROS_PER_UNIT

    def stopped(self, *, done: bool) -> Stopped:
        """Say what ended the search."""
        if self._clock_rang:
            return Stopped.CLOCK_GUARD
        if done:
            return Stopped.DONE
        return Stopped.WORK_LIMIT
