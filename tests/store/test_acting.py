"""Row-level security and rights: what the service's own user cannot do, and what a query without its filter cannot see."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from sqlalchemy import delete, func, insert, select, text, update
from sqlalchemy.exc import DBAPIError

from service.catalogue import demo_catalogue
from service.store import access_tables, load_demo, make_engine, migrate, read_catalogue, tables
from service.store.acting import ALL_ACCOUNTS, act_for
from service.store.keys import create_key
from tests.postgres import as_service, as_user, copy_of, run_sql, shared_server
from tests.store.shops import NORTH, SOUTH, engine_of, open_shops, server_key

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Iterator

    from sqlalchemy import Executable, Table
    from sqlalchemy.ext.asyncio import AsyncEngine

pytestmark = pytest.mark.anyio
ITEMS = (
    tables.material, tables.appliance, tables.screen, tables.bracket, tables.labour_rate, tables.trade, tables.fixing_load,
)  # fmt: skip
# Also those that later migrations add.
OF_ACCOUNT = tuple(table for table in tables.METADATA.sorted_tables if "account" in table.c)
CLOSED = tuple(table for table in tables.METADATA.sorted_tables if table is not tables.catalogue_version)
FILLED = {
    tables.account, tables.screen, tables.price_book, tables.price_book_revision,
    access_tables.shop, access_tables.shop_text, access_tables.access_key, access_tables.access_key_use,
}  # fmt: skip
NAMES_ONLY = {tables.account, tables.price_book, access_tables.shop, access_tables.access_key}


@pytest.fixture
async def engine(demo_database_url: str) -> AsyncIterator[AsyncEngine]:
    """The service's own user on a database with the demo, North and South, who have a key each."""
    await open_shops(demo_database_url)
    async with engine_of(as_service(demo_database_url)) as engine:
        for account in (NORTH, SOUTH):
            made = await create_key(engine, account, server_key())
            use = {"account": account, "key_id": made.row.key_id, "last_used_at": func.now()}
            words = {"account": account, "text_name": "greeting", "locale": "en-GB", "words": account}
            async with engine.begin() as connection:
                await act_for(connection, account)
                await connection.execute(insert(access_tables.access_key_use).values(use))
                await connection.execute(insert(access_tables.shop_text).values(words))
        yield engine


async def accounts_in(engine: AsyncEngine, table: Table, acting: str | None) -> set[str]:
    """Whose rows a query without any filter finds."""
    query = select(table.c.account).distinct()
    async with engine.begin() as connection:
        if acting is not None:
            await act_for(connection, acting)
        return set((await connection.execute(query)).scalars())


@pytest.mark.parametrize("table", CLOSED, ids=str)
async def test_a_query_that_acts_for_nobody_finds_nothing(engine: AsyncEngine, table: Table) -> None:
    async with engine.connect() as connection:
        assert [] == (await connection.execute(select(table))).all()


async def test_a_query_without_its_filter_finds_the_accounts_own_rows(engine: AsyncEngine) -> None:
    for table in OF_ACCOUNT:
        expected = {NORTH, "demo"} if table in ITEMS else {NORTH}
        found = await accounts_in(engine, table, NORTH)

        assert found <= expected, table.name
        assert NORTH in found or table not in FILLED, table.name
    assert {NORTH, "demo"} == await accounts_in(engine, tables.screen, NORTH)


async def test_prices_of_others_are_closed_too(engine: AsyncEngine) -> None:
    for account, amount_minor in ((NORTH, 111), (SOUTH, 222)):
        async with engine.begin() as connection:
            await act_for(connection, account)
            assert {amount_minor} == set((await connection.execute(select(tables.price.c.amount_minor))).scalars())


async def test_what_acts_for_all_sees_names_and_nothing_else(engine: AsyncEngine) -> None:
    """Which revisions there are may be seen too: the keeper follows them. Their prices may not."""
    for table in {*OF_ACCOUNT} - {tables.price_book_revision}:
        expected = {"demo", NORTH, SOUTH} if table in NAMES_ONLY else set()
        expected -= {"demo"} if table is access_tables.access_key else set()

        assert expected == await accounts_in(engine, table, ALL_ACCOUNTS), table.name
    async with engine.begin() as connection:
        await act_for(connection, ALL_ACCOUNTS)
        assert [] == (await connection.execute(select(tables.price))).all()


@pytest.mark.parametrize("table", ITEMS, ids=str)
async def test_what_an_account_stands_on_can_be_read_not_changed(engine: AsyncEngine, table: Table) -> None:
    async with engine.begin() as connection:
        await act_for(connection, NORTH)
        there = (await connection.execute(select(func.count()).where(table.c.account == "demo"))).scalar_one()
        changed = await connection.execute(update(table).where(table.c.account == "demo").values(account=NORTH))
        gone = await connection.execute(delete(table).where(table.c.account == "demo"))

    assert there > 0
    assert (0, 0) == (changed.rowcount, gone.rowcount)


@pytest.mark.parametrize(
    "statement",
    [
        update(tables.screen).values(standing="planted"),
        update(tables.price).values(amount_minor=1),
        delete(tables.price),
        delete(tables.price_book_revision),
        update(access_tables.shop).values(name="planted"),
        update(access_tables.access_key).values(revoked_at=func.now()),
    ],
)
async def test_a_change_without_its_filter_changes_the_accounts_own_rows(
    engine: AsyncEngine, demo_database_url: str, statement: Executable
) -> None:
    async with engine_of(demo_database_url) as owner:
        before = await _rows_of_others(owner)
        async with engine.begin() as connection:
            await act_for(connection, NORTH)
            assert 0 < (await connection.execute(statement)).rowcount

        assert before == await _rows_of_others(owner)


