from __future__ import annotations

import pytest

from service.checks.cable_zones import counted_fixings
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import example
from tests.sold_examples import ADDITIONS, sold

SOCKET = {"kind": "socket", "x_mm": 2000, "z_mm": 300}  # in the middle of B


def count_of(**changes: object) -> int:
    return len(counted_fixings(ground_of(sold("B", **changes), ADDITIONS["B"])))


def test_worked_examples() -> None:
    """worked-examples.md: A 16, all scanned; B 17 after checks, 13 as laid out; C 14."""
    counts = [len(counted_fixings(example(name))) for name in ("A", "B", "C")]

    assert [16, 17, 14] == counts
    assert 13 == len(counted_fixings(example("B", laid_out=True)))


@pytest.mark.parametrize(
    ("accessory", "count"),
    [
        (SOCKET, 17),  # no fixing straight above, and none level with it
        ({**SOCKET, "x_mm": 1745}, 14),  # the rails' fixings at x 555 of the frame, 1744.8 of the wall
        ({**SOCKET, "x_mm": 1745 + 94}, 17),  # half a plate of 43 and 50 beside it do not reach
        ({**SOCKET, "x_mm": 1745 + 92}, 14),
        ({**SOCKET, "x_mm": 1745 + 120, "gang_count": 2}, 14),  # 146 wide
        ({**SOCKET, "z_mm": 1022.5}, 13),  # level with a row of 4
    ],
)
def test_bands_of_accessories(accessory: dict[str, object], count: int) -> None:
    """services.md, 3: straight up, down or sideways from a visible accessory."""
    assert count == count_of(survey__services__accessories=[accessory])
    assert 17 < count_of(survey__services__accessories=[accessory], survey__services__cable_scan="done")


def test_corners() -> None:
    """services.md, 3: within 150 mm of an angle of two walls; B from 1189.5 to 2810.5, its uprights 22.5 inside, 5 there."""
    assert 17 - 5 == count_of(survey__room__wall_length_mm=2810.5 - 22.5 + 149)
    assert 17 == count_of(survey__room__wall_length_mm=2810.5 - 22.5 + 151)
