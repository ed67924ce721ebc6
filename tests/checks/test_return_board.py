from __future__ import annotations

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.checks.hung_weight import Load
from service.checks.ladder_parts import ladder_at
from service.checks.return_board import Return, plywood_return, return_ratio, return_sag_mm, screw_n, screw_on
from service.checks.situations import lost, person, weight
from service.engineering.deflection import screw_slip_n_per_mm
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import ON, example
from tests.checks.test_ladder_parts import SCENARIO
from tests.sold_examples import ADDITIONS, sold

SCREW = demo_catalogue().materials["FX-3050R"]  # 5.0 x 50, root 3.1, M_y 5900
GROUND = example("A", ladder=True)
BOARD = Return(
    thickness_mm=18, screw=SCREW, levels_mm=tuple(935.0 + 190 * step for step in range(8)), height_mm=1400, pitch_mm=190
)
CASES = (lost(ON), weight(ON), person(ON))


def test_the_scenario_of_the_worked_checks() -> None:
    """worked-checks.md, I4: 856.22 N, R_d short 592.77 N; u s 0.61719, p 0.21732, l 0.12382; energy minimum 365.854 N."""
    assert pytest.approx(592.77, rel=1e-3) == screw_n(BOARD, SCENARIO, person(ON), GROUND)
    assert pytest.approx([0.12382, 0.21732, 0.61719], rel=1e-3) == [return_ratio(BOARD, SCENARIO, one, GROUND) for one in CASES]


@pytest.mark.parametrize(
    ("name", "load", "used"),
    [
        ("A", Load(mass_kg=93.17, from_wall_mm=299.3), (0.105, 0.185, 0.495)),
        ("B", Load(mass_kg=140.61, from_wall_mm=268.0), (0.134, 0.236, 0.462)),
    ],
)
def test_plywood_instead_in_a_and_b(name: str, load: Load, used: tuple[float, ...]) -> None:
    """worked-examples.md, section 0: ply 18 return, screws at 150."""
    ground = example(name, ladder=True)
    ladder = ladder_at(ground, load, left=name == "A")
    board = screw_on(ladder, ground, SCREW, thickness_mm=18, pitch_mm=150)

    assert pytest.approx(used, abs=0.002) == tuple(return_ratio(board, ladder, one, ground) for one in CASES)


def test_a_short_board_is_held_by_method_a() -> None:
    """By hand: F_f,Rd H_b c / s with H_b 100, c = 2 H_b / a."""
    low = msgspec.structs.replace(BOARD, height_mm=100.0, levels_mm=BOARD.levels_mm)
    force_n = 1909.5
    resists_n = 592.77 * 100 * (200 / 270) / 190

    assert pytest.approx(force_n / resists_n, rel=1e-3) == return_ratio(low, SCENARIO, person(ON), GROUND)


def test_only_plywood_counts() -> None:
    """structure.md, 5.13 c: MDF and plasterboard do not."""
    ladder = ladder_at(GROUND, Load(mass_kg=93.17, from_wall_mm=299.3), left=True)
    plywood = ground_of(sold("A", survey__brief__board={"kind": "catalogue", "code": "BD-2218L"}), ADDITIONS["A"], ON)
    found = plywood_return(ladder, plywood)
    assert found is not None

    assert plywood_return(ladder, GROUND) is None
    assert (18, 6) == (found.thickness_mm, len(found.levels_mm))  # 1515 at 300: 5 gaps


def test_sag_on_the_screws() -> None:
    """structure.md, 5.13 e: 2/(m K) + a^2/(K sum y^2) by N, x (1 + 2 sqrt(0.6 x 0.8)) for G."""
    slip = screw_slip_n_per_mm(370, 5.0)
    squares = sum((level - 1600) ** 2 for level in BOARD.levels_mm)
    by_n_mm = 2 / (8 * slip) + 270**2 / (slip * squares)
    corner_n = 420 * (230 - 35) / 270

    assert pytest.approx(by_n_mm * (corner_n * (1 + 2 * 0.48**0.5) + 1000)) == return_sag_mm(BOARD, SCENARIO, GROUND, 0.6)
