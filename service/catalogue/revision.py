"""Rows of a shop to one catalogue value in a canonical order, named by a revision that freezes all of its content."""

from __future__ import annotations

import hashlib
from itertools import groupby

import msgspec

from service.catalogue.materials import FixingLoad, Material
from service.catalogue.models import Appliance, Bracket, Screen
from service.catalogue.rates import Account, LabourRate, PriceStep, Trade
from service.catalogue.snapshot import Catalogue

DIGEST_LENGTH_COUNT = 16  # hexadecimal digits of SHA-256 kept: 64 bits tell the revisions of one shop apart


class CatalogueRows(msgspec.Struct, frozen=True, kw_only=True):
    """What a shop's files or tables hold, in any order; of two rows with one key the later one holds."""

    account: Account
    price_book: str
    effective_from: str  # RFC 3339 full-date of the price book's revision
    materials: tuple[Material, ...]
    appliances: tuple[Appliance, ...]
    screens: tuple[Screen, ...]
    brackets: tuple[Bracket, ...]
    fixing_loads: tuple[FixingLoad, ...]
    labour_rates: tuple[LabourRate, ...]
    trades: tuple[Trade, ...]
    prices: tuple[PriceStep, ...]


def fixing_load_key(row: FixingLoad) -> tuple[str, str, str, float]:
    """What one row of working loads is for: fixing, wall, state of its units, embedment in mm (0: not stated)."""
    return (row.code, row.wall, row.units or "", row.embedment_mm or 0.0)


def labour_rate_key(row: LabourRate) -> tuple[str, str, str, str]:
    """Task, term, input and trade of one labour rate."""
    return (row.task, row.term, row.input, row.trade)


def make_catalogue(rows: CatalogueRows) -> Catalogue:
    """The catalogue of these rows: maps and lists sorted by key, the revision made from the content."""
    steps = {(step.code, step.currency, step.from_count): step for step in rows.prices}
    loads = {fixing_load_key(row): row for row in rows.fixing_loads}
    rates = {labour_rate_key(row): row for row in rows.labour_rates}
    catalogue = Catalogue(
        revision="",
        price_book=rows.price_book,
        account=rows.account,
        materials=_sorted({row.code: row for row in rows.materials}),
        appliances=_sorted({row.model: row for row in rows.appliances}),
        screens=_sorted({row.model: row for row in rows.screens}),
        brackets=_sorted({row.model: row for row in rows.brackets}),
        fixing_loads=tuple(_sorted(loads).values()),
        labour_rates=tuple(_sorted(rates).values()),
        trades=_sorted({row.trade: row for row in rows.trades}),
        prices={code: tuple(group) for code, group in groupby(_sorted(steps).values(), key=lambda step: step.code)},
    )
    name = f"{rows.account.account}:{rows.price_book}:{rows.effective_from}:{catalogue_digest(catalogue)}"
    return msgspec.structs.replace(catalogue, revision=name)


def catalogue_digest(catalogue: Catalogue) -> str:
    """Digest of all of a catalogue but its revision text: equal contents give equal digests, any change another.

    Source: SHA-256, FIPS 180-4, over the JSON form with its keys sorted.
    """
    content = msgspec.json.encode(msgspec.structs.replace(catalogue, revision=""), order="sorted")
    return hashlib.sha256(content).hexdigest()[:DIGEST_LENGTH_COUNT]


def _sorted[K: (str, tuple[str, str, int], tuple[str, str, str, str], tuple[str, str, str, float]), V](
    rows: dict[K, V],
) -> dict[K, V]:
    return dict(sorted(rows.items(), key=lambda item: item[0]))
