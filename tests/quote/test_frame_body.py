from __future__ import annotations

import pytest

from service.frame import Box
from service.quote.frame_body import frame_body, place
from service.rules import load_rules
from tests.sold_examples import NAMES, made

RULES = load_rules()


def test_tenths_become_millimetres() -> None:
    box = Box(x0_tenth_mm=0, x1_tenth_mm=13_275, y0_tenth_mm=5, y1_tenth_mm=10, z0_tenth_mm=-100, z1_tenth_mm=1)
    found = place(box)

    assert (0, 1_327.5, 0.5, 1, -10, 0.1) == (found.x0_mm, found.x1_mm, found.y0_mm, found.y1_mm, found.z0_mm, found.z1_mm)


@pytest.mark.parametrize("name", NAMES)
def test_nothing_of_the_frame_is_lost(name: str) -> None:
    at = made(name)
    body = frame_body(at.frame, at.job, RULES)

    assert [member.mark for member in at.frame.members] == [member.mark for member in body.members]
    assert [panel.mark for panel in at.frame.panels] == [panel.mark for panel in body.panels]
    assert sum(member.length_tenth_mm for member in at.frame.members) == round(10 * sum(one.length_mm for one in body.members))
    assert (len(at.frame.openings), len(at.frame.stations)) == (len(body.openings), len(body.stations))
    assert (len(at.frame.wall_fixings), len(at.frame.ceiling_screws)) == (len(body.wall_fixings), len(body.ceiling_screws))


@pytest.mark.parametrize("name", NAMES)
def test_sums_close_as_text_and_as_numbers(name: str) -> None:
    """`design.md`, section 5: `closure`: the sums that must hold, as text and numbers."""
    at = made(name)
    for closure in frame_body(at.frame, at.job, RULES).closure:
        said, total = closure.text.split(" = ")

        assert closure.total_mm == pytest.approx(sum(term.value_mm for term in closure.terms), abs=0.001)
        assert closure.total_mm == pytest.approx(sum(float(part) for part in said.split(" + ")), abs=0.001)
        assert total.startswith(f"{closure.total_mm:g} ")


def test_levels_and_sizes_of_the_worked_example() -> None:
    """`knowledge/worked-examples.md`, example A, "Derived"."""
    at = made("A")
    body = frame_body(at.frame, at.job, RULES)
    clear, framing = body.sizes.recess_clear, body.sizes.recess_framing
    assert clear is not None
    assert framing is not None

    assert (1_357, 1_327, 420, 242, 1_251) == (
        body.sizes.finished_width_mm, body.sizes.frame_width_mm, body.sizes.frame_depth_mm, body.sizes.cross_noggin_length_mm,
        body.sizes.rail_length_mm,
    )  # fmt: skip
    assert (1_064, 657, 129, 1_094, 687) == (clear.width_mm, clear.height_mm, clear.depth_mm, framing.width_mm, framing.height_mm)
    assert (430, 920, 2_505, 1_130, 1_817, 1_473.5) == (
        body.levels.platform_mm, body.levels.appliance_top_mm, body.levels.upper_top_mm, body.levels.recess_sill_mm,
        body.levels.recess_head_mm, body.levels.screen_centre_mm,
    )  # fmt: skip


def test_without_a_screen_there_is_no_recess() -> None:
    body = frame_body(made("C").frame, made("C").job, RULES)

    assert (None, None, None) == (body.sizes.recess_clear, body.sizes.recess_framing, body.levels.recess_sill_mm)


def test_slack_is_what_cutting_down_leaves() -> None:
    """Example B: noggins 195.5 cut 195; "20 pieces, slack 0.5 each" (`knowledge/worked-examples.md`, section 0)."""
    body = frame_body(made("B").frame, made("B").job, RULES)

    assert [0.5] * 20 == [member.slack_mm for member in body.members if member.slack_mm]


def test_stock_is_named_with_its_length() -> None:
    assert "TM-1035A 2400" == frame_body(made("A").frame, made("A").job, RULES).timber.stock[0]
