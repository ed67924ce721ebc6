from __future__ import annotations

import msgspec

from service.labour import make_programme
from service.quote.text_work import programme_text, sequence_text
from tests.quote.text_facts import designed, part, read, text_of
from tests.sold_examples import sold


def test_the_programme_says_day_time_work_and_trade() -> None:
    """`knowledge/labour.md`, section 4: five visit days, the fire on the fifth."""
    lines = part(text_of("A"), "PROGRAMME")

    assert lines[0].startswith("day 1: 08:00 to ")
    assert any(line.startswith("day 5: 08:00 to ") and "fire in (joiner)" in line for line in lines)
    assert "5 days of work on site, 5 from the first to the last" == lines[-1]


def test_days_have_dates_where_the_first_is_known() -> None:
    lines = part(read(sold("A", terms__first_day="2026-12-03")), "PROGRAMME")

    assert lines[0].startswith("day 1, 2026-12-03: ")


def test_nothing_is_said_where_nobody_works_on_site() -> None:
    assert [] == list(programme_text(make_programme(())))


def test_every_step_is_told_with_what_it_adds_and_measures() -> None:
    quote = designed("A")
    text = " ".join(" ".join(part(text_of("A"), "ORDER OF WORK")).split())

    assert all(f"{step.number} {step.name.replace('_', ' ')}" in text for step in quote.build_sequence)
    assert "measure both diagonals of the base: 1391.9, within 3" in text
    assert "with 16 fixings into the wall, 8 screws into the ceiling joists" in text
    assert "raise and fix upper frame (2 people, 4 props)" in text
    assert "then wait: 12 h before the fire" in text


def test_a_step_without_anything_is_its_name() -> None:
    plain = msgspec.structs.replace(
        designed("A").build_sequence[0], does=(), members=(), panels=(), fixings=(), measures=(), people_count=1
    )

    assert ["  1  protect and set out"] == list(sequence_text((plain,)))[2:]
