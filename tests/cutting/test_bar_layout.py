from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from service.cutting import BarStock
from service.cutting.bar_layout import lay_bars, leftovers_of, stock_of
from service.cutting.problem import state_bars
from tests.cutting.jobs import bars

if TYPE_CHECKING:
    from service.cutting import BarGroup

# 700 x 3 (M0), 700 x 1 after measuring (M1), 300 x 2 (M2) on bars of 2400 with kerf 4 and 10 trimmed.
JOB = bars([(700, 3, False), (700, 1, True), (300, 2, False)], [(2400, 400)], trim=100)


def laid(*rows: tuple[int, int]) -> tuple[BarGroup, ...]:
    return lay_bars(JOB, state_bars(JOB), tuple((0, np.array(row)) for row in rows))


def test_pieces_are_measured_from_half_the_trim_with_a_kerf_between() -> None:
    """By hand: 5; 705; 709..1409; 1413..2113; rest 2395 - 2117 = 278."""
    group = laid((3, 0), (1, 2))[0]

    assert [(50, 7_050), (7_090, 14_090), (14_130, 21_130)] == [(cut.start_tenth_mm, cut.end_tenth_mm) for cut in group.cuts]
    assert (2_780, 120, 100, False) == (group.rest_tenth_mm, group.kerf_tenth_mm, group.trim_tenth_mm, group.keep)


def test_what_waits_lies_last_on_as_few_bars_as_can_be() -> None:
    first, second = laid((2, 0), (2, 2))

    assert [[False, False], [False, False, False, True]] == sorted(
        [[cut.after_measure for cut in group.cuts] for group in (first, second)], key=len
    )


def test_equal_bars_are_one_group_with_a_row_of_labels_each() -> None:
    (group,) = lay_bars(JOB, state_bars(JOB), ((0, np.array([1, 0])), (0, np.array([1, 0])), (0, np.array([1, 0]))))

    assert (3, (("M0",), ("M0",), ("M0",))) == (group.bars_count, group.labels)


def test_rests_worth_keeping_are_named_longest_first() -> None:
    """By hand, 2390 usable: 700 leaves 1686; 700 + 2 x 300 leaves 1078; 700 + 700 leaves 982; all three are over 300."""
    rests = leftovers_of(laid((1, 2), (2, 0), (1, 0)))

    assert [16_860, 10_780, 9_820] == [rest.width_tenth_mm for rest in rests]
    assert all(rest.label == f"{rest.of}-R" for rest in rests)


def test_the_fullest_bar_takes_the_offcut_on_hand() -> None:
    """An offcut of the same length as a bar: what is bought keeps the longer rest."""
    offcut = BarStock(code="OFF", length_tenth_mm=24_000, copies_count=1, offcut=True)
    job = bars([(700, 4, False)], [(2400, 400)], extra=(offcut,))
    groups = lay_bars(job, state_bars(job), ((0, np.array([1])), (0, np.array([3]))))

    assert {"OFF": 3, "T2400": 1} == {group.code: len(group.cuts) for group in groups}
    assert [("T2400", False), ("OFF", True)] == [(line.code, line.offcut) for line in stock_of(groups)]
