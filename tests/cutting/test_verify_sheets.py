from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.cutting import Defect, FirstCut, PartKind, SheetPlan, SheetStock, cut_sheets
from service.cutting.verify_sheets import mistakes_in_sheets
from tests.cutting.jobs import PANELS_A, sheets

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.cutting import SheetGroup

JOB = sheets(PANELS_A, trim=20)
PLAN = cut_sheets(JOB)
GRAIN = msgspec.structs.replace(JOB, pieces=tuple(msgspec.structs.replace(piece, rotatable=False) for piece in JOB.pieces))
replace = msgspec.structs.replace


def with_group(change: Callable[[SheetGroup], SheetGroup]) -> SheetPlan:
    return replace(PLAN, groups=(change(PLAN.groups[0]), *PLAN.groups[1:]))


def with_piece(number: int, **fields: int | bool | str) -> SheetPlan:
    def change(group: SheetGroup) -> SheetGroup:
        pieces = list(group.pieces)
        pieces[number] = replace(pieces[number], **fields)
        return replace(group, pieces=tuple(pieces))

    return with_group(change)


def with_part(number: int, **fields: int | str) -> SheetPlan:
    def change(group: SheetGroup) -> SheetGroup:
        parts = list(group.parts)
        parts[number] = replace(parts[number], **fields)
        return replace(group, parts=tuple(parts))

    return with_group(change)


def with_step(number: int, **fields: int | tuple[str, ...]) -> SheetPlan:
    def change(group: SheetGroup) -> SheetGroup:
        steps = list(group.steps)
        steps[number] = replace(steps[number], **fields)
        return replace(group, steps=tuple(steps))

    return with_group(change)


G = PLAN.groups[0]
A, B = G.pieces[0], G.pieces[1]
STRIP = next(at for at, part in enumerate(G.parts) if part.kind is PartKind.PART and part.parent == "S.0")
REST = next(at for at, part in enumerate(G.parts) if part.kind in {PartKind.LEFTOVER, PartKind.WASTE})
proof = PLAN.proof
TAMPERED: dict[str, tuple[SheetPlan, str]] = {
    "overlap": (with_piece(1, x_tenth_mm=A.x_tenth_mm, y_tenth_mm=A.y_tenth_mm), "overlap"),
    "into the trim": (with_piece(0, x_tenth_mm=0), "into the trims"),
    "off the sheet": (with_piece(0, x_tenth_mm=24_000), "into the trims"),
    "missing piece": (
        with_group(lambda g: replace(g, pieces=g.pieces[1:], labels=tuple(row[1:] for row in g.labels))),
        "missing",
    ),
    "wrong label": (with_group(lambda g: replace(g, labels=tuple(("X", *row[1:]) for row in g.labels))), "not asked for"),
    "labels of another sheet": (with_group(lambda g: replace(g, labels=())), "labels do not match"),
    "empty sheet": (with_group(lambda g: replace(g, pieces=(), labels=((),) * g.sheets_count)), "without pieces"),
    "wrong size": (with_piece(0, width_tenth_mm=A.width_tenth_mm - 10), "missing"),
    "two roots": (with_part(1, parent=""), "not a tree"),
    "another sheet's root": (with_part(0, width_tenth_mm=1), "does not start with the sheet"),
    "trim forgotten": (with_part(1, x_tenth_mm=0), "trimmed sheet is wrong"),
    "strip not through": (with_part(STRIP, width_tenth_mm=10, height_tenth_mm=10), "cannot be sawn"),
    "leaf that is no piece": (with_piece(0, part="S.9"), "leaves of the tree"),
    "rest called a piece": (with_part(REST, kind=PartKind.PIECE), "leaves of the tree"),
    "rest against the rule": (
        with_part(REST, kind=PartKind.WASTE if G.parts[REST].kind is PartKind.LEFTOVER else PartKind.LEFTOVER),
        "against the rule",
    ),
    "part that is cut called waste": (with_part(STRIP, kind=PartKind.WASTE), "is called waste"),
    "step on a part to come": (with_step(-1, parts=("S.8",)), "not there"),
    "step that yields nothing known": (with_step(-1, yields=("S.8",)), "not there"),
    "step counted wrongly": (with_step(-1, cuts_count=99), "counts its cuts"),
    "wrong stop": (with_step(-1, stop_tenth_mm=1), "does not give"),
    "no trimming": (with_group(lambda g: replace(g, steps=g.steps[1:])), "trimming cuts"),
    "piece never cut off": (with_group(lambda g: replace(g, steps=g.steps[:-1])), "never cut off"),
    "unknown stock": (with_group(lambda g: replace(g, code="OTHER")), "more than there are"),
    "stock not listed": (replace(PLAN, stock=()), "list of stock"),
    "wrong cost": (replace(PLAN, cost_minor=1), "cost or number"),
    "wrong number": (replace(PLAN, sheets_count=1), "cost or number"),
    "wrong area": (replace(PLAN, kept_area_mm2=1.0), "an area is wrong"),
    "wrong loss": (replace(PLAN, lost_area_mm2=PLAN.lost_area_mm2 + 1), "do not add up"),
    "leftovers not listed": (replace(PLAN, leftovers=()), "list of leftovers"),
    "bound above": (replace(PLAN, proof=replace(proof, cost_bound_minor=PLAN.cost_minor + 1)), "above the value"),
    "proof invented": (replace(PLAN, proof=replace(proof, cost_bound_minor=1)), "proven does not mean"),
    "gap invented": (replace(PLAN, proof=replace(proof, gap_ratio=0.5)), "gap is wrong"),
    "proof of another plan": (replace(PLAN, proof=replace(proof, bought_count=1, bought_bound_count=1)), "speaks of"),
    "leftover of another plan": (replace(PLAN, proof=replace(proof, leftover_tenth_mm=1)), "longest leftover"),
    "last aim alone": (
        replace(PLAN, proof=replace(proof, bought_bound_count=0, bought_proven=False, leftover_proven=True)),
        "before an earlier one",
    ),
}


