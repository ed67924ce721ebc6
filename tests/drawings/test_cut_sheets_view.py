from __future__ import annotations

import pytest

from service.drawings.cut_sheets_view import draw_sheet_cuts
from tests.drawings.lint import lint, words
from tests.sold_examples import made

NAMES = ("A", "B", "C", "C0")


@pytest.mark.parametrize("name", NAMES)
def test_the_diagram_is_readable(name: str) -> None:
    assert [] == lint(draw_sheet_cuts(made(name).plan))


@pytest.mark.parametrize("name", NAMES)
def test_every_piece_is_on_it_and_every_panel_has_its_piece(name: str) -> None:
    one = made(name)
    said = " ".join(words(draw_sheet_cuts(one.plan)))

    assert all(panel.mark in said for panel in one.frame.panels)
    labels = [label for board in one.plan.boards for group in board.plan.groups for row in group.labels for label in row]
    assert sorted(panel.mark for panel in one.frame.panels) == sorted(labels)


def test_what_is_kept_says_its_size() -> None:
    said = words(draw_sheet_cuts(made("B").plan))

    assert "keep" in said
    assert any("* cut after measuring" in one for one in said)
