"""Framing.md, section 10.2: what strengthening adds is placed where the checks want it, and the frame still closes."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from service.frame import Added, Additions, EndJoint, Reason, Role, lay_out
from service.rules import load_rules
from tests.examples_of import changed, example_a, example_b, example_c, frame_of, job_of
from tests.properties import laws

if TYPE_CHECKING:
    from service.frame import Frame, Member
    from tests.examples_of import Request

DEEP_C = changed(example_c(), {"/survey/brief/breast_depth_mm": 700})  # rails 562 apart: the lid wants joists
EVERY = {
    "plies": Additions(ply_count=2),
    "deep_ply": Additions(ply_count=1, ply_width_tenth_mm=1_000),
    "deep_bearer": Additions(bearer_width_tenth_mm=1_200),
    "studs": Additions(stud_pitch_tenth_mm=3_000),
    "feet": Additions(foot_stations=True),
    "stations": Additions(station_pitch_tenth_mm=3_000),
    "second_uprights": Additions(second_uprights=True),
    "brackets": Additions(bracketed_roles=tuple(role.value for role in Role if role not in {Role.RAIL, Role.LADDER_UPRIGHT})),
    "ladders": Additions(ladder_brackets=True, ladder_halved=True),
    "top_row": Additions(top_upright_fixings_count=2, top_rail_fixings_count=2, all_rail_fixings_count=1),
    "lid_joists": Additions(lid_joist_pitch_tenth_mm=3_000),
    "ceiling": Additions(ceiling_screws_apart_tenth_mm=420),
}


def of_role(frame: Frame, role: Role) -> list[Member]:
    return [member for member in frame.members if member.role is role]


def test_a_role_keeps_the_class_of_the_job_unless_it_is_named() -> None:
    added = Additions(strong_class="C24", strong_roles=(Role.RAIL,))

    assert ("C24", "C16") == (added.class_of(Role.RAIL, "C16"), added.class_of(Role.UPRIGHT, "C16"))


def test_reasons_are_said_once() -> None:
    twice = Reason(added=Added.PLY, says="structure.trimmer_sag: a ply more")
    other = Reason(added=Added.PLY, says="structure.trimmer_gap: a ply more")
    added = Additions(reasons=(twice, twice, other))

    assert "structure.trimmer_sag: a ply more; structure.trimmer_gap: a ply more" == added.reason(Added.PLY)
    assert "" == added.reason(Added.BEARER)


@pytest.mark.parametrize("name", EVERY)
@pytest.mark.parametrize("request_", [example_a(), example_b(), example_c(), DEEP_C])
def test_the_frame_keeps_its_laws_with_anything_added(name: str, request_: Request) -> None:
    assert {} == laws.broken(job_of(request_), frame_of(request_, EVERY[name]))


def test_noggins_half_way_where_brackets_stay_clear() -> None:
    """`knowledge/worked-examples.md`, section 0, levels with the hung ladder on: A 8 a ladder, B 9 in the open one."""

    def levels(request: Request, *, right: bool) -> list[float]:
        frame = frame_of(request, Additions(ladder_halved=True))
        middle = frame.sizes.frame_width_tenth_mm // 2
        noggins = of_role(frame, Role.LADDER_NOGGIN)
        return sorted(one.box.z0_tenth_mm / 10 for one in noggins if (one.box.x0_tenth_mm > middle) is right)

    assert [920, 1124.5, 1329, 1529, 1750.8, 1972.5, 2194.3, 2416] == levels(example_a(), right=True)
    assert levels(example_a(), right=True) == levels(example_a(), right=False)
    assert [865, 1056, 1247, 1447, 1647, 1864, 2081, 2298, 2515] == levels(example_b(), right=True)
    assert [250, 557.5, 865, 1247, 1647, 2081, 2515] == levels(example_b(), right=False)  # stands on the base


def test_brackets_at_every_noggin_of_a_hung_ladder() -> None:
    """The same: 32 brackets in A, 18 in B."""

    def brackets(request: Request) -> int:
        noggins = of_role(frame_of(request, Additions(ladder_brackets=True, ladder_halved=True)), Role.LADDER_NOGGIN)
        return sum(one.start_joint.bracket_count + one.end_joint.bracket_count for one in noggins)

    assert (32, 18, 0) == (brackets(example_a()), brackets(example_b()), brackets(example_c()))


@pytest.mark.parametrize(
    ("added", "joint", "count"),
    [
        (Additions(bracketed_roles=("sill_rail",)), EndJoint.BRACKET, 1),
        (Additions(bracketed_roles=("sill_rail",), heavy_roles=("sill_rail",)), EndJoint.HEAVY_BRACKET, 1),
        (Additions(bracketed_roles=("sill_rail",), paired_roles=("sill_rail",)), EndJoint.BRACKET_PAIR, 2),
    ],
)
def test_ends_of_a_role(added: Additions, joint: EndJoint, count: int) -> None:
    (sill,) = of_role(frame_of(example_a(), added), Role.SILL_RAIL)

    assert (joint, joint) == (sill.start_joint, sill.end_joint)
    assert count == joint.bracket_count
    assert 0 == EndJoint.SCREWED.bracket_count


def test_an_end_on_a_jack_stays() -> None:
    (trimmer,) = of_role(frame_of(example_b(), Additions(bracketed_roles=("trimmer",), heavy_roles=("trimmer",))), Role.TRIMMER)

    assert (EndJoint.BEARING, EndJoint.HEAVY_BRACKET) == (trimmer.start_joint, trimmer.end_joint)


def test_the_top_row_gets_more_fixings() -> None:
    """Example B after checks has 17; one more in each rear upright, 100 under the row, and one through its rail."""
    rail = Additions(extra_rear_rails_tenth_mm=(24_250,))
    plain = frame_of(example_b(), rail).wall_fixings
    more = frame_of(
        example_b(), Additions(extra_rear_rails_tenth_mm=(24_250,), top_upright_fixings_count=1, top_rail_fixings_count=1)
    ).wall_fixings

    assert (17, 20) == (len(plain), len(more))
    assert [23_475, 23_475] == [one.z_tenth_mm for one in more if one.z_tenth_mm == 23_475]
    assert 5 == sum(one.z_tenth_mm == 24_475 for one in more)


def test_rows_stay_a_hundred_apart() -> None:
    """`knowledge/fixings.md`, 2.3: spacing 100 or more, however many are asked for."""
    frame = frame_of(example_a(), Additions(top_upright_fixings_count=40, top_rail_fixings_count=40))
    places = [(one.x_tenth_mm, one.z_tenth_mm) for one in frame.wall_fixings]

    assert all(
        abs(x - u) >= 1_000 or abs(z - w) >= 1_000
        for index, (x, z) in enumerate(places)
        for u, w in places[:index]
        if (x, z) != (u, w) and x == u
    )
    assert 11 >= max(sum(z == level for _x, z in places) for _x, level in places) - 2


def test_what_is_added_says_why() -> None:
    says = "structure.trial: a trial"
    added = Additions(
        ply_count=2, ladder_halved=True, second_uprights=True, bearer_width_tenth_mm=1_000, extra_rear_rails_tenth_mm=(23_000,),
        reasons=tuple(Reason(added=kind, says=says) for kind in Added),
    )  # fmt: skip
    frame = frame_of(example_a(), added)
    roles = {member.role for member in frame.members if member.reason == says}

    assert {Role.TRIMMER_PLY, Role.LADDER_NOGGIN, Role.UPRIGHT, Role.SCREEN_BEARER, Role.EXTRA_REAR_RAIL} == roles
    assert 6 == sum(member.role is Role.LADDER_NOGGIN and member.reason == says for member in frame.members)


def test_joists_under_a_lid() -> None:
    frame = frame_of(DEEP_C, Additions(lid_joist_pitch_tenth_mm=4_000))

    assert [] == of_role(frame_of(DEEP_C), Role.LID_JOIST)
    assert 3 == len(of_role(frame, Role.LID_JOIST))  # 1255 clear: three bays of 400 and less leave no fewer
    assert [] == of_role(frame_of(example_a(), Additions(lid_joist_pitch_tenth_mm=4_000)), Role.LID_JOIST)


@pytest.mark.parametrize("name", EVERY)
@pytest.mark.parametrize("request_", [example_a(), example_b(), example_c(), DEEP_C])
def test_boards_that_are_kept_are_those_that_would_be_laid(name: str, request_: Request) -> None:
    """Laid out like the plain frame or anew: the same."""
    job, rules = job_of(request_), load_rules()

    assert lay_out(job, rules, EVERY[name]) == lay_out(job, rules, EVERY[name], lay_out(job, rules))
