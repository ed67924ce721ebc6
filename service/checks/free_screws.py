"""A wall fixing that bridges what bears nothing is a cantilever out of the masonry (`knowledge/fixings.md`, 2.4)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.checks.pulled_screws import assumed_figures, diameter_of, root_of, yield_moment_of
from service.engineering import host_walls
from service.survey.wall import WallConstruction
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground


class FreeScrew(msgspec.Struct, frozen=True, kw_only=True):
    """A screw that stands free over a length; two bending resistances, of which the smaller one decides."""

    lever_mm: float
    root_mm: float
    plastic_n_mm: float  # EN 1995-1-1 8.3.1.1(4)
    elastic_n_mm: float  # EN 1992-4 7.2.2.3
    shear_n: float  # V_Rd of the smaller one
    assumed: str = ""


def free_screw(ground: Ground) -> FreeScrew | None:
    """The wall fixing between masonry and timber; None where the wall carries it up to its face, or nothing is sold."""
    fixing, job = ground.hardware.wall_fixing, ground.job
    if fixing is None or job.wall_construction is not WallConstruction.PLASTERBOARD_ON_DABS:
        return None
    lever_mm = host_walls.stand_off_lever_mm(
        millimetres(job.wall_lining_tenth_mm), millimetres(job.wall_void_tenth_mm), diameter_of(fixing)
    )
    root_mm, rules = root_of(fixing, ground.rules), ground.rules
    plastic_n_mm = yield_moment_of(fixing, rules)
    elastic_n_mm = host_walls.elastic_moment_n_mm(rules.screws.yield_steel_mpa, root_mm)
    bent_n = host_walls.stand_off_shear_n(min(plastic_n_mm, elastic_n_mm), lever_mm, rules.walls.held_ends_ratio)
    return FreeScrew(
        lever_mm=lever_mm, root_mm=root_mm, plastic_n_mm=plastic_n_mm, elastic_n_mm=elastic_n_mm,
        shear_n=bent_n / rules.partial.anchor_bending_ratio, assumed=assumed_figures(fixing, ("root_diameter_mm",)),
    )  # fmt: skip
