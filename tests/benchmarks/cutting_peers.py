"""What our cutting is measured against: first fit decreasing, packingsolver alone, and a CP-SAT model, each written plainly.

Nothing of `service` is used here. Every answer is checked by the few lines at the end.
"""

from __future__ import annotations

import importlib
import importlib.util
import math
from typing import Any, NamedTuple

import packingsolver  # type: ignore[import-untyped]  # it brings no types
from packingsolver import onedimensional, rectangleguillotine

type Instance = dict[str, Any]  # one of the benchmark files, as it stands there
type Bars = list[tuple[int, list[int]]]  # index of the stock entry, lengths on the bar

SECONDS = 1.0
CP_SECONDS = 4.0


class Found(NamedTuple):
    """A value, and the bound that the peer itself states (0: none)."""

    value: float
    bound: float = 0.0


def pieces_of(instance: Instance) -> list[int]:
    """Lengths of all pieces, longest first."""
    return sorted((item["length"] for item in instance["items"] for _ in range(item["qty"])), reverse=True)


def first_fit_bars(instance: Instance) -> Found | None:
    """First fit decreasing with each stock length alone, offcuts first; bars then changed for the cheapest that do."""
    plans = [_filled(instance, favourite) for favourite in range(len(instance["bars"]))]
    values = [price_of(instance, plan) for plan in plans if plan is not None and holds(instance, plan)]
    return Found(min(values)) if values else None


def _filled(instance: Instance, favourite: int) -> Bars | None:
    kerf, trim, stock = instance["kerf"], instance["trim"], instance["bars"]
    free = [at for at, bar in enumerate(stock) if bar.get("offcut") for _ in range(bar["copies"] or 0)]
    room = [(at, stock[at]["length"] - trim + kerf) for at in sorted(free, key=lambda at: stock[at]["length"])]
    filled: list[list[int]] = [[] for _ in room]
    for piece in pieces_of(instance):
        at = next((k for k, (_, left) in enumerate(room) if left >= piece + kerf), None)
        if at is None:
            room.append((favourite, stock[favourite]["length"] - trim + kerf))
            filled.append([])
            at = len(room) - 1
        number, left = room[at]
        if left < piece + kerf:
            return None
        room[at] = (number, left - piece - kerf)
        filled[at].append(piece)
    plan = [(number, cuts) for (number, _), cuts in zip(room, filled, strict=True) if cuts]
    return [(_cheapest(instance, number, cuts), cuts) for number, cuts in plan]


def _cheapest(instance: Instance, number: int, cuts: list[int]) -> int:
    """The cheapest unlimited stock that holds the cuts; an offcut on hand stays as it is."""
    stock = instance["bars"]
    if stock[number].get("offcut"):
        return number
    needed = sum(cuts) + instance["kerf"] * (len(cuts) - 1) + instance["trim"]
    fits = [at for at, bar in enumerate(stock) if bar["copies"] is None and bar["length"] >= needed]
    return min(fits, key=lambda at: stock[at]["price"], default=number)


def packing_bars(instance: Instance) -> Found | None:
    """Ask packingsolver alone, in the mode that did best in `bench/cutting/findings.md`: Anytime, one second."""
    builder = onedimensional.InstanceBuilder()
    builder.set_objective(packingsolver.Objective.VariableSizedBinPacking)
    kerf, most = instance["kerf"], len(pieces_of(instance))
    for bar in instance["bars"]:
        cost = float(bar["price"] * 1000 or 1)
        builder.add_bin_type(bar["length"] - instance["trim"] + kerf, cost=cost, copies=min(most, bar["copies"] or most))
    for item in instance["items"]:
        builder.add_item_type(item["length"] + kerf, copies=item["qty"])
    output = onedimensional.optimize(builder.build(), _anytime(onedimensional.OptimizeParameters()))
    solution = output.solution
    if not solution.full():
        return None
    lengths = [item["length"] for item in instance["items"]]
    plan = [
        (solution.bin(k).bin_type_id, [lengths[i.item_type_id] for i in solution.bin(k).items])
        for k in range(solution.number_of_different_bins())
        for _ in range(solution.bin(k).copies)
    ]
    bound = math.ceil(output.variable_sized_bin_packing_bound / 1000 - 0.5)
    return Found(price_of(instance, plan), bound) if holds(instance, plan) else None


def _anytime(parameters: Any) -> Any:  # noqa: ANN401 - packingsolver brings no types
    parameters.verbosity_level = 0
    parameters.messages_to_stdout = False
    parameters.time_limit = SECONDS
    parameters.optimization_mode = packingsolver.OptimizationMode.Anytime
    return parameters


