"""Levels of the height chains, against the closure of heights (`knowledge/framing.md`, section 2, identity 3)."""

from __future__ import annotations

from itertools import pairwise

import pytest

from service.drawings.levels import heights_of
from tests.drawings.cases import REQUESTS, case


@pytest.mark.parametrize("name", REQUESTS)
def test_levels_rise_from_the_floor_to_the_top_of_the_frame(name: str) -> None:
    frame, _ = case(name)
    levels = heights_of(frame)

    assert 0 == levels[0]
    assert frame.levels.upper_top_tenth_mm == levels[-1] == max(member.box.z1_tenth_mm for member in frame.members)
    assert all(low <= high for low, high in pairwise(levels))


def test_levels_of_the_worked_examples() -> None:
    """`knowledge/worked-examples.md`: A 430 + 490 + 210 + 687 + 688 = 2505; C 134 + 545 + 190 + 293 = 1162."""
    assert (0, 4300, 9200, 11_300, 18_170, 25_050) == heights_of(case("a")[0])
    assert (0, 1340, 6790, 8690, 11_620) == heights_of(case("c")[0])
