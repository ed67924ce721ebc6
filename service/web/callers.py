"""Who calls: a key's holder, known by `Authorization: Bearer`, or the demo's visitor where a setting lets one in.

A guard, so that it comes before anything of the body is read. A key that is shown is held to, also where none is needed: a wrong
one is never answered as if there were none.
"""

from __future__ import annotations

import datetime as dt
import re
from enum import StrEnum
from typing import TYPE_CHECKING, Any, Final, Protocol

import msgspec

from service.errors import Reason
from service.store import HeldKey, KeyKind, Scope, is_same, read_key
from service.web.needs import Need, need_of
from service.web.problems import ProblemError

if TYPE_CHECKING:
    from litestar.connection import ASGIConnection
    from litestar.handlers import BaseRouteHandler

CALLER_KEY: Final = "inglewright.caller"
CHALLENGE: Final = 'Bearer realm="inglewright"'
RETRY_AFTER_SECONDS: Final = 2
_BEARER: Final = re.compile(r"(?i:bearer) +(?P<key>\S+)", flags=re.ASCII)
_UNKNOWN: Final = "The key is not known."


class CallerKind(StrEnum):
    """How a caller came in."""

    BROWSER = "browser"
    SERVER = "server"
    DEMO = "demo"  # without a key


class Caller(msgspec.Struct, frozen=True, kw_only=True):
    """Who calls, and what is open to it."""

    account: str
    kind: CallerKind
    scopes: frozenset[Scope]
    key_id: str | None

    @property
    def sees_trade_prices(self) -> bool:
        """Whether what the shop pays may be shown: anybody can read a page's key."""
        return self.kind is not CallerKind.BROWSER


class Ring(Protocol):
    """Where keys are looked up: `service.store.KeyRing`, or a double in a test."""

    @property
    def is_loaded(self) -> bool:
        """Whether the keys have been read at all."""
        ...

    def find(self, key_id: str) -> HeldKey | None:
        """A key by its public part."""
        ...


class Uses(Protocol):
    """Where the use of a key is noted."""

    def note(self, account: str, key_id: str, at: dt.datetime) -> None:
        """A key was used."""
        ...


class Gate:
    """Lets callers in or says why not."""

    def __init__(self, ring: Ring, uses: Uses, demo_account: str | None) -> None:
        """Know callers by a ring; without a key they are the demo's, if there is an account for that."""
        self._ring = ring
        self._uses = uses
        self._demo_account = demo_account

    async def admit(self, connection: ASGIConnection[Any, Any, Any, Any], handler: BaseRouteHandler) -> None:
        """Guard: find out who calls, and hold it to what the operation asks.

        Raises:
            service.web.problems.ProblemError: 401, 403, or 503 while the keys have not been read.
        """
        need = need_of(handler)
        if need is None:
            return
        shown = _headers(connection.scope, b"authorization")
        if shown:
            key = self._know(shown)
            _check_browser(key, need, _headers(connection.scope, b"origin"))
            caller = Caller(account=key.account, kind=CallerKind(key.kind), scopes=key.scopes, key_id=key.key_id)
        else:
            caller = self._visitor()
        if caller.kind is not CallerKind.BROWSER and need.scope not in caller.scopes:
            raise _lacks(need)
        connection.scope["state"][CALLER_KEY] = caller

    def _know(self, shown: list[str]) -> HeldKey:
        """The key that a caller showed, if it opens anything now."""
        if not self._ring.is_loaded:
            headers = {"Retry-After": str(RETRY_AFTER_SECONDS)}
            raise ProblemError(Reason.KEYS_UNREAD, "The keys have not been read yet.", headers=headers)
        bearer = _BEARER.fullmatch(shown[0])
        text = read_key(bearer["key"]) if bearer and len(shown) == 1 else None
        if text is None:
            raise _refused(Reason.KEY_UNKNOWN, "One `Authorization: Bearer` header with a key of this service is wanted.")
        held = self._ring.find(text.key_id)
        if not is_same(text, held) or held is None:
            raise _refused(Reason.KEY_UNKNOWN, _UNKNOWN)
        now = dt.datetime.now(dt.UTC)
        if ended := _end_of(held, now):
            raise ended
        self._uses.note(held.account, held.key_id, now)
        return held

    def _visitor(self) -> Caller:
        if self._demo_account is None:
            raise ProblemError(Reason.KEY_MISSING, "No key was shown.", headers={"WWW-Authenticate": CHALLENGE})
        scopes = frozenset({Scope.QUOTE, Scope.CATALOGUE_READ})
        return Caller(account=self._demo_account, kind=CallerKind.DEMO, scopes=scopes, key_id=None)


def caller_of(connection: ASGIConnection[Any, Any, Any, Any]) -> Caller:
    """Who calls, once the gate has let it in."""
    caller: Caller = connection.scope["state"][CALLER_KEY]
    return caller


def _headers(scope: Any, name: bytes) -> list[str]:  # noqa: ANN401 - Litestar's type of a scope
    return [text.decode("latin-1") for found, text in scope["headers"] if found == name]


def _end_of(held: HeldKey, now: dt.datetime) -> ProblemError | None:
    """Why a key, shown by its holder, opens nothing any more."""
    if held.revoked_at is not None:
        return _refused(Reason.KEY_REVOKED, f"The key {held.key_id} was revoked.")
    if held.expires_at is not None and held.expires_at <= now:
        return _refused(Reason.KEY_EXPIRED, f"The key {held.key_id} has expired.")
    if held.is_suspended:
        return ProblemError(Reason.ACCOUNT_SUSPENDED, f"The account {held.account} is suspended.")
    return None


def _check_browser(held: HeldKey, need: Need, origins: list[str]) -> None:
    """A browser key opens few operations, and those from the shop's own pages only."""
    if held.kind is not KeyKind.BROWSER:
        return
    if len(origins) != 1 or origins[0] not in held.origins:
        raise ProblemError(Reason.ORIGIN_REFUSED, "The Origin header names no page that the shop allows its browser keys on.")
    if not need.browser:
        raise ProblemError(Reason.KEY_KIND, "A browser key does not open this.")


def _refused(reason: Reason, detail: str) -> ProblemError:
    return ProblemError(reason, detail, headers={"WWW-Authenticate": f'{CHALLENGE}, error="invalid_token"'})


def _lacks(need: Need) -> ProblemError:
    """RFC 6750 section 3.1."""
    challenge = f'{CHALLENGE}, error="insufficient_scope", scope="{need.scope}"'
    detail = f'This asks for the scope "{need.scope}", which the caller has not.'
    return ProblemError(Reason.SCOPE_MISSING, detail, headers={"WWW-Authenticate": challenge})
