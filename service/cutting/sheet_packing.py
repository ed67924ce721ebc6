"""packingsolver for sheets, with its pitfalls guarded (`DEVELOPERS.md`, cutting): its layouts are taken, its claims are not.

Only the mode that runs one search after the other is used, and only searches that end by counted work; the time limit is a
guard far beyond them. Trims and kerf are taken out before, copies are given, and costs are above nothing.
"""

from __future__ import annotations

import math
from enum import StrEnum
from typing import TYPE_CHECKING, Final

import packingsolver  # type: ignore[import-untyped]  # it brings no types
from packingsolver import rectangleguillotine as guillotine

from service.cutting.pieces import FirstCut
from service.cutting.sheet_greedy import Layout, Placed

if TYPE_CHECKING:
    from service.cutting.meter import Meter
    from service.cutting.sheet_problem import SheetProblem

_GUARD_S: Final = 30.0
_LARGEST_PIECES: Final = 1_000  # beyond, packingsolver is not asked: it was seen to ignore its time limit at 10,000
_COST_SCALE: Final = 1_000  # a cost must be above nothing: free sheets cost a thousandth of a minor unit


class Way(StrEnum):
    """A search of packingsolver."""

    TREE = "tree_search"
    KNAPSACKS = "sequential_single_knapsack"
    CORRECTION = "sequential_value_correction"
    LEFTOVERS = "leftovers"


def ask_packing(problem: SheetProblem, way: Way, breadth: int, *, first_cut: FirstCut, meter: Meter) -> tuple[Layout, ...] | None:
    """Ask packingsolver for a plan; None if it gives none.

    Args:
        problem: the bare problem.
        way: which search.
        breadth: how wide the search is: the queue of a tree search, the rounds of a value correction; else of no effect.
        first_cut: which way first cuts must run.
        meter: counts the work and holds the caller's clock.
    """
    price = _price(problem, way, breadth)
    if price > meter.left_micros() or sum(kind.demand for kind in problem.kinds) > _LARGEST_PIECES:
        return None
    meter.spend(price)
    output = guillotine.optimize(_instance(problem, way, first_cut), _parameters(way, breadth))
    solution = output.solution
    if output.is_proven_infeasible or not solution.full():
        return None
    return _layouts(problem, solution)


def _price(problem: SheetProblem, way: Way, breadth: int) -> float:
    """Work of a search in thousandths of a unit, measured roughly on jobs of 10 to 150 pieces.

    With several kinds of sheet the tree search is not alone: the library runs its knapsacks whatever is asked for.
    """
    pieces, kinds = sum(kind.demand for kind in problem.kinds), len(problem.kinds)
    knapsacks = min(1_500.0 * kinds, 38_000.0) * kinds * max(1.0, len(problem.classes) / 30)
    tree = 2.0 * breadth * pieces * math.sqrt(pieces) + 130.0 * pieces * pieces
    prices = {
        Way.TREE: tree if is_alone(problem) else tree + knapsacks,
        Way.KNAPSACKS: knapsacks,
        Way.CORRECTION: knapsacks * breadth,
        Way.LEFTOVERS: 500.0 * pieces * pieces,
    }
    return 1_000.0 + prices[way]


def is_alone(problem: SheetProblem) -> bool:
    """Whether there is one kind of sheet at one price."""
    return len(problem.classes) == 1 and len(problem.classes[0].bars.steps) == 1


def _instance(problem: SheetProblem, way: Way, first_cut: FirstCut) -> guillotine.Instance:
    builder = guillotine.InstanceBuilder()
    builder.set_objective(_objective(problem, way))
    builder.set_cut_type(guillotine.CutType.NonExact)
    if first_cut is FirstCut.ANY:
        builder.set_number_of_stages_unlimited()
    else:
        builder.set_number_of_stages(3)
        rip = first_cut is FirstCut.RIP
        builder.set_first_stage_orientation(guillotine.CutOrientation.Horizontal if rip else guillotine.CutOrientation.Vertical)
    for bin_type, (number, step) in enumerate(
        (number, step) for number, of in enumerate(problem.classes) for step in of.bars.steps
    ):
        of = problem.classes[number]
        cost = float(step.cost * _COST_SCALE) if step.cost else 1.0
        builder.add_bin_type(of.width, of.height, cost=cost, copies=step.copies)
        for x, y, width, height in of.defects:
            builder.add_defect(bin_type, x, y, min(width, of.width - x), min(height, of.height - y))
    for kind in problem.kinds:
        builder.add_item_type(kind.width, kind.height, copies=kind.demand, oriented=not kind.rotatable)
    return builder.build()


def _objective(problem: SheetProblem, way: Way) -> packingsolver.Objective:
    if way is Way.LEFTOVERS:
        return packingsolver.Objective.BinPackingWithLeftovers
    return packingsolver.Objective.BinPacking if is_alone(problem) else packingsolver.Objective.VariableSizedBinPacking


def _parameters(way: Way, breadth: int) -> guillotine.OptimizeParameters:
    parameters = guillotine.OptimizeParameters()
    parameters.verbosity_level = 0
    parameters.messages_to_stdout = False
    parameters.time_limit = _GUARD_S
    parameters.optimization_mode = packingsolver.OptimizationMode.NotAnytimeSequential
    parameters.use_tree_search = way in {Way.TREE, Way.LEFTOVERS}
    parameters.use_sequential_single_knapsack = way is Way.KNAPSACKS
    parameters.use_sequential_value_correction = way is Way.CORRECTION
    if way is Way.CORRECTION:
        parameters.not_anytime_sequential_value_correction_number_of_iterations = breadth
    else:
        parameters.not_anytime_tree_search_queue_size = breadth
    return parameters


def _layouts(problem: SheetProblem, solution: guillotine.Solution) -> tuple[Layout, ...]:
    numbers = [number for number, of in enumerate(problem.classes) for _ in of.bars.steps]
    plan: list[Layout] = []
    for place in range(solution.number_of_different_bins()):
        sheet = solution.bin(place)
        pieces = [
            Placed(node.item_type_id, node.l, node.b, node.r - node.l, node.t - node.b)
            for node in sheet.nodes
            if node.item_type_id >= 0 and node.d > 0
        ]
        plan += [Layout(numbers[sheet.bin_type_id], tuple(sorted(pieces)))] * sheet.copies
    return tuple(plan)
