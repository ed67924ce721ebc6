from __future__ import annotations

from typing import Any

import pytest

from service.checks import CautionState
from tests.checks.row_cases import STUDS, B, C, cases, codes, on, row, wall


@pytest.mark.parametrize(("code", "fires", "quiet"), cases("S"), ids=lambda value: value if isinstance(value, str) else "")
def test_each_row_fires_and_keeps_quiet(code: str, fires: dict[str, Any], quiet: dict[str, Any]) -> None:
    """`knowledge/cautions.md`: triggers of the rows S."""
    assert code in codes(fires)
    assert code not in codes(quiet)


@pytest.mark.parametrize(
    ("code", "request_", "state"),
    [
        ("S03", wall("unknown"), CautionState.NOT_VERIFIED),
        ("S08", wall("timber_stud"), CautionState.NOT_VERIFIED),
        ("S08", wall("timber_stud", stud_positions_mm=STUDS[:1]), CautionState.FIRES),
        ("S09", B, CautionState.FIRES),
        ("S09", on(B, survey__ceiling__joists=None), CautionState.NOT_VERIFIED),
    ],
)
def test_what_is_not_known_is_not_verified(code: str, request_: dict[str, Any], state: CautionState) -> None:
    """`knowledge/cautions.md`, section 0."""
    assert state is row(request_, code).state


def test_a_ceiling_is_no_matter_of_part_height() -> None:
    assert not {"S09", "S10", "S11"} & codes(on(C, survey__ceiling__kind="suspended_grid"))


@pytest.mark.parametrize(("depth_mm", "sat_on"), [(399.9, False), (400, True), (700, True), (700.1, False)])
def test_a_lid_that_will_be_sat_on(depth_mm: float, sat_on: bool) -> None:
    """S20: 400 to 700 deep."""
    assert sat_on == ("S20" in codes(on(C, survey__brief__breast_depth_mm=depth_mm)))
