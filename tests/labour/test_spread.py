from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from service.labour.spread import spread_of
from tests.examples_of import job_of
from tests.sold_examples import made, sold

if TYPE_CHECKING:
    from service.labour import Task

STATED = {"survey__provenance": None}


def own_tasks() -> list[Task]:
    """Tasks of example A without the electrician's."""
    return [task for task in made("A").labour.tasks if task.trade != "electrician"]


def test_range_of_the_worked_hours() -> None:
    """`knowledge/labour.md`, section 5, computed for 33.79 h with 0.8 / 1.0 / 1.45: mean 35.20, sd 3.51, 30.7 to 39.7."""
    spread = spread_of(own_tasks(), job_of(sold("A", **STATED)))

    assert (35.20, 3.51, 30.7, 39.7) == spread


def test_a_measured_survey_narrows_it() -> None:
    """The same with 1.3: mean x (0.8 + 4 + 1.3) / 6 by hand."""
    spread = spread_of(own_tasks(), job_of(sold("A")))

    assert 33.79 * 6.1 / 6 == pytest.approx(spread.mean_hours, abs=0.005)
    assert spread.high_hours < 39.7


def test_an_unknown_wall_widens_the_work_at_the_wall() -> None:
    """L07, L08 and L13 at 1.8 instead of 1.45: the mean moves by 0.35 / 6 of their hours."""
    known = spread_of(own_tasks(), job_of(sold("A", **STATED)))
    unknown = spread_of(own_tasks(), job_of(sold("A", **STATED, survey__wall__construction="unknown")))

    assert (4.00 + 2.44 + 0.83) * 0.35 / 6 == pytest.approx(unknown.mean_hours - known.mean_hours, abs=0.011)


@pytest.mark.parametrize("part", ["/survey/wall", "/survey/room/heights"])
def test_one_stated_part_makes_the_survey_stated(part: str) -> None:
    measured = {"/survey": "measured"}
    mixed = spread_of(own_tasks(), job_of(sold("A", survey__provenance={**measured, part: "stated"})))

    assert spread_of(own_tasks(), job_of(sold("A", **STATED))) == mixed


def test_no_work_no_range() -> None:
    assert (0, 0, 0, 0) == spread_of([], job_of(sold("A")))
