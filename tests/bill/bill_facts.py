"""Short ways to what the needs of a bill are read from."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from service.bill import Market
from service.bill.needs import Facts
from service.catalogue import demo_catalogue
from service.checks import count_lifts
from service.hardware import choose_hardware
from service.rules import load_rules
from tests.examples_of import changed
from tests.sold_examples import made, sell, sold

if TYPE_CHECKING:
    from service.quote import Made

SKIMMED = {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2125K"}, "/survey/brief/finish": "skimmed"}
TAPED = {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2126L"}, "/survey/brief/finish": "taped"}


def facts_of(name: str, market: Market | None = None) -> Facts:
    """Facts of a worked example after checks."""
    return _facts(made(name), market)


def facts_at(at: Made) -> Facts:
    """Facts of a quote as made."""
    return _facts(at, None)


def of_request(request: dict[str, Any]) -> Facts:
    """Facts of any request."""
    return _facts(sell(request), None)


def one_sided(model: str) -> dict[str, Any]:
    """Example C, 2 m wide, with another one-sided fire, connected for good."""
    values = {
        "/survey/brief/appliance": {"kind": "catalogue", "model": model}, "/survey/brief/breast_width_mm": 2000,
        "/survey/brief/appliance_shift_mm": 0, "/survey/services/supply_wanted": "fused_connection",
    }  # fmt: skip
    return changed(sold("C"), values)


def _facts(at: Made, market: Market | None) -> Facts:
    return Facts(
        job=at.job,
        market=market or Market(catalogue=demo_catalogue(), rules=load_rules()),
        hardware=choose_hardware(at.job, market) if market else at.settled.hardware,
        counts=at.bill.counts,
        measures=at.bill.measures,
        lifts=count_lifts(at.frame, at.job, load_rules()),
    )
