from __future__ import annotations

import msgspec
import pytest

from service.bill import LineGroup, Market
from service.bill.sundries import electrical_needs, site_needs
from service.catalogue import demo_catalogue
from service.rules import load_rules
from service.survey.terms import Scope
from tests.bill.bill_facts import facts_of, of_request, one_sided
from tests.examples_of import changed
from tests.sold_examples import sold


def site(name: str, waste_kg: float, gypsum_kg: float = 0.0) -> dict[str, tuple[float, str]]:
    return {need.wanted: (need.need, need.rule) for need in site_needs(facts_of(name), waste_kg, gypsum_kg)}


@pytest.mark.parametrize(
    ("name", "wanted"),
    [
        ("A", ["double socket", "double box", "brush plate", "fused connection", "single box"]),
        ("C", []),  # no screen, and the fire has a plug in reach
    ],
)
def test_sockets_and_plates_of_the_service_list(name: str, wanted: list[str]) -> None:
    """`knowledge/materials.md`, section 2: recess 1 double and 1 brush plate, fire 1 fused connection."""
    assert wanted == [need.wanted for need in electrical_needs(facts_of(name))]


def test_a_grille_where_the_fire_breathes_from_the_void() -> None:
    grilles = [need for need in electrical_needs(of_request(one_sided("AF-105"))) if need.wanted == "air grille"]

    assert ["air inlet 9000 mm2, 18000 mm2 free in each"] == [need.rule for need in grilles]


@pytest.mark.parametrize(("route_mm", "sheets"), [(0, 2), (9_999, 2), (10_000, 3), (20_000, 4), (45_000, 6)])
def test_dust_sheets_follow_the_route(route_mm: float, sheets: int) -> None:
    """`knowledge/materials.md`, section 2: 2 + 1 per 10 m of route."""
    facts = of_request(changed(sold("C"), {"/survey/site/parking_distance_mm": route_mm}))
    found = {need.wanted: need for need in site_needs(facts, 10.0, 0.0)}

    assert sheets == found["dust sheets"].need
    assert 0.25 == found["dust sheets"].charged_ratio


@pytest.mark.parametrize(("waste_kg", "sacks"), [(19.9, 1), (20.0, 1), (20.1, 2), (160.0, 8)])
def test_a_sack_holds_twenty_kilograms(waste_kg: float, sacks: int) -> None:
    assert sacks == site("A", waste_kg)["waste sacks"][0]


@pytest.mark.parametrize(
    ("waste_kg", "gypsum_kg", "loads"),
    [(10, 0, 1), (100, 0, 1), (100.1, 0, 2), (31, 9, 2), (250, 120, 4)],  # a load is 0.5 m3 of 200 kg/m3
)
def test_loads_and_gypsum_apart(waste_kg: float, gypsum_kg: float, loads: int) -> None:
    """`knowledge/materials.md`, section 2: loads of 0.5 m3, least one, gypsum kept separate."""
    assert loads == site("A", waste_kg, gypsum_kg)["disposal load"][0]


def test_a_job_over_six_square_metres_takes_two_packs() -> None:
    large = msgspec.structs.replace(facts_of("A").measures, paint_m2=6.0)
    facts = msgspec.structs.replace(facts_of("A"), measures=large)
    found = {need.wanted: need.need for need in site_needs(facts, 10.0, 0.0)}

    assert (2, 2) == (found["abrasive"], found["dust masks"])
    assert 1 == site("A", 10.0)["abrasive"][0]


def test_the_lifter_is_hired_for_each_day_of_use() -> None:
    """`knowledge/labour.md`, section 2: frame and fire are lifted on different days. C needs none."""
    needs = {need.wanted: need for need in site_needs(facts_of("A"), 10.0, 0.0)}

    assert 2 == needs["lifter, per day"].need
    assert LineGroup.HIRE is needs["lifter, per day"].group
    assert "a day each time it is used: upper frame, fire" == needs["lifter, per day"].rule
    assert "lifter, per day" not in site("C", 10.0)


@pytest.mark.parametrize("scope", [Scope.KIT, Scope.SUPPLY_ONLY])
def test_nothing_of_it_without_work_on_site(scope: Scope) -> None:
    market = Market(catalogue=demo_catalogue(), rules=load_rules(), scope=scope)

    assert () == site_needs(facts_of("A", market), 30.0, 0.0)
