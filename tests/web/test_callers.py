"""Each endpoint with each kind of key: of two shops, of the wrong scope, ended, malformed, from another page, and without one."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING, Any

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.store import Scope
from service.web import application as wiring
from service.web.application import HANDLERS, make_router
from service.web.contract_answers import EXAMPLE_ANSWERS, EXAMPLE_CUTS, EXAMPLE_ROOM
from service.web.needs import NEEDS, OPEN_TO_ALL, READ_WITHOUT_TRADE_PRICES
from tests.web.client import application, client_of, survey_body
from tests.web.doubles import HeldKeys, demo_keeper

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    import httpx

pytestmark = pytest.mark.anyio
PAGE = "https://north.example"
LONG_AGO = dt.datetime(2020, 1, 1, tzinfo=dt.UTC)
KEY_ID = "0123456789ab"
# A good request for each operation. One that is missing here fails the test of that name.
REQUESTS: dict[str, tuple[str, str, Any]] = {
    "create_frame": ("POST", "/v1/frames", survey_body()),
    "create_bill": ("POST", "/v1/bills", survey_body()),
    "create_quote": ("POST", "/v1/quotes", survey_body()),
    "create_drawing": ("POST", "/v1/drawings", survey_body() | {"view": "section"}),
    "create_cut_plan": ("POST", "/v1/cut-plans", EXAMPLE_CUTS),
    "create_estimate": ("POST", "/v1/estimates", EXAMPLE_ANSWERS),
    "create_shortlist": ("POST", "/v1/shortlists", EXAMPLE_ROOM),
    "list_materials": ("GET", "/v1/materials", None),
    "get_material": ("GET", "/v1/materials/TM-1035A", None),
    "list_appliances": ("GET", "/v1/appliances", None),
    "get_appliance": ("GET", "/v1/appliances/AF-302", None),
    "list_screens": ("GET", "/v1/screens", None),
    "get_screen": ("GET", "/v1/screens/SC-043", None),
    "list_brackets": ("GET", "/v1/brackets", None),
    "get_bracket": ("GET", "/v1/brackets/BK-301", None),
    "list_keys": ("GET", "/v1/keys", None),
    "create_key": ("POST", "/v1/keys", {"label": "x", "use": {"kind": "browser"}}),
    "rotate_key": ("POST", f"/v1/keys/{KEY_ID}/rotations", {}),
    "revoke_key": ("POST", f"/v1/keys/{KEY_ID}/revocations", None),
}
WITHOUT_ANSWER = {"rotate_key": 404, "revoke_key": 404}  # there is no such key
# The double of the workers has no cutting.
UNTRIED = {"create_cut_plan"}
NAMES = sorted(set(REQUESTS) - UNTRIED)


@pytest.fixture
def keys() -> HeldKeys:
    return HeldKeys()


@pytest.fixture
async def client(keys: HeldKeys) -> AsyncIterator[httpx.AsyncClient]:
    """A service without a demo, with a catalogue of North and one of South."""
    keeper = demo_keeper()
    for account in ("north", "south"):
        shop = msgspec.structs.replace(demo_catalogue().account, account=account)
        keeper.others[account] = msgspec.structs.replace(demo_catalogue(), account=shop, revision=f"{account}-1")
    async with client_of(application(keys=keys, keeper=keeper, demo_account=None)) as client:
        yield client


async def ask(client: httpx.AsyncClient, name: str, key: str | None, **headers: str) -> httpx.Response:
    method, path, body = REQUESTS[name]
    shown = {} if key is None else {"authorization": f"Bearer {key}"}
    return await client.request(method, path, json=body, headers={**shown, **headers})


def test_every_operation_says_what_it_asks_for_and_is_tried_here() -> None:
    """A later endpoint needs its line in `needs.NEEDS`, and a request here or a test of its own keys."""
    names = {handler.fn.__name__ for handler in HANDLERS}

    assert names == {*NEEDS, *OPEN_TO_ALL}
    assert {name for name in NEEDS if NEEDS[name].browser} <= {*REQUESTS}
    assert {*REQUESTS} <= {*NEEDS}


def test_an_operation_that_nobody_thought_about_is_not_served(monkeypatch: pytest.MonkeyPatch) -> None:
    from service.web import needs

    monkeypatch.setattr(needs, "NEEDS", {name: need for name, need in NEEDS.items() if name != "create_quote"})
    with pytest.raises(KeyError, match="create_quote"):
        make_router()
    assert wiring.HANDLERS


@pytest.mark.parametrize("name", NAMES)
async def test_the_right_key_opens_it_for_its_own_shop(client: httpx.AsyncClient, keys: HeldKeys, name: str) -> None:
    for account in ("north", "south"):
        answer = await ask(client, name, keys.give(account, NEEDS[name].scope))

        expected = WITHOUT_ANSWER.get(name, 201 if name == "create_key" else 200)
        assert expected == answer.status_code
        assert answer.headers.get("catalogue-revision", f"{account}-1") == f"{account}-1"
    assert ["north", "south"] == [account for account, _ in keys.used]


@pytest.mark.parametrize("name", sorted(REQUESTS))
async def test_no_key_opens_nothing(client: httpx.AsyncClient, name: str) -> None:
    answer = await ask(client, name, None)

    assert (401, "KEY_MISSING") == (answer.status_code, answer.json()["reason"])
    assert answer.headers["www-authenticate"] == 'Bearer realm="inglewright"'
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.headers["access-control-allow-origin"] == "*"


@pytest.mark.parametrize("name", sorted(REQUESTS))
async def test_all_other_scopes_together_do_not_open_it(client: httpx.AsyncClient, keys: HeldKeys, name: str) -> None:
    need = NEEDS[name].scope
    answer = await ask(client, name, keys.give("north", *({*Scope} - {need})))

    assert (403, "SCOPE_MISSING") == (answer.status_code, answer.json()["reason"])
    assert f'error="insufficient_scope", scope="{need}"' in answer.headers["www-authenticate"]


@pytest.mark.parametrize("name", sorted(REQUESTS))
@pytest.mark.parametrize(
    ("changes", "status", "reason"),
    [
        ({"revoked_at": LONG_AGO}, 401, "KEY_REVOKED"),
        ({"expires_at": LONG_AGO}, 401, "KEY_EXPIRED"),
        ({"is_suspended": True}, 403, "ACCOUNT_SUSPENDED"),
        ({"secret_digest": bytes(32)}, 401, "KEY_UNKNOWN"),
    ],
)
async def test_a_key_that_has_ended_opens_nothing(
    client: httpx.AsyncClient, keys: HeldKeys, name: str, changes: dict[str, Any], status: int, reason: str
) -> None:
    answer = await ask(client, name, keys.give("north", *Scope, **changes))

    assert (status, reason) == (answer.status_code, answer.json()["reason"])
    assert status == 403 or 'error="invalid_token"' in answer.headers["www-authenticate"]
    assert keys.used == []


@pytest.mark.parametrize(
    "shown",
    [
        ["Bearer"],
        ["Bearer "],
        ["Basic bm9ydGg6eA=="],
        ["{key}"],
        ["Bearer {key} x"],
        ["Bearer {key}x"],
        ["Bearer {key}", "Bearer {key}"],
        ["Bearer {key}, Bearer {key}"],
        ["Bearer iws_0123456789ab_" + "A" * 43],
        ["Bearer \xff"],
        ["Token {key}"],
    ],
)
async def test_a_malformed_header_opens_nothing_also_not_the_demo(keys: HeldKeys, shown: list[str]) -> None:
    key = keys.give("demo", *Scope)
    headers = [(b"authorization", text.replace("{key}", key).encode("latin-1")) for text in shown]
    async with client_of(application(keys=keys, demo_account="demo")) as client:
        answer = await client.get("/v1/screens", headers=headers)

    assert (401, "KEY_UNKNOWN") == (answer.status_code, answer.json()["reason"])
    assert key not in answer.text


@pytest.mark.parametrize("scheme", ["Bearer", "bearer", "BEARER", "Bearer  "])
async def test_the_scheme_is_read_as_rfc_9110_has_it(client: httpx.AsyncClient, keys: HeldKeys, scheme: str) -> None:
    """RFC 9110 section 11.1: case does not matter; section 11.4: one space or more."""
    answer = await client.get("/v1/screens", headers={"authorization": f"{scheme} {keys.give('north', Scope.CATALOGUE_READ)}"})

    assert answer.status_code == 200


@pytest.mark.parametrize("name", sorted(REQUESTS))
async def test_a_browser_key_opens_what_a_page_needs_and_only_from_the_shops_pages(
    client: httpx.AsyncClient, keys: HeldKeys, name: str
) -> None:
    key = keys.give("north", origin=PAGE)
    at_home = await ask(client, name, key, origin=PAGE)
    elsewhere = [await ask(client, name, key, origin=origin) for origin in ("https://evil.example", "null", f"{PAGE}:444", "")]
    nowhere = await ask(client, name, key)

    expected = (200, None) if NEEDS[name].browser else (403, "KEY_KIND")
    assert expected == (at_home.status_code, None if at_home.status_code == 200 else at_home.json()["reason"])
    for answer in (*elsewhere, nowhere):
        assert (403, "ORIGIN_REFUSED") == (answer.status_code, answer.json()["reason"])
        assert "Origin" in answer.headers["vary"]


def test_what_a_browser_key_opens() -> None:
    """Issue 6, item 1; the estimate's PDF is still to come."""
    opened = {name for name, need in NEEDS.items() if need.browser}

    assert {
        "create_drawing",
        "create_estimate",
        "create_shortlist",
        "list_appliances",
        "get_appliance",
        "list_screens",
        "get_screen",
    } <= opened
    assert not opened & {"create_frame", "create_bill", "create_quote", "create_cut_plan", "list_materials", "get_material"}
    assert READ_WITHOUT_TRADE_PRICES.browser


