"""An independent check of a sheet plan against its job. It shares no code with the planners and trusts no field."""

from __future__ import annotations

from collections import Counter, defaultdict
from itertools import pairwise
from typing import TYPE_CHECKING

from service.cutting.pieces import FirstCut, SheetJob, SheetLayout
from service.cutting.plan import Direction, PartKind, SheetGroup, SheetPart, SheetPlan
from service.cutting.verify_plunge import mistakes_in_marking_out

if TYPE_CHECKING:
    from collections.abc import Iterator

type _Box = tuple[int, int, int, int]  # x, y, width, height


def mistakes_in_sheets(job: SheetJob, plan: SheetPlan) -> tuple[str, ...]:
    """Find everything that is wrong with a plan; nothing is found in a right one."""
    return (
        *(text for group in plan.groups for text in _on_sheet(job, group)),
        *(text for group in plan.groups for text in _sawing(job, group)),
        *_pieces(job, plan),
        *_stock(job, plan),
        *_sums(plan),
        *_proof(plan),
    )


def _sawing(job: SheetJob, group: SheetGroup) -> Iterator[str]:
    """The pieces can be sawn free as the sheet says: by a tree of cuts and its steps, or along marked lines."""
    if group.layout is SheetLayout.PLUNGE_SAW:
        yield from mistakes_in_marking_out(job, group)
        return
    yield from _tree(job, group)
    yield from _steps(job, group)
    if group.lines:
        yield f"{group.name}: a sheet cut edge to edge has lines to mark out"


def _on_sheet(job: SheetJob, group: SheetGroup) -> Iterator[str]:
    """Labels match; pieces lie inside the trims, a kerf apart, off the defects."""
    where = f"{group.name}:"
    lengths = {len(row) for row in group.labels}
    if group.sheets_count < 1 or len(group.labels) != group.sheets_count or lengths != {len(group.pieces)}:
        yield f"{where} labels do not match the sheets"
    if not group.pieces:
        yield f"{where} a sheet without pieces"
    boxes = [(p.x_tenth_mm, p.y_tenth_mm, p.width_tenth_mm, p.height_tenth_mm) for p in group.pieces]
    defects = [(d.x_tenth_mm, d.y_tenth_mm, d.width_tenth_mm, d.height_tenth_mm) for d in group.defects]
    for box in boxes:
        if not _inside(job, group, box):
            yield f"{where} a piece at {box[:2]} reaches into the trims"
        if any(_touch(box, defect, 0) for defect in defects):
            yield f"{where} a piece at {box[:2]} lies on a defect"
    for one, other in _neighbours(boxes, job.kerf_tenth_mm):
        if _touch(one, other, job.kerf_tenth_mm):
            yield f"{where} pieces at {one[:2]} and {other[:2]} overlap, or there is no room for the saw"


def _neighbours(boxes: list[_Box], gap: int) -> Iterator[tuple[_Box, _Box]]:
    """All pairs that come near each other along x or, where the boxes stand in few columns, along y."""
    axis = 0 if len({box[0] for box in boxes}) >= len({box[1] for box in boxes}) else 1
    ordered = sorted(boxes, key=lambda box: box[axis])
    for at, one in enumerate(ordered):
        for later in range(at + 1, len(ordered)):
            if ordered[later][axis] >= one[axis] + one[axis + 2] + gap:
                break
            yield one, ordered[later]


def _inside(job: SheetJob, group: SheetGroup, box: _Box) -> bool:
    x, y, width, height = box
    trim = job.edge_trim_tenth_mm
    across = trim <= x < x + width <= group.width_tenth_mm - trim
    return across and trim <= y < y + height <= group.height_tenth_mm - trim


def _touch(one: _Box, other: _Box, gap: int) -> bool:
    across = one[0] < other[0] + other[2] + gap and other[0] < one[0] + one[2] + gap
    return across and one[1] < other[1] + other[3] + gap and other[1] < one[1] + one[3] + gap


