"""Heat and air in the void behind the face, in the screen's recess, and on the wall above the outlet.

A second line behind the maker's manual: it warns and permits nothing that the manual forbids (`knowledge/heat.md`, 1 and 3 to 6).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.check import Check, Quantity, Skipped
from service.checks.clearances import FIRE, MANUAL, SCREEN, outlet_to_screen_mm, own_figures
from service.engineering import cavity, damp, plume, power
from service.frame import Layer
from service.rules import Source
from service.survey.appliance import AirMayFace, AirPosition

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground

VOID_TEMPERATURE = "heat.void_temperature"
VOID_MOVEMENT = "heat.void_movement"
AIR_INLET = "heat.air_inlet"
AIR_OUTLET = "heat.air_outlet"
RECESS_TEMPERATURE = "heat.recess_temperature"
WALL_PLUME = "heat.wall_plume"
HOT_JET = "heat.hot_jet"

VOID, RECESS = "void", "recess"
BALANCE: Final = Source(document="energy balance and stack flow", clause="CIBSE AM10, two openings in series, from memory")
PLUME: Final = Source(document="Chen and Rodi", edition="1980", clause="plane plume, from memory")
THROUGH_VOID: Final = frozenset({AirPosition.SIDE.value, AirPosition.REAR.value})
MM2_PER_M2, MM_PER_M, TENTHS2_PER_M2 = 1e6, 1_000.0, 1e8


def void_checks(ground: Ground) -> tuple[Result, ...]:
    """How warm the void gets, and the free area that the maker asks."""
    return (*_void(ground), _inlet(ground), _outlet(ground))


def recess_checks(ground: Ground) -> tuple[Result, ...]:
    """How warm the screen's recess gets, and the warm air that climbs to it."""
    return (_recess(ground), _plume(ground), _jet(ground))


def void_deg_c(ground: Ground) -> float:
    """Temperature that the void may reach with the heater on: no openings, heat through the faces to the room only."""
    rise_k = cavity.cavity_rise_k(_void_w(ground), 0.0, _loss_w_per_k(ground))
    return ground.rules.heat.design_room_deg_c + ground.rules.heat.uncertainty_ratio * rise_k


def _void_w(ground: Ground) -> float:
    heat = ground.rules.heat
    rated_w = ground.job.appliance.heat_output_w
    return cavity.cavity_power_w(rated_w, share_ratio=heat.cavity_share_ratio, least_w=heat.cavity_least_w)


def _loss_w_per_k(ground: Ground) -> float:
    """Through faces, returns and lid to the room; the host wall is left out."""
    heat, films = ground.rules.heat, 2.0 * ground.rules.heat.inside_film_m2_k_per_w
    conductivities = {"mdf": heat.mdf_w_per_m_k, "plasterboard": heat.plasterboard_w_per_m_k}
    boards = {Layer.FACING: ground.job.board, Layer.LID: ground.job.lid}
    total_w_per_k = 0.0
    for panel in ground.frame.panels:
        if panel.layer in boards:
            kind = boards[panel.layer].board_kind
            layer = damp.layer_m2_k_per_w(
                panel.thickness_tenth_mm / 10, conductivities.get(kind, heat.timber_w_per_m_k)
            )  # other boards let through more than timber does: the safe side
            holes = sum(hole.width_tenth_mm * hole.height_tenth_mm for hole in panel.cut_outs)
            area_m2 = (panel.width_tenth_mm * panel.height_tenth_mm - holes) / TENTHS2_PER_M2
            total_w_per_k += damp.face_loss_w_per_k(area_m2, films + layer)
    return total_w_per_k


