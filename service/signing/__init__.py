"""Signatures over JSON: canonical bytes (RFC 8785), detached JWS (RFC 7515) with Ed25519 (RFC 8037, RFC 9864)."""

from service.signing.canonical import canonical_json
from service.signing.keys import KeyFileError, SigningKeys, new_key, read_keys
from service.signing.signature import Signature, SignatureState, check_signature, sign
from service.signing.token import Opened, TokenError, make_token, open_token

__all__ = [
    "KeyFileError",
    "Opened",
    "Signature",
    "SignatureState",
    "SigningKeys",
    "TokenError",
    "canonical_json",
    "check_signature",
    "make_token",
    "new_key",
    "open_token",
    "read_keys",
    "sign",
]
