"""Finding items of a long list quickly: by the words and sizes that people look for, page by page in the order of codes."""

from __future__ import annotations

import itertools
from bisect import bisect_left, bisect_right
from functools import cached_property
from typing import TYPE_CHECKING, Final, cast

import msgspec

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

FEW_COUNT: Final = 3_000  # so many are sorted quicker than a long list is walked


class Sought(msgspec.Struct, frozen=True, kw_only=True):
    """What is looked for; what is None is not asked."""

    words: tuple[tuple[str, str | int | None], ...] = ()  # field and the value it must have
    sizes: tuple[tuple[str, float | None, float | None], ...] = ()  # field, the least and the greatest it may be, in its own unit


class ItemIndex[T: msgspec.Struct]:
    """The items of one list, which never changes."""

    def __init__(self, items: Mapping[str, T]) -> None:
        """Sort the items by code, as bytes."""
        pairs = sorted((code.encode(), item) for code, item in items.items()) if _is_unsorted(items) else None
        self.codes: list[bytes] = [code for code, _ in pairs] if pairs else [code.encode() for code in items]
        self.items: list[T] = [item for _, item in pairs] if pairs else list(items.values())
        self._groups: dict[tuple[str, object], _Group[T]] = {}

    def page(self, sought: Sought, cursor: str | None, limit_count: int) -> tuple[Sequence[T], str | None]:
        """The items that fit after a cursor, and the cursor after them.

        Args:
            sought: what is looked for.
            cursor: a position between codes, as hexadecimal digits; None: the first page.
            limit_count: most items wanted.

        Returns:
            The page, and the next cursor; None after the last page.
        """
        start = 0 if cursor is None else bisect_right(self.codes, bytes.fromhex(cursor))
        found = self._places(sought, start, limit_count + 1)
        page = [self.items[place] for place in found[:limit_count]]
        return page, self.codes[found[limit_count - 1]].hex() if len(found) > limit_count else None

    def _places(self, sought: Sought, start: int, wanted_count: int) -> list[int]:
        """The first places from a start on that fit."""
        words = [(name, value) for name, value in sought.words if value is not None]
        sizes = [one for one in sought.sizes if one[1:] != (None, None)]
        group = self._group(words[0] if words else None)
        few = group.fewest(sizes)
        candidates: Iterable[int]
        if few is not None and len(few) <= FEW_COUNT:
            candidates = sorted(place for place in few if place >= start)
        else:
            candidates = (group.places[rank] for rank in range(bisect_left(group.places, start), len(group.places)))
        found: list[int] = []
        for place in candidates:
            if self._fits(place, words[1:], sizes):
                found.append(place)
                if len(found) == wanted_count:
                    break
        return found

    def _group(self, word: tuple[str, str | int] | None) -> _Group[T]:
        if word is None:
            return self._all
        if word not in self._groups and not any(name == word[0] for name, _ in self._groups):
            places: dict[object, list[int]] = {}
            for place, item in enumerate(self.items):
                places.setdefault(getattr(item, word[0]), []).append(place)
            self._groups |= {(word[0], value): _Group(self.items, found) for value, found in places.items()}
            self._groups.setdefault((word[0], None), _Group(self.items, []))  # so that the field counts as sorted out
        return self._groups.get(word) or _Group(self.items, [])

    @cached_property
    def _all(self) -> _Group[T]:
        return _Group(self.items, list(range(len(self.items))))

    def _fits(
        self, place: int, words: Sequence[tuple[str, str | int]], sizes: Sequence[tuple[str, float | None, float | None]]
    ) -> bool:
        item = self.items[place]
        return all(getattr(item, name) == value for name, value in words) and all(
            _is_within(getattr(item, name), least, greatest) for name, least, greatest in sizes
        )


class _Group[T: msgspec.Struct]:
    """Places of items that have one word in common, sorted by each size that was ever asked for."""

    def __init__(self, items: Sequence[T], places: list[int]) -> None:
        self.places = places
        self._items = items
        self._sorted: dict[str, tuple[list[float], list[int]]] = {}

    def fewest(self, sizes: Sequence[tuple[str, float | None, float | None]]) -> Sequence[int] | None:
        """The places that fit the one size that fewest fit; None where no size is asked."""
        found = [self._within(*size) for size in sizes]
        return min(found, key=len, default=None)

    def _within(self, name: str, least: float | None, greatest: float | None) -> Sequence[int]:
        if name not in self._sorted:
            pairs = sorted((float(size), place) for place in self.places if (size := _size(self._items[place], name)) is not None)
            self._sorted[name] = ([size for size, _ in pairs], [place for _, place in pairs])
        values, places = self._sorted[name]
        first = 0 if least is None else bisect_left(values, least)
        last = len(values) if greatest is None else bisect_right(values, greatest)
        return places[first:last]


def _size(item: msgspec.Struct, name: str) -> float | None:
    return cast("float | None", getattr(item, name))


def _is_within(size: float | None, least: float | None, greatest: float | None) -> bool:
    """Whether a size is known and within its bounds."""
    return size is not None and (least is None or size >= least) and (greatest is None or size <= greatest)


def _is_unsorted(items: Mapping[str, object]) -> bool:
    codes = list(items)
    return any(one >= other for one, other in itertools.pairwise(codes))
