"""Keys as values: two kinds, four scopes, and the text that a caller holds.

A key reads `iws_0123456789ab_<43 characters>` (a server's) or `iwb_...` (a browser's): kind, public part, secret. The public
part finds the row, and is what lists and logs show. Of the secret only a digest is kept.

The secret is 256 random bits, so a fast digest is right: nobody can try 2^256 of them however cheap a try is, while a slow one
(made for passwords, which people choose) would cost every request and be a lever to wear the service out. The digest is keyed
by the public part, so that one row's is worth nothing in another.
"""

from __future__ import annotations

import datetime as dt
import hashlib
import hmac
import re
import secrets
from enum import StrEnum
from typing import Annotated, Final

import msgspec
from msgspec import Meta

from service.units import PRINTABLE_PATTERN

SECRET_BYTES: Final = 32
DIGEST_BYTES: Final = 32
ID_BYTES: Final = 6
_PERSON: Final = b"inglewright key"  # BLAKE2 takes up to 16 bytes
_NO_DIGEST: Final = bytes(DIGEST_BYTES)
# RFC 6454 section 6.2, ASCII serialization, as browsers send it: no path, no standard port; plain http only for this machine.
ORIGIN_PATTERN: Final = (
    r"^(https://[a-z0-9]([a-z0-9.-]{0,251}[a-z0-9])?|http://(localhost|127\.0\.0\.1))(:[1-9][0-9]{0,4})?(?!\n)$"
)


type Origin = Annotated[str, Meta(pattern=ORIGIN_PATTERN, description="As the Origin header says it: no path, lower case.")]


class KeyKind(StrEnum):
    """Where a key is kept."""

    BROWSER = "browser"  # in a page, for anybody to read: bound to the shop's origins, without trade prices
    SERVER = "server"  # in a program that the shop runs


class Scope(StrEnum):
    """What a server key opens. None includes another."""

    QUOTE = "quote"
    CATALOGUE_READ = "catalogue:read"
    CATALOGUE_WRITE = "catalogue:write"
    ADMIN = "admin"


PREFIXES: Final = {KeyKind.BROWSER: "iwb", KeyKind.SERVER: "iws"}
_KEY: Final = re.compile(r"(?P<prefix>iwb|iws)_(?P<key_id>[0-9a-f]{12})_(?P<secret>[A-Za-z0-9_-]{43})", flags=re.ASCII)


type Label = Annotated[str, Meta(max_length=120, pattern=PRINTABLE_PATTERN)]


class NewKey(msgspec.Struct, frozen=True, kw_only=True):
    """A key to be made."""

    kind: KeyKind
    label: Label  # where it is used, for people
    scopes: tuple[Scope, ...] = ()  # of a server key at least one; of a browser key none
    expires_at: dt.datetime | None = None


class KeyRow(msgspec.Struct, frozen=True, kw_only=True):
    """A key as it is listed: all but its secret."""

    key_id: str
    kind: KeyKind
    label: str
    scopes: tuple[Scope, ...]
    created_at: dt.datetime
    expires_at: dt.datetime | None
    revoked_at: dt.datetime | None
    rotated_from: str | None
    last_used_at: dt.datetime | None  # to the minute or so: uses are noted in batches


class MadeKey(msgspec.Struct, frozen=True, kw_only=True):
    """A new key with its text, which is shown this once."""

    row: KeyRow
    key: str


class HeldKey(msgspec.Struct, frozen=True, kw_only=True):
    """A key as each process holds it to know its callers."""

    key_id: str
    account: str
    kind: KeyKind
    scopes: frozenset[Scope]
    secret_digest: bytes
    expires_at: dt.datetime | None
    revoked_at: dt.datetime | None
    origins: frozenset[str]  # of the shop
    is_suspended: bool  # the shop is


class KeyText(msgspec.Struct, frozen=True, kw_only=True):
    """What a caller showed, in its parts."""

    kind: KeyKind
    key_id: str
    secret: str


def new_key_text(kind: KeyKind) -> KeyText:
    """A new random key."""
    return KeyText(kind=kind, key_id=secrets.token_hex(ID_BYTES), secret=secrets.token_urlsafe(SECRET_BYTES))


def write_key(key: KeyText) -> str:
    """The key as its holder keeps it."""
    return f"{PREFIXES[key.kind]}_{key.key_id}_{key.secret}"


def read_key(text: str) -> KeyText | None:
    """The parts of a key; None: it is none."""
    found = _KEY.fullmatch(text)
    if found is None:
        return None
    kind = next(kind for kind, prefix in PREFIXES.items() if prefix == found["prefix"])
    return KeyText(kind=kind, key_id=found["key_id"], secret=found["secret"])


def digest_of(key: KeyText) -> bytes:
    """What is kept of a secret."""
    return hashlib.blake2b(key.secret.encode(), digest_size=DIGEST_BYTES, key=key.key_id.encode(), person=_PERSON).digest()


def is_same(key: KeyText, held: HeldKey | None) -> bool:
    """Whether a caller showed the very key that is held; takes as long for one that is not there."""
    kept = _NO_DIGEST if held is None else held.secret_digest
    is_equal = hmac.compare_digest(digest_of(key), kept)
    return is_equal and held is not None and held.kind is key.kind
