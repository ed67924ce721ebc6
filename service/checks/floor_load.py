"""What a breast puts on the floor, as a partition would: the only verdict on the floor (`knowledge/structure.md`, 5.10)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.amounts import length, mass
from service.checks.check import Check, Quantity
from service.checks.hung_weight import whole_mass_kg
from service.engineering import actions
from service.rules import Source
from service.survey.floor import Floor, FloorConstruction
from service.units import STANDARD_GRAVITY_M_S2, millimetres

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

LOAD: Final = "structure.floor_load"
MM_PER_M, N_PER_KN = 1000.0, 1000.0
SOLID: Final = frozenset({FloorConstruction.CONCRETE, FloorConstruction.SCREED})
CLAUSE: Final = Source(document="EN 1991-1-1", edition="2002", clause="6.3.1.2(8), from memory")


def floor_checks(ground: Ground) -> tuple[Result, ...]:
    """Line load against the classes of partitions; on a floor that is or may be of timber an engineer is asked earlier."""
    rules, width_mm = ground.rules.actions, millimetres(ground.frame.sizes.finished_width_tenth_mm)
    mass_kg = whole_mass_kg(ground)
    line_n_per_m = actions.floor_line_n_per_m(mass_kg, width_mm)
    greatest = (rules.light_partition_n_per_m, rules.medium_partition_n_per_m, rules.heavy_partition_n_per_m)
    counts_as = actions.partition_load_kn_m2(
        line_n_per_m, greatest, (rules.light_partition_kn_m2, rules.medium_partition_kn_m2, rules.heavy_partition_kn_m2)
    )
    on_timber = (ground.job.survey.floor or Floor()).construction not in SOLID
    limit_n_per_m = rules.floor_engineer_n_per_m if on_timber else greatest[-1]
    heavy, most_kg = line_n_per_m > limit_n_per_m, limit_n_per_m * width_mm / MM_PER_M / STANDARD_GRAVITY_M_S2
    as_load = f"a partition that counts as {counts_as:g} kN/m2" if line_n_per_m <= greatest[-1] else "no partition any more"
    return (
        Check(
            code=LOAD,
            subject="floor",
            says=f"the breast weighs {line_n_per_m / N_PER_KN:.2f} kN on each metre of floor along the wall: {as_load}",
            demand=Quantity(symbol="G/W", value=line_n_per_m, unit="n_per_m"),
            resistance=Quantity(symbol="limit", value=limit_n_per_m, unit="n_per_m"),
            clause=CLAUSE,
            inputs=(mass("m", mass_kg), length("W", width_mm)),
            remedy=f"a structural engineer's word on the floor, or at most {most_kg:.0f} kg" if heavy else "",
        ),
    )
