from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.cutting import (
    STANDARD,
    CuttingError,
    Defect,
    Direction,
    Effort,
    FirstCut,
    Method,
    PartKind,
    SheetLayout,
    SheetStock,
    Stopped,
    cut_sheets,
)
from service.cutting import sheets as door
from service.cutting.verify_sheets import mistakes_in_sheets
from service.errors import RequestFaultsError
from tests.cutting.jobs import PANELS_A, first_fit_decreasing_height, pinwheel, sheet_jobs, sheets

if TYPE_CHECKING:
    from service.cutting import SheetJob

type Boxes = list[tuple[int, int, int, int]]  # x, y, width, height


def test_example_a_needs_three_sheets() -> None:
    """`knowledge/worked-examples.md`, example A: three sheets by its bound; 20 more on the ceiling edge changes nothing."""
    longer = tuple((w, {679: 699, 1595: 1615}.get(h, h), count) for w, h, count in PANELS_A)

    for panels in (PANELS_A, longer):
        plan = cut_sheets(sheets(panels))

        assert (3, True, True) == (plan.sheets_count, plan.proof.first_proven, plan.proof.bought_proven)


@given(sheet_jobs())
@settings(max_examples=50)
def test_every_piece_lies_once_and_can_be_sawn_edge_to_edge(job: SheetJob) -> None:
    try:
        plan = cut_sheets(job, Effort(work_count=300))
    except RequestFaultsError:
        return
    placed = sorted(label for group in plan.groups for row in group.labels for label in row)

    assert () == mistakes_in_sheets(job, plan)
    assert not plan.search.fallback
    assert sorted(piece.label for piece in job.pieces for _ in range(piece.pieces_count)) == placed
    for group in plan.groups:
        assert sawable([(p.x_tenth_mm, p.y_tenth_mm, p.width_tenth_mm, p.height_tenth_mm) for p in group.pieces])


def sawable(boxes: Boxes) -> bool:
    """Tell whether straight cuts from edge to edge part all pieces: written for the tests alone."""
    if len(boxes) <= 1:
        return True
    for axis in (0, 1):
        for edge in {box[axis] for box in boxes}:
            low = [box for box in boxes if box[axis] + box[axis + 2] <= edge]
            high = [box for box in boxes if box[axis] >= edge]
            if low and high and len(low) + len(high) == len(boxes):
                return sawable(low) and sawable(high)
    return False


def test_what_cannot_be_sawn_is_told_apart() -> None:
    """The pinwheel: five rectangles that no straight cut parts."""
    pinwheel = [(0, 0, 2, 1), (2, 0, 1, 2), (1, 2, 2, 1), (0, 1, 1, 2), (1, 1, 1, 1)]

    assert not sawable(pinwheel)
    assert sawable(pinwheel[:3])


@given(sheet_jobs(), st.sampled_from((0, 20, 300)))
@settings(max_examples=60)
def test_never_dearer_than_first_fit_decreasing_height(job: SheetJob, work_count: int) -> None:
    job = msgspec.structs.replace(job, first_cut=FirstCut.ANY)
    least = first_fit_decreasing_height(job)
    if least is not None:
        assert cut_sheets(job, Effort(work_count=work_count)).cost_minor <= least


@given(sheet_jobs(most_panels=5))
@settings(max_examples=25)
def test_more_sheets_on_offer_never_cost_more(job: SheetJob) -> None:
    extra = SheetStock(code="MORE", width_tenth_mm=30_500, height_tenth_mm=12_200, cost_minor=2_500)
    try:
        few, many = cut_sheets(job), cut_sheets(msgspec.structs.replace(job, stock=(*job.stock, extra)))
    except RequestFaultsError:
        return

    assert many.cost_minor <= few.cost_minor or not (few.proof.first_proven and many.proof.first_proven)


@given(sheet_jobs(most_panels=5))
@settings(max_examples=25)
def test_scaling_all_sizes_changes_nothing(job: SheetJob) -> None:
    try:
        plan, larger = cut_sheets(job), cut_sheets(_scaled(job, 2))
    except RequestFaultsError:
        return

    assert (plan.cost_minor, plan.sheets_count) == (larger.cost_minor, larger.sheets_count)
    assert plan.proof.first_proven == larger.proof.first_proven


