"""Lay out, choose hardware, check; strengthen what fails and check again, until it passes or no step is left.

Order and limits: `knowledge/framing.md`, section 10.2. No price is read here, so no price changes a design.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import msgspec

from service.checks.ground import Ground
from service.checks.register import check
from service.checks.report import Report
from service.checks.steps import next_steps
from service.checks.stopped import stopped_by
from service.errors import UnbuildableError
from service.frame import NOTHING_ADDED, Frame, Role, Unit, lay_out
from service.hardware import Hardware, choose_hardware

if TYPE_CHECKING:
    from service.brief import Job
    from service.checks.check import Check
    from service.checks.step import Stronger
    from service.frame import Additions, Member
    from service.hardware import Shelf

type Trial = tuple[str, str, str]  # code and subject of a check, step in words

NOGGINS = frozenset({Role.CROSS_NOGGIN, Role.LADDER_NOGGIN, Role.CHEEK_NOGGIN})


class Strengthened(msgspec.Struct, frozen=True, kw_only=True):
    """One step that was taken: for which check, what was done, and what it did to the utilisation of that check."""

    check: str
    subject: str
    done: str
    before_ratio: float | None  # utilisation; None: nothing resisted
    after_ratio: float | None  # of the same check and subject; None: it is made no more, or nothing resists


class Content(msgspec.Struct, frozen=True, kw_only=True):
    """What a design is made of, in numbers that strengthening may change."""

    members_count: int
    plies_count: int
    noggins_count: int
    stations_count: int
    brackets_count: int
    wall_fixings_count: int
    wall_fixings_holding_count: int  # of these, clear of cables and in studs that were found
    ceiling_screws_count: int


class Settled(msgspec.Struct, frozen=True, kw_only=True):
    """A design that answered its checks: it passes, is provisional, or fails with no step left."""

    frame: Frame
    hardware: Hardware
    report: Report
    steps: tuple[Strengthened, ...] = ()
    laid_out: Content  # before any step

    @property
    def content(self) -> Content:
        """What the settled design is made of."""
        return content_of(self.frame)


def settle(job: Job, shelf: Shelf, additions: Additions = NOTHING_ADDED, *, base_stands: bool = False) -> Settled:
    """The design of a job, strengthened until its checks pass or no step is left.

    Args:
        job: what is wished and measured.
        shelf: what is sold, and the rules.
        additions: what to begin with.
        base_stands: the base is built, so that no step may change its members.

    Raises:
        UnbuildableError: the job cannot be laid out, or is stopped by what more of the same cannot answer.
    """
    ground = _ground_of(job, shelf, additions)
    report, laid_out = check(ground), content_of(ground.frame)
    taken: list[Strengthened] = []
    used_up: set[Trial] = set()
    kept = _base_of(ground) if base_stands else None
    while report.failing and (found := _strengthen(ground, report, shelf, used_up, kept=kept)):
        one, done, ground, report = found
        taken.append(
            Strengthened(
                check=one.code,
                subject=one.subject,
                done=done,
                before_ratio=one.utilisation_ratio,
                after_ratio=_ratio_of(one, report),
            )
        )
    if stopped := stopped_by(report, shelf.rules):
        raise UnbuildableError(stopped)
    return Settled(frame=ground.frame, hardware=ground.hardware, report=report, steps=tuple(taken), laid_out=laid_out)


def content_of(frame: Frame) -> Content:
    """Count what strengthening may change."""
    joints = [joint for member in frame.members for joint in (member.start_joint, member.end_joint)]
    return Content(
        members_count=len(frame.members),
        plies_count=frame.ply_count,
        noggins_count=sum(member.role in NOGGINS for member in frame.members),
        stations_count=len(frame.stations),
        brackets_count=sum(joint.bracket_count for joint in joints),
        wall_fixings_count=len(frame.wall_fixings),
        wall_fixings_holding_count=sum(one.counted for one in frame.wall_fixings),
        ceiling_screws_count=len(frame.ceiling_screws),
    )


def _ground_of(job: Job, shelf: Shelf, additions: Additions, like: Frame | None = None) -> Ground:
    frame = lay_out(job, shelf.rules, additions, like)
    return Ground(job=job, frame=frame, rules=shelf.rules, hardware=choose_hardware(job, shelf, additions))


def _base_of(ground: Ground) -> tuple[Member, ...]:
    return tuple(member for member in ground.frame.members if member.unit is Unit.BASE)


def _strengthen(
    ground: Ground, report: Report, shelf: Shelf, used_up: set[Trial], *, kept: tuple[Member, ...] | None
) -> tuple[Check, str, Ground, Report] | None:
    """The first step that is left, has room and helps; None where there is none. What does not help is noted as used up."""
    for one, stronger in next_steps(report.failing, ground, shelf):
        trial = (one.code, one.subject, stronger.says)
        if trial in used_up:
            continue
        made = _made(ground, shelf, stronger)
        if made and kept is not None and _base_of(made) != kept:
            made = None
        if made and _differs(ground, made) and _helps(one, after := check(made)):
            return one, stronger.says, made, after
        used_up.add(trial)
    return None


def _made(ground: Ground, shelf: Shelf, stronger: Stronger) -> Ground | None:
    try:
        return _ground_of(ground.job, shelf, stronger.additions, ground.frame)
    except UnbuildableError:  # no room for it
        return None


def _helps(one: Check, report: Report) -> bool:
    """Whether a check is nearer to its limit than before, within it, or made no more."""
    same = next((after for after in report.of(one.code) if after.subject == one.subject), None)
    if same is None or same.resistance is None or same.holds:
        return True
    return _exact_ratio(same) < _exact_ratio(one)


def _exact_ratio(one: Check) -> float:
    there = one.resistance.value if one.resistance else 0.0
    return one.demand.value / there if there > 0 else math.inf


def _differs(before: Ground, after: Ground) -> bool:
    """Whether a step changed anything: what has no room is not laid out, and counts as used up."""
    same = msgspec.structs.replace(after.frame, additions=before.frame.additions) == before.frame
    unseen = after.frame.additions.wide_packers != before.frame.additions.wide_packers  # shows in no member or fixing
    return unseen or not same or after.hardware != before.hardware


def _ratio_of(before: Check, report: Report) -> float | None:
    same = [one for one in report.of(before.code) if one.subject == before.subject]
    return same[0].utilisation_ratio if same else None
