from __future__ import annotations

from typing import Any

import pytest

from service.checks import CautionState, Stops
from tests.bill.bill_facts import one_sided
from tests.checks.by_manual import under_screen
from tests.checks.row_cases import COLD_FIRE, A, B, C, cases, codes, on, row, rows


@pytest.mark.parametrize(("code", "fires", "quiet"), cases("H"), ids=lambda value: value if isinstance(value, str) else "")
def test_each_row_fires_and_keeps_quiet(code: str, fires: dict[str, Any], quiet: dict[str, Any]) -> None:
    """`knowledge/cautions.md`: triggers of the rows H."""
    assert code in codes(fires)
    assert code not in codes(quiet)


def test_missing_figures_are_named() -> None:
    """Demo data: AF-107 lacks maker's figures on purpose (`knowledge/materials.md`, section 4)."""
    says = row(one_sided("AF-107"), "H01").says

    assert all(name in says for name in ("fire clear rear", "fire outlet to screen least"))


def test_a_zone_that_must_not_burn_names_what_burns() -> None:
    """H05: MDF and timber; in cement board the timber alone."""
    fire = on(one_sided("AF-106"), survey__brief__breast_depth_mm=320)
    boarded = on(fire, survey__brief__board={"kind": "catalogue", "code": "BD-2412X"})

    board, timber = (one for one in rows(fire) if one.code == "H05")

    assert "calcium silicate or cement board for 100 mm" in board.says.lower()
    assert (Stops.DESIGN, CautionState.FIRES) == (board.stops, board.state)
    assert [timber] == [one for one in rows(boarded) if one.code == "H05"]
    assert "timber of the frame" in timber.says.lower()
    assert (Stops.FIRM_QUOTE, CautionState.NOT_VERIFIED) == (timber.stops, timber.state)


def test_a_rule_of_thumb_stops_nothing() -> None:
    """H03: nothing if no distance is stated, as H01 stands."""
    near = under_screen(outlet_to_screen_least_mm=None, outlet_height_mm=501)

    assert Stops.NOTHING is row(near, "H03").stops
    assert "H01" in codes(near)


@pytest.mark.parametrize(("x_mm", "inside"), [(1_287, True), (1_286, False), (2_613, True), (2_614, False)])
def test_the_column_of_the_fire(x_mm: float, inside: bool) -> None:
    """H09: the opening of A, 1286.5 to 2613.5; a switch there is none of it."""
    socket = on(A, survey__services__accessories=[{"kind": "joint", "x_mm": x_mm, "z_mm": 900}])
    switch = on(A, survey__services__accessories=[{"kind": "switch", "x_mm": x_mm, "z_mm": 900}])

    assert inside == ("H09" in codes(socket))
    assert "H09" not in codes(switch)


def test_a_fire_that_blows_no_air_minds_no_socket() -> None:
    socket = {"survey__services__accessories": [{"kind": "socket", "x_mm": 1_940, "z_mm": 300}]}
    cold = on(C, survey__brief__appliance=COLD_FIRE, **socket)

    assert "H09" in codes(on(C, **socket))
    assert "H09" not in codes(cold)


@pytest.mark.parametrize("flue", ["open", "blocked_and_vented", "blocked_not_vented"])
def test_an_old_flue_is_for_no_flame(flue: str) -> None:
    """H13: "might change later"."""
    assert "H13" in codes(on(A, survey__chimney__flue=flue, survey__chimney__flue_shared="no"))


def test_the_limit_of_a_screen_is_its_own_or_the_usual_one() -> None:
    stated = {
        "kind": "custom", "name": "s", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
        "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200, "max_ambient_deg_c": 35,
    }  # fmt: skip
    unstated = {key: value for key, value in stated.items() if key != "max_ambient_deg_c"}

    assert "limited to 35 degrees" in row(on(A, survey__brief__screen=stated), "H04").says
    assert "commonly limited to 40 degrees" in row(on(A, survey__brief__screen=unstated), "H04").says


@pytest.mark.parametrize(("request_", "days"), [(B, "7 days"), (A, "48 hours")])
def test_plaster_waits_longer_than_paint(request_: dict[str, Any], days: str) -> None:
    """`knowledge/cladding.md`, section 5: 7 days after skim, 48 h after paint."""
    assert days in row(request_, "H11").says


def test_the_clear_front_is_the_makers() -> None:
    assert "1000 mm" in row(A, "H14").says
