"""The upper unit again from measures on site: `knowledge/framing.md`, section 2.2; `design.md`, section 1 (1287, 1291, 1289)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.errors import RequestFaultsError, UnbuildableError
from service.frame import Unit, lay_out
from service.quote import FrameDesigned, Made, make_quote
from service.quote.answers import answer_bill, answer_frame
from service.quote.recut import recut_body, without_measures
from service.quote.wire import BillDesigned
from service.rules import load_rules
from service.survey.measured import PiecesCut
from tests.examples_of import changed, faults_of, job_of, request_of
from tests.sold_examples import desk_of, sold
from tests.strategies import requests

if TYPE_CHECKING:
    from service.frame import Member
    from service.quote.wire_recut import RecutAnswer

type Request = dict[str, Any]

MEASURED = "/survey/measured"
TO_CEILING = f"{MEASURED}/appliance_top_to_ceiling_mm"
MEASURES_MM = (1287, 1291, 1289)
BAR = {"thickness_mm": 38, "width_mm": 89, "length_mm": 2400}


def low_room(**measured: object) -> Request:
    """Example A in a room of 2200: over its fire (430 + 480) the survey leaves 1290."""
    points = sold("A")["survey"]["room"]["heights"]
    low = changed(sold("A"), {"/survey/room/heights": [{**point, "height_mm": 2200} for point in points]})
    return changed(low, {MEASURED: measured}) if measured else low


def fitter(**more: object) -> Request:
    return low_room(appliance_top_to_ceiling_mm=list(MEASURES_MM), **more)


def quote_of(request: Request) -> Made:
    return make_quote(request_of(request), desk_of())


def recut_of(request: Request) -> RecutAnswer:
    body = recut_body(quote_of(request).recut)
    assert body is not None
    return body


def base_of(made: Made) -> tuple[Member, ...]:
    return tuple(member for member in made.frame.members if member.unit is Unit.BASE)


def upright_lengths(made: Made) -> list[int]:
    return sorted(
        {member.cut_length_mm for member in made.frame.members if member.mark.startswith("U-L") and member.along == "z"}
    )


def test_the_fitters_three_measures_by_hand() -> None:
    """Hu = 1287 - ca 10 - ct 10 = 1267; the survey has 2200 - 430 - 480 - 10 - 10 = 1270. So all that waits is 3 shorter."""
    plain, body = quote_of(low_room()), recut_of(fitter())
    changes = {(one.role, one.old_cut_length_mm, one.new_cut_length_mm, one.longer_mm) for one in body.members}

    assert 1267 == body.upper_height_mm
    assert 1270 == body.upper_height_before_mm
    assert [1270] == upright_lengths(plain)
    assert [1267] == upright_lengths(quote_of(fitter()))
    assert {("ladder_upright", 1270, 1267, -3), ("cripple_above", 297, 294, -3)} == changes
    assert 7 == len(body.members)
    assert {-3} == {(one.new_cut_height_mm or 0) - (one.old_cut_height_mm or 0) for one in body.panels}
    assert [("appliance_top_to_ceiling_mm", 1290, 1287, -3)] == [
        (one.measure, one.surveyed_mm, one.measured_mm, one.differs_mm) for one in body.measures
    ]


def test_without_measures_there_is_no_recut() -> None:
    answer = answer_frame(request_of(low_room()), desk_of())

    assert isinstance(answer, FrameDesigned)
    assert answer.recut is None


def test_frame_and_bill_say_what_changed_too() -> None:
    frame, bill = answer_frame(request_of(fitter()), desk_of()), answer_bill(request_of(fitter()), desk_of())

    assert isinstance(frame, FrameDesigned)
    assert isinstance(bill, BillDesigned)
    assert recut_of(fitter()) == frame.recut == bill.recut


@settings(max_examples=12)
@given(above_mm=st.floats(1191, 1389).map(lambda value: round(value, 1)))
def test_base_and_pieces_cut_now_stay_at_every_measure_that_is_not_refused(above_mm: float) -> None:
    plain, made = quote_of(low_room()), quote_of(low_room(appliance_top_to_ceiling_mm=[above_mm]))
    now = {one.mark: one.cut_length_mm for one in plain.frame.members if one.cut_when == "now" and "noggin" not in one.role}
    later = {one.mark: one.cut_length_mm for one in made.frame.members}

    assert base_of(plain) == base_of(made)
    assert now == {mark: later.get(mark) for mark in now}


@pytest.mark.parametrize(("measure_mm", "refused", "doubted"), [
    (1260, False, False), (1259.9, False, True), (1190, False, True), (1189.9, True, False), (1390, False, True),
    (1390.1, True, False),
])  # fmt: skip
def test_more_than_30_is_doubtful_and_more_than_100_refused(measure_mm: float, *, refused: bool, doubted: bool) -> None:
    """30: `knowledge/survey.md`, section 11; 100: house choice. The survey leaves 1290."""
    request = low_room(appliance_top_to_ceiling_mm=[measure_mm])
    pointers = [fault.pointer for fault in faults_of(request)] if refused else []
    doubts = [] if refused else [one.pointer for one in job_of(request).doubts]

    assert ([TO_CEILING] if refused else []) == pointers
    assert doubted == (TO_CEILING in doubts)


def test_a_height_that_was_never_sent_contradicts_nothing() -> None:
    request = changed(low_room(appliance_top_to_ceiling_mm=[1200]), {"/survey/room/heights": None})  # 2400 stands in

    assert TO_CEILING in [one.pointer for one in job_of(request).doubts]


def test_nothing_that_is_there_is_used_twice_and_nothing_is_bought_while_it_does() -> None:
    """To cut: four of 1267 and three of 294. Two bars of 2400 give one upright each, one of them the cripples as well."""
    short = quote_of(fitter(bars_bought=[{**BAR, "bars_count": 2}], offcuts_left=[{"length_mm": 1280}]))
    enough = quote_of(fitter(bars_bought=[{**BAR, "bars_count": 3}], offcuts_left=[{"length_mm": 1280}, {"length_mm": 1300}]))
    taken = {one.code: one.taken_count for one in short.plan.bars.stock}

    assert 2 == taken["on-hand-2400"]
    assert 1 == taken["on-hand-1280"]
    assert [1] == [count for code, count in taken.items() if not code.startswith("on-hand")]
    assert all(one.offcut for one in enough.plan.bars.stock if one.taken_count)
    assert 0 == enough.plan.bars.cost_minor
    assert not [line for line in enough.bill.lines if line.code.startswith("TM-") and line.packs_count]


@settings(max_examples=12)
@given(bars=st.integers(1, 4), offcuts=st.lists(st.integers(250, 1400), max_size=5))
def test_a_plan_never_takes_more_than_is_there(bars: int, offcuts: list[int]) -> None:
    left = [{"length_mm": one} for one in offcuts]
    plan = quote_of(fitter(bars_bought=[{"code": "TM-1035A", "bars_count": bars}], offcuts_left=left)).plan.bars
    used = {group.code: 0 for group in plan.groups if group.offcut}
    for group in plan.groups:
        if group.offcut:
            used[group.code] += group.bars_count
    there = {f"on-hand-{one}": offcuts.count(one) for one in offcuts} | {"bought-TM-1035A": bars}

    assert all(count <= there[code] for code, count in used.items())
    assert 7 == sum(group.bars_count * len(group.cuts) for group in plan.groups)


@pytest.mark.parametrize(("cut", "pieces"), [("none", 50), ("base", None), ("now", 7)])
def test_what_is_cut_already_is_not_cut_again(cut: str, pieces: int | None) -> None:
    body, made = recut_of(fitter(pieces_cut=cut)), quote_of(fitter(pieces_cut=cut))
    upper = [one for one in made.frame.members if one.from_bar and one.unit is Unit.UPPER]
    planned = sum(group.bars_count * len(group.cuts) for group in made.plan.bars.groups)

    assert (len(upper) if pieces is None else pieces) == body.pieces_to_cut_count == planned
    assert PiecesCut(cut) is body.pieces_cut


def test_a_wider_and_deeper_base_makes_the_rails_again() -> None:
    """The base is 4 wider and 2 deeper than designed: rails + 4, noggins + 2."""
    plain = quote_of(low_room()).frame.sizes
    wide_mm, deep_mm = plain.frame_width_tenth_mm / 10 + 4, plain.frame_depth_tenth_mm / 10 + 2
    made = quote_of(fitter(frame_width_mm=wide_mm, frame_depth_mm=deep_mm))
    sizes, body = made.frame.sizes, recut_body(made.recut)

    assert (wide_mm, deep_mm) == (sizes.frame_width_tenth_mm / 10, sizes.frame_depth_tenth_mm / 10)
    assert body is not None
    assert {"appliance_top_to_ceiling_mm", "frame_width_mm", "frame_depth_mm"} == {one.measure for one in body.measures}
    assert {4} == {one.longer_mm for one in body.members if one.role in {"trimmer", "head_rail", "top_rail_rear"}}
    assert {2} == {one.longer_mm for one in body.members if one.role == "ladder_noggin"}


@pytest.mark.parametrize(("off_mm", "refused"), [(30, False), (-30, False), (30.2, True), (-30.2, True)])
def test_a_base_of_another_size_is_refused(off_mm: float, *, refused: bool) -> None:
    """30: house choice."""
    wide_mm = round(quote_of(low_room()).frame.sizes.frame_width_tenth_mm / 10 + off_mm, 1)
    pointers = [fault.pointer for fault in faults_of(fitter(frame_width_mm=wide_mm))] if refused else []

    assert ([f"{MEASURED}/frame_width_mm"] if refused else []) == pointers
    assert refused or job_of(fitter(frame_width_mm=wide_mm)).allowance_mm == 0


def test_packers_are_taken_as_they_lie() -> None:
    """The floor falls under the right end of the base; only the packed stations and the boards down there change."""
    stations = quote_of(low_room()).frame.stations
    packers = [{"x_mm": one.x_tenth_mm / 10, "packer_mm": 4 if one is stations[-1] else 0} for one in stations]
    made = quote_of(fitter(floor_packers=packers))
    body = recut_body(made.recut)

    assert [0] * (len(stations) - 1) + [40] == [one.packer_tenth_mm for one in made.frame.stations]
    assert body is not None
    assert [("floor_packers", 0, 4)] == [
        (one.measure, one.surveyed_mm, one.measured_mm) for one in body.measures if one.x_mm is not None
    ]


@pytest.mark.parametrize(("bars", "pointer"), [
    ({"code": "TM-0000X"}, "/code"), ({"length_mm": 2400}, ""), ({**BAR, "width_mm": 63}, ""), ({"code": "BD-2015R"}, "/code"),
])  # fmt: skip
def test_bars_that_nothing_is_known_of_are_refused(bars: Request, pointer: str) -> None:
    assert [f"{MEASURED}/bars_bought/0{pointer}"] == [fault.pointer for fault in faults_of(fitter(bars_bought=[bars]))]


def test_provenance_of_a_measure_goes_with_it() -> None:
    request = changed(fitter(), {"/survey/provenance": {"/survey": "measured", TO_CEILING: "measured"}})

    assert {"/survey": "measured"} == without_measures(request_of(request)).survey.provenance
    assert quote_of(request).recut is not None


def test_a_survey_without_a_design_is_not_compared() -> None:
    """Recess and rails want 1270 - 297 = 973; a room of 1900 leaves 970, and the measure 1060."""
    points = sold("A")["survey"]["room"]["heights"]
    low = changed(sold("A"), {"/survey/room/heights": [{**point, "height_mm": 1900} for point in points]})
    body = recut_of(changed(low, {MEASURED: {"appliance_top_to_ceiling_mm": [1080]}}))

    assert not body.compared
    assert () == body.members


def test_checks_are_made_again_on_the_base_as_it_stands() -> None:
    """A base laid out by the measured job with what the survey's design had added is the base of the answer."""
    made = quote_of(fitter())
    assert made.recut is not None
    assert made.recut.surveyed is not None
    again = lay_out(made.job, load_rules(), made.recut.surveyed.frame.additions)

    assert base_of(made) == tuple(member for member in again.members if member.unit is Unit.BASE)
    assert made.settled.report.checks


