"""Price books over HTTP, on a real database: files, checks, differences, publishes; two shops that see nothing of each other."""

from __future__ import annotations

import asyncio
import datetime as dt
import json
from contextlib import asynccontextmanager
from typing import TYPE_CHECKING, Any

import httpx
import msgspec
import pytest

from service.app import contract_path
from service.catalogue import RowKind, demo_catalogue, demo_rows, rows_of, write_csv, write_json
from service.store import WRITE_LIMITS, BookDesk, CatalogueKeeper, NewShop, Scope, create_shop, make_engine
from service.web import EdgeLimits, KeyParts, WebParts, make_application
from service.workers import InlineRunner, example_survey
from tests.postgres import as_service, demo_database_url
from tests.web.doubles import HeldKeys

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable

    from service.workers import Runner

__all__ = ["demo_database_url"]
pytestmark = pytest.mark.anyio
TODAY = dt.datetime.now(dt.UTC).date()
DRAFT = "/v1/price-books/list/draft"
CSV = {"content-type": "text/csv"}
ALL = (Scope.QUOTE, Scope.CATALOGUE_READ, Scope.CATALOGUE_WRITE)


class House:
    """The service on a database, with two shops that stand on the demo, and a key for each."""

    def __init__(self, client: httpx.AsyncClient, keeper: CatalogueKeeper, keys: HeldKeys) -> None:
        self.client = client
        self.keeper = keeper
        self.keys = {account: keys.give(account, *ALL) for account in ("north", "south")}
        self.reader = keys.give("north", Scope.CATALOGUE_READ)
        self.browser = keys.give("north", origin="https://north.example")

    async def ask(self, account: str, method: str, path: str, **what: Any) -> httpx.Response:  # noqa: ANN401 - httpx's own
        headers = {"authorization": f"Bearer {self.keys.get(account, account)}", **what.pop("headers", {})}
        return await self.client.request(method, path, headers=headers, **what)

    async def take(self, account: str, amount_minor: int, path: str = f"{DRAFT}/prices") -> httpx.Response:
        steps = [msgspec.structs.replace(step, amount_minor=amount_minor) for step in demo_rows().prices]
        return await self.ask(account, "POST", path, content=write_csv(steps, RowKind.PRICES), headers=CSV)

    async def publish(self, account: str, day: dt.date = TODAY) -> httpx.Response:
        digest = (await self.ask(account, "GET", DRAFT)).json()["draft_digest"]
        body = {"effective_from": day.isoformat(), "draft_digest": digest}
        return await self.ask(account, "POST", "/v1/price-books/list/publications", json=body)

    async def open_for(self, account: str, amount_minor: int) -> str:
        """Publish a shop's first prices, and wait until they hold."""
        assert 200 == (await self.take(account, amount_minor)).status_code
        name: str = (await self.publish(account)).json()["catalogue_revision"]
        await self.until(lambda: self.keeper.revision_on(account, None, TODAY.isoformat()) == name)
        return name

    async def until(self, holds: Callable[[], bool]) -> None:
        async with asyncio.timeout(5):
            while not holds():  # noqa: ASYNC110 - the keeper tells nobody
                await asyncio.sleep(0.01)

    async def quote(self, account: str, **terms: object) -> httpx.Response:
        body = example_survey()
        body["terms"] = {**body["terms"], "date": TODAY.isoformat(), **terms}
        return await self.ask(account, "POST", "/v1/quotes", json=body)


@pytest.fixture
async def house(demo_database_url: str) -> AsyncIterator[House]:
    owner = make_engine(demo_database_url)
    for account in ("north", "south"):
        await create_shop(owner, NewShop(account=account, name=account, base_account="demo"))
    await owner.dispose()
    async with house_on(as_service(demo_database_url)) as made:
        yield made


