"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A and C."""

from __future__ import annotations

import pytest

from service.checks.end_load import end_loads
from service.frame import Role
from service.rules import LoadDuration
from tests.checks.after_checks import after_checks


def test_members_whose_ends_carry_something() -> None:
    roles = [one.member.role for one in end_loads(after_checks("A"))]

    assert [Role.TRIMMER, Role.TRIMMER_PLY, Role.SILL_RAIL, Role.TOP_RAIL_FRONT] == roles[:4]
    assert {Role.REAR_BOTTOM_RAIL, Role.REAR_MID_RAIL, Role.TOP_RAIL_REAR, Role.SCREEN_BEARER} == set(roles[4:])
    assert [Role.TRIMMER, Role.TRIMMER_PLY, Role.TOP_RAIL_FRONT, Role.TOP_RAIL_REAR] == [
        one.member.role for one in end_loads(after_checks("C"))
    ]


def test_front_top_rail_hangs_on_its_row_of_ceiling_screws() -> None:
    """A: front row 703.2 N under 1.0 G, so 1.35 x (703.2 / 2 + half of the rail's own 18.7 N) for years."""
    rail = next(one for one in end_loads(after_checks("A")) if one.member.role is Role.TOP_RAIL_FRONT)
    lasting = next(case for case in rail.cases if case.duration is LoadDuration.PERMANENT)

    assert pytest.approx(1.35 * (703.2 / 2 + 9.33), rel=1e-3) == lasting.down_n


def test_bearer_hands_over_half_of_its_screen() -> None:
    """A: W 106.9 N, uniform 57.8 N, T 61.3 N."""
    bearer = next(one for one in end_loads(after_checks("A")) if one.member.role is Role.SCREEN_BEARER)

    assert pytest.approx((1.35 * (106.9 + 57.8) / 2, 61.3 / 2), rel=2e-3) == bearer.cases[0][:2]
    assert 1 == len(bearer.cases)
