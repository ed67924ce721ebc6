from __future__ import annotations

import pytest

from service.catalogue import demo_catalogue
from service.store import NoCatalogueError, read_catalogue
from service.store.accounts import FIRST_BOOK, AccountExistsError, NewShop, ShopStatus, create_shop, list_shops
from tests.postgres import as_service
from tests.store.shops import NORTH, ORIGIN, SOUTH, engine_of, open_shops

pytestmark = pytest.mark.anyio


async def test_a_shop_begins_with_the_settings_and_items_of_its_base(demo_database_url: str) -> None:
    await open_shops(demo_database_url)
    async with engine_of(as_service(demo_database_url)) as engine:
        shops = await list_shops(engine)
        north = await read_catalogue(engine, NORTH, FIRST_BOOK)
        south = await read_catalogue(engine, SOUTH, FIRST_BOOK)

    assert ["demo", NORTH, SOUTH] == [shop.account for shop in shops]
    assert (None, "demo", "demo") == tuple(shop.base_account for shop in shops)
    assert (ORIGIN[NORTH],) == shops[1].origins
    assert {ShopStatus.ACTIVE} == {shop.status for shop in shops}
    assert demo_catalogue().account.margin_ratio == north.account.margin_ratio
    assert demo_catalogue().materials == north.materials == south.materials
    assert {*demo_catalogue().screens, "OWN-north"} == {*north.screens}
    assert {111} == {step.amount_minor for steps in north.prices.values() for step in steps}
    assert {222} == {step.amount_minor for steps in south.prices.values() for step in steps}


async def test_a_name_is_taken_once_and_a_base_must_be_there(demo_database_url: str) -> None:
    async with engine_of(demo_database_url) as owner:
        await create_shop(owner, NewShop(account=NORTH, name="North", base_account="demo"))
        for account in ("demo", NORTH):
            with pytest.raises(AccountExistsError, match=f"'{account}' already"):
                await create_shop(owner, NewShop(account=account, name="x", base_account="demo"))
        with pytest.raises(NoCatalogueError, match="no account 'west'"):
            await create_shop(owner, NewShop(account=SOUTH, name="South", base_account="west"))

        assert ["demo", NORTH] == [shop.account for shop in await list_shops(owner)]
