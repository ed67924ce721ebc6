"""HiGHS as it is used here: silent, one thread, fixed seed, ended by counted work.

An integer programme is interrupted when the caller's time is over, and ends after so many nodes that the work left allows for.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

import highspy

if TYPE_CHECKING:
    from service.cutting.meter import Meter

_SEED: Final = 1
# Work of an integer programme in thousandths of a unit, measured roughly on masters of 100,000 to 800,000 cells.
_MICROS_PER_CELL: Final = 2.5
_MICROS_PER_CELL_AND_NODE: Final = 0.15
_MICROS_PER_ITERATION: Final = 35
_MICROS_PER_CALL: Final = 3_000  # between two questions whether to go on
_MICROS_PER_CELL_AND_CALL: Final = 0.1
_FIRST_CALLS: Final = 10  # so many come before the first bound


class Solver(highspy.Highs):
    """A HiGHS that never prints: the library prints its name when callbacks are set up, unless output is off by then."""

    def enableCallbacks(self) -> None:  # noqa: N802 - the library's name
        """Switch output off; set up no callbacks, which would also keep the solver alive for ever."""
        self.setOptionValue("output_flag", False)  # noqa: FBT003 - how an option is set
        self.callbacks = []


def new_solver() -> Solver:
    """Make a solver that always does the same."""
    solver = Solver()  # type: ignore[no-untyped-call]  # highspy leaves its constructor untyped
    for option, value in (("threads", 1), ("random_seed", _SEED)):
        solver.setOptionValue(option, value)
    return solver


def affordable(cells: int, meter: Meter) -> bool:
    """Tell whether an integer programme of so many cells (rows times columns) can be begun with the work left."""
    return cells * _MICROS_PER_CELL <= meter.left_micros()


def run_integer(solver: Solver, cells: int, meter: Meter) -> highspy.HighsModelStatus:
    """Solve an integer programme within the work left; interrupted when the caller's time is over.

    With one thread the solver asks whether to go on at the same points each time: counting its questions is counting work.
    """
    spare = meter.left_micros() - cells * _MICROS_PER_CELL
    calls_left = _FIRST_CALLS + int(max(0, spare) / (_MICROS_PER_CALL + cells * _MICROS_PER_CELL_AND_CALL))
    solver.setOptionValue("mip_max_nodes", max(1, int(spare / (cells * _MICROS_PER_CELL_AND_NODE + 100))))

    def ask(*event: Any) -> None:  # noqa: ANN401 - kind, message, output, input and data in highspy's own types
        nonlocal calls_left
        tell = event[3]
        calls_left -= 1
        if tell is not None and (calls_left < 0 or meter.rang()):
            tell.user_interrupt = True

    solver.setCallback(ask, None)
    solver.startCallback(highspy.cb.HighsCallbackType.kCallbackMipInterrupt)
    solver.run()
    solver.stopCallback(highspy.cb.HighsCallbackType.kCallbackMipInterrupt)
    solver.setCallback(None, None)
    iterations = max(0, solver.getInfo().simplex_iteration_count)
    done = 500 + cells * _MICROS_PER_CELL + iterations * _MICROS_PER_ITERATION
    meter.spend(done if calls_left >= 0 else max(done, meter.left_micros()))
    return solver.getModelStatus()
