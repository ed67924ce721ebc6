from __future__ import annotations

from service.checks.check import Skipped
from service.checks.report import Report
from tests.checks.test_check import made

FAMILIES = ["structure", "fixings", "heat", "power", "viewing", "handling"]


def test_every_family_of_which_nothing_was_said_is_named() -> None:
    some = Report(checks=(made(1.0, 2.0),), skipped=(Skipped(code="heat.inlet", why="no heater"),))

    assert FAMILIES == [family.family for family in Report().not_made]
    assert ["fixings", "power", "viewing", "handling"] == [family.family for family in some.not_made]


def test_results_are_sorted_by_what_they_mean() -> None:
    holds, fails, unsure = made(1.0, 2.0), made(2.0, 1.0), made(1.0, None, unverified="the wall is not known")
    report = Report(checks=(holds, fails, unsure))

    assert (fails,) == report.failing
    assert (unsure,) == report.provisional
    assert (holds, fails, unsure) == report.of("structure.trial")
    assert () == report.of("structure.other")
