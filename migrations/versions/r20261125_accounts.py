"""Shops and their keys; the service's own database user; rows of one account closed to every other (row-level security)."""

from __future__ import annotations

from alembic import op

revision = "r20261125_accounts"
down_revision = "r20261125_catalogue"
branch_labels = None
depends_on = None

SERVICE = "inglewright_service"
# Roles belong to the whole server, so another database may have made it, or be making it now. It may not log in until
# somebody says so: `alter role inglewright_service login password '...'`, or a user of one's own that is a member of it.
ROLE = f"""
    DO $$
    BEGIN
        IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = '{SERVICE}') THEN
            CREATE ROLE {SERVICE} NOLOGIN;
        END IF;
    EXCEPTION
        WHEN duplicate_object OR unique_violation THEN NULL;
        WHEN insufficient_privilege THEN
            RAISE EXCEPTION 'the role {SERVICE} is missing, and this user may not make it'
                USING HINT = 'as an administrator of the server: create role {SERVICE} login password ''...''';
    END
    $$
    """
TABLES = (
    """
    CREATE TABLE shop (
        account TEXT COLLATE "C" NOT NULL,
        name TEXT NOT NULL,
        status TEXT DEFAULT 'active' NOT NULL,
        origins TEXT[] DEFAULT '{}' NOT NULL,
        created_at TIMESTAMP WITH TIME ZONE DEFAULT now() NOT NULL,
        CONSTRAINT pk_shop PRIMARY KEY (account),
        CONSTRAINT ck_shop_name CHECK (char_length(name) between 1 and 120),
        CONSTRAINT ck_shop_status_known CHECK (status in ('active', 'suspended')),
        CONSTRAINT ck_shop_origins_count CHECK (cardinality(origins) <= 50),
        CONSTRAINT fk_shop_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE shop_text (
        account TEXT COLLATE "C" NOT NULL,
        text_name TEXT COLLATE "C" NOT NULL,
        locale TEXT COLLATE "C" NOT NULL,
        words TEXT NOT NULL,
        CONSTRAINT pk_shop_text PRIMARY KEY (account, text_name, locale),
        CONSTRAINT ck_shop_text_text_name CHECK (text_name ~ '^[a-z][a-z0-9_]{0,39}$'),
        CONSTRAINT ck_shop_text_locale CHECK (locale ~ '^[a-z]{2}(-[A-Z]{2})?$'),
        CONSTRAINT ck_shop_text_words CHECK (char_length(words) between 1 and 4000),
        CONSTRAINT fk_shop_text_account_shop FOREIGN KEY(account)
            REFERENCES shop (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE access_key (
        key_id TEXT COLLATE "C" NOT NULL,
        account TEXT COLLATE "C" NOT NULL,
        kind TEXT NOT NULL,
        label TEXT NOT NULL,
        scopes TEXT[] NOT NULL,
        secret_digest BYTEA NOT NULL,
        created_at TIMESTAMP WITH TIME ZONE DEFAULT now() NOT NULL,
        expires_at TIMESTAMP WITH TIME ZONE,
        revoked_at TIMESTAMP WITH TIME ZONE,
        rotated_from TEXT COLLATE "C",
        CONSTRAINT pk_access_key PRIMARY KEY (key_id),
        CONSTRAINT uq_access_key_account_key_id UNIQUE (account, key_id),
        CONSTRAINT uq_access_key_rotated_from UNIQUE (rotated_from),
        CONSTRAINT ck_access_key_key_id CHECK (key_id ~ '^[0-9a-f]{12}$'),
        CONSTRAINT ck_access_key_kind_known CHECK (kind in ('browser', 'server')),
        CONSTRAINT ck_access_key_label CHECK (char_length(label) <= 120),
        CONSTRAINT ck_access_key_scopes_known
            CHECK (scopes <@ array['quote', 'catalogue:read', 'catalogue:write', 'admin']),
        CONSTRAINT ck_access_key_scopes_of_kind
            CHECK ((kind = 'server') = (cardinality(scopes) > 0)),
        CONSTRAINT ck_access_key_secret_digest CHECK (octet_length(secret_digest) = 32),
        CONSTRAINT ck_access_key_rotated_from_differs CHECK (rotated_from <> key_id),
        CONSTRAINT fk_access_key_account_shop FOREIGN KEY(account)
            REFERENCES shop (account) ON DELETE CASCADE,
        CONSTRAINT fk_access_key_account_rotated_from_access_key FOREIGN KEY(account, rotated_from)
            REFERENCES access_key (account, key_id)
    )
    """,
    """
    CREATE TABLE access_key_use (
        key_id TEXT COLLATE "C" NOT NULL,
        account TEXT COLLATE "C" NOT NULL,
        last_used_at TIMESTAMP WITH TIME ZONE NOT NULL,
        CONSTRAINT pk_access_key_use PRIMARY KEY (key_id),
        CONSTRAINT fk_access_key_use_account_key_id_access_key FOREIGN KEY(account, key_id)
            REFERENCES access_key (account, key_id) ON DELETE CASCADE
    )
    """,
)
SHOPS_THERE_ARE = "INSERT INTO shop (account, name) SELECT account, account FROM account"
NOTICE = """
    CREATE FUNCTION keys_changed() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
        PERFORM pg_notify('inglewright_keys', '');
        RETURN NULL;
    END
    $$
    """
