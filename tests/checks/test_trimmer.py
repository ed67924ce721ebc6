"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A, B, C and C0, at their printed precision."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.checks.check import Verdict
from service.checks.timber import bent_ratio
from service.checks.trimmer import BENDING, GAP, SAG, SHEAR, SIDEWAYS, final_sag_mm, trimmer_checks
from service.checks.trimmer_load import trimmer_of
from service.rules import LoadDuration, load_rules
from tests.checks.after_checks import (
    ADDED,
    REQUESTS,
    after_checks,
    check_of,
    checks_of,
    exact_ratio,
    laid_out,
    of_hardware,
    of_job,
    wished,
)
from tests.checks.grounds import ground_of
from tests.engineering.beam_model import beam
from tests.examples_of import changed, example_c

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.rules import StrengthClass

CLASSES = sorted(load_rules().timber, key=lambda one: one.bending_mpa)
BEFORE, AFTER = laid_out, after_checks


@pytest.mark.parametrize(
    ("ground", "code", "subject", "expected"),
    [
        (AFTER("A"), BENDING, "U-TP1", 0.733), (AFTER("A"), BENDING, "U-T1", 0.267), (AFTER("A"), SHEAR, "U-TP1", 0.432),
        (AFTER("A"), SAG, None, 0.404), (AFTER("A"), GAP, None, 0.476),
        (AFTER("B"), BENDING, "U-TP1", 0.660), (AFTER("B"), BENDING, "U-T1", 0.269), (AFTER("B"), SHEAR, "U-TP1", 0.335),
        (AFTER("B"), SAG, None, 0.522), (AFTER("B"), GAP, None, 0.543),
        (BEFORE("C"), BENDING, "U-T1", 1.370), (BEFORE("C"), SAG, None, 1.157),
        (AFTER("C"), BENDING, "U-TP1", 0.664), (AFTER("C"), BENDING, "U-T1", 0.367), (AFTER("C"), SHEAR, "U-TP1", 0.482),
        (AFTER("C"), SAG, None, 0.311),
        (BEFORE("C0"), BENDING, "U-T1", 1.377), (BEFORE("C0"), SAG, None, 1.169),
        (AFTER("C0"), BENDING, "U-TP1", 0.668), (AFTER("C0"), BENDING, "U-T1", 0.368), (AFTER("C0"), SHEAR, "U-TP1", 0.485),
        (AFTER("C0"), SAG, None, 0.314),
    ],
)  # fmt: skip
def test_utilisations_of_the_worked_examples(ground: Ground, code: str, subject: str | None, expected: float) -> None:
    assert pytest.approx(expected, abs=0.0006) == exact_ratio(check_of(trimmer_checks, ground, code, subject))


def test_moment_and_sag_against_a_finite_element_beam() -> None:
    """PyNiteFEA: the trimmer of A with its ply as one beam of both stiffnesses, factored load and person at mid span."""
    trimmer = trimmer_of(after_checks("A"))
    found = beam(
        trimmer.span_mm,
        trimmer.stiffness_n_mm2,
        uniform_n_per_mm=1.35 * trimmer.permanent_n_per_mm,
        points=((1500.0, trimmer.span_mm / 2),),
    )
    ply = check_of(trimmer_checks, after_checks("A"), BENDING, "U-TP1")

    assert pytest.approx(found.moment_n_mm * trimmer.ply_share_ratio, rel=1e-4) == ply.demand.value
    assert pytest.approx(found.middle_sag_mm, rel=1e-4) == 1.35 * trimmer.permanent_sag_mm + 1.5 * trimmer.person_sag_mm


def test_flat_trimmer_of_c_asks_for_one_ply_and_passes_with_it() -> None:
    """worked-examples.md, C: first remedy 1 ply; the other one, a trimmer of C24, comes to 0.913 and 0.841."""
    failing = check_of(trimmer_checks, laid_out("C"), BENDING)
    trimmer = trimmer_of(laid_out("C"))
    stronger = trimmer.of_class(load_rules().strength_class("C24"))

    assert "one ply on edge behind the trimmer, or an opening that spans at most 567 mm" == failing.remedy
    assert Verdict.FAIL is failing.verdict
    assert pytest.approx(0.913, abs=0.0006) == bent_ratio(
        stronger.flat,
        1.35 * stronger.permanent_moment_n_mm + 1.5 * stronger.person_moment_n_mm,
        LoadDuration.SHORT,
        laid_out("C"),
    )
    assert pytest.approx(0.841, abs=0.0006) == final_sag_mm(stronger, laid_out("C")) / 3.85


def test_opening_that_the_remedy_names_would_pass() -> None:
    """A remedy applied makes that check pass: the longest opening of the laid-out C, to a whole millimetre."""
    trimmer, ground = trimmer_of(laid_out("C")), laid_out("C")
    ratios = [
        bent_ratio(made.flat, 1.35 * made.permanent_moment_n_mm + 1.5 * made.person_moment_n_mm, LoadDuration.SHORT, ground)
        for made in (trimmer.over(567.0), trimmer.over(568.0))
    ]

    assert ratios[0] <= 1 < ratios[1]


