"""Boundary tests on A, B and C, laid out: the tables "boundary test" of `knowledge/worked-examples.md`, row by row."""

from __future__ import annotations

import pytest

from service.frame import Role
from tests.examples_of import changed, example_a, example_b, example_c, frame_of, job_of, unmet_of
from tests.frame.geometry import count_by_role

BRIEF = "/survey/brief"
A, B, C = example_a(), example_b(), example_c()


def with_height(height_mm: float) -> dict[str, object]:
    """Example A under another flat ceiling."""
    heights = [{**point, "height_mm": height_mm} for point in A["survey"]["room"]["heights"]]
    return changed(A, {"/survey/room/heights": heights})


def with_screen(width_mm: float) -> dict[str, object]:
    """Example A with a screen of another width, else like SC-043."""
    screen = {
        "kind": "custom", "name": "boundary", "diagonal_in": 43, "body_width_mm": width_mm, "body_height_mm": 557,
        "body_depth_mm": 74, "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
        "hole_centre_offset_mm": 0, "least_gap_mm": 50,
    }  # fmt: skip
    return changed(A, {f"{BRIEF}/screen": screen})


def pieces(request: dict[str, object]) -> int:
    """How many members are cut from bars."""
    return sum(member.from_bar for member in frame_of(request).members)


def codes(request: dict[str, object]) -> list[str]:
    """Codes of what keeps a request from being built."""
    return [unmet.code for unmet in unmet_of(request)]


def test_a_highest_platform() -> None:
    """z0 1042: fits with no cripple above the head, 47 pieces, asked back over 1000; 1043: recess_high, offer 1042."""
    highest = changed(A, {f"{BRIEF}/platform_height_mm": 1042})
    frame = frame_of(highest)

    assert 47 == pieces(highest)
    assert Role.CRIPPLE_ABOVE not in count_by_role(frame)
    assert any("1042" in note and "confirm" in note for note in frame.notes)
    (refusal,) = unmet_of(changed(A, {f"{BRIEF}/platform_height_mm": 1043}))
    assert ("recess_high", 1.0) == (refusal.code, refusal.short_by_mm)
    assert "a platform of at most 1042" in refusal.offer


def test_a_lowest_ceiling() -> None:
    """H 1903 fits, 1902 does not."""
    assert [] == codes(with_height(1903))
    assert ["recess_high"] == codes(with_height(1902))


@pytest.mark.parametrize(
    ("width_mm", "full_width", "framing_mm", "clear_mm", "count"),
    [(1045, False, 1175, 1145, 54), (1046, True, 1251, 1221, 48), (1121, True, 1251, 1221, 48)],
)
def test_a_widths_of_screens(*, width_mm: float, full_width: bool, framing_mm: float, clear_mm: float, count: int) -> None:
    """Body 1045: jamb mode with gap 0, 54 pieces; 1046: full-width mode (Fw 1251, Rw 1221), 48 pieces; 1121 still fits."""
    request = with_screen(width_mm)
    recess = frame_of(request).sizes.recess

    assert recess is not None
    assert full_width is recess.full_width
    assert (framing_mm, clear_mm) == (recess.framing_width_tenth_mm / 10, recess.clear_width_tenth_mm / 10)
    assert 0 == recess.jamb_gap_tenth_mm
    assert count == pieces(request)


def test_a_screen_too_wide() -> None:
    """Body 1122: recess_wide; the largest is 1121."""
    (refusal,) = unmet_of(with_screen(1122))

    assert ("recess_wide", 1252.0, 1251.0) == (refusal.code, refusal.asked_mm, refusal.available_mm)
    assert "a screen at most 1121 wide" in refusal.offer


def test_a_screens_of_the_catalogue() -> None:
    """SC-050: full width, 48 pieces, side gap 51; SC-055: Fw 1360 > 1251."""
    larger = changed(A, {f"{BRIEF}/screen/model": "SC-050"})
    recess = frame_of(larger).sizes.recess

    assert recess is not None
    assert recess.full_width
    assert 51 == (recess.clear_width_tenth_mm / 10 - 1119) / 2
    assert 48 == pieces(larger)
    too_wide = changed(A, {f"{BRIEF}/screen/model": "SC-055", f"{BRIEF}/screen_bracket": None})
    (refusal,) = unmet_of(too_wide)
    assert ("recess_wide", 1360.0, 1251.0) == (refusal.code, refusal.asked_mm, refusal.available_mm)