def _void(ground: Ground) -> tuple[Result, ...]:
    if ground.job.appliance.heat_output_w <= 0:
        why = "the fire gives no heat"
        return (Skipped(code=VOID_TEMPERATURE, why=why), Skipped(code=VOID_MOVEMENT, why=why))
    if ground.job.appliance.air_inlet_position in THROUGH_VOID:
        why = "the fire draws its air through the void, so the balance of still air does not hold; its free area is checked"
        return (Skipped(code=VOID_TEMPERATURE, why=why), Skipped(code=VOID_MOVEMENT, why=why))
    reached_deg_c, heat = void_deg_c(ground), ground.rules.heat
    told_deg_c, board_deg_c = ground.job.appliance.max_void_deg_c, _board_limit_deg_c(ground)
    limit_deg_c = board_deg_c if told_deg_c is None else min(told_deg_c, board_deg_c)
    warns_deg_c = min(heat.board_warn_deg_c, heat.filler_deg_c)
    binding = _warm(ground, VOID_TEMPERATURE, reached_deg_c, limit_deg_c=limit_deg_c)
    if told_deg_c is None:
        binding = _warm(
            ground, VOID_TEMPERATURE, reached_deg_c, limit_deg_c=limit_deg_c,
            unverified="the manual states no highest temperature of the void; that of the boards is assumed",
        )  # fmt: skip
    return (binding, _warm(ground, VOID_MOVEMENT, reached_deg_c, limit_deg_c=warns_deg_c, binding=False))


def _board_limit_deg_c(ground: Ground) -> float:
    heat = ground.rules.heat
    return heat.plasterboard_deg_c if ground.job.board.board_kind == "plasterboard" else heat.board_fail_deg_c


def _warm(
    ground: Ground, code: str, reached_deg_c: float, *, limit_deg_c: float, binding: bool = True, unverified: str = ""
) -> Check:
    what = "the maker's or the boards' limit" if binding else "what joints, filler and paint stand for long"
    over = reached_deg_c > limit_deg_c
    remedy = _vents(ground, limit_deg_c) if over else "ask the maker for the highest temperature" if unverified else ""
    return Check(
        code=code, subject=VOID, binding=binding, clause=BALANCE, unverified=unverified, remedy=remedy,
        says=f"the void may reach about {reached_deg_c:.0f} degrees with the heater on; {what} is {limit_deg_c:g}",
        demand=Quantity(symbol="T void", value=reached_deg_c, unit="deg_c"),
        resistance=Quantity(symbol="limit", value=limit_deg_c, unit="deg_c"),
        inputs=(
            Quantity(symbol="P cav", value=_void_w(ground), unit="w"),
            Quantity(symbol="UA", value=_loss_w_per_k(ground), unit="w_per_k"),
            Quantity(symbol="T room", value=ground.rules.heat.design_room_deg_c, unit="deg_c"),
            Quantity(symbol="uncertainty", value=ground.rules.heat.uncertainty_ratio, unit="ratio"),
        ),
    )  # fmt: skip


