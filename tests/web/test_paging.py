"""Cursors are positions: each is good, and pages laid end to end are the list."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from service.web.paging import page_of
from service.web.parameters import CURSOR_PATTERN

CODES = st.lists(st.text(alphabet="ABab01-_", min_size=1, max_size=6), unique=True, max_size=20).map(sorted)


@given(CODES, st.integers(1, 7))
def test_pages_end_to_end_are_the_list(codes: list[str], limit_count: int) -> None:
    keys = [code.encode() for code in codes]
    found: list[str] = []
    cursor = None
    while True:
        page, cursor = page_of(codes, keys, cursor, limit_count)
        found += page
        if cursor is None:
            break
        assert len(page) == limit_count
        assert re.search(CURSOR_PATTERN, cursor)

    assert codes == found


@given(CODES, st.from_regex(CURSOR_PATTERN, fullmatch=True))
def test_every_cursor_is_a_position(codes: list[str], cursor: str) -> None:
    keys = [code.encode() for code in codes]
    page, _ = page_of(codes, keys, cursor, 50)

    assert [code for code in codes if code.encode() > bytes.fromhex(cursor)] == page


def test_a_cursor_whose_item_is_gone_goes_on_after_it() -> None:
    codes = ["a", "c", "d"]

    assert (["c", "d"], None) == page_of(codes, [code.encode() for code in codes], b"b".hex(), 5)