TRIGGER = """
    CREATE TRIGGER {table}_changed AFTER INSERT OR UPDATE OR DELETE OR TRUNCATE ON {table}
    FOR EACH STATEMENT EXECUTE FUNCTION keys_changed()
    """
FOLLOWED = ("shop", "access_key")
# The service may not write the count itself; its changes of the catalogue do, by the owner's function.
COUNTS_AS_OWNER = "ALTER FUNCTION catalogue_changed() SECURITY DEFINER SET search_path = public, pg_temp"
COUNTS_AS_CALLER = "ALTER FUNCTION catalogue_changed() SECURITY INVOKER RESET ALL"

ITEMS = ("material", "appliance", "screen", "bracket", "labour_rate", "trade", "fixing_load")
OF_ACCOUNT = (*ITEMS, "account", "price_book", "price_book_revision", "shop", "shop_text", "access_key", "access_key_use")
CLOSED = (*OF_ACCOUNT, "price")
SEEN_BY_ALL = ("account", "price_book", "shop", "access_key")
ACTING = "current_setting('inglewright.account', true)"
OWN_ROWS = f"(account = {ACTING})"
BASE_ROWS = f"(account = (SELECT a.base_account FROM account a WHERE a.account = {ACTING}))"  # noqa: S608 - nothing from outside
OWN_REVISION = f"r.revision_id = price.revision_id AND r.account = {ACTING}"
PRICES_OF_OWN_ROWS = f"(EXISTS (SELECT FROM price_book_revision r WHERE {OWN_REVISION}))"
POLICIES = (
    *(f"CREATE POLICY own ON {table} USING {OWN_ROWS} WITH CHECK {OWN_ROWS}" for table in OF_ACCOUNT),
    f"CREATE POLICY own ON price USING {PRICES_OF_OWN_ROWS}",
    # What an account stands on may be read, never written.
    *(f"CREATE POLICY base ON {table} FOR SELECT USING {BASE_ROWS}" for table in ITEMS),
    # Which accounts, books and keys there are: for what follows them all. No account can be called `*`.
    *(f"CREATE POLICY all_accounts ON {table} FOR SELECT USING ({ACTING} = '*')" for table in SEEN_BY_ALL),
)
# Never TRUNCATE, which no policy holds; never INSERT or DELETE of an account; never its base or its status.
GRANTS = {
    **dict.fromkeys(ITEMS, "SELECT, INSERT, UPDATE, DELETE"),
    "account": """SELECT, UPDATE (
        handling_ratio, subcontract_handling_ratio, overhead_ratio, margin_ratio, risk_measured_ratio, risk_stated_ratio,
        risk_assumed_ratio, tool_wear_ratio, dust_sheet_charge_ratio, electrician_certificate_minor, travel_per_day_minor,
        delivery_minor, delivery_free_from_minor, delivery_suppliers, tax_standard_ratio, tax_reduced_ratio, tax_rounding,
        packs_charged, validity_days, deposit_ratio, deposit_greatest_ratio, stage_ratio, crew_count, standing
    )""",
    "price_book": "SELECT, INSERT, UPDATE",
    "price_book_revision": "SELECT, INSERT, UPDATE, DELETE",
    "price": "SELECT, INSERT, UPDATE, DELETE",
    "catalogue_version": "SELECT",
    "shop": "SELECT, UPDATE (name, origins)",
    "shop_text": "SELECT, INSERT, UPDATE, DELETE",
    "access_key": "SELECT, INSERT, UPDATE (expires_at, revoked_at)",
    "access_key_use": "SELECT, INSERT, UPDATE (last_used_at)",
    "alembic_version": "SELECT",
}


def upgrade() -> None:
    op.execute(ROLE)
    op.execute("REVOKE CREATE ON SCHEMA public FROM PUBLIC")
    op.execute(f"GRANT USAGE ON SCHEMA public TO {SERVICE}")
    triggers = (TRIGGER.format(table=table) for table in FOLLOWED)
    for statement in (*TABLES, SHOPS_THERE_ARE, NOTICE, *triggers, COUNTS_AS_OWNER, *POLICIES):
        op.execute(statement)
    for table in CLOSED:
        op.execute(f"ALTER TABLE {table} ENABLE ROW LEVEL SECURITY, FORCE ROW LEVEL SECURITY")
    for table, rights in GRANTS.items():
        op.execute(f"GRANT {rights} ON {table} TO {SERVICE}")


def downgrade() -> None:
    for table in ("access_key_use", "access_key", "shop_text", "shop"):
        op.drop_table(table)
    op.execute("DROP FUNCTION keys_changed()")
    op.execute(COUNTS_AS_CALLER)
    for table in (*ITEMS, "account", "price_book", "price_book_revision", "price"):
        op.execute(f"ALTER TABLE {table} DISABLE ROW LEVEL SECURITY, NO FORCE ROW LEVEL SECURITY")
        op.execute(f"DROP POLICY own ON {table}")
    for table in ITEMS:
        op.execute(f"DROP POLICY base ON {table}")
    for table in ("account", "price_book"):
        op.execute(f"DROP POLICY all_accounts ON {table}")
    # The role stays: it belongs to the server, and other databases may use it.
    op.execute(f"REVOKE ALL ON ALL TABLES IN SCHEMA public FROM {SERVICE}")
    op.execute(f"REVOKE USAGE ON SCHEMA public FROM {SERVICE}")
