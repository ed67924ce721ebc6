from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.check import Verdict
from service.checks.heavy_things import ARM, FACING, HUNG, mass_checks
from tests.checks.hung_grounds import example, with_screen_of
from tests.checks.results import the_check, values, why_skipped

if TYPE_CHECKING:
    from service.checks.ground import Ground


def on_an_arm(ground: Ground) -> Ground:
    bracket = ground.job.bracket
    assert bracket is not None
    job = msgspec.structs.replace(ground.job, bracket=msgspec.structs.replace(bracket, kind="arm"))
    return msgspec.structs.replace(ground, job=job)


def faced(mass_kg_m2: float) -> Ground:
    ground = example("A")
    brief = msgspec.structs.replace(ground.job.survey.brief, facing_kg_m2=mass_kg_m2)
    job = msgspec.structs.replace(ground.job, survey=msgspec.structs.replace(ground.job.survey, brief=brief))
    return msgspec.structs.replace(ground, job=job)


def test_hung_mass() -> None:
    """structure.md, section 6: 200 kg without a floor path; A hangs 93.17 kg, 83.67 without its screen."""
    over = the_check(mass_checks, with_screen_of(example("A"), 116.4), HUNG)

    assert pytest.approx((93.17, 200), abs=0.01) == values(the_check(mass_checks, example("A"), HUNG))
    assert Verdict.FAIL is over.verdict
    assert over.remedy.startswith("at most 200 kg")
    assert the_check(mass_checks, with_screen_of(example("A"), 116.3), HUNG).holds


def test_a_closed_end_is_a_floor_path() -> None:
    assert "a closed end stands on the base" in why_skipped(mass_checks, example("B"), HUNG)


def test_screen_on_an_arm() -> None:
    """structure.md, section 6: 60 kg."""
    heavy, light = (the_check(mass_checks, with_screen_of(on_an_arm(example("A")), mass_kg), ARM) for mass_kg in (60.1, 60))

    assert (Verdict.FAIL, Verdict.PASS) == (heavy.verdict, light.verdict)
    assert ("a flat bracket, or a structural engineer", "") == (heavy.remedy, light.remedy)
    assert "no screen hangs on an arm" == why_skipped(mass_checks, example("A"), ARM)


@pytest.mark.parametrize(("mass_kg_m2", "verdict", "built"), [(20, "pass", True), (21, "fail", True), (46, "fail", False)])
def test_facing(mass_kg_m2: float, verdict: str, built: bool) -> None:
    """structure.md, section 6: over 20 kg/m2 an engineer, over 45 not built."""
    check = the_check(mass_checks, faced(mass_kg_m2), FACING)

    assert (verdict, built) == (check.verdict, "not built" not in check.says)
    assert "no tile" in why_skipped(mass_checks, example("A"), FACING)
