from __future__ import annotations

from typing import Any

import pytest

from service.checks import CautionState, Stops
from service.survey.wishes import ExtraKind
from tests.checks.row_cases import A, C, cases, codes, facts_of, found_in, on, row


@pytest.mark.parametrize(("code", "fires", "quiet"), cases("E"), ids=lambda value: value if isinstance(value, str) else "")
def test_each_row_fires_and_keeps_quiet(code: str, fires: dict[str, Any], quiet: dict[str, Any]) -> None:
    """`knowledge/cautions.md`: triggers of the rows E."""
    assert code in codes(fires)
    assert code not in codes(quiet)


@pytest.mark.parametrize(
    ("code", "changes", "state"),
    [
        ("E05", {"survey__services__cable_scan": "not_done"}, CautionState.FIRES),
        ("E05", {"survey__services__cable_scan": None}, CautionState.NOT_VERIFIED),
        ("E06", {"survey__services__accessories": None}, CautionState.NOT_VERIFIED),
        ("E09", {"survey__services__rcd": "no"}, CautionState.FIRES),
        ("E09", {"survey__services__rcd": "unknown"}, CautionState.NOT_VERIFIED),
        ("E09", {"survey__services__rcd": None}, CautionState.NOT_VERIFIED),
    ],
)
def test_what_is_not_known_is_not_verified(code: str, changes: dict[str, Any], state: CautionState) -> None:
    """`knowledge/cautions.md`, section 0."""
    assert state is row(on(A, **changes), code).state


def test_the_load_is_named_with_its_limit() -> None:
    """13 A x 230 V = 2990 W: fire 2000 + 45, screen 75, other 871."""
    says = row(on(A, survey__services__other_load_w=871), "E04").says

    assert "2991 W" in says
    assert "2990 W" in says


def test_accessories_inside_are_named_with_their_place() -> None:
    inside = [{"kind": "switch", "x_mm": 1_271.5, "z_mm": 1_200}, {"kind": "router", "x_mm": 2_000, "z_mm": 300}]
    request = on(A, survey__services__accessories=inside)

    assert "switch at 1271.5, 1200 high, router at 2000, 300 high" in row(request, "E06").says
    assert "router" in row(request, "E14").says
    assert Stops.NOTHING is row(request, "E14").stops


@pytest.mark.parametrize(("x_mm", "near"), [(2_928, True), (2_929, False), (971.5, True), (971, False)])
def test_an_alarm_is_measured_from_the_new_wall(x_mm: float, near: bool) -> None:
    """`knowledge/services.md`, section 6: 300 mm from the faces of the breast, 1271.5 to 2628.5, 435 deep."""
    request = on(A, survey__services__alarms=[{"kind": "smoke", "x_mm": x_mm, "y_mm": 100}])

    assert near == ("E14" in codes(request))
    if near:
        assert Stops.THIS_WORK is row(request, "E14").stops


def test_england_is_taken_where_the_region_was_not_told() -> None:
    assert "E03" not in codes(on(A, survey__site__country="gb"))
    assert "E03" in codes(on(A, survey__site__country="other"))


def test_steel_studs_raise_the_question_of_bonding() -> None:
    """E11: metal skin, grille, bracket, steel studs."""
    steel = on(C, survey__wall__construction="steel_stud", survey__wall__stud_positions_mm=[1_400, 1_800, 2_200, 2_600])

    assert "Steel studs" in row(steel, "E11").says
    assert "bracket" in row(A, "E11").says
    assert "E11" not in codes(C)


def test_only_sockets_of_new_dwellings_are_measured() -> None:
    """E13: 450 to 1200, in the year of the quote or the one before."""
    data = on(A, survey__site__build_year=2026, survey__services__accessories=[{"kind": "data", "x_mm": 900, "z_mm": 300}])
    high = on(A, survey__site__build_year=2026, survey__services__accessories=[{"kind": "socket", "x_mm": 900, "z_mm": 1_201}])

    assert "E13" not in codes(data)
    assert "900, 1201 high" in row(high, "E13").says


def test_drivers_of_lights() -> None:
    assert "E12" in found_in(facts_of(A, extras=(ExtraKind.LIGHTS,)))
