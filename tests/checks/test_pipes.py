"""Pipes in the wall: `knowledge/survey.md`, section 7: no fixing within 50."""

from __future__ import annotations

import pytest

from service.checks import Verdict
from service.checks.pipes import PIPES, distance_mm, pipe_checks
from service.survey.services import Pipe, PipeKind
from tests.checks.grounds import ground_of
from tests.checks.results import the_check, values, why_skipped
from tests.checks.words_of import reviewed, words_of
from tests.sold_examples import sold

SLANTED = Pipe(kind=PipeKind.WATER, x0_mm=0, z0_mm=0, x1_mm=300, z1_mm=400)


@pytest.mark.parametrize(
    ("x", "z", "expected"),
    [(150, 200, 0), (0, 0, 0), (-30, -40, 50), (330, 440, 50), (150 + 40, 200 - 30, 50), (300, 0, 240)],
)
def test_distance_from_a_run(x: float, z: float, expected: float) -> None:
    """3-4-5 triangles: beside the run at right angles, beyond its ends straight to them; 300 x 400 / 500 from a corner."""
    assert pytest.approx(expected) == distance_mm(x, z, SLANTED)


def test_a_run_without_length_is_a_point() -> None:
    spot = Pipe(kind=PipeKind.UNKNOWN, x0_mm=100, z0_mm=100, x1_mm=100, z1_mm=100)

    assert pytest.approx(50) == distance_mm(130, 140, spot)


@pytest.mark.parametrize(("aside", "verdict"), [(50, Verdict.PASS), (49, Verdict.FAIL)])
def test_a_pipe_beside_the_fixings_of_a_ladder(aside: float, verdict: Verdict) -> None:
    """Example A stands from 1286.5 to 2613.5; the fixings of its left ladder are 19 mm in, at 1305.5."""
    x_mm = 1305.5 - aside
    pipe = {"kind": "heating", "x0_mm": x_mm, "z0_mm": 0, "x1_mm": x_mm, "z1_mm": 2500}
    found = the_check(pipe_checks, ground_of(sold("A", survey__services__pipes=[pipe])), PIPES)

    assert verdict is found.verdict
    assert pytest.approx((50, aside)) == values(found)
    assert ("fixings are nearer than 50 mm" in found.remedy) == (verdict is Verdict.FAIL)


def test_no_pipe() -> None:
    assert "no pipe was told" in why_skipped(pipe_checks, ground_of(sold("A")), PIPES)


def test_the_words_are_those_that_were_read() -> None:
    assert reviewed("pipes") == words_of("pipes"), "python -m tests.checks.words_of, then read the diff"
