from __future__ import annotations

from service import quote
from service.offers import answer_bill, answer_frame, answer_quote
from service.quote import Unbuildable
from tests.examples_of import changed, example_a, request_of
from tests.sold_examples import desk_of

DESK = desk_of()
SHALLOW = request_of(changed(example_a(), {"/survey/brief/breast_depth_mm": 250}))


def test_what_can_be_built_is_the_quote_itself() -> None:
    request = request_of(example_a())

    assert quote.answer_quote(request, DESK) == answer_quote(request, DESK)
    assert quote.answer_frame(request, DESK) == answer_frame(request, DESK)
    assert quote.answer_bill(request, DESK) == answer_bill(request, DESK)


def test_all_three_operations_offer_the_same_ways_out() -> None:
    answers = [answer(SHALLOW, DESK) for answer in (answer_frame, answer_bill, answer_quote)]

    assert all(isinstance(one, Unbuildable) for one in answers)
    assert 1 == len({one.alternatives for one in answers if isinstance(one, Unbuildable)})


def test_an_alternative_says_its_sizes_and_its_price() -> None:
    """worked-examples.md, A: the fire is 330 deep with 40 behind it: 370."""
    answer = answer_frame(SHALLOW, DESK)

    assert isinstance(answer, Unbuildable)
    one = answer.alternatives[0]
    assert (370.0, 1357.0, 2515.0) == (one.finished_depth_mm, one.finished_width_mm, one.finished_top_mm)
    assert float(one.total.amount) > 1000
    assert 42 < (one.screen_diagonal_in or 0) < 44
