"""The void, the recess and the wall above the outlet: `knowledge/heat.md`, sections 4 to 6."""

from __future__ import annotations

import re

import pytest
from scipy.optimize import brentq  # type: ignore[import-untyped]  # the library has no types

from service.checks import Verdict
from service.checks.void_heat import (
    AIR_INLET,
    AIR_OUTLET,
    HOT_JET,
    RECESS_TEMPERATURE,
    VOID_MOVEMENT,
    VOID_TEMPERATURE,
    WALL_PLUME,
    recess_checks,
    void_checks,
    void_deg_c,
)
from service.engineering import cavity
from tests.bill.bill_facts import one_sided
from tests.checks.by_manual import by_manual, under_screen
from tests.checks.grounds import ground_of
from tests.checks.results import the_check, values, why_skipped
from tests.checks.words_of import reviewed, words_of
from tests.examples_of import changed
from tests.sold_examples import sold

SMALL = {
    "/survey/brief/breast_width_mm": 950, "/survey/brief/breast_depth_mm": 250, "/survey/brief/appliance_shift_mm": 0,
    "/survey/brief/top": {"kind": "part_height", "height_mm": 880},
}  # fmt: skip
# Faces of A: base, upper strips less the recess, returns of base and above the glass (worked-examples.md, panels of A).
AREA_A_M2 = 1.357 * 0.43 + 1.357 * (0.916 + 0.679) - 1.064 * 0.657 + 2 * 0.43 * 0.43 + 2 * 0.43 * 1.595


def test_the_void_of_a() -> None:
    """By hand: 0.05 x 2000 W, UA of the faces through 15 mm MDF between two films, no openings, times 1.3, over 25 degrees."""
    found = the_check(void_checks, ground_of(sold("A")), VOID_TEMPERATURE)
    ua_w_per_k = AREA_A_M2 / (0.13 + 0.015 / 0.14 + 0.13)

    assert pytest.approx(25 + 1.3 * 100 / ua_w_per_k, abs=0.01) == found.demand.value
    assert 45 == (found.resistance.value if found.resistance else None)  # the maker's, demo AF-302
    assert Verdict.PASS is found.verdict
    assert pytest.approx(ua_w_per_k, rel=1e-4) == found.inputs[1].value


def test_a_void_never_gives_off_less_than_a_least_power() -> None:
    """Heat.md 1: never less than 40 W: a heater of 500 W would give 25."""
    found = the_check(void_checks, ground_of(by_manual(heat_output_w=500)), VOID_TEMPERATURE)

    assert 40 == found.inputs[0].value


def test_a_small_void_fails_and_the_openings_named_would_do() -> None:
    """The openings are put back into the balance: at most the rise that is allowed (E5 of worked-checks.md works so)."""
    ground = ground_of(changed(one_sided("AF-101"), SMALL))
    found = the_check(void_checks, ground, VOID_TEMPERATURE)
    each_mm2, stack_mm = (float(one) for one in re.findall(r"(\d+) mm2 free area each.*?(\d+) mm apart", found.remedy)[0])
    flow = cavity.flow_per_root_rise_m3_per_s(
        cavity.opening_in_series_m2(each_mm2 / 1e6, each_mm2 / 1e6), stack_mm / 1000, discharge_ratio=0.6
    )
    rise_k = brentq(lambda dt: cavity.HEAT_PER_FLOW_J_M3_K * flow * dt**1.5 - 75, 0.01, 100)

    assert Verdict.FAIL is found.verdict
    assert pytest.approx((45 - 25) / 1.3, rel=0.01) == rise_k
    assert rise_k <= (45 - 25) / 1.3


