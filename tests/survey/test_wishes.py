"""Things of several forms: the tag decides the form, and a form holds its own fields only."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.survey.appliance import ApplianceChoice, CatalogueAppliance, SizeClassAppliance
from service.survey.wishes import (
    BoardChoice,
    BracketChoice,
    Brief,
    CustomBoard,
    CustomTimber,
    ScreenChoice,
    SizeClassScreen,
    StrengthClass,
    TimberChoice,
    TopCeiling,
    TopChoice,
    TopPartHeight,
)

TIMBER = {"kind": "custom", "thickness_mm": 45, "width_mm": 73, "strength_class": "C16", "lengths_mm": [2400, 4800]}
BOARD = {
    "kind": "custom",
    "board_kind": "mdf",
    "thickness_mm": 15,
    "sheet_length_mm": 2440,
    "sheet_width_mm": 1220,
    "density_kg_m3": 720,
}


@pytest.mark.parametrize(
    ("choice", "sent", "meant"),
    [
        (ApplianceChoice, {"kind": "catalogue", "model": "AF-302"}, CatalogueAppliance(model="AF-302")),
        (ApplianceChoice, {"model": "AF-302", "kind": "catalogue"}, CatalogueAppliance(model="AF-302")),
        (
            ApplianceChoice,
            {"kind": "size_class", "open_ends_count": 2, "length_mm": 1500},
            SizeClassAppliance(open_ends_count=2, length_mm=1500),
        ),
        (ScreenChoice, {"kind": "size_class", "diagonal_in": 55, "bought": False}, SizeClassScreen(diagonal_in=55, bought=False)),
        (TopChoice, {"kind": "ceiling"}, TopCeiling()),
        (TopChoice, {"kind": "part_height", "height_mm": 1200}, TopPartHeight(height_mm=1200)),
        (
            TimberChoice,
            TIMBER,
            CustomTimber(thickness_mm=45, width_mm=73, strength_class=StrengthClass.C16, lengths_mm=(2400, 4800)),
        ),
    ],
)
def test_the_tag_decides_the_form(choice: Any, sent: dict[str, Any], meant: msgspec.Struct) -> None:  # noqa: ANN401 - a type
    assert meant == msgspec.convert(sent, choice)
    assert meant == msgspec.json.decode(msgspec.json.encode(meant), type=choice)


def test_a_board_of_its_own() -> None:
    board = msgspec.convert(BOARD, BoardChoice)

    assert isinstance(board, CustomBoard)
    assert (15, 2440, 1220) == (board.thickness_mm, board.sheet_length_mm, board.sheet_width_mm)


@pytest.mark.parametrize(
    ("choice", "sent"),
    [
        (ApplianceChoice, {"model": "AF-302"}),  # no kind
        (ApplianceChoice, {"kind": "gas", "model": "AF-302"}),
        (ApplianceChoice, {"kind": "catalogue"}),
        (ApplianceChoice, {"kind": "catalogue", "model": "AF 302"}),
        (ApplianceChoice, {"kind": "catalogue", "model": "AF-302", "length_mm": 1500}),  # of another form
        (ApplianceChoice, {"kind": "size_class", "open_ends_count": 3, "length_mm": 1500}),
        (ScreenChoice, {"kind": "size_class", "diagonal_in": 300}),
        (BracketChoice, {"kind": "size_class"}),
        (TopChoice, {"kind": "part_height"}),
        (TopChoice, {"kind": "ceiling", "height_mm": 1200}),
        (TimberChoice, {**TIMBER, "strength_class": "ungraded"}),
        (TimberChoice, {**TIMBER, "lengths_mm": []}),
        (BoardChoice, {**BOARD, "thickness_mm": 60}),
    ],
)
def test_other_forms_are_refused(choice: Any, sent: dict[str, Any]) -> None:  # noqa: ANN401 - a type
    with pytest.raises(msgspec.ValidationError):
        msgspec.convert(sent, choice)


def test_a_wish_left_out_is_none() -> None:
    brief = msgspec.convert({"appliance": {"kind": "catalogue", "model": "AF-302"}}, Brief)

    left_out = [name for name in Brief.__struct_fields__ if name != "appliance"]
    assert 20 <= len(left_out)
    assert {None} == {getattr(brief, name) for name in left_out}
