"""From a request to a job: models looked up, defaults taken and listed, every fault at once."""

from service.brief.deal import Deal
from service.brief.job import (
    AccessWish,
    Assumption,
    Board,
    Doubt,
    Job,
    LedgeWish,
    NicheWish,
    ScreenGaps,
    Spot,
    Timber,
    TimberStock,
)
from service.brief.provenance import provenance_of
from service.brief.resolve import resolve, supply_of
from service.brief.sizes import least_upstand

__all__ = [
    "AccessWish",
    "Assumption",
    "Board",
    "Deal",
    "Doubt",
    "Job",
    "LedgeWish",
    "NicheWish",
    "ScreenGaps",
    "Spot",
    "Timber",
    "TimberStock",
    "least_upstand",
    "provenance_of",
    "resolve",
    "supply_of",
]
