"""Timber and room at the brackets of a hung ladder (`knowledge/structure.md`, 5.13 b)."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from service.checks.amounts import eurocode_5, house, length, ratio
from service.checks.bracketed_noggins import LEAST_NOGGINS, timber_ratios
from service.checks.cable_zones import counted_fixings
from service.checks.check import Check, Skipped
from service.checks.ground import hangs_ladders
from service.checks.ladder_parts import cases_of, open_ladders
from service.frame import Role
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.checks.ladder_parts import Case, Ladder
    from service.checks.paths import Paths

TIMBER: Final = "structure.hung_ladder_timber"
PITCH: Final = "structure.hung_ladder_pitch"
WIDTH: Final = "structure.hung_ladder_bracket_width"
CODES: Final = (TIMBER, PITCH, WIDTH)
BRACKET_OVER_MM: Final = 2.0  # that a bracket may be wider than the timber: house choice (structure.md, 5.13 b)
NO_BRACKETS: Final = "no side ladder is held by brackets at its noggins"


def ladder_timber_checks(ground: Ground, paths: Paths | None) -> tuple[Result, ...]:
    """Noggins, uprights and brackets of the hung ladders that brackets hold."""
    if paths is None or not hangs_ladders(ground):
        return tuple(Skipped(code=code, why=NO_BRACKETS) for code in CODES)
    held = [one for one in open_ladders(ground, paths.load) if len(one.bracketed_mm) >= LEAST_NOGGINS]
    cases = cases_of(paths, ground)
    found = [check for one in held for check in (_timber(one, cases, ground), _pitch(one, ground), _width(one, ground))]
    return tuple(found) or tuple(Skipped(code=code, why=NO_BRACKETS) for code in CODES)


def _timber(ladder: Ladder, cases: tuple[Case, ...], ground: Ground) -> Check:
    free_mm = _free_mm(ladder, ground)
    found = [(case, timber_ratios(ladder, case.situation, ground, free_mm)) for case in cases]
    case, ratios = max(found, key=lambda one: max(one[1].values()))
    what = max(ratios, key=lambda name: ratios[name])
    return Check(
        code=TIMBER,
        subject=f"{ladder.side} ladder",
        says=f"under {case.situation.name} {what} are asked most of the timber at the brackets"
        if what.startswith("the noggins")
        else f"under {case.situation.name} {what} is asked most of the timber at the brackets",
        demand=ratio("E/R", ratios[what]),
        resistance=ratio("limit", 1.0),
        clause=eurocode_5("6.1.5, 6.1.6, 6.1.7"),
        inputs=(*(ratio(name, value) for name, value in ratios.items()), length("l", free_mm)),
        remedy="noggins half way in every bay with room, a stronger class, or deeper timber" if ratios[what] > 1 else "",
    )


def _free_mm(ladder: Ladder, ground: Ground) -> float:
    """The longest way of the rear upright between two counted wall fixings, or all of it where there are none."""
    marks = {
        one.mark: one
        for one in ground.frame.members
        if one.role is Role.LADDER_UPRIGHT
        and one.box.y0_tenth_mm == 0
        and (one.box.x0_tenth_mm < ground.frame.sizes.frame_width_tenth_mm / 2) is ladder.left
    }
    levels = sorted(millimetres(one.z_tenth_mm) for one in counted_fixings(ground) if one.through in marks)
    whole_mm = max(millimetres(one.length_tenth_mm) for one in marks.values())
    return max((high - low for low, high in pairwise(levels)), default=whole_mm)


def _pitch(ladder: Ladder, ground: Ground) -> Check:
    """Brackets one above the other need room for their legs."""
    bracket = ground.hardware.bracket
    asked_mm = ladder.depth_mm + ((bracket.length_mm if bracket else None) or 0.0)
    least_mm = min(high - low for low, high in pairwise(ladder.bracketed_mm))
    return Check(
        code=PITCH,
        subject=f"{ladder.side} ladder",
        says=f"the nearest two noggins with brackets are {least_mm:.0f} mm apart; noggin and bracket take {asked_mm:.0f}",
        demand=length("d + leg", asked_mm),
        resistance=length("pitch", least_mm),
        clause=house("5.13 b: room for brackets one above the other"),
        remedy="leave the brackets of one of these noggins out" if least_mm < asked_mm else "",
    )


def _width(ladder: Ladder, ground: Ground) -> Check:
    bracket = ground.hardware.bracket
    wide_mm = (bracket.width_mm if bracket else None) or 0.0
    room_mm = ladder.thickness_mm + BRACKET_OVER_MM
    return Check(
        code=WIDTH,
        subject=f"{ladder.side} ladder",
        says=f"a bracket {wide_mm:g} mm wide on timber {ladder.thickness_mm:g} mm thick",
        demand=length("bracket", wide_mm),
        resistance=length("b + 2", room_mm),
        clause=house("5.13 b: a bracket is hardly wider than the timber under it"),
        remedy=f"a bracket of at most {room_mm:g} mm" if wide_mm > room_mm else "",
    )
