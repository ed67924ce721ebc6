"""Boards: faces, returns and lid; the recess and the pad of a very low platform are laid beside them.

Sizes and joints: `knowledge/framing.md`, sections 2.1, 2.2 and 11; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.errors import UnbuildableError
from service.frame.access import with_access
from service.frame.base import fall_under, stations
from service.frame.frame import CutOut, Layer, PanelRole
from service.frame.joints import Column, Wanted, divide
from service.frame.ladders import noggin_levels
from service.frame.ledge import pattress_pieces
from service.frame.linings import recess_pieces
from service.frame.member import CutWhen
from service.frame.niche import among_jambs, niche_pieces
from service.frame.pads import pad_pieces
from service.frame.panels import Piece, mark_panels, passing, too_large
from service.frame.placing import box
from service.frame.studs import centre_of, cheek_stud_centres, stud_centres, stud_places
from service.frame.surfaces import rise_over_face, rise_over_return
from service.frame.walls import face_ends, free_ends
from service.units import tenths, whole_mm_nearest

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.frame import Panel
    from service.frame.joints import Strip
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


def lay_boards(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Panel, ...]:
    """All boards of a breast.

    Raises:
        UnbuildableError: a board that cannot be divided on timber to fit its sheet.
    """
    pieces = (
        *pad_pieces(at, job),
        *_faces(at, job, rules),
        *_returns(at, job, rules),
        *_lid(at, job, rules),
        *recess_pieces(at, job, rules),
        *niche_pieces(at, job, rules),
        *pattress_pieces(at, job, among_jambs(stud_places(at), at)),
    )
    if unmet := too_large(pieces, job):
        raise UnbuildableError(unmet)
    return mark_panels(pieces)


def scribe_of(job: Job, rules: RuleSet) -> int:
    """What returns and lid are cut deeper to follow the wall; a wall that leans more than that adds its lean (section 14)."""
    allowance, lean = tenths(rules.frame.scribe_mm), tenths(job.lean_mm)
    return allowance + lean if lean > allowance else allowance


def _faces(at: SettingOut, job: Job, rules: RuleSet) -> list[Piece]:
    pieces: list[Piece] = []
    for role, wanted in _wanted_faces(at, job, rules):
        pieces += [
            _facing(role, strip, at, job, x=(strip.left_tenth_mm, strip.right_tenth_mm), y=(at.df, at.df + at.t))
            for strip in divide(wanted, passing(job.board, job), rules)
        ]
    return pieces


def _wanted_faces(at: SettingOut, job: Job, rules: RuleSet) -> list[tuple[PanelRole, Wanted]]:
    left, right = face_ends(at, job, rules)
    wanted: list[tuple[PanelRole, Wanted]] = []
    if at.z0 > 0:
        grow, columns = fall_under((0, at.wf), at.wf, job), _base_columns(at, job, rules)
        wanted.append(
            (
                PanelRole.FACE_BASE,
                Wanted(
                    low_tenth_mm=0,
                    high_tenth_mm=at.z0,
                    left_tenth_mm=left,
                    right_tenth_mm=right,
                    grow_low_tenth_mm=grow,
                    columns=columns,
                ),
            )
        )
    if not at.left_open:
        wanted.append((PanelRole.FACE_CHEEK_LEFT, _cheek(at, job, rules, left=True)))
    if not at.right_open:
        wanted.append((PanelRole.FACE_CHEEK_RIGHT, _cheek(at, job, rules, left=False)))
    rails = _jointable(_rails(at), at, rules)
    upper = Wanted(
        low_tenth_mm=at.z1,
        high_tenth_mm=at.zf,
        left_tenth_mm=left,
        right_tenth_mm=right,
        grow_high_tenth_mm=rise_over_face(at, job, (left, right)),
        heights_tenth_mm=rails,
        columns=_upper_columns(at, rules),
    )
    return [*wanted, (PanelRole.FACE_UPPER, upper)]


def _rails(at: SettingOut) -> tuple[int, ...]:
    """Centre lines of the rails that run the whole width of the face."""
    lowest = (at.niche_joint,) if at.niche else ()
    return (*lowest, at.sill_joint, *((at.head_joint,) if at.recess else ()))


def _cheek(at: SettingOut, job: Job, rules: RuleSet, *, left: bool) -> Wanted:
    frame, ends = (0, at.opening_left) if left else (at.opening_right, at.wf), face_ends(at, job, rules)
    grow = fall_under(frame, at.wf, job) if at.z0 == 0 else 0
    studs = _jointable(cheek_stud_centres(at, rules, left=left), at, rules)
    return Wanted(
        low_tenth_mm=at.z0,
        high_tenth_mm=at.z1,
        left_tenth_mm=ends[0] if left else frame[0],
        right_tenth_mm=frame[1] if left else ends[1],
        grow_low_tenth_mm=grow,
        columns=tuple(Column(centre_tenth_mm=one, foot_tenth_mm=at.z0, head_tenth_mm=at.z1) for one in studs),
    )


def _jointable(centres: tuple[int, ...], at: SettingOut, rules: RuleSet) -> tuple[int, ...]:
    """Centre lines that a joint may lie on: none where the narrow side leaves too little timber each side of it."""
    return centres if at.b // 2 >= tenths(rules.frame.joint_support_mm) else ()


def _base_columns(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Column, ...]:
    inner = tuple(station.x_tenth_mm + at.b // 2 for station in stations(at, job)[1:-1])
    return tuple(Column(centre_tenth_mm=one, foot_tenth_mm=0, head_tenth_mm=at.z0) for one in _jointable(inner, at, rules))


def _upper_columns(at: SettingOut, rules: RuleSet) -> tuple[Column, ...]:
    """Studs that a vertical joint over the fire may stand on, with the stretch that each runs through.

    Between sill and head, where the opening of the recess leaves only a border on the two rails, a joint may stand in line
    with a cripple: both sides of it lie on the rails.
    """
    centres = _jointable(stud_centres(at), at, rules)
    if at.recess is None:
        return tuple(Column(centre_tenth_mm=one, foot_tenth_mm=at.z1, head_tenth_mm=at.zf) for one in centres)
    stretches = [(at.sill_joint, at.head_joint, centres), (at.head_joint, at.zf, centres)]
    if at.niche:
        under = _jointable(tuple(centre_of(place) for place in among_jambs(stud_places(at), at)), at, rules)
        stretches += [(at.z1, at.niche_joint, under), (at.niche_joint, at.sill_joint, under)]
    else:
        stretches.append((at.z1, at.sill_joint, centres))
    parts = [
        Column(centre_tenth_mm=one, foot_tenth_mm=foot, head_tenth_mm=head) for foot, head, found in stretches for one in found
    ]
    through = [one for one in centres if all(any(abs(one - other) <= 1 for other in found) for _foot, _head, found in stretches)]
    beside = [one for one in through if not _inside_opening(one, at)]
    return (*parts, *(Column(centre_tenth_mm=one, foot_tenth_mm=at.z1, head_tenth_mm=at.zf) for one in beside))


def _inside_opening(centre: int, at: SettingOut) -> bool:
    """Whether a line stands before the recess or the niche."""
    recess = at.recess is not None and at.recess_left < centre < at.recess_left + at.recess.framing_width_tenth_mm
    return recess or (at.niche is not None and at.niche.left_tenth_mm < centre < at.niche.right_tenth_mm)


def _facing(role: PanelRole, strip: Strip, at: SettingOut, job: Job, *, x: Range, y: Range) -> Piece:
    to_ceiling = at.full_height and strip.high_tenth_mm == at.zf
    return Piece(
        role=role,
        layer=Layer.FACING,
        board=job.board,
        width_tenth_mm=strip.right_tenth_mm - strip.left_tenth_mm,
        height_tenth_mm=strip.high_tenth_mm - strip.low_tenth_mm + strip.grow_tenth_mm + strip.rise_tenth_mm,
        cut_width_mm=strip.cut_width_mm,
        cut_height_mm=strip.cut_height_mm,
        box=box(x, y, (strip.low_tenth_mm, strip.high_tenth_mm)),
        cut_when=CutWhen.AFTER_MEASURE if to_ceiling else CutWhen.NOW,
        cut_outs=_cut_outs(strip, at, job) if role is PanelRole.FACE_UPPER else (),
        taper_tenth_mm=strip.grow_tenth_mm,
        rise_tenth_mm=strip.rise_tenth_mm,
        joint_below=strip.joint_below,
        joint_left=strip.joint_left,
    )


def _cut_outs(strip: Strip, at: SettingOut, job: Job) -> tuple[CutOut, ...]:
    """What the clear openings of recess and niche take out of a strip of the upper face."""
    if at.recess is None:
        return ()
    x, z = (at.recess_left, at.recess_left + at.recess.framing_width_tenth_mm), (at.zs, at.zh)
    found = [_cut_out("recess", strip, job, x=x, z=z)]
    if at.niche:
        x, z = (at.niche.left_tenth_mm, at.niche.right_tenth_mm), (at.niche.low_tenth_mm, at.niche.high_tenth_mm)
        found.append(_cut_out("niche", strip, job, x=x, z=z))
    return tuple(one for one in found if one)


def _cut_out(kind: str, strip: Strip, job: Job, *, x: Range, z: Range) -> CutOut | None:
    """The part of a lined opening that lies in a strip."""
    lining = job.lining.thickness_tenth_mm
    left, right = max(x[0] + lining, strip.left_tenth_mm), min(x[1] - lining, strip.right_tenth_mm)
    low, high = max(z[0] + lining, strip.low_tenth_mm), min(z[1] - lining, strip.high_tenth_mm)
    if right <= left or high <= low:
        return None
    return CutOut(
        kind=kind,
        x_tenth_mm=left - strip.left_tenth_mm,
        y_tenth_mm=low - strip.low_tenth_mm,
        width_tenth_mm=right - left,
        height_tenth_mm=high - low,
    )


def _returns(at: SettingOut, job: Job, rules: RuleSet) -> list[Piece]:
    scribe = scribe_of(job, rules)
    pieces: list[Piece] = []
    for left, x in free_ends(at):
        for role, wanted in with_access(_wanted_returns(at, job, rules, left=left), at, job, rules, left=left):
            pieces += [
                _facing(role, strip, at, job, x=x, y=(strip.left_tenth_mm - scribe, strip.right_tenth_mm - scribe))
                for strip in divide(wanted, passing(job.board, job), rules)
            ]
    return pieces


def _wanted_returns(at: SettingOut, job: Job, rules: RuleSet, *, left: bool) -> list[tuple[PanelRole, Wanted]]:
    """One board floor to top at a closed end; below and above the glass at an open one."""
    side = "left" if left else "right"
    end = 0 if left else at.wf
    grow = fall_under((end, end), at.wf, job)
    depth = at.df + scribe_of(job, rules)
    levels = tuple((one.low_tenth_mm + one.high_tenth_mm) // 2 for one in noggin_levels(at, rules, left=left) if not one.flat)
    corners = (at.z0, at.z1, *((at.zs, at.zh) if at.recess else ()), *((at.zn,) if at.niche else ()))
    if not (at.left_open if left else at.right_open):
        whole = Wanted(
            low_tenth_mm=0,
            high_tenth_mm=at.zf,
            left_tenth_mm=0,
            right_tenth_mm=depth,
            grow_low_tenth_mm=grow,
            grow_high_tenth_mm=rise_over_return(at, job, end),
            heights_tenth_mm=levels,
            corners_tenth_mm=corners,
        )
        return [(PanelRole(f"return_{side}"), whole)]
    upper = (
        PanelRole(f"return_upper_{side}"),
        Wanted(
            low_tenth_mm=at.z1,
            high_tenth_mm=at.zf,
            left_tenth_mm=0,
            right_tenth_mm=depth,
            grow_high_tenth_mm=rise_over_return(at, job, end),
            heights_tenth_mm=levels,
            corners_tenth_mm=corners,
        ),
    )
    base = (
        PanelRole(f"return_base_{side}"),
        Wanted(low_tenth_mm=0, high_tenth_mm=at.z0, left_tenth_mm=0, right_tenth_mm=depth, grow_low_tenth_mm=grow),
    )
    return [base, upper] if at.z0 > 0 else [upper]


def _lid(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Piece, ...]:
    if at.full_height:
        return ()
    scribe = scribe_of(job, rules)
    ends, depth = face_ends(at, job, rules), at.df + at.t + scribe
    width = ends[1] - ends[0]
    return (
        Piece(
            role=PanelRole.LID,
            layer=Layer.LID,
            board=job.lid,
            width_tenth_mm=width,
            height_tenth_mm=depth,
            cut_width_mm=whole_mm_nearest(width),
            cut_height_mm=whole_mm_nearest(depth),
            box=box(ends, (-scribe, at.df + at.t), (at.zf, at.top)),
        ),
    )
