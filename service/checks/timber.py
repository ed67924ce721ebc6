"""Timber in a check: members found by role, their sides and class, and what they resist for a load of some duration.

Formulas: `service.engineering`; factors: the rule set. Rules: `knowledge/structure.md`, sections 1 to 3.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.ground import class_of
from service.engineering import bearing, bending, columns, section, shear, strength
from service.frame import Axis
from service.rules import LoadDuration, StrengthClass
from service.survey.wall import ExternalBuild
from service.units import millimetres

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.checks.ground import Ground
    from service.frame import Box, Member, Role
    from service.rules import DurationFactors

COLD_BUILDS: Final = frozenset({None, ExternalBuild.SOLID, ExternalBuild.UNKNOWN})


class Beam(NamedTuple):
    """A rectangle that bends."""

    width_mm: float  # across the plane of bending
    depth_mm: float  # in it
    strength: StrengthClass

    @property
    def stiffness_n_mm2(self) -> float:
        """E I with the mean modulus."""
        return section.stiffness_n_mm2(self.strength.modulus_mpa, section.second_moment_mm4(self.width_mm, self.depth_mm))

    @property
    def area_mm2(self) -> float:
        """Section."""
        return section.area_mm2(self.width_mm, self.depth_mm)


class Asked(NamedTuple):
    """One combination: what is asked, what there is, and the duration that k_mod comes from."""

    demand: float
    resistance: float
    duration: LoadDuration

    @property
    def utilisation_ratio(self) -> float:
        """Demand over resistance, not rounded."""
        return self.demand / self.resistance


def governing(asked: Iterable[Asked]) -> Asked:
    """The combination with the greatest utilisation; the first of equals."""
    return max(asked, key=lambda one: one.utilisation_ratio)


def of_roles(ground: Ground, *roles: Role) -> tuple[Member, ...]:
    """Members of some roles by their marks, so that the order in the frame decides nothing."""
    return tuple(sorted((member for member in ground.frame.members if member.role in roles), key=lambda one: one.mark))


def extent_mm(box: Box, axis: Axis) -> float:
    """Size of a box along an axis."""
    low, high = ends_of(box, axis)
    return high - low


def ends_of(box: Box, axis: Axis) -> tuple[float, float]:
    """From where to where a box reaches along an axis, mm."""
    if axis is Axis.X:
        return millimetres(box.x0_tenth_mm), millimetres(box.x1_tenth_mm)
    if axis is Axis.Y:
        return millimetres(box.y0_tenth_mm), millimetres(box.y1_tenth_mm)
    return millimetres(box.z0_tenth_mm), millimetres(box.z1_tenth_mm)


def length_mm(member: Member) -> float:
    """Length of a member."""
    return millimetres(member.length_tenth_mm)


def bent(member: Member, towards: Axis, ground: Ground) -> Beam:
    """A member that bends under forces along an axis."""
    across = next(axis for axis in Axis if axis not in {member.along, towards})
    return Beam(extent_mm(member.box, across), extent_mm(member.box, towards), class_of(member, ground))


def solid_timber(ground: Ground) -> DurationFactors:
    """k_mod and k_def of the frame: service class 2 against a cold outside wall, else 1 (EN 1995-1-1, 2.3.1.3)."""
    wall = ground.job.survey.wall
    cold = wall is not None and wall.external is True and wall.external_build in COLD_BUILDS
    return ground.rules.duration_factors("solid_timber_2" if cold else "solid_timber_1")


def design_mpa(characteristic_mpa: float, duration: LoadDuration, ground: Ground) -> float:
    """Design strength of the timber; under an accident with the factor of accidents."""
    accident = duration is LoadDuration.INSTANTANEOUS
    partial = ground.rules.partial
    gamma_m_ratio = partial.accidental_timber_ratio if accident else partial.solid_timber_ratio
    return strength.design_strength_mpa(characteristic_mpa, solid_timber(ground).k_mod_ratio(duration), gamma_m_ratio)


def joint_n(characteristic_n: float, duration: LoadDuration, ground: Ground) -> float:
    """Design resistance of a joint; under an accident with the factor of accidents."""
    accident = duration is LoadDuration.INSTANTANEOUS
    partial = ground.rules.partial
    gamma_m_ratio = partial.accidental_timber_ratio if accident else partial.connection_ratio
    return strength.design_resistance_n(characteristic_n, solid_timber(ground).k_mod_ratio(duration), gamma_m_ratio)


def bending_mpa(beam: Beam, duration: LoadDuration, ground: Ground) -> float:
    """f_m,d with the size factor: EN 1995-1-1, 3.2(3)."""
    return design_mpa(strength.size_factor_ratio(beam.depth_mm) * beam.strength.bending_mpa, duration, ground)


def bent_ratio(beam: Beam, moment_n_mm: float, duration: LoadDuration, ground: Ground) -> float:
    """Bending stress over strength: EN 1995-1-1, 6.1.6; boards along it hold it sideways, so that k_crit is 1."""
    return bending.bending_stress_mpa(moment_n_mm, beam.width_mm, beam.depth_mm) / bending_mpa(beam, duration, ground)


def moment_resistance_n_mm(beam: Beam, duration: LoadDuration, ground: Ground) -> float:
    """W f_m,d."""
    return section.section_modulus_mm3(beam.width_mm, beam.depth_mm) * bending_mpa(beam, duration, ground)


def shear_resistance_n(beam: Beam, duration: LoadDuration, ground: Ground) -> float:
    """V_Rd: EN 1995-1-1, 6.1.7."""
    strength_mpa = design_mpa(beam.strength.shear_mpa, duration, ground)
    return shear.shear_resistance_n(strength_mpa, beam.area_mm2, ground.rules.members.crack_timber_ratio)


def across_resistance_n(
    beam: Beam, duration: LoadDuration, ground: Ground, *, contact_mm: float, free_mm: tuple[float, float]
) -> float:
    """Force that presses across the grain of a member: EN 1995-1-1, 6.1.5.

    Args:
        beam: the member; its width is that of the contact.
        duration: of the shortest load.
        ground: rules.
        contact_mm: length of the contact along the grain.
        free_mm: free length at both sides of it.
    """
    strength_mpa = design_mpa(beam.strength.compression_across_mpa, duration, ground)
    spread_mm = bearing.spread_length_mm(contact_mm, *free_mm)
    return bearing.bearing_resistance_n(strength_mpa, beam.width_mm, spread_mm, ground.rules.members.least_bearing_factor_ratio)


def column_resistance_n(beam: Beam, held_mm: float, duration: LoadDuration, ground: Ground) -> float:
    """N_Rd of a member that buckles in the plane of its depth: EN 1995-1-1, 6.3.2."""
    slender = columns.column_slenderness_ratio(
        held_mm, section.gyration_radius_mm(beam.depth_mm), compression_mpa=beam.strength.compression_mpa,
        modulus_low_mpa=beam.strength.modulus_low_mpa,
    )  # fmt: skip
    strength_mpa = design_mpa(beam.strength.compression_mpa, duration, ground)
    return columns.column_resistance_n(strength_mpa, beam.area_mm2, columns.buckling_ratio(slender))


def stronger_classes(weaker: StrengthClass, ground: Ground) -> tuple[StrengthClass, ...]:
    """Classes of more bending strength, the nearest first."""
    stronger = [one for one in ground.rules.timber if one.bending_mpa > weaker.bending_mpa]
    return tuple(sorted(stronger, key=lambda one: one.bending_mpa))
