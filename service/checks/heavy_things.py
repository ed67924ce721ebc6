"""Weights at which this service stops and an engineer is asked (`knowledge/structure.md`, section 6)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.amounts import house, mass
from service.checks.check import Check, Quantity, Skipped
from service.checks.hung_weight import hung_load

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

HUNG: Final = "structure.hung_mass"
ARM: Final = "structure.arm_screen_mass"
FACING: Final = "structure.facing_mass"
ARM_KIND: Final = "arm"


def mass_checks(ground: Ground) -> tuple[Result, ...]:
    """Hung mass without a way to the floor, a screen on an arm, a facing."""
    return (_hung(ground), _arm(ground), _facing(ground))


def _hung(ground: Ground) -> Result:
    """A closed end stands on the base: a way to the floor."""
    if not (ground.frame.left_open and ground.frame.right_open):
        return Skipped(code=HUNG, why="a closed end stands on the base and takes weight to the floor")
    load, limit_kg = hung_load(ground), ground.rules.actions.hung_mass_kg
    return Check(
        code=HUNG,
        subject="hung frame",
        says=f"{load.mass_kg:.1f} kg hang without a way to the floor",
        demand=mass("m", load.mass_kg),
        resistance=mass("limit", limit_kg),
        clause=house("section 6: hung weight without a floor path"),
        unverified=load.assumed,
        remedy=f"at most {limit_kg:g} kg, a closed end that stands on the base, or a structural engineer"
        if load.mass_kg > limit_kg
        else "",
    )


def _arm(ground: Ground) -> Result:
    screen, bracket, limit_kg = ground.job.screen, ground.job.bracket, ground.rules.actions.arm_screen_kg
    if screen is None or bracket is None or bracket.kind != ARM_KIND:
        return Skipped(code=ARM, why="no screen hangs on an arm")
    return Check(
        code=ARM,
        subject=bracket.model,
        says=f"a screen of {screen.mass_kg:g} kg on an arm",
        demand=mass("m", screen.mass_kg),
        resistance=mass("limit", limit_kg),
        clause=house("section 6: heavier screens do not go on an arm"),
        remedy="a flat bracket, or a structural engineer" if screen.mass_kg > limit_kg else "",
    )


def _facing(ground: Ground) -> Result:
    facing_kg_m2, rules = ground.job.survey.brief.facing_kg_m2 or 0.0, ground.rules.actions
    if not facing_kg_m2:
        return Skipped(code=FACING, why="no tile, stone or slips go on the boards")
    refused = facing_kg_m2 > rules.facing_refused_kg_m2
    return Check(
        code=FACING,
        subject="facing",
        says=f"a facing of {facing_kg_m2:g} kg on each square metre"
        + (f", over {rules.facing_refused_kg_m2:g}: this is not built" if refused else ""),
        demand=Quantity(symbol="facing", value=facing_kg_m2, unit="kg_m2"),
        resistance=Quantity(symbol="limit", value=rules.facing_engineer_kg_m2, unit="kg_m2"),
        clause=house("section 6: a facing above this is for an engineer"),
        remedy=f"a facing of at most {rules.facing_engineer_kg_m2:g} kg/m2, or a structural engineer"
        if facing_kg_m2 > rules.facing_engineer_kg_m2
        else "",
    )
