"""Catalogues in memory by account and revision, whose equal parts are held once, also between accounts."""

from __future__ import annotations

from collections import OrderedDict
from typing import TYPE_CHECKING

from service.catalogue import PARTS, Catalogue, thaw

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence


class Snapshots:
    """The catalogues used last of each account; none of them ever changes."""

    def __init__(self, kept_count: int) -> None:
        """Keep at most so many of each account."""
        self._kept_count = kept_count
        self._kept: dict[str, OrderedDict[str, Catalogue]] = {}
        self._digests: dict[tuple[str, str], Sequence[str]] = {}
        self._parts: dict[str, object] = {}

    @property
    def parts(self) -> Mapping[str, object]:
        """The values that are held, by digest."""
        return self._parts

    def get(self, account: str, revision: str) -> Catalogue | None:
        """One that is held."""
        return self._kept[account].get(revision) if account in self._kept else None

    def put(self, catalogue: Catalogue, *, is_current: bool) -> Catalogue:
        """Hold a catalogue that was never frozen; of two equal ones the first stays."""
        return self._put(catalogue, (), is_current=is_current)

    def put_parts(self, revision: str, price_book: str, parts: Mapping[str, object], *, is_current: bool) -> Catalogue:
        """Hold a catalogue by its parts.

        Args:
            revision: its name.
            price_book: its book.
            parts: values by digest, in the order of `PARTS`.
            is_current: it is what callers get today; the others go first when there are too many.
        """
        values = [self._parts.get(digest, value) for digest, value in parts.items()]
        return self._put(thaw(revision, price_book, values), tuple(parts), is_current=is_current)

    def keep_only(self, accounts: set[str]) -> None:
        """Let go of accounts that there are no more."""
        for account in self._kept.keys() - accounts:
            del self._kept[account]
        self._tidy()

    def _put(self, catalogue: Catalogue, digests: Sequence[str], *, is_current: bool) -> Catalogue:
        account, revision = catalogue.account.account, catalogue.revision
        kept = self._kept.setdefault(account, OrderedDict())
        held = kept.setdefault(revision, catalogue)
        kept.move_to_end(revision)
        if not is_current and len(kept) > 1:
            current = list(kept)[-2]  # stays the last to go
            kept.move_to_end(current)
        while len(kept) > self._kept_count:
            kept.popitem(last=False)
        self._digests.setdefault((account, revision), digests)
        self._tidy()
        return held

    def _tidy(self) -> None:
        """Forget the parts that no catalogue held has."""
        held = {(account, revision): one for account, kept in self._kept.items() for revision, one in kept.items()}
        self._digests = {name: digests for name, digests in self._digests.items() if name in held}
        self._parts = {
            digest: getattr(held[name], part)
            for name, digests in self._digests.items()
            for part, digest in zip(PARTS, digests, strict=False)
        }
