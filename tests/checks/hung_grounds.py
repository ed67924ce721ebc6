"""Grounds of the worked examples for the checks of what hangs: with and without structure.md 5.13, on other walls."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import msgspec

from service.rules import load_rules
from tests.checks.grounds import ground_of, rules_without_ladder
from tests.sold_examples import ADDITIONS, sold

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.rules import RuleSet

ON, OFF = load_rules(), rules_without_ladder()


@cache
def example(name: str, *, ladder: bool = False, laid_out: bool = False) -> Ground:
    """A worked example after checks, or as it is laid out; 5.13 is off in its columns."""
    return ground_of(sold(name), None if laid_out else ADDITIONS[name], ON if ladder else OFF)


@cache
def held_by_brackets(name: str, *, halved: bool = False) -> Ground:
    """A worked example with brackets at all noggins of its hung ladders, and noggins half way."""
    additions = msgspec.structs.replace(ADDITIONS[name], ladder_brackets=True, ladder_halved=halved)
    return ground_of(sold(name), additions, ON)


def on_wall(construction: str, rules: RuleSet = OFF, /, **more: object) -> Ground:
    """Example A on another wall, by default without 5.13."""
    changes = {"survey__wall__construction": construction, **{f"survey__wall__{key}": value for key, value in more.items()}}
    return ground_of(sold("A", **changes), ADDITIONS["A"], rules)


def with_screen_of(ground: Ground, mass_kg: float) -> Ground:
    """The same frame with a screen of another mass."""
    screen = ground.job.screen
    assert screen is not None
    job = msgspec.structs.replace(ground.job, screen=msgspec.structs.replace(screen, mass_kg=mass_kg))
    return msgspec.structs.replace(ground, job=job)


def with_wall_load(ground: Ground, tension_kn: float, shear_kn: float) -> Ground:
    """The same frame on a wall whose fixings are declared to bear something else."""
    load = ground.hardware.wall_load
    assert load is not None
    weaker = msgspec.structs.replace(load, working_tension_kn=tension_kn, working_shear_kn=shear_kn)
    return msgspec.structs.replace(ground, hardware=msgspec.structs.replace(ground.hardware, wall_load=weaker))
