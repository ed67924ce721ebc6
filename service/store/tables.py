"""Tables of the catalogue. Items belong to an account; an account may stand on another, whose items it sees and overrides.

Needs PostgreSQL 15 or later (a unique constraint counts nulls as equal). Triggers live in the migrations: each
statement that changes one of `WATCHED` raises `catalogue_version` and notifies `CHANNEL` at commit.
"""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING

from sqlalchemy import (
    ARRAY,
    BigInteger,
    Boolean,
    CheckConstraint,
    Column,
    Date,
    DateTime,
    ForeignKey,
    ForeignKeyConstraint,
    Identity,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    PrimaryKeyConstraint,
    Table,
    Text,
    UniqueConstraint,
    func,
    text,
)

from service.catalogue import (
    CODE_PATTERN,
    CURRENCY_PATTERN,
    TEXT_LENGTH_COUNT,
    Account,
    Appliance,
    Bracket,
    FixingLoad,
    LabourRate,
    Material,
    Screen,
    Trade,
)
from service.store.columns import checks_of, columns_of, key_text, range_condition

if TYPE_CHECKING:
    import msgspec

CHANNEL = "inglewright_catalogue"
METADATA = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
    }
)


class RevisionState(StrEnum):
    """Life of a price-book revision; only a published one is charged from."""

    DRAFT = "draft"
    PUBLISHED = "published"
    WITHDRAWN = "withdrawn"


class AuditAction(StrEnum):
    """What the audit tells of."""

    BOOK_MADE = "book_made"
    DRAFT_BEGUN = "draft_begun"
    ROWS_IMPORTED = "rows_imported"
    DRAFT_DISCARDED = "draft_discarded"
    PUBLISHED = "published"
    WITHDRAWN = "withdrawn"


def _item_table(name: str, kind: type[msgspec.Struct], keys: tuple[str, ...], *checks: CheckConstraint) -> Table:
    """A table of one kind of thing, keyed by account and the thing's own keys."""
    return Table(
        name,
        METADATA,
        Column("account", key_text(), ForeignKey("account.account", ondelete="CASCADE"), nullable=False),
        *columns_of(kind, keys),
        PrimaryKeyConstraint("account", *keys),
        *checks_of(kind),
        *checks,
    )


