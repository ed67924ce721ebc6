"""Files to rows: what is read, and how each bad cell is named."""

from __future__ import annotations

import json

import msgspec
import pytest

from service.catalogue import (
    DEMO_FILES,
    DecimalMark,
    PriceStep,
    RowFaultsError,
    RowKind,
    TextForm,
    demo_rows,
    demo_text,
    in_pieces,
    read_csv,
    read_json,
    row_reading,
)

HEADER = "code,amount,currency,from_count,supplier,lead_days"
NAMES = {RowKind.LABOUR_RATES: "labour"}


def csv_faults(text: str, kind: RowKind = RowKind.PRICES, form: TextForm | None = None) -> list[tuple[int, str, str]]:
    reader, rows = read_csv(text.encode(), kind, form)
    list(rows)
    assert all(fault.remedy for fault in reader.faults.shown)
    return [(fault.line, fault.column, fault.detail) for fault in reader.faults.shown]


def prices(text: str, form: TextForm | None = None) -> list[PriceStep]:
    reader, rows = read_csv(text.encode(), RowKind.PRICES, form)
    found = [row for row in rows if isinstance(row, PriceStep)]
    assert [] == reader.faults.shown
    return found


@pytest.mark.parametrize("kind", [kind for kind in RowKind if kind is not RowKind.PRICES])
def test_the_demo_files_are_read_as_they_always_were(kind: RowKind) -> None:
    """Against the older, plain reader of the demo files."""
    assert NAMES.get(kind, kind) in DEMO_FILES
    reader, rows = read_csv(demo_text(NAMES.get(kind, kind)).encode(), kind)

    assert list(getattr(demo_rows(), kind)) == list(rows)
    assert [] == reader.faults.shown


def test_prices_take_their_day_from_the_book() -> None:
    text = f"{HEADER},per\nTM-1,3.02,GBP,1,yard,3,\nTM-1,2.90,GBP,10,yard,3,pack\nTM-2,1.10,EUR,1,yard,0,metre\n"

    assert [("TM-1", 302, 1, "pack"), ("TM-1", 290, 10, "pack"), ("TM-2", 110, 1, "metre")] == [
        (row.code, row.amount_minor, row.from_count, row.per) for row in prices(text)
    ]


def test_a_spreadsheet_of_western_europe() -> None:
    """Signature, semicolons, decimal commas, CR LF, an empty line at the end: all at once."""
    body = "\ufeff" + "\r\n".join([HEADER.replace(",", ";"), "TM-1;3,02;EUR;1;Müller;3", ";;;;;", ""])

    (row,) = prices(body)
    assert (302, "EUR", "Müller") == (row.amount_minor, row.currency, row.supplier)


def test_a_point_in_a_file_of_commas_is_not_guessed_at() -> None:
    """1.234 may be one and a bit, or a thousand."""
    text = HEADER.replace(",", ";") + "\nTM-1;1.234;GBP;1;yard;3\n"

    assert [(2, "amount", "'1.234' has a point in a file of decimal commas")] == csv_faults(text)
    assert 120 == prices(text.replace("1.234", "1.20"), TextForm(decimal_mark=DecimalMark.POINT))[0].amount_minor


@pytest.mark.parametrize(
    ("cells", "column", "detail"),
    [
        ("TM 1,3.02,GBP,1,yard,3", "code", "'TM 1' is not a code"),
        (",3.02,GBP,1,yard,3", "code", "the cell is empty"),
        ("TM-1,3.021,GBP,1,yard,3", "amount", "'3.021' is finer than a minor unit of GBP"),
        ('TM-1,"1,000.00",GBP,1,yard,3', "amount", "'1,000.00' is not an amount"),
        ("TM-1,-3.02,GBP,1,yard,3", "amount", "'-3.02' is negative"),
        ("TM-1,3.02,XXX,1,yard,3", "amount", "'3.02' is an amount of an unknown currency"),
        ("TM-1,3.02,GBP,0,yard,3", "from_count", "0 is out of range"),
        ("TM-1,3.02,GBP,1.5,yard,3", "from_count", "1.5 is not a whole number"),
        ("TM-1,3.02,GBP,one,yard,3", "from_count", "'one' is not a number"),
        ("TM-1,3.02,GBP,1,=cmd,3", "supplier", "'=cmd' would be run as a formula by a spreadsheet"),
        ('TM-1,3.02,GBP,1,"two\nlines",3', "supplier", r"'two\nlines' has a line break or another control character"),
        (f"TM-1,3.02,GBP,1,{'x' * 401},3", "supplier", "401 characters are too many"),
        ("TM-1,3.02,GBP,1,yard,3,more", "", "more cells than columns"),
    ],
)
def test_a_bad_cell_is_named(cells: str, column: str, detail: str) -> None:
    line = 3 + cells.count("\n")

    assert [(line, column, detail)] == csv_faults(f"{HEADER}\nTM-0,3.02,GBP,1,yard,3\n{cells}\n")


