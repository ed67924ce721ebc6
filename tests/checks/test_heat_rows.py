from __future__ import annotations

from typing import Any

import pytest

from service.checks import Stops
from tests.bill.bill_facts import one_sided
from tests.checks.row_cases import A, B, cases, codes, on, row


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

    assert "The board and the timber" in row(fire, "H05").says
    assert "The timber of this design" in row(boarded, "H05").says
    assert Stops.FIRM_QUOTE is row(fire, "H05").stops


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
