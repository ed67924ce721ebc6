"""Measures on site against the survey. 30 is doubtful: `knowledge/survey.md`, section 11; the other limits are house choices."""

from __future__ import annotations

import pytest

from service.brief.job import Spot
from service.brief.measured import Surveyed, check_bars, take_measured, with_floor
from service.brief.notes import Notes
from service.catalogue import demo_catalogue
from service.errors import Reason
from service.rules import load_rules
from service.survey.measured import BarsBought, FloorPacker, Measured
from tests.examples_of import example_a, job_of

SURVEYED = Surveyed(
    full_height=True, heights_sent=True, fire_top_tenth_mm=9_100, clear_height_tenth_mm=22_000, frame_width_tenth_mm=13_270,
    frame_depth_tenth_mm=4_200, body_width_tenth_mm=13_350, open_both=True, fall_tenth_mm=0,
)  # fmt: skip


def notes_of(measured: Measured) -> Notes:
    notes = Notes()
    take_measured(measured, SURVEYED, load_rules(), notes)
    return notes


@pytest.mark.parametrize(("wide_mm", "wider", "inset"), [
    (1327, 0, None), (1331, 40, 20), (1323, -40, 60), (1331.1, 40, 20), (1330.9, 38, 21),
])  # fmt: skip
def test_a_fire_that_sets_the_width_gets_the_same_at_both_ends(wide_mm: float, wider: int, inset: int | None) -> None:
    """Body 1335 with 4 inside at each end is 1327; half a tenth at each end cannot be set out and goes."""
    real = take_measured(Measured(appliance_top_to_ceiling_mm=(1290,), frame_width_mm=wide_mm), SURVEYED, load_rules(), Notes())

    assert (wider, inset) == (real.wider_tenth_mm, real.inset_tenth_mm)


def test_the_least_height_counts() -> None:
    real = take_measured(Measured(appliance_top_to_ceiling_mm=(1291, 1287, 1289)), SURVEYED, load_rules(), Notes())

    assert 9_100 + 12_870 == real.clear_height_tenth_mm


@pytest.mark.parametrize(("deep_mm", "doubts", "faults"), [(425, 0, 0), (425.1, 1, 0), (450, 1, 0), (450.1, 0, 1)])
def test_a_side_of_the_base(deep_mm: float, doubts: int, faults: int) -> None:
    """5 is doubtful and 30 refused."""
    notes = notes_of(Measured(appliance_top_to_ceiling_mm=(1290,), frame_depth_mm=deep_mm))

    assert (doubts, faults) == (len(notes.doubts), len(notes.faults))
    assert all(fault.reason is Reason.CONTRADICTION for fault in notes.faults)


def test_packers_beyond_the_frame_or_twice_at_a_place_are_refused() -> None:
    packers = (FloorPacker(x_mm=0, packer_mm=2), FloorPacker(x_mm=0, packer_mm=3), FloorPacker(x_mm=1400, packer_mm=0))
    details = [fault.detail for fault in notes_of(Measured(appliance_top_to_ceiling_mm=(1290,), floor_packers=packers)).faults]

    assert ["a packer at 1400 lies beyond the frame", "two packers lie at the same place"] == details


def test_packers_far_from_the_fall_of_the_survey_are_doubtful() -> None:
    packers = (FloorPacker(x_mm=0, packer_mm=31),)

    assert ["/survey/measured/floor_packers"] == [
        one.pointer for one in notes_of(Measured(appliance_top_to_ceiling_mm=(1290,), floor_packers=packers)).doubts
    ]


def test_the_floor_is_where_the_packers_stand() -> None:
    floor = (Spot(x_tenth_mm=0, off_tenth_mm=0), Spot(x_tenth_mm=12_890, off_tenth_mm=40))
    job = job_of(example_a())
    packed = with_floor(job, floor)

    assert (floor, floor, 40) == (packed.floor_rear, packed.floor_front, packed.fall_tenth_mm)
    assert with_floor(job, ()) is job


@pytest.mark.parametrize(("bars", "faults"), [
    (BarsBought(code="TM-1035A"), 0), (BarsBought(code="TM-1028T"), 0), (BarsBought(code="BD-2015R"), 1),
    (BarsBought(thickness_mm=38, width_mm=89, length_mm=2400), 0), (BarsBought(thickness_mm=38, width_mm=63, length_mm=2400), 1),
    (BarsBought(thickness_mm=38, width_mm=89), 1),
])  # fmt: skip
def test_bars_are_known_by_code_or_by_section_and_length(bars: BarsBought, faults: int) -> None:
    notes = Notes()
    check_bars(Measured(appliance_top_to_ceiling_mm=(1290,), bars_bought=(bars,)), (380, 890), demo_catalogue(), notes)

    assert faults == len(notes.faults)
