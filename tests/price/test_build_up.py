from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.brief import resolve
from service.catalogue import demo_catalogue
from service.price import Price, SaleKind, price
from service.rules import load_rules
from tests.examples_of import DAY, changed, request_of
from tests.price.worked_prices import LINE_TAXES_B, MATERIALS_SHARE_PERCENT, NET_TAX_TOTAL, SALE, STAGES, STEPS
from tests.sold_examples import made, sell, sold

if TYPE_CHECKING:
    from service.quote import Made

CATALOGUE = demo_catalogue()


@pytest.mark.parametrize("name", STEPS)
def test_every_step_is_the_worked_one_to_the_penny(name: str) -> None:
    assert list(STEPS[name].items()) == [(step.name, step.amount_minor) for step in made(name).price.steps]


@pytest.mark.parametrize("name", SALE)
def test_what_the_customer_sees_is_the_worked_sale(name: str) -> None:
    total = made(name).price

    assert SALE[name] == tuple((line.name, line.net_minor) for line in total.sale)
    assert NET_TAX_TOTAL[name] == (total.net_minor, total.tax_minor, total.total_minor)


@pytest.mark.parametrize("name", STAGES)
def test_deposit_and_stages_are_the_worked_ones(name: str) -> None:
    assert STAGES[name] == tuple(stage.amount_minor for stage in made(name).price.stages)


def test_tax_per_line_of_the_worked_example() -> None:
    """`knowledge/labour.md`, section 7, example B."""
    assert LINE_TAXES_B == tuple(line.tax_minor for line in made("B").price.sale)


@pytest.mark.parametrize("name", MATERIALS_SHARE_PERCENT)
def test_materials_are_a_usual_share_of_the_works(name: str) -> None:
    total = made(name).price

    assert MATERIALS_SHARE_PERCENT[name] == round(100 * total.materials_minor / total.sale[0].net_minor)


def test_worked_prices_are_complete() -> None:
    for name in STEPS:
        assert () == made(name).price.unpriced


# --------------------------------------------------------------------------------------------------- laws over any terms


def money(most: int) -> st.SearchStrategy[dict[str, str]]:
    return st.integers(0, most).map(lambda minor: {"amount": f"{minor // 100}.{minor % 100:02d}", "currency": "GBP"})


ratios = st.integers(0, 900).map(lambda thousandths: thousandths / 1000)
taxes = st.one_of(
    st.fixed_dictionaries({"kind": st.just("standard"), "rounding": st.sampled_from(["per_line", "per_invoice"])}),
    st.just({"kind": "not_registered"}),
    st.fixed_dictionaries(
        {
            "kind": st.sampled_from(["reduced", "zero", "reverse_charge"]),
            "evidence": st.just("seen"),
            "rounding": st.sampled_from(["per_line", "per_invoice"]),
        }
    ),
)
terms = st.fixed_dictionaries(
    {"date": st.just(DAY)},
    optional={
        "scope": st.sampled_from(["kit", "supply_only", "supply_and_fit"]),
        "appliance_supplied_by": st.sampled_from(["shop", "customer"]),
        "screen_supplied_by": st.sampled_from(["shop", "customer"]),
        "bracket_supplied_by": st.sampled_from(["shop", "customer"]),
        "visit_days_count": st.integers(1, 60),
        "travel_per_day": money(99_999),
        "overhead_ratio": st.integers(0, 1000).map(lambda thousandths: thousandths / 1000),
        "discount_ratio": ratios,
        "tax": taxes,
        "round_up_to": money(1_000),
        "packs_charged": st.sampled_from(["whole", "pro_rata"]),
        "deposit_ratio": st.integers(0, 500).map(lambda thousandths: thousandths / 1000),
        "validity_days": st.integers(1, 365),
        "provisional_sums": st.lists(st.fixed_dictionaries({"name": st.just("extra"), "amount": money(99_999)}), max_size=4),
    },
)
profits: st.SearchStrategy[dict[str, float]] = st.one_of(
    st.just({}),
    ratios.map(lambda ratio: {"margin_ratio": ratio}),
    st.integers(0, 9000).map(lambda thousandths: {"mark_up_ratio": thousandths / 1000}),
)


@cache
def _scoped(scope: str) -> Made:
    return sell(sold("A", terms__scope=scope))


def priced(values: dict[str, Any]) -> Price:
    """Example A under any terms; bill and labour follow the scope alone, or are taken as they are."""
    request = request_of({**sold("A"), "terms": values})
    job, deal = resolve(request, CATALOGUE, load_rules(), DAY)
    at = _scoped(values.get("scope", "supply_and_fit"))
    return price(at.bill, at.labour, job=job, deal=deal, catalogue=CATALOGUE)