@asynccontextmanager
async def house_on(url: str, books_url: str | None = None, runner: Runner | None = None) -> AsyncIterator[House]:
    engine, keys = make_engine(books_url or url, WRITE_LIMITS), HeldKeys()
    async with CatalogueKeeper(url, poll_seconds=60) as keeper:
        assert await keeper.wait_until_loaded(10)
        parts = WebParts(
            runner=runner or InlineRunner("service.workers.jobs:JOBS"),
            keeper=keeper,
            keys=KeyParts(ring=keys, uses=keys, desk=keys),
            books=BookDesk(engine),
            contract=contract_path().read_bytes(),
            body_limit_bytes=64 * 1024,
            limits=EdgeLimits(deadline_seconds=60),
        )
        transport = httpx.ASGITransport(app=make_application(parts), raise_app_exceptions=False)
        async with httpx.AsyncClient(transport=transport, base_url="http://shop.example") as client:
            yield House(client, keeper, keys)
    await engine.dispose()


async def test_from_a_file_to_a_quote(house: House) -> None:
    """The whole way of a price clerk: a file, a look, what changes, a publish, a quote."""
    assert 404 == (await house.ask("north", "GET", DRAFT)).status_code
    taken = (await house.take("north", 500)).json()
    assert (len(demo_rows().prices), False) == (taken["rows_count"], taken["was_there"])
    assert (await house.take("north", 500)).json()["was_there"]

    draft = (await house.ask("north", "GET", DRAFT)).json()
    assert (0, 0) == (draft["stops_count"], draft["findings_count"])
    assert len(demo_rows().materials) == {row["kind"]: row["rows_count"] for row in draft["rows"]}["materials"]
    told = (await house.ask("north", "GET", "/v1/price-books/list/draft-difference")).json()
    assert (None, draft["draft_digest"]) == (told["against"], told["draft_digest"])

    name = (await house.publish("north")).json()["catalogue_revision"]
    await house.until(lambda: house.keeper.current("north") is not None)
    quote = (await house.quote("north")).json()
    assert name == quote["origin"]["catalogue_revision"]
    assert {"5.00"} == {line["each"]["amount"] for line in quote["bill"]["lines"] if line["each"]}


async def test_what_changes_and_by_how_much(house: House) -> None:
    """Every price from 5.00 to 6.00: a fifth dearer, and each example quote with it."""
    name = await house.open_for("north", 500)
    await house.take("north", 600)

    told = (await house.ask("north", "GET", "/v1/price-books/list/draft-difference")).json()
    assert name == told["against"]
    assert {0.2} == {change["amount_ratio"] for change in told["changes"]}
    assert [{"column": "amount", "before": "5.00", "after": "6.00"}] == told["changes"][0]["fields"]

    moves = (await house.ask("north", "GET", "/v1/price-books/list/draft-samples")).json()["items"]
    assert ["supply_and_fit", "supply_only", "kit"] == [move["name"] for move in moves]
    assert all(move["total_ratio"] > 0 and move["after_complete"] for move in moves)
    assert max(move["total_ratio"] for move in moves) <= 0.2


async def test_a_file_with_faults_is_told_line_by_line(house: House) -> None:
    body = "code,amount,currency,from_count,supplier,lead_days\nTM-1,1.00,GBP,1,yard,3\nTM 2,x,GBP,1,yard,\n"
    answer = await house.ask("north", "POST", f"{DRAFT}/prices", content=body, headers=CSV)

    problem = answer.json()
    assert (422, "BAD_ROWS") == (answer.status_code, problem["reason"])
    assert [(3, "code"), (3, "amount"), (3, "lead_days")] == [(one["line"], one["column"]) for one in problem["errors"]]
    assert all(one["remedy"] for one in problem["errors"])
    assert 404 == (await house.ask("north", "GET", DRAFT)).status_code


