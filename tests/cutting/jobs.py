"""Cutting jobs for tests: short builders, the worked lists, and strategies over what a workshop could ask."""

from __future__ import annotations

from itertools import combinations_with_replacement
from typing import TYPE_CHECKING

from hypothesis import strategies as st

from service.cutting import BarAim, BarJob, BarPiece, BarStock, Defect, FirstCut, SheetJob, SheetLayout, SheetPiece, SheetStock

if TYPE_CHECKING:
    from collections.abc import Iterable

    from hypothesis.strategies import DrawFn

# Example A after checks with 20 mm allowance (`knowledge/worked-examples.md`): length mm, number, after measuring.
EXAMPLE_A = (
    (1327, 4, False), (354, 8, False), (242, 18, False), (1605, 4, True), (1251, 10, False), (687, 2, False), (134, 3, False),
    (632, 3, True),
)  # fmt: skip
STOCK_A = ((2400, 413), (3000, 552), (3600, 644), (4800, 900))  # mm, minor units: the demo prices of 38 x 89
# Panels of example A in MDF 15, cut from 2440 x 1220 with kerf 4: three sheets by the bound written there.
PANELS_A = ((1357, 916, 1), (430, 430, 2), (1094, 114, 2), (657, 114, 2), (1357, 679, 1), (430, 1595, 2), (1357, 430, 1))


def bars(
    pieces: Iterable[tuple[int, int, bool]],
    stock: Iterable[tuple[int, int]],
    *,
    kerf: int = 40,
    trim: int = 0,
    least: int = 3000,
    aim: BarAim = BarAim.COST,
    extra: tuple[BarStock, ...] = (),
) -> BarJob:
    """Make a bar job from pieces and stock in whole millimetres; the other sizes are tenths."""
    return BarJob(
        pieces=tuple(
            BarPiece(label=f"M{at}", length_tenth_mm=10 * length, pieces_count=count, after_measure=after)
            for at, (length, count, after) in enumerate(pieces)
        ),
        stock=(*(BarStock(code=f"T{length}", length_tenth_mm=10 * length, cost_minor=cost) for length, cost in stock), *extra),
        kerf_tenth_mm=kerf,
        end_trim_tenth_mm=trim,
        least_offcut_tenth_mm=least,
        aim=aim,
    )


def example_a(aim: BarAim = BarAim.COST) -> BarJob:
    """The bars of example A."""
    return bars(EXAMPLE_A, STOCK_A, aim=aim)


def sheets(
    panels: Iterable[tuple[int, int, int]],
    sheet: tuple[int, int] = (2440, 1220),
    *,
    kerf: int = 40,
    trim: int = 0,
    rotatable: bool = True,
    first_cut: FirstCut = FirstCut.ANY,
    defects: tuple[Defect, ...] = (),
    extra: tuple[SheetStock, ...] = (),
    copies: int | None = None,
    layout: SheetLayout = SheetLayout.EDGE_TO_EDGE,
) -> SheetJob:
    """Make a sheet job from panels and a sheet in whole millimetres; the other sizes are tenths."""
    width, height = sheet
    whole = SheetStock(
        code="BOARD",
        width_tenth_mm=10 * width,
        height_tenth_mm=10 * height,
        cost_minor=2390,
        copies_count=copies,
        defects=defects,
    )
    return SheetJob(
        pieces=tuple(
            SheetPiece(label=f"P{at}", width_tenth_mm=10 * w, height_tenth_mm=10 * h, pieces_count=count, rotatable=rotatable)
            for at, (w, h, count) in enumerate(panels)
        ),
        stock=(whole, *extra),
        kerf_tenth_mm=kerf,
        edge_trim_tenth_mm=trim,
        least_offcut_width_tenth_mm=3000,
        least_offcut_height_tenth_mm=1500,
        first_cut=first_cut,
        layout=layout,
    )


def pinwheel(*, layout: SheetLayout = SheetLayout.PLUNGE_SAW, trim: int = 0, copies: int | None = None) -> SheetJob:
    """Five pieces, grain fixed, that fill 1208 x 1208 with kerf 4 round and round: 804 + 4 + 400 each way, 400 in the middle.

    No cut from edge to edge parts them, so edge to edge they need two sheets.
    """
    side = 1208 + trim // 5
    return sheets(
        [(804, 400, 2), (400, 804, 2), (400, 400, 1)], (side, side), rotatable=False, layout=layout, trim=trim, copies=copies
    )


def first_fit_decreasing(job: BarJob) -> int:
    """Cost of the textbook's first fit decreasing with the one stock entry of a job: written for the tests alone."""
    (stock,) = job.stock
    room = stock.length_tenth_mm - job.end_trim_tenth_mm + job.kerf_tenth_mm
    open_bars: list[int] = []
    for piece in sorted(job.pieces, key=lambda p: -p.length_tenth_mm):
        need = piece.length_tenth_mm + job.kerf_tenth_mm
        for _ in range(piece.pieces_count):
            at = next((at for at, left in enumerate(open_bars) if left >= need), None)
            if at is None:
                open_bars.append(room - need)
            else:
                open_bars[at] -= need
    return len(open_bars) * stock.cost_minor