def _tree(job: SheetJob, group: SheetGroup) -> Iterator[str]:
    """The parts are a cut tree: every part is sawn along one direction into strips a kerf apart; its leaves are the pieces."""
    where = f"{group.name}:"
    children: defaultdict[str, list[SheetPart]] = defaultdict(list)
    for part in group.parts:
        children[part.parent].append(part)
    names = {part.name for part in group.parts}
    if len(names) != len(group.parts) or [part.name for part in children[""]] != ["S"] or not set(children) <= {"", *names}:
        yield f"{where} the parts are not a tree"
        return
    whole = children[""][0]
    if _box(whole) != (0, 0, group.width_tenth_mm, group.height_tenth_mm):
        yield f"{where} the tree does not start with the sheet"
    for part in group.parts:
        if part.name == "S" and job.edge_trim_tenth_mm:
            yield from _trimmed(job, group, children["S"])
        elif children[part.name]:
            yield from _strips(job, group, part, children[part.name])
        yield from _leaf(job, group, part, whole_has=bool(children[part.name]))
    leaves = Counter((p.name, *_box(p)) for p in group.parts if p.kind is PartKind.PIECE)
    placed = Counter((p.part, p.x_tenth_mm, p.y_tenth_mm, p.width_tenth_mm, p.height_tenth_mm) for p in group.pieces)
    if leaves != placed:
        yield f"{where} the leaves of the tree are not the pieces"
    yield from _first_cut(job, group, children)


def _box(part: SheetPart) -> _Box:
    return part.x_tenth_mm, part.y_tenth_mm, part.width_tenth_mm, part.height_tenth_mm


def _trimmed(job: SheetJob, group: SheetGroup, parts: list[SheetPart]) -> Iterator[str]:
    trim = job.edge_trim_tenth_mm
    if [_box(part) for part in parts] != [(trim, trim, group.width_tenth_mm - 2 * trim, group.height_tenth_mm - 2 * trim)]:
        yield f"{group.name}: the trimmed sheet is wrong"


def _strips(job: SheetJob, group: SheetGroup, part: SheetPart, strips: list[SheetPart]) -> Iterator[str]:
    """Strips run through the whole part one way and follow each other a kerf apart the other way."""
    if not (
        _follow(job, _box(part), [_box(s) for s in strips]) or _follow(job, _flip(_box(part)), [_flip(_box(s)) for s in strips])
    ):
        yield f"{group.name}: {part.name} cannot be sawn into its strips"


def _flip(box: _Box) -> _Box:
    x, y, width, height = box
    return y, x, height, width


def _follow(job: SheetJob, room: _Box, strips: list[_Box]) -> bool:
    """Tell whether strips stand side by side along x in a room, each over its full height."""
    x, y, width, height = room
    through = all(strip[1] == y and strip[3] == height and strip[2] > 0 for strip in strips)
    apart = all(after[0] - before[0] - before[2] >= job.kerf_tenth_mm for before, after in pairwise(strips))
    return through and apart and strips[0][0] >= x and strips[-1][0] + strips[-1][2] <= x + width


def _leaf(job: SheetJob, group: SheetGroup, part: SheetPart, *, whole_has: bool) -> Iterator[str]:
    """Inner parts are parts, leaves are pieces or rests, and a rest is kept by the rule."""
    inner = {PartKind.SHEET, PartKind.PART}
    if whole_has != (part.kind in inner):
        yield f"{group.name}: {part.name} is called {part.kind}"
    sides = sorted((part.width_tenth_mm, part.height_tenth_mm))
    least = sorted((job.least_offcut_width_tenth_mm, job.least_offcut_height_tenth_mm))
    large = sides[0] > 0 and sides[0] >= least[0] and sides[1] >= least[1]
    if part.kind in {PartKind.LEFTOVER, PartKind.WASTE} and large != (part.kind is PartKind.LEFTOVER):
        yield f"{group.name}: {part.name} is kept or thrown away against the rule"


def _first_cut(job: SheetJob, group: SheetGroup, children: dict[str, list[SheetPart]]) -> Iterator[str]:
    """The first cut after trimming runs the way it must, on every sheet that has any such cut."""
    room = group.parts[1 if job.edge_trim_tenth_mm else 0]
    strips = children.get(room.name, [])
    wanted = {FirstCut.RIP: Direction.RIP, FirstCut.CROSS: Direction.CROSS}.get(job.first_cut)
    parts = {part.name: part for part in group.parts if part.name != "S" or part is room}
    ways = {_way(parts[name], below) for name, below in children.items() if name in parts and below}
    if wanted and strips and wanted in ways and _way(room, strips) is not wanted:
        yield f"{group.name}: the first cut runs the wrong way"


