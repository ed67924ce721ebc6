"""What is wrong with a cutting job, all at once, before any solver sees it. Pointers run from the job, with the wire's names."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.cutting.pieces import (
    LARGEST_SIZE_TENTH_MM,
    MOST_COPIES_COUNT,
    MOST_COST_MINOR,
    MOST_KINDS_COUNT,
    MOST_PIECES_COUNT,
    MOST_STOCK_COUNT,
    BarJob,
    BarPiece,
    BarStock,
    SheetJob,
    SheetPiece,
    SheetStock,
)
from service.errors import Fault, Reason
from service.units import text_mm

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence


def faults_of_bars(job: BarJob) -> tuple[Fault, ...]:
    """Find everything that keeps a bar job from being cut: impossible numbers first, then pieces that no stock can give."""
    impossible = (
        *_lost("/kerf_mm", job.kerf_tenth_mm),
        *_lost("/end_trim_mm", job.end_trim_tenth_mm),
        *_lost("/least_offcut_mm", job.least_offcut_tenth_mm),
        *(fault for at, piece in enumerate(job.pieces) for fault in _size(f"/pieces/{at}/length_mm", piece.length_tenth_mm)),
        *_counts(tuple(piece.pieces_count for piece in job.pieces), len({piece.length_tenth_mm for piece in job.pieces})),
        *(fault for at, stock in enumerate(job.stock) for fault in _size(f"/stock/{at}/length_mm", stock.length_tenth_mm)),
        *_stock(job.stock, anything=bool(job.pieces)),
    )
    return impossible or tuple(_uncuttable_bars(job))


def faults_of_sheets(job: SheetJob) -> tuple[Fault, ...]:
    """Find everything that keeps a sheet job from being cut: impossible numbers first, then pieces that no stock can give."""
    kinds = len({(piece.width_tenth_mm, piece.height_tenth_mm, piece.rotatable) for piece in job.pieces})
    impossible = (
        *_lost("/kerf_mm", job.kerf_tenth_mm),
        *_lost("/edge_trim_mm", job.edge_trim_tenth_mm),
        *_lost("/least_offcut_width_mm", job.least_offcut_width_tenth_mm),
        *_lost("/least_offcut_height_mm", job.least_offcut_height_tenth_mm),
        *(fault for at, piece in enumerate(job.pieces) for fault in _sides(f"/pieces/{at}", piece)),
        *_counts(tuple(piece.pieces_count for piece in job.pieces), kinds),
        *(fault for at, stock in enumerate(job.stock) for fault in _sides(f"/stock/{at}", stock)),
        *(fault for at, stock in enumerate(job.stock) for fault in _defects(f"/stock/{at}/defects", stock)),
        *_stock(job.stock, anything=bool(job.pieces)),
    )
    return impossible or tuple(_uncuttable_sheets(job))


type _Box = tuple[int, int, int, int]  # left, bottom, right, top


def _impossible(pointer: str, detail: str, remedy: str) -> Fault:
    return Fault(pointer=pointer, reason=Reason.IMPOSSIBLE_VALUE, detail=detail, remedy=remedy)


def _size(pointer: str, size_tenth_mm: int) -> Iterator[Fault]:
    if not 0 < size_tenth_mm <= LARGEST_SIZE_TENTH_MM:
        top = text_mm(LARGEST_SIZE_TENTH_MM)
        yield _impossible(
            pointer, f"{text_mm(size_tenth_mm)} mm is not between 0.1 and {top} mm", f"send a size of 0.1 to {top} mm"
        )


def _sides(pointer: str, of: SheetPiece | SheetStock) -> Iterator[Fault]:
    yield from _size(f"{pointer}/width_mm", of.width_tenth_mm)
    yield from _size(f"{pointer}/height_mm", of.height_tenth_mm)


def _lost(pointer: str, size_tenth_mm: int) -> Iterator[Fault]:
    """Kerf, trims and least offcuts may be nothing, but never less."""
    if not 0 <= size_tenth_mm <= LARGEST_SIZE_TENTH_MM:
        top = text_mm(LARGEST_SIZE_TENTH_MM)
        yield _impossible(pointer, f"{text_mm(size_tenth_mm)} mm is not between 0 and {top} mm", f"send 0 to {top} mm")


def _counts(counts: tuple[int, ...], kinds: int) -> Iterator[Fault]:
    for at, count in enumerate(counts):
        if not 0 < count <= MOST_PIECES_COUNT:
            yield _impossible(
                f"/pieces/{at}/count", f"{count} is not between 1 and {MOST_PIECES_COUNT}", "send how many are wanted"
            )
    if sum(count for count in counts if count > 0) > MOST_PIECES_COUNT:
        yield _impossible("/pieces", f"more than {MOST_PIECES_COUNT} pieces in all", "send the job in parts")
    if kinds > MOST_KINDS_COUNT:
        yield _impossible("/pieces", f"{kinds} different sizes are more than {MOST_KINDS_COUNT}", "send the job in parts")


def _stock(entries: Sequence[BarStock | SheetStock], *, anything: bool) -> Iterator[Fault]:
    if anything and not entries:
        yield _impossible("/stock", "there is nothing to cut from", "name at least one stock size")
    if len(entries) > MOST_STOCK_COUNT:
        yield _impossible("/stock", f"{len(entries)} entries are more than {MOST_STOCK_COUNT}", "leave out what is not wanted")
    for at, stock in enumerate(entries):
        if not 0 <= stock.cost_minor <= MOST_COST_MINOR:
            detail = f"a cost of {stock.cost_minor} minor units is out of range"
            yield _impossible(f"/stock/{at}/cost", detail, "send a cost of 0 or more")
        if stock.copies_count is not None and not 0 <= stock.copies_count <= MOST_COPIES_COUNT:
            detail = f"{stock.copies_count} copies are out of range"
            yield _impossible(f"/stock/{at}/copies_count", detail, "leave it out for no limit")


def _defects(pointer: str, stock: SheetStock) -> Iterator[Fault]:
    for at, defect in enumerate(stock.defects):
        inside = (
            defect.width_tenth_mm > 0
            and defect.height_tenth_mm > 0
            and 0 <= defect.x_tenth_mm <= stock.width_tenth_mm - defect.width_tenth_mm
            and 0 <= defect.y_tenth_mm <= stock.height_tenth_mm - defect.height_tenth_mm
        )
        if not inside:
            yield _impossible(f"{pointer}/{at}", "the defect does not lie on the sheet", "measure it from the sheet's own corner")


def _uncuttable(pointer: str, label: str, size: str, remedy: str) -> Fault:
    detail = f"piece {label!r} ({size}) fits no stock on offer"
    return Fault(pointer=pointer, reason=Reason.UNCUTTABLE_PIECE, detail=detail, remedy=remedy)


def _uncuttable_bars(job: BarJob) -> Iterator[Fault]:
    usable = max((s.length_tenth_mm - job.end_trim_tenth_mm for s in job.stock if s.copies_count != 0), default=0)
    for at, piece in enumerate(job.pieces):
        if piece.length_tenth_mm > usable:
            yield _uncuttable(f"/pieces/{at}/length_mm", piece.label, f"{text_mm(piece.length_tenth_mm)} mm", _longer(job, piece))


def _longer(job: BarJob, piece: BarPiece) -> str:
    """Name the nearest stock that would take a bar piece."""
    needed = piece.length_tenth_mm + job.end_trim_tenth_mm
    taking = min((s for s in job.stock if s.length_tenth_mm >= needed), key=lambda s: (s.length_tenth_mm, s.code), default=None)
    if taking is not None:
        return f"allow copies of {taking.code} ({text_mm(taking.length_tenth_mm)} mm), or join the piece"
    longest = max((s for s in job.stock), key=lambda s: (s.length_tenth_mm, s.code))
    return (
        f"offer stock of at least {text_mm(needed)} mm, or shorten or join the piece; the longest on offer is "
        f"{longest.code} ({text_mm(longest.length_tenth_mm)} mm)"
    )


def _uncuttable_sheets(job: SheetJob) -> Iterator[Fault]:
    for at, piece in enumerate(job.pieces):
        if not any(stock.copies_count != 0 and _takes(stock, piece, job) for stock in job.stock):
            size = f"{text_mm(piece.width_tenth_mm)} x {text_mm(piece.height_tenth_mm)} mm"
            yield _uncuttable(f"/pieces/{at}", piece.label, size, _larger(job, piece))


def _ways(piece: SheetPiece) -> tuple[tuple[int, int], ...]:
    straight = (piece.width_tenth_mm, piece.height_tenth_mm)
    return (straight, straight[::-1]) if piece.rotatable else (straight,)


def _takes(stock: SheetStock, piece: SheetPiece, job: SheetJob) -> bool:
    """Tell whether one piece alone fits a sheet, past trims and defects."""
    left, bottom = job.edge_trim_tenth_mm, job.edge_trim_tenth_mm
    right, top = stock.width_tenth_mm - left, stock.height_tenth_mm - bottom
    return any(_free_place((left, bottom, right, top), width, height, stock) for width, height in _ways(piece))


def _free_place(room: _Box, width: int, height: int, stock: SheetStock) -> bool:
    """Tell whether a rectangle fits beside or above the defects: its corner at an edge of the room or of a defect."""
    left, bottom, right, top = room
    xs = {left, *(d.x_tenth_mm + d.width_tenth_mm for d in stock.defects)}
    ys = {bottom, *(d.y_tenth_mm + d.height_tenth_mm for d in stock.defects)}
    places = [(x, y) for x in xs for y in ys if left <= x <= right - width and bottom <= y <= top - height]
    return any(not _hits((x, y, x + width, y + height), stock) for x, y in places)


def _hits(box: _Box, stock: SheetStock) -> bool:
    left, bottom, right, top = box
    return any(
        left < d.x_tenth_mm + d.width_tenth_mm
        and d.x_tenth_mm < right
        and bottom < d.y_tenth_mm + d.height_tenth_mm
        and d.y_tenth_mm < top
        for d in stock.defects
    )


def _larger(job: SheetJob, piece: SheetPiece) -> str:
    """Name what would take a sheet piece: stock that is out, turning it, or a larger sheet."""
    out = next((s.code for s in sorted(job.stock, key=_area) if s.copies_count == 0 and _takes(s, piece, job)), None)
    if out is not None:
        return f"allow copies of {out}"
    turned = SheetPiece(
        label=piece.label, width_tenth_mm=piece.height_tenth_mm, height_tenth_mm=piece.width_tenth_mm, rotatable=True
    )
    fits = next((s.code for s in sorted(job.stock, key=_area) if s.copies_count != 0 and _takes(s, turned, job)), None)
    if fits is not None:
        return f"let it be turned: {fits} would then take it"
    lost = 2 * job.edge_trim_tenth_mm
    needed = f"{text_mm(piece.width_tenth_mm + lost)} x {text_mm(piece.height_tenth_mm + lost)} mm"
    largest = max(job.stock, key=_area)
    size = f"{text_mm(largest.width_tenth_mm)} x {text_mm(largest.height_tenth_mm)} mm"
    return f"offer a sheet of at least {needed}, or joint the piece; the largest on offer is {largest.code} ({size})"


def _area(stock: SheetStock) -> tuple[int, str]:
    return stock.width_tenth_mm * stock.height_tenth_mm, stock.code
