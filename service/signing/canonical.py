"""The one form of a JSON document that is signed and digested."""

from __future__ import annotations

import msgspec
import rfc8785


def canonical_json(document: bytes) -> bytes:
    """A JSON document in the canonical form of RFC 8785: sorted members, shortest numbers, no spaces.

    Raises:
        ValueError: it is no JSON, or holds a whole number that a double cannot hold.
    """
    try:
        return rfc8785.dumps(msgspec.json.decode(document))
    except (msgspec.DecodeError, rfc8785.CanonicalizationError) as error:
        raise ValueError(str(error)) from error
