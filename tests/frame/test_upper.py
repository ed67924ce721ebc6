"""Framing.md, sections 4, 8 and 10.1: rails, plies, bearers and what holds their ends."""

from __future__ import annotations

import pytest

from service.frame import Added, Additions, EndJoint, Reason, Role
from service.frame.upper import HUNG_ROLES, lay_upper
from service.rules import load_rules
from tests.examples_of import Request, changed, example_a, example_b, example_c
from tests.frame.geometry import ranges
from tests.frame.settings_of import BRIEF, of_role, setting_of

RULES, NOTHING = load_rules(), Additions()
BRACKET, BEARING, SCREWED = EndJoint.BRACKET, EndJoint.BEARING, EndJoint.SCREWED


def brackets(request: Request, additions: Additions = NOTHING) -> int:
    """How many ends of the upper frame hang in a bracket."""
    places = lay_upper(setting_of(request, added=additions), RULES)
    return sum((place.start is BRACKET) + (place.end is BRACKET) for place in places)


@pytest.mark.parametrize(("request_", "count"), [(example_a(), 16), (example_b(), 15), (example_c(), 0)])
def test_brackets_laid_out(request_: Request, count: int) -> None:
    """Rows "brackets at rail ends" of A, B and C, laid out: trimmer ends without a jack, plies, bearers, hung rails."""
    assert count == brackets(request_)


@pytest.mark.parametrize(
    ("request_", "roles", "count"),
    [
        (example_a(), ("sill_rail",), 18),
        (example_b(), ("sill_rail",), 17),
        (example_c(), ("top_rail_front", "top_rail_rear"), 4),
    ],
)
def test_brackets_after_step_8(request_: Request, roles: tuple[str, ...], count: int) -> None:
    """The same rows after checks: A + sill 2 = 18; B + sill 2 (its extra rail apart); C front and rear top rail 4."""
    assert count == brackets(request_, Additions(bracketed_roles=roles))


def test_ends_of_the_trimmer() -> None:
    """Bearing on a jack; a bracket where there is none. Example B: jack at the left, open at the right."""

    def ends(request: Request) -> tuple[EndJoint, EndJoint]:
        (trimmer,) = of_role(lay_upper(setting_of(request), RULES), Role.TRIMMER)
        return trimmer.start, trimmer.end

    assert (BRACKET, BRACKET) == ends(example_a())
    assert (BEARING, BRACKET) == ends(example_b())
    assert (BEARING, BEARING) == ends(example_c())
    assert (BRACKET, BEARING) == ends(changed(example_c(), {f"{BRIEF}/appliance_shift_mm": -205}))


def test_rails_are_hung_only_beside_an_open_end() -> None:
    """Rear rails and top rails of an upper frame with an open end: bracket; else screwed."""
    for request, joint in ((example_a(), BRACKET), (example_b(), BRACKET), (example_c(), SCREWED)):
        places = lay_upper(setting_of(request), RULES)
        joints = {end for place in places if place.role in HUNG_ROLES for end in (place.start, place.end)}
        assert {joint} == joints


def test_levels_of_the_rails() -> None:
    """Section 4: z1, zs-b, zh, z2-b in front; z1, the sill's level, z2-b at the rear. Example A."""
    places = lay_upper(setting_of(example_a()), RULES)
    lows = {
        place.role: place.box.z0_tenth_mm / 10
        for place in places
        if place.role in HUNG_ROLES | {Role.TRIMMER, Role.SILL_RAIL, Role.HEAD_RAIL}
    }

    assert {
        Role.TRIMMER: 920, Role.SILL_RAIL: 1092, Role.HEAD_RAIL: 1817, Role.TOP_RAIL_FRONT: 2467, Role.REAR_BOTTOM_RAIL: 920,
        Role.REAR_MID_RAIL: 1092, Role.TOP_RAIL_REAR: 2467,
    } == lows  # fmt: skip


def test_without_a_screen_there_is_a_rail_at_the_upstand() -> None:
    places = lay_upper(setting_of(example_c()), RULES)
    (rail,) = of_role(places, Role.UPSTAND_RAIL)

    assert (679 + 190 - 38, 679 + 190) == tuple(level / 10 for level in ranges(rail.box)[2])  # z1+u-b..z1+u
    assert [] == of_role(places, Role.SILL_RAIL) + of_role(places, Role.HEAD_RAIL) + of_role(places, Role.SCREEN_BEARER)


def test_plies_stand_one_behind_the_other() -> None:
    """Ply j: Df-d-jb..Df-d-(j-1)b, z1..z1+d."""
    places = of_role(lay_upper(setting_of(example_a(), ply_count=3), RULES), Role.TRIMMER_PLY)

    assert [(2930, 3310), (2550, 2930), (2170, 2550)] == [ranges(place.box)[1] for place in places]
    assert {(9200, 10090)} == {ranges(place.box)[2] for place in places}
    assert {BRACKET} == {end for place in places for end in (place.start, place.end)}


def test_bearers_carry_the_rows() -> None:
    """yb-b..yb, row -/+ d/2; example A: yb 288, rows 1373.5 and 1573.5."""
    bearers = of_role(lay_upper(setting_of(example_a()), RULES), Role.SCREEN_BEARER)

    assert [(13290, 14180), (15290, 16180)] == [ranges(place.box)[2] for place in bearers]
    assert {(2500, 2880)} == {ranges(place.box)[1] for place in bearers}


def test_an_extra_rear_rail_says_why() -> None:
    """Section 10.3; example B after checks: z 2425..2470."""
    additions = Additions(
        extra_rear_rails_tenth_mm=(24250,), reasons=(Reason(added=Added.REAR_RAIL, says="wall row: no cable scan"),)
    )
    (rail,) = of_role(lay_upper(setting_of(example_b(), added=additions), RULES), Role.EXTRA_REAR_RAIL)

    assert ((24250, 24700), "wall row: no cable scan", BRACKET) == (ranges(rail.box)[2], rail.reason, rail.start)
    assert {""} == {place.reason for place in lay_upper(setting_of(example_b()), RULES)}
    unnamed = Additions(extra_rear_rails_tenth_mm=(24250,))
    (bare,) = of_role(lay_upper(setting_of(example_b(), added=unnamed), RULES), Role.EXTRA_REAR_RAIL)
    assert "added by the checks" == bare.reason