def packing_sheets(instance: Instance) -> Found | None:
    """Ask packingsolver alone on sheets: Anytime, one second, any number of stages unless the instance limits them."""
    builder = rectangleguillotine.InstanceBuilder()
    alone = len(instance["sheets"]) == 1
    builder.set_objective(packingsolver.Objective.BinPacking if alone else packingsolver.Objective.VariableSizedBinPacking)
    builder.set_cut_type(rectangleguillotine.CutType.NonExact)
    if instance["stages"]:
        builder.set_number_of_stages(instance["stages"])
        builder.set_first_stage_orientation(rectangleguillotine.CutOrientation.Horizontal)
    else:
        builder.set_number_of_stages_unlimited()
    kerf, trim = instance["kerf"], instance["trim"]
    most = sum(item["qty"] for item in instance["items"])
    for sheet in instance["sheets"]:
        width, height = sheet["w"] - 2 * trim + kerf, sheet["h"] - 2 * trim + kerf
        builder.add_bin_type(width, height, cost=float(sheet["price"]), copies=max(2, min(most, sheet["copies"] or most)))
    for item in instance["items"]:
        builder.add_item_type(item["w"] + kerf, item["h"] + kerf, copies=item["qty"], oriented=not item["rotate"])
    output = rectangleguillotine.optimize(builder.build(), _anytime(rectangleguillotine.OptimizeParameters()))
    if not output.solution.full():
        return None
    bound = output.bin_packing_bound if alone else output.variable_sized_bin_packing_bound
    return Found(output.solution.cost() if not alone else output.solution.number_of_bins(), bound)


def first_fit_sheets(instance: Instance) -> Found | None:
    """First fit decreasing height: pieces by falling height on levels from edge to edge, on the first sheet alone."""
    kerf, sheet = instance["kerf"], instance["sheets"][0]
    width, height = (sheet[side] - 2 * instance["trim"] + kerf for side in ("w", "h"))
    levels: list[list[int]] = []  # sheet, height, width left
    tops: list[int] = []  # height left on each sheet
    for wide, high in sorted(
        (_lying(item, width, kerf) for item in instance["items"] for _ in range(item["qty"])), key=lambda p: -p[1]
    ):
        level = next((level for level in levels if level[2] >= wide and level[1] >= high), None)
        if level is None:
            at = next((at for at, left in enumerate(tops) if left >= high), None)
            if at is None:
                at, tops = len(tops), [*tops, height]
            if tops[at] < high or width < wide:
                return None
            tops[at] -= high
            level = [at, high, width]
            levels.append(level)
        level[2] -= wide
    return Found(len(tops) * sheet["price"])


def _lying(item: Instance, width: int, kerf: int) -> tuple[int, int]:
    """A piece that may be turned lies with its longer side along the level, if that fits."""
    wide, high = item["w"] + kerf, item["h"] + kerf
    if item["rotate"] and high > wide and high <= width:
        return high, wide
    return wide, high


def has_cp_sat() -> bool:
    """Whether OR-tools is installed: `uv run --with ortools ...`."""
    return importlib.util.find_spec("ortools") is not None


def cp_sat_bars(instance: Instance) -> Found | None:
    """A CP-SAT model bar by bar, one worker: how many pieces of each length lie on each bar that may be bought."""
    model_module = importlib.import_module("ortools.sat.python.cp_model")
    start = first_fit_bars(instance)
    if start is None:
        return None
    model = model_module.CpModel()
    kerf, total, cost = instance["kerf"], [], []
    cells: list[list[Any]] = [[] for _ in instance["items"]]
    for bar in instance["bars"]:
        limit = len(pieces_of(instance)) if not bar["price"] else int(start.value // bar["price"])
        before = None
        for _ in range(min(limit, bar["copies"] or limit)):
            used = model.new_bool_var("")
            counts = [model.new_int_var(0, item["qty"], "") for item in instance["items"]]
            sizes = [item["length"] + kerf for item in instance["items"]]
            model.add(sum(c * s for c, s in zip(counts, sizes, strict=True)) <= (bar["length"] - instance["trim"] + kerf) * used)
            if before is not None:
                model.add(used <= before)
            before = used
            total.append(used)
            cost.append(bar["price"])
            for cell, count in zip(cells, counts, strict=True):
                cell.append(count)
    for cell, item in zip(cells, instance["items"], strict=True):
        model.add(sum(cell) == item["qty"])
    model.minimize(sum(c * used for c, used in zip(cost, total, strict=True)))
    solver = model_module.CpSolver()
    solver.parameters.max_time_in_seconds = CP_SECONDS
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    if status not in {model_module.OPTIMAL, model_module.FEASIBLE}:
        return None
    return Found(solver.objective_value, math.ceil(solver.best_objective_bound - 1e-6))


def price_of(instance: Instance, plan: Bars) -> int:
    """Sum of prices."""
    return sum(instance["bars"][number]["price"] for number, _ in plan)


def holds(instance: Instance, plan: Bars) -> bool:
    """Tell whether a plan cuts every piece once, on bars that hold them, from no more copies than there are."""
    cut = sorted((length for _, cuts in plan for length in cuts), reverse=True)
    stock = instance["bars"]
    fits = all(
        sum(cuts) + instance["kerf"] * (len(cuts) - 1) <= stock[number]["length"] - instance["trim"] for number, cuts in plan
    )
    enough = all(bar["copies"] is None or sum(n == at for n, _ in plan) <= bar["copies"] for at, bar in enumerate(stock))
    return cut == pieces_of(instance) and fits and enough
