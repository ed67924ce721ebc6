"""Frozen revisions of price books, one draft for each book, prices by measure, options to order, and the audit.

Expands only: a service of the version before goes on working beside it. Revisions that were published before are not frozen;
they are read from the tables as before until the next publish of their book.
"""

from __future__ import annotations

from alembic import op

revision = "r20261125_price_books"
down_revision = "r20261125_accounts"
branch_labels = None
depends_on = None

SERVICE = "inglewright_service"
# A constant default rewrites no table; a check that is validated apart holds no long lock.
COLUMNS = (
    "ALTER TABLE appliance ADD COLUMN order_codes TEXT[] DEFAULT '{}' NOT NULL",
    "ALTER TABLE price ADD COLUMN per TEXT DEFAULT 'pack' NOT NULL",
    "ALTER TABLE price ADD CONSTRAINT ck_price_per CHECK (per in ('pack', 'metre', 'square_metre')) NOT VALID",
    "ALTER TABLE price VALIDATE CONSTRAINT ck_price_per",
    """
    ALTER TABLE price_book_revision
        ADD COLUMN catalogue_revision TEXT,
        ADD COLUMN part_digests TEXT[],
        ADD COLUMN withdrawn_from DATE,
        ADD CONSTRAINT ck_price_book_revision_frozen_whole
            CHECK ((catalogue_revision is null) = (part_digests is null)) NOT VALID
    """,
    "ALTER TABLE price_book_revision VALIDATE CONSTRAINT ck_price_book_revision_frozen_whole",
)
# Prices can be read meanwhile; only imports wait while the index is built. Not CONCURRENTLY: that would wait for every other
# process that waits for the lock of the migrations.
WIDER_KEY = (
    "CREATE UNIQUE INDEX pk_price_wider ON price (revision_id, code, currency, from_count)",
    "ALTER TABLE price DROP CONSTRAINT pk_price, ADD CONSTRAINT pk_price PRIMARY KEY USING INDEX pk_price_wider",
)
NARROWER_KEY = "ALTER TABLE price DROP CONSTRAINT pk_price, ADD CONSTRAINT pk_price PRIMARY KEY (revision_id, code, from_count)"
ONE_DRAFT = """
    CREATE UNIQUE INDEX ix_price_book_revision_one_draft
        ON price_book_revision (account, price_book) WHERE state = 'draft'
    """
