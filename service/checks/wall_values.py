"""What one wall fixing bears in one situation: the least of the host, of a free length, and of the timber that it holds.

Rules: `knowledge/fixings.md`, 2.1 to 2.6; `knowledge/structure.md`, 5.13 g for the timber.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.checks.free_screws import free_screw
from service.checks.ground import class_of, hangs_ladders
from service.checks.host import Host, host_of
from service.checks.pulled_screws import assumed_figures, diameter_of, pulled_screw, root_of, yield_moment_of
from service.engineering import embedment, gapped, host_walls, steel_plates, strength
from service.frame import Role
from service.units import millimetres

if TYPE_CHECKING:
    from service.catalogue import Material
    from service.checks.ground import Ground
    from service.checks.situations import Situation
    from service.rules import StrengthClass

STUD_CLASS = "C16"  # of studs and joists that nobody has graded (knowledge/fixings.md, 3)


class FixingValue(msgspec.Struct, frozen=True, kw_only=True):
    """Design resistances of one fixing, and what of them is assumed."""

    tension_n: float
    shear_n: float
    assumed: str = ""


def fixing_value(ground: Ground, situation: Situation, host: Host | None = None) -> FixingValue:
    """One wall fixing of the upper frame through an upright; nothing where the wall gives nothing or is not known."""
    host, fixing = host or host_of(ground), ground.hardware.wall_fixing
    if fixing is None or host.unknown or host.nothing:
        return FixingValue(tension_n=0.0, shear_n=0.0)
    value = _into_stud(fixing, ground, situation) if host.into_studs else FixingValue(
        tension_n=host.tension_n, shear_n=host.shear_n, assumed=host.assumed
    )  # fmt: skip
    free = free_screw(ground)
    shears_n = [value.shear_n]
    if free is not None:
        shears_n.append(free.shear_n)
    if hangs_ladders(ground) and not host.into_studs:
        shears_n.append(timber_shear_n(fixing, ground, situation))
    missing = (value.assumed, free.assumed if free else "")
    return FixingValue(tension_n=value.tension_n, shear_n=min(shears_n), assumed="; ".join(filter(None, missing)))


def timber_shear_n(fixing: Material, ground: Ground, situation: Situation) -> float:
    """What the screw of a plug bears in the upright, pinned at the wall: structure.md 5.13 g, EN 1995-1-1 (8.9)."""
    d_ef_mm = embedment.effective_diameter_mm(root_of(fixing, ground.rules), 0.0, 0.0)
    embedded_mpa = embedment.drilled_embedment_mpa(upright_class(ground).density_kg_m3, d_ef_mm)
    modes_n = steel_plates.thin_plate_modes_n(
        embedded_mpa, timber_under_head_mm(ground), diameter_mm=d_ef_mm, yield_n_mm=yield_moment_of(fixing, ground.rules)
    )
    share = host_walls.plug_timber_ratio(
        millimetres(ground.job.timber.thickness_tenth_mm),
        diameter_of(fixing),
        full_diameters_ratio=ground.rules.screws.plug_upright_over_diameter_ratio,
        least_ratio=ground.rules.screws.plug_upright_least_ratio,
    )
    return share * strength.design_resistance_n(min(modes_n), situation.k_mod_ratio, situation.gamma_m_ratio)


def upright_class(ground: Ground) -> StrengthClass:
    """Class of the timber under the heads: that of the ladders' uprights."""
    return class_of(next(one for one in ground.frame.members if one.role is Role.LADDER_UPRIGHT), ground)


def timber_under_head_mm(ground: Ground) -> float:
    """Timber that a wall fixing holds; less the counterbore where one may be cut, as nobody knows which were."""
    depth_mm, take_off = millimetres(ground.job.timber.width_tenth_mm), ground.rules.take_off
    left_mm = depth_mm - take_off.counterbore_mm
    return left_mm if left_mm >= take_off.counterbore_leaves_mm else depth_mm


def _into_stud(fixing: Material, ground: Ground, situation: Situation) -> FixingValue:
    """A wood screw through rail or upright and the lining into a stud: the lining bears nothing (fixings.md 1.1, 2.6)."""
    job, rules = ground.job, ground.rules
    timber_mm = timber_under_head_mm(ground)
    gap_mm = rules.take_off.wall_packing_mm + millimetres(job.wall_lining_tenth_mm + job.wall_void_tenth_mm)
    stud = rules.strength_class(STUD_CLASS)
    head = upright_class(ground)
    pulled = pulled_screw(
        fixing, timber_mm + gap_mm, rules, head_density_kg_m3=head.density_kg_m3, point_density_kg_m3=stud.density_kg_m3
    )
    d_ef_mm = embedment.effective_diameter_mm(root_of(fixing, rules), 0.0, 0.0)
    modes_n = gapped.gapped_modes_n(
        head_n_per_mm=embedment.plain_embedment_mpa(head.density_kg_m3, d_ef_mm) * d_ef_mm,
        point_n_per_mm=embedment.plain_embedment_mpa(stud.density_kg_m3, d_ef_mm) * d_ef_mm,
        head_length_mm=timber_mm,
        point_length_mm=max(0.1, (fixing.length_mm or 0.0) - timber_mm - gap_mm),
        gap_mm=gap_mm,
        yield_n_mm=yield_moment_of(fixing, rules),
    )
    tension_n, shear_n = (
        strength.design_resistance_n(characteristic_n, situation.k_mod_ratio, situation.gamma_m_ratio)
        for characteristic_n in (pulled.weakest_n, min(modes_n))
    )
    root = assumed_figures(fixing, ("root_diameter_mm",))
    return FixingValue(tension_n=tension_n, shear_n=shear_n, assumed="; ".join(filter(None, (pulled.assumed, root))))
