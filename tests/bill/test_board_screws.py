"""Screws of boards, checked on the boxes of members and panels alone (`knowledge/cladding.md`, sections 2 and 3)."""

from __future__ import annotations

import math
from itertools import combinations
from typing import TYPE_CHECKING

import pytest
from hypothesis import given, settings

from service.bill.board_screws import place_screws
from service.bill.counting import panel_screws
from service.brief import resolve
from service.catalogue import demo_catalogue
from service.errors import RequestFaultsError, UnbuildableError
from service.frame import Layer, PanelRole, lay_out
from service.rules import load_rules
from tests import variant_requests
from tests.examples_of import DAY, changed, request_of
from tests.sold_examples import sold
from tests.strategies import requests

if TYPE_CHECKING:
    from typing import Any

    from service.bill.board_screws import ScrewPlace
    from service.brief import Job
    from service.frame import Frame, Member, Panel

RULES = load_rules()
UNSUPPORTED = {PanelRole.BACKBOARD_NICHE, PanelRole.PATTRESS}  # between timbers, not on them: screwed through these
BEFORE_A_PAD = {
    PanelRole.FACE_BASE, PanelRole.RETURN_BASE_LEFT, PanelRole.RETURN_BASE_RIGHT, PanelRole.RETURN_LEFT, PanelRole.RETURN_RIGHT,
}  # fmt: skip
CASES: dict[str, dict[str, Any]] = {
    **{name: sold(name) for name in ("A", "B", "C", "C0")},
    "niche": variant_requests.niche(), "uneven": variant_requests.uneven(), "corner": variant_requests.in_a_corner(),
}  # fmt: skip


def frame_and_job(request: dict[str, Any]) -> tuple[Frame, Job]:
    job, _deal = resolve(request_of(request), demo_catalogue(), RULES, DAY)
    return lay_out(job, RULES), job


def on_timber(screw: ScrewPlace, panel: Panel, member: Member) -> bool:
    """Whether a member lies against the board there, and holds the screw 4 from its edges, or on its middle."""
    box, board = member.box, panel.box
    spans = {
        "x": (board.x0_tenth_mm, board.x1_tenth_mm, box.x0_tenth_mm, box.x1_tenth_mm, screw.x_tenth_mm),
        "y": (board.y0_tenth_mm, board.y1_tenth_mm, box.y0_tenth_mm, box.y1_tenth_mm, screw.y_tenth_mm),
        "z": (board.z0_tenth_mm, board.z1_tenth_mm, box.z0_tenth_mm, box.z1_tenth_mm, screw.z_tenth_mm),
    }
    across = min(spans, key=lambda axis: spans[axis][1] - spans[axis][0])
    low, high, near, far, at = spans.pop(across)
    meets = (at == high == near) or (at == low == far)
    held = []
    for b0, b1, m0, m1, spot in spans.values():
        first, last = max(b0, m0), min(b1, m1)
        room = min(40, (last - first) // 2)
        held.append(first + room <= spot <= last - room)
    return meets and all(held)


def is_held_otherwise(panel: Panel, frame: Frame) -> bool:
    """Between timbers and screwed through these, a pad's sheet, or a strip in front of a pad."""
    padded = any(one.layer is Layer.PAD for one in frame.panels)
    return panel.role in UNSUPPORTED or panel.layer is Layer.PAD or (padded and panel.role in BEFORE_A_PAD)


def mistakes(frame: Frame, job: Job) -> list[str]:
    found = []
    for panel in frame.panels:
        screws = place_screws(panel, frame, job, RULES)
        wanted = panel_screws(panel, job, RULES)
        if not is_held_otherwise(panel, frame) and len(screws) != wanted:
            found.append(f"{panel.mark}: {len(screws)} of {wanted}")
        found += [
            f"{panel.mark}: {one} in the air" for one in screws if not any(on_timber(one, panel, each) for each in frame.members)
        ]
        found += [
            f"{panel.mark}: {one} and {other} in one hole" for one, other in combinations(screws, 2) if apart(one, other) < 250
        ]
    return found


def apart(one: ScrewPlace, other: ScrewPlace) -> float:
    return math.dist((one.x_tenth_mm, one.y_tenth_mm, one.z_tenth_mm), (other.x_tenth_mm, other.y_tenth_mm, other.z_tenth_mm))


@pytest.mark.parametrize("name", CASES)
def test_as_many_as_are_billed_and_all_on_timber(name: str) -> None:
    frame, job = frame_and_job(CASES[name])

    assert [] == mistakes(frame, job)
    assert any(place_screws(panel, frame, job, RULES) for panel in frame.panels)


@settings(max_examples=40)
@given(request=requests())
def test_so_it_is_on_every_breast(request: dict[str, Any]) -> None:
    try:
        frame, job = frame_and_job(request)
    except (RequestFaultsError, UnbuildableError):
        return

    assert [] == mistakes(frame, job)


@pytest.mark.parametrize(("board", "edge"), [("BD-2015R", 120), ("BD-2218L", 130)])
def test_edge_distances_by_board(board: str, edge: int) -> None:
    """MDF 15: 12 at least; plasterboard: 13 at a cut edge."""
    code = {"kind": "catalogue", "code": board}
    frame, job = frame_and_job(changed(sold("C"), {"/survey/brief/board": code}))
    face = next(one for one in frame.panels if one.role is PanelRole.FACE_BASE)
    screws = place_screws(face, frame, job, RULES)

    assert edge <= min(one.x_tenth_mm for one in screws) - face.box.x0_tenth_mm
    assert edge <= face.box.z1_tenth_mm - max(one.z_tenth_mm for one in screws)


def test_none_in_a_cut_out() -> None:
    """Of example A the face has one cut-out, the clear recess."""
    frame, job = frame_and_job(sold("A"))
    for face in (one for one in frame.panels if one.cut_outs):
        left, low = face.box.x0_tenth_mm, face.box.z0_tenth_mm
        inside = [
            one
            for hole in face.cut_outs
            for one in place_screws(face, frame, job, RULES)
            if left + hole.x_tenth_mm - 120 < one.x_tenth_mm < left + hole.x_tenth_mm + hole.width_tenth_mm + 120
            and low + hole.y_tenth_mm - 120 < one.z_tenth_mm < low + hole.y_tenth_mm + hole.height_tenth_mm + 120
        ]

        assert [] == inside


def test_the_same_places_every_time() -> None:
    frame, job = frame_and_job(sold("B"))

    assert [place_screws(one, frame, job, RULES) for one in frame.panels] == [
        place_screws(one, frame, job, RULES) for one in frame.panels
    ]