@pytest.mark.parametrize(
    ("width_mm", "found"), [(1400, ["width_fixed"]), (1358.1, ["width_fixed"]), (1358, []), (1356, []), (1357, [])]
)
def test_a_width_is_a_result(width_mm: float, found: list[str]) -> None:
    """W 1400 sent: width_fixed, answer 1357; framing.md, section 13: it may differ by 1."""
    request = changed(A, {f"{BRIEF}/breast_width_mm": width_mm})

    assert found == codes(request)
    assert all("1357" in refusal.offer for refusal in unmet_of(request))
    if not found:
        assert 13570 == frame_of(request).sizes.finished_width_tenth_mm


def test_a_least_depth() -> None:
    """D 369: depth_fire (330 + 40), offer 370."""
    (refusal,) = unmet_of(changed(A, {f"{BRIEF}/breast_depth_mm": 369}))

    assert ("depth_fire", 370.0, 369.0) == (refusal.code, refusal.asked_mm, refusal.available_mm)
    assert "370" in refusal.offer
    assert [] == codes(changed(A, {f"{BRIEF}/breast_depth_mm": 370}))


def test_b_highest_platform() -> None:
    """z0 826 fits; 827: recess_high, offer 826."""
    assert [] == codes(changed(B, {f"{BRIEF}/platform_height_mm": 826}))
    (refusal,) = unmet_of(changed(B, {f"{BRIEF}/platform_height_mm": 827}))
    assert "recess_high" == refusal.code
    assert "a platform of at most 826" in refusal.offer


def test_b_smaller_screen_gets_jambs() -> None:
    """SC-058 (1296 x 744, rows 200): jamb mode, gap 7.5 (packed), 59 pieces."""
    request = changed(B, {f"{BRIEF}/screen/model": "SC-058"})
    frame = frame_of(request)
    recess = frame.sizes.recess

    assert recess is not None
    assert (False, 7.5) == (recess.full_width, recess.jamb_gap_tenth_mm / 10)
    assert 200 == (recess.row_levels_tenth_mm[1] - recess.row_levels_tenth_mm[0]) / 10
    assert 59 == pieces(request)
    assert "pack the 7.5 between jamb and ladder at both sides" in frame.notes


def test_b_larger_screen() -> None:
    """SC-065 (1451 x 831): Fw 1581 > 1531: recess_wide, largest body 1401; W 1700 fits full width (Fw 1581), 1699 does not."""
    larger = changed(B, {f"{BRIEF}/screen/model": "SC-065"})
    (refusal,) = unmet_of(larger)

    assert ("recess_wide", 1581.0, 1531.0) == (refusal.code, refusal.asked_mm, refusal.available_mm)
    assert "a screen at most 1401 wide" in refusal.offer
    assert "a width of 1700" in refusal.offer
    recess = frame_of(changed(larger, {f"{BRIEF}/breast_width_mm": 1700})).sizes.recess
    assert recess is not None
    assert (True, 1581) == (recess.full_width, recess.framing_width_tenth_mm / 10)
    assert ["recess_wide"] == codes(changed(larger, {f"{BRIEF}/breast_width_mm": 1699}))


def test_b_least_width_without_a_screen() -> None:
    """W 1215: the opening's edge lies on the closed ladder, no jack; 1214: width_fire_2; with a jack from 1260."""
    bare = changed(B, {f"{BRIEF}/screen": None})

    def jacks(width_mm: float) -> int:
        return count_by_role(frame_of(changed(bare, {f"{BRIEF}/breast_width_mm": width_mm}))).get(Role.JACK_STUD, 0)

    assert (0, 0, 1) == (jacks(1215), jacks(1259.9), jacks(1260))
    frame = frame_of(changed(bare, {f"{BRIEF}/breast_width_mm": 1215}))
    assert 450 == frame.openings[0].x0_tenth_mm  # the inner face of the closed ladder
    (refusal,) = unmet_of(changed(bare, {f"{BRIEF}/breast_width_mm": 1214}))
    assert "width_fire_2" == refusal.code
    assert "a width of 1215, or 1260 with a jack stud" == refusal.offer


@pytest.mark.parametrize(("shift_mm", "count", "noggins"), [(-164.5, 47, 4), (-165, 45, 2), (-204.5, 46, 2)])
def test_c_shifts(shift_mm: float, count: int, noggins: int) -> None:
    """Off -164.5: left gap 40, two noggins, 47 pieces; -165: packer, 45; -204.5: no noggins, one stud at the right, 46."""
    request = changed(C, {f"{BRIEF}/appliance_shift_mm": shift_mm})

    assert count == pieces(request)
    assert noggins == count_by_role(frame_of(request))[Role.CHEEK_NOGGIN]


def test_c_narrow_cheek_is_packed() -> None:
    """Off -165: left gap 39.5, a packer in place of noggins."""
    frame = frame_of(changed(C, {f"{BRIEF}/appliance_shift_mm": -165}))

    assert "pack the 39.5 between jack and ladder at the left" in frame.notes


