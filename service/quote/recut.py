"""The upper unit again from what was measured on site: what changed against the design of the survey, and what is there to cut.

Rules: `knowledge/framing.md`, section 2.2. The base stands, so no step of strengthening changes it; what strengthening had
added before stays, since it is cut or built.
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

import msgspec

from service.brief import Job
from service.checks import NOGGINS, Settled
from service.cutting import OnHand
from service.frame import CutWhen, Member, Unit
from service.quote.wire_recut import Change, MeasureTaken, RecutAnswer, RecutMember, RecutPanel
from service.survey.measured import Measured, PiecesCut
from service.units import millimetres, tenths

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.frame import Frame, Panel
    from service.survey import SurveyRequest
    from service.survey.measured import BarsBought

MEASURED = "/survey/measured"


class Recut(msgspec.Struct, frozen=True, kw_only=True):
    """What a measure made of a design."""

    measured: Measured
    job: Job  # as measured
    surveyed_job: Job
    settled: Settled
    surveyed: Settled | None  # None: the survey alone has no design
    pieces_cut: PiecesCut
    cut_already: tuple[Member, ...]


def without_measures(request: SurveyRequest) -> SurveyRequest:
    """The request as it was before anything was measured."""
    known = request.survey.provenance
    kept = None if known is None else {at: how for at, how in known.items() if not at.startswith(MEASURED)}
    survey = msgspec.structs.replace(request.survey, measured=None, provenance=kept)
    return msgspec.structs.replace(request, survey=survey)


def make_recut(measured: Measured, job: Job, settled: Settled, *, surveyed_job: Job, surveyed: Settled | None) -> Recut:
    """Put the measured design beside the surveyed one."""
    there = bool(measured.bars_bought or measured.offcuts_left)
    done = measured.pieces_cut or (PiecesCut.NOW if there else PiecesCut.NONE)
    return Recut(
        measured=measured,
        job=job,
        surveyed_job=surveyed_job,
        settled=settled,
        surveyed=surveyed,
        pieces_cut=done,
        cut_already=_cut_already(settled, surveyed, done),
    )


def _cut_already(settled: Settled, surveyed: Settled | None, done: PiecesCut) -> tuple[Member, ...]:
    """The base as it stands, and what was cut of the upper unit by the survey."""
    if done is PiecesCut.NONE:
        return ()
    base = tuple(member for member in settled.frame.members if member.unit is Unit.BASE)
    if done is PiecesCut.BASE or surveyed is None:
        return base
    upper = (member for member in surveyed.frame.members if member.unit is Unit.UPPER and member.cut_when is CutWhen.NOW)
    return (*base, *upper)


def timber_there(measured: Measured, catalogue: Catalogue) -> tuple[OnHand, ...]:
    """Bars bought and offcuts left, for the cutting."""
    bars = tuple(_bars(one, catalogue) for one in measured.bars_bought or ())
    offcuts = tuple(
        OnHand(length_tenth_mm=tenths(one.length_mm), offcuts_count=one.offcuts_count) for one in measured.offcuts_left or ()
    )
    return (*bars, *offcuts)


def _bars(one: BarsBought, catalogue: Catalogue) -> OnHand:
    if one.code is None:
        return OnHand(length_tenth_mm=tenths(one.length_mm or 0), offcuts_count=one.bars_count)
    row = catalogue.materials[one.code]
    return OnHand(
        length_tenth_mm=tenths(one.length_mm or row.length_mm or 0),
        offcuts_count=one.bars_count,
        thickness_tenth_mm=tenths(row.thickness_mm or 0),
        width_tenth_mm=tenths(row.width_mm or 0),
        strength_class=row.strength_class or "",
        code=one.code,
    )


def recut_body(recut: Recut | None) -> RecutAnswer | None:
    """What changed, on the wire; None where nothing was measured."""
    if recut is None:
        return None
    now, before = recut.settled.frame, recut.surveyed.frame if recut.surveyed else None
    members = _member_changes(before, now) if before else ()
    more = _noggins(now) - _noggins(before) if before else 0
    return RecutAnswer(
        compared=before is not None,
        upper_height_before_mm=millimetres(before.sizes.upper_height_tenth_mm) if before else None,
        upper_height_mm=millimetres(now.sizes.upper_height_tenth_mm),
        measures=_measures(recut),
        members=members,
        panels=_panel_changes(before, now) if before else (),
        members_as_before_count=len(now.members) - sum(one.change is not Change.DROPPED for one in members) if before else 0,
        base_unchanged=before is not None and _base(before) == _base(now),
        noggins_added_count=max(more, 0),
        noggins_left_over_count=max(-more, 0),
        pieces_cut=recut.pieces_cut,
        pieces_to_cut_count=_to_cut_count(recut),
    )


def _base(frame: Frame) -> tuple[Member, ...]:
    return tuple(member for member in frame.members if member.unit is Unit.BASE)


def _noggins(frame: Frame) -> int:
    return sum(member.role in NOGGINS for member in frame.members)


def _to_cut_count(recut: Recut) -> int:
    there = Counter((member.unit, member.cut_length_mm) for member in recut.cut_already if member.from_bar)
    wanted = Counter((member.unit, member.cut_length_mm) for member in recut.settled.frame.members if member.from_bar)
    return (wanted - there).total()


def _member_changes(before: Frame, now: Frame) -> tuple[RecutMember, ...]:
    """By mark, in the order of the new frame, what is dropped last."""
    old, new = {one.mark: one for one in before.members}, {one.mark: one for one in now.members}
    found = [_member_change(mark, old.get(mark), new.get(mark)) for mark in (*new, *(mark for mark in old if mark not in new))]
    return tuple(one for one in found if one is not None)


def _member_change(mark: str, old: Member | None, new: Member | None) -> RecutMember | None:
    there = new or old
    if there is None or (old and new and _cut(old) == _cut(new)):
        return None
    return RecutMember(
        mark=mark,
        role=there.role,
        unit=there.unit,
        change=_change(old, new),
        old_cut_length_mm=old.cut_length_mm if old else None,
        new_cut_length_mm=new.cut_length_mm if new else None,
        longer_mm=new.cut_length_mm - old.cut_length_mm if old and new else None,
    )


def _cut(member: Member) -> tuple[int, int, int, str]:
    return member.cut_length_mm, member.thickness_tenth_mm, member.width_tenth_mm, member.strength_class


def _panel_changes(before: Frame, now: Frame) -> tuple[RecutPanel, ...]:
    old, new = {one.mark: one for one in before.panels}, {one.mark: one for one in now.panels}
    found = [_panel_change(mark, old.get(mark), new.get(mark)) for mark in (*new, *(mark for mark in old if mark not in new))]
    return tuple(one for one in found if one is not None)


def _panel_change(mark: str, old: Panel | None, new: Panel | None) -> RecutPanel | None:
    if old and new and _board(old) == _board(new):
        return None
    there = new or old
    if there is None:
        return None
    return RecutPanel(
        mark=mark,
        role=there.role,
        change=_change(old, new),
        old_cut_width_mm=old.cut_width_mm if old else None,
        old_cut_height_mm=old.cut_height_mm if old else None,
        new_cut_width_mm=new.cut_width_mm if new else None,
        new_cut_height_mm=new.cut_height_mm if new else None,
    )


def _board(panel: Panel) -> tuple[object, ...]:
    """What is sawn of a board, wherever it hangs."""
    return panel.cut_width_mm, panel.cut_height_mm, panel.taper_tenth_mm, panel.rise_tenth_mm, panel.cut_outs


def _change(old: object, new: object) -> Change:
    if old is None:
        return Change.ADDED
    return Change.DROPPED if new is None else Change.CHANGED


def _measures(recut: Recut) -> tuple[MeasureTaken, ...]:
    """Each measure that differs from the survey, and by how much."""
    measured, job, was = recut.measured, recut.job, recut.surveyed_job
    before, now = recut.surveyed.frame if recut.surveyed else None, recut.settled.frame
    above_mm = min(measured.appliance_top_to_ceiling_mm)
    rise_mm = millimetres(job.clear_height_tenth_mm - was.clear_height_tenth_mm)
    taken = [_taken("appliance_top_to_ceiling_mm", above_mm, rise_mm)] if job.full_height else []
    if before is not None:
        old, new = before.sizes, now.sizes
        wider, deeper = new.frame_width_tenth_mm - old.frame_width_tenth_mm, new.frame_depth_tenth_mm - old.frame_depth_tenth_mm
        taken += [_taken("frame_width_mm", millimetres(new.frame_width_tenth_mm), millimetres(wider))]
        taken += [_taken("frame_depth_mm", millimetres(new.frame_depth_tenth_mm), millimetres(deeper))]
        taken += _packers(before, now) if measured.floor_packers else []
    return tuple(one for one in taken if one.differs_mm)


def _packers(before: Frame, now: Frame) -> list[MeasureTaken]:
    """The greater packer of each line of uprights."""
    return [
        _taken(
            "floor_packers",
            millimetres(new.packer_tenth_mm),
            millimetres(new.packer_tenth_mm - old.packer_tenth_mm),
            x_mm=millimetres(new.x_tenth_mm),
        )
        for old, new in zip(before.stations, now.stations, strict=False)
    ]


def _taken(measure: str, value_mm: float, differs_mm: float, x_mm: float | None = None) -> MeasureTaken:
    return MeasureTaken(
        measure=measure, x_mm=x_mm, surveyed_mm=round(value_mm - differs_mm, 1), measured_mm=value_mm, differs_mm=differs_mm
    )
