"""lay_out: a job becomes a frame. It proves nothing about strength; the checks do, and hand back what to add."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame.access import access_notes
from service.frame.additions import NOTHING_ADDED
from service.frame.base import lay_base, stations
from service.frame.cladding import lay_boards
from service.frame.closures import closure_sums
from service.frame.fixings import ceiling_screws, joist_noggin_count, wall_fixings
from service.frame.frame import Frame, Levels, Opening, Sizes
from service.frame.ledge import place_ledge
from service.frame.niche import among_jambs
from service.frame.placing import mark_members
from service.frame.setting_out import set_out
from service.frame.studs import stud_places
from service.frame.surfaces import firrings, surface_notes
from service.frame.upper import lay_upper
from service.frame.walls import side_fixings, wall_notes
from service.units import tenths, text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.additions import Additions
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


def lay_out(job: Job, rules: RuleSet, additions: Additions = NOTHING_ADDED, like: Frame | None = None) -> Frame:
    """Every member, board and fixing of the breast.

    Args:
        job: what is wished and measured.
        rules: numbers of the trade.
        additions: what strengthening adds.
        like: the frame of the same job with other additions; its boards are kept where these cannot have changed them.

    Raises:
        UnbuildableError: with every inequality that is not met (`knowledge/framing.md`, section 13).
    """
    at = set_out(job, rules, additions)
    kept = like if like and additions.same_boards(like.additions) else None
    places = (*lay_base(at, job, rules), *lay_upper(at, rules))
    members = mark_members(
        places, tenths(rules.frame.shortest_bar_piece_mm), lambda role: additions.class_of(role, job.timber.strength_class)
    )
    return Frame(
        members=members,
        panels=kept.panels if kept else lay_boards(at, job, rules),
        openings=_openings(at),
        levels=_levels(at),
        sizes=_sizes(at),
        closures=closure_sums(at, job, rules),
        stations=stations(at, job) if at.z0 >= at.b else (),
        joist_noggin_count=joist_noggin_count(at, job, rules),
        wall_fixings=wall_fixings(at, job, rules, members=members),
        ceiling_screws=ceiling_screws(at, job, rules, members=members),
        ply_count=at.ply_count,
        left_open=at.left_open,
        right_open=at.right_open,
        full_height=at.full_height,
        screen_hung=at.recess is not None,
        additions=additions,
        left_wall=at.left_wall,
        right_wall=at.right_wall,
        side_fixings=side_fixings(at, rules, members),
        ledges=place_ledge(at, job, among_jambs(stud_places(at), at)),
        firrings_tenth_mm=firrings(at, job, rules),
        notes=_notes(at, job, rules),
    )


def _openings(at: SettingOut) -> tuple[Opening, ...]:
    fire = Opening(kind="fire", x0_tenth_mm=at.opening_left, x1_tenth_mm=at.opening_right, z0_tenth_mm=at.z0, z1_tenth_mm=at.z1)
    if at.recess is None:
        return (fire,)
    found = [fire]
    if at.niche:
        found.append(
            Opening(
                kind="niche",
                x0_tenth_mm=at.niche.left_tenth_mm,
                x1_tenth_mm=at.niche.right_tenth_mm,
                z0_tenth_mm=at.niche.low_tenth_mm,
                z1_tenth_mm=at.niche.high_tenth_mm,
            )
        )
    right = at.recess_left + at.recess.framing_width_tenth_mm
    return (*found, Opening(kind="recess", x0_tenth_mm=at.recess_left, x1_tenth_mm=right, z0_tenth_mm=at.zs, z1_tenth_mm=at.zh))


def _levels(at: SettingOut) -> Levels:
    hung = at.recess is not None
    return Levels(
        platform_tenth_mm=at.z0,
        appliance_top_tenth_mm=at.z1,
        upper_top_tenth_mm=at.z2,
        finished_top_tenth_mm=at.top,
        recess_sill_tenth_mm=at.zs if hung else None,
        recess_head_tenth_mm=at.zh if hung else None,
        screen_centre_tenth_mm=at.zc if hung else None,
    )


def _sizes(at: SettingOut) -> Sizes:
    open_ends = at.left_open + at.right_open
    opening = at.opening_right - at.opening_left
    return Sizes(
        finished_width_tenth_mm=at.w,
        finished_depth_tenth_mm=at.dd,
        frame_width_tenth_mm=at.wf,
        frame_depth_tenth_mm=at.df,
        rail_length_tenth_mm=at.lr,
        cross_noggin_length_tenth_mm=at.n,
        opening_width_tenth_mm=opening,
        opening_height_tenth_mm=at.az,
        upper_height_tenth_mm=at.hu,
        trimmer_span_tenth_mm=at.span,
        board_opening_width_tenth_mm=opening + open_ends * at.tf,
        recess=at.recess,
        beside_left_tenth_mm=at.beside_left,
        beside_right_tenth_mm=at.beside_right,
    )


def _notes(at: SettingOut, job: Job, rules: RuleSet) -> tuple[str, ...]:
    return (
        *_packing_notes(at, rules),
        *_recess_notes(at, rules),
        *_floor_notes(at, job, rules),
        *wall_notes(at, job),
        *surface_notes(at, job, rules),
        *access_notes(at, job, rules),
    )


def _packing_notes(at: SettingOut, rules: RuleSet) -> list[str]:
    """Gaps that are packed, not framed (framing.md, sections 5 and 6)."""
    least = tenths(rules.frame.least_cheek_mm)
    gaps = [(at.cheek_gap(left=left), side) for left, side in ((True, "left"), (False, "right")) if at.jack_at(left=left)]
    notes = [f"pack the {text_mm(gap)} between jack and ladder at the {side}" for gap, side in gaps if 0 < gap < least]
    if at.recess and not at.recess.full_width and 0 < at.recess.jamb_gap_tenth_mm <= least:
        notes.append(f"pack the {text_mm(at.recess.jamb_gap_tenth_mm)} between jamb and ladder at both sides")
    return notes


def _recess_notes(at: SettingOut, rules: RuleSet) -> list[str]:
    if at.recess is None:
        return []
    rest = at.recess.rest_behind_bearers_tenth_mm
    if rest >= tenths(rules.frame.least_cable_space_mm):
        return []
    return [f"only {text_mm(rest)} behind the bearers: bring the cables in beside them"]


def _floor_notes(at: SettingOut, job: Job, rules: RuleSet) -> list[str]:
    notes = []
    if at.z0 > tenths(rules.frame.high_platform_mm):
        notes.append(f"a platform of {text_mm(at.z0)} lifts the fire above seated eye height: please confirm")
    fall = max(station.packer_tenth_mm for station in stations(at, job))
    if fall > tenths(rules.frame.greatest_packer_mm):
        notes.append(f"the floor falls by {text_mm(fall)}: a timber sole piece instead of packers")
    elif fall > 0 and at.z0 < at.b:
        notes.append(f"the floor falls by {text_mm(fall)}: pack up what stands on it at the low side")
    return notes
