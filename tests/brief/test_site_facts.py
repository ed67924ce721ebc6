"""Survey.md, sections 7 to 9: services, chimney and the way in."""

from __future__ import annotations

import pytest

from tests.examples_of import changed, example_c, job_of, without

SITE = "/survey/site"
NOTHING_SENT = {
    "/survey/services/accessories": "none", "/survey/services/rcd": "yes", "/survey/services/supply_wanted": "fused_connection",
    "/survey/chimney/flue": "unknown", "/survey/services/gas": "unknown", "/survey/services/air_vents": "none",
    "/survey/services/pipes": "none", "/survey/services/cable_scan": "not_done", "/survey/site/stairs": "straight",
    "/survey/site/country": "gb", "/survey/site/building": "house", "/survey/site/build_year": "unknown",
    "/survey/site/narrowest_door_mm": 760, "/survey/site/workspace": "outside", "/survey/site/surveyed_on": "not told",
    "/survey/site/storey": 0, "/survey/site/largest_board_length_mm": 2440, "/survey/site/largest_board_width_mm": 1220,
    "/survey/site/parking_distance_mm": 20_000, "/survey/site/longest_length_mm": 4800,
}  # fmt: skip


def test_defaults() -> None:
    job = job_of(without(example_c(), "/survey/services", "/survey/chimney", SITE))
    sections = ("/survey/services", "/survey/chimney", SITE)

    assert NOTHING_SENT == {note.pointer: note.value for note in job.assumptions if note.pointer.startswith(sections)}
    assert (False, 0, 20_000) == (job.cables_scanned, job.storey_count, job.parking_distance_mm)
    assert (24_400, 12_200) == (job.largest_board_length_tenth_mm, job.largest_board_width_tenth_mm)


@pytest.mark.parametrize(("flue", "gas"), [("none", "none"), ("open", "unknown"), ("unknown", "unknown")])
def test_gas_is_none_only_where_there_is_no_flue(flue: str, gas: str) -> None:
    request = without(changed(example_c(), {"/survey/chimney/flue": flue}), "/survey/services/gas")
    notes = {note.pointer: note.value for note in job_of(request).assumptions}

    assert gas == notes["/survey/services/gas"]


@pytest.mark.parametrize(
    ("values", "longest_mm"),
    [
        ({}, 4800),
        ({"building": "flat", "storey": 0}, 4800),
        ({"building": "flat", "storey": 2}, 2400),
        ({"building": "house", "storey": 1}, 4800),
        ({"stairs": "winding"}, 3000),
        ({"building": "flat", "storey": 2, "stairs": "winding"}, 2400),
        ({"building": "flat", "storey": 2, "longest_length_mm": 3600}, 3600),
    ],
)
def test_longest_bar_that_passes(values: dict[str, object], longest_mm: float) -> None:
    """4800 house, 2400 flat above ground floor; winding: limit 3000 unless measured; longer stock is not offered."""
    request = changed(
        without(example_c(), f"{SITE}/longest_length_mm"), {f"{SITE}/{name}": value for name, value in values.items()}
    )

    assert longest_mm == job_of(request).timber.stock[-1].length_tenth_mm / 10


@pytest.mark.parametrize(
    ("values", "width_mm"),
    [
        ({}, 1220),
        ({"stairs": "winding"}, 600),
        ({"route": [{"kind": "lift", "width_mm": 900}]}, 600),
        ({"route": [{"kind": "door", "width_mm": 760}]}, 1220),
        ({"stairs": "winding", "largest_board_width_mm": 900}, 900),
    ],
)
def test_largest_board_that_passes(values: dict[str, object], width_mm: float) -> None:
    """2440 x 1220; 600 (ripped at the yard) if a lift or a winding stair."""
    bare = without(example_c(), f"{SITE}/largest_board_length_mm", f"{SITE}/largest_board_width_mm")
    job = job_of(changed(bare, {f"{SITE}/{name}": value for name, value in values.items()}))

    assert (2440, width_mm) == (job.largest_board_length_tenth_mm / 10, job.largest_board_width_tenth_mm / 10)


def test_a_scan_that_was_done() -> None:
    assert job_of(changed(example_c(), {"/survey/services/cable_scan": "done"})).cables_scanned
