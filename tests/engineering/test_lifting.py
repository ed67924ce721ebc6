"""Masses and lifts."""

from __future__ import annotations

import pytest

from service.engineering import lifting
from tests.engineering.timber import C16, HUNDREDTH_PERCENT, RULES, TENTH_PERCENT


def test_g7_board() -> None:
    """G7, hand: MDF 2.44 x 1.22 x 0.018 at 750 kg/m3."""
    assert pytest.approx(40.187, rel=HUNDREDTH_PERCENT) == lifting.piece_mass_kg(2440, 1220, 18, 750)


def test_g9_upright() -> None:
    """G9, hand: 47 x 75 x 2350, C16 mean and as lifted."""
    assert pytest.approx(3.0650, rel=TENTH_PERCENT) == lifting.piece_mass_kg(2350, 47, 75, C16.density_mean_kg_m3)
    assert pytest.approx(3.7277, rel=TENTH_PERCENT) == lifting.piece_mass_kg(2350, 47, 75, RULES.actions.hung_timber_kg_m3)


@pytest.mark.parametrize(
    ("singles", "expected"), [((25, 25), 33.333), ((20, 20), 26.667), ((25, 25, 25), 37.5), ((25,), 25), ((25, 16), 27.333)]
)
def test_g8_team(singles: tuple[float, ...], expected: float) -> None:
    """G8: two thirds of the sum, half of it: HSE L23, from memory."""
    assert pytest.approx(expected, rel=1e-4) == lifting.team_mass_kg(singles)


def test_four_are_no_team() -> None:
    with pytest.raises(KeyError):
        lifting.team_mass_kg((25, 25, 25, 25))


def test_one_end_and_mixed_crews() -> None:
    """Handling.md 1 and 4."""
    zone = RULES.lift_zone("elbow_to_knuckle")

    assert 20 == lifting.end_mass_kg(40)
    assert 20.5 == lifting.mixed_mass_kg(zone.man_close_kg, zone.woman_close_kg)


def test_the_filter_of_the_rules() -> None:
    """Handling.md 1: the whole figure; nobody lifts more farther from the body."""
    found = {z.name: (z.man_close_kg, z.man_far_kg, z.woman_close_kg, z.woman_far_kg) for z in RULES.lifting}

    expected = {
        "above_shoulder": (10, 5, 7, 3),
        "shoulder_to_elbow": (20, 10, 13, 7),
        "elbow_to_knuckle": (25, 15, 16, 10),
        "knuckle_to_mid_lower_leg": (20, 10, 13, 7),
        "below_mid_lower_leg": (10, 5, 7, 3),
    }
    assert expected == found
