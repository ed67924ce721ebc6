"""Time of the layout alone: for the worked examples, for each variant, and over the width of a breast: `uv run poe bench`.

What is asked for: under 5 ms median for an ordinary survey, no worse than linear with the width. Nothing here fails on a slow
machine; the figures are read.
"""

from __future__ import annotations

import statistics
import time
from typing import TYPE_CHECKING, Any

import pytest

from service.frame import lay_out
from service.rules import load_rules
from tests.examples_of import changed, job_of
from tests.sold_examples import sold
from tests.variant_requests import in_a_corner, niche, uneven, with_access, with_beam

if TYPE_CHECKING:
    from service.brief import Job

ROUNDS_COUNT = 21
WIDTHS_MM = (1000, 1500, 2000, 2500, 2900)
CASES: dict[str, dict[str, Any]] = {
    **{name: sold(name) for name in ("A", "B", "C", "C0")},
    "in a corner": in_a_corner(),
    "uneven": uneven(),
    "niche": niche(),
    "beam": with_beam(),
    "access panel": with_access(),
}


def median_ms(job: Job) -> float:
    """Median of a few layouts of one job."""
    rules, times = load_rules(), []
    for _round in range(ROUNDS_COUNT):
        start = time.perf_counter()
        lay_out(job, rules)
        times.append((time.perf_counter() - start) * 1000)
    return statistics.median(times)


@pytest.mark.parametrize("name", CASES)
def test_time_of_a_layout(name: str) -> None:
    took = median_ms(job_of(CASES[name]))
    print(f"\n  frame, {name:12} {took:6.2f} ms")

    assert took > 0


def test_time_over_the_width() -> None:
    """Example C widened; the time for each metre must not grow."""
    plain = changed(sold("C"), {"/survey/brief/appliance_shift_mm": 0, "/survey/brief/top": {"kind": "ceiling"}})
    for width_mm in WIDTHS_MM:
        took = median_ms(job_of(changed(plain, {"/survey/brief/breast_width_mm": width_mm})))
        print(f"\n  frame, {width_mm} wide  {took:6.2f} ms, {took / width_mm * 1000:5.2f} ms a metre", end="")

    assert WIDTHS_MM
