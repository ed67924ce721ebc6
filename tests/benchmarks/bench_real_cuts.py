"""Cutting of random real jobs: requests of the property tests, laid out, at demo prices. Prints shares proven, gaps and times.

`INGLEWRIGHT_BENCH_COUNT` says how many jobs (100 by default).
"""

from __future__ import annotations

import os
import statistics
import time
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from service.brief import resolve
from service.catalogue import demo_catalogue
from service.cutting import QUICK, STANDARD, Yard, boards_of, cut_bars, cut_sheets
from service.cutting.of_frame import bar_job, sheet_job
from service.errors import RequestFaultsError, UnbuildableError
from service.frame import lay_out
from service.rules import load_rules
from tests.examples_of import request_of
from tests.strategies import requests

if TYPE_CHECKING:
    from service.brief import Job
    from service.cutting import Effort, Proof
    from service.frame import Frame

COUNT = int(os.environ.get("INGLEWRIGHT_BENCH_COUNT", "100"))
DAY = "2026-12-01"


def real_jobs() -> list[tuple[Frame, Job]]:
    """Designed frames of random requests, the same ones every time."""
    catalogue, rules = demo_catalogue(), load_rules()
    found: list[tuple[Frame, Job]] = []

    @settings(
        max_examples=COUNT * 3,
        derandomize=True,
        deadline=None,
        database=None,
        suppress_health_check=list(HealthCheck),
        phases=[Phase.generate],
    )
    @given(requests())
    def gather(body: dict[str, Any]) -> None:
        if len(found) < COUNT:
            try:
                job, _ = resolve(request_of(body), catalogue, rules, DAY)
                found.append((lay_out(job, rules), job))
            except (RequestFaultsError, UnbuildableError):
                return

    gather()
    return found


def told(name: str, rows: list[tuple[Proof, float]]) -> str:
    """One line of the table."""
    times = sorted(seconds * 1000 for _, seconds in rows)
    gaps = [proof.gap_ratio for proof, _ in rows]
    least = sum(proof.first_proven for proof, _ in rows) / len(rows)
    counted = sum(proof.bought_proven for proof, _ in rows) / len(rows)
    return (
        f"{name:17} {len(rows):5}  proven {least:7.2%}  fewest {counted:7.2%}  "
        f"gap mean {statistics.mean(gaps):.4%} max {max(gaps):.3%}  ms median {statistics.median(times):6.1f} "
        f"p95 {times[int(len(times) * 0.95)]:7.1f} max {times[-1]:7.1f}"
    )


@pytest.mark.parametrize(("name", "effort"), [("quick", QUICK), ("standard", STANDARD)])
def test_real_cuts(name: str, effort: Effort) -> None:
    yard = Yard(catalogue=demo_catalogue(), rules=load_rules())
    bars: list[tuple[Proof, float]] = []
    sheets: list[tuple[Proof, float]] = []
    for frame, job in real_jobs():
        began = time.perf_counter()
        bars.append((cut_bars(bar_job(frame, job, yard), effort).proof, time.perf_counter() - began))
        for board, panels in boards_of(frame, job):
            began = time.perf_counter()
            plan = cut_sheets(sheet_job(board, panels, job, yard=yard, allowance_mm=0), effort)
            sheets.append((plan.proof, time.perf_counter() - began))
    print()
    print(told(f"bars, {name}", bars))
    print(told(f"sheets, {name}", sheets))

    assert all(proof.gap_ratio <= 1.0 for proof, _ in (*bars, *sheets))
