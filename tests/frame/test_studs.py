"""Framing.md, sections 4, 4.2, 5 and 6: jambs, cripples, studs, jacks and cheeks."""

from __future__ import annotations

import pytest

from service.frame import CutWhen, Role
from service.frame.studs import cheek_stud_centres, is_framed, jambs, lay_cheeks, lay_studs, stud_centres
from service.rules import load_rules
from tests.examples_of import Request, changed, example_a, example_b, example_c
from tests.frame.geometry import ranges
from tests.frame.settings_of import BRIEF, of_role, setting_of, timber

RULES = load_rules()
WIDE: Request = changed(
    example_c(),
    {
        f"{BRIEF}/screen": {"kind": "catalogue", "model": "SC-043"},
        f"{BRIEF}/top": {"kind": "ceiling"},
        f"{BRIEF}/appliance_shift_mm": 0,
        f"{BRIEF}/breast_width_mm": 2200,
    },
)


def centres(request: Request) -> tuple[float, ...]:
    """Centres of studs in mm."""
    return tuple(centre / 10 for centre in stud_centres(setting_of(request)))


def test_centres_without_a_screen_run_between_the_ladders() -> None:
    """spread(b/2, Wf - b/2, m); example C."""
    assert (342.3, 665.5, 988.8) == centres(example_c())
    assert () == jambs(setting_of(example_c()))


def test_centres_in_jamb_mode() -> None:
    """The two jamb centres and a spread between them; example A."""
    assert (97.5, 663.5, 1229.5) == centres(example_a())
    assert ((785, 1165), (12105, 12485)) == jambs(setting_of(example_a()))


def test_centres_in_full_width_mode() -> None:
    assert (547.8, 1073.2) == centres(example_b())
    assert () == jambs(setting_of(example_b()))


def test_a_wide_gap_beside_the_jambs_is_spread_too() -> None:
    """Jamb-to-ladder gap (2176 - 1094)/2 - 76 = 465 > 400: one more on each side, half way; front studs beside the recess."""
    at = setting_of(WIDE)
    assert at.recess is not None

    assert 4650 == at.recess.jamb_gap_tenth_mm
    assert (270.5, 522, 899.3, 1276.7, 1654, 1905.5) == centres(WIDE)
    studs = of_role(lay_studs(at), Role.FRONT_STUD)
    assert [(at.zs, at.zh)] * 2 == [ranges(stud.box)[2] for stud in studs]
    assert [(2515, 2895), (18865, 19245)] == [ranges(stud.box)[0] for stud in studs]


def test_a_gap_as_wide_as_the_board_allows_is_left() -> None:
    request = changed(WIDE, {f"{BRIEF}/breast_width_mm": 2070})
    at = setting_of(request)
    assert at.recess is not None

    assert 4000 == at.recess.jamb_gap_tenth_mm
    assert 4 == len(stud_centres(at))


def test_cripples_stand_in_line_with_the_jambs() -> None:
    """Also where a centre of an odd width was rounded: 38.1 timber."""
    odd = changed(example_a(), {f"{BRIEF}/timber": timber(38.1, 89)})
    at = setting_of(odd)
    places = lay_studs(at)

    assert list(jambs(at)) == [ranges(jamb.box)[0] for jamb in of_role(places, Role.JAMB_STUD)]
    for role in (Role.CRIPPLE_BELOW, Role.CRIPPLE_ABOVE):
        below = [ranges(place.box)[0] for place in of_role(places, role)]
        assert set(jambs(at)) <= set(below)


def test_heights_of_what_stands_between_the_rails() -> None:
    """Example A: cripples 134 and 612, jambs 687; those that follow from the ceiling wait for it."""
    places = lay_studs(setting_of(example_a()))

    def heights(role: Role) -> set[tuple[float, CutWhen]]:
        return {((place.box.z1_tenth_mm - place.box.z0_tenth_mm) / 10, place.cut_when) for place in of_role(places, role)}

    assert {(134, CutWhen.NOW)} == heights(Role.CRIPPLE_BELOW)
    assert {(687, CutWhen.NOW)} == heights(Role.JAMB_STUD)
    assert {(612, CutWhen.AFTER_MEASURE)} == heights(Role.CRIPPLE_ABOVE)