@given(terms, profits)
def test_sums_hold_to_the_penny(values: dict[str, Any], profit: dict[str, float]) -> None:
    """`knowledge/labour.md`, section 9: lines = net, net + tax = total, deposit + stages = total, tax = its rule."""
    total = priced({**values, **profit})
    per_line = values.get("tax", {}).get("rounding") == "per_line"

    assert sum(line.net_minor for line in total.sale) == total.net_minor
    assert total.net_minor + total.tax_minor == total.total_minor
    assert sum(stage.amount_minor for stage in total.stages) == total.total_minor
    assert all(stage.amount_minor >= 0 for stage in total.stages)
    if per_line:
        assert sum(line.tax_minor for line in total.sale) == total.tax_minor
    assert 2 * total.stages[0].amount_minor <= total.total_minor + 1


@given(terms, profits)
def test_steps_sum_to_the_cost(values: dict[str, Any], profit: dict[str, float]) -> None:
    total = priced({**values, **profit})
    amounts = {step.name: step.amount_minor for step in total.steps}
    parts = [step.amount_minor for step in total.steps if step.name not in {"direct cost", "risk", "overhead", "cost"}]

    assert sum(parts) == amounts["direct cost"]
    assert amounts["direct cost"] + amounts["risk"] + amounts["overhead"] == amounts["cost"] == total.cost_minor


@given(terms, profits)
def test_rounding_up_ends_on_a_whole_multiple(values: dict[str, Any], profit: dict[str, float]) -> None:
    total = priced({**values, **profit})
    multiple = int(values.get("round_up_to", {"amount": "0.00"})["amount"].replace(".", ""))
    rounding = [line.net_minor for line in total.sale if line.kind is SaleKind.ROUNDING]

    assert multiple == 0 or total.net_minor % multiple == 0
    assert all(0 < amount < multiple for amount in rounding)


@given(terms, profits)
def test_who_brings_a_thing_moves_only_its_line(values: dict[str, Any], profit: dict[str, float]) -> None:
    """The fire is no part of the cost (`knowledge/labour.md`, section 6): no risk, overhead or profit on it."""
    shop = priced({**values, **profit, "appliance_supplied_by": "shop"})
    customer = priced({**values, **profit, "appliance_supplied_by": "customer"})

    assert shop.steps == customer.steps
    assert shop.sale[0] == customer.sale[0]
    assert {"AF-302"} == {line.code for line in shop.sale} - {line.code for line in customer.sale}


@given(profits)
def test_less_is_charged_pro_rata(profit: dict[str, float]) -> None:
    whole, part = (priced({"date": DAY, **profit, "packs_charged": how}) for how in ("whole", "pro_rata"))

    assert part.materials_minor < whole.materials_minor
    assert part.total_minor < whole.total_minor


def test_packs_pro_rata_by_hand() -> None:
    """`knowledge/materials.md`, section 3: need x waste / pack. A: 158 screws x 1.1 of a box of 200 at 5.10 = 4.43."""
    request = changed(sold("A"), {"/terms/packs_charged": "pro_rata"})
    charged = {line.code: line.charged_minor for line in sell(request).price.bill_lines}

    assert 443 == charged["FX-3040E"]
    assert 7_170 == charged["BD-2015R"]  # sheets are cut from whole ones
    assert 4_800 == charged["SD-8050A"]  # and a load is a load


def test_parking_is_charged_as_surveyed_where_somebody_works_on_site() -> None:
    cost = {"/survey/site/parking_cost": {"amount": "12.50", "currency": "GBP"}}
    steps = {step.name: step.amount_minor for step in sell(changed(sold("A"), cost)).price.steps}
    kit = {step.name for step in sell(changed(sold("A"), {**cost, "/terms/scope": "kit"})).price.steps}

    assert 1_250 == steps["parking"]
    assert "parking" not in kit


@pytest.mark.parametrize(
    ("scope", "steps"),
    [
        ("kit", ["materials", "handling", "labour joiner", "delivery", "tool wear", "direct cost", "risk", "overhead", "cost"]),
        ("supply_only", ["materials", "handling", "delivery", "direct cost", "risk", "overhead", "cost"]),
    ],
)
def test_steps_of_what_is_not_fitted(scope: str, steps: list[str]) -> None:
    assert steps == [step.name for step in _scoped(scope).price.steps]


def test_the_same_input_gives_the_same_price() -> None:
    assert msgspec.json.encode(priced({"date": DAY})) == msgspec.json.encode(priced({"date": DAY}))
