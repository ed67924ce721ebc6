"""Framing.md, 10.2, rows 1 and 2."""

from __future__ import annotations

from service.checks.steps_of_base import closer_stations, second_uprights, stronger_base, upright_under_feet, wide_packers
from service.frame import Added, Additions, Role
from tests.checks.weak_spots import said, taken, weak
from tests.examples_of import example_a, example_b, example_c0, frame_of


def test_each_step_until_it_is_used_up() -> None:
    """Stations at m/2, 200 at least: 600 gives 300, then no more (150); example B's board has m 600."""
    spot = weak(example_b())

    assert ["an upright under each foot of the fire"] == said(upright_under_feet, spot)
    assert ["stations of the base at 300"] == said(closer_stations, spot)
    assert ["C24 for rail, upright, cross noggin"] == said(stronger_base, spot)
    assert ["packers as wide as the rail"] == said(wide_packers, spot)
    assert ["a second upright beside each"] == said(second_uprights, spot)


def test_without_a_base_there_are_no_stations() -> None:
    assert [] == said(upright_under_feet, weak(example_c0())) + said(closer_stations, weak(example_c0()))


def test_what_is_added_is_laid_out() -> None:
    def uprights(added: Additions) -> int:
        return sum(member.role is Role.UPRIGHT for member in frame_of(example_a(), added).members)

    spot = weak(example_a())
    steps = [taken(step, spot).additions for step in (upright_under_feet, closer_stations, second_uprights)]

    assert 8 == uprights(Additions())  # 4 stations
    assert [12, 12, 16] == [uprights(added) for added in steps]  # 2 feet more; 6 stations at 300; two by two
    assert "structure.trial: a second upright beside each" == steps[2].reason(Added.SECOND_UPRIGHT)
