"""Ceiling screws where they are: what each row is asked and bears (`knowledge/structure.md`, 5.1; `knowledge/fixings.md`, 3).

Two rows, rear and front, through the top rails into joists that are really crossed, or noggins between joists.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

import msgspec

from service.checks.ground import class_of
from service.checks.pulled_screws import PulledScrew, pulled_screw, root_of, yield_moment_of
from service.checks.wall_values import STUD_CLASS
from service.engineering import embedment, gapped, host_walls, load_paths, strength, withdrawal
from service.frame import Role
from service.survey.ceiling import Ceiling, CeilingKind, JoistDirection
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.checks.hung_weight import Load
    from service.checks.situations import Situation

SLABS: Final = frozenset({CeilingKind.CONCRETE_CAST, CeilingKind.BEAM_AND_BLOCK, CeilingKind.HOLLOW_PLANK})
OVER_NOGGINS_COUNT = 2  # joists that a breast hung from noggins along the wall rests on: house choice, as it is 1 joist bay deep
CONCRETE_SCREW: Final = "concrete.sound.screw_6"
NEWTON_PER_KN = 1000.0


class Rows(msgspec.Struct, frozen=True, kw_only=True):
    """The two rows of ceiling screws."""

    rear_mm: float  # from the wall
    front_mm: float
    rear_count: int
    front_count: int
    joist_count: int
    rear_mark: str  # of the rails that they go through
    front_mark: str


class Forces(NamedTuple):
    """What the rows are pulled with; a negative one lifts."""

    rear_n: float
    front_n: float


class RowValue(msgspec.Struct, frozen=True, kw_only=True):
    """Characteristic resistance of one screw of a row, and what of it is assumed."""

    single_n: float
    pulled: PulledScrew | None  # None: into concrete
    assumed: str = ""


def ceiling_rows(ground: Ground) -> Rows | None:
    """The rows; None where the ceiling holds no screw."""
    screws = ground.frame.ceiling_screws
    if not screws or len({one.y_tenth_mm for one in screws}) < 2:  # noqa: PLR2004 - rear and front
        return None
    rear, front = min(one.y_tenth_mm for one in screws), max(one.y_tenth_mm for one in screws)
    behind, before = [one for one in screws if one.y_tenth_mm == rear], [one for one in screws if one.y_tenth_mm == front]
    across = ground.job.joists is JoistDirection.ACROSS_WALL
    return Rows(
        rear_mm=millimetres(rear), front_mm=millimetres(front), rear_count=len(behind), front_count=len(before),
        joist_count=len({one.x_tenth_mm for one in screws}) if across else OVER_NOGGINS_COUNT,
        rear_mark=behind[0].through, front_mark=before[0].through,
    )  # fmt: skip


def row_forces(rows: Rows, ground: Ground, load: Load, situation: Situation) -> Forces:
    """Weight and a person at the front on two rows; a pull on the face goes to the wall."""
    weight_n = situation.weight_ratio * load.weight_n
    person_n = situation.person_ratio * ground.rules.actions.person_n
    depth_mm = millimetres(ground.frame.sizes.finished_depth_tenth_mm)
    front_n = sum(
        load_paths.front_row_n(force_n, lever_mm=lever_mm, rear_mm=rows.rear_mm, front_mm=rows.front_mm)
        for force_n, lever_mm in ((weight_n, load.from_wall_mm), (person_n, depth_mm))
    )
    return Forces(weight_n + person_n - front_n, front_n)


def pulled_by_the_face_n(rows: Rows, ground: Ground, situation: Situation, push_n: float) -> float:
    """What a pull on the face adds to one row and takes from the other where no wall takes it."""
    ceiling_mm = millimetres(ground.job.clear_height_tenth_mm)
    below_mm = ceiling_mm - ground.rules.actions.face_line_height_mm
    return load_paths.row_change_n(
        situation.push_ratio * push_n, below_ceiling_mm=max(0.0, below_mm), rear_mm=rows.rear_mm, front_mm=rows.front_mm
    )


def row_value(ground: Ground) -> RowValue:
    """One ceiling screw: thread in the joist, head in the rail; in a slab the wall's low-set value, halved."""
    ceiling, screw, job = ground.job.survey.ceiling or Ceiling(), ground.hardware.ceiling_screw, ground.job
    if ceiling.kind in SLABS:
        working_kn = ground.rules.wall_load(CONCRETE_SCREW).tension_kn * ground.rules.walls.overhead_concrete_ratio
        design_kn = host_walls.design_from_working_kn(working_kn, ground.rules.partial.plug_working_ratio)
        assumed = "assumed half the low-set value of a screw in cracked concrete"
        return RowValue(single_n=design_kn * NEWTON_PER_KN, pulled=None, assumed=assumed)
    if screw is None:
        return RowValue(single_n=0.0, pulled=None)
    before_mm = millimetres(job.timber.thickness_tenth_mm + job.ceiling_lining_tenth_mm) + ground.rules.frame.ceiling_packing_mm
    rail = next(one for one in ground.frame.members if one.role is Role.TOP_RAIL_FRONT)
    pulled = pulled_screw(
        screw, before_mm, ground.rules, head_density_kg_m3=class_of(rail, ground).density_kg_m3,
        point_density_kg_m3=ground.rules.strength_class(STUD_CLASS).density_kg_m3,
    )  # fmt: skip
    return RowValue(single_n=pulled.weakest_n, pulled=pulled, assumed=pulled.assumed)


def screw_shear_n(ground: Ground, situation: Situation) -> float:
    """One ceiling screw sheared between rail and joist, packing and ceiling board between them; 0 where none is sold."""
    screw, job, rules = ground.hardware.ceiling_screw, ground.job, ground.rules
    if screw is None:
        return 0.0
    rail_mm = millimetres(job.timber.thickness_tenth_mm)
    gap_mm = millimetres(job.ceiling_lining_tenth_mm) + rules.frame.ceiling_packing_mm
    point_mm = (screw.length_mm or 0.0) - rail_mm - gap_mm
    if point_mm <= 0:
        return 0.0
    d_ef_mm = embedment.effective_diameter_mm(root_of(screw, rules), 0.0, 0.0)
    bearing_n_per_mm = embedment.plain_embedment_mpa(rules.strength_class(STUD_CLASS).density_kg_m3, d_ef_mm) * d_ef_mm
    modes_n = gapped.gapped_modes_n(
        head_n_per_mm=bearing_n_per_mm, point_n_per_mm=bearing_n_per_mm, head_length_mm=rail_mm, point_length_mm=point_mm,
        gap_mm=gap_mm, yield_n_mm=yield_moment_of(screw, rules),
    )  # fmt: skip
    return strength.design_resistance_n(min(modes_n), situation.k_mod_ratio, situation.gamma_m_ratio)


def row_resistance_n(value: RowValue, count: int, situation: Situation) -> float:
    """Design resistance of a row: n^0.9 screws act together (EN 1995-1-1 8.7.2(8))."""
    together_n = withdrawal.acting_count(count) * value.single_n
    if value.pulled is None:  # masonry keeps its own factor
        return together_n
    return strength.design_resistance_n(together_n, situation.k_mod_ratio, situation.gamma_m_ratio)
