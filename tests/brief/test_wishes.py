"""Survey.md, section 10, and framing.md, section 14: wishes that contradict, and wishes that a person lays out."""

from __future__ import annotations

import pytest

from tests.examples_of import changed, example_a, example_c, faults_of, job_of, unmet_of

BRIEF = "/survey/brief"


def test_a_fire_with_glass_at_an_end_cannot_be_shifted() -> None:
    (fault,) = faults_of(changed(example_a(), {f"{BRIEF}/appliance_shift_mm": 20}))

    assert f"{BRIEF}/appliance_shift_mm" == fault.pointer
    assert () == faults_of(changed(example_a(), {f"{BRIEF}/appliance_shift_mm": 0}))


def test_a_bracket_without_a_screen_is_doubtful() -> None:
    request = changed(example_c(), {f"{BRIEF}/screen_bracket": {"kind": "catalogue", "model": "BK-301"}})

    assert f"{BRIEF}/screen_bracket" in {doubt.pointer for doubt in job_of(request).doubts}
    assert job_of(request).bracket is None
    assert () == job_of(example_a()).doubts


def test_an_old_hearth_is_doubtful() -> None:
    pointer = "/survey/chimney/hearth_height_mm"

    assert pointer in {doubt.pointer for doubt in job_of(changed(example_c(), {pointer: 40})).doubts}
    assert () == job_of(changed(example_c(), {pointer: 0})).doubts


LEFT_TO_A_PERSON = {
    "shelf": {f"{BRIEF}/extras": [{"kind": "shelf"}]},
    "soundbar niche": {f"{BRIEF}/extras": [{"kind": "soundbar_niche", "height_mm": 120}]},
    "tiled": {f"{BRIEF}/finish": "tiled"},
    "slatted": {f"{BRIEF}/finish": "slatted"},
    "facing": {f"{BRIEF}/facing_kg_m2": 12},
    "on the face": {f"{BRIEF}/screen_place": "on_face"},
    "3 m": {f"{BRIEF}/appliance": {"kind": "size_class", "open_ends_count": 2, "length_mm": 3009}},
    "cornice": {"/survey/ceiling/cornice": {"kind": "plaster", "height_mm": 80, "projection_mm": 80}},
}


@pytest.mark.parametrize(("words", "values"), LEFT_TO_A_PERSON.items())
def test_what_is_not_laid_out_here(words: str, values: dict[str, object]) -> None:
    """Nothing is silently left out: the answer is unbuildable here, with a person as the offer."""
    request = changed(example_a(), values)
    (says,) = job_of(request).by_hand

    assert words in says
    assert "by_hand" in {unmet.code for unmet in unmet_of(request)}


@pytest.mark.parametrize(
    "values",
    [
        {f"{BRIEF}/extras": []},
        {f"{BRIEF}/finish": "skimmed"},
        {f"{BRIEF}/facing_kg_m2": 0},
        {f"{BRIEF}/screen_place": "recess"},
        {f"{BRIEF}/appliance": {"kind": "size_class", "open_ends_count": 2, "length_mm": 3008}},
        {"/survey/ceiling/cornice": {"kind": "none"}},
    ],
)
def test_what_is_laid_out_here(values: dict[str, object]) -> None:
    assert () == job_of(changed(example_a(), values)).by_hand


def test_a_cornice_over_a_part_height_breast_stays() -> None:
    cornice = {"/survey/ceiling/cornice": {"kind": "plaster", "height_mm": 80, "projection_mm": 80}}

    assert () == job_of(changed(example_c(), cornice)).by_hand


def test_a_screen_that_is_not_there_hangs_nowhere() -> None:
    assert () == job_of(changed(example_c(), {f"{BRIEF}/screen_place": "on_face"})).by_hand
