"""Short ways to what a price is reckoned from."""

from __future__ import annotations

from typing import Any

import msgspec

from service.catalogue import Catalogue, demo_catalogue
from service.price.purse import Purse
from tests.sold_examples import made

CATALOGUE = demo_catalogue()


def purse_of(name: str, catalogue: Catalogue = CATALOGUE, **deal: Any) -> Purse:  # noqa: ANN401 - any field of the deal
    """The purse of a worked example, with another catalogue or other terms."""
    at = made(name)
    return Purse(bill=at.bill, labour=at.labour, job=at.job, deal=msgspec.structs.replace(at.deal, **deal), catalogue=catalogue)


def without_price(*codes: str) -> Catalogue:
    """The demo catalogue with some codes not in its price book."""
    prices = {code: steps for code, steps in CATALOGUE.prices.items() if code not in codes}
    return msgspec.structs.replace(CATALOGUE, prices=prices)
