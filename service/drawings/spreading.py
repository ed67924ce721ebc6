"""Spreading labels along a line: least squares from where each would like to stand, in order, none touching the next."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Sequence


_EXACT_FIT_MM: Final = 1e-6


def spread(
    want_mm: Sequence[float], size_mm: Sequence[float], gap_mm: float, bounds_mm: tuple[float, float] | None = None
) -> list[float]:
    """Centres of labels, in mm.

    Args:
        want_mm: where each centre would like to stand, rising.
        size_mm: how long each label is along the line.
        gap_mm: least clear space between neighbours.
        bounds_mm: the labels keep between these, as long as there is room for all of them.

    Source: pool adjacent violators (isotonic regression by least squares; from memory), on positions less the room that
    the labels before take.
    """
    if not want_mm:
        return []
    offsets = [0.0]
    for first, second in pairwise(size_mm):
        offsets.append(offsets[-1] + (first + second) / 2 + gap_mm)
    flat = _rising([want - offset for want, offset in zip(want_mm, offsets, strict=True)])
    if bounds_mm is not None:
        low, high = bounds_mm[0] + size_mm[0] / 2, bounds_mm[1] - size_mm[-1] / 2 - offsets[-1]
        if low <= high + _EXACT_FIT_MM:
            flat = [min(max(value, low), high) for value in flat]
    return [value + offset for value, offset in zip(flat, offsets, strict=True)]


def _rising(values: list[float]) -> list[float]:
    """The nearest rising sequence by least squares."""
    blocks: list[tuple[float, int]] = []
    for value in values:
        total, count = value, 1
        while blocks and blocks[-1][0] / blocks[-1][1] > total / count:
            before = blocks.pop()
            total, count = total + before[0], count + before[1]
        blocks.append((total, count))
    return [total / count for total, count in blocks for _ in range(count)]
