"""From layouts to a plan for sheets: every piece placed and labelled, the cut tree, and the steps at the saw."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING, NamedTuple

from service.cutting.cut_tree import Node, NotGuillotineError, Rect, Saw, grow_tree
from service.cutting.labels import natural_key
from service.cutting.pieces import SheetLayout
from service.cutting.plan import Leftover, MarkLine, PartKind, PlacedPiece, SheetGroup, SheetPart
from service.cutting.plunge_layout import lie_flat, mark_lines
from service.cutting.sawing import Named, list_parts, list_steps, name_parts
from service.cutting.sheet_problem import SheetProblem, kind_key

if TYPE_CHECKING:
    from service.cutting.pieces import SheetJob, SheetPiece, SheetStock
    from service.cutting.sheet_greedy import Layout


type _Chosen = tuple[SheetPiece, str]  # one piece and its label


class _Tagged(NamedTuple):
    """What a tag of the cut tree stands for."""

    label: str
    after_measure: bool
    rotated: bool


class _Sheet(NamedTuple):
    """A sheet with its pieces as they are to be sawn."""

    stock: SheetStock
    tree: Node  # of one level, without a direction, where a plunge saw is needed
    pieces: tuple[_Tagged, ...]  # by tag

    @property
    def layout(self) -> SheetLayout:
        """Whether the sheet can be cut edge to edge."""
        marked_out = self.tree.direction is None and self.tree.strips
        return SheetLayout.PLUNGE_SAW if marked_out else SheetLayout.EDGE_TO_EDGE


def lay_sheets(job: SheetJob, problem: SheetProblem, plan: tuple[Layout, ...]) -> tuple[SheetGroup, ...]:
    """Place and label every piece, saw every sheet, and put equal sheets together.

    Raises:
        NotGuillotineError: a layout cannot be sawn edge to edge, and the job allows nothing else.
    """
    alike: defaultdict[tuple[object, ...], list[_Sheet]] = defaultdict(list)
    for sheet in _sheets(job, problem, plan):
        kinds = tuple((piece.after_measure, piece.rotated) for piece in sheet.pieces)
        stock = sheet.stock
        size = (-stock.width_tenth_mm * stock.height_tenth_mm, -stock.width_tenth_mm)
        alike[(*size, stock.offcut, natural_key(stock.code), stock.cost_minor, sheet.tree, kinds)].append(sheet)
    return tuple(_group(job, f"S{place + 1}", sheets) for place, (_, sheets) in enumerate(sorted(alike.items(), key=_by_stock)))


def _by_stock(item: tuple[tuple[object, ...], list[_Sheet]]) -> tuple[object, ...]:
    """Order by stock, then fullest first, then by the tree itself."""
    key, sheets = item
    area = sum(part.width * part.height for part in _walk(sheets[0].tree) if part.tag >= 0)
    return (*key[:5], -area, repr(key[5:]))


def _walk(node: Node) -> list[Node]:
    return [node, *(part for strip in node.strips for part in _walk(strip))]


def _sheets(job: SheetJob, problem: SheetProblem, plan: tuple[Layout, ...]) -> list[_Sheet]:
    queues = _queues(job)
    taken = [0] * len(problem.classes)
    keys = _kind_keys(job, problem)
    result = []
    for layout in sorted(plan, key=lambda item: (item.number, -sum(p.width * p.height for p in item.pieces), item.pieces)):
        of = problem.classes[layout.number]
        entries = [step.stock_index for step in of.bars.steps for _ in range(step.copies)]
        stock = job.stock[entries[taken[layout.number]]]
        taken[layout.number] += 1
        pieces = [queues[keys[placed.kind]].pop(0) for placed in layout.pieces]
        result.append(_saw(job, stock, _rects(job, layout, problem.unit_tenth_mm, pieces)))
    return result


def _kind_keys(job: SheetJob, problem: SheetProblem) -> list[tuple[int, int, bool]]:
    """The job's key of every kind of the problem."""
    unit, kerf = problem.unit_tenth_mm, job.kerf_tenth_mm
    return [(kind.width * unit - kerf, kind.height * unit - kerf, kind.rotatable) for kind in problem.kinds]


def _queues(job: SheetJob) -> dict[tuple[int, int, bool], list[_Chosen]]:
    """Pieces of each kind in the order in which they are placed: to cut now first."""
    by_kind: defaultdict[tuple[int, int, bool], list[SheetPiece]] = defaultdict(list)
    for piece in job.pieces:
        by_kind[kind_key(piece)].append(piece)
    return {key: _queue(pieces) for key, pieces in by_kind.items()}


def _queue(pieces: list[SheetPiece]) -> list[_Chosen]:
    ordered = sorted(pieces, key=lambda p: (p.after_measure, natural_key(p.label), p.width_tenth_mm))
    return [(piece, piece.label) for piece in ordered for _ in range(piece.pieces_count)]


def saw_of(job: SheetJob, stock: SheetStock) -> Saw:
    """What the saw and the shop ask of a sheet's cut tree."""
    sides = sorted((job.least_offcut_width_tenth_mm, job.least_offcut_height_tenth_mm), reverse=True)
    return Saw(job.kerf_tenth_mm, (sides[0], sides[1]), job.first_cut, bool(stock.defects))


