"""A screw that is pulled: what its thread, its head and its shank bear, with the fall-backs for figures that no maker declares.

Rules: `knowledge/fixings.md`, sections 0, 1.1 and 1.2; EN 1995-1-1, 8.7.2.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.engineering import embedment, withdrawal

if TYPE_CHECKING:
    from service.catalogue import Material
    from service.rules import RuleSet

NEWTON_PER_KN = 1000.0


class PulledScrew(msgspec.Struct, frozen=True, kw_only=True):
    """Characteristic resistances of one screw in tension, and what of them is assumed."""

    thread_n: float
    head_n: float
    shank_n: float
    thread_mm: float  # that holds in the point side
    assumed: str = ""

    @property
    def weakest_n(self) -> float:
        """What governs."""
        return min(self.thread_n, self.head_n, self.shank_n)


def pulled_screw(
    screw: Material, before_mm: float, rules: RuleSet, *, head_density_kg_m3: float, point_density_kg_m3: float
) -> PulledScrew:
    """One screw through something into timber.

    Args:
        screw: as sold.
        before_mm: all that lies before the point side, mm.
        rules: fall-backs.
        head_density_kg_m3: characteristic density of the timber under the head.
        point_density_kg_m3: and of the timber that the thread bites in.
    """
    diameter_mm = diameter_of(screw)
    length_mm, thread_mm = screw.length_mm or 0.0, screw.thread_length_mm or 0.0
    held_mm = withdrawal.thread_in_point_mm(length_mm, before_mm, thread_mm, diameter_mm)
    declared_at = screw.declared_density_kg_m3 or rules.screws.declared_density_kg_m3
    of_thread, of_head = screw.withdrawal_mpa or rules.screws.withdrawal_mpa, screw.head_pull_mpa or rules.screws.head_pull_mpa
    head_mm = screw.head_diameter_mm or rules.screws.head_over_diameter_ratio * diameter_mm
    shank_n = withdrawal.shank_tension_n(rules.screws.tension_steel_mpa, root_of(screw, rules))
    return PulledScrew(
        thread_n=withdrawal.withdrawal_n(of_thread, diameter_mm, held_mm, point_density_kg_m3 / declared_at),
        head_n=withdrawal.head_pull_n(of_head, head_mm, head_density_kg_m3 / declared_at),
        shank_n=screw.tensile_kn * NEWTON_PER_KN if screw.tensile_kn else shank_n,
        thread_mm=held_mm,
        assumed=assumed_figures(screw, ("withdrawal_mpa", "head_pull_mpa")),
    )


def diameter_of(screw: Material) -> float:
    """Outer diameter, mm; 0 of a row without one, which then bears nothing."""
    return screw.diameter_mm or 0.0


def root_of(screw: Material, rules: RuleSet) -> float:
    """Root diameter, mm, declared or taken low."""
    return screw.root_diameter_mm or rules.screws.root_over_diameter_ratio * diameter_of(screw)


def yield_moment_of(screw: Material, rules: RuleSet) -> float:
    """Yield moment, N mm: declared, or by EN 1995-1-1 8.3.1.1(4) with the fall-back for the steel."""
    smooth_mm = embedment.effective_diameter_mm(root_of(screw, rules), 0.0, 0.0)
    return screw.yield_moment_n_mm or embedment.yield_moment_n_mm(rules.screws.yield_steel_mpa, smooth_mm)


def assumed_figures(screw: Material, names: tuple[str, ...]) -> str:
    """A sentence on the strengths that the maker of a screw does not declare; empty where all are."""
    missing = [name.rpartition("_")[0].replace("_", " ") for name in names if getattr(screw, name) is None]
    return f"assumed {', '.join(missing)} of {screw.code}: its maker declares none" if missing else ""