account = Table(
    "account",
    METADATA,
    *columns_of(Account, ("account",)),
    Column("base_account", key_text(), ForeignKey("account.account"), nullable=True),
    PrimaryKeyConstraint("account"),
    *checks_of(Account),
    CheckConstraint("base_account <> account", name="base_account_differs"),
)
material = _item_table("material", Material, ("code",))
appliance = _item_table(
    "appliance",
    Appliance,
    ("model",),
    CheckConstraint("open_ends_count <= 2", name="open_ends_count_greatest"),
)
screen = _item_table("screen", Screen, ("model",))
bracket = _item_table("bracket", Bracket, ("model",))
labour_rate = _item_table("labour_rate", LabourRate, ("task", "term", "input", "trade"))
trade = _item_table("trade", Trade, ("trade",))
fixing_load = Table(
    "fixing_load",
    METADATA,
    Column("account", key_text(), ForeignKey("account.account", ondelete="CASCADE"), nullable=False),
    *columns_of(FixingLoad, ("code", "wall")),
    UniqueConstraint("account", "code", "wall", "units", "embedment_mm", postgresql_nulls_not_distinct=True),
    *checks_of(FixingLoad),
)
price_book = Table(
    "price_book",
    METADATA,
    Column("account", key_text(), ForeignKey("account.account", ondelete="CASCADE"), nullable=False),
    Column("price_book", key_text(), nullable=False),
    Column("is_default", Boolean(), nullable=False),
    PrimaryKeyConstraint("account", "price_book"),
    CheckConstraint(f"price_book ~ '{CODE_PATTERN}'", name="price_book"),
    Index("ix_price_book_one_default", "account", unique=True, postgresql_where=text("is_default")),
)
price_book_revision = Table(
    "price_book_revision",
    METADATA,
    Column("revision_id", BigInteger(), Identity(always=True), nullable=False),
    Column("account", key_text(), nullable=False),
    Column("price_book", key_text(), nullable=False),
    Column("effective_from", Date(), nullable=False),
    Column("state", Text(), nullable=False),
    Column("source_digest", Text(), nullable=False),  # SHA-256 of what it was made from, hexadecimal
    Column("created_at", DateTime(timezone=True), nullable=False, server_default=func.now()),
    Column("published_at", DateTime(timezone=True), nullable=True),
    Column("catalogue_revision", Text(), nullable=True),  # name of what was frozen; null: a draft
    Column("part_digests", ARRAY(Text()), nullable=True),  # of `frozen_part`, in the order of `catalogue.PARTS`
    Column("withdrawn_from", Date(), nullable=True),  # the first day on which it holds no more
    PrimaryKeyConstraint("revision_id"),
    ForeignKeyConstraint(["account", "price_book"], ["price_book.account", "price_book.price_book"], ondelete="CASCADE"),
    CheckConstraint("state in ('draft', 'published', 'withdrawn')", name="state_known"),
    CheckConstraint("state <> 'published' or published_at is not null", name="published_at_known"),
    CheckConstraint("source_digest ~ '^[0-9a-f]{64}$'", name="source_digest"),
    CheckConstraint("(catalogue_revision is null) = (part_digests is null)", name="frozen_whole"),
    Index("ix_price_book_revision_one_draft", "account", "price_book", unique=True, postgresql_where=text("state = 'draft'")),
    Index(
        "ix_price_book_revision_one_published",
        "account",
        "price_book",
        "effective_from",
        unique=True,
        postgresql_where=text("state = 'published'"),
    ),
)
price = Table(
    "price",
    METADATA,
    Column("revision_id", BigInteger(), ForeignKey("price_book_revision.revision_id", ondelete="CASCADE"), nullable=False),
    Column("code", key_text(), nullable=False),
    Column("from_count", Integer(), nullable=False),
    Column("amount_minor", BigInteger(), nullable=False),
    Column("currency", Text(), nullable=False),
    Column("supplier", Text(), nullable=False),
    Column("lead_days", Integer(), nullable=False),
    Column("per", Text(), nullable=False, server_default=text("'pack'")),
    PrimaryKeyConstraint("revision_id", "code", "currency", "from_count"),
    CheckConstraint(f"code ~ '{CODE_PATTERN}'", name="code"),
    CheckConstraint(range_condition("from_count"), name="from_count"),
    CheckConstraint(range_condition("amount_minor"), name="amount_minor"),
    CheckConstraint(f"currency ~ '{CURRENCY_PATTERN}'", name="currency"),
    CheckConstraint(f"char_length(supplier) <= {TEXT_LENGTH_COUNT}", name="supplier"),
    CheckConstraint(range_condition("lead_days"), name="lead_days"),
    CheckConstraint("per in ('pack', 'metre', 'square_metre')", name="per"),
)
frozen_part = Table(
    "frozen_part",
    METADATA,
    Column("account", key_text(), ForeignKey("account.account", ondelete="CASCADE"), nullable=False),
    Column("digest", key_text(), nullable=False),  # SHA-256 of the content, hexadecimal
    Column("content", LargeBinary(), nullable=False),
    PrimaryKeyConstraint("account", "digest"),
    CheckConstraint("digest ~ '^[0-9a-f]{64}$'", name="digest"),
)
audit_entry = Table(
    "audit_entry",
    METADATA,
    Column("account", key_text(), ForeignKey("account.account", ondelete="CASCADE"), nullable=False),
    Column("entry_count", BigInteger(), nullable=False),  # counted from 1 in each account, so that it tells nothing of others
    Column("at", DateTime(timezone=True), nullable=False, server_default=func.clock_timestamp()),
    Column("actor", Text(), nullable=False),
    Column("action", Text(), nullable=False),
    Column("price_book", Text(), nullable=True),
    Column("kind", Text(), nullable=True),
    Column("mode", Text(), nullable=True),
    Column("file_digest", Text(), nullable=True),
    Column("rows_count", Integer(), nullable=True),
    Column("catalogue_revision", Text(), nullable=True),
    Column("effective_from", Date(), nullable=True),
    PrimaryKeyConstraint("account", "entry_count"),
    CheckConstraint("char_length(actor) between 1 and 120", name="actor"),
    CheckConstraint(f"action in ({', '.join(repr(str(action)) for action in AuditAction)})", name="action_known"),
    CheckConstraint("file_digest ~ '^[0-9a-f]{64}$'", name="file_digest"),
)
catalogue_version = Table(
    "catalogue_version",
    METADATA,
    Column("is_only", Boolean(), nullable=False, server_default=text("true")),
    Column("version_count", BigInteger(), nullable=False, server_default=text("0")),
    PrimaryKeyConstraint("is_only"),
    CheckConstraint("is_only", name="one_row"),
)
WATCHED = (
    account, material, appliance, screen, bracket, labour_rate, trade, fixing_load, price_book, price_book_revision, price,
)  # fmt: skip