def _scaled(job: SheetJob, by: int) -> SheetJob:
    """Enlarge every length of a job."""
    grown = msgspec.json.decode(msgspec.json.encode(job))

    def grow(value: object, name: str = "") -> object:
        if isinstance(value, dict):
            return {key: grow(item, key) for key, item in value.items()}
        if isinstance(value, list):
            return [grow(item) for item in value]
        return by * value if isinstance(value, int) and name.endswith("_tenth_mm") else value

    return msgspec.convert(grow(grown), type(job))


@given(sheet_jobs(most_panels=5))
@settings(max_examples=20)
def test_the_order_of_the_job_is_no_matter(job: SheetJob) -> None:
    pieces, stock = list(job.pieces), list(job.stock)
    Random(3).shuffle(pieces)  # noqa: S311 - an order for a test
    Random(4).shuffle(stock)  # noqa: S311 - an order for a test
    shuffled = msgspec.structs.replace(job, pieces=tuple(pieces), stock=tuple(stock))
    try:
        plan = cut_sheets(job)
    except RequestFaultsError:
        return

    assert msgspec.json.encode(plan) == msgspec.json.encode(cut_sheets(shuffled))


def test_fewest_sheets_where_greedy_and_area_are_both_wrong() -> None:
    """By hand: area says 1, but 1300 x 700 cannot lie beside itself (2600 > 2440) nor above (1400 > 1220): one a sheet."""
    plan = cut_sheets(sheets([(1300, 700, 3)], kerf=0, rotatable=False))

    assert (3, True) == (plan.sheets_count, plan.proof.bought_proven)


@pytest.mark.parametrize(("first_cut", "direction"), [(FirstCut.RIP, Direction.RIP), (FirstCut.CROSS, Direction.CROSS)])
def test_the_first_cut_runs_as_asked(first_cut: FirstCut, direction: Direction) -> None:
    plan = cut_sheets(sheets(PANELS_A, first_cut=first_cut))

    assert {direction} == {next(step.direction for step in group.steps) for group in plan.groups}
    assert 3 == plan.sheets_count


def test_pieces_keep_off_a_defect() -> None:
    """By hand: the defect takes the middle; 1100 x 500 fits four times around it at 0 kerf, a fifth needs a new sheet."""
    hole = Defect(x_tenth_mm=11_000, y_tenth_mm=5_000, width_tenth_mm=2_000, height_tenth_mm=2_000)
    job = sheets([(1100, 500, 5)], kerf=0, rotatable=False, defects=(hole,))
    plan = cut_sheets(job)

    assert () == mistakes_in_sheets(job, plan)
    assert 2 == plan.sheets_count


def test_factory_edges_are_trimmed_first() -> None:
    (group,) = cut_sheets(sheets([(2000, 300, 2)], trim=50)).groups

    assert [True, True, False] == [step.trim for step in group.steps[:3]]
    assert (50, 50) == (group.pieces[0].x_tenth_mm, group.pieces[0].y_tenth_mm)


def test_equal_sheets_are_one_group_and_equal_strips_one_stop() -> None:
    """By hand: 600 x 1220 goes 4 times into 2440 with kerf 4 (2412 of 2440): 8 pieces are two equal sheets, one stop."""
    plan = cut_sheets(sheets([(600, 1220, 8)], rotatable=False))
    (group,) = plan.groups

    assert (2, 2) == (group.sheets_count, len(group.labels))
    assert [(6_000, 4)] == [(step.stop_tenth_mm, step.cuts_count) for step in group.steps]


def test_one_large_rest_is_left_rather_than_strips() -> None:
    """By hand: two strips of 2440 x 300 leave 2440 x (1220 - 2 x 304) = 2440 x 612."""
    plan = cut_sheets(sheets([(2440, 300, 2)]))

    assert [(24_400, 6_120)] == [(rest.width_tenth_mm, rest.height_tenth_mm) for rest in plan.leftovers]
    assert 24_400 == plan.proof.leftover_tenth_mm
    assert not plan.proof.leftover_proven


def test_a_piece_as_large_as_the_sheet_needs_no_cut() -> None:
    (group,) = cut_sheets(sheets([(2440, 1220, 1)])).groups

    assert () == group.steps
    assert [PartKind.PIECE] == [part.kind for part in group.parts]


