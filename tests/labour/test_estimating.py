from __future__ import annotations

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.labour import estimate, make_site
from service.rules import load_rules
from service.survey.terms import Scope
from tests.examples_of import changed
from tests.labour.worked_hours import HOURS, TOGETHER, TRADES
from tests.sold_examples import made, sell, sold

CATALOGUE = demo_catalogue()


@pytest.mark.parametrize("name", HOURS)
def test_hours_by_task_are_the_worked_ones(name: str) -> None:
    """Hours +-0.01 (`knowledge/worked-examples.md`, section 0); crew of two where the joiner and the mate share them."""
    tasks = made(name).labour.tasks

    assert HOURS[name] == tuple((task.task, task.person_hours, task.crew_count) for task in tasks)


@pytest.mark.parametrize("name", HOURS)
def test_hours_by_trade_are_the_worked_ones(name: str) -> None:
    labour = made(name).labour

    assert TOGETHER[name] == labour.person_hours
    assert TRADES[name] == {row.trade: row.person_hours for row in labour.trades}


def test_a_plasterer_comes_for_half_a_day_at_least() -> None:
    """`knowledge/labour.md`, section 2; price B: 4 h x 36.00 for 3.04 hours."""
    plasterer = next(row for row in made("B").labour.trades if row.trade == "plasterer")

    assert (3.04, 4.0) == (plasterer.person_hours, plasterer.charged_hours)


def test_an_electrician_comes_twice_for_two_hours_at_least() -> None:
    """`knowledge/labour.md`, section 1: electrician 3.5, charged 4: two visits of at least 2 h."""
    assert (2.0, 2.0) == made("A").labour.electrician_visit_hours
    assert () == made("C").labour.electrician_visit_hours


def test_a_new_circuit_takes_the_electrician_longer() -> None:
    """`knowledge/labour.md`, section 1: L09 5.0, L19 1.5 + 0.5."""
    labour = sell(sold("A", survey__services__supply_wanted="new_circuit")).labour

    assert (5.0, 2.0) == labour.electrician_visit_hours


def test_a_screen_recess_brings_the_electrician_even_for_a_fire_on_a_plug() -> None:
    """The socket in the recess is fixed wiring (`knowledge/services.md`, section 8)."""
    fire = {"kind": "catalogue", "model": "AF-301"}
    request = changed(sold("A"), {"/survey/brief/appliance": fire, "/survey/services/supply_wanted": "plug_in_reach"})
    request = changed(request, {"/survey/brief/screen": None, "/survey/brief/screen_bracket": None})
    screen = {
        "kind": "custom", "name": "small", "diagonal_in": 32, "body_width_mm": 720, "body_height_mm": 430, "body_depth_mm": 60,
        "mass_kg": 5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
    }  # fmt: skip
    with_screen = changed(request, {"/survey/brief/screen": screen})

    assert () == sell(request).labour.electrician_visit_hours
    assert (2.0, 2.0) == sell(with_screen).labour.electrician_visit_hours


@pytest.mark.parametrize(("scope", "tasks"), [(Scope.KIT, ["L04"]), (Scope.SUPPLY_ONLY, [])])
def test_what_is_not_fitted_is_only_cut_or_only_bought(scope: Scope, tasks: list[str]) -> None:
    labour = sell(sold("A", terms__scope=scope)).labour

    assert tasks == [task.task for task in labour.tasks]
    assert (0, 0) == (labour.visit_days, labour.lifter_days)


@pytest.mark.parametrize(
    ("name", "changes", "days"),
    [
        ("A", {}, 5),  # as agreed; also labour.md, section 4: five visit days
        ("A", {"terms__visit_days_count": None}, 5),  # by the programme: tests/labour/test_programme.py
        ("B", {"terms__visit_days_count": None}, 6),
        ("A", {"terms__visit_days_count": None, "terms__crew_count": 1}, 6),  # one person: a day more
        ("A", {"terms__visit_days_count": 9}, 9),
    ],
)
def test_visit_days(name: str, changes: dict[str, object], days: int) -> None:
    assert days == sell(sold(name, **changes)).labour.visit_days


def test_work_without_a_rate_is_named() -> None:
    rates = tuple(rate for rate in CATALOGUE.labour_rates if rate.task != "L24")
    at = made("A")
    site = make_site(at.frame, at.plan, at.bill, job=at.job, rules=load_rules(), scope=Scope.SUPPLY_AND_FIT)
    labour = estimate(site, at.deal, msgspec.structs.replace(CATALOGUE, labour_rates=rates))

    assert ("hours of L24 lift",) == labour.unrated
    assert pytest.approx(TOGETHER["A"] - 1.00) == labour.person_hours
    assert () == at.labour.unrated


def test_hours_per_square_metre_are_usual() -> None:
    """`knowledge/labour.md`, section 9: labour hours per m2 of face and returns 5..11."""
    for name in HOURS:
        labour, at = made(name).labour, made(name).bill.measures

        assert 5 <= labour.person_hours / at.visible_m2 <= 11
