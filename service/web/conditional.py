"""Answers that a client may hold: an entity tag for each, and 304 while it is still the same (RFC 9110 section 13)."""

from __future__ import annotations

import hashlib
from typing import TYPE_CHECKING, Final

from litestar import Response

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

MUST_ASK: Final = "private, no-cache"  # may be held, but each use asks first: prices change when the shop says so
TAG_LENGTH: Final = 32


def entity_tag(*parts: str) -> str:
    """A strong tag for what the parts determine."""
    digest = hashlib.sha256("\0".join(parts).encode()).hexdigest()
    return f'"{digest[:TAG_LENGTH]}"'


def is_held(if_none_match: str | None, tag: str) -> bool:
    """Whether the client holds the answer of this tag; weak comparison (RFC 9110 section 13.1.2)."""
    if if_none_match is None:
        return False
    given = {part.strip().removeprefix("W/") for part in if_none_match.split(",")}
    return "*" in given or tag in given


def answer(
    if_none_match: str | None, tag: str, make: Callable[[], bytes], *, headers: Mapping[str, str]
) -> Response[bytes | None]:
    """The JSON answer, or 304 without making it."""
    all_headers = {"ETag": tag, "Cache-Control": MUST_ASK, **headers}
    if is_held(if_none_match, tag):
        return Response(None, status_code=304, headers=all_headers)
    return Response(make(), media_type="application/json", headers=all_headers)
