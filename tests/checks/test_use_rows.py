from __future__ import annotations

from typing import Any

import pytest

from tests.checks.row_cases import A, C, cases, codes, on


@pytest.mark.parametrize(("code", "fires", "quiet"), cases("V"), ids=lambda value: value if isinstance(value, str) else "")
def test_each_row_fires_and_keeps_quiet(code: str, fires: dict[str, Any], quiet: dict[str, Any]) -> None:
    """`knowledge/cautions.md`: triggers of the rows V."""
    assert code in codes(fires)
    assert code not in codes(quiet)


@pytest.mark.parametrize(("gap_mm", "wide"), [(90, False), (91, True)])
def test_a_wide_dark_gap_is_told(gap_mm: float, wide: bool) -> None:
    """V03: more than 90 mm at a side, over a fire wide enough for jambs beside the recess."""
    fire = {"kind": "catalogue", "model": "AF-303"}
    request = on(A, survey__brief__appliance=fire, survey__brief__platform_height_mm=200, survey__brief__screen_gap_mm=gap_mm)

    assert wide == ("V03" in codes(request))


def test_a_cheek_is_a_joint_in_the_face() -> None:
    """Example C has no strip over another, but cheeks that meet the boards above and below."""
    assert "V08" in codes(C)


def test_skim_hides_the_joint() -> None:
    assert "V08" not in codes(
        on(A, survey__brief__board={"kind": "catalogue", "code": "BD-2125K"}, survey__brief__finish="skimmed")
    )