async def test_a_preflight_carries_no_key_and_is_answered_for_any_page(client: httpx.AsyncClient) -> None:
    headers = {
        "origin": "https://evil.example",
        "access-control-request-method": "POST",
        "access-control-request-headers": "authorization, content-type",
    }
    for path in ("/v1/quotes", "/v1/drawings", "/v1/keys"):
        answer = await client.options(path, headers=headers)

        assert (204, "*") == (answer.status_code, answer.headers["access-control-allow-origin"])
        assert "authorization" in answer.headers["access-control-allow-headers"]
        assert "POST" in answer.headers["access-control-allow-methods"]
        assert "access-control-allow-credentials" not in answer.headers


async def test_what_is_open_stays_open(client: httpx.AsyncClient) -> None:
    for path in ("/health/live", "/health/ready", "/openapi.json", "/docs"):
        assert (await client.get(path)).status_code == 200


async def test_the_demo_is_open_only_where_a_setting_says_so_and_not_for_its_keys(keys: HeldKeys) -> None:
    async with client_of(application(keys=keys, demo_account="demo")) as client:
        quote = await ask(client, "create_quote", None)
        listed = await ask(client, "list_keys", None)

    assert quote.status_code == 200
    assert (403, "SCOPE_MISSING") == (listed.status_code, listed.json()["reason"])


