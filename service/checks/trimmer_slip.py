"""How far the ends of the trimmer slip in their screws (structure.md, 3.7 and 5.2)."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from service.checks.timber import of_roles, solid_timber
from service.engineering import deflection, strength
from service.frame import EndJoint, Role

if TYPE_CHECKING:
    from service.catalogue import Material
    from service.checks.ground import Ground
    from service.checks.trimmer_load import Trimmer


class Slip(NamedTuple):
    """Slip of the end that slips most, and what of it is not known."""

    slip_mm: float
    unverified: str = ""


class EndScrews(NamedTuple):
    """The screws that hold an end of the trimmer or its plies."""

    screw: Material | None
    screw_count: int
    share_ratio: float  # of the load of that end that goes through them


def end_slip(trimmer: Trimmer, ground: Ground) -> Slip:
    """Slip of the worse end: what it permanently carries with creep, and half of a person at mid span."""
    ends = end_screws(trimmer, ground)
    if any(end.screw is None for end in ends):
        return Slip(0.0, "no screw is sold for the ends of the trimmer: their slip is not known")
    return Slip(max((_slip_mm(trimmer, end, ground) for end in ends), default=0.0))


def end_screws(trimmer: Trimmer, ground: Ground) -> tuple[EndScrews, ...]:
    """What holds each end that does not rest on a jack in full.

    Plies beside a jack hand their share to the trimmer over it by screws of their own; elsewhere each ply has a bracket.
    """
    rail = of_roles(ground, Role.TRIMMER)[0]
    return tuple(
        end
        for joint in (rail.start_joint, rail.end_joint)
        if (end := _end(trimmer, ground, on_jack=joint is EndJoint.BEARING)) is not None
    )


def on_jacks(ground: Ground) -> bool:
    """Whether jacks shorten the span, so that an end that rests on one is an end of the span."""
    sizes = ground.frame.sizes
    return sizes.trimmer_span_tenth_mm < sizes.rail_length_tenth_mm


def _end(trimmer: Trimmer, ground: Ground, *, on_jack: bool) -> EndScrews | None:
    bought = ground.hardware
    leg_count = (bought.bracket.leg_screw_count if bought.bracket else None) or 0
    plies_share_ratio = trimmer.ply_count * trimmer.ply_share_ratio
    if on_jack and on_jacks(ground):
        screws = EndScrews(bought.narrow_screw, ground.rules.take_off.ply_end_screw_count, plies_share_ratio)
        return screws if trimmer.ply_count else None
    screw = bought.bracket_screw if leg_count else None
    if trimmer.ply_count:
        return EndScrews(screw, leg_count * trimmer.ply_count, plies_share_ratio)
    return EndScrews(screw, leg_count, 1.0)


def _slip_mm(trimmer: Trimmer, end: EndScrews, ground: Ground) -> float:
    diameter_mm = (end.screw.diameter_mm if end.screw else None) or 0.0
    density = deflection.pair_density_kg_m3(trimmer.flat.strength.density_mean_kg_m3, trimmer.ply.strength.density_mean_kg_m3)
    each_n_per_mm = deflection.screw_slip_n_per_mm(density, diameter_mm) * end.screw_count
    k_def = solid_timber(ground).creep_ratio
    return end.share_ratio * deflection.final_sag_mm(
        deflection.slip_mm(trimmer.permanent_end_n, each_n_per_mm),
        deflection.slip_mm(trimmer.person_n / 2, each_n_per_mm),
        creep_ratio=strength.pair_creep_ratio(k_def, k_def),
        quasi_permanent_ratio=ground.rules.partial.quasi_person_ratio,
    )