def first_fit_decreasing_height(job: SheetJob) -> int | None:
    """Cost of the textbook's first fit decreasing height with the first stock entry of a job; None: a piece does not fit it.

    Written for the tests alone. A piece that may be turned lies with its longer side along the sheet, if it fits so.
    """
    stock, kerf = job.stock[0], job.kerf_tenth_mm
    wide, high = (size - 2 * job.edge_trim_tenth_mm + kerf for size in (stock.width_tenth_mm, stock.height_tenth_mm))
    lying: list[tuple[int, int]] = []
    for piece in job.pieces:
        straight = (piece.width_tenth_mm + kerf, piece.height_tenth_mm + kerf)
        ways = sorted({straight, straight[::-1]}, reverse=True) if piece.rotatable else [straight]
        fits = [(w, h) for w, h in ways if w <= wide and h <= high]
        if not fits:
            return None
        lying += [fits[0]] * piece.pieces_count
    levels: list[list[int]] = []  # sheet, height, width left
    tops: list[int] = []  # height left of each sheet
    for width, height in sorted(lying, key=lambda size: (-size[1], -size[0])):
        level = next((level for level in levels if level[1] >= height and level[2] >= width), None)
        if level is None:
            at = next((at for at, left in enumerate(tops) if left >= height), len(tops))
            tops = tops if at < len(tops) else [*tops, high]
            tops[at] -= height
            level = [at, height, wide]
            levels.append(level)
        level[2] -= width
    return len(tops) * stock.cost_minor


def least_cost(job: BarJob) -> int:
    """Least cost of a tiny bar job, by trying every multiset of bars and every way to fill them: written for the tests alone."""
    needs = sorted(
        (piece.length_tenth_mm + job.kerf_tenth_mm for piece in job.pieces for _ in range(piece.pieces_count)), reverse=True
    )
    best = 1 << 60
    for number in range(1, len(needs) + 1):
        for chosen in combinations_with_replacement(range(len(job.stock)), number):
            cost = sum(job.stock[at].cost_minor for at in chosen)
            copies = all(s.copies_count is None or chosen.count(at) <= s.copies_count for at, s in enumerate(job.stock))
            room = [job.stock[at].length_tenth_mm - job.end_trim_tenth_mm + job.kerf_tenth_mm for at in chosen]
            if cost < best and copies and _fits(needs, room):
                best = cost
    return best


def _fits(needs: list[int], room: list[int]) -> bool:
    if not needs:
        return True
    tried = set()
    for at, left in enumerate(room):
        if left >= needs[0] and left not in tried:
            tried.add(left)
            if _fits(needs[1:], [*room[:at], left - needs[0], *room[at + 1 :]]):
                return True
    return False


@st.composite
def bar_jobs(draw: DrawFn, *, most_kinds: int = 8, most_count: int = 12, one_stock: bool = False) -> BarJob:
    """Bars as a workshop asks for them: some lengths of stock, now and then offcuts on hand, any saw."""
    lengths = draw(st.lists(st.integers(40, 2300), min_size=1, max_size=most_kinds, unique=True))
    pieces = [(length, draw(st.integers(1, most_count)), draw(st.booleans())) for length in lengths]
    sizes = draw(
        st.lists(st.sampled_from((2400, 3000, 3600, 4200, 4800)), min_size=1, max_size=1 if one_stock else 4, unique=True)
    )
    stock = [(size, size // 6 + draw(st.integers(-40, 40))) for size in sizes]
    offcuts = () if one_stock else tuple(
        BarStock(code=f"OFF{at}", length_tenth_mm=10 * length, copies_count=draw(st.integers(1, 3)), offcut=True)
        for at, length in enumerate(draw(st.lists(st.integers(300, 2200), max_size=2)))
    )  # fmt: skip
    kerf, trim = draw(st.sampled_from((0, 30, 32, 40))), draw(st.sampled_from((0, 0, 100)))
    return bars(pieces, stock, kerf=kerf, trim=trim, aim=draw(st.sampled_from(BarAim)), extra=offcuts)


@st.composite
def sheet_jobs(draw: DrawFn, *, most_panels: int = 7) -> SheetJob:
    """Sheets as a workshop asks for them."""
    panels = draw(
        st.lists(st.tuples(st.integers(60, 2300), st.integers(60, 1150), st.integers(1, 3)), min_size=1, max_size=most_panels)
    )
    offcuts = tuple(
        SheetStock(
            code=f"OFF{at}", width_tenth_mm=10 * w, height_tenth_mm=10 * h, copies_count=draw(st.integers(1, 2)), offcut=True
        )
        for at, (w, h) in enumerate(draw(st.lists(st.tuples(st.integers(300, 2000), st.integers(300, 1200)), max_size=2)))
    )
    defects = draw(st.lists(st.tuples(st.integers(0, 2300), st.integers(0, 1100)), max_size=1))
    marred = tuple(
        SheetStock(
            code=f"MARRED{at}", width_tenth_mm=24_400, height_tenth_mm=12_200, copies_count=1, offcut=True,
            defects=(Defect(x_tenth_mm=10 * x, y_tenth_mm=10 * y, width_tenth_mm=1_000, height_tenth_mm=700),),
        )
        for at, (x, y) in enumerate(defects)
    )  # fmt: skip
    return sheets(
        panels,
        kerf=draw(st.sampled_from((0, 32, 40))),
        trim=draw(st.sampled_from((0, 50))),
        rotatable=draw(st.booleans()),
        first_cut=draw(st.sampled_from(FirstCut)),
        extra=(*offcuts, *marred),
    )