def _vents(ground: Ground, limit_deg_c: float) -> str:
    """Two equal openings, low and high, that keep the void within a limit; what goes through the faces is left out."""
    heat = ground.rules.heat
    rise_k = (limit_deg_c - heat.design_room_deg_c) / heat.uncertainty_ratio
    if rise_k <= 0:
        return f"a void at {limit_deg_c:g} degrees cannot be had in a room of {heat.design_room_deg_c:g}: ask the maker"
    stack_mm = ground.frame.levels.upper_top_tenth_mm / 10 - heat.least_stack_mm
    opening_m2 = cavity.opening_for_rise_m2(
        _void_w(ground), rise_k, max(stack_mm, heat.least_stack_mm) / MM_PER_M, discharge_ratio=heat.discharge_ratio
    )
    each_mm2 = -(-cavity.equal_grille_m2(opening_m2) * MM2_PER_M2 // 100) * 100
    return (
        f"openings of {each_mm2:.0f} mm2 free area each, low and high in the face, {max(stack_mm, heat.least_stack_mm):.0f} mm "
        "apart, if the maker's manual allows them; or a larger breast"
    )


def _inlet(ground: Ground) -> Result:
    appliance = ground.job.appliance
    own = own_figures(ground)
    faces_void = own is not None and own.air_may_face is AirMayFace.VOID
    if appliance.air_inlet_position is None or appliance.air_inlet_area_mm2 is None:
        lacks = "where the fire takes its air" if appliance.air_inlet_position is None else "the free area of the air inlet"
        return Check(
            code=AIR_INLET, subject=FIRE, says="the air that the fire needs is the maker's to say", clause=MANUAL,
            demand=Quantity(symbol="asked", value=appliance.air_inlet_area_mm2 or 0.0, unit="mm2"), resistance=None,
            unverified=f"the manual does not state {lacks}", remedy=f"ask the maker: {lacks}",
        )  # fmt: skip
    if appliance.air_inlet_position not in THROUGH_VOID and not faces_void:
        place = appliance.air_inlet_position.replace("_", " ")
        why = f"the fire takes its air ({appliance.air_inlet_area_mm2:g} mm2, {place}) at its own front, which no board covers"
        return Skipped(code=AIR_INLET, why="the fire takes no air" if appliance.air_inlet_area_mm2 <= 0 else why)
    return _area(ground, AIR_INLET, appliance.air_inlet_area_mm2, "takes its air from")


def _outlet(ground: Ground) -> Result:
    own = own_figures(ground)
    asked_mm2 = (own.air_outlet_area_mm2 if own else None) or 0.0
    position = own.air_outlet_position if own else None
    if asked_mm2 <= 0 or (position is not None and position not in {AirPosition.SIDE, AirPosition.REAR}):
        return Skipped(code=AIR_OUTLET, why="the manual asks for no air outlet of the void")
    return _area(ground, AIR_OUTLET, asked_mm2, "gives its air to")


def _area(ground: Ground, code: str, asked_mm2: float, does: str) -> Check:
    """Free area from the void to the room: the faces are closed, so there is none until a grille is cut in."""
    gross_mm2 = asked_mm2 / ground.rules.heat.grille_free_ratio
    return Check(
        code=code, subject=FIRE, clause=MANUAL, says=f"the fire {does} the void, and the faces of this design are closed",
        demand=Quantity(symbol="asked", value=asked_mm2, unit="mm2"), resistance=Quantity(symbol="free", value=0.0, unit="mm2"),
        remedy=f"a grille of at least {asked_mm2:g} mm2 free area, about {gross_mm2:g} mm2 over all where none is declared; "
        "or a fire with its air at the front",
    )  # fmt: skip


def _recess(ground: Ground) -> Result:
    recess, screen, heat = ground.frame.sizes.recess, ground.job.screen, ground.rules.heat
    if recess is None or screen is None or not ground.frame.screen_hung:
        return Skipped(code=RECESS_TEMPERATURE, why="no screen hangs in a recess")
    if screen.power_w is None:
        return Check(
            code=RECESS_TEMPERATURE, subject=RECESS, clause=BALANCE, says="how warm the recess gets turns on the screen's power",
            demand=Quantity(symbol="T recess", value=heat.design_room_deg_c, unit="deg_c"), resistance=None,
            unverified="the screen's power is not stated", remedy="ask the maker of the screen for its power",
        )  # fmt: skip
    reached_deg_c = heat.design_room_deg_c + heat.uncertainty_ratio * _recess_rise_k(ground)
    limit_deg_c = heat.screen_deg_c if screen.max_ambient_deg_c is None else screen.max_ambient_deg_c
    silent = (
        "" if screen.max_ambient_deg_c is not None else f"the screen's limit is not stated; {limit_deg_c:g} degrees is assumed"
    )
    over = "more free air over and under the screen, or the maker's word on its surroundings"
    return Check(
        code=RECESS_TEMPERATURE, subject=RECESS, clause=BALANCE, unverified=silent,
        says=f"air round the screen may reach about {reached_deg_c:.0f} degrees by its own heat; its limit is {limit_deg_c:g}",
        demand=Quantity(symbol="T recess", value=reached_deg_c, unit="deg_c"),
        resistance=Quantity(symbol="limit", value=limit_deg_c, unit="deg_c"),
        inputs=(Quantity(symbol="P screen", value=screen.power_w, unit="w"),),
        remedy=over if reached_deg_c > limit_deg_c else "ask the maker of the screen for its limit" if silent else "",
    )  # fmt: skip


def _recess_rise_k(ground: Ground) -> float:
    """The recess as a void of its own: gaps under and over the screen, less the bracket's plate (`knowledge/viewing.md`, 6)."""
    recess, job, heat = ground.frame.sizes.recess, ground.job, ground.rules.heat
    if recess is None or job.screen is None:
        return 0.0
    plate_mm = job.bracket.plate_width_mm if job.bracket else 0.0
    width_mm = max(recess.clear_width_tenth_mm / 10 - plate_mm, 0.0)
    low_m2, high_m2 = (width_mm * gap / 10 / MM2_PER_M2 for gap in (job.gaps.bottom_tenth_mm, job.gaps.top_tenth_mm))
    stack_mm = job.screen.body_height_mm + (job.gaps.bottom_tenth_mm + job.gaps.top_tenth_mm) / 20
    flow = cavity.flow_per_root_rise_m3_per_s(
        cavity.opening_in_series_m2(low_m2, high_m2), stack_mm / MM_PER_M, discharge_ratio=heat.discharge_ratio
    )
    return cavity.cavity_rise_k(power.shared_w(job.screen.power_w or 0.0, heat.screen_share_ratio), flow, 0.0)


def _plume(ground: Ground) -> Result:
    """An order of magnitude, only where the maker says nothing."""
    job, there_mm = ground.job, outlet_to_screen_mm(ground)
    if not ground.frame.screen_hung or job.screen is None or job.appliance.heat_output_w <= 0:
        return Skipped(code=WALL_PLUME, why="no screen hangs over a fire that gives heat")
    if job.appliance.outlet_to_screen_least_mm is not None:
        return Skipped(code=WALL_PLUME, why="the maker's own distance from outlet to screen governs")
    if there_mm is None or there_mm <= 0:
        return Skipped(code=WALL_PLUME, why="the height of the outlet is not stated")
    width_m = job.appliance.body_width_mm / MM_PER_M
    rise_k = plume.wall_plume_rise_k(job.appliance.heat_output_w, width_m, there_mm / MM_PER_M)
    limit_deg_c = job.screen.max_ambient_deg_c or ground.rules.heat.screen_deg_c
    allowed_k = max(limit_deg_c - ground.rules.heat.design_room_deg_c, 0.0)
    higher_mm = there_mm * (rise_k / allowed_k - 1.0) if allowed_k > 0 else 0.0
    return Check(
        code=WALL_PLUME, subject=SCREEN, binding=False, clause=PLUME,
        says=f"warm air that climbs the wall may be {rise_k:.0f} K warmer than the room at the screen, by order of magnitude",
        demand=Quantity(symbol="rise", value=rise_k, unit="k"), resistance=Quantity(symbol="allowed", value=allowed_k, unit="k"),
        inputs=(Quantity(symbol="above the outlet", value=there_mm, unit="mm"),),
        unverified="an upper bound for a jet thrown forward; the maker states no distance",
        remedy=f"the screen higher by {higher_mm:.0f} mm, or as the maker's manual states" if rise_k > allowed_k else "",
    )  # fmt: skip


def _jet(ground: Ground) -> Result:
    own = own_figures(ground)
    if own is None or own.outlet_rise_k is None:
        return Skipped(code=HOT_JET, why="the manual states no rise of the air at the outlet")
    limit_k = ground.rules.heat.hot_jet_k
    over = own.outlet_rise_k > limit_k
    return Check(
        code=HOT_JET, subject=FIRE, binding=False, clause=MANUAL,
        says=f"the air leaves the fire {own.outlet_rise_k:g} K warmer than the room",
        demand=Quantity(symbol="rise", value=own.outlet_rise_k, unit="k"),
        resistance=Quantity(symbol="hot jet", value=limit_k, unit="k"),
        remedy=f"keep wood, gypsum and the screen out of the jet; a flow that warms it by less than {limit_k:g} K"
        if over else "",
    )  # fmt: skip
