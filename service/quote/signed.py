"""Signing a quote: over the canonical bytes of its answer, so that any value or name that is changed shows."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.cutting import Stopped
from service.signing import sign

if TYPE_CHECKING:
    from service.quote.wire import QuoteDesigned

_ENCODER: Final = msgspec.json.Encoder()


def signed(quote: QuoteDesigned, private_jwk: str | None) -> QuoteDesigned:
    """The quote with its signature; as it is without a key, or where the clock ended a search.

    Args:
        quote: complete.
        private_jwk: key that signs.
    """
    if private_jwk is None or _by_the_clock(quote):
        return quote
    return msgspec.structs.replace(quote, signature=sign(_ENCODER.encode(quote), private_jwk))


def _by_the_clock(quote: QuoteDesigned) -> bool:
    """Whether a plan could come out otherwise on another day: only work limits are the same each time."""
    plan = quote.cut_plan
    ends = (
        plan.bars.proof.stopped,
        *(other.proof.stopped for other in plan.other_bars),
        *(board.proof.stopped for board in plan.boards),
    )
    return Stopped.CLOCK_GUARD in ends
