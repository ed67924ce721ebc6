"""Framing.md, sections 3, 11 and 14: packers per station, tapered boards, packing to ceiling and wall; worked by hand."""

from __future__ import annotations

import pytest

from service.brief import Spot
from service.frame import PanelRole, off_at
from service.frame.surfaces import most_off
from tests.examples_of import changed, frame_of, job_of
from tests.properties import laws
from tests.sold_examples import sold
from tests.variant_requests import uneven

SPOTS = tuple(Spot(x_tenth_mm=x, off_tenth_mm=off) for x, off in ((100, 0), (1100, 50), (2100, 30)))


@pytest.mark.parametrize(("x", "off"), [(-50, 0), (100, 0), (600, 25), (1100, 50), (1600, 40), (1605, 40), (9000, 30)])
def test_straight_lines_between_points(x: int, off: int) -> None:
    assert off == off_at(SPOTS, x)
    assert 0 == off_at((), x)


@pytest.mark.parametrize(("stretch", "most"), [((0, 100), 0), ((0, 2000), 50), ((1600, 2100), 40), ((600, 600), 25)])
def test_the_most_over_a_stretch(stretch: tuple[int, int], most: int) -> None:
    assert most == most_off(SPOTS, stretch)


def test_an_uneven_breast_keeps_the_laws_and_its_lowest_height() -> None:
    """Clear height: the lowest ceiling, over the floor's highest point: 2515."""
    job, frame = job_of(uneven()), frame_of(uneven())

    assert 25_150 == job.clear_height_tenth_mm == frame.levels.finished_top_tenth_mm
    assert {} == laws.broken(job, frame)


def test_packers_under_each_station() -> None:
    """The second stands at 429.7 of the frame: behind 12 x (429.7 + 15) / 678.5 = 7.9, in front 2 + 2 x 444.7 / 1357 = 2.7."""
    frame = frame_of(uneven())

    assert [(3, 20), (79, 27), (94, 33), (37, 39)] == [
        (one.rear_packer_tenth_mm, one.front_packer_tenth_mm) for one in frame.stations
    ]
    assert all(one.packer_tenth_mm == max(one.rear_packer_tenth_mm, one.front_packer_tenth_mm) for one in frame.stations)


def test_boards_follow_floor_and_ceiling() -> None:
    """The face reaches 24 at most over its right corner in front, the right return 30 behind; both less what lies beyond it."""
    panels = {panel.role: panel for panel in frame_of(uneven()).panels if not panel.joint_below}
    top = [panel for panel in frame_of(uneven()).panels if panel.role is PanelRole.FACE_UPPER][-1]
    side = [panel for panel in frame_of(uneven()).panels if panel.role is PanelRole.RETURN_UPPER_RIGHT][-1]

    assert 120 == panels[PanelRole.FACE_BASE].taper_tenth_mm
    assert (240, 296) == (top.rise_tenth_mm, side.rise_tenth_mm)  # the frame ends 15 before the point: 30 - 20 x 15 / 678.5


def test_packing_to_the_ceiling() -> None:
    """10 where the ceiling is lowest, more with its rise; over 25 a firring on that rail."""
    frame = frame_of(uneven())
    packings = {one.through: one.packing_tenth_mm for one in frame.ceiling_screws}

    assert min(packings.values()) > 100
    assert 2 == len(frame.firrings_tenth_mm)
    assert {frame.sizes.rail_length_tenth_mm} == set(frame.firrings_tenth_mm)
    assert () == frame_of(sold("A")).firrings_tenth_mm


@pytest.mark.parametrize(("plumb_mm", "foot", "top"), [(14, 140, 0), (-14, 0, 140), (0, 0, 0)])
def test_packing_behind_a_leaning_wall(plumb_mm: float, foot: int, top: int) -> None:
    """A plumb line from the most forward point: the lean lies at the foot where the wall leans in, else at the top."""
    request = changed(sold("A"), {"/survey/wall/plumb_mm": plumb_mm})
    fixings = frame_of(request).wall_fixings
    low, high = fixings[0], fixings[-1]
    shares = [round(foot * (25_150 - one.z_tenth_mm) / 25_150 + top * one.z_tenth_mm / 25_150) for one in (low, high)]

    assert shares == [low.packing_tenth_mm, high.packing_tenth_mm]


def test_what_the_fitter_is_told() -> None:
    notes = " ".join(frame_of(uneven()).notes)

    assert "rises by 29.6" in notes
    assert "2 firrings" in notes
    assert "pack up to 14 at the foot" in notes
