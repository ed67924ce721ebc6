"""The invented demo catalogue that travels with the service (`service/catalogue/demo/*.csv`); nothing in it is real."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from service.catalogue.materials import FixingLoad, Material
from service.catalogue.models import Appliance, Bracket, Screen
from service.catalogue.rates import Account, LabourRate, PriceStep, Trade
from service.catalogue.revision import CatalogueRows, make_catalogue
from service.catalogue.rows import read_rows

if TYPE_CHECKING:
    from service.catalogue.snapshot import Catalogue

DEMO_FILES = ("accounts", "appliances", "brackets", "fixing_loads", "labour", "materials", "prices", "screens", "trades")


def demo_text(name: str) -> str:
    """Text of one demo file, by name without ending."""
    return files("service.catalogue").joinpath("demo", f"{name}.csv").read_text("utf-8")


@cache
def demo_rows() -> CatalogueRows:
    """The demo files as typed rows, not yet put in order.

    Raises:
        RowFaultsError: with every unreadable cell.
    """
    prices = read_rows(demo_text("prices"), PriceStep)
    return CatalogueRows(
        account=read_rows(demo_text("accounts"), Account)[0],
        price_book="demo",
        effective_from=max(step.valid_from for step in prices),
        materials=read_rows(demo_text("materials"), Material),
        appliances=read_rows(demo_text("appliances"), Appliance),
        screens=read_rows(demo_text("screens"), Screen),
        brackets=read_rows(demo_text("brackets"), Bracket),
        fixing_loads=read_rows(demo_text("fixing_loads"), FixingLoad),
        labour_rates=read_rows(demo_text("labour"), LabourRate),
        trades=read_rows(demo_text("trades"), Trade),
        prices=prices,
    )


@cache
def demo_catalogue() -> Catalogue:
    """The demo data as one catalogue value, without a database; the database gives the same value, revision and all."""
    return make_catalogue(demo_rows())
