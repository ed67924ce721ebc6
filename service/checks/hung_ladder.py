"""Side ladders at open ends: what holds the front of the frame to the wall (`knowledge/structure.md`, 5.13).

End-grain screws along a noggin take no moment, so noggins with screws alone make a mechanism. Brackets at both ends of noggins,
or a plywood return, hold it; the two are not added.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.amounts import count, eurocode_5, force, house, length, moment, ratio
from service.checks.bracketed_noggins import LEAST_NOGGINS, UNDECLARED, bracket_ratio, bracketed_sag_mm, declared
from service.checks.check import Check, Skipped
from service.checks.ground import hangs_ladders
from service.checks.hung_weight import hung_load
from service.checks.ladder_parts import asked_of, cases_of, half_way_mm, open_ladders
from service.checks.return_board import ASSUMED, CLOSE_PITCH_MM, plywood_return, return_ratio, return_sag_mm, screw_n, screw_on
from service.checks.timber import solid_timber

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.checks.check import Quantity, Result
    from service.checks.ground import Ground
    from service.checks.ladder_parts import Case, Ladder
    from service.checks.paths import Paths
    from service.checks.return_board import Return

FRONT: Final = "structure.hung_ladder"
PLYWOOD_MM: Final = 18.0  # of the backboard, whose screws hold a plywood return as well
UNTIL: Final = "until then it may hang only with the ceiling joists confirmed"


def hung_ladder_checks(ground: Ground, paths: Paths | None) -> tuple[Result, ...]:
    """What holds the front of each open end."""
    if paths is None or not hangs_ladders(ground):
        why = "no end is open" if paths is None else "the rule set leaves the side ladders unchecked"
        return (Skipped(code=FRONT, why=why),)
    found = tuple(_front(ladder, cases_of(paths, ground), ground, paths) for ladder in open_ladders(ground, paths.load))
    return found or (Skipped(code=FRONT, why="there is no room for noggins between the uprights"),)


def front_sag_mm(ground: Ground) -> float:
    """How far the front upright at an open end comes down for good, with the trimmer that rides on it: w_f of 5.13 e.

    0 where no end is open, where the rule set leaves the side ladders unchecked, and where nothing holds the front: then its own
    check fails. What the wall fixings yield is not in it.
    """
    if not hangs_ladders(ground):
        return 0.0
    creep_ratio = solid_timber(ground).creep_ratio
    return max((_sag_mm(ladder, ground, creep_ratio) for ladder in open_ladders(ground, hung_load(ground))), default=0.0)


def _sag_mm(ladder: Ladder, ground: Ground, creep_ratio: float) -> float:
    if len(ladder.bracketed_mm) >= LEAST_NOGGINS:
        return bracketed_sag_mm(ladder, ground, creep_ratio)
    board = plywood_return(ladder, ground)
    return return_sag_mm(board, ladder, ground, creep_ratio) if board else 0.0


def _front(ladder: Ladder, cases: tuple[Case, ...], ground: Ground, paths: Paths) -> Check:
    """Brackets, else a plywood return, in their worst case; with neither nothing holds the front."""
    board = plywood_return(ladder, ground)
    if len(ladder.bracketed_mm) >= LEAST_NOGGINS:
        return _by_brackets(ladder, cases, ground, paths)
    if board is not None:
        return _by_return(board, ladder, cases, ground)
    asked = max((asked_of(ladder, one.situation) for one in cases), key=lambda one: one.racking_n_mm)
    return Check(
        code=FRONT,
        subject=f"{ladder.side} ladder",
        says="the front of the frame at the open end is not held to the wall: screws in end grain take no moment, and "
        f"{len(ladder.bracketed_mm) or 'no'} noggin of its side ladder has brackets",
        demand=moment("M_s", asked.racking_n_mm),
        resistance=moment("M_R", 0.0),
        clause=eurocode_5("8.3.1.2(4): screws in end grain take no pull"),
        inputs=_inputs(ladder),
        remedy=_remedy(ladder, cases, ground),
    )


def _by_brackets(ladder: Ladder, cases: tuple[Case, ...], ground: Ground, paths: Paths) -> Check:
    bracket, found = ground.hardware.bracket, declared(ground.hardware.bracket)
    worst, used = _worst(cases, lambda one: bracket_ratio(ladder, ladder.bracketed_mm, one.situation, ground))
    return Check(
        code=FRONT,
        subject=f"{ladder.side} ladder",
        says=f"under {worst.situation.name} brackets at {len(ladder.bracketed_mm)} noggins hold the front of the frame, by "
        f"pull and shear together{_within(worst)}",
        demand=ratio("T/R_4,5,d + V/R_1,d", used if found else 0.0),
        resistance=ratio("limit", worst.limit_ratio) if found else None,
        clause=house("5.13 b: statics of bracketed noggins, the plain sum of pull and shear"),
        inputs=(
            *_inputs(ladder), force("R_4,5", (bracket and bracket.bracket_pull_n) or 0.0),
            force("R_1", (bracket and bracket.bracket_up_n) or 0.0),
        ),
        unverified="; ".join(filter(None, ("" if found else UNDECLARED, paths.load.assumed))),
        remedy=_remedy(ladder, cases, ground) if found and used > worst.limit_ratio else "",
    )  # fmt: skip


def _by_return(board: Return, ladder: Ladder, cases: tuple[Case, ...], ground: Ground) -> Check:
    worst, used = _worst(cases, lambda one: return_ratio(board, ladder, one.situation, ground))
    return Check(
        code=FRONT,
        subject=f"{ladder.side} ladder",
        says=f"under {worst.situation.name} the plywood return holds the front of the frame with {len(board.levels_mm)} screws "
        f"in each upright{_within(worst)}",
        demand=ratio("F/F_v,Rd", used),
        resistance=ratio("limit", worst.limit_ratio),
        clause=eurocode_5("8.2.2, (8.6); 9.2.4.2, method A turned by a right angle, from memory"),
        inputs=(
            *_inputs(ladder), force("F_v,Rd", screw_n(board, ladder, worst.situation, ground)), count("m", len(board.levels_mm)),
        ),
        unverified=ASSUMED,
        remedy=_remedy(ladder, cases, ground) if used > worst.limit_ratio else "",
    )  # fmt: skip


def _worst(cases: tuple[Case, ...], ratio_of: Callable[[Case], float]) -> tuple[Case, float]:
    found = [(case, ratio_of(case)) for case in cases]
    return max(found, key=lambda one: one[1] / one[0].limit_ratio)


def _within(case: Case) -> str:
    return f"; no ceiling path, so the sum stays within {case.limit_ratio:g}" if case.limit_ratio < 1 else ""


def _inputs(ladder: Ladder) -> tuple[Quantity, ...]:
    return (
        force("G_s", ladder.weight_n), length("e", ladder.lever_mm), force("Q", ladder.person_n), length("y_Q", ladder.person_mm),
        length("n", ladder.clear_mm), length("d", ladder.depth_mm), length("a", ladder.reach_mm),
        count("k", len(ladder.bracketed_mm)),
    )  # fmt: skip


def _remedy(ladder: Ladder, cases: tuple[Case, ...], ground: Ground) -> str:
    """The first arrangement that passes: brackets on all noggins, noggins half way as well, a plywood return."""
    bracket = ground.hardware.bracket
    more_mm = half_way_mm(ladder, (bracket.length_mm if bracket else None) or 0.0)
    for levels_mm in (ladder.levels_mm, more_mm):
        if all(bracket_ratio(ladder, levels_mm, one.situation, ground) <= one.limit_ratio for one in cases):
            more = len(levels_mm) - len(ladder.levels_mm)
            added = f", {more} of them new and half way between two" if more else ""
            return f"needs brackets at both ends of {len(levels_mm)} noggins (has {len(ladder.bracketed_mm)}){added}; {UNTIL}"
    if _plywood_passes(ladder, cases, ground):
        return f"needs an {PLYWOOD_MM:g} mm plywood return with screws at {CLOSE_PITCH_MM:g} mm in both uprights; {UNTIL}"
    return f"needs a stronger bracket, deeper timber, or this end closed and standing on the base; {UNTIL}"


def _plywood_passes(ladder: Ladder, cases: tuple[Case, ...], ground: Ground) -> bool:
    screw = ground.hardware.board_screw("backboard")
    if screw is None:
        return False
    board = screw_on(ladder, ground, screw, thickness_mm=PLYWOOD_MM, pitch_mm=CLOSE_PITCH_MM)
    return all(return_ratio(board, ladder, one.situation, ground) <= one.limit_ratio for one in cases)