async def _rows_of_others(owner: AsyncEngine) -> list[object]:
    """All rows but North's, by the server's administrator, whom no policy holds."""
    async with owner.connect() as connection:
        found: list[object] = []
        for table in OF_ACCOUNT:
            found += (await connection.execute(select(table).where(table.c.account != NORTH))).all()
        revisions = select(tables.price_book_revision.c.revision_id).where(tables.price_book_revision.c.account != NORTH)
        return [*found, *(await connection.execute(select(tables.price).where(tables.price.c.revision_id.in_(revisions)))).all()]


@pytest.mark.parametrize(
    "statement",
    [
        insert(tables.trade).values(account=SOUTH, trade="x", charge_per_hour_minor=1, currency="GBP", standing="x"),
        update(tables.screen).where(tables.screen.c.model == f"OWN-{NORTH}").values(account=SOUTH),
        insert(access_tables.shop_text).values(account=SOUTH, text_name="x", locale="en", words="x"),
        insert(access_tables.access_key).values(
            account=SOUTH, key_id="0" * 12, kind="server", label="", scopes=["admin"], secret_digest=b"x" * 32
        ),
    ],
)
async def test_a_row_cannot_be_written_for_another_account(engine: AsyncEngine, statement: Executable) -> None:
    async with engine.begin() as connection:
        await act_for(connection, NORTH)
        with pytest.raises(DBAPIError, match="violates row-level security policy"):
            await connection.execute(statement)


async def test_a_price_cannot_be_written_into_anothers_revision(engine: AsyncEngine) -> None:
    async with engine.begin() as connection:
        await act_for(connection, SOUTH)
        revision_id = (await connection.execute(select(tables.price_book_revision.c.revision_id))).scalar_one()
        await act_for(connection, NORTH)
        price = {"code": "X", "from_count": 1, "amount_minor": 1, "currency": "GBP", "supplier": "", "lead_days": 0}
        with pytest.raises(DBAPIError, match="violates row-level security policy"):
            await connection.execute(insert(tables.price).values(revision_id=revision_id, **price))


@pytest.mark.parametrize(
    "statement",
    [
        "create table planted (x int)",
        "create function planted() returns int language sql return 1",
        "alter table material add column planted text",
        "alter table material disable row level security",
        "alter table material no force row level security",
        "drop table price",
        "drop policy own on price",
        "create policy planted on price using (true)",
        "truncate price",
        "update catalogue_version set version_count = 0",
        "update account set base_account = 'south'",
        "update shop set status = 'active'",
        "update access_key set scopes = '{admin}'",
        "update access_key set secret_digest = '\\x00'",
        "insert into shop (account, name) values ('north', 'x')",
        "delete from account",
        "delete from access_key",
        "set role inglewright",
        "set session authorization inglewright",
        "copy material to program 'true'",
        "update alembic_version set version_num = 'x'",
    ],
)
async def test_the_service_cannot_change_the_schema_or_its_own_rights(engine: AsyncEngine, statement: str) -> None:
    async with engine.begin() as connection:
        await act_for(connection, NORTH)
        with pytest.raises(DBAPIError, match=r"permission denied|must be (owner|able)|only roles with"):
            await connection.exec_driver_sql(statement)


async def test_a_transaction_leaves_nothing_behind_for_the_next(engine: AsyncEngine) -> None:
    async with engine.begin() as connection:
        await act_for(connection, NORTH)
        process = (await connection.execute(text("select pg_backend_pid()"))).scalar_one()
    async with engine.connect() as connection:
        assert process == (await connection.execute(text("select pg_backend_pid()"))).scalar_one()
        assert [] == (await connection.execute(select(tables.account))).all()


async def test_every_table_of_an_account_is_closed_also_to_its_owner(database_url: str) -> None:
    """Read from the database, so that a table that a later migration adds is held to it too."""
    query = """
        select c.relname from pg_class c
        where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p')
          and not (c.relrowsecurity and c.relforcerowsecurity)
    """
    async with engine_of(database_url) as engine, engine.connect() as connection:
        open_tables = set((await connection.exec_driver_sql(query)).scalars())

    assert {"alembic_version", "catalogue_version"} == open_tables


@pytest.fixture
def plain_owner_url() -> Iterator[str]:
    """An empty database whose owner is no administrator of the server."""
    name = "plain_owner"
    shared_server()
    run_sql(f"create role {name} login")
    with copy_of("template0") as url:
        run_sql(f'alter database "{url.partition("?")[0].rpartition("/")[2]}" owner to {name}')
        yield as_user(url, name)
    run_sql(f"drop role {name}")


async def test_an_owner_who_is_no_administrator_can_migrate_and_load_and_is_held_to_the_policies(plain_owner_url: str) -> None:
    import asyncio

    await asyncio.to_thread(migrate, plain_owner_url)
    owner, service = make_engine(plain_owner_url), make_engine(as_service(plain_owner_url))
    loaded = await load_demo(owner)
    read = await read_catalogue(service)
    async with owner.connect() as connection:
        forgotten = [row for table in CLOSED for row in await connection.execute(select(table))]
    await owner.dispose()
    await service.dispose()

    assert loaded
    assert demo_catalogue() == read
    assert [] == forgotten
