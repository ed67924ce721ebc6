from __future__ import annotations

from typing import Any

import pytest

from service.survey.wishes import ExtraKind
from tests.checks.row_cases import A, B, C, cases, codes, facts_of, found_in, on, row


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


def test_a_passage_is_told_only_beside_glass_at_both_ends() -> None:
    """V12: less than 900 beside a three-sided fire; not beside a closed end, nor where the place was not told."""
    narrow = on(A, survey__room__wall_length_mm=3_528)

    assert "899.5 mm are left" in row(narrow, "V12").says
    assert "V12" not in codes(on(B, survey__room__wall_length_mm=3_300))
    assert "V12" not in codes(on(narrow, survey__room__breast_centre_from_left_mm=None, survey__room__wall_length_mm=3_000))


@pytest.mark.parametrize("sound", ["down", "rear"])
def test_sound_that_has_no_way_out(sound: str) -> None:
    screen = {
        "kind": "custom", "name": "s", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
        "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200, "sound": sound,
    }  # fmt: skip

    assert "V07" in codes(on(A, survey__brief__screen=screen))


def test_a_niche_closes_sound_in() -> None:
    assert "V07" in found_in(facts_of(A, extras=(ExtraKind.SOUNDBAR_NICHE,)))
    assert "V07" not in found_in(facts_of(A))
