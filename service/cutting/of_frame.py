"""The cutting jobs of a frame: its bars from the studding in stock, its boards from their sheets."""

from __future__ import annotations

from collections import Counter
from functools import partial
from typing import TYPE_CHECKING, Final

import msgspec

from service.brief import Timber
from service.catalogue import Catalogue, price_step
from service.cutting.bars import cut_bars
from service.cutting.pieces import (
    STANDARD,
    BarAim,
    BarJob,
    BarPiece,
    BarStock,
    Effort,
    SheetJob,
    SheetLayout,
    SheetPiece,
    SheetStock,
    Stop,
    never,
)
from service.cutting.plan import BarPlan, SheetPlan
from service.cutting.sheets import cut_sheets
from service.cutting.timbers import timbers_of
from service.errors import Fault, Reason, RequestFaultsError
from service.frame import CutWhen, Layer, Member, Unit
from service.rules import RuleSet
from service.units import millimetres, tenths, text_mm

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.brief import Board, Job
    from service.frame import Frame, Panel

AVAILABLE: Final = "/options/stock_available"


class BoardCuts(msgspec.Struct, frozen=True, kw_only=True):
    """The sheets of one board."""

    code: str  # empty: a custom board
    description: str
    plan: SheetPlan
    kerf_mm: float
    with_allowance: bool  # the ceiling edges carry the allowance; False where the sheets do not have it


class TimberCuts(msgspec.Struct, frozen=True, kw_only=True):
    """The bars of one studding."""

    timber: Timber
    plan: BarPlan


class FramePlan(msgspec.Struct, frozen=True, kw_only=True):
    """How everything of a frame is cut."""

    bars: BarPlan  # of the job's own studding
    boards: tuple[BoardCuts, ...]
    other_bars: tuple[TimberCuts, ...] = ()  # of another section or class, for what the checks asked for
    kerf_mm: float
    allowance_mm: int

    @property
    def bars_count(self) -> int:
        """Bars of every studding."""
        return self.bars.bars_count + sum(one.plan.bars_count for one in self.other_bars)


class OnHand(msgspec.Struct, frozen=True, kw_only=True):
    """Lengths of a studding that are there already."""

    length_tenth_mm: int
    offcuts_count: int
    thickness_tenth_mm: int = 0  # 0: of the job's own section and class
    width_tenth_mm: int = 0
    strength_class: str = ""
    code: str = ""  # of a bar that was bought; empty: an offcut


class Available(msgspec.Struct, frozen=True, kw_only=True):
    """How many of a stock the yard has."""

    code: str
    available_count: int


class Yard(msgspec.Struct, frozen=True, kw_only=True):
    """What cutting reads besides the frame: stock prices, the saw, and when to stop."""

    catalogue: Catalogue
    rules: RuleSet
    kerf_mm: float | None = None  # saw cut in timber; None: the rule's
    offcuts: tuple[OnHand, ...] = ()  # cut first, cost nothing
    cut_already: tuple[Member, ...] = ()  # pieces that are not cut again
    available: tuple[Available, ...] = ()  # in the order of the request; what is not named: as many as wanted
    effort: Effort = STANDARD
    stop: Stop = never
    layout: SheetLayout = SheetLayout.EDGE_TO_EDGE

    def copies_of(self, code: str) -> int | None:
        """How many there are of a stock; None: as many as wanted."""
        found = [one.available_count for one in self.available if one.code == code]
        return sum(found) if found else None

    def timber_kerf_mm(self) -> float:
        """Width of the saw cut in timber, mm."""
        return self.rules.take_off.timber_kerf_mm if self.kerf_mm is None else self.kerf_mm


def cut_frame(frame: Frame, job: Job, yard: Yard) -> FramePlan:
    """Cut a frame's timber and boards at least cost.

    Pieces whose length follows from the ceiling count longer by the allowance. A section without a price is cut for least
    length.

    Raises:
        RequestFaultsError: what the yard has does not suffice, or names what this job is not made of.
    """
    boards, timbers = boards_of(frame, job), to_cut(frame, job, yard)
    lengths = {one.code for timber, _ in timbers for one in timber.stock}
    if strange := _strange_codes(yard, {*lengths, *(board.code for board, _ in boards)}):
        raise RequestFaultsError(strange)
    faults: list[Fault] = []
    bars = [_tried(yard, lengths, faults, partial(_cut_timber, timber, members, job, yard)) for timber, members in timbers]
    sheets = [_tried(yard, {board.code}, faults, partial(_cut_board, board, panels, job, yard)) for board, panels in boards]
    if faults:
        raise RequestFaultsError(tuple(faults))
    own, *others = (cuts for cuts in bars if cuts is not None)
    return FramePlan(
        bars=own.plan,
        other_bars=tuple(others),
        boards=tuple(cuts for cuts in sheets if cuts is not None),
        kerf_mm=yard.timber_kerf_mm(),
        allowance_mm=job.allowance_mm if frame.full_height else 0,
    )


