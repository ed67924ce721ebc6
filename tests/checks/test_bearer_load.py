"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A and B."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.bearer_load import bearer_load
from service.frame import Additions, Role
from tests.checks.after_checks import after_checks
from tests.checks.grounds import ground_of
from tests.examples_of import changed, example_a

if TYPE_CHECKING:
    from service.checks.ground import Ground


@pytest.mark.parametrize(
    ("example", "screen_n", "lever_mm", "pull_n", "uniform_n"), [("A", 106.9, 85, 61.3, 57.8), ("B", 214.8, 89, 64.5, 100.5)]
)
def test_loads(example: str, screen_n: float, lever_mm: float, pull_n: float, uniform_n: float) -> None:
    load = bearer_load(after_checks(example))

    assert load is not None
    assert pytest.approx(screen_n, abs=0.06) == load.screen_n
    assert lever_mm == load.lever_mm
    assert pytest.approx(pull_n, abs=0.06) == load.pull_n(1.35 * load.screen_n)
    assert pytest.approx(uniform_n, abs=0.1) == load.uniform_n


def test_no_screen_no_load() -> None:
    assert bearer_load(after_checks("C")) is None


def test_a_third_bearer_shares() -> None:
    """By hand: half of the weight, and 1 / (1 + 1/4) of the pull; a third of the backboard."""
    two, three = bearer_load(after_checks("A")), bearer_load(_third())

    assert two is not None
    assert three is not None
    assert (1.0, 1.0) == (two.share_ratio, two.pull_ratio)
    assert 0.5 == three.share_ratio
    assert pytest.approx(0.8) == three.pull_ratio
    assert two.rows_mm == three.rows_mm


def _third() -> Ground:
    ground = after_checks("A")
    lowest = next(one for one in ground.frame.members if one.role is Role.SCREEN_BEARER)
    box = msgspec.structs.replace(
        lowest.box, z0_tenth_mm=lowest.box.z0_tenth_mm + 1000, z1_tenth_mm=lowest.box.z1_tenth_mm + 1000
    )
    third = msgspec.structs.replace(lowest, mark="U-B3", box=box)
    return msgspec.structs.replace(ground, frame=msgspec.structs.replace(ground.frame, members=(*ground.frame.members, third)))


def test_a_screen_known_by_its_size_is_assumed_by_area() -> None:
    """structure.md, 4: 30 kg/m2 of screen area where nobody has weighed it."""
    screen = {"kind": "size_class", "diagonal_in": 43}
    request = changed(example_a(), {"/survey/brief/screen": screen, "/survey/brief/screen_bracket": None})
    ground = ground_of(request)
    load = bearer_load(ground)

    assert load is not None
    assert ground.job.screen is not None
    area_m2 = ground.job.screen.body_width_mm * ground.job.screen.body_height_mm / 1e6
    assert load.screen_n >= 30 * area_m2 * 9.80665 - 1e-9
    assert load.assumed


def test_a_deeper_bearer_is_read_from_the_frame() -> None:
    load = bearer_load(ground_of(example_a(), Additions(bearer_width_tenth_mm=1200)))

    assert load is not None
    assert 120 == load.beam.depth_mm
