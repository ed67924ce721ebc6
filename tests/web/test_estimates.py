"""POST /v1/estimates over HTTP: the real jobs, open to a browser key, telling nothing of what the shop pays."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest

from service.catalogue import demo_catalogue
from service.web.contract_answers import EXAMPLE_ANSWERS, EXAMPLE_FEWEST
from service.workers import InlineRunner
from tests.web.client import application, client_of
from tests.web.doubles import HeldKeys

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Iterator

    import httpx

pytestmark = pytest.mark.anyio
PATH = "/v1/estimates"
PAGE = "https://north.example"
TRADE_WORDS = {"each", "charged", "build_up", "working", "materials", "cost_minor", "purchase", "charge_per_hour", "supplier"}


@pytest.fixture
def keys() -> HeldKeys:
    return HeldKeys()


@pytest.fixture
async def client(keys: HeldKeys) -> AsyncIterator[httpx.AsyncClient]:
    async with client_of(application(runner=InlineRunner("service.workers.jobs:JOBS"), keys=keys)) as client:
        yield client


def members(value: Any) -> Iterator[str]:  # noqa: ANN401 - any JSON value
    if isinstance(value, dict):
        for name, part in value.items():
            yield name
            yield from members(part)
    if isinstance(value, list):
        for part in value:
            yield from members(part)


def amounts(value: Any) -> Iterator[str]:  # noqa: ANN401 - any JSON value
    if isinstance(value, dict):
        yield from [value["amount"]] if "amount" in value else []
        value = list(value.values())
    if isinstance(value, list):
        for part in value:
            yield from amounts(part)


@pytest.mark.parametrize("body", [EXAMPLE_ANSWERS, EXAMPLE_FEWEST])
async def test_a_handful_of_answers_has_a_price(client: httpx.AsyncClient, body: dict[str, Any]) -> None:
    answer = await client.post(PATH, json=body)
    found = answer.json()

    assert (200, "designed") == (answer.status_code, found["outcome"])
    low, likely, high = (float(found["price"][name]["amount"]) for name in ("low", "likely", "high"))
    assert 1_000 < low < likely < high < 20_000
    assert found["picture"] is None
    assert answer.headers["catalogue-revision"] == found["origin"]["catalogue_revision"]


async def test_the_same_answers_have_the_same_bytes(client: httpx.AsyncClient) -> None:
    first, second = [await client.post(PATH, json=EXAMPLE_ANSWERS) for _ in range(2)]

    assert first.content == second.content


async def test_a_browser_key_opens_it_and_sees_no_trade_prices(client: httpx.AsyncClient, keys: HeldKeys) -> None:
    headers = {"authorization": f"Bearer {keys.give('demo', origin=PAGE)}", "origin": PAGE}
    for body in (EXAMPLE_ANSWERS, EXAMPLE_FEWEST):
        answer = await client.post(PATH, json=body, headers=headers)
        bought = {step.amount_minor for steps in demo_catalogue().prices.values() for step in steps}

        assert 200 == answer.status_code
        assert not TRADE_WORDS & set(members(answer.json()))
        assert not [one for one in amounts(answer.json()) if float(one) > 100 and round(float(one) * 100) in bought]


async def test_the_survey_that_comes_back_is_one(client: httpx.AsyncClient) -> None:
    estimate = (await client.post(PATH, json=EXAMPLE_ANSWERS)).json()
    quote = (await client.post("/v1/quotes", json=estimate["request"])).json()

    assert "designed" == quote["outcome"]
    assert quote["frame"]["sizes"]["finished_width_mm"] == estimate["sizes"]["finished_width_mm"]


async def test_what_cannot_be_built_is_an_answer(client: httpx.AsyncClient) -> None:
    body = {**EXAMPLE_ANSWERS, "screen": {"kind": "catalogue", "model": "SC-065"}}
    answer = await client.post(PATH, json=body)
    found = answer.json()

    assert (200, "unbuildable") == (answer.status_code, found["outcome"])
    assert found["unmet"]
    assert found["alternatives"]


async def test_faults_come_all_at_once_and_point_into_the_answers(client: httpx.AsyncClient) -> None:
    body = {"appliance": {"kind": "catalogue", "model": "no-such"}, "room_height_mm": 245, "colour": "red"}
    answer = await client.post(PATH, json=body)
    shape = {error["pointer"] for error in answer.json()["errors"]}
    sense = []
    wrongs: list[dict[str, Any]] = [{"appliance": {"kind": "catalogue", "model": "no-such"}}, {"date": "2026-02-30"}]
    for wrong in wrongs:
        sense += [one["pointer"] for one in (await client.post(PATH, json={**EXAMPLE_ANSWERS, **wrong})).json()["errors"]]

    assert (422, {"/room_height_mm", "/colour"}) == (answer.status_code, shape)
    assert ["/appliance/model", "/date"] == sense


async def test_it_is_read_as_it_was_written(client: httpx.AsyncClient) -> None:
    text = json.dumps(EXAMPLE_ANSWERS)[:-1] + ', "room_height_mm": 2400}'

    assert 400 == (await client.post(PATH, content=text, headers={"content-type": "application/json"})).status_code
