"""Signatures over JSON: canonical bytes (RFC 8785), detached JWS (RFC 7515) with Ed25519 (RFC 8037, RFC 9864)."""

from service.signing.canonical import canonical_json
from service.signing.keys import KeyFileError, SigningKeys, new_key, read_keys
from service.signing.signature import Signature, SignatureState, check_signature, sign

__all__ = [
    "KeyFileError",
    "Signature",
    "SignatureState",
    "SigningKeys",
    "canonical_json",
    "check_signature",
    "new_key",
    "read_keys",
    "sign",
]
