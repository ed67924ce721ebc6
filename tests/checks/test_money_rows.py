from __future__ import annotations

from typing import Any

import pytest

from tests.checks.row_cases import A, C, cases, codes, on, row


@pytest.mark.parametrize(("code", "fires", "quiet"), cases("M"), ids=lambda value: value if isinstance(value, str) else "")
def test_each_row_fires_and_keeps_quiet(code: str, fires: dict[str, Any], quiet: dict[str, Any]) -> None:
    """`knowledge/cautions.md`: triggers of the rows M."""
    assert code in codes(fires)
    assert code not in codes(quiet)


def test_what_is_assumed_is_counted_and_named() -> None:
    """M01: the first five by name, the rest by number."""
    gone = ("wall__damp", "wall__party", "wall__flat_mm", "floor__sound", "site__country", "site__stairs", "services__rcd")
    some, many = on(A, survey__wall__damp=None), on(A, **dict.fromkeys(f"survey__{name}" for name in gone))

    assert "1 value that a firm price needs is assumed: wall damp. Measure or state it." in row(some, "M01").says
    assert "7 values" in row(many, "M01").says
    assert "and 2 more" in row(many, "M01").says


def test_a_value_that_was_sent_as_assumed_is_assumed() -> None:
    request = on(A, survey__provenance={"/survey": "measured", "/survey/wall/units": "assumed"})

    assert "wall units" in row(request, "M01").says


def test_what_the_customer_brings_is_named() -> None:
    brought = on(A, terms__appliance_supplied_by="customer", terms__bracket_supplied_by="customer")

    assert "The customer brings: fire, screen, screen bracket." in row(brought, "M07").says
    assert "The customer brings: screen." in row(on(A, terms__screen_supplied_by=None), "M07").says


def test_nobody_brings_a_screen_that_is_not_wanted() -> None:
    request = on(C, terms__appliance_supplied_by="shop", terms__screen_supplied_by="customer")

    assert "M07" not in codes(request)
