from __future__ import annotations

import msgspec
import pytest

from service.checks.free_screws import free_screw
from tests.checks.hung_grounds import example, on_wall


def test_a_screw_through_plasterboard_on_dabs() -> None:
    """worked-checks.md, C1: root 4.3, f_u 600, board 15, gap 25, d 6: 43 mm; plastic 10 231 N mm, elastic 5620 N mm, 130.70 N."""
    ground = on_wall("plasterboard_on_dabs", backing="solid_brick", lining_mm=15, void_mm=25)
    fixing = ground.hardware.wall_fixing
    assert fixing is not None
    thin = msgspec.structs.replace(fixing, diameter_mm=6.0, root_diameter_mm=4.3)
    found = free_screw(msgspec.structs.replace(ground, hardware=msgspec.structs.replace(ground.hardware, wall_fixing=thin)))
    assert found is not None

    assert pytest.approx([43.0, 10_231, 5620.0], rel=1e-3) == [found.lever_mm, found.plastic_n_mm, found.elastic_n_mm]
    assert pytest.approx(130.70 / 1.25, rel=1e-3) == found.shear_n


def test_other_walls_carry_the_screw_up_to_their_face() -> None:
    assert free_screw(example("A")) is None