def _cut_timber(timber: Timber, members: tuple[Member, ...], job: Job, yard: Yard) -> TimberCuts:
    return TimberCuts(timber=timber, plan=cut_bars(timber_job(timber, members, job, yard), yard.effort, yard.stop))


def _tried[T](yard: Yard, codes: set[str], faults: list[Fault], make: Callable[[], T]) -> T | None:
    """A plan, or None and its faults noted, at the row that limits these codes if there is but one."""
    try:
        return make()
    except RequestFaultsError as error:
        rows = [at for at, one in enumerate(yard.available) if one.code in codes]
        pointer = f"{AVAILABLE}/{rows[0]}/available_count" if len(rows) == 1 else AVAILABLE
        faults += [msgspec.structs.replace(fault, pointer=pointer) for fault in error.faults]
        return None


def _strange_codes(yard: Yard, known: set[str]) -> tuple[Fault, ...]:
    return tuple(
        Fault(
            pointer=f"{AVAILABLE}/{at}/code",
            reason=Reason.UNKNOWN_MODEL,
            detail=f'"{one.code}" is no stud length that passes the way in and no board of this job',
            remedy=f"Leave it out, or name one of {', '.join(sorted(known))}.",
        )
        for at, one in enumerate(yard.available)
        if one.code not in known
    )


def bar_job(frame: Frame, job: Job, yard: Yard) -> BarJob:
    """The bars of the job's own studding as a cutting job."""
    timber, members = to_cut(frame, job, yard)[0]
    return timber_job(timber, members, job, yard)


def to_cut(frame: Frame, job: Job, yard: Yard) -> tuple[tuple[Timber, tuple[Member, ...]], ...]:
    """The members of each studding that are still to be cut: those of a frame less the like pieces that are cut already."""
    there = Counter(_piece(member) for member in yard.cut_already)
    groups: list[tuple[Timber, tuple[Member, ...]]] = []
    for timber, members in timbers_of(frame, job, yard.catalogue):
        left: list[Member] = []
        for member in members:
            if there[_piece(member)]:
                there[_piece(member)] -= 1
            else:
                left.append(member)
        groups.append((timber, tuple(left)))
    own, *others = groups
    return (own, *(group for group in others if group[1]))


def _piece(member: Member) -> tuple[Unit, int, int, str, int]:
    """What a piece can be taken by, however it is marked."""
    return member.unit, member.thickness_tenth_mm, member.width_tenth_mm, member.strength_class, member.cut_length_mm


def _on_hand(timber: Timber, job: Job, yard: Yard) -> tuple[BarStock, ...]:
    """What is there of a studding, each length once however often it is named."""
    section = (timber.thickness_tenth_mm, timber.width_tenth_mm, timber.strength_class)
    found: dict[str, BarStock] = {}
    for one in yard.offcuts:
        there = (one.thickness_tenth_mm, one.width_tenth_mm, one.strength_class)
        if there == section or (one.thickness_tenth_mm == 0 and timber == job.timber):
            code = f"bought-{one.code}" if one.code else f"on-hand-{text_mm(one.length_tenth_mm)}"
            before = found[code].copies_count or 0 if code in found else 0
            found[code] = BarStock(
                code=code, length_tenth_mm=one.length_tenth_mm, copies_count=before + one.offcuts_count, offcut=True
            )
    return tuple(found.values())


def timber_job(timber: Timber, members: tuple[Member, ...], job: Job, yard: Yard) -> BarJob:
    """The members of one studding as a cutting job; what is on hand is of the job's own."""
    pieces = tuple(
        BarPiece(
            label=member.mark,
            length_tenth_mm=member.cut_length_mm * 10
            + (job.allowance_mm * 10 if member.cut_when is CutWhen.AFTER_MEASURE else 0),
            after_measure=member.cut_when is CutWhen.AFTER_MEASURE,
        )
        for member in members
    )
    prices = [_price(stock.code, job, yard) for stock in timber.stock]
    priced = None not in prices
    stock = tuple(
        BarStock(
            code=one.code or f"custom-{one.length_tenth_mm // 10}",
            length_tenth_mm=one.length_tenth_mm,
            cost_minor=price or 0,
            copies_count=yard.copies_of(one.code),
        )
        for one, price in zip(timber.stock, prices, strict=True)
    )
    return BarJob(
        pieces=pieces,
        stock=(*stock, *_on_hand(timber, job, yard)),
        kerf_tenth_mm=tenths(yard.timber_kerf_mm()),
        least_offcut_tenth_mm=tenths(yard.rules.take_off.least_offcut_mm),
        aim=BarAim.COST if priced else BarAim.LENGTH,
    )


