"""Framing.md, section 12, "removable access", and cladding.md, section 7; worked by hand from example B."""

from __future__ import annotations

from itertools import pairwise

import pytest

from service.frame import Frame, Panel, PanelRole
from tests.examples_of import Request, changed, frame_of, job_of, unmet_of
from tests.properties import laws
from tests.sold_examples import sold
from tests.variant_requests import in_a_corner, with_access

LEFT, RIGHT = PanelRole.RETURN_ACCESS_LEFT, PanelRole.RETURN_ACCESS_RIGHT
EXTRAS = "/survey/brief/extras"


def removable(frame: Frame) -> list[Panel]:
    return [panel for panel in frame.panels if panel.role in {LEFT, RIGHT}]


def test_it_lies_between_two_noggins_of_the_ladder() -> None:
    """In the lowest bay that leaves 300 between the centre lines of two noggins, less 2 of joint at each."""
    request = with_access()
    frame = frame_of(request)
    (panel,) = removable(frame)
    noggins = sorted(
        (one.box.z0_tenth_mm + one.box.z1_tenth_mm) // 2
        for one in frame.members
        if one.role.value == "ladder_noggin" and one.box.x0_tenth_mm == 0
    )
    first = next(low for low, high in pairwise(noggins) if high - low >= 3_040)

    assert (LEFT, first + 20) == (panel.role, panel.box.z0_tenth_mm)
    assert panel.height_tenth_mm >= 3_000
    assert {} == laws.broken(job_of(request), frame)


def test_the_boards_beside_it_leave_a_joint_of_two() -> None:
    frame = frame_of(with_access())
    (panel,) = removable(frame)
    below, above = [one for one in frame.panels if one.role is PanelRole.RETURN_LEFT][:2]

    assert (20, 20) == (
        panel.box.z0_tenth_mm - below.box.z1_tenth_mm,
        above.box.z0_tenth_mm - panel.box.z1_tenth_mm,
    )


def test_a_higher_panel_goes_to_a_higher_bay() -> None:
    low = removable(frame_of(with_access()))[0]
    wish = [{"kind": "access_panel", "side": "left", "height_mm": low.height_tenth_mm / 10 + 1}]
    high = removable(frame_of(changed(sold("B"), {EXTRAS: wish})))[0]

    assert high.height_tenth_mm > low.height_tenth_mm
    assert high.box.z0_tenth_mm > low.box.z0_tenth_mm


@pytest.mark.parametrize(
    ("request_", "role"),
    [
        (changed(sold("C"), {EXTRAS: [{"kind": "access_panel"}]}), RIGHT),
        (in_a_corner(survey__brief__extras=[{"kind": "access_panel"}]), RIGHT),
        (changed(sold("C"), {EXTRAS: [{"kind": "access_panel", "side": "left"}]}), LEFT),
    ],
)
def test_which_end_gets_it(request_: Request, role: PanelRole) -> None:
    assert [role] == [panel.role for panel in removable(frame_of(request_))]


@pytest.mark.parametrize(
    ("request_", "asked_mm"),
    [
        (in_a_corner(survey__brief__extras=[{"kind": "access_panel", "side": "left"}]), 300.0),  # no return at the wall
        (with_access(survey__brief__extras=[{"kind": "access_panel", "side": "left", "height_mm": 1500}]), 1500.0),
        (with_access(survey__brief__extras=[{"kind": "access_panel", "side": "left", "width_mm": 700}]), 700.0),
    ],
)
def test_what_does_not_fit(request_: Request, asked_mm: float) -> None:
    (found,) = unmet_of(request_)

    assert ("access", asked_mm) == (found.code, found.asked_mm)
    assert found.asked_mm > found.available_mm
    assert found.offer


def test_what_the_fitter_is_told() -> None:
    assert any("removable panel from" in note and "4 magnets" in note for note in frame_of(with_access()).notes)
    assert not any("removable" in note for note in frame_of(sold("B")).notes)