@pytest.mark.parametrize(
    ("content", "media_type", "status"),
    [
        (b"a", "text/plain", 415),
        (b"[]", "application/json", 200),
        (b"{}", "application/json", 422),
        (b"\xff\x81", "text/csv", 422),
    ],
)
async def test_other_bodies(house: House, content: bytes, media_type: str, status: int) -> None:
    answer = await house.ask("north", "POST", f"{DRAFT}/prices", content=content, headers={"content-type": media_type})

    assert status == answer.status_code


@pytest.mark.parametrize("form", ["csv", "csv&decimal=comma", "json"])
@pytest.mark.parametrize("kind", RowKind)
async def test_what_is_exported_can_be_imported(house: House, kind: RowKind, form: str) -> None:
    """Of the demo itself, into the draft of a shop, and out again: the same bytes."""
    name = demo_catalogue().revision
    north, rows = f"{DRAFT}/{kind}", rows_of(demo_catalogue(), kind)
    body = write_json(rows, kind) if form == "json" else write_csv(rows, kind)
    media_type = "application/json" if form == "json" else "text/csv"
    taken = await house.ask("north", "POST", f"{north}?mode=replace", content=body, headers={"content-type": media_type})
    assert len(rows) == taken.json()["rows_count"]

    out = await house.ask("north", "GET", f"{north}?form={form}")
    again = await house.ask("north", "POST", f"{north}?mode=replace", content=out.content, headers={"content-type": media_type})
    assert 200 == again.status_code
    assert out.content == (await house.ask("north", "GET", f"{north}?form={form}")).content
    assert media_type == out.headers["content-type"].partition(";")[0]
    assert 404 == (await house.ask("north", "GET", f"/v1/price-books/demo/revisions/{name}/{kind}")).status_code


async def test_an_old_revision_as_a_file(house: House) -> None:
    name = await house.open_for("north", 500)
    await house.open_for("north", 600)
    out = await house.ask("north", "GET", f"/v1/price-books/list/revisions/{name}/prices?form=json")

    assert {"5.00"} == {row["amount"] for row in out.json()}


async def test_the_state_that_was_looked_at_is_published(house: House) -> None:
    await house.take("north", 500)
    digest = (await house.ask("north", "GET", DRAFT)).json()["draft_digest"]
    await house.take("north", 600)
    body = {"effective_from": TODAY.isoformat(), "draft_digest": digest}
    answer = await house.ask("north", "POST", "/v1/price-books/list/publications", json=body)

    assert (409, "DRAFT_CHANGED") == (answer.status_code, answer.json()["reason"])


@pytest.mark.parametrize("day", ["2026-02-30", "2020-01-01"])
async def test_days_that_are_refused(house: House, day: str) -> None:
    await house.open_for("north", 500)
    await house.take("north", 600)
    digest = (await house.ask("north", "GET", DRAFT)).json()["draft_digest"]
    body = {"effective_from": day, "draft_digest": digest}

    assert 422 == (await house.ask("north", "POST", "/v1/price-books/list/publications", json=body)).status_code


async def test_an_unsound_draft_is_told_and_not_published(house: House) -> None:
    await house.take("north", 500)
    screen = msgspec.structs.replace(demo_rows().screens[0], bracket="NONE")
    await house.ask("north", "POST", f"{DRAFT}/screens", content=write_csv([screen], RowKind.SCREENS), headers=CSV)

    draft = (await house.ask("north", "GET", DRAFT)).json()
    assert (1, True, "bracket") == (draft["stops_count"], draft["findings"][0]["stops"], draft["findings"][0]["column"])
    answer = await house.publish("north")
    assert (422, "DRAFT_UNSOUND") == (answer.status_code, answer.json()["reason"])
    assert ["bracket"] == [one["column"] for one in answer.json()["errors"]]


