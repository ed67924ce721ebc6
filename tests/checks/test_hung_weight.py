from __future__ import annotations

import msgspec
import pytest

from service.checks.hung_weight import Load, hung_load, standing_load, whole_mass_kg
from service.survey.wishes import Extra, ExtraKind
from tests.checks.grounds import ground_of
from tests.sold_examples import ADDITIONS, sold


def load_of(name: str, *, laid_out: bool = False, **changes: object) -> Load:
    return hung_load(ground_of(sold(name, **changes), None if laid_out else ADDITIONS[name]))


def test_what_hangs() -> None:
    """`knowledge/worked-examples.md`, "After checks": A; B without the extra rail and with it."""
    found = [load_of("A"), load_of("B", laid_out=True), load_of("B")]

    assert pytest.approx([93.17, 137.67, 140.61], abs=0.01) == [load.mass_kg for load in found]
    assert pytest.approx([299.3, 272.7, 268.0], abs=0.1) == [load.from_wall_mm for load in found]
    assert pytest.approx(1378.9, abs=0.1) == found[2].weight_n


@pytest.mark.parametrize(("name", "mass_kg", "from_wall_mm"), [("C", 43.12, 189.5), ("C0", 38.01, 196.7)])
def test_what_stands(name: str, mass_kg: float, from_wall_mm: float) -> None:
    """`knowledge/worked-examples.md`, "After checks, C", row 5.8, and the line on C0."""
    found = standing_load(ground_of(sold(name), ADDITIONS[name]))

    assert pytest.approx(mass_kg, abs=0.01) == found.mass_kg
    assert pytest.approx(from_wall_mm, abs=0.1) == found.from_wall_mm


def test_the_whole_is_what_hangs_what_stands_under_it_and_the_fire() -> None:
    """By hand: A hung 93.17; base 15.3 (worked-examples.md); boards of the base 6.567 + 2 x 2.081 at 11.25 kg/m2; fire 41."""
    assert pytest.approx(93.17 + 15.3 + 6.567 + 2 * 2.081 + 41, abs=0.1) == whole_mass_kg(ground_of(sold("A"), ADDITIONS["A"]))


def test_a_screen_of_which_only_the_size_is_known() -> None:
    """structure.md, section 4: 30 kg/m2 of screen area for screen and bracket, marked assumed."""
    guessed = load_of("A", survey__brief__screen={"kind": "size_class", "diagonal_in": 43}, survey__brief__screen_bracket=None)
    known = load_of("A")

    assert "assumed mass of a screen that is known by its size only" == guessed.assumed
    assert "" == known.assumed
    assert guessed.mass_kg >= known.mass_kg - 10.9 + 30 * 0.964 * 0.557


def test_an_arm_is_taken_as_it_may_stand() -> None:
    """By hand: 9.5 kg of screen 370 mm further out, over 93.17 + 0.6 kg."""
    arm = {
        "kind": "custom", "name": "arm", "bracket_kind": "arm", "depth_mm": 30, "reach_mm": 400, "mass_kg": 1.4, "rating_kg": 30,
        "plate_hole_width_mm": 400, "plate_hole_height_mm": 200, "plate_width_mm": 440, "plate_height_mm": 240,
        "fixing_count": 4, "screen_pattern_least_width_mm": 100, "screen_pattern_greatest_width_mm": 400,
        "screen_pattern_least_height_mm": 100, "screen_pattern_greatest_height_mm": 200,
    }  # fmt: skip
    swung = hung_load(ground_of(sold("A", survey__brief__screen_bracket=arm), ADDITIONS["A"]))

    assert pytest.approx(load_of("A").from_wall_mm + 9.5 * 370 / 93.17, abs=0.05) == swung.from_wall_mm


def wishing(**wishes: object) -> Load:
    """Example A with wishes that are not laid out yet, as they would weigh."""
    ground = ground_of(sold("A"), ADDITIONS["A"])
    brief = msgspec.structs.replace(ground.job.survey.brief, **wishes)
    job = msgspec.structs.replace(ground.job, survey=msgspec.structs.replace(ground.job.survey, brief=brief))
    return hung_load(msgspec.structs.replace(ground, job=job))


def test_facing_and_shelf_weigh() -> None:
    """By hand: faces and returns of A above the fire are 31.93 kg of board at 11.254 kg/m2; 10 kg/m2 of tile in 5 of bed."""
    plain = load_of("A")
    shelf = wishing(extras=(Extra(kind=ExtraKind.SHELF, depth_mm=200, mass_kg=6),))

    assert pytest.approx(plain.mass_kg + 31.93 / 11.254 * 15, abs=0.05) == wishing(facing_kg_m2=10).mass_kg
    assert pytest.approx(plain.mass_kg + 6) == shelf.mass_kg
    assert pytest.approx((plain.mass_kg * plain.from_wall_mm + 6 * 535) / (plain.mass_kg + 6)) == shelf.from_wall_mm
