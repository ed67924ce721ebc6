from __future__ import annotations

import re

import msgspec
import pytest

from service.checks import FAMILIES, CautionState, Stops
from service.checks.caution_table import KINDS
from tests.checks.row_cases import CASES, CONTRIVED, A, on, row, rows
from tests.sold_examples import NAMES, sold

PROMISES = re.compile(r"\b(safe|safely|safety|compliant|compliance|guarantee[ds]?|certified)\b", re.IGNORECASE)
ORDER = (Stops.DESIGN, Stops.FIRM_QUOTE, Stops.THIS_WORK, Stops.EARLY_START, Stops.NOTHING)
CLEARED = {
    "code": "E01", "name": "R. Ohm", "role": "electrician", "on": "2026-11-21", "evidence": "certificate 17",
}  # fmt: skip


def test_what_stops_most_comes_first_then_by_section() -> None:
    """`knowledge/cautions.md`, section 8."""
    for name in NAMES:
        found = rows(sold(name))
        keys = [(ORDER.index(one.stops), "HESBVWM".index(one.code[0]), one.code) for one in found]

        assert sorted(keys) == keys


def test_no_sentence_promises_anything() -> None:
    """`knowledge/cautions.md`, section 8: never "safe", "compliant", "guaranteed"."""
    said = [one.says for fires, _quiet in CASES.values() for one in rows(fires)]
    said += [family.says for family in FAMILIES]

    assert [] == [says for says in said if PROMISES.search(says)]


def test_every_sentence_is_one() -> None:
    for fires, _quiet in CASES.values():
        for one in rows(fires):
            assert one.says[0].isupper() or one.says[0].isdigit() or "alarm" in one.says.split(":")[0]
            assert one.says.endswith(".")
            assert len(re.findall(r"[.!?](?= [A-Z])", one.says)) <= 2


def test_a_cleared_row_stays_and_says_by_whom() -> None:
    """`knowledge/survey.md`, section 13: it stays in every document as "cleared by ..."."""
    found = row(on(A, survey__cleared=[CLEARED]), "E01")

    assert CautionState.CLEARED is found.state
    assert "R. Ohm, electrician, 2026-11-21: certificate 17" == found.cleared_by
    assert "" == row(A, "E01").cleared_by


def test_clearing_one_row_clears_no_other() -> None:
    cleared = {one.code for one in rows(on(A, survey__cleared=[CLEARED])) if one.state is CautionState.CLEARED}

    assert {"E01"} == cleared


def test_an_estimate_gathers_what_is_not_verified_in_one_line() -> None:
    """`knowledge/cautions.md`, section 0, rule 2: all not_verified rows are one line, M01."""
    unknown = on(A, survey__wall__construction="unknown", survey__services__gas="unknown")
    estimate = on(unknown, survey__brief__screen={"kind": "size_class", "diagonal_in": 43}, survey__wall__damp=None)

    assert {"S03", "B03"} <= {one.code for one in rows(unknown)}
    assert ["M01"] == [one.code for one in rows(estimate) if one.state is CautionState.NOT_VERIFIED]
    assert row(estimate, "M01").says.endswith("Not verified: B03, S03.")


def test_an_estimate_with_nothing_unknown_says_no_more() -> None:
    estimate = on(A, survey__brief__screen={"kind": "size_class", "diagonal_in": 43})

    assert "Not verified" not in row(estimate, "M01").says


def test_rows_on_nothing_never_fire_on_what_is_not_known() -> None:
    """`knowledge/cautions.md`, section 0, rule 4."""
    bare = {"survey": {"brief": A["survey"]["brief"]}, "terms": A["terms"]}
    quiet = [one for one in rows(bare) if one.stops is Stops.NOTHING and one.state is CautionState.NOT_VERIFIED]

    assert [] == quiet
    assert any(one.state is CautionState.NOT_VERIFIED for one in rows(bare))


@pytest.mark.parametrize("code", sorted(KINDS.keys() - CONTRIVED.keys()))
def test_stops_and_readers_are_those_of_the_table_unless_the_row_says_so(code: str) -> None:
    fires = CASES[code][0] if code in CASES else A
    kind, found = KINDS[code], row(fires, code)

    assert (kind.audience, kind.who_clears, kind.source) == (found.audience, found.who_clears, found.source)
    if code not in {"H03", "B03", "B04", "B05", "B17", "E14"}:
        assert kind.stops is found.stops


def test_a_caution_goes_over_the_wire_and_back() -> None:
    for one in rows(A):
        assert one == msgspec.json.decode(msgspec.json.encode(one), type=type(one))
