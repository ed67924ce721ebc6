"""A fastener in two timbers by plastic limit analysis: linear programming (scipy), no formula of the standard.

Lower-bound theorem: the greatest force for which some pressures within the embedment strengths balance it, and the fastener's
moment stays within its yield moment. Units N, mm, MPa.
"""

from __future__ import annotations

import numpy as np
from scipy.optimize import linprog  # type: ignore[import-untyped]  # the library has no types

CELLS = 240


def limit_load_n(
    *,
    head_embedment_mpa: float,
    point_embedment_mpa: float,
    head_length_mm: float,
    point_length_mm: float,
    diameter_mm: float,
    yield_n_mm: float,
) -> float:
    """Greatest force that one timber can put on the other."""
    head_cells = round(CELLS * head_length_mm / (head_length_mm + point_length_mm))
    head_cells = min(max(head_cells, CELLS // 4), CELLS - CELLS // 4)
    sizes = np.concatenate(
        (
            np.full(head_cells, head_length_mm / head_cells),
            np.full(CELLS - head_cells, point_length_mm / (CELLS - head_cells)),
        )
    )
    ends = np.cumsum(sizes)
    middles = ends - sizes / 2
    strengths = np.where(np.arange(CELLS) < head_cells, head_embedment_mpa, point_embedment_mpa) * diameter_mm
    arms = np.clip(ends[:, None] - middles[None, :], 0, None) * (np.arange(CELLS)[None, :] <= np.arange(CELLS)[:, None])
    moments = arms * sizes[None, :]
    moments_of_all = (ends[-1] - middles) * sizes
    found = linprog(
        -np.where(np.arange(CELLS) < head_cells, sizes, 0.0),
        A_ub=np.vstack((moments, -moments)),
        b_ub=np.full(2 * CELLS, yield_n_mm),
        A_eq=np.vstack((sizes, moments_of_all)),
        b_eq=np.zeros(2),
        bounds=np.column_stack((-strengths, strengths)),
    )
    return float(-found.fun)
