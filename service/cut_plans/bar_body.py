"""A plan for bars as it goes on the wire."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.cut_plans.proof_body import leftovers_answer, money_or_none, proof_answer, stock_answer
from service.cut_plans.wire import AimAnswer, AimName, BarAnswer, BarCutAnswer, BarPlanAnswer, BarStopAnswer
from service.cutting import BarAim
from service.units import millimetres

if TYPE_CHECKING:
    from service.cutting import BarGroup, BarPlan, Proof


def bar_plan_answer(plan: BarPlan, *, currency: str | None, kerf_mm: float) -> BarPlanAnswer:
    """Bars with every cut placed.

    Args:
        plan: as the cutting stage made it.
        currency: of its costs; None: nothing has a price.
        kerf_mm: the saw cut that it was made with.
    """
    return BarPlanAnswer(
        aims=_aims(plan.proof),
        bars=tuple(_bar(group) for group in plan.groups),
        sequence=sequence_of(plan.groups),
        stock=stock_answer(plan.stock, currency),
        leftovers=leftovers_answer(plan.leftovers),
        cost=money_or_none(plan.cost_minor, currency),
        stock_length_mm=millimetres(plan.stock_length_tenth_mm),
        pieces_length_mm=millimetres(plan.pieces_length_tenth_mm),
        kerf_length_mm=millimetres(plan.kerf_length_tenth_mm),
        trim_length_mm=millimetres(plan.trim_length_tenth_mm),
        kept_length_mm=millimetres(plan.kept_length_tenth_mm),
        waste_length_mm=millimetres(plan.waste_length_tenth_mm),
        kerf_mm=kerf_mm,
        proof=proof_answer(plan.proof, plan.search, currency),
    )


def sequence_of(groups: tuple[BarGroup, ...]) -> tuple[BarStopAnswer, ...]:
    """All stops of the saw in the order of work. Each bar is cut in this order too, so no piece waits for another."""
    stops: dict[tuple[bool, int], list[BarGroup]] = {}
    for group in groups:
        for cut in group.cuts:
            stops.setdefault((cut.after_measure, -cut.length_tenth_mm), []).append(group)
    return tuple(
        BarStopAnswer(
            stop_mm=millimetres(-falling),
            after_measure=after,
            cuts_count=sum(group.bars_count for group in found),
            bars=tuple(dict.fromkeys(group.name for group in found)),
        )
        for (after, falling), found in sorted(stops.items(), key=lambda item: item[0])
    )


def _aims(proof: Proof) -> tuple[AimAnswer, ...]:
    """The aims in their order. Few saw settings is a wish: nothing is proven of it."""
    first = AimName.LEAST_COST if proof.aim is BarAim.COST else AimName.LEAST_LENGTH
    return (
        AimAnswer(aim=first, proven=proof.first_proven),
        AimAnswer(aim=AimName.FEWEST_BARS, proven=proof.bought_proven),
        AimAnswer(aim=AimName.LONGEST_LEFTOVER, proven=proof.leftover_proven),
        AimAnswer(aim=AimName.FEW_SAW_SETTINGS, proven=False),
    )


def _bar(group: BarGroup) -> BarAnswer:
    return BarAnswer(
        name=group.name,
        code=group.code,
        length_mm=millimetres(group.length_tenth_mm),
        offcut=group.offcut,
        bars_count=group.bars_count,
        cuts=tuple(
            BarCutAnswer(
                start_mm=millimetres(cut.start_tenth_mm),
                end_mm=millimetres(cut.end_tenth_mm),
                length_mm=millimetres(cut.length_tenth_mm),
                after_measure=cut.after_measure,
                marks=tuple(labels[index] for labels in group.labels),
            )
            for index, cut in enumerate(group.cuts)
        ),
        trim_mm=millimetres(group.trim_tenth_mm),
        rest_mm=millimetres(group.rest_tenth_mm),
        keep=group.keep,
    )
