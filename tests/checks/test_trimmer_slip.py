"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A, B and C."""

from __future__ import annotations

import pytest

from service.checks.trimmer_load import trimmer_of
from service.checks.trimmer_slip import end_screws, end_slip, on_jacks
from tests.checks.after_checks import after_checks, laid_out, of_hardware


@pytest.mark.parametrize(("example", "expected_mm"), [("A", 0.230), ("B", 0.233)])
def test_slip_in_brackets(example: str, expected_mm: float) -> None:
    """K_ser 1547 N/mm of each of two bracket screws of a leg; permanent x 2.2, half of a person x 1."""
    ground = after_checks(example)

    assert pytest.approx(expected_mm, abs=0.0006) == end_slip(trimmer_of(ground), ground).slip_mm


def test_a_rail_that_rests_on_jacks_does_not_slip() -> None:
    ground = laid_out("C")

    assert on_jacks(ground)
    assert () == end_screws(trimmer_of(ground), ground)
    assert 0 == end_slip(trimmer_of(ground), ground).slip_mm


def test_plies_beside_jacks_slip_in_their_three_screws() -> None:
    """By hand: 0.7332 of (0.1126 x 770 / 2 x 2.2 + 500) N on 3 x 1547 N/mm."""
    ground = after_checks("C")

    assert [3, 3] == [end.screw_count for end in end_screws(trimmer_of(ground), ground)]
    assert pytest.approx(0.7332 * (0.1126 * 385 * 2.2 + 500) / 3 / 1547, rel=1e-3) == end_slip(trimmer_of(ground), ground).slip_mm


def test_each_ply_has_a_bracket_of_its_own() -> None:
    ground = after_checks("A")
    trimmer = trimmer_of(ground)

    assert [6, 6] == [end.screw_count for end in end_screws(trimmer.with_plies(3), ground)]
    assert end_slip(trimmer.with_plies(3), ground).slip_mm < end_slip(trimmer, ground).slip_mm
    assert [(2, 1.0), (2, 1.0)] == [(end.screw_count, end.share_ratio) for end in end_screws(trimmer.with_plies(0), ground)]


@pytest.mark.parametrize("missing", ["bracket", "bracket_screw"])
def test_no_bracket_no_figure(missing: str) -> None:
    ground = of_hardware(after_checks("A"), **{missing: None})

    assert "not known" in end_slip(trimmer_of(ground), ground).unverified
