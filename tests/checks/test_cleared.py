from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from service.checks import faults_of_cleared
from service.checks.caution_table import KINDS, clearing_roles
from service.checks.cleared import cleared_by
from service.errors import Reason
from service.survey.survey import ClearingRole
from tests.checks.row_cases import A, on
from tests.examples_of import request_of

if TYPE_CHECKING:
    from service.survey import Survey


def survey(code: str, role: str) -> Survey:
    entry = {"code": code, "name": "N. Body", "role": role, "on": "2026-11-21", "evidence": "letter"}
    return request_of(on(A, survey__cleared=[entry])).survey


@pytest.mark.parametrize("code", sorted(KINDS))
def test_only_the_roles_of_the_row_clear_it(code: str) -> None:
    """`knowledge/survey.md`, section 13."""
    for role in ClearingRole:
        allowed = role in clearing_roles(code)
        faults = faults_of_cleared(survey(code, role))

        assert allowed == (faults == ())
        assert allowed == (cleared_by(code, survey(code, role)) is not None)


def test_a_wrong_role_is_told_who_may() -> None:
    (fault,) = faults_of_cleared(survey("B03", "owner"))

    assert ("/survey/cleared/0/role", Reason.NOT_ALLOWED) == (fault.pointer, fault.reason)
    assert "have it cleared by: gas_engineer" == fault.remedy
    assert ("/survey/cleared/0/code",) == fault.related


@pytest.mark.parametrize("code", ["B01", "E99"])
def test_what_is_no_caution_cannot_be_cleared(code: str) -> None:
    """A live flue is never boxed in: nobody clears B01."""
    (fault,) = faults_of_cleared(survey(code, "surveyor"))

    assert ("/survey/cleared/0/code", Reason.IMPOSSIBLE_VALUE) == (fault.pointer, fault.reason)


def test_nothing_cleared_nothing_wrong() -> None:
    assert () == faults_of_cleared(request_of(A).survey)
    assert None is cleared_by("E01", request_of(A).survey)
