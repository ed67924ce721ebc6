"""The words of a measure on site."""

from __future__ import annotations

import msgspec

from service.quote.recut import recut_body
from service.quote.text_recut import recut_text
from tests.quote.test_recut import fitter, quote_of, recut_of


def test_without_a_measure_nothing_is_said() -> None:
    assert [] == list(recut_text(None))


def test_the_fitters_sheet_names_every_changed_mark() -> None:
    """1270 less 3 and 297 less 3, by hand in test_recut.py."""
    body = recut_body(quote_of(fitter(pieces_cut="now")).recut)
    lines = " ".join(" ".join(recut_text(body)).split())

    assert body is not None
    assert "appliance_top_to_ceiling_mm: 1287, surveyed 1290 (-3)" in lines
    assert "ladder upright 1267, was 1270: U-L1, U-L2, U-L3, U-L4" in lines
    assert "cripple above 294, was 297: U-CA1, U-CA2, U-CA3" in lines
    assert "the base is as it was" in lines
    assert "7 still to cut" in lines
    assert all(panel.mark in lines for panel in body.panels)


def test_a_survey_without_a_design_is_said() -> None:
    body = msgspec.structs.replace(recut_of(fitter()), compared=False)

    assert "the survey alone has no design to compare with" in " ".join(recut_text(body))
