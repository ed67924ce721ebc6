"""A plywood return as the plate that joins front and rear upright of a hung ladder (`knowledge/structure.md`, 5.13 c and e).

Only plywood counts: MDF creeps and has no rule, plasterboard, cement and silicate board are not in EN 1995-1-1 Table 3.1.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.catalogue import Material
from service.checks.ladder_parts import asked_of
from service.checks.pulled_screws import diameter_of, root_of, yield_moment_of
from service.engineering import deflection, embedment, fixing_groups, hung_ladder, lateral, strength
from service.frame import PanelRole, Role
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground
    from service.checks.ladder_parts import Ladder
    from service.checks.situations import Situation

PLYWOOD: Final = "plywood"
PLYWOOD_FACTORS: Final = "plywood_1"
PLYWOOD_KG_M3: Final = 500.0  # characteristic density of plywood that declares none: from memory, low (worked-checks.md, I4)
ASSUMED: Final = "assumed density of the plywood: its maker declares none"
FROM_END_MM: Final = 35.0  # of the first and last screw from the end of the upright: house choice
CLOSE_PITCH_MM: Final = 150.0  # of screws where a return holds the front: house choice (structure.md, 5.13)
UPPER_RETURNS: Final = {True: PanelRole.RETURN_UPPER_LEFT, False: PanelRole.RETURN_UPPER_RIGHT}


class Return(msgspec.Struct, frozen=True, kw_only=True):
    """A board on the two uprights of a ladder, screwed to both."""

    thickness_mm: float
    screw: Material
    levels_mm: tuple[float, ...]  # of the screws in each upright, rising
    height_mm: float
    pitch_mm: float


def plywood_return(ladder: Ladder, ground: Ground) -> Return | None:
    """The return at an open end where it is of plywood."""
    if ground.job.board.board_kind != PLYWOOD or not any(one.role is UPPER_RETURNS[ladder.left] for one in ground.frame.panels):
        return None
    screw = ground.hardware.board_screw("facing")
    thickness_mm, pitch_mm = millimetres(ground.job.board.thickness_tenth_mm), ground.rules.take_off.board_screw_pitch_mm
    return screw_on(ladder, ground, screw, thickness_mm=thickness_mm, pitch_mm=pitch_mm) if screw else None


def screw_on(ladder: Ladder, ground: Ground, screw: Material, *, thickness_mm: float, pitch_mm: float) -> Return:
    """A board over the whole of a hung ladder, screwed along both uprights."""
    uprights = [one for one in ground.frame.members if one.role is Role.LADDER_UPRIGHT]
    upright = next(one.box for one in uprights if _at(one.box.x0_tenth_mm, ladder, ground))
    low_mm, high_mm = millimetres(upright.z0_tenth_mm) + FROM_END_MM, millimetres(upright.z1_tenth_mm) - FROM_END_MM
    gaps = max(1, int((high_mm - low_mm) // pitch_mm))
    return Return(
        thickness_mm=thickness_mm, screw=screw, height_mm=high_mm - low_mm + 2 * FROM_END_MM,
        pitch_mm=(high_mm - low_mm) / gaps,
        levels_mm=tuple(low_mm + (high_mm - low_mm) * step / gaps for step in range(gaps + 1)),
    )  # fmt: skip


def return_ratio(board: Return, ladder: Ladder, situation: Situation, ground: Ground) -> float:
    """Utilisation of the screw line in the rear upright, and of the board by method A turned by a right angle."""
    asked = asked_of(ladder, situation)
    single_n = screw_n(board, ladder, situation, ground)
    down_n = situation.weight_ratio * ladder.weight_n + situation.person_ratio * ladder.person_n
    moment_n_mm = _moment_n_mm(ladder, situation)
    of_line = fixing_groups.eccentric_line_n(down_n, moment_n_mm, board.levels_mm) / single_n
    slender = min(1.0, 2 * board.height_mm / ladder.reach_mm)
    return max(of_line, asked.force_n / hung_ladder.racking_resistance_n(single_n, board.height_mm, board.pitch_mm, slender))


def screw_n(board: Return, ladder: Ladder, situation: Situation, ground: Ground) -> float:
    """F_v,Rd of one screw through plywood into an upright: EN 1995-1-1 (8.6), (8.15), (8.20), 2.3.2.1(2)."""
    screw, rules = board.screw, ground.rules
    d_ef_mm = embedment.effective_diameter_mm(root_of(screw, rules), 0.0, 0.0)
    modes_n = lateral.single_shear_modes_n(
        head_embedment_mpa=embedment.plywood_embedment_mpa(PLYWOOD_KG_M3, d_ef_mm),
        point_embedment_mpa=embedment.plain_embedment_mpa(ladder.upright.density_kg_m3, d_ef_mm),
        head_length_mm=board.thickness_mm, point_length_mm=(screw.length_mm or 0.0) - board.thickness_mm,
        diameter_mm=d_ef_mm, yield_n_mm=yield_moment_of(screw, rules),
    )  # fmt: skip
    plywood = rules.duration_factors(PLYWOOD_FACTORS).k_mod_ratio(situation.duration)
    k_mod = strength.pair_k_mod_ratio(situation.k_mod_ratio, plywood)
    return strength.design_resistance_n(min(modes_n), k_mod, situation.gamma_m_ratio)


def return_sag_mm(board: Return, ladder: Ladder, ground: Ground, creep_ratio: float) -> float:
    """How far the front comes down for good on the screws of its board."""
    slip_n_per_mm = deflection.screw_slip_n_per_mm(ladder.upright.density_mean_kg_m3, diameter_of(board.screw))
    drop_mm = hung_ladder.board_drop_mm(
        1.0, ladder.reach_mm, line_n_per_mm=len(board.levels_mm) * slip_n_per_mm,
        turning_n_mm=slip_n_per_mm * fixing_groups.centred_squares_mm2(board.levels_mm),
    )  # fmt: skip
    corner_n = hung_ladder.corner_force_n(ladder.weight_n, ladder.lever_mm, ladder.depth_mm, ladder.reach_mm)
    of_plywood = ground.rules.duration_factors(PLYWOOD_FACTORS).creep_ratio
    return drop_mm * (corner_n * (1 + strength.pair_creep_ratio(creep_ratio, of_plywood)) + ladder.person_n)


def _moment_n_mm(ladder: Ladder, situation: Situation) -> float:
    """About the line of screws in the rear upright: G (e - d/2) + Q (y_Q - d/2)."""
    half_mm = ladder.depth_mm / 2
    of_weight = situation.weight_ratio * ladder.weight_n * (ladder.lever_mm - half_mm)
    return of_weight + situation.person_ratio * ladder.person_n * (ladder.person_mm - half_mm)


def _at(x_tenth_mm: int, ladder: Ladder, ground: Ground) -> bool:
    return (x_tenth_mm < ground.frame.sizes.frame_width_tenth_mm / 2) is ladder.left