def test_a_right_plan_has_no_mistakes() -> None:
    assert () == mistakes_in_sheets(JOB, PLAN)


@pytest.mark.parametrize("name", TAMPERED)
def test_a_tampered_plan_is_found_out(name: str) -> None:
    plan, says = TAMPERED[name]

    assert any(says in text for text in mistakes_in_sheets(JOB, plan))


def test_a_layout_that_no_saw_can_follow_is_found_out() -> None:
    """The pinwheel in a frame of kerf 0: whatever tree is claimed, its strips do not run through."""
    job = sheets([(800, 400, 2), (400, 800, 2), (400, 400, 1)], (1200, 1200), kerf=0, rotatable=False)
    plan = cut_sheets(msgspec.structs.replace(job, stock=(msgspec.structs.replace(job.stock[0], width_tenth_mm=24_000),)))
    places = {(8000, 4000): [(0, 0), (4000, 8000)], (4000, 8000): [(8000, 0), (0, 4000)], (4000, 4000): [(4000, 4000)]}
    group = plan.groups[0]
    moved = []
    for piece in group.pieces:
        x, y = places[piece.width_tenth_mm, piece.height_tenth_mm].pop(0)
        moved.append(replace(piece, x_tenth_mm=x, y_tenth_mm=y))
    where = {piece.part: piece for piece in moved}
    parts = tuple(
        replace(part, x_tenth_mm=where[part.name].x_tenth_mm, y_tenth_mm=where[part.name].y_tenth_mm)
        if part.name in where
        else part
        for part in group.parts
    )
    pinwheel = replace(plan, groups=(replace(group, pieces=tuple(moved), parts=parts, width_tenth_mm=12_000),))
    mistakes = mistakes_in_sheets(job, pinwheel)

    assert not any("overlap" in text or "trims" in text for text in mistakes)
    assert any("cannot be sawn" in text for text in mistakes)


def test_turning_against_the_grain_is_found_out() -> None:
    assert any("against its grain" in text for text in mistakes_in_sheets(GRAIN, PLAN))


def test_the_first_cut_is_watched() -> None:
    plan = cut_sheets(sheets(PANELS_A, first_cut=FirstCut.RIP))

    assert any("wrong way" in text for text in mistakes_in_sheets(sheets(PANELS_A, first_cut=FirstCut.CROSS), plan))


def test_a_piece_on_a_defect_is_found_out() -> None:
    hole = Defect(x_tenth_mm=100, y_tenth_mm=100, width_tenth_mm=100, height_tenth_mm=100)
    marred = with_group(lambda g: replace(g, defects=(hole,)))

    assert any("lies on a defect" in text for text in mistakes_in_sheets(JOB, marred))


def test_more_copies_than_there_are_are_found_out() -> None:
    few = replace(JOB, stock=(replace(JOB.stock[0], copies_count=2),))

    assert isinstance(few.stock[0], SheetStock)
    assert any("more than there are" in text for text in mistakes_in_sheets(few, PLAN))
