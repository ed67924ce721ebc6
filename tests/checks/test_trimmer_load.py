"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A, B, C and C0."""

from __future__ import annotations

import pytest

from service.checks.trimmer_load import classes_above, greatest_ply_count, trimmer_of
from service.survey.wishes import Extra, ExtraKind
from tests.checks.after_checks import after_checks, laid_out, wished


@pytest.mark.parametrize(("example", "expected"), [("A", 0.2470), ("B", 0.2263), ("C", 0.1126), ("C0", 0.1279)])
def test_load_on_the_trimmer(example: str, expected: float) -> None:
    """W of the worked examples, N/mm; of C and C0 with one ply."""
    assert pytest.approx(expected, abs=0.00006) == trimmer_of(after_checks(example)).permanent_n_per_mm


def test_shares_of_rail_and_ply() -> None:
    """worked-examples.md, A: the ply takes 0.8458 of the load."""
    trimmer = trimmer_of(after_checks("A"))

    assert pytest.approx(0.8458, abs=0.00006) == trimmer.ply_share_ratio
    assert pytest.approx(1) == trimmer.ply_share_ratio + trimmer.flat_share_ratio
    assert pytest.approx((38 * 89**3 + 89 * 38**3) / 12 * 8000) == trimmer.stiffness_n_mm2


def test_moments_and_ends() -> None:
    """worked-examples.md, A: 65.2 + 469.1 N m factored; V 1708.6 N with the person at the support."""
    trimmer = trimmer_of(after_checks("A"))

    assert pytest.approx(65.2, abs=0.06) == 1.35 * trimmer.permanent_moment_n_mm / 1000
    assert pytest.approx(469.1, abs=0.06) == 1.5 * trimmer.person_moment_n_mm / 1000
    assert pytest.approx(1708.6, abs=0.06) == 1.35 * trimmer.permanent_end_n + 1.5 * trimmer.person_n
    assert pytest.approx(0.373, abs=0.0006) == trimmer.permanent_sag_mm
    assert pytest.approx(1.932, abs=0.0006) == trimmer.person_sag_mm


def test_plies_bring_their_weight() -> None:
    """worked-examples.md, C: w 0.1027 N/mm without a ply, 0.1126 with one."""
    assert pytest.approx(0.1027, abs=0.00006) == trimmer_of(laid_out("C")).permanent_n_per_mm
    assert pytest.approx(0.1126, abs=0.00006) == trimmer_of(laid_out("C")).with_plies(1).permanent_n_per_mm


def test_room_for_plies() -> None:
    """framing.md, 10.2: at most three, and p b <= n: n 242 of A, 162 of C over 38."""
    assert 3 == greatest_ply_count(after_checks("A"))
    assert 3 == greatest_ply_count(after_checks("C"))


def test_a_beam_on_the_face_hangs_on_the_trimmer() -> None:
    ground = laid_out("C")
    extra = Extra(kind=ExtraKind.BEAM, width_mm=1200, height_mm=120, depth_mm=100, mass_kg=10)
    added = trimmer_of(wished(ground, extras=(extra,))).weight_n_per_mm - trimmer_of(ground).weight_n_per_mm

    assert pytest.approx(10 * 9.80665 / 1331) == added


def test_stronger_classes_of_the_trimmer() -> None:
    assert ["C18", "C20", "C22", "C24", "C27", "C30"] == [
        one.name for one in classes_above(trimmer_of(laid_out("C")), laid_out("C"))
    ]
