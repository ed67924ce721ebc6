"""How a file of rows is written: its encoding, what parts its cells, and how its numbers are written."""

from __future__ import annotations

import codecs
from enum import StrEnum
from typing import Final

import msgspec

from service.catalogue.rows import HEADER_LINE, RowFault, RowFaultsError

SIGNATURE: Final = codecs.BOM_UTF8.decode()  # what spreadsheets put before UTF-8
OTHER_SIGNATURES: Final = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)


class Encoding(StrEnum):
    """The two that are taken; everything else is refused rather than guessed."""

    UTF_8 = "utf-8"
    CP1252 = "cp1252"  # what spreadsheets of western Europe write without a signature


class Delimiter(StrEnum):
    """What parts the cells of a line."""

    COMMA = ","
    SEMICOLON = ";"
    TAB = "\t"


class DecimalMark(StrEnum):
    """What stands before the decimals of a number."""

    POINT = "point"
    COMMA = "comma"


class TextForm(msgspec.Struct, frozen=True, kw_only=True):
    """Form of a CSV file; what is None is told from the file."""

    encoding: Encoding | None = None
    delimiter: Delimiter | None = None
    decimal_mark: DecimalMark | None = None


def decode_text(body: bytes, encoding: Encoding | None = None) -> str:
    """The text of a file, without its signature.

    Args:
        body: the file.
        encoding: as stated by the caller; None: UTF-8 where it is that, else cp1252.

    Raises:
        RowFaultsError: it is not in that encoding, with the line.
    """
    if body.startswith(OTHER_SIGNATURES):
        raise _not_text(1, "the file is UTF-16", 'save it as "CSV UTF-8"')
    if encoding is not Encoding.CP1252:
        try:
            return body.decode("utf-8").removeprefix(SIGNATURE)
        except UnicodeDecodeError as error:
            if encoding is Encoding.UTF_8 or body.startswith(codecs.BOM_UTF8):
                raise _not_text(_line(body, error.start), "a byte here is not UTF-8", 'save it as "CSV UTF-8"') from error
    try:
        return body.decode("cp1252")
    except UnicodeDecodeError as error:
        raise _not_text(_line(body, error.start), "a byte here is neither UTF-8 nor cp1252", 'save it as "CSV UTF-8"') from error


def form_of(text: str, stated: TextForm) -> tuple[str, bool]:
    """Delimiter of a text, and whether its numbers have a decimal comma; what is stated holds.

    A file parted by semicolons has decimal commas unless it is stated otherwise: both come from the same spreadsheet setting.
    """
    header = text.partition("\n")[0]
    counts = {mark: _outside_quotes(header, mark) for mark in Delimiter}
    found = max(counts, key=lambda mark: counts[mark]) if any(counts.values()) else Delimiter.COMMA
    delimiter = stated.delimiter or found
    if stated.decimal_mark is None:
        return delimiter.value, delimiter is Delimiter.SEMICOLON
    return delimiter.value, stated.decimal_mark is DecimalMark.COMMA


def _outside_quotes(header: str, mark: str) -> int:
    return sum(part.count(mark) for part in header.split('"')[::2])


def _line(body: bytes, place: int) -> int:
    return body.count(b"\n", 0, place) + HEADER_LINE


def _not_text(line: int, detail: str, remedy: str) -> RowFaultsError:
    return RowFaultsError((RowFault(line=line, column="", detail=detail, remedy=remedy),))
