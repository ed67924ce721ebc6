from __future__ import annotations

import math
from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.bracketed_noggins import bracket_ratio, bracketed_sag_mm, declared, timber_ratios, top_pull_n
from service.checks.hung_weight import Load
from service.checks.ladder_parts import half_way_mm, ladder_at
from service.checks.situations import lost, person, weight
from tests.checks.hung_grounds import ON, example
from tests.checks.test_ladder_parts import SCENARIO

if TYPE_CHECKING:
    from service.checks.ground import Ground

CASES = (lost(ON), weight(ON), person(ON))


def with_bracket(ground: Ground, **figures: object) -> Ground:
    bracket = ground.hardware.bracket
    assert bracket is not None
    other = msgspec.structs.replace(bracket, **figures)
    return msgspec.structs.replace(ground, hardware=msgspec.structs.replace(ground.hardware, bracket=other))


STRONG = with_bracket(example("A", ladder=True), bracket_pull_n=2000.0, bracket_up_n=3600.0, leg_screw_count=3)


def test_the_scenario_of_the_worked_checks() -> None:
    """worked-checks.md, I2: s 0.93387, p 0.34904, l 0.19888; N 222.80 N; finite elements found M_j within 2 percent."""
    found = [bracket_ratio(SCENARIO, SCENARIO.levels_mm, one, STRONG) for one in CASES]

    assert pytest.approx([0.19888, 0.34904, 0.93387], rel=1e-3) == found
    assert pytest.approx(222.80, rel=1e-3) == top_pull_n(SCENARIO, SCENARIO.levels_mm, person(ON))


def test_sag_of_the_scenario() -> None:
    """worked-checks.md, I3: final G 0.53820, Q 1000 N 0.81090 mm; finite elements 4 percent less."""
    assert pytest.approx(0.53820 + 0.81090, rel=1e-3) == bracketed_sag_mm(SCENARIO, STRONG, 0.6)


@pytest.mark.parametrize(
    ("name", "load", "plain", "halved"),
    [
        ("A", Load(mass_kg=93.17, from_wall_mm=299.3), (0.296, 0.519, 1.245), (0.186, 0.327, 0.786)),
        ("B", Load(mass_kg=140.61, from_wall_mm=268.0), (0.371, 0.651, 1.158), (0.209, 0.367, 0.657)),
    ],
)
def test_light_brackets_in_a_and_b(name: str, load: Load, plain: tuple[float, ...], halved: tuple[float, ...]) -> None:
    """worked-examples.md, section 0: at every noggin, then with noggins half way."""
    ground = example(name, ladder=True)
    ladder = ladder_at(ground, load, left=name == "A")
    levels = (ladder.levels_mm, half_way_mm(ladder, 60))
    found = [tuple(bracket_ratio(ladder, at, one, ground) for one in CASES) for at in levels]

    assert pytest.approx(plain, abs=1e-3) == found[0]
    assert pytest.approx(halved, abs=1e-3) == found[1]
    made = msgspec.structs.replace(ladder, bracketed_mm=levels[1])
    assert pytest.approx({"A": 0.98, "B": 0.67}[name], abs=0.005) == bracketed_sag_mm(made, ground, 0.6)  # the same place


def test_timber_at_the_brackets() -> None:
    """By hand, I2: M_j 51.321 Nm on 45 x 70 C16, k_h 1.1647, 0.9/1.3; F/4 = 477.4 N; M_j/56 on 14 x 45; N 222.8 x 450/4."""
    found = timber_ratios(SCENARIO, person(ON), STRONG, 450)
    w_mm3, share = 45 * 70**2 / 6, 0.9 / 1.3
    k_h = (150 / 70) ** 0.2

    assert pytest.approx(
        [
            51_321 / w_mm3 / (16 * k_h * share),
            1.5 * 477.38 / (0.67 * 45 * 70) / (3.2 * share),
            51_321 / 56 / (14 * 45) / (2.2 * share),
            222.8 * 450 / 4 / w_mm3 / (16 * k_h * share),
        ],
        rel=1e-3,
    ) == list(found.values())


def test_what_holds_nothing() -> None:
    """One noggin takes no couple; a bracket without a declared pull or without any maker is no value."""
    bare = with_bracket(STRONG, bracket_pull_n=None)

    assert math.inf == bracket_ratio(SCENARIO, (900.0,), weight(ON), STRONG)
    assert math.inf == bracket_ratio(SCENARIO, SCENARIO.levels_mm, weight(ON), bare)
    assert (False, False, True) == tuple(declared(one) for one in (None, bare.hardware.bracket, STRONG.hardware.bracket))
    assert 0 == bracketed_sag_mm(msgspec.structs.replace(SCENARIO, bracketed_mm=(900.0,)), STRONG, 0.6)
