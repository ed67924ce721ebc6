"""Advice on the screen: `knowledge/viewing.md`; `knowledge/worked-checks.md`, F1 to F6."""

from __future__ import annotations

import math
from typing import Any

import msgspec
import pytest

from service.checks import Check, Verdict
from service.checks.viewing import (
    CABLE_ROOM,
    FLAMES,
    HEIGHT,
    OF_SCREEN,
    PICTURE_ANGLE,
    PLATE_ZONE,
    SEAT_FAR,
    SEAT_NEAR,
    SILL,
    TOP_EDGE,
    viewing_checks,
)
from tests.checks.grounds import ground_of
from tests.checks.results import the_check, values, why_skipped
from tests.checks.words_of import reviewed, words_of
from tests.sold_examples import sold


def seat(**changes: object) -> dict[str, Any]:
    return sold("A", **{f"survey__room__{key}": value for key, value in changes.items()})


def test_only_cables_bind() -> None:
    """Cautions.md, V01: no angle refuses a design or stops a quote; V04 stops it."""
    found = [one for one in viewing_checks(ground_of(sold("A"))) if isinstance(one, Check)]

    assert [CABLE_ROOM] == [one.code for one in found if one.binding]
    assert [*OF_SCREEN, FLAMES] == [one.code for one in found]


def test_a_picture_that_is_small_for_the_room() -> None:
    """2 atan(W / 2d) of a 43 in picture, 951.93 mm wide, from 3000 mm; 47.8 in would fill 20 degrees: W = 2 d tan 10."""
    found = the_check(viewing_checks, ground_of(sold("A")), PICTURE_ANGLE)
    larger_in = 2 * 3000 * math.tan(math.radians(10)) / 0.871576 / 25.4

    assert pytest.approx(2 * math.degrees(math.atan(951.93 / 6000)), abs=1e-3) == values(found)[1]
    assert (Verdict.ADVISE, True) == (found.verdict, f"a screen of {larger_in:.1f} inches" in found.remedy)


@pytest.mark.parametrize(
    ("distance", "word"),
    [(3000, "small for the room"), (2400, "comfortable"), (1200, "close"), (900, "too close for a living room")],
)
def test_words_for_the_angle(distance: float, word: str) -> None:
    """Viewing.md 2: under 20 small, to 40 comfortable, to 50 close, over 50 too close."""
    assert the_check(viewing_checks, ground_of(seat(seat_distance_mm=distance)), PICTURE_ANGLE).says.endswith(word)


@pytest.mark.parametrize(
    ("code", "distance", "verdict"),
    [
        (SEAT_NEAR, 1311, Verdict.PASS), (SEAT_NEAR, 1310, Verdict.ADVISE),  # 1.2 x 1092.2
        (SEAT_FAR, 3276, Verdict.PASS), (SEAT_FAR, 3277, Verdict.ADVISE),  # 3 x 1092.2
    ],
)  # fmt: skip
def test_seats_by_the_diagonal(code: str, distance: float, verdict: Verdict) -> None:
    """Cautions.md, V02."""
    found = the_check(viewing_checks, ground_of(seat(seat_distance_mm=distance)), code)

    assert verdict is found.verdict
    assert (found.remedy == "") == (verdict is Verdict.PASS)


def test_the_height_of_a() -> None:
    """Centre 1473.5 (worked-examples.md), eyes 1100 at 3000 mm; F5 works the same way."""
    found = the_check(viewing_checks, ground_of(sold("A")), HEIGHT)
    top = the_check(viewing_checks, ground_of(sold("A")), TOP_EDGE)

    assert pytest.approx(math.degrees(math.atan(373.5 / 3000))) == found.demand.value
    assert pytest.approx(math.degrees(math.atan((373.5 + 43 * 25.4 * 0.490261 / 2) / 3000)), abs=1e-3) == top.demand.value
    assert (15, 35) == (values(found)[1], values(top)[1])
    assert "good; up to 1904 mm" in found.says


@pytest.mark.parametrize(
    ("eyes", "word"),
    [(1473.5, "good"), (1000, "good"), (900, "acceptable"), (640, "high for the neck"), (600, "high for the neck")],
)
def test_words_for_the_height(eyes: float, word: str) -> None:
    """Viewing.md 3, from 3000 mm: 10 degrees are 529 mm, 15 are 804."""
    assert f": {word};" in the_check(viewing_checks, ground_of(seat(eye_height_mm=eyes)), HEIGHT).says


def test_a_lower_screen_by_the_remedy_would_do() -> None:
    found = the_check(viewing_checks, ground_of(seat(eye_height_mm=600, seat_distance_mm=1500)), HEIGHT)
    high = 600 + 1500 * math.tan(math.radians(15))

    assert Verdict.ADVISE is found.verdict
    assert "very high" in found.says
    assert f"lower by {1473.5 - high:.0f} mm" in found.remedy
    assert "does not help the neck" in found.remedy


