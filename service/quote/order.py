"""The yard's order: what to buy, by supplier, as rows that a spreadsheet or a supplier's desk reads.

A cell that a spreadsheet could take for a formula is written as text (OWASP, CSV injection: cells that begin with = + - @,
a tab or a line end).
"""

from __future__ import annotations

import csv
import io
from decimal import Decimal
from typing import TYPE_CHECKING, Final

import msgspec

if TYPE_CHECKING:
    from service.quote.wire import BillBody, BillLineAnswer

HEADERS: Final = (
    "supplier", "code", "description", "packs_count", "unit", "price_each", "price", "currency", "lead_days", "needed",
    "needed_unit", "rule",
)  # fmt: skip
NUMBERS: Final = frozenset({"packs_count", "price_each", "price", "lead_days", "needed"})
FORMULA_STARTS: Final = ("=", "+", "-", "@", "\t", "\r", "\n")
NO_SUPPLIER: Final = "no supplier"


class OrderRow(msgspec.Struct, frozen=True, kw_only=True):
    """One line of an order. Numbers are decimal text; an empty one is not known."""

    cells: tuple[str, ...]  # as `HEADERS`


def order_rows(bill: BillBody) -> tuple[OrderRow, ...]:
    """Lines that are bought, by supplier, in the order of the bill; what the book has no price for stands with the rest."""
    bought = [line for line in bill.lines if line.packs_count > 0]
    return tuple(_row(line) for line in sorted(bought, key=lambda line: (line.supplier is None, line.supplier or "")))


def order_csv(bill: BillBody) -> str:
    """The order as CSV (RFC 4180), UTF-8, a header line first."""
    page = io.StringIO()
    writer = csv.writer(page, lineterminator="\r\n")
    writer.writerow(HEADERS)
    for row in order_rows(bill):
        writer.writerow([cell if name in NUMBERS else harmless(cell) for name, cell in zip(HEADERS, row.cells, strict=True)])
    return page.getvalue()


def harmless(cell: str) -> str:
    """Text that no spreadsheet runs: what could be a formula gets an apostrophe in front."""
    return f"'{cell}" if cell.startswith(FORMULA_STARTS) else cell


def _row(line: BillLineAnswer) -> OrderRow:
    return OrderRow(
        cells=(
            line.supplier or NO_SUPPLIER,
            line.code,
            line.description,
            str(line.packs_count),
            line.unit,
            line.each.amount if line.each else "",
            str(Decimal(line.each.amount) * line.packs_count) if line.each else "",
            line.each.currency if line.each else "",
            "" if line.lead_days is None else str(line.lead_days),
            "" if line.need is None else f"{line.need:g}",
            line.need_unit,
            line.rule,
        )
    )
