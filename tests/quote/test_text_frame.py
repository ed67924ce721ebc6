from __future__ import annotations

import re

import pytest

from tests.checks.row_cases import C0, on, wall
from tests.examples_of import changed, example_a, without
from tests.quote.text_facts import designed, part, read, text_of
from tests.sold_examples import NAMES


def test_sizes_of_the_worked_example() -> None:
    """`knowledge/worked-examples.md`, example A, "Derived"."""
    assert [
        "finished   1357 wide x 435 deep x 2515 high",
        "frame      1327 x 420 of 38 x 89 C16",
        "levels     platform 430; underside of the upper frame 920; top of the frame 2505",
        "fire       opening 1327 wide x 490 high, from 430",
    ] == part(text_of("A"), "SIZES")[:4]


def test_sums_of_the_worked_example() -> None:
    """`knowledge/worked-examples.md`, example A, closures."""
    sums = part(text_of("A"), "SUMS THAT MUST CLOSE")

    assert "face width        38 + 40.5 + 38 + 1094 + 38 + 40.5 + 38 = 1327 frame width" in sums
    assert "depth             89 + 242 + 89 + 15 = 435 finished depth" in sums


def test_members_are_drawn_together_with_where_they_stand() -> None:
    """`knowledge/worked-examples.md`, example B: member table and positions."""
    members = part(text_of("B"), "MEMBERS")

    assert "B-N1..8           cross noggin           8    195.5    195   x 0 525.3 1050.7 1576" in members
    assert "U-N1..12          ladder noggin         12    195.5    195   z 250 557.5 865 1247 1647 2081 2515" in members
    assert "U-L1..2           ladder upright         2     2360   2360*  x 0" in members
    assert f"{'':40}54    39452  39442".replace(" " * 40, " " * 40) in members


@pytest.mark.parametrize("name", NAMES)
def test_every_member_and_board_is_on_the_page(name: str) -> None:
    members = "\n".join(part(text_of(name), "MEMBERS"))
    counted = sum(int(found[1]) for found in re.finditer(r"^[BU]-\S+ +[a-z ]+?(\d+) ", members, re.MULTILINE))
    boards = [line.split()[0] for line in part(text_of(name), "BOARDS") if line.startswith("P-")]
    frame = designed(name).frame

    assert len(frame.members) == counted
    assert [panel.mark for panel in frame.panels] == boards


def test_boards_say_size_place_and_what_is_cut_out() -> None:
    """`knowledge/worked-examples.md`, example B, "Cut sizes"."""
    boards = part(text_of("B"), "BOARDS")

    assert "Plasterboard 12.5 square edge (BD-2125K):" in boards
    assert "P-FU1    face upper            1646 x 1102    z 865 to 1966.5; cut-out 1501 x 869 from 72.5, 195" in boards
    assert "P-FB1    face base             1646 x 259     z 0 to 250; lower edge tapered by 9" in boards
    assert "P-RL2    return left           396 x 925*     z 1694.5 to 2620; joint at its lower edge" in boards


def test_fixings_say_where_to_drill() -> None:
    """`knowledge/worked-examples.md`, example B: 17 wall fixings in rows, packers 0, 3, 6, 9; A: 8 ceiling screws."""
    b, a = part(text_of("B"), "FIXINGS"), part(text_of("A"), "FIXINGS")

    assert b[0].startswith("base       one bracket to the wall at each station: x 0, 525.3 on 3 of packing, 1050.7 on 6 of")
    assert "wall       17 through the upper frame, at z 568.8 (1), 887.5 (4), 1022.5 (4), 1497.5 (2), 1972.5" in b
    assert "ceiling    no screws" in b
    assert "ceiling    8 screws through the top rails, at x 63.5 463.5 863.5 1263.5" in a


def test_a_floor_whose_low_end_is_not_known_is_packed_up_to_its_fall() -> None:
    """The fall itself at every station would lift the base: `knowledge/framing.md`, section 3."""
    unknown = without(changed(example_a(), {"/survey/floor/fall_mm": 14}), "/survey/floor/levels", "/survey/floor/low_end")
    fixings = part(read(unknown), "FIXINGS")

    assert fixings[0].endswith("x 0, 429.7, 859.3, 1289")
    assert any("up to 14" in line for line in fixings)
    assert not any("of packing" in line for line in fixings)


def test_fixings_that_do_not_count_are_told() -> None:
    assert any("do not count" in line for line in part(read(wall("timber_stud")), "FIXINGS"))
    assert not any("do not count" in line for line in part(text_of("A"), "FIXINGS"))


def test_packs_made_on_site_stand_apart() -> None:
    text = read(on(C0, survey__brief__appliance_shift_mm=-205))

    assert "packs and ripped pieces, made on site:" in part(text, "MEMBERS")


def test_notes_of_the_layout_are_printed() -> None:
    """`knowledge/framing.md`, section 6: a cheek of 39.5 is packed (example C, off -165)."""
    assert any(
        line.startswith("note: pack the 39.5") for line in part(read(on(C0, survey__brief__appliance_shift_mm=-165)), "FIXINGS")
    )


def test_every_bracketed_end_is_named() -> None:
    """worked-examples.md, after checks: the trimmer of A in two brackets; of B in one, as its left end bears on the jack."""
    a, b = (" ".join(" ".join(part(text_of(name), "FIXINGS")).split()) for name in ("A", "B"))

    assert "an angle bracket at both ends of " in a
    assert all(mark in a for mark in ("U-T1", "U-S1", "U-TP1", "U-B1..2"))
    assert "U-T1 (right end)" in b
