from __future__ import annotations

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.checks.pulled_screws import diameter_of, pulled_screw, root_of, yield_moment_of
from service.rules import load_rules

RULES = load_rules()
FLANGE = demo_catalogue().materials["FX-3126Y"]
BARE = msgspec.structs.replace(
    FLANGE, withdrawal_mpa=None, head_pull_mpa=None, head_diameter_mm=None, root_diameter_mm=None, tensile_kn=None,
    yield_moment_n_mm=None, diameter_mm=5.0,
)  # fmt: skip


def test_a_declared_screw() -> None:
    """worked-examples.md, A, "ceiling alone": l_ef 53.5, withdrawal 3204, head 1778.7 in C16."""
    found = pulled_screw(FLANGE, 38 + 10 + 12.5, RULES, head_density_kg_m3=310, point_density_kg_m3=310)

    assert pytest.approx([53.5, 3204, 1778.7, 1778.7], rel=2e-4) == [
        found.thread_mm,
        found.thread_n,
        found.head_n,
        found.weakest_n,
    ]
    assert "" == found.assumed


def test_fall_backs_and_their_mark() -> None:
    """fixings.md, section 0, by hand: 8.5 x 5 x (120 - 60 - 5) at 350; 7.5 x 9^2; 0.9 x 500 x pi 3^2 / 4; 0.3 x 600 x 3.3^2.6."""
    found = pulled_screw(BARE, 60, RULES, head_density_kg_m3=350, point_density_kg_m3=350)

    assert pytest.approx([2337.5, 607.5, 3180.9], rel=1e-4) == [found.thread_n, found.head_n, found.shank_n]
    assert "assumed withdrawal, head pull of FX-3126Y: its maker declares none" == found.assumed
    assert pytest.approx([5, 3, 4012.6], rel=1e-3) == [diameter_of(BARE), root_of(BARE, RULES), yield_moment_of(BARE, RULES)]


def test_boards_hold_no_thread() -> None:
    assert 0 == pulled_screw(FLANGE, 120, RULES, head_density_kg_m3=310, point_density_kg_m3=310).thread_n
