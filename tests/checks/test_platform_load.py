"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A, B and C."""

from __future__ import annotations

import pytest

from service.checks.platform_load import platform_of
from tests.checks.after_checks import after_checks
from tests.checks.grounds import ground_of
from tests.examples_of import changed, example_c

FIRE = {
    "kind": "custom", "name": "Fire", "open_ends_count": 0, "body_width_mm": 760, "body_height_mm": 535, "body_depth_mm": 210,
    "mass_kg": 21, "heat_output_w": 1500, "connection": "plug", "outlet_position": "front_top",
}  # fmt: skip


@pytest.mark.parametrize(("example", "share", "foot_n"), [("A", 0.6813, 137.0), ("B", None, 109.4), ("C", 0.7267, 74.8)])
def test_front_feet(example: str, share: float | None, foot_n: float) -> None:
    platform = platform_of(after_checks(example))

    assert platform is not None
    assert share is None or pytest.approx(share, abs=0.00006) == platform.front_ratio
    assert pytest.approx(foot_n, abs=0.06) == platform.foot_n


def test_a_stated_centre_of_gravity_counts() -> None:
    """C with a fire whose centre lies 60 mm behind its front: c = 256.5 - (300 - 60), s = 225."""
    platform = platform_of(
        ground_of(changed(example_c(), {"/survey/brief/appliance": {**FIRE, "mass_centre_from_front_mm": 60}}))
    )

    assert platform is not None
    assert pytest.approx((225 - 16.5) / 225) == platform.front_ratio


def test_half_of_what_hangs_may_stand_on_a_closed_end() -> None:
    """B: the left end is closed, the right one open; 1.35 x 1378.9 / 2 N more at the left."""
    platform = platform_of(after_checks("B"))
    assert platform is not None
    outer, inner, jack = platform.posts

    assert pytest.approx(1.35 * 1378.9 / 2, rel=1e-3) == outer.load_n - inner.load_n
    assert jack.above


def test_nothing_spans_on_the_floor() -> None:
    assert platform_of(after_checks("C0")) is None