def test_an_unstated_limit_of_the_void_is_that_of_the_boards_and_provisional() -> None:
    """Heat.md 5: MDF 65, plasterboard 49."""
    wood = the_check(void_checks, ground_of(by_manual(max_void_deg_c=None)), VOID_TEMPERATURE)
    gypsum = the_check(
        void_checks,
        ground_of(
            changed(
                by_manual(max_void_deg_c=None),
                {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2125K"}, "/survey/brief/finish": "skimmed"},
            )
        ),
        VOID_TEMPERATURE,
    )

    assert [(Verdict.PROVISIONAL, 65), (Verdict.PROVISIONAL, 49)] == [(one.verdict, values(one)[1]) for one in (wood, gypsum)]
    assert "ask the maker" in wood.remedy


def test_joints_move_before_boards_suffer() -> None:
    """Heat.md 5: 50 degrees warn; it only advises."""
    small = the_check(void_checks, ground_of(changed(one_sided("AF-101"), SMALL)), VOID_MOVEMENT)

    assert (Verdict.ADVISE, 50) == (small.verdict, values(small)[1])
    assert Verdict.PASS is the_check(void_checks, ground_of(sold("A")), VOID_MOVEMENT).verdict


def test_a_limit_below_the_room_cannot_be_had() -> None:
    found = the_check(void_checks, ground_of(by_manual(max_void_deg_c=25)), VOID_TEMPERATURE)

    assert Verdict.FAIL is found.verdict
    assert "cannot be had" in found.remedy


def test_no_heat_no_check() -> None:
    cold = ground_of(by_manual(heat_output_w=0, outlet_position="none"))

    assert "no heat" in why_skipped(void_checks, cold, VOID_TEMPERATURE)
    assert "no heat" in why_skipped(void_checks, cold, VOID_MOVEMENT)


def test_a_wider_breast_keeps_its_void_cooler() -> None:
    reached = [
        void_deg_c(ground_of(changed(one_sided("AF-101"), {**SMALL, "/survey/brief/breast_width_mm": width})))
        for width in (950, 1200, 1800)
    ]

    assert sorted(reached, reverse=True) == reached


def test_air_from_the_void_needs_a_grille() -> None:
    """Demo AF-105: 9000 mm2 at the rear; 0.5 of gross where no free area is declared (heat.md 4)."""
    ground = ground_of(changed(one_sided("AF-105"), {"/survey/brief/breast_depth_mm": 330}))
    found = the_check(void_checks, ground, AIR_INLET)

    assert (Verdict.FAIL, (9000, 0)) == (found.verdict, values(found))
    assert "9000 mm2 free area, about 18000 mm2" in found.remedy
    assert "draws its air through the void" in why_skipped(void_checks, ground, VOID_TEMPERATURE)


def test_air_at_the_front_is_left_free() -> None:
    assert "9000 mm2, under glass" in why_skipped(void_checks, ground_of(sold("A")), AIR_INLET)
    assert "takes no air" in why_skipped(void_checks, ground_of(by_manual(air_inlet_area_mm2=0)), AIR_INLET)


def test_a_fire_that_may_face_the_void_only() -> None:
    found = the_check(void_checks, ground_of(by_manual(air_may_face="void")), AIR_INLET)

    assert (Verdict.FAIL, 7000) == (found.verdict, found.demand.value)


@pytest.mark.parametrize("figure", ["air_inlet_area_mm2", "air_inlet_position"])
def test_air_that_the_manual_does_not_state_is_provisional(figure: str) -> None:
    found = the_check(void_checks, ground_of(by_manual(**{figure: None})), AIR_INLET)

    assert Verdict.PROVISIONAL is found.verdict
    assert "ask the maker" in found.remedy


def test_an_outlet_of_air_into_the_void() -> None:
    found = the_check(void_checks, ground_of(by_manual(air_outlet_area_mm2=4000, air_outlet_position="side")), AIR_OUTLET)
    front = ground_of(by_manual(air_outlet_area_mm2=4000, air_outlet_position="front_top"))

    assert (Verdict.FAIL, (4000, 0)) == (found.verdict, values(found))
    assert "no air outlet" in why_skipped(void_checks, front, AIR_OUTLET)
    assert "no air outlet" in why_skipped(void_checks, ground_of(sold("A")), AIR_OUTLET)


def test_the_recess_of_a() -> None:
    """By hand: half of 75 W; gaps of 50 over (1064 - 440) mm under and over; 607 mm between their middles; root by scipy."""
    found = the_check(recess_checks, ground_of(sold("A")), RECESS_TEMPERATURE)
    gap_m2 = 0.05 * (1.064 - 0.440)
    k = 1.204 * 1006 * 0.6 * gap_m2 / 2**0.5 * (2 * 9.80665 * 0.607 / 294.15) ** 0.5
    rise_k = brentq(lambda dt: k * dt**1.5 - 37.5, 0.1, 50)

    assert pytest.approx(25 + 1.3 * rise_k, abs=0.01) == found.demand.value
    assert (Verdict.PASS, 40) == (found.verdict, values(found)[1])


def _screen(**figures: object) -> dict[str, object]:
    return {
        "kind": "custom", "name": "s", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
        "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200, "least_gap_mm": 50, **figures,
    }  # fmt: skip


def test_what_the_maker_of_the_screen_does_not_state() -> None:
    no_power = the_check(recess_checks, ground_of(sold("A", survey__brief__screen=_screen())), RECESS_TEMPERATURE)
    no_limit = the_check(recess_checks, ground_of(sold("A", survey__brief__screen=_screen(power_w=75))), RECESS_TEMPERATURE)

    assert (Verdict.PROVISIONAL, None) == (no_power.verdict, no_power.resistance)
    assert (Verdict.PROVISIONAL, 40) == (no_limit.verdict, values(no_limit)[1])
    assert no_power.remedy
    assert no_limit.remedy


def test_a_hot_recess_fails() -> None:
    hot = _screen(power_w=3000, max_ambient_deg_c=40)
    found = the_check(recess_checks, ground_of(sold("A", survey__brief__screen=hot)), RECESS_TEMPERATURE)

    assert Verdict.FAIL is found.verdict
    assert "more free air" in found.remedy
    assert "no screen" in why_skipped(recess_checks, ground_of(sold("C")), RECESS_TEMPERATURE)


def test_the_plume_is_told_only_where_the_maker_is_silent() -> None:
    """Worked-checks.md, E12, scaled by P^(2/3) / (w^(2/3) x): 1200 W over 0.9 m at 0.35 m gives 39.062 K."""
    found = the_check(recess_checks, ground_of(under_screen(outlet_to_screen_least_mm=None)), WALL_PLUME)
    expected_k = 39.062 * (1800 / 1200 * 0.9 / 0.76) ** (2 / 3) * 350 / 300

    assert pytest.approx(expected_k, rel=1e-3) == found.demand.value
    assert (Verdict.ADVISE, 15) == (found.verdict, values(found)[1])
    assert f"higher by {300 * (expected_k / 15 - 1):.0f} mm" in found.remedy
    assert "maker's own distance" in why_skipped(recess_checks, ground_of(sold("A")), WALL_PLUME)


def test_where_there_is_no_plume() -> None:
    unknown = ground_of(under_screen(outlet_to_screen_least_mm=None, outlet_height_mm=None))
    cold = ground_of(under_screen(outlet_position="none", heat_output_w=0))

    assert "not stated" in why_skipped(recess_checks, unknown, WALL_PLUME)
    assert "no screen hangs" in why_skipped(recess_checks, cold, WALL_PLUME)
    assert "no screen hangs" in why_skipped(recess_checks, ground_of(sold("C")), WALL_PLUME)


@pytest.mark.parametrize(("rise", "verdict"), [(60, Verdict.PASS), (61, Verdict.ADVISE)])
def test_a_hot_jet(rise: float, verdict: Verdict) -> None:
    """Heat.md 6: over 60 K print "hot jet"."""
    found = the_check(recess_checks, ground_of(by_manual(outlet_rise_k=rise)), HOT_JET)

    assert verdict is found.verdict
    assert (found.remedy != "") == (verdict is Verdict.ADVISE)
    assert "states no rise" in why_skipped(recess_checks, ground_of(sold("A")), HOT_JET)


def test_the_words_are_those_that_were_read() -> None:
    assert reviewed("void_heat") == words_of("void_heat"), "python -m tests.checks.words_of, then read the diff"
