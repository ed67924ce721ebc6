"""Keys over HTTP: an administrator's own, shown once, never another shop's."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING, Any

import pytest

from service.store import Scope, TooManyKeysError
from tests.web.client import application, client_of
from tests.web.doubles import HeldKeys

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    import httpx

pytestmark = pytest.mark.anyio


@pytest.fixture
def keys() -> HeldKeys:
    return HeldKeys()


@pytest.fixture
async def client(keys: HeldKeys) -> AsyncIterator[httpx.AsyncClient]:
    async with client_of(application(keys=keys, demo_account=None)) as client:
        yield client


def shown(key: str) -> dict[str, str]:
    return {"authorization": f"Bearer {key}"}


def till(*scopes: str) -> dict[str, Any]:
    return {"label": "till", "use": {"kind": "server", "scopes": list(scopes)}}


async def test_a_key_is_shown_once_and_then_works(client: httpx.AsyncClient, keys: HeldKeys) -> None:
    admin = shown(keys.give("demo", Scope.ADMIN))
    made = await client.post("/v1/keys", json=till("catalogue:read"), headers=admin)
    key = made.json()["key"]
    listed = await client.get("/v1/keys", headers=admin)
    used = await client.get("/v1/screens", headers=shown(key))

    assert (201, 200, 200) == (made.status_code, listed.status_code, used.status_code)
    assert made.headers["cache-control"] == "no-store"
    assert key.startswith("iws_" + made.json()["row"]["key_id"])
    assert made.json()["row"] == listed.json()["items"][0]
    assert key.rpartition("_")[2] not in listed.text
    assert "secret_digest" not in listed.text


async def test_a_browser_key_takes_no_scopes_and_a_server_key_some(client: httpx.AsyncClient, keys: HeldKeys) -> None:
    admin = shown(keys.give("demo", Scope.ADMIN))
    made = await client.post("/v1/keys", json={"label": "page", "use": {"kind": "browser"}, "lifetime_days": 30}, headers=admin)
    bad = [
        {"label": "x", "use": {"kind": "browser", "scopes": ["quote"]}},
        till(),
        till("everything"),
        {"label": "x", "use": {"kind": "carrier"}},
        {"label": "", "use": {"kind": "browser"}},
        {"label": "x", "use": {"kind": "browser"}, "lifetime_days": 0},
        {"label": "x", "use": {"kind": "browser"}, "account": "south"},
    ]
    refused = [await client.post("/v1/keys", json=body, headers=admin) for body in bad]
    row = made.json()["row"]
    life = dt.datetime.fromisoformat(row["expires_at"]) - dt.datetime.fromisoformat(row["created_at"])

    assert made.json()["key"].startswith("iwb_")
    assert ("browser", []) == (row["kind"], row["scopes"])
    assert abs(life - dt.timedelta(days=30)) < dt.timedelta(minutes=1)
    assert [422] * len(bad) == [answer.status_code for answer in refused]


async def test_rotation_and_revocation(client: httpx.AsyncClient, keys: HeldKeys) -> None:
    admin = shown(keys.give("demo", Scope.ADMIN))
    old = (await client.post("/v1/keys", json=till("catalogue:read"), headers=admin)).json()
    path = f"/v1/keys/{old['row']['key_id']}"
    new = await client.post(f"{path}/rotations", json={"overlap_seconds": 3600}, headers=admin)
    both = [(await client.get("/v1/screens", headers=shown(key))).status_code for key in (old["key"], new.json()["key"])]
    again = await client.post(f"{path}/rotations", json={}, headers=admin)
    ended = await client.post(f"{path}/revocations", headers=admin)
    after = await client.get("/v1/screens", headers=shown(old["key"]))

    assert (201, [200, 200]) == (new.status_code, both)
    assert old["row"]["key_id"] == new.json()["row"]["rotated_from"]
    assert (409, "SPENT_KEY") == (again.status_code, again.json()["reason"])
    assert (200, True) == (ended.status_code, ended.json()["revoked_at"] is not None)
    assert (401, "KEY_REVOKED") == (after.status_code, after.json()["reason"])


async def test_another_shops_key_is_no_key_at_all(client: httpx.AsyncClient, keys: HeldKeys) -> None:
    """The same words as for a key that never was, so that nothing can be guessed."""
    south = keys.give("south", Scope.QUOTE).split("_")[1]
    admin = shown(keys.give("north", Scope.ADMIN))
    for act, body in (("rotations", {}), ("revocations", None)):
        others = await client.post(f"/v1/keys/{south}/{act}", json=body, headers=admin)
        never = await client.post(f"/v1/keys/{'0' * 12}/{act}", json=body, headers=admin)

        assert (404, 404) == (others.status_code, never.status_code)
        assert others.json()["detail"].replace(south, "0" * 12) == never.json()["detail"]
    listed = (await client.get("/v1/keys", headers=admin)).json()["items"]

    assert 1 == len(listed)
    assert keys.held[south].revoked_at is None


@pytest.mark.parametrize("key_id", ["0123456789AB", "0123456789a", "0123456789abc", "x"])
async def test_what_is_no_public_part_is_a_wrong_parameter(client: httpx.AsyncClient, keys: HeldKeys, key_id: str) -> None:
    answer = await client.post(f"/v1/keys/{key_id}/revocations", headers=shown(keys.give("north", Scope.ADMIN)))

    assert (400, "BAD_PARAMETER") == (answer.status_code, answer.json()["reason"])


async def test_too_many_keys_and_a_database_that_is_away_are_told(
    client: httpx.AsyncClient, keys: HeldKeys, monkeypatch: pytest.MonkeyPatch
) -> None:
    admin = shown(keys.give("north", Scope.ADMIN))
    answers = []
    for error in (TooManyKeysError("north"), ConnectionRefusedError("planted")):

        async def fail(*_: object, error: Exception = error) -> None:
            raise error

        monkeypatch.setattr(keys, "create", fail)
        answers.append(await client.post("/v1/keys", json=till("quote"), headers=admin))

    assert [(409, "TOO_MANY_KEYS"), (503, "DATABASE_AWAY")] == [
        (answer.status_code, answer.json()["reason"]) for answer in answers
    ]
    assert answers[1].headers["retry-after"] == "2"
    assert "planted" not in answers[1].text