def _way(part: SheetPart, strips: list[SheetPart]) -> Direction:
    """Which way a part is cut: strips over its full width come from rips."""
    through = all(s.width_tenth_mm == part.width_tenth_mm for s in strips)
    shorter = any(s.height_tenth_mm != part.height_tenth_mm for s in strips)
    return Direction.RIP if through and shorter else Direction.CROSS


def _steps(job: SheetJob, group: SheetGroup) -> Iterator[str]:
    """Steps cut only parts that exist by then, at stops that fit what falls off, and make every part."""
    by_name = {part.name: part for part in group.parts}
    there: set[str] = {"S"}
    made: set[str] = set()
    for number, step in enumerate(group.steps):
        if any(name not in there for name in step.parts) or any(name not in by_name for name in step.yields):
            yield f"{group.name}: step {number + 1} cuts or yields a part that is not there"
            continue
        if not step.trim and step.cuts_count != len(step.yields):
            yield f"{group.name}: step {number + 1} counts its cuts wrongly"
        for name in step.yields:
            part = by_name[name]
            size = part.height_tenth_mm if step.direction is Direction.RIP else part.width_tenth_mm
            if part.parent not in step.parts or (size != step.stop_tenth_mm and not step.trim):
                yield f"{group.name}: step {number + 1} does not give {name}"
        made |= set(step.yields)
        there |= {p.name for p in group.parts if p.name in made or p.parent in step.parts}
    yield from _trimming(job, group)
    yield from _all_cut(group, made)


def _trimming(job: SheetJob, group: SheetGroup) -> Iterator[str]:
    """Factory edges are squared by two cuts each way, and only if that is asked for."""
    trims = [(step.direction, step.stop_tenth_mm, step.cuts_count) for step in group.steps if step.trim]
    wanted = [(direction, job.edge_trim_tenth_mm, 2) for direction in Direction] if job.edge_trim_tenth_mm else []
    if sorted(trims) != sorted(wanted):
        yield f"{group.name}: the trimming cuts are wrong"


def _all_cut(group: SheetGroup, made: set[str]) -> Iterator[str]:
    """Every part is cut off, but for a last one that ends where its parent ends or is what is left over."""
    by_name = {part.name: part for part in group.parts}
    last = {part.parent: part.name for part in group.parts}
    for part in group.parts:
        if part.name in made or not part.parent:
            continue
        parent = by_name[part.parent]
        right = part.x_tenth_mm + part.width_tenth_mm == parent.x_tenth_mm + parent.width_tenth_mm
        top = part.y_tenth_mm + part.height_tenth_mm == parent.y_tenth_mm + parent.height_tenth_mm
        if last[part.parent] != part.name or not (right and top):
            yield f"{group.name}: {part.name} is never cut off"


def _pieces(job: SheetJob, plan: SheetPlan) -> Iterator[str]:
    """Every piece is there exactly once, turned only if it may be."""
    wanted: Counter[tuple[str, int, int, bool]] = Counter()
    for piece in job.pieces:
        wanted[piece.label, piece.width_tenth_mm, piece.height_tenth_mm, piece.after_measure] += piece.pieces_count
    turnable = {(p.label, p.width_tenth_mm, p.height_tenth_mm) for p in job.pieces if p.rotatable}
    placed: Counter[tuple[str, int, int, bool]] = Counter()
    for group in plan.groups:
        for label, at in ((label, at) for row in group.labels for label, at in zip(row, group.pieces, strict=False)):
            size = (at.width_tenth_mm, at.height_tenth_mm)
            size = size[::-1] if at.rotated else size
            placed[label, *size, at.after_measure] += 1
            if at.rotated and (label, *size) not in turnable:
                yield f"{group.name}: {label} is turned against its grain"
    for key in wanted - placed:
        yield f"missing: {key}"
    for key in placed - wanted:
        yield f"not asked for: {key}"


