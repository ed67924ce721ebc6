"""Tables of shops and keys, beside those of the catalogue. Their last use is a table of its own, so that noting it tells nobody.

Triggers, policies and grants live in the migrations: each statement that changes one of `FOLLOWED` notifies `KEYS_CHANNEL` at
commit.
"""

from __future__ import annotations

from typing import Final

from sqlalchemy import (
    ARRAY,
    CheckConstraint,
    Column,
    DateTime,
    ForeignKey,
    ForeignKeyConstraint,
    LargeBinary,
    PrimaryKeyConstraint,
    Table,
    Text,
    UniqueConstraint,
    func,
    text,
)

from service.store.columns import key_text
from service.store.tables import METADATA

KEYS_CHANNEL: Final = "inglewright_keys"

shop = Table(
    "shop",
    METADATA,
    Column("account", key_text(), ForeignKey("account.account", ondelete="CASCADE"), nullable=False),
    Column("name", Text(), nullable=False),
    Column("status", Text(), nullable=False, server_default=text("'active'")),
    Column("origins", ARRAY(Text()), nullable=False, server_default=text("'{}'")),
    Column("created_at", DateTime(timezone=True), nullable=False, server_default=func.now()),
    PrimaryKeyConstraint("account"),
    CheckConstraint("char_length(name) between 1 and 120", name="name"),
    CheckConstraint("status in ('active', 'suspended')", name="status_known"),
    CheckConstraint("cardinality(origins) <= 50", name="origins_count"),
)
shop_text = Table(
    "shop_text",
    METADATA,
    Column("account", key_text(), ForeignKey("shop.account", ondelete="CASCADE"), nullable=False),
    Column("text_name", key_text(), nullable=False),
    Column("locale", key_text(), nullable=False),
    Column("words", Text(), nullable=False),
    PrimaryKeyConstraint("account", "text_name", "locale"),
    CheckConstraint("text_name ~ '^[a-z][a-z0-9_]{0,39}$'", name="text_name"),
    CheckConstraint("locale ~ '^[a-z]{2}(-[A-Z]{2})?$'", name="locale"),
    CheckConstraint("char_length(words) between 1 and 4000", name="words"),
)
access_key = Table(
    "access_key",
    METADATA,
    Column("key_id", key_text(), nullable=False),  # the public part
    Column("account", key_text(), ForeignKey("shop.account", ondelete="CASCADE"), nullable=False),
    Column("kind", Text(), nullable=False),
    Column("label", Text(), nullable=False),
    Column("scopes", ARRAY(Text()), nullable=False),
    Column("secret_digest", LargeBinary(), nullable=False),
    Column("created_at", DateTime(timezone=True), nullable=False, server_default=func.now()),
    Column("expires_at", DateTime(timezone=True), nullable=True),
    Column("revoked_at", DateTime(timezone=True), nullable=True),
    Column("rotated_from", key_text(), nullable=True),
    PrimaryKeyConstraint("key_id"),
    UniqueConstraint("account", "key_id"),
    UniqueConstraint("rotated_from"),  # a key has one successor
    ForeignKeyConstraint(["account", "rotated_from"], ["access_key.account", "access_key.key_id"]),
    CheckConstraint("key_id ~ '^[0-9a-f]{12}$'", name="key_id"),
    CheckConstraint("kind in ('browser', 'server')", name="kind_known"),
    CheckConstraint("char_length(label) <= 120", name="label"),
    CheckConstraint("scopes <@ array['quote', 'catalogue:read', 'catalogue:write', 'admin']", name="scopes_known"),
    CheckConstraint("(kind = 'server') = (cardinality(scopes) > 0)", name="scopes_of_kind"),
    CheckConstraint("octet_length(secret_digest) = 32", name="secret_digest"),
    CheckConstraint("rotated_from <> key_id", name="rotated_from_differs"),
)
access_key_use = Table(
    "access_key_use",
    METADATA,
    Column("key_id", key_text(), nullable=False),
    Column("account", key_text(), nullable=False),
    Column("last_used_at", DateTime(timezone=True), nullable=False),
    PrimaryKeyConstraint("key_id"),
    ForeignKeyConstraint(["account", "key_id"], ["access_key.account", "access_key.key_id"], ondelete="CASCADE"),
)
FOLLOWED: Final = (shop, access_key)