def test_gap_that_the_remedy_names_would_pass() -> None:
    """A fire that states a gap of 4 mm under the trimmer of A: 4.76 mm are asked, so 5 are enough."""
    narrow, wide = (of_job(after_checks("A"), gap_over_tenth_mm=gap) for gap in (40, 50))
    failing = check_of(trimmer_checks, narrow, GAP)

    assert Verdict.FAIL is failing.verdict
    assert failing.remedy.startswith("a gap over the fire of at least 5 mm")
    assert Verdict.PASS is check_of(trimmer_checks, wide, GAP).verdict


def test_push_on_the_face() -> None:
    """By hand: 1.5 x 500 N x 1251 / 4 on W = 38 x 89^2 / 6, and 0.7 of the weight's stress on the flat rail (6.11)."""
    strong = 1.5 * 500 * 1251 / 4 / (38 * 89**2 / 6) / (0.9 * (150 / 89) ** 0.2 * 16 / 1.3)
    weak = 1.35 * 0.2470 * 1251**2 / 8 * 0.1542 / (89 * 38**2 / 6) / (0.9 * 1.3 * 16 / 1.3)

    assert pytest.approx(strong + 0.7 * weak, rel=1e-3) == check_of(trimmer_checks, after_checks("A"), SIDEWAYS).demand.value


def test_plaster_wants_less_sag_than_painted_board() -> None:
    """structure.md 3.7: L/250 behind plasterboard or skim, L/200 otherwise."""
    painted, skimmed = (check_of(trimmer_checks, after_checks(example), SAG) for example in "AB")

    assert pytest.approx(1251 / 200) == (painted.resistance.value if painted.resistance else None)
    assert pytest.approx(1531 / 250) == (skimmed.resistance.value if skimmed.resistance else None)


def test_ends_without_a_screw_are_not_verified() -> None:
    ground = of_hardware(after_checks("A"), bracket_screw=None)

    assert Verdict.PROVISIONAL is check_of(trimmer_checks, ground, GAP).verdict


def test_creep_grows_against_a_cold_outside_wall() -> None:
    """EN 1995-1-1, Table 3.2: k_def 0.6 in service class 1, 0.8 in class 2; k_mod is the same."""
    cold = ground_of(changed(example_c(), {"/survey/wall/external": True, "/survey/wall/external_build": "solid"}))
    warm = ground_of(example_c())
    trimmer = trimmer_of(warm)

    assert pytest.approx(1.8 * trimmer.permanent_sag_mm + trimmer.person_sag_mm) == final_sag_mm(trimmer, cold)
    assert exact_ratio(check_of(trimmer_checks, cold, BENDING)) == exact_ratio(check_of(trimmer_checks, warm, BENDING))


@given(st.floats(300, 2000), st.floats(1, 500), st.sampled_from(CLASSES), st.sampled_from(CLASSES))
def test_longer_spans_and_weaker_classes_never_help(
    span_mm: float, longer_mm: float, one: StrengthClass, other: StrengthClass
) -> None:
    """Laws on one fixed frame."""
    ground = after_checks("C")
    classes = sorted((CLASSES.index(one), CLASSES.index(other)))
    weak, strong = (trimmer_of(ground).of_class(CLASSES[index]).over(span_mm) for index in classes)

    assert final_sag_mm(weak, ground) >= final_sag_mm(strong, ground)
    assert final_sag_mm(weak.over(span_mm + longer_mm), ground) >= final_sag_mm(weak, ground)
    assert bent_ratio(weak.flat, 1e5, LoadDuration.SHORT, ground) >= bent_ratio(strong.flat, 1e5, LoadDuration.SHORT, ground)


@given(st.floats(0, 40), st.floats(0, 40))
def test_a_heavier_face_never_helps(one_kg_m2: float, other_kg_m2: float) -> None:
    """Tile or stone on the face of C."""
    light, heavy = (_with_facing(mass_kg_m2) for mass_kg_m2 in sorted((one_kg_m2, other_kg_m2)))

    for code in (BENDING, SHEAR, SAG, GAP, SIDEWAYS):
        for before, after in zip(checks_of(light, code), checks_of(heavy, code), strict=True):
            assert exact_ratio(after) >= exact_ratio(before)


def _with_facing(mass_kg_m2: float) -> tuple[Result, ...]:
    return trimmer_checks(wished(after_checks("C"), facing_kg_m2=mass_kg_m2))


@pytest.mark.parametrize(("example", "expected"), [("A", 0.674), ("B", 0.710)])
def test_hung_ladders_let_the_trimmer_down(example: str, expected: float) -> None:
    """worked-examples.md, 0: with the hung ladder on, brackets on noggins half way: gap 0.674 of A, 0.710 of B."""
    added = msgspec.structs.replace(ADDED[example], ladder_brackets=True, ladder_halved=True)
    found = check_of(trimmer_checks, ground_of(REQUESTS[example](), added), GAP)

    assert pytest.approx(expected, abs=0.001) == exact_ratio(found)
