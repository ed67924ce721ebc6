"""Damp on the hidden face of a cold outside wall (`knowledge/heat.md`, section 7): advice, as the wall is the owner's."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.checks.check import Check, Quantity, Skipped
from service.engineering import damp
from service.rules import Source
from service.survey.wall import ExternalBuild, Wall

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

DEW_POINT = "heat.dew_point"
MOULD = "heat.mould"

HIDDEN = "hidden face of the wall"
DEW: Final = Source(document="EN ISO 13788", clause="surface condensation; Magnus form of WMO No. 8, from memory")
FACTOR: Final = Source(document="EN ISO 13788", clause="temperature factor at the surface")
WARM: Final = frozenset({ExternalBuild.CAVITY_INSULATED, ExternalBuild.TIMBER_FRAME})
MM_PER_M = 1_000.0


class ColdWall(msgspec.Struct, frozen=True, kw_only=True):
    """Resistances from the room to the hidden face and from room to outside, and what of them is assumed."""

    before_m2_k_per_w: float
    total_m2_k_per_w: float
    assumed: str


def damp_checks(ground: Ground) -> tuple[Result, ...]:
    """Whether room air condenses, or mould may grow, on the wall behind the breast."""
    wall = ground.job.survey.wall or Wall()
    if not wall.external:
        why = "the wall is no outside wall"
    elif wall.external_build in WARM:
        why = "an insulated outside wall stays warm enough behind a breast as a rule; its insulation is not known here"
    else:
        cold = _cold_wall(ground, wall)
        return (_dew(ground, cold), _mould(ground, cold))
    return (Skipped(code=DEW_POINT, why=why), Skipped(code=MOULD, why=why))


def _cold_wall(ground: Ground, wall: Wall) -> ColdWall:
    """Board, unventilated void, plaster, brick: a solid wall, or two leaves with an open cavity."""
    heat, job = ground.rules.heat, ground.job
    board = {"mdf": heat.mdf_w_per_m_k, "plasterboard": heat.plasterboard_w_per_m_k}.get(
        job.board.board_kind, heat.timber_w_per_m_k
    )
    before = heat.inside_film_m2_k_per_w + damp.layer_m2_k_per_w(job.board.thickness_tenth_mm / 10, board) + heat.void_m2_k_per_w
    plaster = damp.layer_m2_k_per_w(job.wall_lining_tenth_mm / 10, heat.plaster_w_per_m_k)
    if wall.external_build is ExternalBuild.CAVITY_OPEN:
        brick = 2.0 * damp.layer_m2_k_per_w(heat.leaf_mm, heat.brick_w_per_m_k) + heat.void_m2_k_per_w
        assumed = f"two leaves of {heat.leaf_mm:g} mm are assumed"
    else:
        thickness_mm = wall.thickness_mm or heat.solid_wall_mm
        brick = damp.layer_m2_k_per_w(thickness_mm, heat.brick_w_per_m_k)
        parts = [] if wall.thickness_mm else [f"a wall of {thickness_mm:g} mm is assumed"]
        parts += [] if wall.external_build is ExternalBuild.SOLID else ["solid brick is assumed"]
        assumed = ", ".join(parts)
    total = before + plaster + brick + heat.outside_film_m2_k_per_w
    return ColdWall(before_m2_k_per_w=before, total_m2_k_per_w=total, assumed=assumed)


def _face_deg_c(ground: Ground, cold: ColdWall) -> float:
    heat = ground.rules.heat
    return damp.face_deg_c(
        heat.damp_room_deg_c,
        heat.damp_outside_deg_c,
        before_m2_k_per_w=cold.before_m2_k_per_w,
        total_m2_k_per_w=cold.total_m2_k_per_w,
    )


def _dew(ground: Ground, cold: ColdWall) -> Check:
    heat = ground.rules.heat
    dew_deg_c, face_deg_c = damp.dew_point_deg_c(heat.damp_room_deg_c, heat.damp_humidity_ratio), _face_deg_c(ground, cold)
    needed = 1.0 - (dew_deg_c - heat.damp_outside_deg_c) / (heat.damp_room_deg_c - heat.damp_outside_deg_c)
    return Check(
        code=DEW_POINT, subject=HIDDEN, binding=False, clause=DEW, unverified=cold.assumed,
        says=f"the hidden face of the wall falls to {face_deg_c:.1f} degrees on a cold day; the dew point is {dew_deg_c:.1f}",
        demand=Quantity(symbol="t d", value=dew_deg_c, unit="deg_c"),
        resistance=Quantity(symbol="T face", value=face_deg_c, unit="deg_c"), inputs=_inputs(ground, cold),
        remedy=_remedy(ground, cold, needed) if dew_deg_c > face_deg_c else _settle(cold),
    )  # fmt: skip


def _mould(ground: Ground, cold: ColdWall) -> Check:
    there, asked = damp.surface_factor_ratio(cold.before_m2_k_per_w, cold.total_m2_k_per_w), ground.rules.heat.mould_ratio
    return Check(
        code=MOULD, subject=HIDDEN, binding=False, clause=FACTOR, unverified=cold.assumed,
        says=f"the hidden face keeps {there:.2f} of the way to the room's temperature; mould keeps off above {asked:g}",
        demand=Quantity(symbol="f Rsi asked", value=asked, unit="ratio"),
        resistance=Quantity(symbol="f Rsi", value=there, unit="ratio"), inputs=_inputs(ground, cold),
        remedy=_remedy(ground, cold, 1.0 - asked) if asked > there else _settle(cold),
    )  # fmt: skip


def _inputs(ground: Ground, cold: ColdWall) -> tuple[Quantity, ...]:
    heat = ground.rules.heat
    return (
        Quantity(symbol="R before the face", value=cold.before_m2_k_per_w, unit="m2_k_per_w"),
        Quantity(symbol="R of all", value=cold.total_m2_k_per_w, unit="m2_k_per_w"),
        Quantity(symbol="T room", value=heat.damp_room_deg_c, unit="deg_c"),
        Quantity(symbol="T outside", value=heat.damp_outside_deg_c, unit="deg_c"),
        Quantity(symbol="humidity", value=heat.damp_humidity_ratio, unit="ratio"),
    )


def _remedy(ground: Ground, cold: ColdWall, share: float) -> str:
    """Insulation on the wall's face that leaves so small a share of the drop before it."""
    more_m2_k_per_w = cold.before_m2_k_per_w / share - cold.total_m2_k_per_w
    thick_mm = -(-more_m2_k_per_w * ground.rules.heat.mineral_wool_w_per_m_k * MM_PER_M // 5) * 5
    return (
        f"air the void to the room low and high; or {thick_mm:.0f} mm of mineral wool on the wall with vapour control, designed "
        "by someone competent; or another wall"
    )


def _settle(cold: ColdWall) -> str:
    return "find out how the outside wall is built" if cold.assumed else ""
