"""Survey.md, section 5: joists count only where they were found; a part-height breast asks for none."""

from __future__ import annotations

import pytest

from service.survey.ceiling import JoistDirection, Noggins
from tests.examples_of import changed, example_a, example_c, frame_of, job_of, without

CEILING = "/survey/ceiling"
FOUND = f"{CEILING}/joist_positions_mm"
PITCHED = {f"{CEILING}/first_joist_mm": 1750, f"{CEILING}/joist_spacing_mm": 400}


def pitched(known: str) -> dict[str, object]:
    """Example A with one joist found and a pitch that is known somehow."""
    request = changed(without(example_a(), FOUND), PITCHED)
    return changed(request, {"/survey/provenance": {f"{CEILING}/joist_spacing_mm": known}})


def test_defaults_of_an_unknown_ceiling() -> None:
    job = job_of(without(example_a(), CEILING))

    assert {
        f"{CEILING}/textured_coating": "unknown", f"{CEILING}/kind": "boarded_joists", f"{CEILING}/joists": "unknown",
        f"{CEILING}/lining_mm": 12.5,
    } == {note.pointer: note.value for note in job.assumptions if note.pointer.startswith(CEILING)}  # fmt: skip
    assert (JoistDirection.UNKNOWN, (), 125, True, Noggins.NONE) == (
        job.joists, job.joists_tenth_mm, job.ceiling_lining_tenth_mm, job.ceiling_holds_screws, job.noggins
    )  # fmt: skip


def test_part_height_asks_for_no_joists() -> None:
    job = job_of(without(example_c(), CEILING))

    assert JoistDirection.UNKNOWN is job.joists
    assert f"{CEILING}/joists" not in {note.pointer for note in job.assumptions}


def test_joists_found_count_from_the_left_end_of_the_frame() -> None:
    """Worked-examples.md, section 0: x = 63.5 + 400 i."""
    assert (635, 4635, 8635, 12635) == job_of(example_a()).joists_tenth_mm


@pytest.mark.parametrize("known", ["measured", "stated"])
def test_joists_by_one_found_and_a_pitch(known: str) -> None:
    job = job_of(pitched(known))

    assert {635, 4635, 8635, 12635} <= set(job.joists_tenth_mm)
    assert job.joists_tenth_mm == tuple(sorted(job.joists_tenth_mm))
    assert 8 == len(frame_of(pitched(known)).ceiling_screws)


def test_an_assumed_pitch_counts_no_screw() -> None:
    """Positions are derived only if both are measured or stated."""
    job = job_of(pitched("assumed"))

    assert () == job.joists_tenth_mm
    assert FOUND in {note.pointer for note in job.assumptions}
    assert () == frame_of(pitched("assumed")).ceiling_screws


def test_joists_not_found() -> None:
    job = job_of(without(example_a(), FOUND))

    assert () == job.joists_tenth_mm
    assert "not found" == {note.pointer: note.value for note in job.assumptions}[FOUND]


def test_joists_along_the_wall_are_not_asked_for() -> None:
    job = job_of(changed(without(example_a(), FOUND), {f"{CEILING}/joists": "along_wall"}))

    assert (JoistDirection.ALONG_WALL, ()) == (job.joists, job.joists_tenth_mm)
    assert FOUND not in {note.pointer for note in job.assumptions}


@pytest.mark.parametrize(
    ("kind", "holds"),
    [
        ("boarded_joists", True), ("lath_and_plaster", True), ("exposed_beams", True), ("suspended_grid", False),
        ("hollow_plank", False), ("post_tensioned", False), ("concrete_cast", False), ("unknown", False),
    ],
)  # fmt: skip
def test_ceilings_that_hold_screws(kind: str, *, holds: bool) -> None:
    """suspended_grid: nothing fixed to it; hollow_plank, post_tensioned: no drilling."""
    request = changed(example_a(), {f"{CEILING}/kind": kind})

    assert holds is job_of(request).ceiling_holds_screws
    assert (8 if holds else 0) == len(frame_of(request).ceiling_screws)
