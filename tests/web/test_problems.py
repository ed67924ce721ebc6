"""One table from reason to status, and documents as RFC 9457 wants them."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING
from uuid import uuid4

import pytest

from service.errors import Fault, Reason
from service.web.problems import KINDS, ProblemError, bad_parameters, from_faults, parameter_fault, problem_body, problem_type
from tests.web.client import application, client_of, survey_body
from tests.web.doubles import HeldKeeper

if TYPE_CHECKING:
    import httpx


def test_every_reason_has_its_kind() -> None:
    assert set(Reason) == set(KINDS)


def test_every_reason_has_its_own_type() -> None:
    assert len(Reason) == len({problem_type(reason) for reason in Reason})
    assert problem_type(Reason.BODY_TOO_LARGE) == "/problems/body-too-large"


def test_what_the_core_finds_wrong_is_never_called_malformed_or_our_mistake() -> None:
    """Faults of values are 422 whatever their reason: RFC 9110 section 15.5.21."""
    of_values = {
        Reason.SHAPE,
        Reason.IMPOSSIBLE_VALUE,
        Reason.CONTRADICTION,
        Reason.UNKNOWN_MODEL,
        Reason.NOT_ALLOWED,
        Reason.UNCUTTABLE_PIECE,
        Reason.NO_PRICE,
        Reason.UNBUILDABLE,
        Reason.BAD_ROWS,
        Reason.DRAFT_UNSOUND,
        Reason.DAY_HAS_PASSED,
    }

    assert {reason for reason, kind in KINDS.items() if kind.status == 422} == of_values


def test_a_document_has_all_members() -> None:
    request_id = str(uuid4())
    document = json.loads(problem_body(ProblemError(Reason.NOT_FOUND, "No such fire."), request_id))

    assert {
        "type": "/problems/not-found",
        "title": "There is nothing here",
        "status": 404,
        "detail": "No such fire.",
        "instance": f"urn:uuid:{request_id}",
        "reason": "NOT_FOUND",
        "remedy": "See /openapi.json for the addresses there are.",
        "errors": [],
    } == document


def test_faults_keep_pointer_remedy_and_what_they_contradict() -> None:
    faults = (
        Fault(pointer="/a", reason=Reason.CONTRADICTION, detail="is one", remedy="two", related=("/b", "/c")),
        Fault(pointer="", reason=Reason.NO_PRICE, detail="has none", remedy="ask"),
    )
    document = json.loads(problem_body(from_faults(faults), "x"))

    assert document["reason"] == "CONTRADICTION"
    assert document["detail"] == "/a: is one, and 1 more in `errors`"
    assert [
        {"pointer": "/a", "reason": "CONTRADICTION", "detail": "is one", "remedy": "two", "related": ["/b", "/c"]},
        {"pointer": "", "reason": "NO_PRICE", "detail": "has none", "remedy": "ask"},
    ] == document["errors"]


def test_faults_of_parameters_name_them() -> None:
    document = json.loads(problem_body(bad_parameters((parameter_fault("limit", "is 0", "1"),)), "x"))

    assert document["errors"] == [{"parameter": "limit", "reason": "BAD_PARAMETER", "detail": "is 0", "remedy": "1"}]


@pytest.mark.anyio
async def test_faults_of_the_core_come_all_at_once(client: httpx.AsyncClient) -> None:
    answer = await client.post("/v1/quotes", json=survey_body() | {"terms": {"reference": "refuse"}})

    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
    assert ["/survey/brief/open_ends", "/survey/brief/appliance/model"] == [error["pointer"] for error in answer.json()["errors"]]


@pytest.mark.anyio
async def test_a_mistake_of_ours_tells_nothing_of_itself(client: httpx.AsyncClient, caplog: pytest.LogCaptureFixture) -> None:
    answer = await client.post("/v1/quotes", json=survey_body() | {"terms": {"reference": "stumble"}})

    assert (500, "INTERNAL") == (answer.status_code, answer.json()["reason"])
    assert "secret" not in answer.text
    assert "KeyError: 'a secret'" in caplog.text


@pytest.mark.anyio
async def test_no_debug_setting_of_the_framework_shows_more(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LITESTAR_DEBUG", "1")
    async with client_of(application()) as client:
        answer = await client.post("/v1/quotes", json=survey_body() | {"terms": {"reference": "stumble"}})

    assert answer.status_code == 500
    assert "secret" not in answer.text
    assert "Traceback" not in answer.text


@pytest.mark.anyio
@pytest.mark.parametrize("path", ["/v1/materials", "/v1/materials/TM-1035A", "/v1/appliances", "/health/ready"])
async def test_without_a_catalogue_the_answer_is_to_come_again(path: str) -> None:
    async with client_of(application(keeper=HeldKeeper())) as client:
        answer = await client.get(path)
        calculation = await client.post("/v1/frames", json=survey_body())

    assert (503, "NO_CATALOGUE") == (answer.status_code, answer.json()["reason"])
    assert int(answer.headers["retry-after"]) >= 1
    assert (503, "NO_CATALOGUE") == (calculation.status_code, calculation.json()["reason"])
