"""What a row may not hold. Each refusal names its constraint, which names the column."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec
import pytest
from sqlalchemy import insert
from sqlalchemy.exc import IntegrityError

from service.catalogue import demo_rows
from service.store import make_engine, tables
from service.store.columns import checks_of, columns_of

if TYPE_CHECKING:
    from sqlalchemy import Table

pytestmark = pytest.mark.anyio
NAN = float("nan")
INFINITY = float("inf")
MATERIAL = msgspec.structs.asdict(demo_rows().materials[0]) | {"account": "demo", "code": "NEW-1"}
APPLIANCE = msgspec.structs.asdict(demo_rows().appliances[0]) | {"account": "demo", "model": "NEW-1"}
SHOP = msgspec.structs.asdict(demo_rows().account) | {"account": "other"}


class Planted(msgspec.Struct, frozen=True, kw_only=True):
    code: str
    name: str | None = None
    width_mm: float
    share_ratio: float
    part_count: int
    amount_minor: int
    fitted: bool
    options: tuple[str, ...] = ()


class Unheard(msgspec.Struct):
    parts: dict[str, str]


def test_columns_follow_the_struct() -> None:
    told = [f"{column.name} {column.type} {column.nullable}" for column in columns_of(Planted, ("code",))]

    expected = [
        'code TEXT COLLATE "C" False',
        "name TEXT True",
        "width_mm DOUBLE False",
        "share_ratio DOUBLE False",
        "part_count INTEGER False",
        "amount_minor BIGINT False",
        "fitted BOOLEAN False",
        "options ARRAY False",
    ]
    assert expected == told


def test_checks_follow_the_names() -> None:
    told = {str(check.name): str(check.sqltext) for check in checks_of(Planted)}

    expected = {
        "code": "code ~ '^[A-Za-z0-9_-]{1,32}$'",
        "name": "char_length(name) <= 400",
        "width_mm": "width_mm between 0 and 1000000000",
        "share_ratio": "share_ratio between 0 and 1",
        "part_count": "part_count between 0 and 1000000000",
        "amount_minor": "amount_minor between 0 and 1000000000000",
    }
    assert expected == told


def test_a_type_without_a_column_is_refused() -> None:
    with pytest.raises(TypeError, match="no column type for parts"):
        list(columns_of(Unheard, ()))


def test_what_is_no_struct_is_refused() -> None:
    with pytest.raises(TypeError, match="is not a struct"):
        list(columns_of(int, ()))  # type: ignore[arg-type]  # the point of the test


@pytest.mark.parametrize(
    ("table", "row", "constraint"),
    [
        (tables.material, MATERIAL | {"mass_kg": NAN}, "ck_material_mass_kg"),
        (tables.material, MATERIAL | {"mass_kg": INFINITY}, "ck_material_mass_kg"),
        (tables.material, MATERIAL | {"length_mm": -0.1}, "ck_material_length_mm"),
        (tables.material, MATERIAL | {"waste_ratio": 1.01}, "ck_material_waste_ratio"),
        (tables.material, MATERIAL | {"pack_count": 0}, "ck_material_pack_count"),
        (tables.material, MATERIAL | {"code": "TM 1"}, "ck_material_code"),
        (tables.material, MATERIAL | {"code": "TM-1\n"}, "ck_material_code"),
        (tables.material, MATERIAL | {"code": "T" * 33}, "ck_material_code"),
        (tables.material, MATERIAL | {"description": "x" * 401}, "ck_material_description"),
        (tables.material, MATERIAL | {"account": "nobody"}, "fk_material_account_account"),
        (tables.material, MATERIAL | {"code": demo_rows().materials[0].code}, "pk_material"),
        (tables.appliance, APPLIANCE | {"open_ends_count": 3}, "ck_appliance_open_ends_count_greatest"),
        (tables.appliance, APPLIANCE | {"open_end": "both"}, "ck_appliance_open_end"),
        (tables.account, SHOP | {"currency": "gbp"}, "ck_account_currency"),
        (tables.account, SHOP | {"tax_rounding": "never"}, "ck_account_tax_rounding"),
        (tables.account, SHOP | {"delivery_minor": -1}, "ck_account_delivery_minor"),
        (tables.account, SHOP | {"base_account": "other"}, "ck_account_base_account_differs"),
        (
            tables.fixing_load,
            msgspec.structs.asdict(demo_rows().fixing_loads[-1]) | {"account": "demo"},  # two nulls in its key
            "uq_fixing_load_account_code_wall_units_embedment_mm",
        ),
        (
            tables.price_book,
            {"account": "demo", "price_book": "second", "is_default": True},
            "ix_price_book_one_default",
        ),
    ],
)
async def test_nonsense_is_refused(demo_database_url: str, table: Table, row: dict[str, Any], constraint: str) -> None:
    engine = make_engine(demo_database_url)

    with pytest.raises(IntegrityError, match=f'"{constraint}"'):
        async with engine.begin() as connection:
            await connection.execute(insert(table), [row])
    await engine.dispose()


@pytest.mark.parametrize(("table", "row"), [(tables.material, MATERIAL), (tables.appliance, APPLIANCE), (tables.account, SHOP)])
async def test_the_same_rows_without_nonsense_are_taken(demo_database_url: str, table: Table, row: dict[str, Any]) -> None:
    engine = make_engine(demo_database_url)
    async with engine.begin() as connection:
        done = await connection.execute(insert(table).values(row))
    await engine.dispose()

    assert 1 == done.rowcount
