"""A screw that is sheared between two timbers, or under the plate of a bracket (`knowledge/fixings.md`, 1.3 and 1.4)."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from service.checks.pulled_screws import diameter_of, root_of, yield_moment_of
from service.engineering import embedment, lateral, rows, steel_plates

if TYPE_CHECKING:
    from service.catalogue import Material
    from service.rules import RuleSet, StrengthClass


class Sheared(NamedTuple):
    """Characteristic resistance of one screw in one plane, without the part of a rope."""

    each_n: float
    mode: str
    point_mm: float  # length in the point side


def sheared_screw(screw: Material, before_mm: float, timber: StrengthClass, rules: RuleSet) -> Sheared:
    """One screw through one timber into the side grain of another of the same class, not predrilled.

    Args:
        screw: as sold.
        before_mm: thickness that it passes.
        timber: class of both.
        rules: fall-backs, and the least length in the point side, under which nothing is counted.
    """
    point_mm = max(0.0, (screw.length_mm or 0.0) - before_mm)
    if point_mm < rules.screws.point_over_diameter_ratio * diameter_of(screw) or point_mm <= 0:
        return Sheared(0.0, "", point_mm)
    effective_mm = embedment.effective_diameter_mm(root_of(screw, rules), 0.0, 0.0)
    pressed_mpa = embedment.plain_embedment_mpa(timber.density_kg_m3, effective_mm)
    modes_n = lateral.single_shear_modes_n(
        head_embedment_mpa=pressed_mpa, point_embedment_mpa=pressed_mpa, head_length_mm=before_mm, point_length_mm=point_mm,
        diameter_mm=effective_mm, yield_n_mm=yield_moment_of(screw, rules),
    )  # fmt: skip
    return Sheared(min(modes_n), lateral.governing_mode(modes_n, lateral.SINGLE_MODES), point_mm)


def in_end_grain_n(screw: Material, before_mm: float, timber: StrengthClass, rules: RuleSet, *, count: int) -> float:
    """Several screws through one timber into the end of another: a third, of three at least that reach deep enough."""
    one, diameter_mm = sheared_screw(screw, before_mm, timber, rules), diameter_of(screw)
    deep = one.point_mm >= rules.screws.end_grain_point_over_diameter_ratio * diameter_mm
    return count * rows.end_grain_n(one.each_n) if deep and count >= rules.screws.end_grain_least_count else 0.0


def under_plate_n(screw: Material, plate_mm: float, timber: StrengthClass, rules: RuleSet) -> float:
    """One screw through a steel plate, thin or thick or between, into the side grain of a timber."""
    effective_mm = embedment.effective_diameter_mm(root_of(screw, rules), 0.0, 0.0)
    pressed_mpa = embedment.plain_embedment_mpa(timber.density_kg_m3, effective_mm)
    length_mm, bends_n_mm = max(0.0, (screw.length_mm or 0.0) - plate_mm), yield_moment_of(screw, rules)
    thin = steel_plates.thin_plate_modes_n(pressed_mpa, length_mm, diameter_mm=effective_mm, yield_n_mm=bends_n_mm)
    thick = steel_plates.thick_plate_modes_n(pressed_mpa, length_mm, diameter_mm=effective_mm, yield_n_mm=bends_n_mm)
    return steel_plates.plate_resistance_n(min(thin), min(thick), plate_mm, diameter_of(screw))
