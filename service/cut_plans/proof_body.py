"""Proof, stock and leftovers of a plan as they go on the wire."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.catalogue import money
from service.cut_plans.wire import LeftoverAnswer, ProofAnswer, StockAnswer
from service.units import millimetres

if TYPE_CHECKING:
    from service.cutting import Leftover, Proof, SearchNote, StockTaken
    from service.units import Money


def money_or_none(amount_minor: int, currency: str | None) -> Money | None:
    """An amount on the wire; null where nothing has a price."""
    return None if currency is None else money(amount_minor, currency)


def stock_answer(taken: tuple[StockTaken, ...], currency: str | None) -> tuple[StockAnswer, ...]:
    """What to take."""
    return tuple(
        StockAnswer(
            code=one.code,
            taken_count=one.taken_count,
            each=money_or_none(one.cost_each_minor, currency),
            offcut=one.offcut,
        )
        for one in taken
    )


def leftovers_answer(leftovers: tuple[Leftover, ...]) -> tuple[LeftoverAnswer, ...]:
    """What to keep."""
    return tuple(
        LeftoverAnswer(
            label=one.label,
            of=one.of,
            leftovers_count=one.leftovers_count,
            width_mm=millimetres(one.width_tenth_mm),
            height_mm=millimetres(one.height_tenth_mm),
        )
        for one in leftovers
    )


def proof_answer(proof: Proof, search: SearchNote, currency: str | None) -> ProofAnswer:
    """How good the plan is."""
    return ProofAnswer(
        aim=proof.aim.value,
        cost=money_or_none(proof.cost_minor, currency),
        cost_bound=money_or_none(proof.cost_bound_minor, currency),
        bought_length_mm=millimetres(proof.bought_length_tenth_mm),
        length_bound_mm=millimetres(proof.length_bound_tenth_mm),
        gap_ratio=round(proof.gap_ratio, 6),
        first_proven=proof.first_proven,
        bought_count=proof.bought_count,
        bought_bound_count=proof.bought_bound_count,
        bought_proven=proof.bought_proven,
        leftover_mm=millimetres(proof.leftover_tenth_mm),
        leftover_proven=proof.leftover_proven,
        method=search.method,
        stopped=search.stopped,
        fallback=search.fallback,
        engines=search.engines,
    )
