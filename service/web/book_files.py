"""Files of rows over HTTP: a body to rows, piece by piece off the event loop, and rows to a body."""

from __future__ import annotations

import asyncio
import hashlib
import json
from typing import TYPE_CHECKING, Any, Final

import msgspec

from service.catalogue import (
    DecimalMark,
    Delimiter,
    Encoding,
    RowFaultsError,
    TextForm,
    in_pieces,
    read_csv,
    read_json,
    write_csv,
    write_json,
)
from service.errors import Reason
from service.web.problems import ProblemError, ProblemFault

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Iterator, Sequence

    from litestar import Request

    from service.catalogue import Row, RowFault, RowKind, RowReader

CSV: Final = "text/csv"
JSON: Final = "application/json"
TAKEN: Final = f"{CSV}, {JSON}"
PIECE_ROWS_COUNT: Final = 2_000  # some ten milliseconds of reading
DELIMITERS: Final = {"comma": Delimiter.COMMA, "semicolon": Delimiter.SEMICOLON, "tab": Delimiter.TAB}


class RowFile(msgspec.Struct, frozen=True, kw_only=True):
    """A file of rows as it came."""

    body: bytes
    is_json: bool
    form: TextForm

    @property
    def digest(self) -> str:
        """SHA-256 of the file and of how it is to be read."""
        told = f"{self.is_json}\0{msgspec.json.encode(self.form).decode()}\0".encode()
        return hashlib.sha256(told + self.body).hexdigest()


def form_of(encoding: str | None, delimiter: str | None, decimal: str | None) -> TextForm:
    """How the caller says that a CSV file is written."""
    return TextForm(
        encoding=None if encoding is None else Encoding(encoding),
        delimiter=None if delimiter is None else DELIMITERS[delimiter],
        decimal_mark=None if decimal is None else DecimalMark(decimal),
    )


async def take_file(request: Request[Any, Any, Any], form: TextForm) -> RowFile:
    """The file in the body of a request.

    Raises:
        ProblemError: another media type, a coding, or too large.
    """
    media_type = request.content_type[0].lower()
    sent = request.headers.get("content-type", "")[:80]
    coding = request.headers.get("content-encoding", "identity").strip().lower()
    if media_type not in {CSV, JSON} or coding != "identity":
        detail = f"The body is of type {json.dumps(sent)}, coded {json.dumps(coding[:80])}; {TAKEN} as it is is wanted."
        raise ProblemError(Reason.UNSUPPORTED_MEDIA_TYPE, detail, headers={"Accept": TAKEN})
    return RowFile(body=await request.body(), is_json=media_type == JSON, form=form)


async def open_file(file: RowFile, kind: RowKind) -> tuple[RowReader, Iterator[Row]]:
    """The reader of a file and its rows, not yet read.

    Raises:
        ProblemError: it is in no form that is taken.
    """
    try:
        if file.is_json:
            return await asyncio.to_thread(read_json, file.body, kind)
        return await asyncio.to_thread(read_csv, file.body, kind, file.form)
    except RowFaultsError as error:
        raise bad_rows(error.faults, len(error.faults)) from error


async def pieces_of(rows: Iterator[Row]) -> AsyncIterator[Sequence[Row]]:
    """Rows piece by piece; each is read in a thread, so that others are served meanwhile."""
    pieces = in_pieces(rows, PIECE_ROWS_COUNT)
    while (piece := await asyncio.to_thread(next, pieces, None)) is not None:
        yield piece


def bad_rows(faults: Sequence[RowFault], faults_count: int) -> ProblemError:
    """A file with faults: the first thousand in full, all of them counted."""
    shown = tuple(
        ProblemFault(line=fault.line, column=fault.column, reason=Reason.BAD_ROWS, detail=fault.detail, remedy=fault.remedy)
        for fault in faults
    )
    first = faults[0]
    more = f"; the first {len(shown)} are in `errors`" if faults_count > len(shown) else ""
    detail = f"{faults_count} faults{more}. Line {first.line}, {first.column or 'the whole line'}: {first.detail}."
    return ProblemError(Reason.BAD_ROWS, detail, faults=shown)


async def write_file(rows: Sequence[Row], kind: RowKind, *, is_json: bool, decimal: str | None) -> bytes:
    """Rows as a file."""
    if is_json:
        return await asyncio.to_thread(write_json, rows, kind)
    return await asyncio.to_thread(write_csv, rows, kind, DecimalMark.POINT if decimal is None else DecimalMark(decimal))
