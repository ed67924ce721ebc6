"""Labels: the same pieces always get the same places, whatever order they came in."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable


def natural_key(label: str) -> tuple[tuple[int, int, str], ...]:
    """Order labels as people do: `B-R2` before `B-R10`. Equal only for equal labels."""
    parts = [part for part in re.split(r"([0-9]+)", label) if part]
    return (*((0, int(part), part) if part.isascii() and part.isdigit() else (1, 0, part) for part in parts), (0, -1, label))


def spread(labels: Iterable[tuple[str, int]]) -> list[str]:
    """Give every label as often as it is counted, in natural order."""
    ordered = sorted(labels, key=lambda item: natural_key(item[0]))
    return [label for label, count in ordered for _ in range(count)]
