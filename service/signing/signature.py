"""Signing a document and checking it: a detached JWS (RFC 7515, appendix F) over its canonical bytes without `signature`."""

from __future__ import annotations

from enum import StrEnum
from typing import Any, Final

import msgspec
import rfc8785
from joserfc import jws
from joserfc.errors import JoseError
from joserfc.jwk import KeySet, OKPKey

MEMBER: Final = "signature"
ALGORITHM: Final = "Ed25519"
ALGORITHMS: Final = [ALGORITHM]
PARTS_COUNT: Final = 3


class Signature(msgspec.Struct, frozen=True, kw_only=True):
    """Who signed, and the signature."""

    key_id: str  # `kid` in the published keys
    jws: str  # detached: header..signature


class SignatureState(StrEnum):
    """What a check of a signature says."""

    GOOD = "good"
    BAD = "bad"  # the document is not what was signed
    UNKNOWN_KEY = "unknown_key"  # signed by a key that is not published here (any more)
    MISSING = "missing"


def sign(document: bytes, private_jwk: str) -> Signature:
    """Sign a JSON object; what stands in its member `signature` is left out.

    Raises:
        ValueError: it is no JSON object, or holds what has no canonical form.
    """
    key = OKPKey.import_key(msgspec.json.decode(private_jwk))
    token = jws.serialize_compact({"alg": ALGORITHM, "kid": key.kid}, _payload(document), key, algorithms=ALGORITHMS)
    head, _payload_part, signed = token.split(".")
    return Signature(key_id=str(key.kid), jws=f"{head}..{signed}")


def check_signature(document: bytes, public_jwks: str) -> SignatureState:
    """Whether the document is what one of the published keys signed.

    Raises:
        ValueError: it is no JSON object.
    """
    detached = _signature_of(document)
    if detached is None:
        return SignatureState.MISSING
    keys = KeySet.import_key_set(msgspec.json.decode(public_jwks))
    try:
        name = jws.extract_compact(detached.encode()).headers().get("kid")
        if name not in {key.kid for key in keys.keys}:
            return SignatureState.UNKNOWN_KEY
        jws.deserialize_compact(detached, keys, payload=_payload(document), algorithms=ALGORITHMS)
    except (JoseError, ValueError, TypeError):
        return SignatureState.BAD
    return SignatureState.GOOD


def _object(document: bytes) -> dict[str, Any]:
    decoded = msgspec.json.decode(document)
    if not isinstance(decoded, dict):
        message = "only a JSON object can be signed"
        raise ValueError(message)  # noqa: TRY004 - a value of the caller, not of a type of ours
    return decoded


def _payload(document: bytes) -> bytes:
    """Canonical bytes of the document without its signature."""
    try:
        return rfc8785.dumps({name: value for name, value in _object(document).items() if name != MEMBER})
    except rfc8785.CanonicalizationError as error:
        raise ValueError(str(error)) from error


def _signature_of(document: bytes) -> str | None:
    """The detached JWS that a document carries; None: none, or of no form that could be one."""
    member = _object(document).get(MEMBER)
    text = member.get("jws") if isinstance(member, dict) else None
    return text if isinstance(text, str) and text.count(".") == PARTS_COUNT - 1 else None
