from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.cutting import BarPlan, BarStock, cut_bars
from service.cutting.verify_bars import mistakes_in_bars
from tests.cutting.jobs import bars, example_a

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.cutting import BarGroup, BarJob

JOB = example_a()
PLAN = cut_bars(JOB)
replace = msgspec.structs.replace


def with_group(plan: BarPlan, change: Callable[[BarGroup], BarGroup], at: int = 0) -> BarPlan:
    groups = (*plan.groups[:at], change(plan.groups[at]), *plan.groups[at + 1 :])
    return replace(plan, groups=groups)


def with_cut(plan: BarPlan, number: int, **fields: int | bool) -> BarPlan:
    def change(group: BarGroup) -> BarGroup:
        cuts = list(group.cuts)
        cuts[number] = replace(cuts[number], **fields)
        return replace(group, cuts=tuple(cuts))

    return with_group(plan, change)


def one_short(plan: BarPlan) -> BarPlan:
    """Leave out the last piece of the first group."""
    return with_group(plan, lambda g: replace(g, cuts=g.cuts[:-1], labels=tuple(row[:-1] for row in g.labels)))


FIRST = PLAN.groups[0].cuts
TAMPERED: dict[str, tuple[BarPlan, str]] = {
    "overlap": (with_cut(PLAN, 1, start_tenth_mm=FIRST[0].end_tenth_mm - 10), "no room for the saw"),
    "kerf lost": (with_cut(PLAN, 1, start_tenth_mm=FIRST[0].end_tenth_mm), "no room for the saw"),
    "missing piece": (one_short(PLAN), "missing"),
    "piece twice": (
        with_group(PLAN, lambda g: replace(g, labels=(g.labels[0],) * (g.bars_count + 1), bars_count=g.bars_count + 1)),
        "not asked for",
    ),
    "too long": (with_cut(PLAN, -1, end_tenth_mm=PLAN.groups[0].length_tenth_mm + 10), "too long"),
    "no length": (with_cut(PLAN, -1, end_tenth_mm=FIRST[-1].start_tenth_mm), "without length"),
    "before the bar": (with_cut(PLAN, 0, start_tenth_mm=-10), "into the trims"),
    "short before long": (
        with_group(PLAN, lambda g: replace(g, cuts=g.cuts[::-1])),
        "order",
    ),
    "empty bar": (with_group(PLAN, lambda g: replace(g, cuts=(), labels=((),) * g.bars_count)), "without pieces"),
    "labels of another bar": (with_group(PLAN, lambda g: replace(g, labels=g.labels[:-1])), "labels do not match"),
    "wrong label": (
        with_group(PLAN, lambda g: replace(g, labels=(("X", *g.labels[0][1:]), *g.labels[1:]))),
        "not asked for: ('X'",
    ),
    "measured too early": (with_cut(PLAN, 0, after_measure=not FIRST[0].after_measure), "missing"),
    "unknown stock": (with_group(PLAN, lambda g: replace(g, code="T9999")), "more than there are"),
    "wrong price": (with_group(PLAN, lambda g: replace(g, cost_each_minor=1)), "more than there are"),
    "wrong rest": (with_group(PLAN, lambda g: replace(g, rest_tenth_mm=g.rest_tenth_mm + 5)), "rest is wrong"),
    "wrong kerf": (with_group(PLAN, lambda g: replace(g, kerf_tenth_mm=0)), "do not add up"),
    "kept against the rule": (with_group(PLAN, lambda g: replace(g, keep=not g.keep)), "against the rule"),
    "wrong cost": (replace(PLAN, cost_minor=PLAN.cost_minor - 1), "total of cost"),
    "wrong number": (replace(PLAN, bars_count=1), "total of bars"),
    "wrong waste": (replace(PLAN, waste_length_tenth_mm=0), "total of waste"),
    "stock not listed": (replace(PLAN, stock=PLAN.stock[:-1]), "list of stock"),
    "leftover invented": (
        replace(PLAN, leftovers=(*PLAN.leftovers, *cut_bars(bars([(700, 5, False)], [(2400, 400)])).leftovers)),
        "list of leftovers",
    ),
    "bound above": (replace(PLAN, proof=replace(PLAN.proof, cost_bound_minor=PLAN.cost_minor + 1)), "above the value"),
    "proof invented": (replace(PLAN, proof=replace(PLAN.proof, cost_bound_minor=1)), "proven does not mean"),
    "gap invented": (replace(PLAN, proof=replace(PLAN.proof, gap_ratio=0.5)), "gap is wrong"),
    "proof of another plan": (replace(PLAN, proof=replace(PLAN.proof, bought_count=1, bought_bound_count=1)), "speaks of"),
    "leftover of another plan": (replace(PLAN, proof=replace(PLAN.proof, leftover_tenth_mm=1)), "longest leftover"),
    "last aim alone": (
        replace(PLAN, proof=replace(PLAN.proof, bought_bound_count=0, bought_proven=False, leftover_proven=True)),
        "before an earlier one",
    ),
}


def test_a_right_plan_has_no_mistakes() -> None:
    assert () == mistakes_in_bars(JOB, PLAN)


@pytest.mark.parametrize("name", TAMPERED)
def test_a_tampered_plan_is_found_out(name: str) -> None:
    plan, says = TAMPERED[name]

    assert any(says in text for text in mistakes_in_bars(JOB, plan))


def test_more_copies_than_there_are_are_found_out() -> None:
    job: BarJob = bars([(2000, 3, False)], [(2400, 400)])
    few = replace(job, stock=(BarStock(code="T2400", length_tenth_mm=24_000, cost_minor=400, copies_count=2),))

    assert () == mistakes_in_bars(job, cut_bars(job))
    assert any("more than there are" in text for text in mistakes_in_bars(few, cut_bars(job)))


def test_trims_are_not_for_pieces() -> None:
    job = bars([(2000, 1, False)], [(2400, 400)])
    trimmed = replace(job, end_trim_tenth_mm=200)

    assert any("trim" in text for text in mistakes_in_bars(trimmed, cut_bars(job)))
