from __future__ import annotations

from typing import Any

import pytest

from service.checks import CautionState, Stops
from tests.checks.row_cases import A, cases, codes, on, row


@pytest.mark.parametrize(("code", "fires", "quiet"), cases("B"), ids=lambda value: value if isinstance(value, str) else "")
def test_each_row_fires_and_keeps_quiet(code: str, fires: dict[str, Any], quiet: dict[str, Any]) -> None:
    """`knowledge/cautions.md`: triggers of the rows B."""
    assert code in codes(fires)
    assert code not in codes(quiet)


@pytest.mark.parametrize(
    ("code", "changes", "state", "stops"),
    [
        ("B02", {"survey__chimney__flue": "unknown"}, CautionState.NOT_VERIFIED, Stops.THIS_WORK),
        (
            "B02",
            {"survey__chimney__flue": "blocked_not_vented", "survey__chimney__flue_shared": "no"},
            CautionState.FIRES,
            Stops.THIS_WORK,
        ),
        ("B03", {"survey__services__gas": "unknown"}, CautionState.NOT_VERIFIED, Stops.FIRM_QUOTE),
        ("B03", {"survey__services__gas": None, "survey__chimney__flue": "unknown"}, CautionState.NOT_VERIFIED, Stops.FIRM_QUOTE),
        ("B03", {"survey__services__gas": "present"}, CautionState.FIRES, Stops.DESIGN),
        ("B05", {"survey__wall__damp": "showing"}, CautionState.FIRES, Stops.DESIGN),
        ("B05", {"survey__wall__external": True, "survey__wall__external_build": "solid"}, CautionState.FIRES, Stops.NOTHING),
        ("B08", {"survey__floor__underfloor_heating": "unknown"}, CautionState.NOT_VERIFIED, Stops.THIS_WORK),
        ("B08", {"survey__floor__underfloor_heating": None}, CautionState.NOT_VERIFIED, Stops.THIS_WORK),
        ("B17", {"survey__chimney__flue": "unknown", "survey__wall__party": "yes"}, CautionState.NOT_VERIFIED, Stops.FIRM_QUOTE),
    ],
)
def test_what_is_known_decides_state_and_stop(code: str, changes: dict[str, Any], state: CautionState, stops: Stops) -> None:
    """`knowledge/cautions.md`, section 0 and the rows of section 4."""
    found = row(on(A, **changes), code)

    assert (state, stops) == (found.state, found.stops)


@pytest.mark.parametrize(
    ("serves", "state", "stops"),
    [
        ("unknown", CautionState.NOT_VERIFIED, Stops.FIRM_QUOTE),
        ("appliance", CautionState.FIRES, Stops.DESIGN),
        ("floor", CautionState.FIRES, Stops.NOTHING),
    ],
)
def test_a_vent_stops_by_what_it_serves(serves: str, state: CautionState, stops: Stops) -> None:
    """B04."""
    found = row(on(A, survey__services__air_vents=[{"x_mm": 2_000, "z_mm": 200, "serves": serves}]), "B04")

    assert (state, stops) == (found.state, found.stops)


@pytest.mark.parametrize(
    ("changes", "state", "names"),
    [
        (
            {"survey__site__build_year": None, "survey__ceiling__textured_coating": "yes"},
            CautionState.NOT_VERIFIED,
            "textured coatings",
        ),
        (
            {"survey__site__build_year": 1970, "survey__ceiling__textured_coating": "unknown"},
            CautionState.NOT_VERIFIED,
            "textured coatings",
        ),
        ({"survey__site__build_year": 1970, "survey__floor__covering": "tile"}, CautionState.FIRES, "floor tiles"),
        ({"survey__site__build_year": 1970, "survey__chimney__flue": "unknown"}, CautionState.NOT_VERIFIED, "flue linings"),
    ],
)
def test_asbestos_is_presumed_where_old_material_may_be_drilled(changes: dict[str, Any], state: CautionState, names: str) -> None:
    """B06: before 2000 or unknown, and drilling textured coating, floor tile or flue lining."""
    found = row(on(A, **changes), "B06")

    assert state is found.state
    assert f"Before 2000 {names} are presumed" in found.says


def test_a_flat_wall_of_an_old_house_is_no_matter_of_asbestos() -> None:
    assert "B06" not in codes(on(A, survey__site__build_year=1970))
    assert "B06" not in codes(on(A, survey__site__build_year=2000, survey__ceiling__textured_coating="yes"))


def test_a_shared_flue_that_was_cleared_stays_on_the_page() -> None:
    """B17: refused until somebody entitled says that nobody uses it; then cleared, and still there."""
    cleared = [{"code": "B17", "name": "N. Body", "role": "owner", "on": "2026-11-21", "evidence": "letter of the freeholder"}]
    shared = {"survey__chimney__flue": "blocked_and_vented", "survey__chimney__flue_shared": "yes"}
    found = row(on(A, **shared, survey__cleared=cleared), "B17")

    assert (CautionState.CLEARED, Stops.DESIGN) == (found.state, found.stops)


def test_uneven_surfaces_are_told_with_their_measure() -> None:
    assert "wall 12 mm" in row(on(A, survey__wall__plumb_mm=-12), "B15").says


def test_a_gas_row_stays_quiet_where_there_never_was_a_flue() -> None:
    assert "B03" not in codes(on(A, survey__services__gas=None))


def test_a_solid_outside_wall_is_told_with_its_numbers() -> None:
    """B05 reads the check of the hidden face (heat.md 7): temperature of the face and dew point."""
    says = row(on(A, survey__wall__external=True, survey__wall__external_build="solid"), "B05").says

    assert "falls to 9.1 degrees" in says
    assert "the dew point is 9.3" in says
    assert "mineral wool" in says
