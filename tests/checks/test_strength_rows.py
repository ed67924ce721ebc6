from __future__ import annotations

import msgspec
import pytest

from service.checks import Report
from service.checks.strength_rows import HOLDING, TRIMMER, strength_rows
from service.survey.wishes import ExtraKind
from tests.checks.row_cases import A, B, C, codes, facts_of, on


def says(code: str, *unmet: str) -> str:
    return {one.code: one.says for one in strength_rows(facts_of(A, *unmet))}.get(code, "")


@pytest.mark.parametrize("code", HOLDING)
def test_whatever_holds_the_breast_and_fails_is_told(code: str) -> None:
    """S02: a check of wall, ceiling, ladder or standing breast that still fails; it says the check's words and remedy."""
    assert "too small" in says("S02", code)
    assert "Larger." in says("S02", code)


@pytest.mark.parametrize("code", TRIMMER)
def test_a_trimmer_that_fails_is_told(code: str) -> None:
    assert "too small" in says("S12", code)


def test_a_trimmer_over_three_metres_is_an_engineers() -> None:
    """S12: span > 3000, and not at 3000."""
    facts = facts_of(A)
    for span, told in ((30_000, False), (30_001, True)):
        sizes = msgspec.structs.replace(facts.frame.sizes, trimmer_span_tenth_mm=span)
        wide = msgspec.structs.replace(facts, frame=msgspec.structs.replace(facts.frame, sizes=sizes))

        assert told == ("S12" in {one.code for one in strength_rows(wide)})


def test_a_design_that_passes_is_quiet() -> None:
    assert not {"S02", "S12", "S16", "S17", "S19", "S21"} & codes(A)


def test_weight_is_told_on_a_timber_floor_only() -> None:
    """S13: over 3 kN/m2; B: 203 kg x 9.81 / (1.65 x 0.40) = 3.02; A: under it."""
    assert "S13" in codes(B)
    assert "S13" not in codes(on(B, survey__floor__construction="concrete"))
    assert "S13" not in codes(A)


def test_a_shelf_tips_a_breast_of_part_height_only() -> None:
    for request, told in ((C, True), (A, False)):
        found = {one.code for one in strength_rows(facts_of(request, extras=(ExtraKind.SHELF, ExtraKind.BEAM)))}

        assert told == ("S16" in found)


def test_lights_tip_nothing() -> None:
    assert "S16" not in {one.code for one in strength_rows(facts_of(C, extras=(ExtraKind.LIGHTS,)))}


def test_without_checks_nothing_is_told() -> None:
    assert [] == list(strength_rows(msgspec.structs.replace(facts_of(A), report=Report())))
