"""Signing keys as a JWK Set (RFC 7517): the first private key signs, every key is published by its public half.

To rotate: put a new key in front and leave the old one; when no quote of the old key is valid any more, take it out.
"""

from __future__ import annotations

from typing import Final

import msgspec
from joserfc.errors import JoseError
from joserfc.jwk import OKPKey

CURVE: Final = "Ed25519"


class KeyFileError(ValueError):
    """A key file that cannot be used, with the reason; never with key material."""


class SigningKeys(msgspec.Struct, frozen=True, kw_only=True):
    """Keys of a service. `private_jwk` is secret: it is never logged, shown or stored elsewhere."""

    private_jwk: str | None  # of the key that signs; None: nothing is signed
    public_jwks: str  # JWK Set, as it is published

    def __repr__(self) -> str:
        """Without the secret."""
        return f"SigningKeys(signs={self.private_jwk is not None})"


class _KeyFile(msgspec.Struct, frozen=True, kw_only=True):
    keys: tuple[dict[str, str], ...]


def new_key(day: str) -> str:
    """A JWK Set with one new private key, named by its RFC 7638 thumbprint.

    Args:
        day: RFC 3339 full-date on which it is made; kept beside it, for whoever rotates.
    """
    key = OKPKey.generate_key(CURVE, {"use": "sig", "alg": CURVE}, auto_kid=True)
    return msgspec.json.format(msgspec.json.encode({"keys": [{**key.as_dict(private=True), "made_on": day}]})).decode() + "\n"


def read_keys(text: str) -> SigningKeys:
    """Keys of a JWK Set.

    Raises:
        KeyFileError: no JWK Set, a key of another kind than Ed25519, two of one name, none at all.
    """
    try:
        file = msgspec.json.decode(text, type=_KeyFile)
        keys = [OKPKey.import_key(dict(key)) for key in file.keys]
    except (msgspec.MsgspecError, JoseError, ValueError, KeyError, TypeError) as error:
        message = f"the signing keys are no JWK Set of {CURVE} keys: {type(error).__name__}"
        raise KeyFileError(message) from None  # the cause may quote the file
    faults = _faults(keys)
    if faults:
        raise KeyFileError(faults)
    private = next((key for key in keys if key.is_private), None)
    return SigningKeys(
        private_jwk=None if private is None else msgspec.json.encode(private.as_dict(private=True)).decode(),
        public_jwks=msgspec.json.encode({"keys": [_public(key) for key in keys]}).decode(),
    )


def _faults(keys: list[OKPKey]) -> str:
    if not keys:
        return "the signing keys hold no key"
    if any(key.as_dict(private=False).get("crv") != CURVE for key in keys):
        return f"a signing key is of another curve than {CURVE}"
    names = [key.kid for key in keys]
    if None in names or len(set(names)) < len(names):
        return "every signing key needs a `kid` of its own"
    return ""


def _public(key: OKPKey) -> dict[str, object]:
    kept = ("kty", "crv", "x", "kid", "use", "alg")
    return {name: value for name, value in key.as_dict(private=False).items() if name in kept}
