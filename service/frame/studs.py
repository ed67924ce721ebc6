"""What stands upright between the rails of the upper frame and beside the fire.

Members and centres: `knowledge/framing.md`, sections 4, 4.2, 5 and 6; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame.member import Axis, CutWhen, Fit, Role, Unit
from service.frame.niche import among_jambs, beside_niche, niche_jambs
from service.frame.placing import Place, between, box, ceiling_cut, front, spread_half
from service.units import tenths

if TYPE_CHECKING:
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


def stud_centres(at: SettingOut) -> tuple[int, ...]:
    """Centres of cripples and studs over the fire, jamb centres included; a half tenth is rounded up."""
    if at.recess is None or at.recess.full_width:
        return spread_half(at.b, 2 * at.wf - at.b, at.m)
    left, right = (sum(jamb) for jamb in jambs(at))
    outer = at.recess.jamb_gap_tenth_mm > at.m
    return (
        *(spread_half(at.b, left, at.m) if outer else ()),
        (left + 1) // 2,
        *spread_half(left, right, at.m),
        (right + 1) // 2,
        *(spread_half(right, 2 * at.wf - at.b, at.m) if outer else ()),
    )


def jambs(at: SettingOut) -> tuple[Range, ...]:
    """Ranges of the two jamb studs along the wall; none without a recess or where the ladders are its jambs."""
    if at.recess is None or at.recess.full_width:
        return ()
    left, right = at.recess_left, at.recess_left + at.recess.framing_width_tenth_mm
    return (left - at.b, left), (right, right + at.b)


def lay_studs(at: SettingOut) -> tuple[Place, ...]:
    """Jambs, cripples and studs between the rails over the fire."""
    places = stud_places(at)
    low, high = at.z1 + at.b, at.zn - at.b
    zones = [(low, high)] if at.ledge_rail is None else [(low, at.ledge_rail), (at.ledge_rail + at.b, high)]
    below = [_stud(Role.CRIPPLE_BELOW, x, at, zone) for zone in zones for x in among_jambs(places, at) if at.u > 2 * at.b]
    below += _beside_niche(at, places)
    if at.recess is None:
        return (*below, *(_stud(Role.FRONT_STUD, x, at, (at.zs, at.z2 - at.b), cut_when=ceiling_cut(at)) for x in places))
    sides = jambs(at)
    upright = [_stud(Role.JAMB_STUD, x, at, (at.zs, at.zh)) for x in sides]
    beside = [
        _stud(Role.FRONT_STUD, x, at, (at.zs, at.zh)) for x in places if sides and (x[1] <= sides[0][0] or sides[1][1] <= x[0])
    ]
    room = at.z2 - at.zh > 2 * at.b
    above = [_stud(Role.CRIPPLE_ABOVE, x, at, (at.zh + at.b, at.z2 - at.b), cut_when=ceiling_cut(at)) for x in places if room]
    return (*upright, *below, *above, *beside)


def _beside_niche(at: SettingOut, places: list[Range]) -> list[Place]:
    """Jambs of a niche and what stands beside them."""
    if at.niche is None:
        return []
    z = (at.niche.low_tenth_mm, at.niche.high_tenth_mm)
    jambs = [_stud(Role.JAMB_STUD, x, at, z) for x in niche_jambs(at)]
    return [*jambs, *(_stud(Role.FRONT_STUD, x, at, z) for x in beside_niche(places, at))]


def stud_places(at: SettingOut) -> list[Range]:
    """Ranges of cripples and studs; those at the jambs stand exactly in line with them."""
    sides = jambs(at)
    at_jambs = {(sum(side) + 1) // 2: side for side in sides}
    return [at_jambs.get(centre) or between(centre, at.b) for centre in stud_centres(at)]


def centre_of(place: Range) -> int:
    """Centre line of a stud; a half tenth is rounded up."""
    return (place[0] + place[1] + 1) // 2


def lay_cheeks(at: SettingOut, rules: RuleSet) -> tuple[Place, ...]:
    """Jack studs, cheek noggins, studs of wide cheeks and ripped packers beside the fire."""
    closed = [left for left, is_open in ((True, at.left_open), (False, at.right_open)) if not is_open]
    jacks = [_stud(Role.JACK_STUD, _jack(at, left=left), at, (at.z0, at.z1)) for left in closed if at.jack_at(left=left)]
    packers = [packer for left in closed for packer in _packer(at, left=left)]
    framed = [(left, _cheek(at, left=left)) for left in closed if is_framed(at, rules, left=left)]
    noggins = [
        Place(role=Role.CHEEK_NOGGIN, unit=Unit.UPPER, box=box(gap, front(at), z), along=Axis.X, fit=Fit.BETWEEN)
        for _left, gap in framed
        for z in ((at.z0, at.z0 + at.b), (at.z1 - at.b, at.z1))
    ]
    studs = [
        _stud(Role.CHEEK_STUD, between(centre, at.b), at, (at.z0 + at.b, at.z1 - at.b))
        for left, _gap in framed
        for centre in cheek_stud_centres(at, rules, left=left)
    ]
    return (*jacks, *noggins, *studs, *packers)


def is_framed(at: SettingOut, rules: RuleSet, *, left: bool) -> bool:
    """Whether the cheek at a closed end is wide enough for noggins."""
    is_open = at.left_open if left else at.right_open
    return not is_open and at.cheek_gap(left=left) >= tenths(rules.frame.least_cheek_mm)


def cheek_stud_centres(at: SettingOut, rules: RuleSet, *, left: bool) -> tuple[int, ...]:
    """Centres of the studs of a cheek wider than the board allows without."""
    if not is_framed(at, rules, left=left) or at.cheek_gap(left=left) <= at.m:
        return ()
    low, high = _cheek(at, left=left)
    return spread_half(2 * low - at.b, 2 * high + at.b, at.m)


def _stud(role: Role, x: Range, at: SettingOut, z: Range, *, cut_when: CutWhen = CutWhen.NOW) -> Place:
    return Place(role=role, unit=Unit.UPPER, box=box(x, front(at), z), along=Axis.Z, fit=Fit.BETWEEN, cut_when=cut_when)


def _jack(at: SettingOut, *, left: bool) -> Range:
    return (at.opening_left - at.b, at.opening_left) if left else (at.opening_right, at.opening_right + at.b)


def _cheek(at: SettingOut, *, left: bool) -> Range:
    """The clear gap between ladder and jack."""
    return (at.b, at.opening_left - at.b) if left else (at.opening_right + at.b, at.wf - at.b)


def _packer(at: SettingOut, *, left: bool) -> list[Place]:
    """Where the ladder is the jamb: a packer ripped to what is left between it and the opening."""
    x = (at.b, at.opening_left) if left else (at.opening_right, at.wf - at.b)
    if at.jack_at(left=left) or x[1] <= x[0]:
        return []
    place = box(x, front(at), (at.z0, at.z1))
    return [Place(role=Role.JAMB_PACKER, unit=Unit.UPPER, box=place, along=Axis.Z, fit=Fit.BETWEEN, from_bar=False)]
