from __future__ import annotations

import re

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.cut_plans import sheet_plan_answer
from service.cutting import cut_sheets
from service.quote.plan_body import plan_body
from service.quote.text_cuts import cuts_text, sorted_marks
from tests.checks.row_cases import A, on
from tests.cutting.jobs import pinwheel
from tests.quote.text_facts import designed, part, read, text_of
from tests.sold_examples import NAMES, strengthened


def test_bars_to_take_and_what_is_proven() -> None:
    """`knowledge/worked-examples.md`, example A: 62.97, 12 bars, proven."""
    bars = part(text_of("A"), "BARS AND THEIR CUTS")

    assert "4 x TM-1049R, 3 x TM-1042H, 5 x TM-1035A = 62.97 GBP; least cost proven; 12 bars, fewest proven" == bars[0]
    assert "saw cut 4; 20 mm longer what is cut after measuring (*)" == bars[1]


def test_nothing_waits_for_a_measure_in_part_height() -> None:
    assert "saw cut 4" == part(text_of("C"), "BARS AND THEIR CUTS")[1]


@pytest.mark.parametrize("name", NAMES)
def test_the_cuts_on_the_page_add_up(name: str) -> None:
    """Cuts + kerf between them + rest = the bar, as a joiner would check it with a pencil."""
    text = "\n".join(part(text_of(name), "BARS AND THEIR CUTS"))
    groups = re.findall(r"^B\d+ +(\d+) bars? of ([\d.]+) +(.+?); rest ([\d.]+)", text, re.MULTILINE)

    assert groups
    for _count, length, cuts, rest in groups:
        pieces = [(int(found[1] or 1), float(found[2])) for found in re.finditer(r"(?:(\d+) x )?([\d.]+)\*?(?: \+ |$)", cuts)]
        total = sum(count * mm for count, mm in pieces) + 4 * (sum(count for count, _mm in pieces) - 1)

        assert 0 <= float(length) - total - float(rest) <= 4  # the last cut leaves a rest, or runs off the end


@pytest.mark.parametrize("name", NAMES)
def test_every_mark_is_cut_once(name: str) -> None:
    marks = [
        mark for bar in designed(name).cut_plan.bars.bars for index in range(bar.bars_count) for mark in sorted_marks(bar, index)
    ]

    assert sorted(member.mark for member in designed(name).frame.members) == sorted(marks)


def test_marks_follow_the_cuts() -> None:
    for bar in designed("B").cut_plan.bars.bars:
        lengths = {cut.marks[0]: cut.length_mm for cut in bar.cuts}

        assert [cut.length_mm for cut in bar.cuts] == [lengths[mark] for mark in sorted_marks(bar, 0)]


def test_sheets_say_where_each_piece_lies() -> None:
    sheets = part(text_of("B"), "SHEETS AND THEIR CUTS")

    assert sheets[0].startswith(
        "Plasterboard 12.5 square edge: 3 x BD-2125K = 24.30 GBP; least cost proven; 3 sheets, fewest proven"
    )
    assert "MDF 15 standard: 1 x BD-2015R = 23.90 GBP; least cost proven; 1 sheet, fewest proven" in sheets
    assert 8 == sum(
        " at " in line
        for line in sheets[: sheets.index("MDF 15 standard: 1 x BD-2015R = 23.90 GBP; least cost proven; 1 sheet, fewest proven")]
    )


def test_ceiling_edges_without_an_allowance_are_told() -> None:
    plan = designed("A").cut_plan
    bare = msgspec.structs.replace(
        plan, boards=tuple(msgspec.structs.replace(board, with_allowance=False) for board in plan.boards)
    )
    lines = " ".join(line.strip() for line in cuts_text(bare))

    assert lines.count("cut them only when the ceiling is measured") == 1  # the backboard meets no ceiling
    assert "with the allowance on ceiling edges" in " ".join(line.strip() for line in cuts_text(plan))


def test_a_plan_that_is_not_proven_says_how_far_it_may_be() -> None:
    plan = designed("A").cut_plan
    proof = msgspec.structs.replace(
        plan.bars.proof, first_proven=False, bought_proven=False, gap_ratio=0.0123, bought_bound_count=11
    )
    unsure = msgspec.structs.replace(plan, bars=msgspec.structs.replace(plan.bars, proof=proof))
    text = " ".join(line.strip() for line in cuts_text(unsure))

    assert "least cost not proven: at least 62.97 GBP, gap 1.23%; 12 bars, fewest not proven: at least 11" in text


def test_what_is_not_priced_says_so() -> None:
    board = {
        "kind": "custom", "board_kind": "mdf", "thickness_mm": 15, "sheet_length_mm": 2440, "sheet_width_mm": 1220,
        "density_kg_m3": 740,
    }  # fmt: skip
    sheets = part(read(on(A, survey__brief__board=board)), "SHEETS AND THEIR CUTS")

    assert "custom mdf 15: 3 x custom-board, no price; 3 sheets, fewest proven; with the allowance on ceiling" == sheets[0]


def test_without_prices_the_aim_is_length() -> None:
    catalogue = demo_catalogue()
    prices = {code: steps for code, steps in catalogue.prices.items() if code != "TM-1056Y"}
    bars = part(read(A, msgspec.structs.replace(catalogue, prices=prices)), "BARS AND THEIR CUTS")

    assert "least length proven" in " ".join(bars[:2])


def test_a_sheet_for_the_plunge_saw_lists_its_lines() -> None:
    """Five pieces round and round on 1208 x 1208: each of the four lines is 804 long and stops at the next."""
    plan = designed("B").cut_plan
    sheets = sheet_plan_answer(cut_sheets(pinwheel()), currency="GBP", kerf_mm=4).sheets
    marked_out = msgspec.structs.replace(plan, boards=(msgspec.structs.replace(plan.boards[0], sheets=sheets),))
    text = list(cuts_text(marked_out))

    assert any(line.endswith("1 sheet of 1208 x 1208, for the plunge saw") for line in text)
    assert 4 == sum("saw a" in line for line in text)
    assert any(line.strip() in {"saw along at 400 from 0 to 804", "saw along at 400 from 404 to 1208"} for line in text)


def test_bars_of_another_class_have_a_heading() -> None:
    lines = list(cuts_text(plan_body(strengthened().plan, "GBP")))

    assert "C24 38 x 63, made stronger for the checks:" in lines
    assert "C24 38 x 89, made stronger for the checks:" in lines