async def test_a_quote_for_a_past_day_gives_the_same_bytes(house: House, demo_database_url: str) -> None:
    """Prices of one day, asked for again after others were published for a later one, and of a new process."""
    name = await house.open_for("north", 500)
    first = await house.quote("north", date=TODAY.isoformat())
    await house.take("north", 600)
    await house.publish("north", TODAY + dt.timedelta(days=2))
    await house.take("north", 700, f"{DRAFT}/prices")

    async with house_on(as_service(demo_database_url)) as other:
        for one, terms in ((house, {}), (other, {}), (other, {"catalogue_revision": name})):
            again = await one.quote("north", **terms)
            assert first.content == again.content
        later = await other.quote("north", date=(TODAY + dt.timedelta(days=2)).isoformat())
    assert first.json()["price"]["net"] != later.json()["price"]["net"]


async def test_a_day_before_all_prices_is_said(house: House) -> None:
    await house.open_for("north", 500)
    answer = await house.quote("north", date="2020-01-01")

    assert 422 == answer.status_code
    assert "/terms/date" == answer.json()["errors"][0]["pointer"]


async def test_two_shops_have_their_own_prices_and_one_frame(house: House) -> None:
    await house.open_for("north", 500)
    await house.open_for("south", 700)
    north, south = (await house.quote("north")).json(), (await house.quote("south")).json()

    assert north["frame"] == south["frame"]
    assert north["price"]["net"] != south["price"]["net"]
    assert north["origin"]["catalogue_revision"] != south["origin"]["catalogue_revision"]


async def test_neither_shop_reads_guesses_or_changes_anything_of_the_other(house: House) -> None:
    """Each address, with names, revisions, codes and cursors of the other shop."""
    name = await house.open_for("south", 700)
    own = msgspec.structs.replace(demo_rows().screens[0], model="SOUTH-1")
    await house.ask("south", "POST", f"{DRAFT}/screens", content=write_csv([own], RowKind.SCREENS), headers=CSV)
    await house.ask("south", "POST", "/v1/price-books", json={"price_book": "secret"})
    await house.open_for("south", 800)
    await house.take("south", 900)
    await house.open_for("north", 500)
    before = [
        (await house.ask("south", "GET", path)).content for path in ("/v1/price-books", DRAFT, "/v1/price-books/list/audit")
    ]

    books = (await house.ask("north", "GET", "/v1/price-books")).json()["items"]
    assert ["list"] == [book["price_book"] for book in books]
    withdrawal = {"catalogue_revision": name}
    publication = {"effective_from": TODAY.isoformat(), "draft_digest": "0" * 16}
    for method, path, body in (
        ("GET", "/v1/price-books/secret/revisions", None),
        ("GET", "/v1/price-books/secret/draft", None),
        ("GET", DRAFT, None),  # the other's, as north has none
        ("DELETE", DRAFT, None),
        ("GET", f"{DRAFT}/prices", None),
        ("GET", "/v1/price-books/list/draft-difference", None),
        ("GET", "/v1/price-books/list/draft-samples", None),
        ("GET", f"/v1/price-books/list/revisions/{name}/prices", None),
        ("POST", "/v1/price-books/list/publications", publication),
        ("POST", "/v1/price-books/list/withdrawals", withdrawal),
        ("POST", "/v1/price-books/secret/publications", publication),
        ("GET", "/v1/screens/SOUTH-1", None),
    ):
        answer = await house.ask("north", method, path, **({} if body is None else {"json": body}))
        assert 404 == answer.status_code, (method, path, answer.text)
        assert b"south" not in answer.content.lower().replace(b"south-1", b"")
    assert 404 == (await house.take("north", 1, "/v1/price-books/secret/draft/prices")).status_code
    gone = await house.quote("north", catalogue_revision=name)
    assert (422, "/terms/catalogue_revision") == (gone.status_code, gone.json()["errors"][0]["pointer"])
    for path in ("/v1/screens?cursor=534f5554482d30", "/v1/materials?limit=200", "/v1/price-books/list/audit?cursor=999"):
        assert b"SOUTH" not in (await house.ask("north", "GET", path)).content
    revisions = (await house.ask("north", "GET", "/v1/price-books/list/revisions")).json()["items"]
    assert all(one["catalogue_revision"].startswith("north:") for one in revisions)
    audit = (await house.ask("north", "GET", "/v1/price-books/list/audit")).json()["items"]
    assert [*range(len(audit), 0, -1)] == [one["entry_count"] for one in audit]  # counted in each account apart

    after = [(await house.ask("south", "GET", path)).content for path in ("/v1/price-books", DRAFT, "/v1/price-books/list/audit")]
    assert before == after


