from __future__ import annotations

import msgspec

from service.hardware import Shelf, choose_hardware
from tests.examples_of import example_a, job_of
from tests.hardware.test_choosing import MARKET


def test_whatever_holds_a_catalogue_and_rules_is_a_shelf_and_prices_are_not_read() -> None:
    """No price changes what is chosen."""
    dearer: Shelf = msgspec.structs.replace(MARKET, catalogue=msgspec.structs.replace(MARKET.catalogue, prices={}))
    job = job_of(example_a())

    assert choose_hardware(job, MARKET) == choose_hardware(job, dearer)
