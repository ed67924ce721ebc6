from __future__ import annotations

import msgspec
import pytest

from service.checks import FAMILIES, Report, Skipped, cautions_of
from service.quote.standing import exclusions_of, standing_of
from service.rules import load_rules
from service.survey.terms import Scope, SuppliedBy
from tests.bill.bill_facts import one_sided
from tests.checks.row_cases import A, on
from tests.checks.test_check import made as check_of
from tests.sold_examples import made, sell


def standing(request: dict[str, object]) -> tuple[str, tuple[str, ...]]:
    at = sell(request)
    return standing_of(at.job, cautions_of(at.job, at.frame, load_rules(), at.settled.report), at.price, at.settled.report)


@pytest.mark.parametrize(
    ("resistance", "unverified", "expected", "reasons"),
    [
        (2.0, "", "firm", ()),
        (1.0, "", "firm", ()),
        (0.9, "", "provisional", ("checks that fail: structure.trial",)),
        (2.0, "not declared", "provisional", ("checks that are not verified: structure.trial",)),
        (None, "not declared", "provisional", ("checks that are not verified: structure.trial",)),
    ],
)
def test_a_price_is_firm_when_all_is_known_and_every_check_holds(
    resistance: float | None, unverified: str, expected: str, reasons: tuple[str, ...]
) -> None:
    """The design card, section 4: firm only if nothing is assumed, no check fails and no stop is uncleared."""
    at = made("A")
    others = tuple(Skipped(code=f"{family.family}.all", why="of another test") for family in FAMILIES)
    report = Report(checks=(check_of(1.0, resistance, unverified=unverified),), skipped=others)

    assert (expected, reasons) == standing_of(at.job, (), at.price, report)


def test_example_a_is_firm() -> None:
    """The design card, section 3: the example carries the provenance that makes it firm once the checks exist."""
    assert ("firm", ()) == standing(A)


def test_what_is_not_checked_keeps_a_price_from_being_firm() -> None:
    at = made("A")

    assert ("provisional", ("not checked yet: fixings, handling, heat, power, structure, viewing",)) == standing_of(
        at.job, (), at.price, Report()
    )


@pytest.mark.parametrize(
    ("request_", "expected", "reason"),
    [
        (on(A, survey__wall__damp=None), "provisional", "values assumed that a firm price needs: 1"),
        (on(A, survey__provenance={"/survey/wall": "assumed"}), "provisional", "values assumed that a firm price needs: 1"),
        (
            on(A, survey__brief__screen={"kind": "size_class", "diagonal_in": 43}),
            "estimate",
            "fire or screen is known by its size class only",
        ),
        (on(A, survey__wall__flat_mm=12), "provisional", "values to be confirmed: 1"),
        (on(A, survey__wall__construction="unknown"), "provisional", "not cleared: S03"),
        (one_sided("AF-107"), "provisional", "figures that the makers do not state: 3"),
    ],
)
def test_reasons_are_counted(request_: dict[str, object], expected: str, reason: str) -> None:
    """`knowledge/survey.md`, section 1."""
    found, reasons = standing(request_)

    assert expected == found
    assert reason in reasons


def test_a_cleared_stop_is_no_reason() -> None:
    studs = {"survey__wall__construction": "steel_stud", "survey__wall__stud_positions_mm": [1300, 1700, 2100, 2500]}
    cleared = [{"code": "S04", "name": "N. Truss", "role": "structural_engineer", "on": "2026-11-21", "evidence": "drawing 4"}]

    assert "not cleared: S04" in standing(on(A, **studs))[1]
    assert not any("S04" in reason for reason in standing(on(A, **studs, survey__cleared=cleared))[1])


def test_what_is_not_sold_is_excluded() -> None:
    """`knowledge/labour.md`, section 8, exclusions to print."""
    deal = made("A").deal
    fitted = exclusions_of(deal)
    kit = exclusions_of(msgspec.structs.replace(deal, scope=Scope.KIT))
    brought = exclusions_of(msgspec.structs.replace(deal, appliance_supplied_by=SuppliedBy.CUSTOMER))

    assert "asbestos testing and removal" in fitted
    assert "all work on site" in kit
    assert "asbestos testing and removal" not in kit
    assert ("the fire", "the screen") == brought[:2]
    assert "the screen" == fitted[0]
