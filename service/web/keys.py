"""/v1/keys: the keys of the caller's own account, for its administrator."""

from __future__ import annotations

import datetime as dt
from typing import Annotated, Final, Protocol, runtime_checkable

import msgspec
from litestar import Response, get, post
from litestar.di import NamedDependency
from litestar.params import JSONBody, PathParameter
from msgspec import Meta

from service.store import KeyKind, KeyRow, MadeKey, NewKey, Scope
from service.units import PRINTABLE_PATTERN
from service.web.callers import Caller

KEY_ID_PATTERN: Final = r"^[0-9a-f]{12}(?!\n)$"
DAY_SECONDS: Final = 86_400
JSON: Final = "application/json"
KeyIdInPath = Annotated[str, PathParameter(pattern=KEY_ID_PATTERN, description="Public part of the key.")]


class BrowserUse(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag="browser", tag_field="kind"):
    """In a page, for anybody to read: bound to the shop's origins, and without trade prices."""


class ServerUse(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag="server", tag_field="kind"):
    """In a program that the shop runs."""

    scopes: Annotated[tuple[Scope, ...], Meta(min_length=1, max_length=4, description="What it opens; none includes another.")]


class KeyRequest(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A key that is wanted."""

    label: Annotated[
        str, Meta(min_length=1, max_length=120, pattern=PRINTABLE_PATTERN, description="Where it is used, for people.")
    ]
    use: BrowserUse | ServerUse
    lifetime_days: Annotated[int, Meta(ge=1, le=3650, description="It ends by itself after these; null: it does not.")] | None = (
        None
    )


class RotationRequest(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """How long both keys are good."""

    overlap_seconds: Annotated[int, Meta(ge=0, le=30 * DAY_SECONDS, description="The old key ends after these; 0: at once.")] = (
        DAY_SECONDS
    )


class NewKeyAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """A key that was made."""

    key: Annotated[str, Meta(description="The key itself, shown this once: only a digest is kept.")]
    row: KeyRow


class KeyList(msgspec.Struct, frozen=True, kw_only=True):
    """The keys of an account, the newest first; the last thousand at most."""

    items: tuple[KeyRow, ...]


@runtime_checkable  # Litestar asks whether what it hands to a handler is one
class Desk(Protocol):
    """Where keys are made and ended: `service.store.KeyDesk`, or a double in a test."""

    async def create(self, account: str, new: NewKey) -> MadeKey:
        """Make one."""
        ...

    async def list(self, account: str) -> tuple[KeyRow, ...]:
        """All of the account."""
        ...

    async def rotate(self, account: str, key_id: str, overlap: dt.timedelta) -> MadeKey:
        """Make one in the place of another."""
        ...

    async def revoke(self, account: str, key_id: str) -> KeyRow:
        """End one now."""
        ...


@get("/v1/keys", operation_id="list_keys", tags=["keys"], summary="List keys")
async def list_keys(caller: NamedDependency[Caller], desk: NamedDependency[Desk]) -> Response[bytes]:
    """List the keys of the account, without their secrets, also those that have ended."""
    return _answer(KeyList(items=await desk.list(caller.account)))


@post("/v1/keys", status_code=201, operation_id="create_key", tags=["keys"], summary="Make a key")
async def create_key(data: JSONBody[KeyRequest], caller: NamedDependency[Caller], desk: NamedDependency[Desk]) -> Response[bytes]:
    """Make a key of the account. Its text is in this answer and nowhere else."""
    made = await desk.create(caller.account, _new(data))
    return _answer(NewKeyAnswer(key=made.key, row=made.row), status_code=201)


@post("/v1/keys/{key_id:str}/rotations", status_code=201, operation_id="rotate_key", tags=["keys"], summary="Rotate a key")
async def rotate_key(
    data: JSONBody[RotationRequest], key_id: KeyIdInPath, caller: NamedDependency[Caller], desk: NamedDependency[Desk]
) -> Response[bytes]:
    """Make a key of the same kind and scopes in the place of one; both are good for the overlap.

    A key is rotated once, and not after its end.
    """
    made = await desk.rotate(caller.account, key_id, dt.timedelta(seconds=data.overlap_seconds))
    return _answer(NewKeyAnswer(key=made.key, row=made.row), status_code=201)


@post("/v1/keys/{key_id:str}/revocations", status_code=200, operation_id="revoke_key", tags=["keys"], summary="Revoke a key")
async def revoke_key(key_id: KeyIdInPath, caller: NamedDependency[Caller], desk: NamedDependency[Desk]) -> Response[bytes]:
    """End a key now; every process holds to it within a second. Again is fine."""
    return _answer(await desk.revoke(caller.account, key_id))


def _new(asked: KeyRequest) -> NewKey:
    days = asked.lifetime_days
    end = None if days is None else dt.datetime.now(dt.UTC) + dt.timedelta(days=days)
    if isinstance(asked.use, ServerUse):
        return NewKey(kind=KeyKind.SERVER, label=asked.label, scopes=asked.use.scopes, expires_at=end)
    return NewKey(kind=KeyKind.BROWSER, label=asked.label, expires_at=end)


def _answer(body: msgspec.Struct, *, status_code: int = 200) -> Response[bytes]:
    return Response(msgspec.json.encode(body), status_code=status_code, media_type=JSON)
