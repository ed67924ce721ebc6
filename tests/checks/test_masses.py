from __future__ import annotations

import pytest

from service.checks.masses import Weighed, board_of, centre_from_wall_mm, centre_of_mm, member_kg, panel_kg, weight_n
from service.frame import PanelRole, Role
from tests.examples_of import example_a, frame_of, job_of

FRAME, JOB = frame_of(example_a()), job_of(example_a())
FACES = [panel for panel in FRAME.panels if panel.role is PanelRole.FACE_UPPER]


def test_member_mass() -> None:
    """By hand: 38 x 89 x 1251 mm at 450 kg/m3."""
    trimmer = next(member for member in FRAME.members if member.role is Role.TRIMMER)

    assert pytest.approx(0.038 * 0.089 * 1.251 * 450) == member_kg(trimmer, 450)
    assert 420 - 89 / 2 == centre_from_wall_mm(trimmer.box)  # front face of the frame at Df 420 (worked-examples.md, A)


def test_panel_mass_leaves_out_the_recess() -> None:
    """worked-examples.md, A, after checks: 16.49 kg of face board above the fire with the recess off."""
    assert "BD-2015R" == board_of(FACES[0], JOB).code
    assert pytest.approx(16.49, abs=0.005) == sum(panel_kg(face, JOB) for face in FACES)


def test_common_centre_and_weight() -> None:
    parts = (Weighed(what="a", mass_kg=1, from_wall_mm=100), Weighed(what="b", mass_kg=3, from_wall_mm=200))

    assert 175 == centre_of_mm(parts)
    assert 0 == centre_of_mm(())
    assert pytest.approx(98.0665) == weight_n(10)
