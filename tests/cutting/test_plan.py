from __future__ import annotations

from service.cutting import BarCut


def test_a_cut_knows_the_length_of_its_piece() -> None:
    assert 250 == BarCut(start_tenth_mm=40, end_tenth_mm=290, after_measure=False).length_tenth_mm
