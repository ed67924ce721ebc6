"""Framing.md, section 14, "beam or shelf over the opening"; figures worked by hand from example A."""

from __future__ import annotations

import pytest

from service.frame import PanelRole, Role
from tests.examples_of import Request, changed, frame_of, job_of, unmet_of
from tests.properties import laws
from tests.sold_examples import sold
from tests.variant_requests import with_beam

EXTRAS = "/survey/brief/extras"
BEAM: Request = {"kind": "beam", "height_mm": 120, "depth_mm": 110, "mass_kg": 11, "above_opening_mm": 100}


def test_the_upstand_counts_from_the_top_of_the_beam() -> None:
    """920 + 100 + 120 + 210 = 1350."""
    assert 13_500 == frame_of(with_beam()).levels.recess_sill_tenth_mm


def test_a_second_rail_level_with_its_top() -> None:
    """The beam from 1020 to 1140, so the rail from 1102; cripples under and over it."""
    request = with_beam()
    frame = frame_of(request)
    rails = [one.box.z0_tenth_mm for one in frame.members if one.role is Role.SILL_RAIL]
    cripples = {(one.box.z0_tenth_mm, one.box.z1_tenth_mm) for one in frame.members if one.role is Role.CRIPPLE_BELOW}

    assert [11_020, 13_120] == rails
    assert {(9580, 11_020), (11_400, 13_120)} == cripples
    assert {} == laws.broken(job_of(request), frame)


def test_plywood_to_fix_into() -> None:
    """In each bay between the ladders and three cripples: 40.5, 528, 528, 40.5 wide, 144 high, flush with the frame."""
    found = [panel for panel in frame_of(with_beam()).panels if panel.role is PanelRole.PATTRESS]

    assert [(405, 1440), (5280, 1440), (5280, 1440), (405, 1440)] == [(one.width_tenth_mm, one.height_tenth_mm) for one in found]
    assert {(4020, 4200)} == {(one.box.y0_tenth_mm, one.box.y1_tenth_mm) for one in found}


def test_the_beam_itself() -> None:
    """1200 about the middle of a frame 1327 wide; before the finished face at 435; over three cripples, so 4 fixings."""
    (beam,) = frame_of(with_beam()).ledges

    assert (635, 12_635, 4350, 5450, 10_200, 11_400) == (
        beam.box.x0_tenth_mm, beam.box.x1_tenth_mm, beam.box.y0_tenth_mm, beam.box.y1_tenth_mm, beam.box.z0_tenth_mm,
        beam.box.z1_tenth_mm,
    )  # fmt: skip
    assert (11, 4) == (beam.mass_kg, beam.fixings_count)


def test_a_shelf_as_wide_as_the_breast() -> None:
    (shelf,) = frame_of(changed(sold("C"), {EXTRAS: [{**BEAM, "kind": "shelf", "above_opening_mm": 0}]})).ledges

    assert (-120, 13_430) == (shelf.box.x0_tenth_mm, shelf.box.x1_tenth_mm)


@pytest.mark.parametrize(
    ("values", "asked_mm", "available_mm"),
    [
        ({"above_opening_mm": 0, "height_mm": 115.9}, 116.0, 115.9),  # 2 x 38 + 40
        ({"width_mm": 1357.1}, 1357.1, 1357.0),
    ],
)
def test_what_does_not_fit(values: Request, asked_mm: float, available_mm: float) -> None:
    (found,) = unmet_of(changed(sold("A"), {EXTRAS: [{**BEAM, **values}]}))

    assert ("ledge", asked_mm, available_mm) == (found.code, found.asked_mm, found.available_mm)
    assert found.offer


def test_the_least_over_the_beam() -> None:
    """38 + 40 between its top and the sill of the recess."""
    short = {**BEAM, "above_opening_mm": 200}
    found = unmet_of(changed(sold("A"), {EXTRAS: [short], "/survey/brief/sill_above_appliance_mm": 77.9}))

    assert [78.0] == [one.asked_mm for one in found if one.code == "ledge"]
