"""Source of the figures: `knowledge/worked-checks.md`, A25, B20, B21; otherwise by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.check import Verdict
from service.checks.joint_screws import DISTANCES, DRILL_FIRST, GRIP, SPLITTING, joint_screw_checks
from tests.checks.after_checks import after_checks, check_of, checks_of, exact_ratio, laid_out, of_hardware, skipped_of

if TYPE_CHECKING:
    from service.checks.ground import Ground


@pytest.mark.parametrize(
    ("example", "subject", "there_mm", "asked_mm"),
    [
        ("A", "joints through 38 mm", 32, 30), ("A", "joints through 89 mm", 61, 36), ("A", "brackets", 33, 30),
        ("A", "plies", 32, 30), ("B", "joints through 45 mm", 55, 30), ("C", "joints through 63 mm", 37, 30),
    ],
)  # fmt: skip
def test_grip(example: str, subject: str, there_mm: float, asked_mm: float) -> None:
    """EN 1995-1-1, 8.7.2(3): six diameters behind what a screw passes; the screws of the demo's bill."""
    found = check_of(joint_screw_checks, after_checks(example), GRIP, subject)

    assert found.resistance is not None
    assert (asked_mm, there_mm) == (found.demand.value, found.resistance.value)


def test_short_screws_in_glued_plies_are_told() -> None:
    """B: 70 through 45 leaves 25 of 30 mm."""
    found = check_of(joint_screw_checks, after_checks("B"), GRIP, "plies")

    assert Verdict.ADVISE is found.verdict
    assert "screws of at least 75 mm" == found.remedy


def test_screws_that_are_not_sold() -> None:
    found = check_of(joint_screw_checks, of_hardware(after_checks("A"), wide_screw=None), GRIP, "joints through 89 mm")

    assert Verdict.PROVISIONAL is found.verdict
    assert found.remedy


def test_room_to_edges() -> None:
    """By hand, A: pairs at quarters of 89 mm want 5 d = 25 plain and 3 d = 15 drilled; the middle of 38 mm 18 drilled of 6 mm."""
    narrow, wide = checks_of(joint_screw_checks(after_checks("A")), DISTANCES)

    assert pytest.approx(15 / 22.25) == exact_ratio(narrow)
    assert pytest.approx(18 / 19) == exact_ratio(wide)
    assert DRILL_FIRST in narrow.says
    assert DRILL_FIRST in wide.says


def test_thin_screws_in_wide_timber_need_no_drill() -> None:
    narrow = check_of(joint_screw_checks, _of_diameter(4.0), DISTANCES, "joints through 38 mm")

    assert DRILL_FIRST not in narrow.says


def test_thick_screws_are_told_and_a_thinner_one_passes() -> None:
    found = check_of(joint_screw_checks, _of_diameter(8.0), DISTANCES, "joints through 38 mm")
    thinner_mm = float(found.remedy.split(" mm")[0].rsplit(" ", 1)[1])

    assert Verdict.ADVISE is found.verdict
    assert Verdict.PASS is check_of(joint_screw_checks, _of_diameter(thinner_mm), DISTANCES, "joints through 38 mm").verdict
    assert (
        Verdict.ADVISE is check_of(joint_screw_checks, _of_diameter(thinner_mm + 0.1), DISTANCES, "joints through 38 mm").verdict
    )


def test_loaded_edge_of_a_ply_at_a_jack() -> None:
    """B20 turned to drilled: (3 + 4) d = 35 mm at 90 degrees; C: 63 - 19 mm are there."""
    found = check_of(joint_screw_checks, after_checks("C"), DISTANCES, "U-TP1")

    assert pytest.approx(35 / 44) == exact_ratio(found)


def test_splitting() -> None:
    """By hand with (8.4), checked at A25: bearer of A at half of its depth for years, ply of C at 44 of 63 mm."""
    bearer, ply = (check_of(joint_screw_checks, after_checks(example), SPLITTING) for example in "AC")

    of_bearer_n, of_ply_n = 14 * 38 * (44.5 / 0.5) ** 0.5 * 0.6 / 1.3, 14 * 38 * (44 / (1 - 44 / 63)) ** 0.5 * 0.9 / 1.3

    assert pytest.approx(1.35 * 106.9 / 2 / of_bearer_n, rel=1e-3) == exact_ratio(bearer)
    assert pytest.approx(1142.7 / of_ply_n, rel=1e-3) == exact_ratio(ply)
    assert {SPLITTING} == set(skipped_of(joint_screw_checks, laid_out("C")))


def _of_diameter(diameter_mm: float) -> Ground:
    screw = after_checks("A").hardware.narrow_screw
    assert screw is not None
    return of_hardware(after_checks("A"), narrow_screw=msgspec.structs.replace(screw, diameter_mm=diameter_mm))
