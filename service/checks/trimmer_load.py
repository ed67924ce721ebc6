"""The trimmer over the fire with its plies, and what they carry (structure.md, 5.2).

The flat rail and the plies on edge behind it are screwed together and share load by their stiffness.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.checks.hung_weight import ON_THE_FRONT
from service.checks.masses import faced_kg, member_kg, weight_n
from service.checks.timber import Beam, bent, of_roles, stronger_classes
from service.engineering import beams, deflection, section
from service.frame import Axis, Layer, PanelRole, Role
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.rules import StrengthClass

FRONT: Final = frozenset(
    {
        Role.TRIMMER, Role.SILL_RAIL, Role.UPSTAND_RAIL, Role.HEAD_RAIL, Role.TOP_RAIL_FRONT, Role.JAMB_STUD, Role.CRIPPLE_BELOW,
        Role.CRIPPLE_ABOVE, Role.FRONT_STUD,
    }
)  # fmt: skip
MOST_PLIES: Final = 3  # framing.md, 10.2, row 3
LEAST_SPAN_MM: Final = 100.0


class Trimmer(msgspec.Struct, frozen=True, kw_only=True):
    """The trimmer as a beam."""

    mark: str
    flat: Beam
    ply: Beam  # one ply; also what one would be where there is none
    ply_mark: str
    ply_count: int
    span_mm: float
    weight_n_per_mm: float  # permanent, without the plies
    ply_n_per_mm: float  # of one ply
    person_n: float

    @property
    def permanent_n_per_mm(self) -> float:
        """All that is permanent."""
        return self.weight_n_per_mm + self.ply_count * self.ply_n_per_mm

    @property
    def stiffness_n_mm2(self) -> float:
        """E I of rail and plies."""
        return self.flat.stiffness_n_mm2 + self.ply_count * self.ply.stiffness_n_mm2

    @property
    def flat_share_ratio(self) -> float:
        """What the flat rail takes."""
        return section.stiffness_share_ratio(self.flat.stiffness_n_mm2, self.stiffness_n_mm2)

    @property
    def ply_share_ratio(self) -> float:
        """What one ply takes."""
        return section.stiffness_share_ratio(self.ply.stiffness_n_mm2, self.stiffness_n_mm2)

    @property
    def permanent_moment_n_mm(self) -> float:
        """Characteristic, at mid span."""
        return beams.uniform_moment_n_mm(self.permanent_n_per_mm, self.span_mm)

    @property
    def person_moment_n_mm(self) -> float:
        """Characteristic, the person at mid span."""
        return beams.point_moment_n_mm(self.person_n, self.span_mm, self.span_mm / 2)

    @property
    def permanent_end_n(self) -> float:
        """Characteristic reaction of one end."""
        return beams.uniform_shear_n(self.permanent_n_per_mm, self.span_mm)

    @property
    def permanent_sag_mm(self) -> float:
        """At once, under the weight."""
        return deflection.uniform_sag_mm(self.permanent_n_per_mm, self.span_mm, self.stiffness_n_mm2)

    @property
    def person_sag_mm(self) -> float:
        """At once, the person at mid span."""
        return deflection.point_sag_mm(self.person_n, self.span_mm, self.span_mm / 2, self.stiffness_n_mm2)

    def with_plies(self, ply_count: int) -> Trimmer:
        """The same with another number of plies."""
        return msgspec.structs.replace(self, ply_count=ply_count)

    def over(self, span_mm: float) -> Trimmer:
        """The same over another opening."""
        return msgspec.structs.replace(self, span_mm=span_mm)

    def of_class(self, stronger: StrengthClass) -> Trimmer:
        """The same of another class."""
        return msgspec.structs.replace(self, flat=self.flat._replace(strength=stronger), ply=self.ply._replace(strength=stronger))


def trimmer_of(ground: Ground) -> Trimmer:
    """The trimmer of a frame with all that it carries: the face above the opening and the front frame up to the top rail."""
    rail = of_roles(ground, Role.TRIMMER)[0]
    plies = of_roles(ground, Role.TRIMMER_PLY)
    flat = bent(rail, Axis.Z, ground)
    over_mm = _divisor_mm(ground)
    return Trimmer(
        mark=rail.mark,
        flat=flat,
        ply=bent(plies[0], Axis.Z, ground) if plies else Beam(flat.depth_mm, flat.width_mm, flat.strength),
        ply_mark=plies[0].mark if plies else "",
        ply_count=len(plies),
        span_mm=millimetres(ground.frame.sizes.trimmer_span_tenth_mm),
        weight_n_per_mm=weight_n(_carried_kg(ground)) / over_mm,
        ply_n_per_mm=weight_n(member_kg(plies[0] if plies else rail, ground.rules.actions.hung_timber_kg_m3)) / over_mm,
        person_n=ground.rules.actions.person_n,
    )


def greatest_ply_count(ground: Ground) -> int:
    """How many plies have room behind the trimmer."""
    sizes, ply_tenth_mm = ground.frame.sizes, ground.job.timber.thickness_tenth_mm
    return min(MOST_PLIES, max(0, sizes.cross_noggin_length_tenth_mm) // ply_tenth_mm)


def classes_above(trimmer: Trimmer, ground: Ground) -> tuple[StrengthClass, ...]:
    """Stronger classes for rail and plies."""
    return stronger_classes(trimmer.flat.strength, ground)


def _divisor_mm(ground: Ground) -> float:
    """The width that shares the load: the frame's where jacks shorten the span, else the span itself."""
    sizes = ground.frame.sizes
    shortened = sizes.trimmer_span_tenth_mm < sizes.rail_length_tenth_mm
    return millimetres(sizes.frame_width_tenth_mm if shortened else sizes.trimmer_span_tenth_mm)


def _carried_kg(ground: Ground) -> float:
    density = ground.rules.actions.hung_timber_kg_m3
    timber_kg = sum(member_kg(member, density) for member in ground.frame.members if member.role in FRONT)
    bed_kg_m2 = ground.rules.actions.adhesive_bed_kg_m2
    face_kg = sum(faced_kg(one, ground.job, bed_kg_m2) for one in ground.frame.panels if one.role is PanelRole.FACE_UPPER)
    lid_kg = sum(faced_kg(one, ground.job, bed_kg_m2) for one in ground.frame.panels if one.layer is Layer.LID)
    extras_kg = sum(one.mass_kg or 0.0 for one in ground.job.survey.brief.extras or () if one.kind in ON_THE_FRONT)
    return timber_kg + face_kg + lid_kg / 2 + extras_kg
