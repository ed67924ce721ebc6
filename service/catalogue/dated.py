"""Which revision of a price book holds on a day. For a day that has passed the answer never changes again."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

if TYPE_CHECKING:
    from collections.abc import Iterable


class DatedRevision(msgspec.Struct, frozen=True, kw_only=True):
    """A published revision of a price book, with the days on which it may hold."""

    catalogue_revision: str
    effective_from: str  # RFC 3339 full-date
    published_count: int  # of two of the same day the one that was published later holds
    withdrawn_from: str | None = None  # the first day on which it holds no more


def in_force(revisions: Iterable[DatedRevision], day: str) -> DatedRevision | None:
    """The revision that holds on a day, or None where none does.

    Args:
        revisions: of one price book.
        day: RFC 3339 full-date.
    """
    holding = [one for one in revisions if one.effective_from <= day and (one.withdrawn_from is None or day < one.withdrawn_from)]
    return max(holding, key=lambda one: (one.effective_from, one.published_count), default=None)
