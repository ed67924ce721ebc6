"""What was measured on site, put over what the survey said; measures that cannot both be true are faults.

Formula: `knowledge/framing.md`, section 2.2; what is doubtful: `knowledge/survey.md`, section 11; what is refused: house choice.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
from msgspec.structs import replace

from service.brief.job import Job, Spot
from service.survey.floor import LowEnd
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.catalogue import Catalogue
    from service.rules import RuleSet
    from service.survey.measured import BarsBought, FloorPacker, Measured

MEASURED = "/survey/measured"
TO_CEILING = f"{MEASURED}/appliance_top_to_ceiling_mm"


class Surveyed(msgspec.Struct, frozen=True, kw_only=True):
    """What the survey alone makes of the sizes that are measured again; tenths of a millimetre."""

    full_height: bool
    heights_sent: bool  # False: the height is a default, so that no measure contradicts it
    fire_top_tenth_mm: int  # over the highest point of the floor
    clear_height_tenth_mm: int
    frame_width_tenth_mm: int
    frame_depth_tenth_mm: int
    body_width_tenth_mm: int
    open_both: bool
    fall_tenth_mm: int


class Real(msgspec.Struct, frozen=True, kw_only=True):
    """Sizes as they are; differences are real less surveyed."""

    clear_height_tenth_mm: int
    wider_tenth_mm: int = 0
    deeper_tenth_mm: int = 0
    inset_tenth_mm: int | None = None  # of a fire that sets the width
    floor: tuple[Spot, ...] = ()


def take_measured(measured: Measured, surveyed: Surveyed, rules: RuleSet, notes: Notes) -> Real:
    """The sizes of the job by its measures; what differs much from the survey is a doubt, what contradicts it a fault."""
    wider = _size("frame_width_mm", measured.frame_width_mm, surveyed.frame_width_tenth_mm, rules=rules, notes=notes)
    deeper = _size("frame_depth_mm", measured.frame_depth_mm, surveyed.frame_depth_tenth_mm, rules=rules, notes=notes)
    inset = None
    if surveyed.open_both and wider:
        wider -= (surveyed.body_width_tenth_mm - surveyed.frame_width_tenth_mm - wider) % 2  # both ends alike, in whole tenths
        inset = (surveyed.body_width_tenth_mm - surveyed.frame_width_tenth_mm - wider) // 2
    return Real(
        clear_height_tenth_mm=_height(measured, surveyed, rules, notes),
        wider_tenth_mm=wider,
        deeper_tenth_mm=deeper,
        inset_tenth_mm=inset,
        floor=_floor(measured.floor_packers or (), surveyed, rules, notes),
    )


def with_floor(job: Job, floor: tuple[Spot, ...]) -> Job:
    """The job on the floor that the packers show; unchanged where none were measured."""
    if not floor:
        return job
    fall = max(spot.off_tenth_mm for spot in floor)
    return replace(job, floor_rear=floor, floor_front=floor, fall_tenth_mm=fall, low_end=LowEnd.UNKNOWN)


def check_bars(measured: Measured, job_section: tuple[int, int], catalogue: Catalogue, notes: Notes) -> None:
    """Refuse bars that nothing says the section or length of, or that the catalogue does not hold."""
    for at, one in enumerate(measured.bars_bought or ()):
        pointer = f"{MEASURED}/bars_bought/{at}"
        row = catalogue.materials.get(one.code) if one.code else None
        if one.code and (row is None or row.kind != "timber"):
            notes.contradict(
                (f"{pointer}/code",), detail=f"{one.code!r} is no stud timber of the catalogue", remedy="name section and length"
            )
        elif not one.code and not _has_sizes(one):
            remedy = "name a code, or thickness_mm, width_mm and length_mm"
            notes.contradict((pointer,), detail="bars without code, section and length cannot be cut", remedy=remedy)
        elif not one.code and (tenths(one.thickness_mm or 0), tenths(one.width_mm or 0)) != job_section:
            detail = f"{one.thickness_mm:g} x {one.width_mm:g} is not the studding of this job"
            notes.contradict((pointer,), detail=detail, remedy="name such bars by their code, which says their class")


def _has_sizes(one: BarsBought) -> bool:
    return None not in {one.thickness_mm, one.width_mm, one.length_mm}


def _height(measured: Measured, surveyed: Surveyed, rules: RuleSet, notes: Notes) -> int:
    """H by the least measure over the standing fire; a part-height breast does not follow from it."""
    if not surveyed.full_height:
        return surveyed.clear_height_tenth_mm
    values_mm = measured.appliance_top_to_ceiling_mm
    above_mm, frame = min(values_mm), rules.frame
    real, there = surveyed.fire_top_tenth_mm + tenths(above_mm), surveyed.clear_height_tenth_mm
    says = f"{above_mm:g} over the fire where the survey leaves {(there - surveyed.fire_top_tenth_mm) / 10:g}"
    if abs(real - there) > tenths(frame.measured_height_refused_mm) and surveyed.heights_sent:
        notes.contradict(
            (TO_CEILING, "/survey/room/heights"),
            detail=f"{says}: more than {frame.measured_height_refused_mm:g} apart",
            remedy="measure again, and send fire, platform_height_mm and room/heights as they are",
        )
    elif abs(real - there) > tenths(frame.measured_height_doubt_mm):
        notes.doubt(TO_CEILING, above_mm, f"{says}: measure again")
    return real


def _size(name: str, value_mm: float | None, surveyed: int, *, rules: RuleSet, notes: Notes) -> int:
    """How much larger a side of the base is than it was to be."""
    if value_mm is None:
        return 0
    frame, off = rules.frame, tenths(value_mm) - surveyed
    says = f"{value_mm:g} where the design has {surveyed / 10:g}"
    if abs(off) > tenths(frame.measured_size_refused_mm):
        notes.contradict(
            (f"{MEASURED}/{name}", "/survey/brief"),
            detail=f"{says}: more than {frame.measured_size_refused_mm:g} apart",
            remedy="measure the frame without its boards, or send the brief that the base was built by",
        )
    elif abs(off) > tenths(frame.measured_size_doubt_mm):
        notes.doubt(f"{MEASURED}/{name}", value_mm, f"{says}: measure again")
    return off


def _floor(packers: tuple[FloorPacker, ...], surveyed: Surveyed, rules: RuleSet, notes: Notes) -> tuple[Spot, ...]:
    """The floor below its highest point, as the packers show it."""
    spots = sorted((tenths(one.x_mm), tenths(one.packer_mm)) for one in packers)
    pointer = f"{MEASURED}/floor_packers"
    for one in packers:
        if tenths(one.x_mm) > surveyed.frame_width_tenth_mm + tenths(rules.frame.measured_size_refused_mm):
            notes.contradict(
                (pointer,), detail=f"a packer at {one.x_mm:g} lies beyond the frame", remedy="measure x from its left end"
            )
    if len({x for x, _ in spots}) < len(spots):
        notes.contradict((pointer,), detail="two packers lie at the same place", remedy="name each line of uprights once")
    most = max((off for _, off in spots), default=0)
    if spots and abs(most - surveyed.fall_tenth_mm) > tenths(rules.frame.measured_height_doubt_mm):
        notes.doubt(
            pointer,
            most / 10,
            f"packed {most / 10:g} where the survey has a fall of {surveyed.fall_tenth_mm / 10:g}: measure again",
        )
    return tuple(Spot(x_tenth_mm=x, off_tenth_mm=off) for x, off in spots)