def test_no_cripple_of_no_length() -> None:
    """Cripple above head: none if its length is 0 (boundary of A at z0 1042)."""
    at = setting_of(changed(example_a(), {f"{BRIEF}/platform_height_mm": 1042}))

    assert [] == of_role(lay_studs(at), Role.CRIPPLE_ABOVE)


def test_a_short_cripple_is_made_as_a_pack() -> None:
    at = setting_of(changed(example_a(), {f"{BRIEF}/platform_height_mm": 1022}))
    (height,) = {place.box.z1_tenth_mm - place.box.z0_tenth_mm for place in of_role(lay_studs(at), Role.CRIPPLE_ABOVE)}

    assert 200 == height


@pytest.mark.parametrize(
    ("shift_mm", "framed", "stud_mm"),
    [
        (-60, (True, True), ((), ())),
        (-164.6, (False, True), ((), ())),
        (-204.5, (False, True), ((), (1088.5,))),
        (204.5, (True, False), ((242.5,), ())),
    ],
)
def test_cheeks_of_c(shift_mm: float, framed: tuple[bool, bool], stud_mm: tuple[tuple[float, ...], ...]) -> None:
    """Gc >= 40: noggins; gc > m: also studs by spread: 409 between jack (centre 865) and ladder (1312): one at 1088.5."""
    at = setting_of(changed(example_c(), {f"{BRIEF}/appliance_shift_mm": shift_mm}))

    assert framed == tuple(is_framed(at, RULES, left=left) for left in (True, False))
    found = tuple(tuple(centre / 10 for centre in cheek_stud_centres(at, RULES, left=left)) for left in (True, False))
    assert stud_mm == found


def test_noggins_of_a_cheek() -> None:
    """Between ladder and jack, z0..z0+b and z1-b..z1; example C left 144.5, right 264.5."""
    at = setting_of(example_c())
    noggins = [ranges(place.box) for place in of_role(lay_cheeks(at, RULES), Role.CHEEK_NOGGIN)]

    assert {(380, 1825), (10285, 12930)} == {x for x, _y, _z in noggins}
    assert {(1340, 1720), (6410, 6790)} == {z for _x, _y, z in noggins}
    assert {(at.df - at.d, at.df)} == {y for _x, y, _z in noggins}


def test_jacks_stand_on_the_edge_of_the_opening() -> None:
    jacks = [ranges(place.box)[0] for place in of_role(lay_cheeks(setting_of(example_c()), RULES), Role.JACK_STUD)]

    assert [(1825, 2205), (9905, 10285)] == jacks


@pytest.mark.parametrize(
    ("shift_mm", "side", "packer"), [(-205, "left", (380, 755)), (205, "right", (12555, 12930)), (-242.5, "left", None)]
)
def test_where_the_ladder_is_the_jamb(shift_mm: float, side: str, packer: tuple[int, int] | None) -> None:
    """-b <= gc < 0: a packer of width xa-b, depth d, length Az; none where the opening lies on the ladder."""
    at = setting_of(changed(example_c(), {f"{BRIEF}/appliance_shift_mm": shift_mm}))
    places = lay_cheeks(at, RULES)
    packers = of_role(places, Role.JAMB_PACKER)

    assert ([] if packer is None else [packer]) == [ranges(place.box)[0] for place in packers]
    (jack,) = of_role(places, Role.JACK_STUD)
    assert ("right" if side == "left" else "left") == ("right" if jack.box.x0_tenth_mm > at.wf // 2 else "left")


def test_an_open_end_has_no_cheek() -> None:
    assert () == lay_cheeks(setting_of(example_a()), RULES)
    at = setting_of(example_b())
    assert (True, False) == tuple(is_framed(at, RULES, left=left) for left in (True, False))