def _price(code: str, job: Job, yard: Yard) -> int | None:
    """Price of one pack in minor units on the day of the job, or None where the book has none."""
    step = price_step(yard.catalogue, code, job.today)
    return step.amount_minor if step else None


def boards_of(frame: Frame, job: Job) -> tuple[tuple[Board, tuple[Panel, ...]], ...]:
    """The boards of a job with the panels cut from each, in the order of first use."""
    by_layer = {Layer.FACING: job.board, Layer.LINING: job.lining, Layer.BACKBOARD: job.backboard, Layer.LID: job.lid}
    grouped: dict[str, tuple[Board, list[Panel]]] = {}
    for panel in frame.panels:
        board = by_layer.get(panel.layer) or next(pad for pad in job.pads if pad.code == panel.board_code)
        grouped.setdefault(board.code or board.description, (board, []))[1].append(panel)
    return tuple((board, tuple(panels)) for board, panels in grouped.values())


def _cut_board(board: Board, panels: tuple[Panel, ...], job: Job, yard: Yard) -> BoardCuts:
    """Sheets of one board; the allowance on ceiling edges is laid out only where it costs no sheet more."""
    plain_job = sheet_job(board, panels, job, yard=yard, allowance_mm=0)
    plain = cut_sheets(plain_job, yard.effort, yard.stop)
    cuts = BoardCuts(
        code=board.code,
        description=board.description,
        plan=plain,
        kerf_mm=millimetres(plain_job.kerf_tenth_mm),
        with_allowance=False,
    )
    after = any(panel.cut_when is CutWhen.AFTER_MEASURE for panel in panels)
    longer = sheet_job(board, panels, job, yard=yard, allowance_mm=job.allowance_mm)
    if not after or not job.allowance_mm or not all(_fits(piece, board) for piece in longer.pieces):
        return cuts
    try:
        plan = cut_sheets(longer, yard.effort, yard.stop)
    except RequestFaultsError:  # the yard has not enough for the allowance
        return cuts
    better = plan.cost_minor <= plain.cost_minor and plan.sheets_count <= plain.sheets_count
    return msgspec.structs.replace(cuts, plan=plan, with_allowance=True) if better else cuts


def sheet_job(board: Board, panels: tuple[Panel, ...], job: Job, *, yard: Yard, allowance_mm: int) -> SheetJob:
    """The panels of one board as a cutting job.

    Args:
        board: whose sheets are cut.
        panels: what is cut from them.
        job: says the day of the prices.
        yard: prices and saws.
        allowance_mm: left on what is cut after measuring.
    """
    rules = yard.rules.take_off
    stock = SheetStock(
        code=board.code or "custom-board",
        width_tenth_mm=board.sheet_length_tenth_mm,
        height_tenth_mm=board.sheet_width_tenth_mm,
        cost_minor=_price(board.code, job, yard) or 0,
        copies_count=yard.copies_of(board.code),
    )
    return SheetJob(
        pieces=tuple(_sheet_piece(panel, board, allowance_mm) for panel in panels),
        stock=(stock,),
        kerf_tenth_mm=tenths(rules.scored_board_kerf_mm if board.board_kind == "plasterboard" else rules.board_kerf_mm),
        least_offcut_width_tenth_mm=tenths(rules.least_offcut_board_mm),
        least_offcut_height_tenth_mm=tenths(rules.least_offcut_board_mm),
        layout=yard.layout,
    )


def _sheet_piece(panel: Panel, board: Board, allowance_mm: int) -> SheetPiece:
    """One panel on the sheet. Plywood on faces and returns stands grain upright where it comes out of the sheet that way."""
    after = panel.cut_when is CutWhen.AFTER_MEASURE
    piece = SheetPiece(
        label=panel.mark,
        width_tenth_mm=panel.cut_width_mm * 10,
        height_tenth_mm=(panel.cut_height_mm + (allowance_mm if after else 0)) * 10,
        rotatable=True,
        after_measure=after,
    )
    upright = msgspec.structs.replace(
        piece, width_tenth_mm=piece.height_tenth_mm, height_tenth_mm=piece.width_tenth_mm, rotatable=False
    )
    grained = board.board_kind == "plywood" and panel.layer is Layer.FACING
    return upright if grained and _fits(upright, board) else piece


def _fits(piece: SheetPiece, board: Board) -> bool:
    long, short = board.sheet_length_tenth_mm, board.sheet_width_tenth_mm
    lying = piece.width_tenth_mm <= long and piece.height_tenth_mm <= short
    return lying or (piece.rotatable and piece.height_tenth_mm <= long and piece.width_tenth_mm <= short)
