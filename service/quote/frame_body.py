"""A Frame as it goes on the wire: tenths become millimetres, nothing else changes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.bill import place_screws
from service.checks import unit_mass_kg
from service.frame import Unit, measure_before_cutting
from service.quote.wire import (
    CeilingScrewAnswer,
    ClosureAnswer,
    CutOutAnswer,
    FrameBody,
    LevelsAnswer,
    MemberAnswer,
    OpeningAnswer,
    PanelAnswer,
    Place,
    RecessSize,
    ScrewAnswer,
    Section,
    SideFixingAnswer,
    SizesAnswer,
    StationAnswer,
    TermAnswer,
    TimberAnswer,
    WallFixingAnswer,
)
from service.units import millimetres, text_mm

if TYPE_CHECKING:
    from service.bill import ScrewPlace
    from service.brief import Job, Timber
    from service.frame import Box, CeilingScrew, Closure, Frame, Levels, Member, Panel, Recess, SideFixing, Sizes, WallFixing
    from service.rules import RuleSet


def frame_body(frame: Frame, job: Job, rules: RuleSet) -> FrameBody:
    """The whole frame on the wire."""
    return FrameBody(
        timber=_timber(job.timber),
        members=tuple(_member(member) for member in frame.members),
        panels=tuple(_panel(panel, place_screws(panel, frame, job, rules)) for panel in frame.panels),
        openings=tuple(
            OpeningAnswer(
                kind=one.kind,
                x0_mm=millimetres(one.x0_tenth_mm),
                x1_mm=millimetres(one.x1_tenth_mm),
                z0_mm=millimetres(one.z0_tenth_mm),
                z1_mm=millimetres(one.z1_tenth_mm),
            )
            for one in frame.openings
        ),
        levels=_levels(frame.levels),
        sizes=_sizes(frame.sizes),
        closure=tuple(_closure(closure) for closure in frame.closures),
        stations=tuple(
            StationAnswer(
                x_mm=millimetres(one.x_tenth_mm),
                packer_mm=millimetres(one.packer_tenth_mm),
                rear_packer_mm=millimetres(one.rear_packer_tenth_mm),
                front_packer_mm=millimetres(one.front_packer_tenth_mm),
            )
            for one in frame.stations
        ),
        wall_fixings=tuple(_wall_fixing(one) for one in frame.wall_fixings),
        ceiling_screws=tuple(_ceiling_screw(one) for one in frame.ceiling_screws),
        side_fixings=tuple(_side_fixing(one) for one in frame.side_fixings),
        base_mass_kg=round(unit_mass_kg(frame, Unit.BASE, rules), 1),
        upper_mass_kg=round(unit_mass_kg(frame, Unit.UPPER, rules), 1),
        measure_before_cutting=measure_before_cutting(frame),
        notes=frame.notes,
    )


def _wall_fixing(one: WallFixing) -> WallFixingAnswer:
    return WallFixingAnswer(
        x_mm=millimetres(one.x_tenth_mm),
        z_mm=millimetres(one.z_tenth_mm),
        counted=one.counted,
        through=one.through,
        packing_mm=millimetres(one.packing_tenth_mm),
    )


def _ceiling_screw(one: CeilingScrew) -> CeilingScrewAnswer:
    return CeilingScrewAnswer(
        x_mm=millimetres(one.x_tenth_mm),
        y_mm=millimetres(one.y_tenth_mm),
        through=one.through,
        packing_mm=millimetres(one.packing_tenth_mm),
    )


def _side_fixing(one: SideFixing) -> SideFixingAnswer:
    return SideFixingAnswer(
        left=one.left, y_mm=millimetres(one.y_tenth_mm), z_mm=millimetres(one.z_tenth_mm), through=one.through
    )


def _timber(timber: Timber) -> TimberAnswer:
    return TimberAnswer(
        thickness_mm=millimetres(timber.thickness_tenth_mm),
        width_mm=millimetres(timber.width_tenth_mm),
        strength_class=timber.strength_class,
        stock=tuple(f"{stock.code or 'custom'} {text_mm(stock.length_tenth_mm)}" for stock in timber.stock),
    )


def place(box: Box) -> Place:
    """A box on the wire."""
    return Place(
        x0_mm=millimetres(box.x0_tenth_mm),
        x1_mm=millimetres(box.x1_tenth_mm),
        y0_mm=millimetres(box.y0_tenth_mm),
        y1_mm=millimetres(box.y1_tenth_mm),
        z0_mm=millimetres(box.z0_tenth_mm),
        z1_mm=millimetres(box.z1_tenth_mm),
    )


def _member(member: Member) -> MemberAnswer:
    return MemberAnswer(
        mark=member.mark,
        role=member.role,
        unit=member.unit,
        section=Section(thickness_mm=millimetres(member.thickness_tenth_mm), width_mm=millimetres(member.width_tenth_mm)),
        strength_class=member.strength_class,
        along=member.along,
        length_mm=millimetres(member.length_tenth_mm),
        cut_length_mm=member.cut_length_mm,
        slack_mm=millimetres(member.length_tenth_mm - member.cut_length_mm * 10),
        fit=member.fit,
        cut_when=member.cut_when,
        start_joint=member.start_joint,
        end_joint=member.end_joint,
        from_bar=member.from_bar,
        reason=member.reason,
        box=place(member.box),
    )


def _panel(panel: Panel, screws: tuple[ScrewPlace, ...]) -> PanelAnswer:
    return PanelAnswer(
        mark=panel.mark,
        role=panel.role,
        layer=panel.layer,
        board_code=panel.board_code,
        thickness_mm=millimetres(panel.thickness_tenth_mm),
        width_mm=millimetres(panel.width_tenth_mm),
        height_mm=millimetres(panel.height_tenth_mm),
        cut_width_mm=panel.cut_width_mm,
        cut_height_mm=panel.cut_height_mm,
        cut_when=panel.cut_when,
        taper_mm=millimetres(panel.taper_tenth_mm),
        rise_mm=millimetres(panel.rise_tenth_mm),
        joint_below=panel.joint_below,
        joint_left=panel.joint_left,
        cut_outs=tuple(
            CutOutAnswer(
                kind=one.kind,
                x_mm=millimetres(one.x_tenth_mm),
                y_mm=millimetres(one.y_tenth_mm),
                width_mm=millimetres(one.width_tenth_mm),
                height_mm=millimetres(one.height_tenth_mm),
            )
            for one in panel.cut_outs
        ),
        screws=tuple(
            ScrewAnswer(x_mm=millimetres(one.x_tenth_mm), y_mm=millimetres(one.y_tenth_mm), z_mm=millimetres(one.z_tenth_mm))
            for one in screws
        ),
        box=place(panel.box),
    )


def _levels(levels: Levels) -> LevelsAnswer:
    def maybe(level: int | None) -> float | None:
        return None if level is None else millimetres(level)

    return LevelsAnswer(
        platform_mm=millimetres(levels.platform_tenth_mm),
        appliance_top_mm=millimetres(levels.appliance_top_tenth_mm),
        upper_top_mm=millimetres(levels.upper_top_tenth_mm),
        finished_top_mm=millimetres(levels.finished_top_tenth_mm),
        recess_sill_mm=maybe(levels.recess_sill_tenth_mm),
        recess_head_mm=maybe(levels.recess_head_tenth_mm),
        screen_centre_mm=maybe(levels.screen_centre_tenth_mm),
    )


def _sizes(sizes: Sizes) -> SizesAnswer:
    return SizesAnswer(
        finished_width_mm=millimetres(sizes.finished_width_tenth_mm),
        finished_depth_mm=millimetres(sizes.finished_depth_tenth_mm),
        frame_width_mm=millimetres(sizes.frame_width_tenth_mm),
        frame_depth_mm=millimetres(sizes.frame_depth_tenth_mm),
        rail_length_mm=millimetres(sizes.rail_length_tenth_mm),
        cross_noggin_length_mm=millimetres(sizes.cross_noggin_length_tenth_mm),
        opening_width_mm=millimetres(sizes.opening_width_tenth_mm),
        opening_height_mm=millimetres(sizes.opening_height_tenth_mm),
        upper_height_mm=millimetres(sizes.upper_height_tenth_mm),
        trimmer_span_mm=millimetres(sizes.trimmer_span_tenth_mm),
        recess_clear=_clear(sizes.recess),
        recess_framing=_framing(sizes.recess),
    )


def _clear(recess: Recess | None) -> RecessSize | None:
    if recess is None:
        return None
    return RecessSize(
        width_mm=millimetres(recess.clear_width_tenth_mm),
        height_mm=millimetres(recess.clear_height_tenth_mm),
        depth_mm=millimetres(recess.depth_tenth_mm),
    )


def _framing(recess: Recess | None) -> RecessSize | None:
    if recess is None:
        return None
    return RecessSize(
        width_mm=millimetres(recess.framing_width_tenth_mm),
        height_mm=millimetres(recess.framing_height_tenth_mm),
        depth_mm=millimetres(recess.framing_depth_tenth_mm),
    )


def _closure(closure: Closure) -> ClosureAnswer:
    sum_text = " + ".join(text_mm(term.value_tenth_mm) for term in closure.terms)
    return ClosureAnswer(
        name=closure.name,
        text=f"{sum_text} = {text_mm(closure.total_tenth_mm)} {closure.total_name}",
        terms=tuple(TermAnswer(name=term.name, value_mm=millimetres(term.value_tenth_mm)) for term in closure.terms),
        total_mm=millimetres(closure.total_tenth_mm),
    )