TABLES = (
    """
    CREATE TABLE frozen_part (
        account TEXT COLLATE "C" NOT NULL,
        digest TEXT COLLATE "C" NOT NULL,
        content BYTEA NOT NULL,
        CONSTRAINT pk_frozen_part PRIMARY KEY (account, digest),
        CONSTRAINT ck_frozen_part_digest CHECK (digest ~ '^[0-9a-f]{64}$'),
        CONSTRAINT fk_frozen_part_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE audit_entry (
        account TEXT COLLATE "C" NOT NULL,
        entry_count BIGINT NOT NULL,
        at TIMESTAMP WITH TIME ZONE DEFAULT clock_timestamp() NOT NULL,
        actor TEXT NOT NULL,
        action TEXT NOT NULL,
        price_book TEXT,
        kind TEXT,
        mode TEXT,
        file_digest TEXT,
        rows_count INTEGER,
        catalogue_revision TEXT,
        effective_from DATE,
        CONSTRAINT pk_audit_entry PRIMARY KEY (account, entry_count),
        CONSTRAINT ck_audit_entry_actor CHECK (char_length(actor) between 1 and 120),
        CONSTRAINT ck_audit_entry_action_known CHECK (action in (
            'book_made', 'draft_begun', 'rows_imported', 'draft_discarded', 'published', 'withdrawn')),
        CONSTRAINT ck_audit_entry_file_digest CHECK (file_digest ~ '^[0-9a-f]{64}$'),
        CONSTRAINT fk_audit_entry_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
)
CLOSED = ("frozen_part", "audit_entry")
ACTING = "current_setting('inglewright.account', true)"
POLICIES = (
    *(f"CREATE POLICY own ON {table} USING (account = {ACTING}) WITH CHECK (account = {ACTING})" for table in CLOSED),
    # Which revisions there are: for the keeper, which follows them all.
    f"CREATE POLICY all_accounts ON price_book_revision FOR SELECT USING ({ACTING} = '*')",
)
FUNCTIONS = (
    # What was published is never edited: only a withdrawal may still be written beside it.
    """
    CREATE FUNCTION keep_published() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
        IF OLD.catalogue_revision IS NULL THEN
            RETURN COALESCE(NEW, OLD);
        ELSIF TG_OP = 'DELETE' THEN
            IF pg_trigger_depth() > 1 THEN
                RETURN OLD;  -- with its whole account
            END IF;
        ELSIF OLD.state = 'published' AND NEW.state = 'withdrawn' AND NEW.withdrawn_from IS NOT NULL
            AND (NEW.revision_id, NEW.account, NEW.price_book, NEW.effective_from, NEW.source_digest, NEW.published_at,
                 NEW.catalogue_revision, NEW.part_digests)
              = (OLD.revision_id, OLD.account, OLD.price_book, OLD.effective_from, OLD.source_digest, OLD.published_at,
                 OLD.catalogue_revision, OLD.part_digests) THEN
            RETURN NEW;
        END IF;
        RAISE EXCEPTION 'revision % is published and stays as it is', OLD.catalogue_revision USING ERRCODE = '23001';
    END
    $$
    """,
    """
    CREATE FUNCTION keep_published_prices() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
        IF EXISTS (
            SELECT FROM price_book_revision r
            WHERE r.catalogue_revision IS NOT NULL AND r.revision_id IN (SELECT DISTINCT c.revision_id FROM changed c)
        ) THEN
            RAISE EXCEPTION 'prices of a published revision stay as they are' USING ERRCODE = '23001';
        END IF;
        RETURN NULL;
    END
    $$
    """,
    """
    CREATE FUNCTION keep_as_written() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
        RAISE EXCEPTION 'rows of % stay as they are', TG_TABLE_NAME USING ERRCODE = '23001';
    END
    $$
    """,
)
TRIGGERS = (
    """
    CREATE TRIGGER price_book_revision_kept BEFORE UPDATE OR DELETE ON price_book_revision
        FOR EACH ROW EXECUTE FUNCTION keep_published()
    """,
    """
    CREATE TRIGGER price_kept_insert AFTER INSERT ON price REFERENCING NEW TABLE AS changed
        FOR EACH STATEMENT EXECUTE FUNCTION keep_published_prices()
    """,
    """
    CREATE TRIGGER price_kept_update AFTER UPDATE ON price REFERENCING OLD TABLE AS changed
        FOR EACH STATEMENT EXECUTE FUNCTION keep_published_prices()
    """,
    """
    CREATE TRIGGER price_kept_delete AFTER DELETE ON price REFERENCING OLD TABLE AS changed
        FOR EACH STATEMENT EXECUTE FUNCTION keep_published_prices()
    """,
    *(
        f"CREATE TRIGGER {table}_kept BEFORE UPDATE ON {table} FOR EACH STATEMENT EXECUTE FUNCTION keep_as_written()"
        for table in CLOSED
    ),
)
GRANTS = dict.fromkeys(CLOSED, "SELECT, INSERT")


def upgrade() -> None:
    for statement in (*COLUMNS, *WIDER_KEY, ONE_DRAFT, *TABLES, *POLICIES, *FUNCTIONS, *TRIGGERS):
        op.execute(statement)
    for table in CLOSED:
        op.execute(f"ALTER TABLE {table} ENABLE ROW LEVEL SECURITY, FORCE ROW LEVEL SECURITY")
    for table, rights in GRANTS.items():
        op.execute(f"GRANT {rights} ON {table} TO {SERVICE}")


def downgrade() -> None:
    for trigger in ("price_kept_insert", "price_kept_update", "price_kept_delete"):
        op.execute(f"DROP TRIGGER {trigger} ON price")
    op.execute("DROP TRIGGER price_book_revision_kept ON price_book_revision")
    for table in CLOSED:
        op.drop_table(table)
    for function in ("keep_published", "keep_published_prices", "keep_as_written"):
        op.execute(f"DROP FUNCTION {function}()")
    op.execute("DROP POLICY all_accounts ON price_book_revision")
    op.execute("DROP INDEX ix_price_book_revision_one_draft")
    # The version before knows one currency and prices of packs only.
    op.execute("DELETE FROM price WHERE per <> 'pack'")
    op.execute(
        "DELETE FROM price p USING price q WHERE (p.revision_id, p.code, p.from_count) = (q.revision_id, q.code, q.from_count)"
        " AND p.currency > q.currency"
    )
    op.execute(NARROWER_KEY)
    for column in ("catalogue_revision", "part_digests", "withdrawn_from"):
        op.execute(f"ALTER TABLE price_book_revision DROP COLUMN {column}")
    op.execute("ALTER TABLE price DROP COLUMN per")
    op.execute("ALTER TABLE appliance DROP COLUMN order_codes")
