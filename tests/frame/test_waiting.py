from __future__ import annotations

from service.frame import CutWhen, measure_before_cutting
from tests.examples_of import example_a, example_c, frame_of


def test_what_follows_from_the_ceiling_waits_for_it() -> None:
    """worked-examples.md, A: 4 ladder uprights of 1585 and 3 cripples above the head of 612; boards that reach the ceiling."""
    frame = frame_of(example_a())
    waiting = measure_before_cutting(frame)[0]
    lengths = sorted(member.cut_length_mm for member in frame.members if member.mark in waiting.members)

    assert [612, 612, 612, 1585, 1585, 1585, 1585] == lengths
    assert {panel.mark for panel in frame.panels if panel.cut_when is CutWhen.AFTER_MEASURE} == set(waiting.panels)
    assert waiting.panels


def test_in_part_height_nothing_waits() -> None:
    assert () == measure_before_cutting(frame_of(example_c()))
