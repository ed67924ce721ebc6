"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A, B, C and C0, at their printed precision."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.check import Verdict
from service.checks.rail_ends import END, SECONDARY, rail_end_checks
from service.frame import Additions, Role
from tests.checks.after_checks import after_checks, check_of, checks_of, exact_ratio, laid_out, of_hardware, skipped_of
from tests.checks.grounds import ground_of, rules_without_ladder
from tests.examples_of import example_a, example_c

if TYPE_CHECKING:
    from service.catalogue import Material
    from service.checks.ground import Ground


@pytest.mark.parametrize(
    ("example", "mark", "expected"),
    [
        ("A", "U-TP1", 0.803), ("A", "U-S1", 0.840), ("B", "U-TP1", 0.787), ("B", "U-S1", 0.844),
        ("C", "U-TP1", 0.645), ("C", "U-TF1", 0.838), ("C", "U-TR1", 0.838), ("C0", "U-TP1", 0.648),
    ],
)  # fmt: skip
def test_utilisations_of_the_worked_examples(example: str, mark: str, expected: float) -> None:
    assert pytest.approx(expected, abs=0.0006) == exact_ratio(check_of(rail_end_checks, after_checks(example), END, mark))


def test_rear_rails_hand_over_the_share_of_their_plugs() -> None:
    """A: V of its 2 plugs 341.7 / 2 ends = 170.8 of 1800 N: 0.095; the pull of these plugs comes on top."""
    found = {one.symbol: one.value for one in check_of(rail_end_checks, after_checks("A"), END, "U-TR1").inputs}

    assert pytest.approx(170.8, abs=0.1) == found["V_d"]
    assert pytest.approx(1800) == found["R_1,d"]
    assert pytest.approx(120.7, abs=0.1) == found["H_d"]


@pytest.mark.parametrize(("example", "mark", "demand_n"), [("A", "U-S1", 1512.6), ("B", "U-S1", 1519.5), ("C", "U-TF1", 1508.9)])
def test_screws_in_end_grain_hold_nothing(example: str, mark: str, demand_n: float) -> None:
    """Laid out: 2 end-grain screws, fewer than 3: no value: fails; the remedy names the bracket that passes."""
    request_ground = laid_out(example)
    found = check_of(rail_end_checks, request_ground, END, mark)
    wanted_n = float(found.remedy.split(" N up")[0].rsplit(" ", 1)[1])

    assert Verdict.FAIL is found.verdict
    assert found.utilisation_ratio is None
    assert pytest.approx(demand_n, abs=0.06) == found.demand.value
    assert 0 <= wanted_n - demand_n * 1.3 / 0.9 < 1


def test_bearing_on_a_jack() -> None:
    """By hand, C laid out: 1553 N on (38 + 30 + 30) x 63 across the grain, 2.2 x 0.9 / 1.3 MPa."""
    found = check_of(rail_end_checks, laid_out("C"), END, "U-T1")

    assert pytest.approx(found.demand.value / (98 * 63 * 2.2 * 0.9 / 1.3)) == exact_ratio(found)


def test_brackets_as_the_frame_has_them() -> None:
    """Two brackets bear twice, a heavy one what it declares."""
    sill = (Role.SILL_RAIL,)
    pair = ground_of(example_a(), Additions(bracketed_roles=sill, paired_roles=sill), rules_without_ladder())
    heavy = ground_of(example_a(), Additions(bracketed_roles=sill, heavy_roles=sill), rules_without_ladder())
    one, two, strong = (check_of(rail_end_checks, each, END, "U-S1") for each in (after_checks("A"), pair, heavy))

    assert pytest.approx(2) == exact_ratio(one) / exact_ratio(two)
    assert pytest.approx(4200 / 2600) == exact_ratio(one) / exact_ratio(strong)


def test_undeclared_brackets_are_assumed_by_their_screws() -> None:
    ground = _of_bracket(bracket_up_n=None, bracket_side_n=None)
    found = check_of(rail_end_checks, ground, END, "U-T1")

    assert "assumed" in found.unverified
    assert Verdict.PROVISIONAL is found.verdict
    assert exact_ratio(found) > exact_ratio(check_of(rail_end_checks, after_checks("A"), END, "U-T1"))


@pytest.mark.parametrize(("missing", "example", "mark"), [("bracket", "A", "U-T1"), ("narrow_screw", "C", "U-TP1")])
def test_what_is_not_sold_holds_nothing(missing: str, example: str, mark: str) -> None:
    found = check_of(rail_end_checks, of_hardware(after_checks(example), **{missing: None}), END, mark)

    assert Verdict.FAIL is found.verdict


def test_more_screws_at_the_jack() -> None:
    """C with a person of 3 kN: the remedy names screws, and that many would pass."""
    rules = rules_without_ladder()
    heavy = msgspec.structs.replace(rules, actions=msgspec.structs.replace(rules.actions, person_n=3000.0))
    found = check_of(rail_end_checks, ground_of(example_c(), Additions(ply_count=1), heavy), END, "U-TP1")
    count = int(found.remedy.split(" ")[0])

    assert Verdict.FAIL is found.verdict
    assert count - 1 < 3 * exact_ratio(found) <= count


def test_all_plies_hang_on_the_screws_of_the_first() -> None:
    one, two = (
        check_of(rail_end_checks, ground_of(example_c(), Additions(ply_count=count), rules_without_ladder()), END, "U-TP1")
        for count in (1, 2)
    )

    assert one.demand.value < two.demand.value < 1.3 * one.demand.value


def test_an_arm_asks_more_of_its_bearer() -> None:
    ground = after_checks("A")
    assert ground.job.bracket is not None
    arm = msgspec.structs.replace(ground.job.bracket, kind="arm")
    with_arm = msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, bracket=arm))
    flat, armed = (check_of(rail_end_checks, each, END, "U-B2") for each in (ground, with_arm))

    assert exact_ratio(armed) > exact_ratio(flat)


def test_hung_ladder_takes_the_weight_off_the_rails() -> None:
    """structure.md, 5.13 g: rail fixings count for tension; their rails then carry themselves alone."""
    found = {one.symbol: one.value for one in check_of(rail_end_checks, ground_of(example_a()), END, "U-TR1").inputs}

    assert found["V_d"] < 20
    assert found["H_d"] > 100


def test_secondary_ends_say_why() -> None:
    assert {SECONDARY} == set(skipped_of(rail_end_checks, after_checks("A")))
    assert not [one for one in checks_of(rail_end_checks(after_checks("C")), END) if one.subject == "U-S1"]


def _of_bracket(**values: object) -> Ground:
    bracket: Material | None = after_checks("A").hardware.bracket
    assert bracket is not None
    return of_hardware(after_checks("A"), bracket=msgspec.structs.replace(bracket, **values))
