from __future__ import annotations

from service.offers import answer_quote as offered_quote
from service.quote import Unbuildable, render_quote_text
from tests.checks.row_cases import A, on
from tests.examples_of import changed, example_a, request_of
from tests.quote.text_facts import designed, part, read, text_of
from tests.sold_examples import desk_of

CLEARED = [{"code": "S01", "name": "N. Body", "role": "surveyor", "on": "2026-11-21", "evidence": "note 3"}]


def test_cautions_stand_under_what_they_stop() -> None:
    lines = part(text_of("B"), "CAUTIONS")
    headings = [line for line in lines if line.endswith(":") and not line.startswith(" ")]

    assert ["that work waits, or is done by the trade named:", "no early start:", "to know:"] == headings
    assert 0 == lines.index(headings[0])


def test_a_caution_names_its_readers_and_who_clears_it() -> None:
    lines = part(text_of("A"), "CAUTIONS")

    assert "E01  cf  Connection, tests and certificate are the work of a qualified electrician. To be cleared by" in lines
    assert "         a qualified electrician." in lines
    assert not any("cleared by" in line for line in lines[lines.index("to know:") :])


def test_what_is_not_verified_is_questioned() -> None:
    lines = part(read(on(A, survey__wall__construction="unknown")), "CAUTIONS")

    assert any(line.startswith("S03? cs") for line in lines)
    assert "no firm price until it is cleared:" in lines


def test_what_is_cleared_says_by_whom() -> None:
    lines = part(read(on(A, survey__cleared=CLEARED)), "CAUTIONS")

    assert any(line.startswith("S01  f   CLEARED by N. Body, surveyor, 2026-11-21: note 3.") for line in lines)


def test_every_caution_is_on_the_page() -> None:
    for name in ("A", "B", "C"):
        text, quote = text_of(name), designed(name)

        assert [one.code for one in quote.cautions] == [
            line[:3] for line in part(text, "CAUTIONS") if line[:1].isupper() and line[1:3].isdigit()
        ]


def test_assumptions_stand_by_what_they_cost() -> None:
    lines = part(read(on(A, survey__wall__damp=None, survey__site__parking_distance_mm=None)), "ASSUMED")
    headings = [line for line in lines if not line.startswith(" ")]

    assert ["a firm price needs these told:", "taken, not needed for a firm price:", "chosen by the house:"] == headings
    assert "  /survey/wall/damp = none: damp is cured first" in lines


def test_nothing_assumed_no_heading() -> None:
    everything = on(
        A,
        terms__crew_count=2,
        survey__brief__glass_set_back_mm=25,
        survey__brief__cable_room_mm=25,
        survey__brief__after_measure_allowance_mm=20,
    )

    assert "ASSUMED" not in read(everything)


def test_doubts_are_asked() -> None:
    lines = part(read(on(A, survey__wall__flat_mm=12)), "PLEASE CONFIRM")

    assert any(line.startswith("  /survey/wall/flat_mm = 12: ") for line in lines)


def test_an_answer_says_what_it_was_made_from() -> None:
    lines, origin = part(text_of("A"), "MADE FROM"), designed("A").origin

    assert f"catalogue  {origin.catalogue_revision}" in lines
    assert f"request    {origin.request_digest}" in lines


def test_what_would_work_is_printed_with_its_change_and_price() -> None:
    request = request_of(changed(example_a(), {"/survey/brief/breast_depth_mm": 250}))
    answer = offered_quote(request, desk_of())
    assert isinstance(answer, Unbuildable)
    text = render_quote_text(answer)

    assert "WHAT WOULD WORK" in text
    assert f"breast 370 deep: {answer.alternatives[0].total.amount} GBP with tax" in text
    assert "set /survey/brief/breast_depth_mm to 370.0" in text


def test_why_nothing_would_work_is_printed() -> None:
    request = request_of(changed(example_a(), {"/survey/chimney": {"flue": "in_use"}}))

    assert "no change of the brief clears this" in render_quote_text(offered_quote(request, desk_of()))