def test_every_fault_of_a_row_and_of_a_file_is_told() -> None:
    found = csv_faults(f"{HEADER}\nTM 1,x,GBP,0,yard,3\nTM-2,3.02,GBP,1,yard,\n")

    assert [(2, "code"), (2, "amount"), (2, "from_count"), (3, "lead_days")] == [fault[:2] for fault in found]


def test_a_header_that_is_wrong_ends_it() -> None:
    found = csv_faults("code,amount,currency,amount,colour\nTM-1,x,x,x,x\n")

    assert [
        (1, "amount", "the column comes twice"),
        (1, "colour", "no such column"),
        (1, "from_count", "the column is missing"),
        (1, "supplier", "the column is missing"),
        (1, "lead_days", "the column is missing"),
    ] == found


def test_an_empty_file_lacks_its_columns() -> None:
    assert 6 == len(csv_faults(""))


def test_one_row_may_not_hide_another() -> None:
    row = "TM-1,3.02,GBP,1,yard,3"
    found = csv_faults(f"{HEADER}\n{row}\n{row.replace('GBP', 'EUR')}\n{row.replace('3.02', '4.02')}\n")

    assert [(4, "code", "code TM-1, currency GBP, from_count 1 stands in line 2 already")] == found


def test_an_open_quote_is_named() -> None:
    assert [(3, "")] == [fault[:2] for fault in csv_faults(f'{HEADER}\n"TM-1,3.02\n')]


def test_a_thousand_are_shown_and_all_are_counted() -> None:
    reader, rows = read_csv((HEADER + "\n" + "x x,1,GBP,1,y,1\n" * 1_500).encode(), RowKind.PRICES)

    assert [] == list(rows)
    assert (1_000, 1_500) == (len(reader.faults.shown), reader.faults.faults_count)


def test_more_rows_than_are_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(row_reading, "MOST_ROWS_COUNT", 2)
    lines = [f"TM-{number},3.02,GBP,1,yard,3" for number in range(3)]

    assert [] == csv_faults("\n".join([HEADER, *lines[:2]]))
    assert ["more than 2 rows"] == [fault[2] for fault in csv_faults("\n".join([HEADER, *lines]))]


# ------------------------------------------------------------------------------------------------------------------ JSON
ROW = {"code": "TM-1", "amount": "3.02", "currency": "GBP", "from_count": 1, "supplier": "yard", "lead_days": 3}


def json_faults(rows: object, kind: RowKind = RowKind.PRICES) -> list[tuple[int, str, str]]:
    reader, found = read_json(json.dumps(rows).encode(), kind)
    list(found)
    return [(fault.line, fault.column, fault.detail) for fault in reader.faults.shown]


def test_json_is_the_same_as_csv() -> None:
    reader, rows = read_json(json.dumps([ROW, {**ROW, "code": "TM-2", "per": None}]).encode(), RowKind.PRICES)

    assert prices(f"{HEADER}\nTM-1,3.02,GBP,1,yard,3\nTM-2,3.02,GBP,1,yard,3\n") == list(rows)
    assert [] == reader.faults.shown


@pytest.mark.parametrize(
    ("change", "column", "detail"),
    [
        ({"amount": 3.02}, "amount", "3.02 is not a text"),
        ({"from_count": "1"}, "from_count", "'1' is not a number"),
        ({"from_count": True}, "from_count", "True is not a number"),
        ({"from_count": 1.5}, "from_count", "1.5 is not a whole number"),
        ({"from_count": 10**20}, "from_count", "'100000000000000000000' is not a number"),
        ({"supplier": ["yard"]}, "supplier", "['yard'] is not a text"),
        ({"supplier": "a\u0000b"}, "supplier", r"'a\x00b' has a line break or another control character"),
        ({"code": None}, "code", "the cell is empty"),
        ({"colour": "red"}, "colour", "no such member"),
    ],
)
def test_a_bad_member_is_named(change: dict[str, object], column: str, detail: str) -> None:
    assert (2, column, detail) in json_faults([ROW, {**ROW, "code": "TM-2", **change}])


@pytest.mark.parametrize("body", [b"", b"{}", b"[1]", b"[{}", b"\xff", b'[{"code":"\\ud800"}]', b"[" * 100_000])
def test_what_is_no_list_of_objects_is_refused(body: bytes) -> None:
    with pytest.raises(RowFaultsError):
        read_json(body, RowKind.PRICES)


def test_lists_and_truth_in_json() -> None:
    fire = msgspec.to_builtins(demo_rows().appliances[0])
    reader, rows = read_json(json.dumps([fire]).encode(), RowKind.APPLIANCES)

    assert [demo_rows().appliances[0]] == list(rows)
    assert [] == reader.faults.shown
    assert (1, "options", "'logs' is not an array of texts") in json_faults([{**fire, "options": "logs"}], RowKind.APPLIANCES)
    assert (1, "may_be_boarded_over", "1 is not true or false") in json_faults(
        [{**fire, "may_be_boarded_over": 1}], RowKind.APPLIANCES
    )


def test_rows_in_pieces() -> None:
    _, rows = read_csv(demo_text("materials").encode(), RowKind.MATERIALS)

    assert [50, 50, 12] == [len(piece) for piece in in_pieces(rows, 50)]
