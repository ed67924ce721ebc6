"""Cutting beside its peers, on the instances of `bench/cutting`: one command that prints the table.

    uv run --with ortools python -m tests.benchmarks.cutting [FOLDER] [--effort UNITS] [--ours]

The folder is `../shared/bench/cutting` beside the repository unless it is given; without it nothing is done. Without
OR-tools there is no CP-SAT row. `--ours` leaves the peers out. Every plan of ours passes the independent checker again here; a
bound above a known value, a value below a known bound, or a proof of a value that is beaten ends the run with an error.
"""

from __future__ import annotations

import argparse
import json
import statistics
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from service.cutting import BarJob, BarPiece, BarStock, Effort, SheetJob, SheetPiece, SheetStock, cut_bars, cut_sheets
from service.cutting.verify_bars import mistakes_in_bars
from service.cutting.verify_sheets import mistakes_in_sheets
from tests.benchmarks import cutting_peers as peers
from tests.benchmarks.cutting_levels import cp_sat_sheets

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.cutting import Proof
    from tests.benchmarks.cutting_peers import Found, Instance

FOLDER = Path(__file__).resolve().parents[3] / "shared" / "bench" / "cutting"
FILES = {"bars": "bars-1d.json", "sheets": "sheets-2d.json"}


class Run(NamedTuple):
    """One instance, one method."""

    instance: Instance
    found: Found | None
    seconds: float


def bar_job(instance: Instance) -> BarJob:
    """An instance of the 1-D file as a job; its unit is taken for a tenth of a millimetre."""
    return BarJob(
        pieces=tuple(
            BarPiece(label=f"p{at}", length_tenth_mm=item["length"], pieces_count=item["qty"])
            for at, item in enumerate(instance["items"])
        ),
        stock=tuple(
            BarStock(
                code=f"b{at}",
                length_tenth_mm=bar["length"],
                cost_minor=int(bar["price"]),
                copies_count=bar["copies"],
                offcut=bool(bar.get("offcut")),
            )
            for at, bar in enumerate(instance["bars"])
        ),
        kerf_tenth_mm=instance["kerf"],
        end_trim_tenth_mm=instance["trim"],
    )


def sheet_job(instance: Instance) -> SheetJob:
    """An instance of the 2-D file as a job; a limit on stages is not passed on (any number is allowed)."""
    return SheetJob(
        pieces=tuple(
            SheetPiece(
                label=f"p{at}",
                width_tenth_mm=item["w"],
                height_tenth_mm=item["h"],
                pieces_count=item["qty"],
                rotatable=bool(item["rotate"]),
            )
            for at, item in enumerate(instance["items"])
        ),
        stock=tuple(
            SheetStock(
                code=f"s{at}",
                width_tenth_mm=sheet["w"],
                height_tenth_mm=sheet["h"],
                cost_minor=int(sheet["price"]),
                copies_count=sheet["copies"],
            )
            for at, sheet in enumerate(instance["sheets"])
        ),
        kerf_tenth_mm=instance["kerf"],
        edge_trim_tenth_mm=instance["trim"],
    )


def ours(instance: Instance, effort: Effort) -> Found:
    """Our plan, checked again; its value and bound."""
    plan: object
    if "bars" in instance:
        job = bar_job(instance)
        bars = cut_bars(job, effort)
        wrong, proof, plan = mistakes_in_bars(job, bars), bars.proof, bars
    else:
        sheet = sheet_job(instance)
        sheets = cut_sheets(sheet, effort)
        wrong, proof, plan = mistakes_in_sheets(sheet, sheets), sheets.proof, sheets
    if wrong:
        message = f"{instance['id']}: {wrong}"
        raise SystemExit(message)
    _compare(instance, proof)
    del plan
    return peers.Found(proof.cost_minor, proof.cost_bound_minor)


