"""The sums that must hold exactly, as names and numbers (`knowledge/framing.md`, section 2)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame.base import is_normal
from service.frame.frame import Closure, Term

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.frame import Recess
    from service.frame.niche import Niche
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


def closure_sums(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Closure, ...]:
    """Every closure sum of the frame."""
    last = ("packing", at.top - at.z2) if at.full_height else ("lid", at.top - at.z2)
    sums = [
        _sum("width", (_beside(at, left=True), ("frame", at.wf), _beside(at, left=False)), ("finished width", at.w)),
        _sum("frame_width", (("ladder", at.b), ("rail", at.lr), ("ladder", at.b)), ("frame width", at.wf)),
        _sum("depth", (("rear", at.d), ("noggin", at.n), ("front", at.d), ("board", at.tf)), ("finished depth", at.dd)),
        _sum("height", (("platform", at.z0), ("opening", at.az), ("upper frame", at.hu), last), ("finished height", at.top)),
    ]
    if is_normal(at, rules):
        sums.append(_sum("base", (("rail", at.b), ("upright", at.z0 - 2 * at.b), ("rail", at.b)), ("platform", at.z0)))
    elif at.z0 >= at.b:
        sums.append(_sum("base", (("pack", at.z0 - at.b), ("rail", at.b)), ("platform", at.z0)))
    sums.append(_above_fire(at))
    sums += _opening_line(at)
    if at.niche:
        sums.append(_niche_depth(at, job, at.niche))
    if at.recess:
        sums += _recess_sums(at, job, at.recess)
    return tuple(sums)


def _sum(name: str, terms: tuple[tuple[str, int], ...], total: tuple[str, int]) -> Closure:
    return Closure(
        name=name,
        terms=tuple(Term(name=term, value_tenth_mm=value) for term, value in terms),
        total_name=total[0],
        total_tenth_mm=total[1],
    )


def _beside(at: SettingOut, *, left: bool) -> tuple[str, int]:
    """What lies between the frame and the finished end."""
    name = "side packing" if (at.left_wall if left else at.right_wall) else "board"
    return name, at.beside_left if left else at.beside_right


def _above_fire(at: SettingOut) -> Closure:
    rail = ("rail", at.b)
    if at.recess is None:
        parts = (*_under_sill(at), rail, ("stud", at.hu - at.u - at.b), rail)
    else:
        niche = (("niche", at.niche.high_tenth_mm - at.niche.low_tenth_mm), rail) if at.niche else ()
        above = ("cripple", at.z2 - at.zh - 2 * at.b)
        parts = (*_under_sill(at), rail, *niche, ("recess", at.zh - at.zs), rail, above, rail)
    return _sum("face_above_fire", parts, ("upper frame", at.hu))


def _under_sill(at: SettingOut) -> tuple[tuple[str, int], ...]:
    """Trimmer and cripples; with a beam the rail behind it between two rows of cripples."""
    rail = ("rail", at.b)
    if at.ledge_rail is None:
        return (rail, ("cripple", at.u - 2 * at.b))
    low = at.ledge_rail - at.z1 - at.b
    return (rail, ("cripple", low), rail, ("cripple", at.u - 3 * at.b - low))


def _opening_line(at: SettingOut) -> list[Closure]:
    if at.left_open and at.right_open:
        return []
    left = _cheek(at, left=True)
    right = _cheek(at, left=False)
    opening = ("opening", at.opening_right - at.opening_left)
    return [_sum("opening_line", (*left, opening, *reversed(right)), ("frame width", at.wf))]


def _cheek(at: SettingOut, *, left: bool) -> tuple[tuple[str, int], ...]:
    if at.left_open if left else at.right_open:
        return ()
    gap = at.cheek_gap(left=left)
    if gap >= 0:
        return (("ladder", at.b), ("cheek", gap), ("jack", at.b))
    return (("ladder", at.b), ("packer", gap + at.b))


def _niche_depth(at: SettingOut, job: Job, niche: Niche) -> Closure:
    deep, back = niche.framing_depth_tenth_mm, job.backboard.thickness_tenth_mm
    parts = (("board", at.tf), ("lining", deep), ("backboard", back), ("rest", at.df - deep - back))
    return _sum("niche_depth", parts, ("finished depth", at.dd))


def _recess_sums(at: SettingOut, job: Job, recess: Recess) -> list[Closure]:
    sums = []
    if not recess.full_width:
        right = at.wf - at.recess_left - recess.framing_width_tenth_mm - 2 * at.b
        parts = (
            ("ladder", at.b), ("gap", recess.jamb_gap_tenth_mm), ("jamb", at.b), ("recess", recess.framing_width_tenth_mm),
            ("jamb", at.b), ("gap", right), ("ladder", at.b),
        )  # fmt: skip
        sums.append(_sum("face_width", parts, ("frame width", at.wf)))
    depth = (
        ("board", at.tf), ("lining", recess.framing_depth_tenth_mm), ("backboard", job.backboard.thickness_tenth_mm),
        ("bearer", at.b),
        ("rest", recess.rest_behind_bearers_tenth_mm),
    )  # fmt: skip
    sums.append(_sum("recess_depth", depth, ("finished depth", at.dd)))
    return sums