def test_the_top_edge_of_a_near_screen() -> None:
    found = the_check(viewing_checks, ground_of(seat(eye_height_mm=600, seat_distance_mm=1500)), TOP_EDGE)
    top_mm = 1473.5 + 43 * 25.4 * 0.490261 / 2

    assert Verdict.ADVISE is found.verdict
    assert f"lower by {top_mm - 600 - 1500 * math.tan(math.radians(35)):.0f} mm" in found.remedy


@pytest.mark.parametrize(("field", "codes"), [
    ("seat_distance_mm", {PICTURE_ANGLE, SEAT_NEAR, SEAT_FAR, HEIGHT, TOP_EDGE, SILL}),
    ("eye_height_mm", {HEIGHT, TOP_EDGE, SILL}),
])  # fmt: skip
def test_what_is_assumed_is_not_verified(field: str, codes: set[str]) -> None:
    """Survey.md 3: seat and eyes are needed where a screen hangs; their defaults are 3000 and 1100."""
    found = [one for one in viewing_checks(ground_of(seat(**{field: None}))) if isinstance(one, Check)]

    assert codes == {one.code for one in found if one.unverified}
    assert all("is assumed" in one.unverified and one.remedy for one in found if one.code in codes)


def test_a_sill_hides_the_lower_edge_of_a_deep_set_screen() -> None:
    """Set back 120 behind the face, 50 over the lining: hidden 120 tan(rise) less 50; sill 1130 + 15, eyes 600 at 1000."""
    request = sold(
        "A", survey__brief__glass_set_back_mm=120, survey__room__eye_height_mm=600, survey__room__seat_distance_mm=1000
    )
    found = the_check(viewing_checks, ground_of(request), SILL)

    assert pytest.approx(120 * 545 / 1000 - 50) == found.demand.value
    assert (Verdict.ADVISE, True) == (found.verdict, "larger by 12 mm" in found.remedy)
    assert 0 == the_check(viewing_checks, ground_of(sold("A")), SILL).demand.value


def test_backing_behind_the_plate() -> None:
    """A: plate 440 and 100 each side in a framing of 1094."""
    ground = ground_of(sold("A"))
    wide = msgspec.structs.replace(ground.job.bracket, plate_width_mm=900)  # type: ignore[type-var]  # A has a bracket
    tight = the_check(
        viewing_checks, msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, bracket=wide)), PLATE_ZONE
    )

    assert (640, 1094) == values(the_check(viewing_checks, ground, PLATE_ZONE))
    assert (Verdict.ADVISE, True) == (tight.verdict, "wider by 6 mm" in tight.remedy)


def custom(**figures: object) -> dict[str, Any]:
    screen = {
        "kind": "custom", "name": "s", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
        "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200, **figures,
    }  # fmt: skip
    return sold("A", survey__brief__screen=screen)


def test_room_for_plugs() -> None:
    """Viewing.md 6: 25 for plugs at the side, 60 straight out of the back, or what their length is; the bracket leaves 30."""
    side = the_check(viewing_checks, ground_of(sold("A")), CABLE_ROOM)
    rear = the_check(viewing_checks, ground_of(custom(connectors="rear")), CABLE_ROOM)
    long = the_check(viewing_checks, ground_of(custom(connectors="rear", straight_plug_length_mm=80)), CABLE_ROOM)

    assert (25, 30) == values(side)
    assert [(60, 60), (80, 80)] == [values(rear), values(long)]


def test_a_wish_that_leaves_no_room_for_plugs_fails() -> None:
    request = custom(connectors="rear")
    request["survey"]["brief"]["cable_room_mm"] = 30
    found = the_check(viewing_checks, ground_of(request), CABLE_ROOM)

    assert (Verdict.FAIL, "cable_room_mm of at least 60") == (found.verdict, found.remedy)


@pytest.mark.parametrize(("platform", "verdict"), [(760, Verdict.PASS), (761, Verdict.ADVISE)])
def test_the_middle_of_the_flames(platform: float, verdict: Verdict) -> None:
    """Viewing.md 7: platform and half of the fire (480 / 2) at most 1000."""
    found = the_check(viewing_checks, ground_of(sold("A", survey__brief__platform_height_mm=platform)), FLAMES)

    assert verdict is found.verdict
    assert ("lower by 1 mm" in found.remedy) == (verdict is Verdict.ADVISE)


def test_without_a_screen() -> None:
    for code in OF_SCREEN:
        assert "no screen" in why_skipped(viewing_checks, ground_of(sold("C")), code)


def test_the_words_are_those_that_were_read() -> None:
    assert reviewed("viewing") == words_of("viewing"), "python -m tests.checks.words_of, then read the diff"