def _rects(job: SheetJob, layout: Layout, unit: int, pieces: list[_Chosen]) -> list[tuple[Rect, _Tagged]]:
    """Give the pieces of a layout their true sizes and places; the tag is the place in the list."""
    kerf, trim = job.kerf_tenth_mm, job.edge_trim_tenth_mm
    result = []
    for tag, (placed, (piece, label)) in enumerate(zip(layout.pieces, pieces, strict=True)):
        width, height = placed.width * unit - kerf, placed.height * unit - kerf
        rotated = (width, height) != (piece.width_tenth_mm, piece.height_tenth_mm)
        rect = Rect(trim + placed.x * unit, trim + placed.y * unit, width, height, tag, piece.after_measure)
        result.append((rect, _Tagged(label, piece.after_measure, rotated)))
    return result


def _saw(job: SheetJob, stock: SheetStock, rects: list[tuple[Rect, _Tagged]]) -> _Sheet:
    """Find the cut tree of a sheet, or let its pieces lie where a plunge saw can free them."""
    trim, saw, pieces = job.edge_trim_tenth_mm, saw_of(job, stock), [rect for rect, _ in rects]
    room = (trim, trim, stock.width_tenth_mm - 2 * trim, stock.height_tenth_mm - 2 * trim)
    try:
        tree = grow_tree(room, pieces, saw)
    except NotGuillotineError:
        if job.layout is SheetLayout.EDGE_TO_EDGE:
            raise
        off = ((d.x_tenth_mm, d.y_tenth_mm, d.width_tenth_mm, d.height_tenth_mm) for d in stock.defects)
        tree = lie_flat(room, pieces, off, saw)
    return _Sheet(stock, tree, tuple(tagged for _, tagged in rects))


def _group(job: SheetJob, name: str, sheets: list[_Sheet]) -> SheetGroup:
    """Write out a group of equal sheets."""
    first = sheets[0]
    stock, saw, trim = first.stock, saw_of(job, first.stock), job.edge_trim_tenth_mm
    edge_to_edge = first.layout is SheetLayout.EDGE_TO_EDGE
    named = name_parts(first.tree, trimmed=trim > 0 and edge_to_edge)
    leaves = [item for item in named if item.node.tag >= 0]
    size = (stock.width_tenth_mm, stock.height_tenth_mm)
    late = [piece.after_measure for piece in first.pieces]
    return SheetGroup(
        name=name,
        code=stock.code,
        width_tenth_mm=size[0],
        height_tenth_mm=size[1],
        cost_each_minor=stock.cost_minor,
        offcut=stock.offcut,
        defects=stock.defects,
        sheets_count=len(sheets),
        pieces=tuple(_placed(item, first.pieces[item.node.tag]) for item in leaves),
        labels=tuple(sorted(tuple(sheet.pieces[item.node.tag].label for item in leaves) for sheet in sheets)),
        parts=list_parts(named, size, saw) if edge_to_edge else _flat_parts(named, size, saw),
        steps=list_steps(named, late, trim, saw) if edge_to_edge else (),
        layout=first.layout,
        lines=() if edge_to_edge else _lines(first, saw),
    )


def _flat_parts(named: list[Named], size: tuple[int, int], saw: Saw) -> tuple[SheetPart, ...]:
    """The whole sheet, and what lies on it."""
    width, height = size
    whole = SheetPart(
        name="S", parent="", kind=PartKind.SHEET, x_tenth_mm=0, y_tenth_mm=0, width_tenth_mm=width, height_tenth_mm=height
    )
    return (whole, *list_parts(named, size, saw)[1:])


def _lines(sheet: _Sheet, saw: Saw) -> tuple[MarkLine, ...]:
    pieces = [Rect(*node[:5], after_measure=sheet.pieces[node.tag].after_measure) for node in sheet.tree.strips if node.tag >= 0]
    return mark_lines(pieces, (sheet.stock.width_tenth_mm, sheet.stock.height_tenth_mm), saw.kerf)


def _placed(item: Named, tagged: _Tagged) -> PlacedPiece:
    node = item.node
    return PlacedPiece(
        part=item.name, x_tenth_mm=node.x, y_tenth_mm=node.y, width_tenth_mm=node.width, height_tenth_mm=node.height,
        rotated=tagged.rotated, after_measure=tagged.after_measure,
    )  # fmt: skip


def leftovers_of(groups: tuple[SheetGroup, ...]) -> tuple[Leftover, ...]:
    """Name the rests worth keeping, largest first on each sheet."""
    rests = []
    for group in groups:
        kept = [part for part in group.parts if part.kind is PartKind.LEFTOVER]
        kept.sort(key=lambda part: (-part.width_tenth_mm * part.height_tenth_mm, part.name))
        rests += [
            Leftover(
                label=f"{group.name}-R{place + 1}", of=group.name, leftovers_count=group.sheets_count,
                width_tenth_mm=part.width_tenth_mm, height_tenth_mm=part.height_tenth_mm,
            )
            for place, part in enumerate(kept)
        ]  # fmt: skip
    return tuple(rests)
