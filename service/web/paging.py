"""Pages of a sorted list. A cursor is a position between codes, so that every one of them is good, also after a change."""

from __future__ import annotations

from bisect import bisect_right
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence


def page_of[T](
    items: Sequence[T], codes: Sequence[bytes], cursor: str | None, limit_count: int
) -> tuple[Sequence[T], str | None]:
    """The items after a cursor, and the cursor after them.

    Args:
        items: sorted by code.
        codes: their codes, as UTF-8, in the same order.
        cursor: from an earlier page, or None for the first.
        limit_count: most items wanted.

    Returns:
        The page, and the next cursor; None after the last page.
    """
    start = 0 if cursor is None else bisect_right(codes, bytes.fromhex(cursor))
    end = start + limit_count
    return items[start:end], codes[end - 1].hex() if end < len(items) else None
