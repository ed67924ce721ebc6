from __future__ import annotations

import random

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.catalogue import ItemIndex, Sought, demo_catalogue, item_index


class Thing(msgspec.Struct, frozen=True, kw_only=True):
    code: str
    kind: str
    width_mm: float | None
    height_mm: float


CHANCE = random.Random(1)  # noqa: S311 - no secret
THINGS = {
    f"T-{place:03d}": Thing(
        code=f"T-{place:03d}",
        kind=CHANCE.choice("abc"),
        width_mm=CHANCE.choice([None, *range(20)]),
        height_mm=CHANCE.randrange(20),
    )
    for place in range(300)
}
BOUND = st.none() | st.integers(-1, 21)


def pages(index: ItemIndex[Thing], sought: Sought, limit_count: int) -> list[Thing]:
    found: list[Thing] = []
    cursor = None
    while True:
        page, cursor = index.page(sought, cursor, limit_count)
        assert len(page) <= limit_count
        found += page
        if cursor is None:
            return found
        assert page


@pytest.mark.parametrize("few_count", [0, 20, 3_000])
@given(kind=st.none() | st.sampled_from("abcd"), bounds=st.tuples(BOUND, BOUND, BOUND, BOUND), limit_count=st.integers(1, 400))
def test_pages_end_to_end_are_what_a_plain_walk_finds(
    few_count: int, kind: str | None, bounds: tuple[int | None, int | None, int | None, int | None], limit_count: int
) -> None:
    sought = Sought(words=(("kind", kind),), sizes=(("width_mm", bounds[0], bounds[1]), ("height_mm", bounds[2], bounds[3])))

    def fits(thing: Thing) -> bool:
        sizes = ((thing.width_mm, *bounds[:2]), (thing.height_mm, *bounds[2:]))
        return kind in {None, thing.kind} and all(
            (least is None and greatest is None)
            or (size is not None and (least is None or size >= least) and (greatest is None or size <= greatest))
            for size, least, greatest in sizes
        )

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(item_index, "FEW_COUNT", few_count)
        found = pages(ItemIndex(THINGS), sought, limit_count)

    assert [thing for thing in THINGS.values() if fits(thing)] == found


def test_items_come_in_the_order_of_their_codes_as_bytes() -> None:
    turned = dict(reversed(THINGS.items()))

    assert list(THINGS.values()) == pages(ItemIndex(turned), Sought(), 7)


def test_a_cursor_is_a_position_whatever_is_there() -> None:
    """Of an item that has gone since, or that never was: the next page begins after it."""
    index = ItemIndex({code: thing for code, thing in THINGS.items() if code != "T-004"})
    page, _ = index.page(Sought(), b"T-004".hex(), 1)

    assert ["T-005"] == [thing.code for thing in page]
    assert ["T-000"] == [thing.code for thing in index.page(Sought(), b"\x00".hex(), 1)[0]]
    assert ([], None) == index.page(Sought(), b"\xff".hex(), 1)


def test_two_words_at_once() -> None:
    fires = ItemIndex(demo_catalogue().appliances)
    found, _ = fires.page(Sought(words=(("open_ends_count", 2), ("connection", "none"))), None, 50)

    assert [] == found
