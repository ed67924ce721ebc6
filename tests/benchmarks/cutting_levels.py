"""A CP-SAT model for sheets: pieces stand on levels that run over the full width, levels lie on sheets (cut in two stages).

Its plans can be cut edge to edge; its bound holds for two stages only, so none is given. Nothing of `service` is used here.
"""

from __future__ import annotations

import importlib
from itertools import pairwise, product
from typing import TYPE_CHECKING, Any, NamedTuple

from tests.benchmarks.cutting_peers import CP_SECONDS, Found, first_fit_sheets

if TYPE_CHECKING:
    from tests.benchmarks.cutting_peers import Instance

MOST_PIECES = 60  # beyond, the model is too large to be asked


class _Room(NamedTuple):
    """A sheet with the kerf added, as many as first fit takes, and the pieces, each as it may lie."""

    width: int
    height: int
    sheets: int
    pieces: list[list[tuple[int, int]]]


def cp_sat_sheets(instance: Instance) -> Found | None:
    """Fewest sheets on levels, one worker; None where it is not asked or finds nothing in its time."""
    start = first_fit_sheets(instance)
    if start is None or len(instance["sheets"]) > 1 or sum(item["qty"] for item in instance["items"]) > MOST_PIECES:
        return None
    cp_model = importlib.import_module("ortools.sat.python.cp_model")
    sheet, kerf = instance["sheets"][0], instance["kerf"]
    room = _Room(
        width=sheet["w"] - 2 * instance["trim"] + kerf,
        height=sheet["h"] - 2 * instance["trim"] + kerf,
        sheets=round(start.value / sheet["price"]),
        pieces=[_ways(item, kerf) for item in instance["items"] for _ in range(item["qty"])],
    )
    model = cp_model.CpModel()
    used = _state(model, room)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = CP_SECONDS
    solver.parameters.num_workers = 1
    if solver.solve(model) not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        return None
    return Found(sum(solver.value(one) for one in used) * sheet["price"])


def _ways(item: Instance, kerf: int) -> list[tuple[int, int]]:
    wide, high = item["w"] + kerf, item["h"] + kerf
    return [(wide, high), (high, wide)] if item["rotate"] and wide != high else [(wide, high)]


def _state(model: Any, room: _Room) -> list[Any]:  # noqa: ANN401 - OR-tools brings its types only where it is installed
    """Put every level on one sheet that it fits; give which sheets are used."""
    heights = _levels(model, room)
    used = [model.new_bool_var("") for _ in range(room.sheets)]
    on = [[model.new_bool_var("") for _ in used] for _ in heights]
    for row in on:
        model.add_exactly_one(row)
    for number, sheet in enumerate(used):
        taken = [model.new_int_var(0, room.height, "") for _ in heights]
        for part, height, row in zip(taken, heights, on, strict=True):
            model.add(part >= height - room.height * (1 - row[number]))
        model.add(sum(taken) <= room.height * sheet)
    for sheet, after in pairwise(used):
        model.add(after <= sheet)
    model.minimize(sum(used))
    return used


def _levels(model: Any, room: _Room) -> list[Any]:  # noqa: ANN401 - as above
    """Put every piece on one level, one way round, so that no level is wider than a sheet; give the levels' heights."""
    heights = [model.new_int_var(0, room.height, "") for _ in room.pieces]
    widths: list[list[Any]] = [[] for _ in heights]
    for ways in room.pieces:
        chosen = []
        for (wide, high), (level, height) in product(ways, enumerate(heights)):
            here = model.new_bool_var("")
            chosen.append(here)
            widths[level].append(wide * here)
            model.add(height >= high * here)
        model.add_exactly_one(chosen)
    for row in widths:
        model.add(sum(row) <= room.width)
    return heights
