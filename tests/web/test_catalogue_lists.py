"""The four lists of the catalogue."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec
import pytest

from service.catalogue import demo_catalogue
from tests.web.client import application, client_of
from tests.web.doubles import demo_keeper

if TYPE_CHECKING:
    from collections.abc import Callable

    import httpx

pytestmark = pytest.mark.anyio
SIZES = {
    "materials": len(demo_catalogue().materials),
    "appliances": len(demo_catalogue().appliances),
    "screens": len(demo_catalogue().screens),
    "brackets": len(demo_catalogue().brackets),
}


@pytest.mark.parametrize("name", SIZES)
async def test_pages_end_to_end_are_the_whole_list_in_order(client: httpx.AsyncClient, name: str) -> None:
    key = "code" if name == "materials" else "model"
    found: list[str] = []
    address = f"/v1/{name}?limit=3"
    while True:
        page = (await client.get(address)).json()
        found += [item[key] for item in page["items"]]
        if page["next_cursor"] is None:
            break
        address = f"/v1/{name}?limit=3&cursor={page['next_cursor']}"

    assert len(found) == SIZES[name]
    assert sorted(getattr(demo_catalogue(), name)) == found


@pytest.mark.parametrize("name", SIZES)
async def test_each_item_can_be_had_by_its_code(client: httpx.AsyncClient, name: str) -> None:
    (item,) = (await client.get(f"/v1/{name}?limit=1")).json()["items"]
    code = item["code" if name == "materials" else "model"]
    answer = await client.get(f"/v1/{name}/{code}")

    assert (200, item) == (answer.status_code, answer.json())
    assert answer.headers["catalogue-revision"] == demo_catalogue().revision


async def test_materials_carry_their_price_steps_as_money(client: httpx.AsyncClient) -> None:
    """The demo's price file: BD-2012M costs 19.80 from 1 sheet, 18.81 from 10."""
    material = (await client.get("/v1/materials/BD-2012M")).json()

    assert [(1, {"amount": "19.80", "currency": "GBP"}), (10, {"amount": "18.81", "currency": "GBP"})] == [
        (step["from_count"], step["price"]) for step in material["prices"]
    ]


async def test_materials_of_a_kind(client: httpx.AsyncClient) -> None:
    kinds = {item["kind"] for item in (await client.get("/v1/materials?kind=board&limit=200")).json()["items"]}
    none = (await client.get("/v1/materials?kind=marble")).json()

    assert kinds == {"board"}
    assert none["items"] == []
    assert none["next_cursor"] is None


async def test_fires_by_open_ends_and_greatest_width(client: httpx.AsyncClient) -> None:
    found = (await client.get("/v1/appliances?open_ends_count=2&greatest_width_mm=1335")).json()["items"]
    expected = [
        row.model for row in demo_catalogue().appliances.values() if row.open_ends_count == 2 and row.body_width_mm <= 1335
    ]

    assert sorted(expected) == [item["model"] for item in found]
    assert "AF-302" in expected


@pytest.mark.parametrize(
    ("path", "rows", "fits"),
    [
        ("screens?least_diagonal_in=50&greatest_diagonal_in=65", "screens", lambda row: 50 <= row.diagonal_in <= 65),
        (
            "screens?greatest_width_mm=1200&greatest_height_mm=600",
            "screens",
            lambda row: row.body_width_mm <= 1200 and row.body_height_mm <= 600,
        ),
        ("brackets?kind=fixed&least_rating_kg=40", "brackets", lambda row: row.kind == "fixed" and row.rating_kg >= 40),
        ("brackets?greatest_depth_mm=38", "brackets", lambda row: row.depth_mm <= 38),
        (
            "appliances?greatest_depth_mm=200&greatest_height_mm=500",
            "appliances",
            lambda row: row.body_depth_mm <= 200 and row.body_height_mm <= 500,
        ),
        (
            "materials?kind=timber&least_length_mm=3000&greatest_length_mm=4200",
            "materials",
            lambda row: row.kind == "timber" and 3000 <= (row.length_mm or 0) <= 4200,
        ),
    ],
)
async def test_things_by_size(client: httpx.AsyncClient, path: str, rows: str, fits: Callable[[Any], bool]) -> None:
    found = (await client.get(f"/v1/{path}&limit=200")).json()["items"]
    expected = sorted(code for code, row in getattr(demo_catalogue(), rows).items() if fits(row))

    assert expected == [item.get("code") or item["model"] for item in found]
    assert expected


async def test_what_is_held_need_not_be_sent_again(client: httpx.AsyncClient) -> None:
    first = await client.get("/v1/materials?limit=5")
    tag = first.headers["etag"]
    again = await client.get("/v1/materials?limit=5", headers={"if-none-match": tag})
    other = await client.get("/v1/materials?limit=6", headers={"if-none-match": tag})
    stale = await client.get("/v1/materials?limit=5", headers={"if-none-match": '"old"'})

    assert (304, b"") == (again.status_code, again.content)
    assert again.headers["etag"] == tag
    assert again.headers["cache-control"] == first.headers["cache-control"] == "private, no-cache"
    assert (200, 200) == (other.status_code, stale.status_code)


async def test_a_new_revision_has_new_tags() -> None:
    keeper = demo_keeper()
    async with client_of(application(keeper=keeper)) as client:
        before = await client.get("/v1/screens")
        keeper.put(msgspec.structs.replace(demo_catalogue(), revision="next"))
        after = await client.get("/v1/screens", headers={"if-none-match": before.headers["etag"]})

    assert after.status_code == 200
    assert after.json()["catalogue_revision"] == after.headers["catalogue-revision"] == "next"


async def test_head_is_get_without_the_body(client: httpx.AsyncClient) -> None:
    for path in ("/v1/materials", "/v1/materials/TM-1035A", "/health/live", "/openapi.json", "/docs"):
        got, head = await client.get(path), await client.head(path)

        assert (200, b"") == (head.status_code, head.content)
        assert {name: text for name, text in got.headers.items() if name != "x-request-id"} == {
            name: text for name, text in head.headers.items() if name != "x-request-id"
        }


async def test_all_codes_of_the_demo_can_be_asked_for() -> None:
    """A code that the pattern refuses could never be had by its address."""
    async with client_of(application()) as client:
        for name in SIZES:
            for code in getattr(demo_catalogue(), name):
                assert (await client.get(f"/v1/{name}/{code}")).status_code == 200
