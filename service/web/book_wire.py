"""What the addresses of price books take and answer."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING, Annotated

import msgspec
from msgspec import Meta

from service.catalogue import Finding, KindCount, RowChange, RowKind, rows_of
from service.store import AuditEntry, Book, BookRevision, ImportMode
from service.units import Code, IsoDate, Money

if TYPE_CHECKING:
    from service.store import Draft

type RevisionName = Annotated[str, Meta(max_length=120, pattern=r"^[A-Za-z0-9._:-]+(?!\n)$", description="A catalogue revision.")]
type DraftDigest = Annotated[
    str, Meta(pattern=r"^[0-9a-f]{16}(?!\n)$", description="Digest of all of a draft: what was looked at is what is published.")
]


class BookRequest(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A price book that is wanted."""

    price_book: Code


class PublishRequest(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The draft is to be published."""

    effective_from: Annotated[IsoDate, Meta(description="The first day on which it holds: today or later.")]
    draft_digest: DraftDigest


class WithdrawRequest(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A revision is to hold no more."""

    catalogue_revision: RevisionName


class BookList(msgspec.Struct, frozen=True, kw_only=True):
    """The price books of a shop, by name."""

    items: tuple[Book, ...]


class RevisionList(msgspec.Struct, frozen=True, kw_only=True):
    """The published revisions of a price book, the latest first."""

    items: tuple[BookRevision, ...]


class BookMade(msgspec.Struct, frozen=True, kw_only=True):
    """A price book that is there."""

    price_book: str
    was_there: bool


class KindRows(msgspec.Struct, frozen=True, kw_only=True):
    """How many rows of a kind a draft holds, those of the base catalogue among them."""

    kind: RowKind
    rows_count: int


class DraftAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """A draft: how much it holds, and what a person should see to before it is published."""

    price_book: str
    draft_digest: str
    source_digest: str  # of the file that was last imported
    rows: tuple[KindRows, ...]
    stops_count: int  # findings that stop a publish; they come first
    findings_count: int
    findings: tuple[Finding, ...]  # the first thousand


class Discarded(msgspec.Struct, frozen=True, kw_only=True):
    """A draft that is no more."""

    price_book: str


class ImportedAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """Rows that the draft now holds."""

    price_book: str
    kind: RowKind
    mode: ImportMode
    rows_count: int
    was_there: bool  # the same file was the last of its kind: nothing was done
    file_digest: str  # SHA-256 of the file and of how it is read, as in the audit


class DifferenceAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """What a publish of the draft would change."""

    draft_digest: str
    against: str | None  # the revision that holds on the day asked for; null: none does
    counts: tuple[KindCount, ...]
    changes_count: int
    changes: tuple[RowChange, ...]  # the first thousand


class SampleMove(msgspec.Struct, frozen=True, kw_only=True):
    """An example quote under the revision that holds and under the draft, total with tax."""

    name: str
    before: Money | None
    after: Money | None
    total_ratio: float | None  # by how much of itself the total moves
    before_complete: bool  # false: something has no price
    after_complete: bool
    note: str


class SampleMoves(msgspec.Struct, frozen=True, kw_only=True):
    """How the example quotes move."""

    draft_digest: str
    against: str | None
    items: tuple[SampleMove, ...]


class Published(msgspec.Struct, frozen=True, kw_only=True):
    """A revision that was published."""

    price_book: str
    catalogue_revision: str
    effective_from: dt.date


class Withdrawn(msgspec.Struct, frozen=True, kw_only=True):
    """A revision that holds no more."""

    price_book: str
    catalogue_revision: str
    withdrawn_from: dt.date


class AuditPage(msgspec.Struct, frozen=True, kw_only=True):
    """Who did what, the newest first."""

    items: tuple[AuditEntry, ...]
    next_cursor: Annotated[str, Meta(description="`cursor` of the next page; null on the last.")] | None


def kinds_of(draft: Draft) -> tuple[KindRows, ...]:
    """How many rows of each kind a draft holds."""
    return tuple(KindRows(kind=kind, rows_count=len(rows_of(draft.catalogue, kind))) for kind in RowKind)