@settings(max_examples=25)
@given(request=requests(), off_mm=st.integers(-100, 100))
def test_on_any_breast_the_base_stands_and_nothing_is_used_twice(request: Request, off_mm: int) -> None:
    """A room measured within what is not refused, with two bars there of every length that the job may buy."""
    try:
        plain = quote_of(request)
    except (RequestFaultsError, UnbuildableError):
        return
    job = plain.job
    above_mm = (job.clear_height_tenth_mm - job.platform_tenth_mm) / 10 - job.appliance.body_height_mm + off_mm
    bars = [{"code": one.code, "bars_count": 2} for one in job.timber.stock if one.code]
    measured = {"appliance_top_to_ceiling_mm": [round(above_mm, 1)], "bars_bought": bars}
    try:
        made = quote_of(changed(request, {MEASURED: measured}))
    except UnbuildableError:
        return
    plan, cut = made.plan.bars, recut_body(made.recut)
    taken = {one.code: one.taken_count for one in plan.stock if one.offcut}

    assert base_of(plain) == base_of(made)
    assert all(count <= 2 for count in taken.values())
    assert cut is not None
    assert cut.pieces_to_cut_count == sum(group.bars_count * len(group.cuts) for group in plan.groups) + sum(
        group.bars_count * len(group.cuts) for one in made.plan.other_bars for group in one.plan.groups
    )
    assert cut.base_unchanged
