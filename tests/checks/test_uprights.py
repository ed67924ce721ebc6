"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A; `knowledge/worked-checks.md`, A13, A14, A22."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.checks.check import Verdict
from service.checks.uprights import BENDING, COLUMN, SAG, SIDEWAYS, upright_checks
from service.frame import Role
from tests.checks.after_checks import after_checks, check_of, checks_of, exact_ratio, skipped_of
from tests.checks.grounds import ground_of, rules_without_ladder
from tests.engineering.beam_model import beam
from tests.examples_of import changed, example_a


def test_jamb_under_a_hand() -> None:
    """A: 128.8 N m on edge, 0.209."""
    found = check_of(upright_checks, after_checks("A"), BENDING, "U-J1")

    assert pytest.approx(0.209, abs=0.0006) == exact_ratio(found)
    assert pytest.approx(128.8, abs=0.06) == found.demand.value / 1000


def test_jamb_against_a_finite_element_beam() -> None:
    """PyNiteFEA: the jamb of A, 687 mm, 0.5 kN at mid height."""
    found = beam(687, 8000 * 38 * 89**3 / 12, points=((500, 343.5),))

    sag, bending = (check_of(upright_checks, after_checks("A"), code, "U-J1") for code in (SAG, BENDING))

    assert pytest.approx(found.middle_sag_mm, rel=1e-4) == sag.demand.value
    assert pytest.approx(1.5 * found.moment_n_mm, rel=1e-4) == bending.demand.value


def test_hands_reach_up_to_a_height() -> None:
    """structure.md, 4: any height up to 1.5 m: the jamb of A from 1130 on, and no cripple above the head at 1855."""
    inputs = {one.symbol: one.value for one in check_of(upright_checks, after_checks("A"), BENDING, "U-J1").inputs}
    subjects = {one.subject for one in checks_of(upright_checks(after_checks("A")), BENDING)}

    assert {"L": 687.0, "a": 343.5} == {name: inputs[name] for name in ("L", "a")}
    assert not {subject for subject in subjects if subject.startswith("U-CA")}


def test_push_on_a_return_bends_the_front_upright_on_its_weak_side() -> None:
    """By hand, A: between sill (1111) and head (1836) 725, a hand at mid height 362.5 on W = 89 x 38^2 / 6."""
    by_hand = 1.5 * 500 * 725 / 4 / (89 * 38**2 / 6) / (0.9 * 1.3 * 16 / 1.3)

    assert pytest.approx(by_hand) == exact_ratio(check_of(upright_checks, after_checks("A"), SIDEWAYS))


def test_jack_with_a_person_over_it_or_a_hand_on_it() -> None:
    """By hand, C: 59 N of weight on k_c 0.7 of the section along the wall, and 102.2 N m of a hand on edge."""
    found = check_of(upright_checks, after_checks("C"), COLUMN, "U-K1")
    inputs = {one.symbol: one.value for one in found.inputs}
    hand = 1.5 * 500 * 545 / 4 / (38 * 63**2 / 6) / (0.9 * (150 / 63) ** 0.2 * 16 / 1.3)

    assert pytest.approx(hand) == inputs["M/M_Rd"]
    assert pytest.approx(inputs["N_G,d"] / inputs["N_Rd,y"] + hand) == found.demand.value
    assert pytest.approx(1.35 * 0.1126 * 385 + 1500, rel=1e-3) == inputs["N_d"]


def test_what_hangs_is_no_column() -> None:
    assert {COLUMN} == set(skipped_of(upright_checks, after_checks("A")))


def test_noggins_halve_the_length_that_buckles() -> None:
    """framing.md, 10.2, row 6: the cheek noggin at mid height of a jack, added here by hand."""
    ground = after_checks("C")
    noggin = next(one for one in ground.frame.members if one.role is Role.CHEEK_NOGGIN)
    low = 1340 + (5450 - 380) // 2
    box = msgspec.structs.replace(noggin.box, z0_tenth_mm=low, z1_tenth_mm=low + 380)
    added = msgspec.structs.replace(noggin, mark="U-CN9", box=box)
    held = msgspec.structs.replace(ground, frame=msgspec.structs.replace(ground.frame, members=(*ground.frame.members, added)))
    before, after = (
        {one.symbol: one.value for one in check_of(upright_checks, each, COLUMN, "U-K1").inputs}["L_z"] for each in (ground, held)
    )

    assert after < 0.6 * before


def test_a_high_recess_out_of_reach_has_no_push_on_its_jambs() -> None:
    high = ground_of(changed(example_a(), {"/survey/brief/sill_above_appliance_mm": 590}), rules=rules_without_ladder())

    assert not [one for one in checks_of(upright_checks(high), BENDING) if one.subject.startswith("U-J")]


def test_a_remedy_names_class_or_number() -> None:
    """A hand ten times as strong: the jamb wants several members; sags say the same."""
    rules = rules_without_ladder()
    strong = msgspec.structs.replace(rules, actions=msgspec.structs.replace(rules.actions, hand_n=5000.0))
    bending, sag = (check_of(upright_checks, ground_of(example_a(), rules=strong), code, "U-J1") for code in (BENDING, SAG))
    far = msgspec.structs.replace(rules, actions=msgspec.structs.replace(rules.actions, hand_n=20_000.0))

    assert Verdict.FAIL is bending.verdict
    assert "3 members beside each other" == bending.remedy
    assert Verdict.PASS is sag.verdict
    assert "members beside each other" in check_of(upright_checks, ground_of(example_a(), rules=far), SAG, "U-J1").remedy


@given(st.floats(100, 3000), st.floats(100, 3000))
def test_a_stronger_hand_never_helps(one_n: float, other_n: float) -> None:
    ground = after_checks("C")
    light, heavy = (
        upright_checks(
            msgspec.structs.replace(
                ground,
                rules=msgspec.structs.replace(ground.rules, actions=msgspec.structs.replace(ground.rules.actions, hand_n=load_n)),
            )
        )
        for load_n in sorted((one_n, other_n))
    )

    for code in (BENDING, SAG, SIDEWAYS, COLUMN):
        for before, after in zip(checks_of(light, code), checks_of(heavy, code), strict=True):
            assert exact_ratio(after) >= exact_ratio(before)
