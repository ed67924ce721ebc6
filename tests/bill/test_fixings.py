from __future__ import annotations

import msgspec
import pytest

from service.bill import Market
from service.bill.fixings import fixing_needs
from service.catalogue import demo_catalogue
from service.frame import Additions
from service.hardware.choosing import ceiling_packing_mm, wall_packing_mm
from service.quote import make_quote
from service.rules import load_rules
from tests.bill.bill_facts import facts_at, facts_of, of_request
from tests.examples_of import request_of
from tests.sold_examples import desk_of, sold
from tests.variant_requests import in_a_corner, uneven, with_access, with_beam

RULES = load_rules()


def needed(name: str) -> dict[str, tuple[float, str]]:
    return {
        f"{need.material.code if need.material else '?'} {need.wanted}": (need.need, need.rule)
        for need in fixing_needs(facts_of(name))
    }


@pytest.mark.parametrize(
    ("name", "thing", "need"),
    [
        ("A", "FX-3070M joint screw through 38", 104),  # Jb 52 x 2
        ("A", "FX-3070M laminating screw", 6),
        ("A", "FX-3150Z joint screw through 89", 72),  # Jd 36 x 2
        ("A", "FX-3126Y ceiling screw", 8),
        ("A", "PK-3601P packers", 44),  # 2 x 4 + 2 x 8 + 20
        ("B", "FX-3100V joint screw through 45", 104),
        ("B", "PK-3601P packers", 29),
        ("C", "FX-3045K screw for MDF 18 standard", 16),
        ("C", "FX-3035Z bracket screw", 34),  # 6 x 4 + 5 x 2
        ("C", "FX-3405B angle bracket", 11),
        ("C0", "FX-3405B angle bracket", 6),  # no base, no base brackets
    ],
)
def test_needs_as_the_worked_bills_count_them(name: str, thing: str, need: float) -> None:
    """`knowledge/worked-examples.md`, column "rule or unit of need" of the bills and "Fixings" of each example."""
    assert need == needed(name)[thing][0]


def test_each_rule_shows_its_working() -> None:
    assert "18 x 4 + 4 x 2" == needed("A")["FX-3035Z bracket screw"][1]
    assert "rail ends 18 + base 4" == needed("A")["FX-3405B angle bracket"][1]
    assert "2 x 4 stations + 2 x 8 ceiling screws + 20 wall fixings" == needed("A")["PK-3601P packers"][1]


def test_what_is_not_needed_is_not_listed() -> None:
    assert "FX-3126Y ceiling screw" not in needed("B")
    assert not any("base" in thing for thing in needed("C0"))


def test_what_is_not_sold_is_still_listed() -> None:
    bare = Market(catalogue=msgspec.structs.replace(demo_catalogue(), materials={}), rules=load_rules())
    needs = fixing_needs(facts_of("A", bare))

    assert {"joint screw through 38", "ceiling screw", "angle bracket", "bracket screw", "packers"} <= {
        need.wanted for need in needs
    }
    assert all(need.material is None and need.need > 0 for need in needs)


def test_heavy_and_paired_brackets_are_bought_with_their_screws() -> None:
    """Framing.md, 10.2, step 8: the demo's heavy bracket takes 3 screws a leg, the light one 2."""
    added = Additions(bracketed_roles=("sill_rail", "trimmer_ply"), heavy_roles=("sill_rail",), paired_roles=("trimmer_ply",))
    desk = msgspec.structs.replace(desk_of(), additions=added)
    at = make_quote(request_of(sold("A")), desk)
    needs = {need.wanted: (need.need, need.rule) for need in fixing_needs(facts_at(at))}

    assert (2, 18) == (at.bill.counts.heavy_brackets_count, at.bill.counts.rail_brackets_count)  # 16, 2 of the sill heavy, 2 more
    assert (2.0, "rail ends 2") == needs["heavy angle bracket"]
    assert 18 * 4 + 4 * 2 + 2 * 6 == sum(need.need for need in fixing_needs(facts_at(at)) if need.wanted == "bracket screw")


def test_fixings_into_a_side_wall() -> None:
    """The same as into the host wall where both are built alike; else a line without a code, for a person to choose."""
    like = fixing_needs(of_request(in_a_corner()))
    other = fixing_needs(of_request(in_a_corner(survey__wall__side_construction="timber_stud")))

    assert [4] == [need.need for need in like if "side wall" in need.rule and need.material]
    assert [(4, "fixing into a side wall (timber stud)")] == [
        (need.need, need.wanted) for need in other if need.material is None and "side wall" in need.wanted
    ]


def test_packing_under_an_uneven_ceiling_and_behind_a_leaning_wall() -> None:
    """One packer more for every 5 over the usual gap; firrings are named, for a person to choose; 25 is packed at most."""
    facts = of_request(uneven())
    needs = {need.wanted: need for need in fixing_needs(facts)}
    plain = {need.wanted: need for need in fixing_needs(facts_of("A"))}

    assert facts.counts.more_packers_count > 0
    assert f"+ {facts.counts.more_packers_count} where" in needs["packers"].rule
    assert (2.502, None) == (needs["timber to rip firrings from"].need, needs["timber to rip firrings from"].material)
    assert "timber to rip firrings from" not in plain
    assert (25, 14) == (ceiling_packing_mm(facts.job, RULES), wall_packing_mm(facts.job, RULES))


def test_a_removable_panel_has_magnets_and_no_screws() -> None:
    facts = of_request(with_access())
    needs = {need.wanted: need for need in fixing_needs(facts)}

    assert 4 == needs["magnet catches of the access panel"].need
    assert "magnet catches of the access panel" not in {need.wanted for need in fixing_needs(facts_of("B"))}


def test_a_beam_and_its_fixings_are_named() -> None:
    needs = {need.wanted: need for need in fixing_needs(of_request(with_beam()))}

    assert (1, None) == (needs["beam 1200 x 120 x 110"].need, needs["beam 1200 x 120 x 110"].material)
    assert 4 == needs["fixing for the beam 1200 x 120 x 110"].need
