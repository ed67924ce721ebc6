"""Framing.md, section 13: every code just holds and just does not, its numbers, and an offer that can be taken.

The boundaries of A, B and C are in test_boundaries.py.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from service.frame.refusals import one_of, unmet_if
from tests.examples_of import Request, changed, example_a, example_b, example_c, unmet_of, without
from tests.frame.settings_of import BRIEF, timber

if TYPE_CHECKING:
    from service.errors import Unmet

A, B, C = example_a(), example_b(), example_c()
FLAT: Request = {
    "kind": "custom",
    "name": "flat",
    "open_ends_count": 0,
    "body_width_mm": 760,
    "body_height_mm": 535,
    "body_depth_mm": 100,
    "mass_kg": 21,
    "heat_output_w": 1800,
    "connection": "plug",
    "outlet_position": "front_top",
    "clear_rear_mm": 0,
}


def brief(request: Request, **values: object) -> Request:
    """A request with other wishes."""
    return changed(request, {f"{BRIEF}/{name}": value for name, value in values.items()})


def codes(request: Request) -> list[str]:
    """What keeps a request from being built."""
    return [unmet.code for unmet in unmet_of(request)]


def only(request: Request) -> Unmet:
    """The one thing that keeps a request from being built."""
    (unmet,) = unmet_of(request)
    return unmet


SHALLOW = brief(C, appliance=FLAT, sill_above_appliance_mm=190)  # 38 x 63 in 12 mm board: n = D - 138
RECESSED = brief(A, breast_depth_mm=370)


@pytest.mark.parametrize(("depth_mm", "found"), [(168, []), (167.9, ["depth_ladder"]), (138, []), (138.1, ["depth_ladder"])])
def test_depth_ladder(depth_mm: float, found: list[str]) -> None:
    """N < 30 and n != 0; offer 2d + 30 + tf = 168."""
    request = brief(SHALLOW, breast_depth_mm=depth_mm)

    assert found == codes(request)
    if found:
        assert (168, depth_mm) == (only(request).asked_mm, only(request).available_mm)
        assert "a depth of 168" in only(request).offer


@pytest.mark.parametrize(("body_mm", "found"), [(74, []), (259, []), (259.1, ["depth_screen"])])
def test_depth_screen(body_mm: float, found: list[str]) -> None:
    """D < Dr + tb + b: 25 + 259 + 30 + 18 + 38 = 370."""
    screen = {
        "kind": "custom",
        "name": "deep",
        "diagonal_in": 43,
        "body_width_mm": 964,
        "body_height_mm": 557,
        "body_depth_mm": body_mm,
        "mass_kg": 9.5,
        "hole_pattern_width_mm": 200,
        "hole_pattern_height_mm": 200,
    }
    request = brief(RECESSED, screen=screen)

    assert found == codes(request)
    if found:
        assert "a depth of 370.1" in only(request).offer
        assert [] == codes(brief(request, breast_depth_mm=370.1))


@pytest.mark.parametrize(("width_mm", "found"), [(1141 + 45 + 29, []), (1141 + 45 + 28.9, ["width_fire_2"])])
def test_width_fire_2(width_mm: float, found: list[str]) -> None:
    """Bw - e + cs > Wf - b."""
    assert found == codes(brief(B, screen=None, breast_width_mm=width_mm))


def test_width_ladder() -> None:
    """Ours: a frame no wider than two flat noggins and 30 has no room for its rails: 2 x 140 + 30 = 310."""
    narrow = {**FLAT, "open_ends_count": 2, "body_width_mm": 318, "body_depth_mm": 200}
    request = brief(
        without(C, f"{BRIEF}/open_ends", f"{BRIEF}/breast_width_mm", f"{BRIEF}/appliance_shift_mm"),
        appliance=narrow,
        timber=timber(38, 140),
        breast_depth_mm=400,
        sill_above_appliance_mm=200,
    )

    assert [] == codes(request)
    slimmer = changed(request, {f"{BRIEF}/appliance/body_width_mm": 317.9})
    assert ("width_ladder", 310, 309.9) == (only(slimmer).code, only(slimmer).asked_mm, only(slimmer).available_mm)


@pytest.mark.parametrize(
    ("z0_mm", "asked_mm", "available_mm", "offer"),
    [
        (5, 5, 0, "platform 0, or 12"),
        (11.9, 11.9, 0, "platform 0, or 12"),
        (12, None, None, ""),
        (18, None, None, ""),
        (23.9, None, None, ""),
        (37.9, None, None, ""),
    ],
)
def test_platform(z0_mm: float, asked_mm: float | None, available_mm: float | None, offer: str) -> None:
    """0 < z0 < b: sheets of the catalogue, rest <= 6 by packers; packers alone are no pad."""
    request = brief(C, platform_height_mm=z0_mm)

    if asked_mm is None:
        assert [] == codes(request)
    else:
        assert ("platform", asked_mm, available_mm) == (only(request).code, only(request).asked_mm, only(request).available_mm)
        assert offer == only(request).offer


def test_platform_between_two_pads() -> None:
    """With timber of 100 the plies come to 54 + 18 = 72 at most: four of 18; from 78.1 on nothing reaches."""
    thick = brief(
        C,
        timber=timber(100, 100),
        breast_depth_mm=400,
        sill_above_appliance_mm=300,
        breast_width_mm=1500,
        appliance_shift_mm=0,
        top={"kind": "ceiling"},
    )

    assert [] == codes(brief(thick, platform_height_mm=78))
    refusal = only(brief(thick, platform_height_mm=78.1))
    assert ("platform", 6.1, 6.0, "platform 0, 72, or 100") == (
        refusal.code,
        refusal.asked_mm,
        refusal.available_mm,
        refusal.offer,
    )
    assert [] == codes(brief(thick, platform_height_mm=100))


@pytest.mark.parametrize(("top_mm", "found"), [(134 + 545 + 268 + 18, []), (134 + 545 + 267.9 + 18, ["low_top"])])
def test_low_top(top_mm: float, found: list[str]) -> None:
    """No screen and Hu < u + b + 40: 190 + 38 + 40 = 268."""
    request = brief(C, top={"kind": "part_height", "height_mm": top_mm})

    assert found == codes(request)
    if found:
        refusal = only(request)
        assert (268, 267.9) == (refusal.asked_mm, refusal.available_mm)
        assert "a platform of at most 133.9" in refusal.offer
        assert "an upstand of 189.9" in refusal.offer
        assert "a breast 965 high" in refusal.offer
        assert [] == codes(brief(request, platform_height_mm=133.9))
        assert [] == codes(brief(request, sill_above_appliance_mm=189.9))
        assert [] == codes(brief(request, top={"kind": "part_height", "height_mm": 965}))


def test_low_top_over_a_fire_that_is_too_high_for_the_room() -> None:
    """No platform and no upstand helps: they are not offered."""
    high = {**FLAT, "body_height_mm": 1400}
    refusal = only(brief(C, appliance=high, platform_height_mm=0, top={"kind": "part_height", "height_mm": 1300}))

    assert "low_top" == refusal.code
    assert "platform" not in refusal.offer
    assert "upstand" not in refusal.offer
    assert refusal.available_mm < 0


@pytest.mark.parametrize(("upstand_mm", "found"), [(116, []), (115.9, ["upstand"])])
def test_upstand(upstand_mm: float, found: list[str]) -> None:
    """U < 2b + 40 = 116."""
    request = brief(C, sill_above_appliance_mm=upstand_mm)

    assert found == codes(request)
    if found:
        assert "an upstand of 116" == only(request).offer


@pytest.mark.parametrize(("upstand_mm", "found"), [(140, []), (139.9, ["upstand"])])
def test_upstand_over_plies(upstand_mm: float, found: list[str]) -> None:
    """Framing.md, 10.2: z1 + depth of a ply <= zs: 38 x 140 behind the trimmer of a recess."""
    request = brief(A, timber=timber(38, 140), sill_above_appliance_mm=upstand_mm)

    assert found == codes(request)
    assert [] == codes(brief(C, timber=timber(38, 140), sill_above_appliance_mm=116, breast_depth_mm=400))  # no ply, no recess


def test_recess_wide_offers_no_width_to_a_three_sided_fire() -> None:
    wide = brief(without(A, f"{BRIEF}/screen_bracket"), screen={"kind": "catalogue", "model": "SC-060"})

    assert "recess_wide" == only(wide).code
    assert "a width of" not in only(wide).offer
    assert "a wider fire" in only(wide).offer


def test_recess_high_offers() -> None:
    """B at z0 827: a platform of 826, a screen 768 high, or nothing higher than the ceiling."""
    refusal = only(brief(B, platform_height_mm=827))

    assert "a platform of at most 826, a screen at most 768 high, or a lower fire" == refusal.offer
    part = brief(A, top={"kind": "part_height", "height_mm": 1900})
    assert "a breast 1911 high" in only(part).offer  # 920 + 210 + 687 + 76 + 18
    assert [] == codes(brief(part, top={"kind": "part_height", "height_mm": 1911}))


@pytest.mark.parametrize(("short_mm", "offered_mm"), [(96, 38), (105, 29), (110, 24), (123, 0), (134, 0)])
def test_an_offered_platform_is_one_that_can_be_built(short_mm: float, offered_mm: float) -> None:
    """134 less what is short: 38 is flat, 29 and 24 are pads, 11 is none and becomes 0."""
    request = brief(C, top={"kind": "part_height", "height_mm": 134 + 545 + 268 + 18 - short_mm})

    assert f"a platform of at most {offered_mm}," in only(request).offer
    assert [] == codes(brief(request, platform_height_mm=offered_mm))


@pytest.mark.parametrize(("offset_mm", "found"), [(199, []), (199.1, ["rows"]), (-199, []), (-199.1, ["rows"])])
def test_rows(offset_mm: float, found: list[str]) -> None:
    """Both rows must lie within zs..zh: 343.5 to either side of zc, less 100 and 44.5 of the bearer."""
    screen = {
        "kind": "custom",
        "name": "odd",
        "diagonal_in": 43,
        "body_width_mm": 964,
        "body_height_mm": 557,
        "body_depth_mm": 74,
        "mass_kg": 9.5,
        "hole_pattern_width_mm": 200,
        "hole_pattern_height_mm": 200,
        "hole_centre_offset_mm": offset_mm,
    }
    request = brief(A, screen=screen)

    assert found == codes(request)


@pytest.mark.parametrize(("asked_mm", "found", "offer"), [(710, [], ""), (735.1, ["heat"], "an upstand of 220,")])
def test_heat(asked_mm: float, found: list[str], offer: str) -> None:
    """Outlet to screen: (480 - 35) + 10 + u + 15 + 50 = 520 + u >= so; the least u is rounded up to 5."""
    fire = {
        "kind": "custom",
        "name": "hot",
        "open_ends_count": 2,
        "body_width_mm": 1335,
        "body_height_mm": 480,
        "body_depth_mm": 330,
        "mass_kg": 41,
        "heat_output_w": 2000,
        "connection": "plug",
        "outlet_position": "front_bottom",
        "outlet_height_mm": 35,
        "outlet_to_screen_least_mm": asked_mm,
    }
    request = brief(A, appliance=fire, breast_depth_mm=435)

    assert found == codes(request)
    if found:
        assert (asked_mm, 730) == (only(request).asked_mm, only(request).available_mm)
        assert offer in only(request).offer
        assert [] == codes(brief(request, sill_above_appliance_mm=220))
        assert [] == codes(
            changed(request, {f"{BRIEF}/appliance/outlet_position": "none", f"{BRIEF}/appliance/heat_output_w": 0})
        )


@pytest.mark.parametrize(("longest_mm", "allowance_mm", "found"), [(2400, 40, []), (2400, 40.6, ["bar"]), (3000, 100, [])])
def test_bar(longest_mm: float, allowance_mm: float, found: list[str]) -> None:
    """B: a ladder upright of 2360, bought 20 longer because it waits for the ceiling, must come out of one bar."""
    request = brief(changed(B, {"/survey/site/longest_length_mm": longest_mm}), after_measure_allowance_mm=allowance_mm)

    assert found == codes(request) == codes(brief(request, open_ends="left"))
    if found:
        assert (2401, 2400) == (only(request).asked_mm, only(request).available_mm)


def test_bar_of_a_rail() -> None:
    """C: rails of 1331; without a base frame the rails between the ladders count, 1255."""
    wide = brief(C, breast_width_mm=2430, appliance_shift_mm=0, top={"kind": "ceiling"})
    short = changed(
        wide,
        {
            "/survey/site/longest_length_mm": 2400,
            "/survey/room/heights": [{**point, "height_mm": 2200} for point in C["survey"]["room"]["heights"]],
        },
    )

    assert ("bar", 2406, 2400) == (only(short).code, only(short).asked_mm, only(short).available_mm)
    assert [] == codes(brief(short, platform_height_mm=0))


def test_by_hand_is_no_inequality() -> None:
    refusal = only(brief(A, extras=[{"kind": "shelf"}]))

    assert ("by_hand", 0.0, 0.0) == (refusal.code, refusal.asked_mm, refusal.available_mm)
    assert "a person lays it out and prices it" == refusal.offer


@pytest.mark.parametrize(("asked", "available", "short_mm"), [(100, 100, None), (101, 100, 0.1), (5, -5, 1.0)])
def test_unmet_if(asked: int, available: int, short_mm: float | None) -> None:
    found = unmet_if("x", asked, available, says="s", offer="o")

    assert ([] if short_mm is None else [short_mm]) == [unmet.short_by_mm for unmet in found]


@pytest.mark.parametrize(
    ("offers", "said"),
    [(("a",), "a"), (("a", "b"), "a, or b"), (("", "b"), "b"), (("a", "", "c"), "a, or c"), (("a", "b", "c"), "a, b, or c")],
)
def test_one_of(offers: tuple[str, ...], said: str) -> None:
    assert said == one_of(*offers)


def test_offers_are_at_most_three() -> None:
    """Framing.md, section 13: give at most three offers."""
    refusals = [
        only(request)
        for request in (
            brief(B, platform_height_mm=827),
            brief(A, breast_depth_mm=369),
            brief(C, appliance_shift_mm=-243),
            brief(C, sill_above_appliance_mm=100),
            brief(C, platform_height_mm=5),
            brief(C, top={"kind": "part_height", "height_mm": 960}),
        )
    ]

    assert all(len(re.findall(r", or |, ", refusal.offer)) <= 2 for refusal in refusals)
