"""A request inside an address: compressed, with its account and its end, and sealed so that nobody else can make one.

Layout of a token, base64url without padding: version, expiry, account, seal (HMAC-SHA-256, RFC 2104), compressed document
(RFC 1950, with a preset dictionary of the words that requests use most).
"""

from __future__ import annotations

import base64
import hashlib
import hmac
import struct
import zlib
from typing import TYPE_CHECKING, Final

import msgspec

if TYPE_CHECKING:
    from collections.abc import Iterable

VERSION: Final = 1
SEAL_BYTES: Final = 16  # half of the digest, the least that RFC 2104, section 5 allows
MOST_BYTES: Final = 65_536  # of the document that comes out
MOST_TOKEN_BYTES: Final = 8_192
_HEAD: Final = struct.Struct(">BIB")  # version, seconds since 1970, length of the account


class TokenError(ValueError):
    """A token that is not ours, was changed, or is over. `expired` tells the last from the others."""

    def __init__(self, says: str, *, expired: bool = False) -> None:
        """Say what is wrong, never what is right."""
        super().__init__(says)
        self.expired = expired


class Opened(msgspec.Struct, frozen=True, kw_only=True):
    """What a token holds."""

    account: str
    expires_seconds: int  # since 1970-01-01T00:00:00Z
    document: bytes


def make_token(document: bytes, *, account: str, expires_seconds: int, secret: bytes, words: Iterable[str]) -> str:
    """A token for a document.

    Args:
        document: what the address carries; no customer data.
        account: whose catalogue answers it.
        expires_seconds: until when, seconds since 1970.
        secret: of the service, at least 16 bytes.
        words: preset dictionary; the same must open it.
    """
    packer = zlib.compressobj(level=9, zdict=_dictionary(words))
    packed = packer.compress(document) + packer.flush()
    name = account.encode()
    head = _HEAD.pack(VERSION, expires_seconds, len(name)) + name
    return base64.urlsafe_b64encode(head + _seal(head + packed, secret) + packed).rstrip(b"=").decode()


def open_token(token: str, *, now_seconds: int, secret: bytes, words: Iterable[str]) -> Opened:
    """What a token holds.

    Raises:
        TokenError: it is not ours, was changed, or is over.
    """
    raw = _raw(token)
    head, seal, packed = _parts(raw)
    if not hmac.compare_digest(_seal(head + packed, secret), seal):
        message = "this address was not made here, or was changed"
        raise TokenError(message)
    _version, expires, _length = _HEAD.unpack(head[: _HEAD.size])
    if now_seconds >= expires:
        message = "this address is no longer valid"
        raise TokenError(message, expired=True)
    return Opened(account=head[_HEAD.size :].decode(), expires_seconds=expires, document=_unpack(packed, words))


def _raw(token: str) -> bytes:
    """The bytes of a token; one that is too long is cut, and then fits no seal."""
    text = token[:MOST_TOKEN_BYTES]
    try:
        return base64.b64decode(text.encode("ascii") + b"=" * (-len(text) % 4), altchars=b"-_", validate=True)
    except ValueError:
        message = "this address holds no token"
        raise TokenError(message) from None


def _parts(raw: bytes) -> tuple[bytes, bytes, bytes]:
    if len(raw) < _HEAD.size or raw[0] != VERSION:
        message = "this address holds no token of this version"
        raise TokenError(message)
    end = _HEAD.size + raw[_HEAD.size - 1]
    return raw[:end], raw[end : end + SEAL_BYTES], raw[end + SEAL_BYTES :]


def _unpack(packed: bytes, words: Iterable[str]) -> bytes:
    """The document; one that grows beyond the limit is none of ours."""
    opener = zlib.decompressobj(zdict=_dictionary(words))
    try:
        document = opener.decompress(packed, MOST_BYTES)
    except zlib.error:
        message = "this address was made by another version"
        raise TokenError(message) from None
    if not opener.eof:
        message = "what this address holds is too large"
        raise TokenError(message)
    return document


def _seal(data: bytes, secret: bytes) -> bytes:
    return hmac.new(secret, data, hashlib.sha256).digest()[:SEAL_BYTES]


def _dictionary(words: Iterable[str]) -> bytes:
    """What occurs most stands last (RFC 1950: nearer is cheaper)."""
    return b"".join(f'"{word}":'.encode() for word in words)
