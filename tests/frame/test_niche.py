"""Framing.md, section 14, "soundbar niche under the screen"; figures worked by hand from example A."""

from __future__ import annotations

import pytest

from service.frame import Frame, Role
from tests.examples_of import Request, frame_of, job_of, unmet_of
from tests.properties import laws
from tests.sold_examples import sold
from tests.variant_requests import niche


def boxes(frame: Frame, role: Role) -> list[tuple[int, int, int, int]]:
    return [
        (one.box.x0_tenth_mm, one.box.x1_tenth_mm, one.box.z0_tenth_mm, one.box.z1_tenth_mm)
        for one in frame.members
        if one.role is role
    ]


def test_the_screen_moves_up_by_the_niche_and_its_rail() -> None:
    """The sill: zs = z1 + u + (hn + 2 tl) + b: 920 + 210 + (110 + 30) + 38 = 1308; example A without it 1130."""
    frame = frame_of(niche())

    assert 11_300 == frame_of(sold("A")).levels.recess_sill_tenth_mm
    assert 13_080 == frame.levels.recess_sill_tenth_mm
    assert (11_300, 12_700) == (frame.niche.z0_tenth_mm, frame.niche.z1_tenth_mm) if frame.niche else False


def test_what_frames_it() -> None:
    """Frame 1327 wide, niche 900 + 2 x 15: from 198.5 to 1128.5; a jamb each side, one in line with each jamb of the recess."""
    frame = frame_of(niche())

    assert [(380, 12_890, 10_920, 11_300), (380, 12_890, 12_700, 13_080)] == boxes(frame, Role.SILL_RAIL)
    assert [(1605, 1985, 11_300, 12_700), (11_285, 11_665, 11_300, 12_700)] == boxes(frame, Role.JAMB_STUD)[2:]
    assert [(785, 1165, 11_300, 12_700), (12_105, 12_485, 11_300, 12_700)] == boxes(frame, Role.FRONT_STUD)
    assert {} == laws.broken(job_of(niche()), frame)


def test_its_depth_is_that_of_the_bar_and_forty() -> None:
    """90 + 40 = 130 from the finished face: linings of 115 behind a board of 15; backboard 18; rest 435 - 148 = 287."""
    closure = next(one for one in frame_of(niche()).closures if one.name == "niche_depth")

    assert [150, 1150, 180, 2870] == [term.value_tenth_mm for term in closure.terms]


@pytest.mark.parametrize(
    ("width_mm", "jambs"),
    [(1145, 2), (1145.1, 0), (1221, 0)],  # Lr 1251: with two jambs of 38 and linings of 15 the widest is 1145
)
def test_where_jambs_have_no_room_the_ladders_are_its_jambs(width_mm: float, jambs: int) -> None:
    request = niche(width_mm=width_mm)
    frame = frame_of(request)

    assert jambs == len(boxes(frame, Role.JAMB_STUD)) - 2
    assert {} == laws.broken(job_of(request), frame)


@pytest.mark.parametrize(
    ("request_", "code", "asked_mm", "available_mm"),
    [
        (niche(width_mm=1221.1), "niche_wide", 1251.1, 1251.0),
        (niche(depth_mm=377.1), "niche_deep", 435.1, 435.0),  # 377.1 + 40 + 18
        (niche(height_mm=545), "recess_high", 1586.0, 1585.0),  # 210 + (545 + 30) + 38 + 687 + 2 x 38
    ],
)
def test_what_does_not_fit(request_: Request, code: str, asked_mm: float, available_mm: float) -> None:
    found = {one.code: one for one in unmet_of(request_)}

    assert (asked_mm, available_mm) == (found[code].asked_mm, found[code].available_mm)
    assert found[code].offer


def test_the_outlet_is_further_from_the_screen() -> None:
    """It grows by hn + 2 tl + b = 178: an upstand too small without the niche is enough with it."""
    least = {"survey__brief__sill_above_appliance_mm": 120}

    assert {} == laws.broken(job_of(niche(**least)), frame_of(niche(**least)))
