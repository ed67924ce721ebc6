from __future__ import annotations

import math

import msgspec
import pytest

from service.checks.ceiling_rows import ceiling_rows
from service.checks.paths import (
    ceiling_holds,
    ceiling_ratio,
    ceiling_situations,
    face_force_n,
    hangs,
    joist_n,
    paths_of,
    wall_situations,
)
from service.checks.situations import lost
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import OFF, example, on_wall, with_wall_load
from tests.sold_examples import ADDITIONS, sold


def test_two_paths() -> None:
    """worked-examples.md, A: wall the main path, ceiling 0.189 for the lost one; B: the wall alone, within 0.50."""
    both, single = paths_of(example("A")), paths_of(example("B"))
    assert both.rows is not None

    assert ("wall", 1.0, True, 2) == (both.main, both.wall_limit_ratio, both.ceiling_stands, both.count)
    assert ("wall", 0.5, False, 1) == (single.main, single.wall_limit_ratio, single.ceiling_stands, single.count)
    assert pytest.approx(0.189, abs=5e-4) == ceiling_ratio(both.rows, example("A"), both.load, lost(OFF))
    assert pytest.approx(228.4, abs=0.1) == joist_n(both.rows, both.load)


def test_a_wall_of_little_use_makes_the_ceiling_the_main_path() -> None:
    """structure.md, 5.1: the wall then shows 1.0 G."""
    ground = with_wall_load(example("A"), 0.15, 0.25)
    paths = paths_of(ground)

    assert "ceiling" == paths.main
    assert [1.0] == [one.weight_ratio for one in wall_situations(paths, ground)]
    assert 3 == len(ceiling_situations(paths, ground))


def test_a_wall_that_gives_nothing_leaves_the_ceiling_alone() -> None:
    paths = paths_of(on_wall("boarded_behind_plasterboard"))

    assert ("ceiling", 0.5, 1, True) == (paths.main, paths.ceiling_limit_ratio, paths.count, paths.ceiling_binds)


def test_an_unknown_wall_stays_the_main_path() -> None:
    """structure.md, 5.1: not verified, not failed."""
    paths = paths_of(on_wall("unknown"))

    assert ("wall", 1.0, False) == (paths.main, paths.ceiling_limit_ratio, paths.wall_there)


def test_a_ceiling_that_fails_counts_for_nothing() -> None:
    """framing.md, 10.2, row 12: the wall alone then, within 0.50; two joists are too few for 914 N."""
    ground = ground_of(sold("A", survey__ceiling__joist_positions_mm=[1750, 2150]), ADDITIONS["A"], OFF)
    paths = paths_of(ground)
    assert paths.rows is not None

    assert not ceiling_holds(ground, paths.rows, paths.load)
    assert (0.5, False, False) == (paths.wall_limit_ratio, paths.ceiling_stands, paths.ceiling_binds)


def test_a_row_that_lifts_holds_nothing() -> None:
    """worked-checks.md, H5."""
    ground = example("A")
    rows = ceiling_rows(ground)
    assert rows is not None
    load = paths_of(ground).load
    behind = msgspec.structs.replace(rows, rear_mm=310.0)

    assert math.inf == ceiling_ratio(behind, ground, load, lost(OFF))
    assert ceiling_ratio(rows, ground, load, lost(OFF)) < 1


def test_what_hangs() -> None:
    assert [True, True, False, False] == [hangs(example(name)) for name in ("A", "B", "C", "C0")]
    assert pytest.approx(678.5) == face_force_n(example("A"))
