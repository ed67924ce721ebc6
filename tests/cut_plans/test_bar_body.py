from __future__ import annotations

from itertools import pairwise

from service.cut_plans import answer_cut_plan
from tests.cut_plans.cut_requests import bars_body, read

PIECES = [
    {"label": "late", "length_mm": 900, "pieces_count": 5, "after_measure": True},
    {"label": "rail", "length_mm": 1300, "pieces_count": 4},
    {"label": "noggin", "length_mm": 300, "pieces_count": 7},
]


def test_stops_go_from_now_to_later_and_from_long_to_short() -> None:
    bars = answer_cut_plan(read(bars_body(pieces=PIECES))).bars
    assert bars is not None
    stops = [(stop.after_measure, -stop.stop_mm) for stop in bars.sequence]

    assert sorted(stops) == stops
    assert [(1300, 4), (300, 7), (900, 5)] == [(stop.stop_mm, stop.cuts_count) for stop in bars.sequence]


def test_every_bar_is_cut_in_the_order_of_the_stops() -> None:
    """Else a stop would ask for a piece that lies behind one not cut yet."""
    bars = answer_cut_plan(read(bars_body(pieces=PIECES))).bars
    assert bars is not None
    for bar in bars.bars:
        order = [(cut.after_measure, -cut.length_mm) for cut in bar.cuts]

        assert sorted(order) == order
        assert all(after.start_mm >= before.end_mm + 4 for before, after in pairwise(bar.cuts))


def test_labels_come_back() -> None:
    bars = answer_cut_plan(read(bars_body(pieces=PIECES))).bars
    assert bars is not None
    marks = [mark for bar in bars.bars for cut in bar.cuts for mark in cut.marks]

    assert {"late": 5, "rail": 4, "noggin": 7} == {label: marks.count(label) for label in set(marks)}
