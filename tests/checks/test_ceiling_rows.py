from __future__ import annotations

import msgspec
import pytest

from service.checks.ceiling_rows import (
    ceiling_rows,
    pulled_by_the_face_n,
    row_forces,
    row_resistance_n,
    row_value,
    screw_shear_n,
)
from service.checks.hung_weight import Load, hung_load
from service.checks.situations import lost, person, push, weight
from service.survey.ceiling import CeilingKind
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import OFF, example
from tests.sold_examples import ADDITIONS, sold


def test_rows_of_a() -> None:
    """worked-examples.md, A, "ceiling alone": rows at 44.5 and 375.5; front 703.2, rear 210.4 N; row of 4 resists 3716 N."""
    ground = example("A")
    rows = ceiling_rows(ground)
    assert rows is not None
    forces = row_forces(rows, ground, hung_load(ground), lost(OFF))

    assert (44.5, 375.5, 4, 4, 4) == (rows.rear_mm, rows.front_mm, rows.rear_count, rows.front_count, rows.joist_count)
    assert pytest.approx([210.4, 703.2], rel=1e-3) == [forces.rear_n, forces.front_n]
    assert pytest.approx(3716, rel=1e-3) == row_resistance_n(row_value(ground), 4, lost(OFF))


def test_statics_of_rows() -> None:
    """worked-checks.md, D4: 78 kg at 165, rows at 40 and 260, 1.35 G: 586.73 and 445.91 N."""
    ground = example("A")
    rows = ceiling_rows(ground)
    assert rows is not None
    other = msgspec.structs.replace(rows, rear_mm=40.0, front_mm=260.0)
    forces = row_forces(other, ground, Load(mass_kg=78, from_wall_mm=165), weight(OFF))

    assert pytest.approx([445.91, 586.73], rel=1e-4) == [forces.rear_n, forces.front_n]


def test_a_person_at_the_front_lifts_the_rear_row() -> None:
    """structure.md, 5.1: beyond the front row; here a light frame."""
    ground = example("A")
    rows = ceiling_rows(ground)
    assert rows is not None

    assert row_forces(rows, ground, Load(mass_kg=20, from_wall_mm=300), person(OFF)).rear_n < 0


def test_a_pull_on_the_face() -> None:
    """By hand: 1.5 x 678.5 N at 1200 under a ceiling at 2515, rows 331 apart."""
    ground = example("A")
    rows = ceiling_rows(ground)
    assert rows is not None

    assert pytest.approx(1.5 * 678.5 * 1315 / 331) == pulled_by_the_face_n(rows, ground, push(OFF), 678.5)


def test_no_rows_without_joists() -> None:
    assert ceiling_rows(example("B")) is None
    assert ceiling_rows(example("C")) is None


def test_noggins_between_joists_hand_it_to_two_joists() -> None:
    ground = ground_of(sold("B", survey__ceiling__noggins="fitted"), ADDITIONS["B"], OFF)
    rows = ceiling_rows(ground)
    assert rows is not None

    assert (2, 4) == (rows.joist_count, rows.rear_count)


def test_a_slab_has_half_of_the_wall_value() -> None:
    """fixings.md, 3: 0.50 kN in concrete x 1.4, halved for a cracked slab overhead."""
    ground = example("A")
    ceiling = ground.job.survey.ceiling
    assert ceiling is not None
    slab = msgspec.structs.replace(ceiling, kind=CeilingKind.CONCRETE_CAST)
    survey = msgspec.structs.replace(ground.job.survey, ceiling=slab)
    value = row_value(msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, survey=survey)))

    assert pytest.approx(350) == value.single_n
    assert "assumed" in value.assumed
    assert pytest.approx(350 * 4**0.9) == row_resistance_n(value, 4, lost(OFF))


def test_nothing_sold_holds_nothing() -> None:
    ground = example("A")
    bare = msgspec.structs.replace(ground, hardware=msgspec.structs.replace(ground.hardware, ceiling_screw=None))

    assert 0 == row_value(bare).single_n == screw_shear_n(bare, push(OFF))


def test_shear_over_packing_and_board() -> None:
    """By hand: 6.0 x 120, d_ef 4.18, f_h 16.56: two hinges 22.5 mm apart; V^2/69.2 + 22.5 V = 2 x 9500, then 0.9/1.3."""
    f_n_per_mm = 0.082 * 310 * 4.18**-0.3 * 4.18
    hinges_n = f_n_per_mm / 2 * ((22.5**2 + 4 * 19_000 / f_n_per_mm) ** 0.5 - 22.5)

    assert pytest.approx(hinges_n * 0.9 / 1.3, rel=1e-3) == screw_shear_n(example("A"), push(OFF))
