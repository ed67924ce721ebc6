"""packingsolver for sheets whose cuts may stop inside: its layouts are taken, its claims are not.

As in `sheet_packing`: one search after the other, each ended by counted work, with a time limit as a guard far beyond that. Its
searches grow faster here, and with hundreds of pieces were seen to ignore the guard, so it is asked about small jobs only.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

import packingsolver  # type: ignore[import-untyped]  # it brings no types
from packingsolver import rectangle

from service.cutting.sheet_greedy import Layout, Placed
from service.cutting.sheet_packing import Way, is_alone

if TYPE_CHECKING:
    from service.cutting.meter import Meter
    from service.cutting.sheet_problem import SheetProblem

_GUARD_S: Final = 5.0
_LARGEST_PIECES: Final = 60
_COST_SCALE: Final = 1_000  # a cost must be above nothing: free sheets cost a thousandth of a minor unit


def ask_plunge(problem: SheetProblem, way: Way, breadth: int, meter: Meter) -> tuple[Layout, ...] | None:
    """Ask packingsolver for a plan whose cuts may stop inside a sheet; None if it gives none.

    Args:
        problem: the bare problem.
        way: which search.
        breadth: how wide the search is: the queue of a tree search, the rounds of a value correction; else of no effect.
        meter: counts the work and holds the caller's clock.
    """
    price, pieces = _price(problem, way, breadth), sum(kind.demand for kind in problem.kinds)
    if price > meter.left_micros() or pieces > _LARGEST_PIECES:
        return None
    meter.spend(price)
    output = rectangle.optimize(_instance(problem), _parameters(way, breadth))
    solution = output.solution
    return _layouts(problem, solution) if solution.full() and not output.is_proven_infeasible else None


def _price(problem: SheetProblem, way: Way, breadth: int) -> float:
    """Work of a search in thousandths of a unit, measured roughly on jobs of 10 to 60 pieces."""
    pieces = sum(kind.demand for kind in problem.kinds)
    area = sum(kind.demand * kind.width * kind.height for kind in problem.kinds)
    on_one = pieces / math.ceil(area / max(of.width * of.height for of in problem.classes))
    per_node = 12.0 if any(kind.rotatable for kind in problem.kinds) else 6.0
    prices = {
        Way.TREE: 60.0 * pieces * pieces + per_node * breadth * pieces * (2.0 + on_one),
        Way.KNAPSACKS: 2_500.0 * pieces * pieces,
        Way.CORRECTION: 450.0 * pieces * pieces * breadth,
    }
    return 1_000.0 + prices[way]


def _instance(problem: SheetProblem) -> rectangle.Instance:
    builder = rectangle.InstanceBuilder()
    objective = packingsolver.Objective
    builder.set_objective(objective.BinPacking if is_alone(problem) else objective.VariableSizedBinPacking)
    steps = [(of, step) for of in problem.classes for step in of.bars.steps]
    for bin_type, (of, step) in enumerate(steps):
        cost = float(step.cost * _COST_SCALE) if step.cost else 1.0
        builder.add_bin_type(of.width, of.height, cost=cost, copies=step.copies)
        for x, y, width, height in of.defects:
            if x < of.width and y < of.height:
                builder.add_defect(bin_type, x, y, min(width, of.width - x), min(height, of.height - y))
    for kind in problem.kinds:
        builder.add_item_type(kind.width, kind.height, copies=kind.demand, oriented=not kind.rotatable)
    return builder.build()


def _parameters(way: Way, breadth: int) -> rectangle.OptimizeParameters:
    parameters = rectangle.OptimizeParameters()
    parameters.verbosity_level = 0
    parameters.messages_to_stdout = False
    parameters.time_limit = _GUARD_S
    parameters.optimization_mode = packingsolver.OptimizationMode.NotAnytimeSequential
    parameters.use_tree_search = way is Way.TREE
    parameters.use_sequential_single_knapsack = way is Way.KNAPSACKS
    parameters.use_sequential_value_correction = way is Way.CORRECTION
    parameters.not_anytime_tree_search_queue_size = breadth
    parameters.not_anytime_sequential_value_correction_number_of_iterations = breadth
    return parameters


def _layouts(problem: SheetProblem, solution: rectangle.Solution) -> tuple[Layout, ...]:
    numbers = [number for number, of in enumerate(problem.classes) for _ in of.bars.steps]
    plan: list[Layout] = []
    for place in range(solution.number_of_different_bins()):
        sheet = solution.bin(place)
        pieces = [_placed(problem, item) for item in sheet.items]
        plan += [Layout(numbers[sheet.bin_type_id], tuple(sorted(pieces)))] * sheet.copies
    return tuple(plan)


def _placed(problem: SheetProblem, item: rectangle.SolutionItem) -> Placed:
    kind = problem.kinds[item.item_type_id]
    size = (kind.height, kind.width) if item.rotate else (kind.width, kind.height)
    return Placed(item.item_type_id, item.x, item.y, *size)
