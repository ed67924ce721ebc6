from __future__ import annotations

import msgspec

from service.cut_plans import answer_cut_plan
from service.cut_plans.proof_body import money_or_none
from service.units import Money
from tests.cut_plans.cut_requests import bars_body, read


def test_without_a_currency_there_is_no_money() -> None:
    assert (None, Money(amount="0.00", currency="GBP")) == (money_or_none(0, None), money_or_none(0, "GBP"))


def test_the_proof_states_value_bound_and_engines() -> None:
    bars = answer_cut_plan(read(bars_body())).bars
    assert bars is not None
    proof = bars.proof

    assert proof.cost == proof.cost_bound == bars.cost
    assert (0.0, True, "done", False) == (proof.gap_ratio, proof.first_proven, proof.stopped, proof.fallback)
    assert any(engine.startswith("highspy ") for engine in proof.engines)
    assert msgspec.json.encode(proof)