async def test_no_key_can_be_known_before_the_keys_were_read(client: httpx.AsyncClient, keys: HeldKeys) -> None:
    key = keys.give("north", Scope.QUOTE)
    keys.is_loaded = False
    answer = await ask(client, "create_quote", key)

    assert (503, "KEYS_UNREAD", "2") == (answer.status_code, answer.json()["reason"], answer.headers["retry-after"])


async def test_the_key_comes_before_the_body(client: httpx.AsyncClient) -> None:
    """Strangers learn nothing of what a body should be, and cost no reading of it."""
    answer = await client.post("/v1/quotes", content=b"{" * 60_000, headers={"content-type": "text/plain"})

    assert (401, "KEY_MISSING") == (answer.status_code, answer.json()["reason"])


async def test_an_answer_held_with_one_key_is_not_taken_for_anothers(client: httpx.AsyncClient, keys: HeldKeys) -> None:
    """Tags of a page's key, of a server's key and of another shop's key all differ."""
    server, page, south = (
        keys.give("north", Scope.CATALOGUE_READ),
        keys.give("north", origin=PAGE),
        keys.give("south", Scope.CATALOGUE_READ),
    )
    answers = [
        await ask(client, "list_appliances", server),
        await ask(client, "list_appliances", page, origin=PAGE),
        await ask(client, "list_appliances", south),
    ]

    assert 3 == len({answer.headers["etag"] for answer in answers})
    assert {"Authorization, Origin"} == {answer.headers["vary"] for answer in answers}


async def test_a_shop_without_prices_is_told_so(keys: HeldKeys) -> None:
    async with client_of(application(keys=keys, demo_account=None)) as client:
        answer = await ask(client, "create_quote", keys.give("west", Scope.QUOTE))

    assert (503, "NO_CATALOGUE") == (answer.status_code, answer.json()["reason"])
    assert "no prices in force" in answer.json()["detail"]
