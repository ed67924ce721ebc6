from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.catalogue import CatalogueRows, catalogue_digest, demo_catalogue, demo_rows, make_catalogue

if TYPE_CHECKING:
    from collections.abc import Sequence

LISTS = ("materials", "appliances", "screens", "brackets", "fixing_loads", "labour_rates", "trades", "prices")


def with_rows(name: str, rows: Sequence[msgspec.Struct]) -> CatalogueRows:
    return msgspec.structs.replace(demo_rows(), **{name: tuple(rows)})


def test_revision_names_account_book_and_day() -> None:
    account, book, day, digest = demo_catalogue().revision.split(":")

    assert ("demo", "demo", "2026-09-01") == (account, book, day)
    assert catalogue_digest(demo_catalogue()) == digest


@pytest.mark.parametrize("name", LISTS)
def test_order_of_rows_changes_nothing(name: str) -> None:
    turned = make_catalogue(with_rows(name, list(reversed(getattr(demo_rows(), name)))))

    assert demo_catalogue() == turned
    assert msgspec.json.encode(demo_catalogue()) == msgspec.json.encode(turned)


@pytest.mark.parametrize("name", LISTS)
def test_one_row_less_is_another_revision(name: str) -> None:
    assert demo_catalogue().revision != make_catalogue(with_rows(name, getattr(demo_rows(), name)[1:])).revision


def test_any_field_changed_is_another_revision() -> None:
    """Each field of each kind of row, changed by the least that its type allows."""
    revisions = {demo_catalogue().revision}
    changed_count = 0
    for name in LISTS:
        first, *rest = getattr(demo_rows(), name)
        for field in first.__struct_fields__:
            changed = msgspec.structs.replace(first, **{field: other(getattr(first, field))})
            revisions.add(make_catalogue(with_rows(name, [changed, *rest])).revision)
            changed_count += 1

    assert changed_count + 1 == len(revisions)


@pytest.mark.parametrize("field", demo_rows().account.__struct_fields__)
def test_any_setting_of_the_account_changed_is_another_revision(field: str) -> None:
    account = demo_rows().account
    changed = msgspec.structs.replace(account, **{field: other(getattr(account, field))})

    assert demo_catalogue().revision != make_catalogue(msgspec.structs.replace(demo_rows(), account=changed)).revision


@pytest.mark.parametrize("field", ["price_book", "effective_from"])
def test_another_book_or_day_is_another_revision(field: str) -> None:
    assert demo_catalogue().revision != make_catalogue(msgspec.structs.replace(demo_rows(), **{field: "other"})).revision


def test_a_later_row_of_the_same_key_holds() -> None:
    first = demo_rows().materials[0]
    own = msgspec.structs.replace(first, description="our own")

    made = make_catalogue(with_rows("materials", [*demo_rows().materials, own]))

    assert own == made.materials[first.code]
    assert len(demo_rows().materials) == len(made.materials)


def test_digest_does_not_hang_on_the_order_of_maps() -> None:
    turned = msgspec.structs.replace(demo_catalogue(), screens=dict(reversed(demo_catalogue().screens.items())))

    assert catalogue_digest(demo_catalogue()) == catalogue_digest(turned)


def test_steps_of_a_price_rise() -> None:
    first = demo_rows().prices[0]
    steps = [msgspec.structs.replace(first, from_count=count) for count in (50, 1, 10)]

    made = make_catalogue(with_rows("prices", [*steps, *demo_rows().prices[1:]]))

    assert (1, 10, 50) == tuple(step.from_count for step in made.prices[first.code])


def other(value: object) -> object:
    """Another value of the same kind."""
    match value:
        case bool():
            return not value
        case int() | float():
            return value + 1
        case tuple():
            return (*value, "other")
        case None:
            return 1.5
        case _:
            return f"{value}x"
