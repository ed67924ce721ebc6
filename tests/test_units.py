"""Units: exact conversions and the bounded types of the wire."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.units import (
    MM_PER_INCH,
    STANDARD_GRAVITY_M_S2,
    UNIT_SUFFIXES,
    Code,
    Currency,
    IsoDate,
    LongText,
    Money,
    Pointer,
    Ratio,
    ShortText,
    millimetres,
    round_half_up,
    tenths,
    text_mm,
    whole_mm_down,
    whole_mm_nearest,
)

AS_SENT = "_mm _mm2 _mm4 _m2 _m3 _kg _kg_m2 _kg_m3 _w _a _n _n_mm _kn _mpa _k _deg _deg_c _minutes _hours _days _ratio _count _in"


def test_the_suffixes_of_the_contract_are_all_known() -> None:
    """The list is section 2 of the design."""
    assert set() == set(AS_SENT.split()) - set(UNIT_SUFFIXES)


def test_constants_are_those_of_their_definitions() -> None:
    """The inch: 25.4 mm (international yard and pound, 1959). Standard gravity: 9.80665 m/s2 (3rd CGPM, 1901)."""
    assert Fraction(254, 10) == Fraction(repr(MM_PER_INCH))
    assert Fraction(980_665, 100_000) == Fraction(repr(STANDARD_GRAVITY_M_S2))


@pytest.mark.parametrize(
    ("length_mm", "length_tenth_mm"),
    [
        (0, 0),
        (2515, 25150),
        (195.5, 1955),
        (0.04, 0),
        (0.05, 1),  # a half goes up
        (100.05, 1001),  # 100.05 * 10 is 1000.4999999999999 in binary; the decimal that was typed counts
        (100.15, 1002),
        (100.25, 1003),  # not to even
        (12_000.0, 120_000),
    ],
)
def test_tenths(length_mm: float, length_tenth_mm: int) -> None:
    """Decimal halves by hand."""
    assert length_tenth_mm == tenths(length_mm)


@given(st.integers(-200_000, 200_000))
def test_tenths_go_out_and_come_back(length_tenth_mm: int) -> None:
    assert length_tenth_mm == tenths(millimetres(length_tenth_mm))


@given(st.integers(0, 200_000))
def test_millimetres_are_written_with_one_decimal(length_tenth_mm: int) -> None:
    assert 1 == len(repr(millimetres(length_tenth_mm)).partition(".")[2])


@pytest.mark.parametrize(
    ("value", "places_count", "rounded"),
    [
        (0.125, 2, "0.13"),
        (2.675, 2, "2.68"),  # round() gives 2.67: the binary value lies below the half
        (Decimal("2.5"), 0, "3"),
        (Decimal("-2.5"), 0, "-3"),
        (Decimal("1.004999"), 2, "1.00"),
        (7, 2, "7.00"),
    ],
)
def test_round_half_up(value: Decimal | float, places_count: int, rounded: str) -> None:
    assert rounded == str(round_half_up(value, places_count))


@pytest.mark.parametrize(
    ("length_tenth_mm", "down_mm", "nearest_mm", "text"),
    [
        (0, 0, 0, "0"),
        (3900, 390, 390, "390"),
        (1954, 195, 195, "195.4"),
        (1955, 195, 196, "195.5"),
        (1959, 195, 196, "195.9"),
        (-5, -1, 0, "-0.5"),
    ],
)
def test_whole_millimetres_and_text(length_tenth_mm: int, down_mm: int, nearest_mm: int, text: str) -> None:
    assert down_mm == whole_mm_down(length_tenth_mm)
    assert nearest_mm == whole_mm_nearest(length_tenth_mm)
    assert text == text_mm(length_tenth_mm)


def test_money_is_a_decimal_string_and_a_currency() -> None:
    sent = b'{"amount":"1234.50","currency":"GBP"}'

    money = msgspec.json.decode(sent, type=Money)

    assert Money(amount="1234.50", currency="GBP") == money
    assert sent == msgspec.json.encode(money)


@pytest.mark.parametrize(
    "sent",
    [
        b'{"amount":1234.5,"currency":"GBP"}',
        b'{"amount":"1234.50","currency":"gbp"}',
        b'{"amount":"1,234.50","currency":"GBP"}',
        b'{"amount":"1e3","currency":"GBP"}',
        b'{"amount":"NaN","currency":"GBP"}',
        b'{"amount":".50","currency":"GBP"}',
        b'{"amount":"12.\\n","currency":"GBP"}',
        b'{"amount":"12\\n","currency":"GBP"}',
        b'{"amount":"1234567890123","currency":"GBP"}',
        b'{"amount":"12.00","currency":"GBP","tax":"0"}',
        b'{"amount":"12.00"}',
    ],
)
def test_other_money_is_refused(sent: bytes) -> None:
    with pytest.raises(msgspec.ValidationError):
        msgspec.json.decode(sent, type=Money)


@pytest.mark.parametrize(
    ("kind", "value"),
    [
        (ShortText, "Oak beam, 1.2 m, für Zoë"),
        (ShortText, "x" * 80),
        (LongText, ""),
        (LongText, "x" * 400),
        (Code, "TM-1035A"),
        (Code, "snug_2"),
        (IsoDate, "2026-12-01"),
        (IsoDate, "2028-02-29"),
        (Currency, "GBP"),
        (Pointer, ""),
        (Pointer, "/survey/room/heights/0/height_mm"),
        (Ratio, 0),
        (Ratio, 1),
    ],
)
def test_typed_text_and_ratios_are_taken(kind: object, value: object) -> None:
    assert value == msgspec.convert(value, kind)


@pytest.mark.parametrize(
    ("kind", "value"),
    [
        (ShortText, ""),
        (ShortText, "x" * 81),
        (ShortText, "two\nlines"),
        (ShortText, "last line\n"),
        (ShortText, "\x00"),
        (LongText, "x" * 401),
        (LongText, "\x7f"),
        (Code, ""),
        (Code, "TM 1035"),
        (Code, "TM-1\n"),
        (Code, "x" * 33),
        (IsoDate, "2026-13-01"),
        (IsoDate, "2026-12-32"),
        (IsoDate, "2026-1-1"),
        (IsoDate, "2026-12-01\n"),
        (Currency, "GB"),
        (Pointer, "survey/room"),
        (Ratio, -0.01),
        (Ratio, 1.01),
    ],
)
def test_other_text_and_ratios_are_refused(kind: object, value: object) -> None:
    with pytest.raises(msgspec.ValidationError):
        msgspec.convert(value, kind)
