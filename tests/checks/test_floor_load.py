from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.check import Verdict
from service.checks.floor_load import LOAD, floor_checks
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import OFF, example
from tests.checks.results import the_check, values
from tests.sold_examples import ADDITIONS, sold

if TYPE_CHECKING:
    from service.checks.ground import Ground


def with_fire_of(ground: Ground, mass_kg: float) -> Ground:
    appliance = msgspec.structs.replace(ground.job.appliance, mass_kg=mass_kg)
    return msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, appliance=appliance))


def test_line_load() -> None:
    """By hand: A 160.2 kg over 1.357 m: 1.158 kN/m, a partition that counts as 0.8 kN/m2 (EN 1991-1-1 6.3.1.2(8))."""
    check = the_check(floor_checks, example("A"), LOAD)

    assert pytest.approx((1158, 2000), rel=2e-3) == values(check)
    assert "1.16 kN on each metre of floor along the wall: a partition that counts as 0.8 kN/m2" in check.says


@pytest.mark.parametrize(("mass_kg", "words"), [(41, "0.8 kN/m2"), (5, "0.5 kN/m2"), (250, "1.2 kN/m2"), (400, "no partition")])
def test_classes(mass_kg: float, words: str) -> None:
    """worked-checks.md, D8: up to 1.0, 2.0, 3.0 kN/m count as 0.5, 0.8, 1.2 kN/m2."""
    ground = with_fire_of(example("A"), mass_kg) if mass_kg != 5 else example("C")

    assert words in the_check(floor_checks, ground, LOAD).says


def test_above_2_kn_on_a_timber_floor_an_engineer_is_asked() -> None:
    """structure.md, 5.10; 2000 N/m over 1.357 m are 276.7 kg."""
    check = the_check(floor_checks, with_fire_of(example("A"), 250), LOAD)

    assert (Verdict.FAIL, "a structural engineer's word on the floor, or at most 277 kg") == (check.verdict, check.remedy)


def test_a_solid_floor_bears_the_heaviest_class() -> None:
    ground = ground_of(sold("A", survey__floor__construction="concrete"), ADDITIONS["A"], OFF)

    assert Verdict.PASS is the_check(floor_checks, with_fire_of(ground, 250), LOAD).verdict
    assert Verdict.FAIL is the_check(floor_checks, with_fire_of(ground, 400), LOAD).verdict
