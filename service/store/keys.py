"""Keys of an account in the database: made, listed, rotated with an overlap, revoked. Each acts for the one account only."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING, Any, Final

import msgspec
from sqlalchemy import and_, func, insert, or_, select, update
from sqlalchemy.exc import IntegrityError

from service.store import access_tables
from service.store.access import KeyRow, KeyText, MadeKey, NewKey, digest_of, new_key_text, write_key
from service.store.acting import act_for
from service.store.faults import NoKeyError, NoShopError, SpentKeyError, TooManyKeysError

if TYPE_CHECKING:
    from sqlalchemy import Select
    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

MOST_LIVE_COUNT: Final = 100  # house choice: of one account
MOST_LISTED_COUNT: Final = 1_000  # ended ones beyond it are not listed; the newest come first
_KEY: Final = access_tables.access_key.c
_USE: Final = access_tables.access_key_use.c
_IS_LIVE: Final = and_(_KEY.revoked_at.is_(None), or_(_KEY.expires_at.is_(None), _KEY.expires_at > func.now()))


async def create_key(engine: AsyncEngine, account: str, new: NewKey) -> MadeKey:
    """Make a key and give its text, which nobody can have again.

    Raises:
        NoShopError: there is no such account.
        TooManyKeysError: it has `MOST_LIVE_COUNT` live ones.
    """
    async with engine.begin() as connection:
        await _begin(connection, account)
        return await _make(connection, account, new)


async def list_keys(engine: AsyncEngine, account: str) -> tuple[KeyRow, ...]:
    """The keys of an account, the newest first; those that have ended too."""
    async with engine.begin() as connection:
        await act_for(connection, account)
        rows = await connection.execute(_rows(account).limit(MOST_LISTED_COUNT))
        return tuple(_row(row) for row in rows.mappings())


async def rotate_key(engine: AsyncEngine, account: str, key_id: str, overlap: dt.timedelta) -> MadeKey:
    """Make a key of the same kind and scopes in the place of one, which goes on for the overlap, or as long as it had.

    Raises:
        NoShopError, NoKeyError: the account has no such key.
        SpentKeyError: it has ended, or was rotated before.
    """
    async with engine.begin() as connection:
        await _begin(connection, account)
        old = await _find(connection, account, key_id)
        now = (await connection.execute(select(func.now()))).scalar_one()
        if old.revoked_at or (old.expires_at and old.expires_at <= now):
            raise SpentKeyError(key_id, "has ended")
        new = NewKey(kind=old.kind, label=old.label, scopes=old.scopes, expires_at=old.expires_at)
        try:
            made = await _make(connection, account, new, rotated_from=key_id)
        except IntegrityError as error:
            raise SpentKeyError(key_id, "was rotated before") from error
        end = min(now + overlap, old.expires_at or now + overlap)
        # An end must lie after the beginning, also of a key that was made in this very moment.
        await _change(connection, account, key_id, {"expires_at": max(end, old.created_at + dt.timedelta(microseconds=1))})
        return made


async def revoke_key(engine: AsyncEngine, account: str, key_id: str) -> KeyRow:
    """End a key now; one that was revoked stays as it is.

    Raises:
        NoKeyError: the account has no such key.
    """
    async with engine.begin() as connection:
        await act_for(connection, account)
        await _change(connection, account, key_id, {"revoked_at": func.coalesce(_KEY.revoked_at, func.now())})
        return await _find(connection, account, key_id)


async def _begin(connection: AsyncConnection, account: str) -> None:
    """Act for the account; one maker of its keys at a time, so that the bound of their number holds."""
    await act_for(connection, account)
    await connection.execute(select(func.pg_advisory_xact_lock(func.hashtextextended(f"keys:{account}", 0))))
    shop = select(access_tables.shop.c.account).where(access_tables.shop.c.account == account)
    if (await connection.execute(shop)).first() is None:
        raise NoShopError(account)


async def _make(connection: AsyncConnection, account: str, new: NewKey, rotated_from: str | None = None) -> MadeKey:
    live = select(func.count()).where(_KEY.account == account, _IS_LIVE)
    if (await connection.execute(live)).scalar_one() >= MOST_LIVE_COUNT:
        raise TooManyKeysError(account)
    key = new_key_text(new.kind)
    await connection.execute(insert(access_tables.access_key).values(_values(account, new, key) | {"rotated_from": rotated_from}))
    return MadeKey(row=await _find(connection, account, key.key_id), key=write_key(key))


def _values(account: str, new: NewKey, key: KeyText) -> dict[str, Any]:
    return {
        "key_id": key.key_id,
        "account": account,
        "kind": new.kind,
        "label": new.label,
        "scopes": sorted(set(new.scopes)),
        "secret_digest": digest_of(key),
        "expires_at": new.expires_at,
    }


async def _change(connection: AsyncConnection, account: str, key_id: str, values: dict[str, Any]) -> None:
    where = (_KEY.account == account, _KEY.key_id == key_id)
    await connection.execute(update(access_tables.access_key).where(*where).values(values))


async def _find(connection: AsyncConnection, account: str, key_id: str) -> KeyRow:
    row = (await connection.execute(_rows(account).where(_KEY.key_id == key_id))).mappings().one_or_none()
    if row is None:
        raise NoKeyError(key_id)
    return _row(row)


def _rows(account: str) -> Select[Any]:
    listed = [_USE.last_used_at if name == "last_used_at" else _KEY[name] for name in KeyRow.__struct_fields__]
    joined = access_tables.access_key.outerjoin(access_tables.access_key_use, _USE.key_id == _KEY.key_id)
    return select(*listed).select_from(joined).where(_KEY.account == account).order_by(_KEY.created_at.desc(), _KEY.key_id)


def _row(row: Any) -> KeyRow:  # noqa: ANN401 - a row of the driver
    return msgspec.convert({name: row[name] for name in KeyRow.__struct_fields__}, KeyRow)
