"""The laws of `laws.py` hold for every breast that can be laid out; a breast that cannot be says why and offers something.

How many examples are tried: `MANY` here; ten thousand with `--hypothesis-profile=explore`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest
from hypothesis import HealthCheck, assume, event, given, settings

from service.errors import RequestFaultsError, UnbuildableError
from service.frame import Role, lay_out
from service.rules import load_rules
from tests.examples_of import example_a, example_b, example_c, frame_of, job_of
from tests.properties import laws
from tests.strategies import requests
from tests.wild_strategies import wild_requests

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.errors import Unmet
    from service.frame import Box, Frame, Member
    from tests.strategies import Request

MANY = settings(
    max_examples=max(300, settings.default.max_examples if settings.default else 0),
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much],
)


@given(requests())
@MANY
def test_what_a_person_could_measure_keeps_the_laws(request: Request) -> None:
    """Over the whole sane range; only what can be laid out is counted."""
    job = job_of(request)
    try:
        frame = lay_out(job, load_rules())
    except UnbuildableError as error:
        event(f"unbuildable: {error.unmet[0].code}")
        assume(False)  # noqa: FBT003 - the argument is a condition

    assert {} == laws.broken(job, frame)


@given(wild_requests())
@MANY
def test_what_is_laid_out_of_wild_values_keeps_the_laws(request: Request) -> None:
    """Up to the hard limits of every field."""
    try:
        job = job_of(request)
        frame = lay_out(job, load_rules())
    except (RequestFaultsError, UnbuildableError):
        return

    assert {} == laws.broken(job, frame)


@given(wild_requests())
@MANY
def test_a_refusal_says_what_is_asked_and_offers_something(request: Request) -> None:
    """Design.md, section 4: asked over available, by how much, and an offer; `by_hand` alone is no inequality."""
    for unmet in refused(request):
        assert unmet.says
        assert unmet.offer
        if unmet.code != "by_hand":
            assert unmet.asked_mm > unmet.available_mm
            assert abs(unmet.asked_mm - unmet.available_mm - unmet.short_by_mm) < 0.01


def refused(request: Request) -> tuple[Unmet, ...]:
    """Unmet inequalities of a request; none where it is designed or has faults."""
    try:
        lay_out(job_of(request), load_rules())
    except UnbuildableError as error:
        return error.unmet
    except RequestFaultsError:
        pass
    return ()


def moved(frame: Frame, role: Role, shift: Callable[[Box], Box]) -> Frame:
    """The frame with the first member of a role moved."""
    first = next(member for member in frame.members if member.role is role)
    return with_member(frame, first, box=shift(first.box))


def with_member(frame: Frame, member: Member, **values: object) -> Frame:
    """The frame with one member changed."""
    changed = msgspec.structs.replace(member, **values)
    return msgspec.structs.replace(frame, members=tuple(changed if one is member else one for one in frame.members))


def without(frame: Frame, role: Role) -> Frame:
    """The frame without the members of a role."""
    return msgspec.structs.replace(frame, members=tuple(one for one in frame.members if one.role is not role))


def higher(box: Box, by_tenth_mm: int = 1) -> Box:
    """A box lifted."""
    return msgspec.structs.replace(box, z0_tenth_mm=box.z0_tenth_mm + by_tenth_mm, z1_tenth_mm=box.z1_tenth_mm + by_tenth_mm)


def planted(name: str) -> Frame:
    """Example A, B or C with a fault that one law must find."""
    a = frame_of(example_a())
    first = a.members[0]
    panel = a.panels[0]
    closure = a.closures[0]
    wall = a.wall_fixings[0]
    replace = msgspec.structs.replace
    return {
        "shares_no_space": moved(a, Role.JAMB_STUD, higher),
        "ends_bear": without(a, Role.SILL_RAIL),
        "fills_its_bounds": moved(a, Role.TOP_RAIL_FRONT, higher),
        "leaves_the_fire_free": moved(a, Role.TRIMMER, lambda box: higher(box, -200)),
        "closes": replace(a, closures=(replace(closure, total_tenth_mm=closure.total_tenth_mm + 1), *a.closures[1:])),
        "pieces_can_be_cut": with_member(a, first, cut_length_mm=first.cut_length_mm + 1),
        "edges_lie_on_timber": without(a, Role.HEAD_RAIL),
        "studs_are_close_enough": without(frame_of(example_b()), Role.CRIPPLE_ABOVE),
        "boards_come_out_of_sheets": replace(a, panels=(replace(panel, cut_width_mm=2441), *a.panels[1:])),
        "fixings_go_through_what_they_name": replace(
            a, wall_fixings=(replace(wall, z_tenth_mm=wall.z_tenth_mm + 20_000), *a.wall_fixings[1:])
        ),
    }[name]


@pytest.mark.parametrize("law", [law.__name__ for law in laws.LAWS])
def test_every_law_finds_its_planted_fault(law: str) -> None:
    job = job_of(example_b() if law == "studs_are_close_enough" else example_a())

    assert law in laws.broken(job, planted(law))


@pytest.mark.parametrize("example", [example_a, example_b, example_c])
def test_examples_keep_the_laws(example: Callable[[], Request]) -> None:
    assert {} == laws.broken(job_of(example()), frame_of(example()))
