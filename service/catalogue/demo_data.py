"""The invented demo catalogue that travels with the service (`service/catalogue/demo/*.csv`); nothing in it is real."""

from __future__ import annotations

import hashlib
from functools import cache
from importlib.resources import files
from itertools import groupby

from service.catalogue.materials import FixingLoad, Material
from service.catalogue.models import Appliance, Bracket, Screen
from service.catalogue.rates import Account, LabourRate, PriceStep, Trade
from service.catalogue.rows import read_rows
from service.catalogue.snapshot import Catalogue

DEMO_FILES = ("accounts", "appliances", "brackets", "fixing_loads", "labour", "materials", "prices", "screens", "trades")


def demo_text(name: str) -> str:
    """Text of one demo file, by name without ending."""
    return files("service.catalogue").joinpath("demo", f"{name}.csv").read_text("utf-8")


@cache
def demo_catalogue() -> Catalogue:
    """The demo data as one catalogue value, without a database; its revision names the files' digest."""
    digest = hashlib.sha256("".join(demo_text(name) for name in DEMO_FILES).encode()).hexdigest()[:12]
    steps = sorted(read_rows(demo_text("prices"), PriceStep), key=lambda step: (step.code, step.from_count))
    return Catalogue(
        revision=f"demo:{max(step.valid_from for step in steps)}:{digest}",
        price_book="demo",
        account=read_rows(demo_text("accounts"), Account)[0],
        materials={row.code: row for row in read_rows(demo_text("materials"), Material)},
        appliances={row.model: row for row in read_rows(demo_text("appliances"), Appliance)},
        screens={row.model: row for row in read_rows(demo_text("screens"), Screen)},
        brackets={row.model: row for row in read_rows(demo_text("brackets"), Bracket)},
        fixing_loads=read_rows(demo_text("fixing_loads"), FixingLoad),
        labour_rates=read_rows(demo_text("labour"), LabourRate),
        trades={row.trade: row for row in read_rows(demo_text("trades"), Trade)},
        prices={code: tuple(group) for code, group in groupby(steps, key=lambda step: step.code)},
    )
