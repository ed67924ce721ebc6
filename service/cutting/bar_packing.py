"""packingsolver for bars: a quick plan where there are very many kinds, or where our own search was cut short.

Its sequential value correction is asked for, in the mode that runs one search after the other, with a fixed number of rounds;
the time limit is a guard far beyond that. Only its plan is taken, never what it claims.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np
import packingsolver  # type: ignore[import-untyped]  # it brings no types
from packingsolver import onedimensional

if TYPE_CHECKING:
    from service.cutting.meter import Meter
    from service.cutting.problem import BarProblem
    from service.cutting.sources import Pattern

_GUARD_S: Final = 30.0
_ROUNDS: Final = 32
_COST_SCALE: Final = 1_000  # a cost must be above nothing: free bars cost a thousandth of a minor unit


def packed_bars(problem: BarProblem, meter: Meter) -> tuple[Pattern, ...] | None:
    """Ask packingsolver for a plan; None if it gives none or there is too little work left."""
    kinds, pieces = len(problem.sizes), sum(problem.demands)
    price = _ROUNDS * (100.0 * kinds + 2.0 * pieces)  # measured roughly, in thousandths of a work unit
    if price > meter.left_micros():
        return None
    meter.spend(price)
    output = onedimensional.optimize(_instance(problem), _parameters())
    if output.is_proven_infeasible or not output.solution.full():
        return None
    return _plan(problem, output.solution)


def _instance(problem: BarProblem) -> onedimensional.Instance:
    builder = onedimensional.InstanceBuilder()
    builder.set_objective(packingsolver.Objective.VariableSizedBinPacking)
    for of in problem.classes:
        for step in of.steps:
            cost = float(step.cost * _COST_SCALE) if step.cost else 1.0
            builder.add_bin_type(of.capacity, cost=cost, copies=step.copies)
    for size, demand in zip(problem.sizes, problem.demands, strict=True):
        builder.add_item_type(size, copies=demand)
    return builder.build()


def _parameters() -> onedimensional.OptimizeParameters:
    parameters = onedimensional.OptimizeParameters()
    parameters.verbosity_level = 0
    parameters.messages_to_stdout = False
    parameters.time_limit = _GUARD_S
    parameters.optimization_mode = packingsolver.OptimizationMode.NotAnytimeSequential
    parameters.use_sequential_value_correction = True
    parameters.not_anytime_sequential_value_correction_number_of_iterations = _ROUNDS
    return parameters


def _plan(problem: BarProblem, solution: onedimensional.Solution) -> tuple[Pattern, ...]:
    numbers = [number for number, of in enumerate(problem.classes) for _ in of.steps]
    plan: list[Pattern] = []
    for place in range(solution.number_of_different_bins()):
        bar = solution.bin(place)
        counts = np.bincount([item.item_type_id for item in bar.items], minlength=len(problem.sizes)).astype(np.int64)
        plan += [(numbers[bar.bin_type_id], counts)] * bar.copies
    return tuple(plan)