def test_nothing_to_cut_costs_nothing() -> None:
    plan = cut_sheets(sheets([]))

    assert (Method.NOTHING_TO_CUT, 0, True) == (plan.search.method, plan.cost_minor, plan.proof.first_proven)


def test_too_few_copies_are_refused() -> None:
    with pytest.raises(RequestFaultsError, match="copies"):
        cut_sheets(sheets([(1300, 700, 3)], copies=2))


def test_faults_are_refused_before_any_search() -> None:
    with pytest.raises(RequestFaultsError, match="'P0'"):
        cut_sheets(sheets([(3000, 100, 1)]))


def test_the_callers_clock_ends_the_search_marked_so() -> None:
    job = sheets(PANELS_A)
    plan = cut_sheets(job, stop=lambda: True)

    assert Stopped.CLOCK_GUARD == plan.search.stopped
    assert () == mistakes_in_sheets(job, plan)


def test_a_plan_that_fails_the_check_is_replaced_by_a_greedy_one(monkeypatch: pytest.MonkeyPatch) -> None:
    answers = iter([("planted",), ()])
    monkeypatch.setattr(door, "mistakes_in_sheets", lambda _job, _plan: next(answers))
    plan = cut_sheets(sheets(PANELS_A))

    assert (True, Method.FIRST_FIT, False) == (plan.search.fallback, plan.search.method, plan.proof.first_proven)


def test_no_plan_leaves_without_passing_the_check(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(door, "mistakes_in_sheets", lambda _job, _plan: ("planted",))

    with pytest.raises(CuttingError, match="no plan passes"):
        cut_sheets(sheets(PANELS_A))


def test_a_plunge_saw_saves_a_sheet_and_is_used_only_when_asked_for() -> None:
    edge, plunge = cut_sheets(pinwheel(layout=SheetLayout.EDGE_TO_EDGE)), cut_sheets(pinwheel())
    (group,) = plunge.groups

    assert (2, 1) == (edge.sheets_count, plunge.sheets_count)
    assert (True, True, Method.PLUNGE) == (plunge.proof.first_proven, plunge.proof.bought_proven, plunge.search.method)
    assert ((), SheetLayout.PLUNGE_SAW) == (group.steps, group.layout)
    assert group.lines


def test_what_only_a_plunge_saw_can_cut_from_the_copies_there_are_is_refused_without_one() -> None:
    assert 1 == cut_sheets(pinwheel(copies=1)).sheets_count
    with pytest.raises(RequestFaultsError):
        cut_sheets(pinwheel(layout=SheetLayout.EDGE_TO_EDGE, copies=1))


@given(sheet_jobs())
@settings(max_examples=25)
def test_with_a_plunge_saw_no_plan_is_worse_and_none_needs_it_for_nothing(job: SheetJob) -> None:
    effort, allowed = Effort(work_count=300), msgspec.structs.replace(job, layout=SheetLayout.PLUNGE_SAW)
    try:
        edge, plunge = cut_sheets(job, effort), cut_sheets(allowed, effort)
    except RequestFaultsError:
        return
    better = (plunge.cost_minor, plunge.proof.bought_count) < (edge.cost_minor, edge.proof.bought_count)

    assert () == mistakes_in_sheets(allowed, plunge)
    assert not plunge.search.fallback
    assert better or edge.groups == plunge.groups
    assert plunge.proof.cost_bound_minor <= edge.cost_minor


def test_too_few_copies_are_said_to_be_certain_only_where_that_is_proven() -> None:
    """Two sheets do not hold three panels of more than half of one. One sheet holds the pinwheel, but not edge to edge."""
    edge = pinwheel(layout=SheetLayout.EDGE_TO_EDGE, copies=1)
    sure = [too_few(sheets([(1300, 700, 3)], copies=2)), too_few(edge)]

    assert ["the copies on offer cannot give all pieces"] * 2 == sure
    assert "no way was found to cut all pieces from the copies on offer" == too_few(edge, Effort(work_count=0))


def too_few(job: SheetJob, effort: Effort = STANDARD) -> str:
    with pytest.raises(RequestFaultsError) as caught:
        cut_sheets(job, effort)
    return caught.value.faults[0].detail