def _compare(instance: Instance, proof: Proof) -> None:
    """Stop at a wrong bound, a wrong proof, or a value that cannot be."""
    known = instance["reference"]
    free = instance.get("stages") is None
    if proof.cost_bound_minor > known["best_known"] or (free and proof.cost_minor < known["lower_bound"]):
        message = f"{instance['id']}: {proof.cost_bound_minor}..{proof.cost_minor} against {known}"
        raise SystemExit(message)
    if proof.first_proven and proof.cost_minor > known["best_known"]:
        message = f"{instance['id']}: {proof.cost_minor} proven, {known['best_known']} known"
        raise SystemExit(message)


def timed(instances: list[Instance], solve: Callable[[Instance], Found | None]) -> list[Run]:
    """Run one method over the instances."""
    runs = []
    for instance in instances:
        began = time.perf_counter()
        found = solve(instance)
        runs.append(Run(instance, found, time.perf_counter() - began))
    return runs


def row(name: str, runs: list[Run]) -> str:
    """One line of the table. The gap is to the best bound known to anyone; "proven" is a bound equal to the value."""
    answered = [run for run in runs if run.found is not None]
    values = [(run.found.value, run.found.bound, run.instance["reference"]) for run in answered if run.found is not None]
    best = sum(value <= known["best_known"] for value, _, known in values)
    better = sum(value < known["best_known"] for value, _, known in values)
    proven = sum(bound >= value for value, bound, _ in values)
    gaps = [
        max(0.0, 1 - max(known["lower_bound"], bound if bound <= value else 0) / value) for value, bound, known in values if value
    ]
    times = [run.seconds for run in runs]
    return (
        f"| {name:34} | {len(answered):3} | {best:3} | {better:2} | {proven:3} | {statistics.mean(gaps):7.2%} "
        f"| {statistics.median(times):6.3f} / {max(times):6.2f} |"
    )


def table(title: str, methods: dict[str, list[Run]]) -> None:
    """Print all rows, for all instances and for the workshop's alone."""
    for name, chosen in ((title, lambda _: True), (f"{title}: workshop jobs", lambda i: i["set"].startswith("workshop"))):
        shown = {method: [run for run in runs if chosen(run.instance)] for method, runs in methods.items()}
        count = len(next(iter(shown.values())))
        print(f"\n| {name}, {count} instances | answer | = best known | better | proven | mean gap | median / max s |")
        print("|---|---|---|---|---|---|---|")
        for method, runs in shown.items():
            print(row(method, runs))


def short(methods: dict[str, list[Run]]) -> None:
    """Name the instances where ours is not the best known, or not proven."""
    for run in methods["ours"]:
        known = run.instance["reference"]
        if run.found is not None and (run.found.value != known["best_known"] or run.found.bound < run.found.value):
            ours_is = f"ours {run.found.bound:g}..{run.found.value:g}"
            print(f"  {run.instance['id']}: {ours_is}, known {known['lower_bound']}..{known['best_known']}")


def measure(title: str, instances: list[Instance], effort: Effort, *, alone: bool) -> None:
    """Measure one file."""
    methods = {"ours": timed(instances, lambda i: ours(i, effort))}
    if not alone:
        bars = "bars" in instances[0]
        methods["packingsolver alone, Anytime 1 s"] = timed(instances, peers.packing_bars if bars else peers.packing_sheets)
        methods["first fit decreasing"] = timed(instances, peers.first_fit_bars if bars else peers.first_fit_sheets)
        if peers.has_cp_sat():
            name, solve = ("bar by bar", peers.cp_sat_bars) if bars else ("on levels", cp_sat_sheets)
            methods[f"CP-SAT {name}, 1 worker, 4 s"] = timed(instances, solve)
    table(title, methods)
    short(methods)


def main() -> int:
    """Read the command line, measure both files."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", nargs="?", type=Path, default=FOLDER)
    parser.add_argument("--effort", type=int, default=2_000)
    parser.add_argument("--ours", action="store_true")
    asked = parser.parse_args()
    for title, name in FILES.items():
        path = asked.folder / name
        if not path.exists():
            print(f"{name} is not there: nothing to measure")
            continue
        instances = json.loads(path.read_text("utf-8"))["instances"]
        measure(title, instances, Effort(work_count=asked.effort), alone=asked.ours)
    return 0


if __name__ == "__main__":
    sys.exit(main())
