"""The upper frame: two ladders, the rails between them, and what stands between the rails.

Members: `knowledge/framing.md`, sections 4, 6 and 10.1; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame.frame import Additions
from service.frame.member import Axis, CutWhen, EndJoint, Fit, Role, Unit
from service.frame.placing import Place, between, box, spread_half
from service.units import tenths

if TYPE_CHECKING:
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

HUNG_ROLES = frozenset({Role.REAR_BOTTOM_RAIL, Role.REAR_MID_RAIL, Role.TOP_RAIL_REAR, Role.TOP_RAIL_FRONT})
type Range = tuple[int, int]


def lay_upper(at: SettingOut, rules: RuleSet, additions: Additions) -> tuple[Place, ...]:
    """Members of the upper frame in the order of their marks."""
    return (*_ladders(at, rules), *_rails(at, additions), *_plies(at), *_between_rails(at), *_bearers(at), *_cheeks(at, rules))


def front(at: SettingOut) -> Range:
    """The front zone F of framing.md, section 4."""
    return at.df - at.d, at.df


def rear(at: SettingOut) -> Range:
    """The rear zone R."""
    return 0, at.d


def ceiling_cut(at: SettingOut) -> CutWhen:
    """Pieces that end under the ceiling are cut after measuring; in part height nothing follows from the ceiling."""
    return CutWhen.AFTER_MEASURE if at.full_height else CutWhen.NOW


def stud_centres(at: SettingOut) -> tuple[int, ...]:
    """Centres of cripples and studs over the fire (framing.md, section 4.2), jamb centres included."""
    if at.recess is None or at.recess.full_width:
        return spread_half(at.b, 2 * at.wf - at.b, at.m)
    left, right = jamb_centres_half(at)
    outer = spread_half(at.b, left, at.m) if at.recess.jamb_gap_tenth_mm > at.m else ()
    outer_right = spread_half(right, 2 * at.wf - at.b, at.m) if at.recess.jamb_gap_tenth_mm > at.m else ()
    return (*outer, (left + 1) // 2, *spread_half(left, right, at.m), (right + 1) // 2, *outer_right)


def jamb_centres_half(at: SettingOut) -> Range:
    """Centres of the two jamb studs, in half tenths."""
    width = at.recess.framing_width_tenth_mm if at.recess else 0
    return 2 * at.recess_left - at.b, 2 * (at.recess_left + width) + at.b


def noggin_levels(at: SettingOut, rules: RuleSet, *, left: bool) -> tuple[int, ...]:
    """Undersides of the noggins of one ladder (framing.md, section 4.1)."""
    foot = at.foot(left)
    carrying = [level - at.d // 2 for level in (at.recess.row_levels_tenth_mm if at.recess else ())]
    if foot < at.z1 and at.ply_count > 0:
        carrying.append(at.z1)  # the plies need a seat there
    levels = list(carrying)
    for plain in (foot, at.z2 - at.d):
        if all(abs(plain - level) >= at.d for level in levels):
            levels.append(plain)
    levels.sort()
    pitch = tenths(rules.frame.ladder_pitch_mm)
    filled = levels[:1]
    for low, high in zip(levels, levels[1:], strict=False):
        gaps = max(-(-(high - low) // pitch), 1)
        filled += [(2 * (low * gaps + (high - low) * step) + gaps) // (2 * gaps) for step in range(1, gaps + 1)]
    return tuple(filled)


def _ladders(at: SettingOut, rules: RuleSet) -> list[Place]:
    uprights = [
        Place(
            role=Role.LADDER_UPRIGHT, unit=Unit.UPPER, box=box(x, zone, (at.foot(left), at.z2)), along=Axis.Z, fit=Fit.THROUGH,
            cut_when=ceiling_cut(at), start=EndJoint.NONE, end=EndJoint.NONE,
        )
        for left, x in ((True, (0, at.b)), (False, (at.wf - at.b, at.wf)))
        for zone in (front(at), rear(at))
    ]  # fmt: skip
    noggins = [
        Place(
            role=Role.LADDER_NOGGIN, unit=Unit.UPPER, box=box(x, (at.d, at.df - at.d), (level, level + at.d)), along=Axis.Y, fit=Fit.BETWEEN
        )
        for left, x in ((True, (0, at.b)), (False, (at.wf - at.b, at.wf)))
        for level in noggin_levels(at, rules, left=left)
        if at.n > 0
    ]  # fmt: skip
    return [*uprights, *noggins]


def _rail(at: SettingOut, role: Role, zone: Range, low: int, joint: EndJoint, reason: str = "") -> Place:  # noqa: PLR0913, PLR0917
    return Place(
        role=role, unit=Unit.UPPER, box=box((at.b, at.wf - at.b), zone, (low, low + at.b)), along=Axis.X, fit=Fit.BETWEEN,
        start=joint, end=joint, reason=reason,
    )  # fmt: skip


def _rails(at: SettingOut, additions: Additions) -> list[Place]:
    def joint(role: Role) -> EndJoint:
        hung = role in HUNG_ROLES and (at.left_open or at.right_open)
        return EndJoint.BRACKET if hung or role.value in additions.bracketed_roles else EndJoint.SCREWED

    f, r = front(at), rear(at)
    sill_role = Role.SILL_RAIL if at.recess else Role.UPSTAND_RAIL
    sill = at.zs - at.b
    trimmer = Place(
        role=Role.TRIMMER, unit=Unit.UPPER, box=box((at.b, at.wf - at.b), f, (at.z1, at.z1 + at.b)), along=Axis.X, fit=Fit.BETWEEN,
        start=EndJoint.BEARING if at.jack_at(left=True) else EndJoint.BRACKET,
        end=EndJoint.BEARING if at.jack_at(left=False) else EndJoint.BRACKET,
    )  # fmt: skip
    rails = [trimmer, _rail(at, sill_role, f, sill, joint(sill_role))]
    if at.recess:
        rails.append(_rail(at, Role.HEAD_RAIL, f, at.zh, joint(Role.HEAD_RAIL)))
    rails += [
        _rail(at, Role.TOP_RAIL_FRONT, f, at.z2 - at.b, joint(Role.TOP_RAIL_FRONT)),
        _rail(at, Role.REAR_BOTTOM_RAIL, r, at.z1, joint(Role.REAR_BOTTOM_RAIL)),
        _rail(at, Role.REAR_MID_RAIL, r, sill, joint(Role.REAR_MID_RAIL)),
        _rail(at, Role.TOP_RAIL_REAR, r, at.z2 - at.b, joint(Role.TOP_RAIL_REAR)),
    ]
    extra_joint = EndJoint.BRACKET if at.left_open or at.right_open else joint(Role.EXTRA_REAR_RAIL)
    reason = additions.reasons[0] if additions.reasons else "added by the checks"
    rails += [_rail(at, Role.EXTRA_REAR_RAIL, r, low, extra_joint, reason) for low in additions.extra_rear_rails_tenth_mm]
    return rails


def _plies(at: SettingOut) -> list[Place]:
    return [
        Place(
            role=Role.TRIMMER_PLY, unit=Unit.UPPER,
            box=box((at.b, at.wf - at.b), (at.df - at.d - ply * at.b, at.df - at.d - (ply - 1) * at.b), (at.z1, at.z1 + at.d)),
            along=Axis.X, fit=Fit.BETWEEN, start=EndJoint.BRACKET, end=EndJoint.BRACKET,
        )
        for ply in range(1, at.ply_count + 1)
    ]  # fmt: skip


def _stud(role: Role, x: Range, at: SettingOut, z: Range, cut_when: CutWhen = CutWhen.NOW) -> Place:  # noqa: PLR0913, PLR0917
    return Place(role=role, unit=Unit.UPPER, box=box(x, front(at), z), along=Axis.Z, fit=Fit.BETWEEN, cut_when=cut_when)


def _between_rails(at: SettingOut) -> list[Place]:
    centres = [between(centre, at.b) for centre in stud_centres(at)]
    if at.recess is None:
        below = [_stud(Role.CRIPPLE_BELOW, x, at, (at.z1 + at.b, at.zs - at.b)) for x in centres if at.u > 2 * at.b]
        return [*below, *(_stud(Role.FRONT_STUD, x, at, (at.zs, at.z2 - at.b), ceiling_cut(at)) for x in centres)]
    centres = _with_exact_jambs(at, centres)
    jambs = [] if at.recess.full_width else list(_jambs(at))
    below = [_stud(Role.CRIPPLE_BELOW, x, at, (at.z1 + at.b, at.zs - at.b)) for x in centres if at.u > 2 * at.b]
    above = [_stud(Role.CRIPPLE_ABOVE, x, at, (at.zh + at.b, at.z2 - at.b), ceiling_cut(at)) for x in centres if at.z2 - at.zh > 2 * at.b]
    outside = [_stud(Role.FRONT_STUD, x, at, (at.zs, at.zh)) for x in centres if jambs and (x[1] <= jambs[0][0] or x[0] >= jambs[1][1])]
    return [*(_stud(Role.JAMB_STUD, x, at, (at.zs, at.zh)) for x in jambs), *below, *above, *outside]


def _jambs(at: SettingOut) -> tuple[Range, Range]:
    width = at.recess.framing_width_tenth_mm if at.recess else 0
    left, right = at.recess_left, at.recess_left + width
    return (left - at.b, left), (right, right + at.b)


def _with_exact_jambs(at: SettingOut, centres: list[Range]) -> list[Range]:
    """Cripples at the jambs stand exactly in line with them, also where a centre was rounded."""
    if at.recess is None or at.recess.full_width:
        return centres
    jambs = _jambs(at)
    near = [next((jamb for jamb in jambs if abs(jamb[0] - x[0]) <= 1), x) for x in centres]
    return near


def _bearers(at: SettingOut) -> list[Place]:
    if at.recess is None:
        return []
    back = at.recess.bearer_back_tenth_mm
    return [
        Place(
            role=Role.SCREEN_BEARER, unit=Unit.UPPER,
            box=box((at.b, at.wf - at.b), (back - at.b, back), (row - at.d // 2, row - at.d // 2 + at.d)),
            along=Axis.X, fit=Fit.BETWEEN, start=EndJoint.BRACKET, end=EndJoint.BRACKET,
        )
        for row in at.recess.row_levels_tenth_mm
    ]  # fmt: skip


def _cheeks(at: SettingOut, rules: RuleSet) -> list[Place]:
    """Jack studs, cheek noggins and studs beside the fire (framing.md, section 6)."""
    placed: list[Place] = []
    for left, open_end in ((True, at.left_open), (False, at.right_open)):
        if open_end:
            continue
        edge = at.opening_left if left else at.opening_right
        gap = at.cheek_gap(left)
        if gap < 0:
            width = gap + at.b
            if width > 0:
                x = (at.b, edge) if left else (edge, at.wf - at.b)
                placed.append(
                    Place(role=Role.JAMB_PACKER, unit=Unit.UPPER, box=box(x, front(at), (at.z0, at.z1)), along=Axis.Z, fit=Fit.BETWEEN, from_bar=False)
                )
            continue
        jack = (edge - at.b, edge) if left else (edge, edge + at.b)
        placed.append(_stud(Role.JACK_STUD, jack, at, (at.z0, at.z1)))
        if gap >= tenths(rules.frame.least_cheek_mm):
            placed += _framed_cheek(at, (at.b, jack[0]) if left else (jack[1], at.wf - at.b))
    order = [Role.JACK_STUD, Role.CHEEK_NOGGIN, Role.CHEEK_STUD, Role.JAMB_PACKER]
    return sorted(placed, key=lambda place: order.index(place.role))


def _framed_cheek(at: SettingOut, gap: Range) -> list[Place]:
    noggins = [
        Place(role=Role.CHEEK_NOGGIN, unit=Unit.UPPER, box=box(gap, front(at), z), along=Axis.X, fit=Fit.BETWEEN)
        for z in ((at.z0, at.z0 + at.b), (at.z1 - at.b, at.z1))
    ]
    if gap[1] - gap[0] <= at.m:
        return noggins
    centres = spread_half(2 * gap[0] - at.b, 2 * gap[1] + at.b, at.m)
    return [*noggins, *(_stud(Role.CHEEK_STUD, between(centre, at.b), at, (at.z0 + at.b, at.z1 - at.b)) for centre in centres)]
