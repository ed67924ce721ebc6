"""Source of the figures: `knowledge/worked-checks.md`, B10 to B17; `knowledge/worked-examples.md`, "After checks" of C."""

from __future__ import annotations

import msgspec
import pytest

from service.catalogue import Material
from service.checks.sheared_screws import in_end_grain_n, sheared_screw, under_plate_n
from service.rules import load_rules

RULES = load_rules()
C16, C24 = (RULES.strength_class(name) for name in ("C16", "C24"))
SCREW = Material(code="S", kind="wood_screw", description="", unit="box", diameter_mm=4.5, root_diameter_mm=2.9, length_mm=90.0)
OF_C = Material(
    code="S", kind="wood_screw", description="", unit="box", diameter_mm=5.0, root_diameter_mm=3.1, length_mm=70.0,
    yield_moment_n_mm=5900.0,
)  # fmt: skip


def test_single_shear() -> None:
    """B10: root 2.9, f_u 600, C16 both, t 47/43, not predrilled, no rope: f governs, 745.92 N."""
    found = sheared_screw(SCREW, 47.0, C16, RULES)

    assert pytest.approx(745.92, rel=1e-3) == found.each_n
    assert "f" == found.mode
    assert 43 == found.point_mm


def test_screw_at_the_jacks_of_c() -> None:
    """worked-examples.md, C: t 38/32, M_y 5900 declared: mode e, 853.3 N."""
    found = sheared_screw(OF_C, 38.0, C16, RULES)

    assert pytest.approx(853.3, abs=0.06) == found.each_n
    assert "e" == found.mode


def test_short_screws_hold_nothing() -> None:
    """EN 1995-1-1, 8.3.1.2(2): six diameters in the point side: 70 through 45 leaves 25 of 30 mm."""
    assert (0.0, "", 25.0) == sheared_screw(OF_C, 45.0, C16, RULES)
    assert 0 == sheared_screw(msgspec.structs.replace(OF_C, diameter_mm=None, length_mm=None), 45.0, C16, RULES).each_n


def test_end_grain() -> None:
    """B14: a third, 248.64 N each; structure.md: nothing of fewer than three screws, or under ten diameters (A: 32 of 50)."""
    assert pytest.approx(0) == in_end_grain_n(SCREW, 47.0, C16, RULES, count=3)  # 43 of 45 mm
    assert pytest.approx(3 * 248.64, rel=0.02) == in_end_grain_n(
        msgspec.structs.replace(SCREW, length_mm=94.0), 47.0, C16, RULES, count=3
    )
    assert 0 == in_end_grain_n(msgspec.structs.replace(SCREW, length_mm=94.0), 47.0, C16, RULES, count=2)
    assert 0 == in_end_grain_n(OF_C, 38.0, C16, RULES, count=3)


def test_under_a_plate() -> None:
    """B17: thin plate 2 mm, root 3.1 (d_ef 3.41), C24, t 45, f_u 600: b governs, 884.78 N; thick: e, 1251.3 N."""
    screw = Material(
        code="S", kind="wood_screw", description="", unit="box", diameter_mm=5.0, root_diameter_mm=3.1, length_mm=47.0
    )

    assert pytest.approx(884.78, rel=1e-3) == under_plate_n(screw, 2.0, C24, RULES)
    assert pytest.approx(1251.3, rel=1e-3) == under_plate_n(msgspec.structs.replace(screw, length_mm=50.0), 5.0, C24, RULES)
