"""What is exported is what an import takes, row for row."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.catalogue import DecimalMark, RowKind, demo_rows, key_of, read_csv, read_json, write_csv, write_json
from service.catalogue.row_reading import NO_DAY

if TYPE_CHECKING:
    from collections.abc import Sequence

    from service.catalogue import Row


def rows_of(kind: RowKind) -> Sequence[Row]:
    rows: Sequence[Row] = getattr(demo_rows(), kind)
    return [msgspec.structs.replace(row, valid_from=NO_DAY) for row in rows] if kind is RowKind.PRICES else rows


def by_key(kind: RowKind, rows: Sequence[Row]) -> dict[tuple[str, ...], Row]:
    return {key_of(kind, row): row for row in rows}


@pytest.mark.parametrize("kind", RowKind)
@pytest.mark.parametrize("mark", DecimalMark)
def test_csv_round_trip(kind: RowKind, mark: DecimalMark) -> None:
    body = write_csv(rows_of(kind), kind, mark)
    reader, rows = read_csv(body, kind)
    found = list(rows)

    assert by_key(kind, rows_of(kind)) == by_key(kind, found)
    assert [] == reader.faults.shown
    assert body == write_csv(found, kind, mark)  # and the order is always the same


@pytest.mark.parametrize("kind", RowKind)
def test_json_round_trip(kind: RowKind) -> None:
    body = write_json(rows_of(kind), kind)
    reader, rows = read_json(body, kind)
    found = list(rows)

    assert by_key(kind, rows_of(kind)) == by_key(kind, found)
    assert [] == reader.faults.shown
    assert body == write_json(found, kind)


@pytest.mark.parametrize("kind", RowKind)
def test_nothing_is_a_file_too(kind: RowKind) -> None:
    _, from_csv = read_csv(write_csv([], kind), kind)
    _, from_json = read_json(write_json([], kind), kind)

    assert [[], []] == [list(from_csv), list(from_json)]


TEXTS = (
    st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=30).map(str.strip).filter(lambda text: text[:1] not in "=@")
)
NUMBERS = st.floats(0, 1e9, allow_nan=False).filter(lambda number: number == 0 or number > 1e-90)


@settings(max_examples=40)
@given(texts=st.lists(TEXTS.filter(bool), min_size=2, max_size=2), numbers=st.lists(NUMBERS, min_size=2, max_size=2))
def test_any_text_and_number_comes_back(texts: list[str], numbers: list[float]) -> None:
    first = demo_rows().materials[0]
    row = msgspec.structs.replace(first, description=texts[0], unit=texts[1], mass_kg=numbers[0], length_mm=numbers[1])
    kind = RowKind.MATERIALS
    comma = write_csv([row], kind, DecimalMark.COMMA)
    found = [*read_csv(write_csv([row], kind), kind)[1], *read_csv(comma, kind)[1], *read_json(write_json([row], kind), kind)[1]]

    assert [row] * 3 == found


def test_amounts_are_written_in_major_units() -> None:
    step = msgspec.structs.replace(demo_rows().prices[0], code="X", amount_minor=1205)

    assert b"X,12.05,GBP,1,supplier_a,1,pack\r\n" in write_csv([step], RowKind.PRICES)
    assert b"X;12,05;GBP;1;supplier_a;1;pack\r\n" in write_csv([step], RowKind.PRICES, DecimalMark.COMMA)
