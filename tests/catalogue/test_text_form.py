from __future__ import annotations

import pytest

from service.catalogue import DecimalMark, Delimiter, Encoding, RowFaultsError, TextForm
from service.catalogue.text_form import decode_text, form_of

EURO = "Größe; 5 €\n"


@pytest.mark.parametrize(
    ("body", "stated"),
    [
        (EURO.encode(), None),
        (EURO.encode("utf-8-sig"), None),
        (EURO.encode("utf-8-sig"), Encoding.UTF_8),
        (EURO.encode("cp1252"), None),
        (EURO.encode("cp1252"), Encoding.CP1252),
    ],
)
def test_text_of_either_encoding(body: bytes, stated: Encoding | None) -> None:
    assert decode_text(body, stated) == EURO


def test_what_is_stated_is_not_guessed() -> None:
    """The UTF-8 bytes of a sharp s are two letters in cp1252."""
    assert decode_text("ß".encode(), Encoding.CP1252) == "ÃŸ"


@pytest.mark.parametrize(
    ("body", "stated", "line"),
    [
        (b"a\nb\n\xe9\n", Encoding.UTF_8, 3),
        (b"\xef\xbb\xbfa\n\xe9", None, 2),  # a signature, then no UTF-8
        (b"a\n\x81", None, 2),  # a byte that cp1252 leaves free
        ("a".encode("utf-16"), None, 1),
    ],
)
def test_what_is_neither_is_refused_with_its_line(body: bytes, stated: Encoding | None, line: int) -> None:
    with pytest.raises(RowFaultsError) as caught:
        decode_text(body, stated)

    assert [line] == [fault.line for fault in caught.value.faults]


@pytest.mark.parametrize(
    ("header", "stated", "expected"),
    [
        ("code,amount", TextForm(), (",", False)),
        ("code;amount", TextForm(), (";", True)),
        ("code\tamount", TextForm(), ("\t", False)),
        ('code;"a,b,c,d"', TextForm(), (";", True)),
        ("code", TextForm(), (",", False)),
        ("code;amount", TextForm(decimal_mark=DecimalMark.POINT), (";", False)),
        ("code,amount", TextForm(decimal_mark=DecimalMark.COMMA), (",", True)),
        ("code;amount", TextForm(delimiter=Delimiter.COMMA), (",", False)),
    ],
)
def test_form_of_a_file(header: str, stated: TextForm, expected: tuple[str, bool]) -> None:
    assert form_of(f"{header}\nx", stated) == expected
