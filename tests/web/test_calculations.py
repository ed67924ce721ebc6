"""Frames, bills, quotes and drawings: what reaches the workers, and what comes back."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.drawings import View
from service.survey import Terms
from tests.web.client import application, client_of, survey_body
from tests.web.doubles import demo_keeper

if TYPE_CHECKING:
    import httpx

pytestmark = pytest.mark.anyio


@pytest.mark.parametrize("path", ["/v1/frames", "/v1/bills", "/v1/quotes"])
async def test_an_answer_names_the_catalogue_it_was_made_with(client: httpx.AsyncClient, path: str) -> None:
    answer = await client.post(path, json=survey_body())

    assert (200, "application/json") == (answer.status_code, answer.headers["content-type"])
    assert answer.headers["catalogue-revision"] == answer.json()["revision"] == demo_catalogue().revision
    assert answer.headers["catalogue-age-seconds"] == "3"
    assert answer.headers["cache-control"] == "no-store"


async def test_the_day_is_today_in_utc(client: httpx.AsyncClient) -> None:
    before = dt.datetime.now(dt.UTC).date().isoformat()
    today = (await client.post("/v1/frames", json=survey_body())).json()["today"]

    assert before <= today <= dt.datetime.now(dt.UTC).date().isoformat()


@pytest.mark.parametrize("view", [view.value for view in View])
async def test_a_drawing_is_svg(client: httpx.AsyncClient, view: str) -> None:
    answer = await client.post("/v1/drawings", json=survey_body() | {"view": view})

    assert (200, "image/svg+xml") == (answer.status_code, answer.headers["content-type"].partition(";")[0])
    assert view in answer.text


async def test_a_drawing_needs_its_view(client: httpx.AsyncClient) -> None:
    missing = await client.post("/v1/drawings", json=survey_body())
    wrong = await client.post("/v1/drawings", json=survey_body() | {"view": "roof"})
    elsewhere = await client.post("/v1/frames", json=survey_body() | {"view": "section"})

    assert [422, 422, 422] == [answer.status_code for answer in (missing, wrong, elsewhere)]
    assert ["/view"] * 3 == [answer.json()["errors"][0]["pointer"] for answer in (missing, wrong, elsewhere)]


async def test_a_request_may_name_an_earlier_revision_while_it_is_held() -> None:
    keeper = demo_keeper()
    first = demo_catalogue().revision
    async with client_of(application(keeper=keeper)) as client:
        keeper.put(msgspec.structs.replace(demo_catalogue(), revision="next"))
        newest = await client.post("/v1/quotes", json=survey_body())
        named = await client.post("/v1/quotes", json=survey_body() | {"terms": {"catalogue_revision": first}})
        gone = await client.post("/v1/quotes", json=survey_body() | {"terms": {"catalogue_revision": "2020"}})

    assert ["next", first] == [answer.json()["revision"] for answer in (newest, named)]
    assert (422, "/terms/catalogue_revision") == (gone.status_code, gone.json()["errors"][0]["pointer"])


async def test_a_snapshot_is_made_once_for_a_revision() -> None:
    from service.web.shelf import Shelf

    keeper = demo_keeper()
    shelf = Shelf(keeper)
    first = shelf.take("demo").snapshot
    keeper.put(msgspec.structs.replace(demo_catalogue(), revision="next"))
    second = shelf.take("demo").snapshot

    assert first is (await shelf.take_for("demo", Terms(catalogue_revision=demo_catalogue().revision))).snapshot
    assert second is shelf.take("demo").snapshot
    assert second is not first
