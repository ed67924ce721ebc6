from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.cutting import Defect, MarkLine, PartKind, SheetLayout, SheetPart, SheetPlan, cut_sheets
from service.cutting.verify_sheets import mistakes_in_sheets
from tests.cutting.jobs import PANELS_A, pinwheel, sheets

if TYPE_CHECKING:
    from service.cutting import SheetJob

replace = msgspec.structs.replace
JOB = pinwheel(trim=50)
PLAN = cut_sheets(JOB)
G = PLAN.groups[0]
ROOMY = replace(JOB, stock=(replace(JOB.stock[0], width_tenth_mm=15_320),))  # the same with a strip too narrow for a piece
EDGE = cut_sheets(sheets(PANELS_A))


def changed(**fields: object) -> SheetPlan:
    return replace(PLAN, groups=(replace(G, **fields),))


def with_line(number: int, **fields: int | bool) -> SheetPlan:
    lines = list(G.lines)
    lines[number] = replace(lines[number], **fields)
    return changed(lines=tuple(lines))


def with_part(number: int, **fields: int | str) -> SheetPlan:
    parts = list(G.parts)
    parts[number] = replace(parts[number], **fields)
    return changed(parts=tuple(parts))


def rest(kind: PartKind = PartKind.LEFTOVER, *, x: int = 0, side: int = 3_000) -> SheetPart:
    return SheetPart(name=f"S.{x}", parent="S", kind=kind, x_tenth_mm=x, y_tenth_mm=0, width_tenth_mm=side, height_tenth_mm=side)


HOLE = Defect(x_tenth_mm=100, y_tenth_mm=100, width_tenth_mm=100, height_tenth_mm=100)
FREE = MarkLine(direction=G.lines[0].direction, at_tenth_mm=-999, from_tenth_mm=0, to_tenth_mm=9, after_measure=False)
INNER = next(at for at, line in enumerate(G.lines) if 3_000 < line.at_tenth_mm < 9_000)
TAMPERED: dict[str, tuple[SheetPlan, str]] = {
    "overlap": (changed(pieces=(replace(G.pieces[0], x_tenth_mm=G.pieces[0].x_tenth_mm + 10), *G.pieces[1:])), "overlap"),
    "into the trims": (changed(pieces=(replace(G.pieces[0], x_tenth_mm=0, y_tenth_mm=0), *G.pieces[1:])), "into the trims"),
    "on a defect": (changed(defects=(HOLE,)), "on a defect"),
    "line left out": (changed(lines=G.lines[1:]), "not sawn free"),
    "line too short": (with_line(0, to_tenth_mm=G.lines[0].to_tenth_mm - 1), "not sawn free"),
    "line too far": (with_line(INNER, from_tenth_mm=0, to_tenth_mm=12_000), "runs into a piece"),
    "line beside": (with_line(0, at_tenth_mm=G.lines[0].at_tenth_mm + 1), "not sawn free"),
    "line for nothing": (changed(lines=(*G.lines, FREE)), "frees no piece"),
    "line that waits": (with_line(0, after_measure=True), "not sawn free"),
    "steps from edge to edge": (changed(steps=EDGE.groups[0].steps), "has steps"),
    "another sheet": (with_part(0, width_tenth_mm=1), "what lies on the sheet"),
    "a part below a part": (with_part(1, parent="S.2"), "what lies on the sheet"),
    "two of a name": (with_part(1, name="S.2"), "one name"),
    "a piece elsewhere": (with_part(1, x_tenth_mm=1), "not the pieces"),
    "a rest on a piece": (changed(parts=(*G.parts, rest(x=60))), "on a piece"),
    "a rest in the trims": (changed(parts=(*G.parts, rest())), "into the trims"),
    "a rest called waste": (changed(parts=(*G.parts, rest(PartKind.WASTE))), "not worth keeping"),
    "a rest too small": (changed(parts=(*G.parts, rest(side=1_000))), "not worth keeping"),
    "two rests in one place": (changed(parts=(*G.parts, rest(), rest(x=1))), "two rests overlap"),
    "called edge to edge": (changed(layout=SheetLayout.EDGE_TO_EDGE), "never cut off"),
}


def test_a_marked_out_plan_has_no_mistakes() -> None:
    assert SheetLayout.PLUNGE_SAW is G.layout
    assert () == mistakes_in_sheets(JOB, PLAN)


@pytest.mark.parametrize("name", TAMPERED)
def test_a_tampered_plan_is_found_out(name: str) -> None:
    plan, says = TAMPERED[name]

    assert any(says in text for text in mistakes_in_sheets(JOB, plan))


def test_nobody_gets_a_plunge_saw_unasked() -> None:
    unasked: SheetJob = replace(JOB, layout=SheetLayout.EDGE_TO_EDGE)

    assert any("nobody asked" in text for text in mistakes_in_sheets(unasked, PLAN))


def test_a_sheet_cut_edge_to_edge_has_no_lines() -> None:
    lined = replace(EDGE, groups=(replace(EDGE.groups[0], lines=G.lines), *EDGE.groups[1:]))

    assert any("lines to mark out" in text for text in mistakes_in_sheets(sheets(PANELS_A), lined))


def test_the_rest_beside_a_pinwheel_is_named() -> None:
    """By hand: 1532 less two trims of 5, the pinwheel's 1208 and a kerf of 4 leave 310 of the full 1208 between the trims."""
    plan = cut_sheets(ROOMY)

    assert () == mistakes_in_sheets(ROOMY, plan)
    assert [(3_100, 12_080)] == [(kept.width_tenth_mm, kept.height_tenth_mm) for kept in plan.leftovers]
