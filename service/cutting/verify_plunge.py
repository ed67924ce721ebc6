"""An independent check of a sheet that is marked out for a plunge saw. It shares no code with the planners."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING

from service.cutting.pieces import SheetJob, SheetLayout
from service.cutting.plan import Direction, MarkLine, PartKind, PlacedPiece, SheetGroup, SheetPart

if TYPE_CHECKING:
    from collections.abc import Iterator

type _Span = tuple[int, int]
type _Area = tuple[_Span, _Span]  # along x, along y


def mistakes_in_marking_out(job: SheetJob, group: SheetGroup) -> Iterator[str]:
    """Find what is wrong with parts and lines of a marked-out sheet; where the pieces lie is checked as on any other."""
    where = f"{group.name}:"
    if job.layout is not SheetLayout.PLUNGE_SAW:
        yield f"{where} nobody asked for a plunge saw"
    if group.steps:
        yield f"{where} a marked-out sheet has steps from edge to edge"
    yield from _parts(job, group)
    yield from _lines(job, group)
    yield from _freed(job, group)


def _lines(job: SheetJob, group: SheetGroup) -> Iterator[str]:
    """No line runs into a piece, and each frees one."""
    where = f"{group.name}:"
    for line in group.lines:
        if any(_meets(_band(line, job.kerf_tenth_mm), _of_piece(piece)) for piece in group.pieces):
            yield f"{where} the line at {line.at_tenth_mm} runs into a piece"
        if not any(at == line.at_tenth_mm and _overlap(span, _span(line)) for at, span in _asked(job, group, line.direction)):
            yield f"{where} the line at {line.at_tenth_mm} frees no piece"


def _freed(job: SheetJob, group: SheetGroup) -> Iterator[str]:
    """Every piece is sawn free all round; one to cut now by lines that do not wait."""
    for piece in group.pieces:
        lines = [line for line in group.lines if piece.after_measure or not line.after_measure]
        for direction in Direction:
            for at, span in _sides(piece, direction, job.kerf_tenth_mm, group):
                if not _covered(span, [_span(line) for line in lines if (line.direction, line.at_tenth_mm) == (direction, at)]):
                    yield f"{group.name}: {piece.part} is not sawn free at {at}"


def _parts(job: SheetJob, group: SheetGroup) -> Iterator[str]:
    where = f"{group.name}:"
    whole = SheetPart(
        name="S", parent="", kind=PartKind.SHEET, x_tenth_mm=0, y_tenth_mm=0,
        width_tenth_mm=group.width_tenth_mm, height_tenth_mm=group.height_tenth_mm,
    )  # fmt: skip
    below = group.parts[1:]
    if group.parts[:1] != (whole,) or any(part.parent != "S" for part in below):
        yield f"{where} the parts are not what lies on the sheet"
    if len({part.name for part in group.parts}) != len(group.parts):
        yield f"{where} two parts have one name"
    pieces = sorted((part.name, _of_part(part)) for part in below if part.kind is PartKind.PIECE)
    if pieces != sorted((piece.part, _of_piece(piece)) for piece in group.pieces):
        yield f"{where} the parts are not the pieces"
    yield from _rests(job, group, [part for part in below if part.kind is not PartKind.PIECE])


def _rests(job: SheetJob, group: SheetGroup, rests: list[SheetPart]) -> Iterator[str]:
    """Rests are worth keeping, lie inside the trims and off the defects, and are a kerf from the pieces and each other."""
    where, kerf, trim = f"{group.name}:", job.kerf_tenth_mm, job.edge_trim_tenth_mm
    least = sorted((job.least_offcut_width_tenth_mm, job.least_offcut_height_tenth_mm))
    inside = ((trim, group.width_tenth_mm - trim), (trim, group.height_tenth_mm - trim))
    off = [
        ((d.x_tenth_mm, d.x_tenth_mm + d.width_tenth_mm), (d.y_tenth_mm, d.y_tenth_mm + d.height_tenth_mm)) for d in group.defects
    ]
    for rest in rests:
        area = _of_part(rest)
        short, long = sorted((rest.width_tenth_mm, rest.height_tenth_mm))
        if rest.kind is not PartKind.LEFTOVER or short <= 0 or short < least[0] or long < least[1]:
            yield f"{where} {rest.name} is not worth keeping"
        if any(low < room[0] or high > room[1] for (low, high), room in zip(area, inside, strict=True)):
            yield f"{where} {rest.name} reaches into the trims"
        near = [_of_piece(piece) for piece in group.pieces]
        if any(_meets(_widened(area, kerf), other) for other in near) or any(_meets(area, defect) for defect in off):
            yield f"{where} {rest.name} lies on a piece or a defect"
    if any(_meets(_widened(_of_part(one), kerf), _of_part(other)) for one, other in combinations(rests, 2)):
        yield f"{where} two rests overlap"


def _asked(job: SheetJob, group: SheetGroup, direction: Direction) -> Iterator[tuple[int, _Span]]:
    """All lines along a direction that the pieces ask for."""
    for piece in group.pieces:
        yield from _sides(piece, direction, job.kerf_tenth_mm, group)


def _sides(piece: PlacedPiece, direction: Direction, kerf: int, group: SheetGroup) -> Iterator[tuple[int, _Span]]:
    """Where the saw must run along a direction to free a piece, unless its side is the sheet's."""
    across, up = _of_piece(piece)
    (low, high), along, size = (
        (up, across, group.height_tenth_mm) if direction is Direction.RIP else (across, up, group.width_tenth_mm)
    )
    if low > 0:
        yield low - kerf, along
    if high < size:
        yield high, along


def _covered(span: _Span, lines: list[_Span]) -> bool:
    at = span[0]
    for low, high in sorted(lines):
        if low <= at:
            at = max(at, high)
    return at >= span[1]


def _span(line: MarkLine) -> _Span:
    return line.from_tenth_mm, line.to_tenth_mm


def _band(line: MarkLine, kerf: int) -> _Area:
    dust = (line.at_tenth_mm, line.at_tenth_mm + kerf)
    return (_span(line), dust) if line.direction is Direction.RIP else (dust, _span(line))


def _of_piece(piece: PlacedPiece) -> _Area:
    across = (piece.x_tenth_mm, piece.x_tenth_mm + piece.width_tenth_mm)
    return across, (piece.y_tenth_mm, piece.y_tenth_mm + piece.height_tenth_mm)


def _of_part(part: SheetPart) -> _Area:
    across = (part.x_tenth_mm, part.x_tenth_mm + part.width_tenth_mm)
    return across, (part.y_tenth_mm, part.y_tenth_mm + part.height_tenth_mm)


def _widened(area: _Area, by: int) -> _Area:
    (left, right), (bottom, top) = area
    return (left - by, right + by), (bottom - by, top + by)


def _overlap(one: _Span, other: _Span) -> bool:
    return one[0] < other[1] and other[0] < one[1]


def _meets(one: _Area, other: _Area) -> bool:
    return _overlap(one[0], other[0]) and _overlap(one[1], other[1])
