"""The door of the drawings: every view of every design, the same bytes each time, and every mark somewhere."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from xml.etree import ElementTree

import msgspec
import pytest
from hypothesis import HealthCheck, given, reject, settings

from service.drawings import View, draw
from service.drawings.register import VIEWS, fitting_scale
from service.errors import RequestFaultsError, UnbuildableError
from service.frame import lay_out
from service.rules import load_rules
from tests import strategies
from tests.drawings.cases import REQUESTS, case
from tests.drawings.lint import lint, words
from tests.examples_of import Request, job_of

PRINT_HASH = """
import hashlib
from service.drawings import View, draw
from tests.drawings.cases import case
print(hashlib.sha256("".join(draw(*case("b"), view) for view in View).encode()).hexdigest())
"""


def test_each_view_has_its_builder() -> None:
    assert set(View) == set(VIEWS)


@pytest.mark.parametrize("view", View)
@pytest.mark.parametrize("name", REQUESTS)
def test_every_design_is_drawn_in_every_view(name: str, view: View) -> None:
    frame, job = case(name)
    root = ElementTree.fromstring(draw(frame, job, view))  # noqa: S314 - our own text

    assert "{http://www.w3.org/2000/svg}svg" == root.tag


@pytest.mark.parametrize("name", REQUESTS)
def test_each_mark_stands_in_one_of_the_views(name: str) -> None:
    frame, job = case(name)
    written = {
        word
        for draw_view in VIEWS.values()
        for line in words(draw_view(frame, job, fitting_scale(frame)))
        for word in line.replace(";", "").split(" ")
    }

    assert set() == {member.mark for member in frame.members} - written
    assert set() == {panel.mark for panel in frame.panels} - written


@given(strategies.requests())
@settings(max_examples=60, suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow])
def test_random_designs_are_readable_and_wholly_marked(request: Request) -> None:
    try:
        job = job_of(request)
        frame = lay_out(job, load_rules())
    except (RequestFaultsError, UnbuildableError):
        reject()
    drawings = [draw_view(frame, job, fitting_scale(frame)) for draw_view in VIEWS.values()]
    written = {word for drawing in drawings for line in words(drawing) for word in line.replace(";", "").split(" ")}

    assert [] == [fault for drawing in drawings for fault in lint(drawing)]
    assert set() == {member.mark for member in frame.members} - written
    assert set() == {panel.mark for panel in frame.panels} - written


def test_the_same_design_gives_the_same_bytes_in_every_process() -> None:
    here = hashlib.sha256("".join(draw(*case("b"), view) for view in View).encode()).hexdigest()
    others = {
        subprocess.run(
            [sys.executable, "-c", PRINT_HASH], env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": "."},
            capture_output=True, check=True, text=True,
        ).stdout.strip()
        for seed in ("1", "2")
    }  # fmt: skip

    assert {here} == others


@pytest.mark.parametrize(("name", "expected"), [("a", 10), ("b", 10), ("c", 10), ("studs in the cheek, at 1:20", 20)])
def test_the_scale_fits_a_sheet(name: str, expected: int) -> None:
    """ISO 5455:1979, 5.1 has 1:10 and 1:20; A3 is 297 x 420."""
    assert expected == fitting_scale(case(name)[0])


def test_a_scale_that_is_asked_for_is_kept() -> None:
    assert "SCALE 1:20, dimensions in mm" in draw(*case("a"), View.SECTION, scale_ratio=20)


def test_what_fits_no_sheet_is_drawn_at_the_smallest_scale() -> None:
    frame, _ = case("a")
    sizes = msgspec.structs.replace(frame.sizes, frame_width_tenth_mm=80_000)

    assert 20 == fitting_scale(msgspec.structs.replace(frame, sizes=sizes))
