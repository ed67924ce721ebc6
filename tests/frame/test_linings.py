"""Framing.md, sections 2.1 and 5: the boards of the screen recess. Sizes of A and B: test_worked_examples.py."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame import PanelRole
from service.frame.linings import recess_pieces
from service.rules import load_rules
from tests.examples_of import Request, changed, example_a, example_c, job_of
from tests.frame.geometry import ranges
from tests.frame.settings_of import BRIEF, setting_of

if TYPE_CHECKING:
    from service.frame.panels import Piece

RULES = load_rules()


def pieces(request: Request) -> dict[PanelRole, list[Piece]]:
    """Boards of the recess by role."""
    made: dict[PanelRole, list[Piece]] = {}
    for piece in recess_pieces(setting_of(request), job_of(request), RULES):
        made.setdefault(piece.role, []).append(piece)
    return made


def test_no_screen_no_recess() -> None:
    assert {} == pieces(example_c())


def test_upright_linings_stand_between_the_level_ones() -> None:
    """2 of length Fw (bottom, top), 2 of length Rh (sides), Dr - tf deep; example A: z 1130..1817, y 306..420."""
    made = {role: ranges(found[0].box) for role, found in pieces(example_a()).items()}

    assert ((1165, 12105), (3060, 4200), (11300, 11450)) == made[PanelRole.LINING_BOTTOM]
    assert ((1165, 12105), (3060, 4200), (18020, 18170)) == made[PanelRole.LINING_TOP]
    assert ((1165, 1315), (3060, 4200), (11450, 18020)) == made[PanelRole.LINING_LEFT]
    assert ((11955, 12105), (3060, 4200), (11450, 18020)) == made[PanelRole.LINING_RIGHT]


def test_the_backboard_stands_before_the_bearers() -> None:
    """Fw x Fh x tb, front face at Df - (Dr - tf); the bearers begin at its back, 288."""
    (back,) = pieces(example_a())[PanelRole.BACKBOARD]

    assert ((1165, 12105), (2880, 3060), (11300, 18170)) == ranges(back.box)


def test_linings_are_cut_down() -> None:
    """Linings that stand between two others, and the depth of every lining, down; the others to the nearest."""
    screen = {
        "kind": "custom", "name": "odd", "diagonal_in": 43, "body_width_mm": 964.5, "body_height_mm": 557.9,
        "body_depth_mm": 74.9, "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
    }  # fmt: skip
    made = pieces(changed(example_a(), {f"{BRIEF}/screen": screen}))
    cut = {role: (found[0].cut_width_mm, found[0].cut_height_mm) for role, found in made.items()}

    assert (1095, 114) == cut[PanelRole.LINING_BOTTOM]  # 1094.5 x 114.9
    assert (657, 114) == cut[PanelRole.LINING_LEFT]  # 657.9
    assert (1095, 688) == cut[PanelRole.BACKBOARD]  # 1094.5 x 687.9


def test_a_backboard_too_high_for_its_sheet_is_joined_on_a_bearer() -> None:
    """Every joint on timber (section 11): the centre line of a bearer, here the upper row."""
    high = {
        "kind": "custom", "name": "high", "diagonal_in": 80, "body_width_mm": 1850, "body_height_mm": 1120, "body_depth_mm": 60,
        "mass_kg": 40, "hole_pattern_width_mm": 400, "hole_pattern_height_mm": 400,
    }  # fmt: skip
    request = changed(
        example_a(),
        {
            f"{BRIEF}/screen": high,
            f"{BRIEF}/screen_bracket": {"kind": "catalogue", "model": "BK-402"},
            f"{BRIEF}/platform_height_mm": 0,
            f"{BRIEF}/appliance": {"kind": "size_class", "open_ends_count": 2, "length_mm": 2200},
        },
    )
    at = setting_of(request)
    assert at.recess is not None
    lower, upper = pieces(request)[PanelRole.BACKBOARD]

    assert 12_500 == at.recess.framing_height_tenth_mm
    assert at.recess.row_levels_tenth_mm[1] == lower.box.z1_tenth_mm == upper.box.z0_tenth_mm
    assert (False, True) == (lower.joint_below, upper.joint_below)
    assert 1250 == lower.cut_height_mm + upper.cut_height_mm