def test_c_wide_cheek_gets_a_stud() -> None:
    """Off -204.5: left gap 0 with jack and no noggins; right gap 409 > 400: one cheek stud of 469."""
    frame = frame_of(changed(C, {f"{BRIEF}/appliance_shift_mm": -204.5}))
    (stud,) = [member for member in frame.members if member.role is Role.CHEEK_STUD]

    assert 469 == stud.length_tenth_mm / 10
    assert 2 == count_by_role(frame)[Role.JACK_STUD]
    assert () == tuple(note for note in frame.notes if note.startswith("pack"))


def test_c_ladder_as_jamb() -> None:
    """Off -205: left gap -0.5: no left jack, packer 37.5 wide, span ladder to right jack 807.5, plies 0."""
    frame = frame_of(changed(C, {f"{BRIEF}/appliance_shift_mm": -205}))
    (packer,) = [member for member in frame.members if member.role is Role.JAMB_PACKER]

    assert (37.5, 545) == ((packer.box.x1_tenth_mm - packer.box.x0_tenth_mm) / 10, packer.length_tenth_mm / 10)
    assert not packer.from_bar
    assert 1 == count_by_role(frame)[Role.JACK_STUD]
    assert (807.5, 0) == (frame.sizes.trimmer_span_tenth_mm / 10, frame.ply_count)


def test_c_largest_shift() -> None:
    """Off -243: width_fire_1, largest shift 242.5."""
    (refusal,) = unmet_of(changed(C, {f"{BRIEF}/appliance_shift_mm": -243}))

    assert ("width_fire_1", 243.0, 242.5) == (refusal.code, refusal.asked_mm, refusal.available_mm)
    assert "242.5" in refusal.offer
    assert [] == codes(changed(C, {f"{BRIEF}/appliance_shift_mm": -242.5}))
    assert [] == codes(changed(C, {f"{BRIEF}/appliance_shift_mm": 242.5}))


def test_c_low_platforms() -> None:
    """z0 105: flat frame on packs; 106: the normal base."""
    flat = count_by_role(frame_of(changed(C, {f"{BRIEF}/platform_height_mm": 105})))
    normal = count_by_role(frame_of(changed(C, {f"{BRIEF}/platform_height_mm": 106})))

    assert (2, 0) == (flat[Role.RAIL], flat.get(Role.UPRIGHT, 0))
    assert (4, 10) == (normal[Role.RAIL], normal[Role.UPRIGHT])


def test_c_highest_part_height() -> None:
    """P 2151: part_high, offer 2150."""
    (refusal,) = unmet_of(changed(C, {f"{BRIEF}/top/height_mm": 2151}))

    assert ("part_high", 2151.0, 2150.0) == (refusal.code, refusal.asked_mm, refusal.available_mm)
    assert "2150" in refusal.offer
    assert [] == codes(changed(C, {f"{BRIEF}/top/height_mm": 2150}))


def test_c_least_width() -> None:
    """W 870 (off 0): no jacks, opening as wide as the clear frame; 869: width_fire_1. With jacks from 946."""
    centred = changed(C, {f"{BRIEF}/appliance_shift_mm": 0})

    def jacks(width_mm: float) -> int:
        return count_by_role(frame_of(changed(centred, {f"{BRIEF}/breast_width_mm": width_mm}))).get(Role.JACK_STUD, 0)

    assert (0, 0, 2) == (jacks(870), jacks(945), jacks(946))
    sizes = frame_of(changed(centred, {f"{BRIEF}/breast_width_mm": 870})).sizes
    assert sizes.opening_width_tenth_mm == sizes.rail_length_tenth_mm == sizes.trimmer_span_tenth_mm
    (refusal,) = unmet_of(changed(centred, {f"{BRIEF}/breast_width_mm": 869}))
    assert "width_fire_1" == refusal.code
    assert "a width of 870, or 946 with jack studs" == refusal.offer


def test_the_offers_of_the_tables_can_be_built() -> None:
    """Each offer of a number, taken: framing.md, section 13, offers are re-run through the whole design."""
    taken = [
        changed(A, {f"{BRIEF}/platform_height_mm": 1042}),
        changed(A, {f"{BRIEF}/breast_depth_mm": 370}),
        changed(A, {f"{BRIEF}/breast_width_mm": 1357}),
        changed(B, {f"{BRIEF}/platform_height_mm": 826}),
        changed(C, {f"{BRIEF}/top/height_mm": 2150}),
    ]

    assert [[]] * len(taken) == [codes(request) for request in taken]
    assert 435 == job_of(A).depth_tenth_mm / 10
