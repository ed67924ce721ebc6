"""What a shortlist is asked, and what it answers. Totals with tax only: nothing of what the shop pays."""

from __future__ import annotations

from typing import Annotated

import msgspec
from msgspec import Meta

from service.offers.estimate_wire import HeadSizes, Range, RoomAnswers
from service.quote import Operation


class ShortlistRequest(RoomAnswers, frozen=True, kw_only=True):
    """A room, and wishes: a pair that misses one is not left out, it ranks lower."""

    open_ends_count: (
        Annotated[int, Meta(ge=0, le=2, description="Ends of the fire that show glass, besides its front.")] | None
    ) = None
    least_diagonal_in: Annotated[float, Meta(ge=20, le=110)] | None = None
    most_width_mm: Annotated[float, Meta(ge=400, le=8_000, description="Widest breast, finished, mm.")] | None = None


class WhyNot(msgspec.Struct, frozen=True, kw_only=True):
    """An inequality that is not met, or a check that fails."""

    code: str
    says: str


class NearestChange(msgspec.Struct, frozen=True, kw_only=True):
    """What makes a pair fit. `answers` are operations on the body of an estimate for this pair; none: see `says`."""

    code: str
    says: str
    answers: tuple[Operation, ...]


class PairAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """A fire and a screen of the catalogue in this room."""

    appliance: str  # model
    appliance_name: str
    screen: str  # model
    screen_diagonal_in: float
    fits: bool
    price: Range | None  # null: it does not fit
    complete: bool  # false: something has no price and is not in it
    sizes: HeadSizes | None
    wishes_missed: tuple[str, ...]  # members of the request
    why_not: tuple[WhyNot, ...]
    nearest_change: NearestChange | None  # null: it fits, or nothing that was tried makes it fit


class ShortlistAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """Every fire with every screen of the catalogue, best first."""

    pairs: tuple[PairAnswer, ...]
    fitting_count: int
    ranking: str  # the rule of the order
    not_proven: tuple[str, ...]
    catalogue_revision: str
    rule_set: str
    date: str  # of the prices
