from __future__ import annotations

from collections import Counter

import msgspec

from service.cutting import Defect, Effort, never
from service.cutting.meter import Meter
from service.cutting.plunge_packing import ask_plunge
from service.cutting.sheet_packing import Way
from service.cutting.sheet_problem import state_sheets
from tests.cutting.jobs import pinwheel, sheets


def asked(job: object, way: Way = Way.TREE, work: int = 2_000) -> object:
    return ask_plunge(state_sheets(job), way, 64, Meter(Effort(work_count=work), never))  # type: ignore[arg-type]  # built here


def test_a_pinwheel_fits_one_sheet() -> None:
    problem = state_sheets(pinwheel())
    (layout,) = ask_plunge(problem, Way.TREE, 64, Meter(Effort(), never)) or ()

    assert [kind.demand for kind in problem.kinds] == [
        Counter(piece.kind for piece in layout.pieces)[at] for at in range(len(problem.kinds))
    ]


def test_a_defect_is_kept_clear() -> None:
    """With a hole in the corner where a piece must lie the pinwheel needs more than the one sheet, and there is no second."""
    hole = Defect(x_tenth_mm=0, y_tenth_mm=0, width_tenth_mm=100, height_tenth_mm=100)
    job = pinwheel(copies=1)
    marred = msgspec.structs.replace(job, stock=(msgspec.structs.replace(job.stock[0], defects=(hole,)),))

    assert asked(job) is not None
    assert asked(marred) is None


def test_it_is_not_asked_beyond_the_work_or_about_many_pieces() -> None:
    meter = Meter(Effort(work_count=1), never)

    assert ask_plunge(state_sheets(pinwheel()), Way.TREE, 64, meter) is None
    assert 0 == meter.work_count
    assert asked(sheets([(100, 100, 61)])) is None


def test_every_search_can_be_asked() -> None:
    job = sheets([(900, 500, 3), (700, 400, 4)])

    assert all(asked(job, way, 100_000) for way in (Way.TREE, Way.KNAPSACKS, Way.CORRECTION))
