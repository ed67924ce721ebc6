from __future__ import annotations

import csv
import io
from decimal import Decimal

import msgspec
import pytest

from service.quote.order import HEADERS, harmless, order_csv, order_rows
from tests.quote.text_facts import designed

BILL = designed("A").bill


def read(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline="")))


def test_the_order_is_the_bill_by_supplier() -> None:
    rows = read(order_csv(BILL))

    assert sorted((line.code, line.packs_count) for line in BILL.lines) == sorted(
        (row["code"], int(row["packs_count"])) for row in rows
    )
    suppliers = [row["supplier"] for row in rows]
    assert sorted(suppliers) == suppliers
    assert len(set(suppliers)) > 1


def test_a_line_costs_its_packs_in_full() -> None:
    """Dust sheets are charged at a share and bought whole."""
    for row in read(order_csv(BILL)):
        assert Decimal(row["price"]) == Decimal(row["price_each"]) * int(row["packs_count"])


def test_what_has_no_price_is_ordered_without_one() -> None:
    bare = msgspec.structs.replace(BILL.lines[0], each=None, charged=None, supplier=None, lead_days=None, need=None)
    row = order_rows(msgspec.structs.replace(BILL, lines=(bare,)))[0]

    assert ("no supplier", "", "", "", "", "") == tuple(row.cells[place] for place in (0, 5, 6, 7, 8, 9))


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"])
def test_no_cell_is_a_formula(cell: str) -> None:
    """OWASP, CSV injection."""
    assert f"'{cell}" == harmless(cell)
    line = msgspec.structs.replace(BILL.lines[0], code=cell, description=cell, rule=cell, supplier=cell)
    bill = msgspec.structs.replace(BILL, lines=(line,))
    row = read(order_csv(bill))[0]

    assert {f"'{cell}"} == {row[name] for name in ("code", "description", "rule", "supplier")}
    assert set(HEADERS) == set(row)