async def test_trade_prices_are_closed_to_pages_and_writing_to_readers(house: House) -> None:
    await house.open_for("north", 500)
    await house.take("north", 600)
    document = json.loads(contract_path().read_bytes())["paths"]
    paths = [(method.upper(), path) for path, item in document.items() if path.startswith("/v1/price-books") for method in item]
    assert len(paths) >= 13
    for method, template in paths:
        path = template.replace("{price_book}", "list").replace("{kind}", "prices").replace("{catalogue_revision}", "x")
        page = await house.ask(house.browser, method, path, headers={"origin": "https://north.example"})
        assert 403 == page.status_code, path
        nobody = await house.client.request(method, path)
        assert 401 == nobody.status_code, path
        reader = await house.ask(house.reader, method, path)
        assert (reader.status_code == 403) == (method != "GET"), path


async def test_who_did_what_page_by_page(house: House) -> None:
    await house.open_for("north", 500)
    await house.take("north", 600)
    page = (await house.ask("north", "GET", "/v1/price-books/list/audit?limit=2")).json()
    rest = (await house.ask("north", "GET", f"/v1/price-books/list/audit?cursor={page['next_cursor']}")).json()

    key_id = house.keys["north"].split("_")[1]
    assert {f"key:{key_id}"} == {one["actor"] for one in page["items"] + rest["items"]}
    actions = ["rows_imported", "draft_begun", "published", "rows_imported", "draft_begun"]
    assert actions == [one["action"] for one in page["items"] + rest["items"]]
    assert None is rest["next_cursor"]


async def test_lists_that_are_held_are_not_sent_again(house: House) -> None:
    await house.open_for("north", 500)
    for path in ("/v1/price-books", "/v1/price-books/list/revisions"):
        first = await house.ask("north", "GET", path)
        again = await house.ask("north", "GET", path, headers={"if-none-match": first.headers["etag"]})
        assert (200, 304) == (first.status_code, again.status_code)


async def test_a_withdrawal_brings_yesterdays_prices_back(house: House) -> None:
    first = await house.open_for("north", 500)
    await house.take("north", 600)
    later = (await house.publish("north", TODAY + dt.timedelta(days=1))).json()["catalogue_revision"]
    done = await house.ask("north", "POST", "/v1/price-books/list/withdrawals", json={"catalogue_revision": later})
    last = await house.ask("north", "POST", "/v1/price-books/list/withdrawals", json={"catalogue_revision": first})

    assert (TODAY + dt.timedelta(days=1)).isoformat() == done.json()["withdrawn_from"]
    assert (409, "NOTHING_WOULD_HOLD") == (last.status_code, last.json()["reason"])


async def test_with_the_database_away_writes_are_503_and_quotes_go_on(house: House, demo_database_url: str) -> None:
    await house.open_for("north", 500)
    async with house_on(as_service(demo_database_url), "postgresql://nobody@/none?host=/nowhere") as away:
        assert 200 == (await away.quote("north")).status_code
        for answer in (
            await away.take("north", 1),
            await away.ask("north", "GET", "/v1/price-books"),
            await away.ask("north", "POST", "/v1/price-books/list/withdrawals", json={"catalogue_revision": "x"}),
        ):
            assert (503, "DATABASE_AWAY") == (answer.status_code, answer.json()["reason"])