def _stock(job: SheetJob, plan: SheetPlan) -> Iterator[str]:
    """What is taken is on offer, in so many copies, and is listed."""
    offered: defaultdict[tuple[object, ...], float] = defaultdict(float)
    for s in job.stock:
        copies = float("inf") if s.copies_count is None else s.copies_count
        offered[s.code, s.width_tenth_mm, s.height_tenth_mm, s.cost_minor, s.offcut, s.defects] += copies
    taken: Counter[tuple[object, ...]] = Counter()
    listed: Counter[tuple[str, int, bool]] = Counter()
    for g in plan.groups:
        taken[g.code, g.width_tenth_mm, g.height_tenth_mm, g.cost_each_minor, g.offcut, g.defects] += g.sheets_count
        listed[g.code, g.cost_each_minor, g.offcut] += g.sheets_count
    for key, count in taken.items():
        if count > offered.get(key, 0):
            yield f"{count} sheets of {key} are more than there are"
    stated: Counter[tuple[str, int, bool]] = Counter()
    for line in plan.stock:
        stated[line.code, line.cost_each_minor, line.offcut] += line.taken_count
    if listed != stated:
        yield "the list of stock to take is wrong"


def _area(items: Iterator[tuple[int, int, int]]) -> float:
    """Sum of count, width and height, in square millimetres."""
    return sum(count * width * height for count, width, height in items) / 100


def _sums(plan: SheetPlan) -> Iterator[str]:
    """Totals are the sums of their parts, and the leftovers are the parts that are kept."""
    groups = plan.groups
    stock = _area((g.sheets_count, g.width_tenth_mm, g.height_tenth_mm) for g in groups)
    pieces = _area((g.sheets_count, p.width_tenth_mm, p.height_tenth_mm) for g in groups for p in g.pieces)
    rests = [(g, p) for g in groups for p in g.parts if p.kind is PartKind.LEFTOVER]
    kept = _area((g.sheets_count, p.width_tenth_mm, p.height_tenth_mm) for g, p in rests)
    if (plan.stock_area_mm2, plan.pieces_area_mm2, plan.kept_area_mm2) != (stock, pieces, kept):
        yield "an area is wrong"
    if abs(stock - pieces - kept - plan.lost_area_mm2) > 0.005 or plan.lost_area_mm2 < 0:  # noqa: PLR2004 - half a hundredth
        yield "pieces, leftovers and what is lost do not add up to the stock"
    if plan.cost_minor != sum(g.sheets_count * g.cost_each_minor for g in groups) or plan.sheets_count != sum(
        g.sheets_count for g in groups
    ):
        yield "cost or number of sheets is wrong"
    stated = Counter((r.of, r.leftovers_count, r.width_tenth_mm, r.height_tenth_mm) for r in plan.leftovers)
    if stated != Counter((g.name, g.sheets_count, p.width_tenth_mm, p.height_tenth_mm) for g, p in rests):
        yield "the list of leftovers is wrong"


def _proof(plan: SheetPlan) -> Iterator[str]:
    """No bound lies above the plan's value, and proven means that they are equal."""
    proof = plan.proof
    bought = [group for group in plan.groups if not group.offcut]
    count = sum(group.sheets_count for group in bought)
    cost, bound = plan.cost_minor, proof.cost_bound_minor
    if (proof.cost_minor, proof.bought_count, proof.bought_length_tenth_mm, proof.length_bound_tenth_mm) != (cost, count, 0, 0):
        yield "the values that the proof speaks of are not the plan's"
    if bound > cost or proof.bought_bound_count > count:
        yield "a bound lies above the value"
    if proof.first_proven != (cost == bound) or proof.bought_proven != (proof.first_proven and proof.bought_bound_count == count):
        yield "proven does not mean that value and bound are equal"
    if proof.gap_ratio != (0.0 if cost == bound else (cost - bound) / cost):
        yield "the gap is wrong"
    kept = [(p.width_tenth_mm * p.height_tenth_mm, max(p.width_tenth_mm, p.height_tenth_mm))
            for g in bought for p in g.parts if p.kind is PartKind.LEFTOVER]  # fmt: skip
    if proof.leftover_tenth_mm != max(kept, default=(0, 0))[1]:
        yield "the longest leftover is wrong"
    if proof.leftover_proven and not proof.bought_proven:
        yield "a later aim is proven before an earlier one"
