"""Members of another section or class are cut from their own studding."""

from __future__ import annotations

from service.cutting import cut_frame
from service.cutting.timbers import timbers_of
from service.frame import Additions, Role
from tests.cutting.test_of_frame import YARD
from tests.examples_of import changed, example_a, example_c, frame_of, job_of

STRONG = Additions(ply_count=1, ply_width_tenth_mm=890, strong_class="C24", strong_roles=(Role.TRIMMER, Role.TRIMMER_PLY))


def test_all_of_a_plain_frame_is_of_the_jobs_timber() -> None:
    ((timber, members),) = timbers_of(frame_of(example_a()), job_of(example_a()), YARD.catalogue)

    assert job_of(example_a()).timber == timber
    assert 52 == len(members)  # knowledge/worked-examples.md, A


def test_each_section_and_class_is_a_group() -> None:
    """Example C with a trimmer of C24 38 x 63 and a ply of C24 38 x 89."""
    frame, job = frame_of(example_c(), STRONG), job_of(example_c())
    groups = timbers_of(frame, job, YARD.catalogue)

    assert [("C16", 630, 46), ("C24", 630, 1), ("C24", 890, 1)] == [
        (timber.strength_class, timber.width_tenth_mm, len(members)) for timber, members in groups
    ]
    assert ("TM-1207M", "TM-1214V", "TM-1221C", "TM-1228K") == tuple(one.code for one in groups[1][0].stock)
    assert len(frame.members) == sum(len(members) for _timber, members in groups)


def test_no_length_is_offered_that_does_not_pass_the_way_in() -> None:
    request = changed(example_c(), {"/survey/site/longest_length_mm": 3000})
    groups = timbers_of(frame_of(request, STRONG), job_of(request), YARD.catalogue)

    assert {30_000} == {max(one.length_tenth_mm for one in timber.stock) for timber, _members in groups}


def test_every_group_has_its_plan() -> None:
    frame = frame_of(example_c(), STRONG)
    plan = cut_frame(frame, job_of(example_c()), YARD)
    plans = (plan.bars, *(one.plan for one in plan.other_bars))
    lengths = sum(member.cut_length_mm * 10 for member in frame.members if member.from_bar)  # part height: no allowance

    assert lengths == sum(one.pieces_length_tenth_mm for one in plans)
    assert 2 == len(plan.other_bars)
    assert plan.bars.bars_count + 2 == plan.bars_count
    assert () == cut_frame(frame_of(example_c()), job_of(example_c()), YARD).other_bars
