"""Finding a row of a rule set by its name."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from service.rules import load_rules

if TYPE_CHECKING:
    from collections.abc import Callable

RULES = load_rules("recommended-2026.1")
FINDERS = [RULES.strength_class, RULES.duration_factors, RULES.wall_load, RULES.lift_zone]


@pytest.mark.parametrize(
    ("find", "name"),
    [
        (RULES.strength_class, "C24"),
        (RULES.duration_factors, "mdf_la_1"),
        (RULES.wall_load, "concrete.sound.screw_6"),
        (RULES.lift_zone, "above_shoulder"),
    ],
)
def test_rows_are_found_by_name(find: Callable[[str], object], name: str) -> None:
    assert name == getattr(find(name), "name", "")


@pytest.mark.parametrize("find", FINDERS)
def test_what_has_no_row_has_no_value(find: Callable[[str], object]) -> None:
    with pytest.raises(KeyError, match="C17"):
        find("C17")
