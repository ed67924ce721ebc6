"""Dimension stacks: values that sum, room for narrow ones, running sizes from their origin."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.drawings.canvas import Canvas
from service.drawings.dimensions import Running, Side, Stack, inside_level
from service.drawings.primitives import Circle, Drawing, Pen
from tests.drawings.lint import lint, primitives, texts, words


def finished(canvas: Canvas) -> Drawing:
    return canvas.finish("stack", "Stack", "Stack")


@pytest.mark.parametrize("side", Side)
def test_a_chain_carries_each_part_and_they_sum_to_the_whole(side: Side) -> None:
    canvas = Canvas(10)
    stack = Stack(canvas, side, 0.0)
    stack.chain((0, 4300, 9200, 11_301, 25_050))
    stack.chain((0, 25_050))

    assert ["430", "490", "210.1", "1374.9", "2505"] == words(finished(canvas))
    assert [] == lint(finished(canvas))


@pytest.mark.parametrize("side", Side)
def test_values_stand_outside_the_outline_on_their_side(side: Side) -> None:
    canvas = Canvas(10)
    Stack(canvas, side, 7.0).chain((0, 20_000))
    (value,) = texts(finished(canvas))
    away = {
        Side.BELOW: 7.0 - value.at_mm[1],
        Side.ABOVE: value.at_mm[1] - 7.0,
        Side.LEFT: 7.0 - value.at_mm[0],
        Side.RIGHT: value.at_mm[0] - 7.0,
    }

    assert away[side] > 5.0
    assert value.turned is (side in {Side.LEFT, Side.RIGHT})  # read from below or from the right: ISO 129-1:2018


@pytest.mark.parametrize("side", Side)
@pytest.mark.parametrize(
    "places",
    [
        (0, 380, 12_890, 13_270),  # narrow at both ends
        (0, 100, 200, 300, 25_000),  # narrow ones in a row at the start
        (0, 890, 1890, 1950, 2100),  # all too narrow at 1:20
        (0, 5000, 5010, 5020, 5030, 9000),  # narrow ones in the middle
        (0, 40),
    ],
)
def test_narrow_parts_keep_clear_of_each_other_and_of_the_next_chain(side: Side, places: tuple[int, ...]) -> None:
    for scale in (10, 20):
        canvas = Canvas(scale)
        stack = Stack(canvas, side, 0.0)
        stack.chain(places)
        stack.chain((places[0], places[-1]))

        assert [] == lint(finished(canvas)), scale


@given(st.sets(st.integers(0, 30_000), min_size=2, max_size=9), st.sampled_from(Side), st.sampled_from((10, 20)))
@settings(max_examples=150)
def test_any_chain_is_readable(places: set[int], side: Side, scale: int) -> None:
    canvas = Canvas(scale)
    stack = Stack(canvas, side, 0.0)
    stack.chain(tuple(places))
    stack.chain((min(places), max(places)))
    *parts, whole = [round(10 * float(word)) for word in words(finished(canvas))]

    assert [] == lint(finished(canvas))
    assert sum(parts) == whole == max(places) - min(places)


@pytest.mark.parametrize("side", Side)
def test_running_sizes_count_from_the_ring(side: Side) -> None:
    canvas = Canvas(10)
    stack = Stack(canvas, side, 0.0)
    stack.running([Running(at_tenth_mm=4297), Running(at_tenth_mm=-150), Running(at_tenth_mm=8593, words="jack")], (-150, 13_420))
    stack.chain((-150, 13_420))
    (ring,) = [part for part in primitives(finished(canvas)) if isinstance(part, Circle)]

    assert {"0", "444.7", "874.3 jack", "1357"} == set(words(finished(canvas)))
    assert [] == lint(finished(canvas))
    assert -1.5 == ring.centre_mm[0 if side in {Side.BELOW, Side.ABOVE} else 1]


def test_crowded_running_sizes_are_spread_in_order() -> None:
    canvas = Canvas(20)
    stack = Stack(canvas, Side.BELOW, 0.0)
    stack.running([Running(at_tenth_mm=6000 + 40 * step, words="pack 12") for step in range(6)], (0, 12_000))
    stack.chain((0, 12_000))
    places = [text.at_mm[0] for text in texts(finished(canvas)) if text.content.endswith("pack 12")]

    assert [] == lint(finished(canvas))
    assert sorted(places) == places


def test_words_at_the_origin_stand_there_as_a_label() -> None:
    canvas = Canvas(10)
    Stack(canvas, Side.BELOW, 0.0).running([Running(at_tenth_mm=0, words="pack 9"), Running(at_tenth_mm=5000)], (0, 9000))

    assert ["0 pack 9", "500"] == words(finished(canvas))


def test_the_end_of_a_stack_lies_outside_its_texts() -> None:
    canvas = Canvas(10)
    stack = Stack(canvas, Side.ABOVE, 0.0)
    stack.running([Running(at_tenth_mm=5000, words="jack")], (0, 9000))
    canvas.line((-20.0, stack.end_mm), (120.0, stack.end_mm), Pen.NARROW)

    assert [] == lint(finished(canvas))


def test_a_size_inside_an_opening() -> None:
    canvas = Canvas(10)
    canvas.line((60.0, -10.0), (60.0, 30.0), Pen.NEIGHBOUR)  # through the middle
    inside_level(canvas, (2205, 9795), 5.0)

    assert ["759"] == words(finished(canvas))
    assert [] == lint(finished(canvas))
