"""/v1/price-books/{price_book}/draft: the one draft of a book, from the first file to the day before it is published."""

from __future__ import annotations

import asyncio
import datetime as dt
from typing import Annotated, Any, Final

from litestar import Request, Response, delete, get, post
from litestar.di import NamedDependency
from litestar.params import QueryParameter

from service.catalogue import RowKind, difference, soundness_of
from service.store import BookDesk, ImportMode, ImportOrder, RowsRefusedError
from service.units import DAY_PATTERN
from service.web.book_files import CSV, JSON, bad_rows, form_of, open_file, pieces_of, take_file, write_file
from service.web.book_wire import DifferenceAnswer, Discarded, DraftAnswer, ImportedAnswer, SampleMoves, kinds_of
from service.web.callers import Caller
from service.web.price_books import BookInPath, Decimal, Form, KindInPath, actor_of, plain_answer
from service.web.problems import bad_parameters, parameter_fault
from service.web.sample_moves import Sampler
from service.web.shelf import Shelf

IMPORT_LIMIT_BYTES: Final = 32 << 20  # 100 000 rows of materials are some 14 MB
Mode = Annotated[
    str,
    QueryParameter(
        pattern=r"^(merge|replace)(?!\n)$",
        description="`merge`: rows that the file does not name stay; `replace`: they go.",
    ),
]
EncodingName = Annotated[
    str | None,
    QueryParameter(pattern=r"^(utf-8|cp1252)(?!\n)$", description="Encoding of a CSV file; left out: UTF-8, else cp1252."),
]
DelimiterName = Annotated[
    str | None,
    QueryParameter(pattern=r"^(comma|semicolon|tab)(?!\n)$", description="What parts the cells; left out: as the header has it."),
]
Day = Annotated[
    str | None,
    QueryParameter(pattern=DAY_PATTERN, description="Against the revision that holds on this day; left out: today."),
]


@get("/v1/price-books/{price_book:str}/draft", operation_id="get_draft", tags=["price books"], summary="Check the draft")
async def get_draft(price_book: BookInPath, caller: NamedDependency[Caller], books: NamedDependency[BookDesk]) -> Response[bytes]:
    """Look the draft through: how much it holds, what stops it from being published, what a person should see to."""
    draft = await books.read_draft(caller.account, price_book)
    sound = await asyncio.to_thread(soundness_of, draft.catalogue)
    return plain_answer(
        DraftAnswer(
            price_book=price_book,
            draft_digest=draft.draft_digest,
            source_digest=draft.source_digest,
            rows=kinds_of(draft),
            stops_count=sound.stops_count,
            findings_count=sound.findings_count,
            findings=sound.findings,
        )
    )


@delete(
    "/v1/price-books/{price_book:str}/draft",
    status_code=200,
    operation_id="discard_draft",
    tags=["price books"],
    summary="Discard the draft",
)
async def discard_draft(
    price_book: BookInPath, caller: NamedDependency[Caller], books: NamedDependency[BookDesk]
) -> Response[bytes]:
    """Take the draft away, with its prices. Items that were imported stay: they belong to the shop, not to the book."""
    await books.discard_draft(caller.account, price_book, actor=actor_of(caller))
    return plain_answer(Discarded(price_book=price_book))


@post(
    "/v1/price-books/{price_book:str}/draft/{kind:str}",
    status_code=200,
    operation_id="import_rows",
    tags=["price books"],
    summary="Import rows into the draft",
    request_max_body_size=IMPORT_LIMIT_BYTES,
)
async def import_rows(
    price_book: BookInPath,
    kind: KindInPath,
    request: Request[Any, Any, Any],
    *,
    caller: NamedDependency[Caller],
    books: NamedDependency[BookDesk],
    mode: Mode = "merge",
    encoding: EncodingName = None,
    delimiter: DelimiterName = None,
    decimal: Decimal = None,
) -> Response[bytes]:
    """Take a CSV file or a JSON array of rows into the draft, all or nothing; the draft is begun at need.

    A new draft begins with the prices of the latest revision. Items belong to the shop and are in the drafts of all its books.
    """
    file = await take_file(request, form_of(encoding, delimiter, decimal))
    wanted, how = RowKind(kind), ImportMode(mode)
    reader, rows = await open_file(file, wanted)
    order = ImportOrder(
        account=caller.account, price_book=price_book, kind=wanted, mode=how, file_digest=file.digest, actor=actor_of(caller)
    )
    try:
        done = await books.import_rows(order, pieces_of(rows), reader.faults)
    except RowsRefusedError as error:
        raise bad_rows(error.faults.shown, error.faults.faults_count) from error
    return plain_answer(
        ImportedAnswer(
            price_book=price_book,
            kind=wanted,
            mode=how,
            rows_count=done.rows_count,
            was_there=done.was_there,
            file_digest=order.file_digest,
        )
    )


@get(
    "/v1/price-books/{price_book:str}/draft/{kind:str}",
    operation_id="export_draft",
    tags=["price books"],
    summary="Rows of the draft as a file",
)
async def export_draft(
    price_book: BookInPath,
    kind: KindInPath,
    caller: NamedDependency[Caller],
    books: NamedDependency[BookDesk],
    *,
    form: Form = "csv",
    decimal: Decimal = None,
) -> Response[bytes]:
    """Give the shop's own rows of one kind in the draft, without those of the base catalogue: what an import takes."""
    is_json, wanted = form == "json", RowKind(kind)
    rows = await books.read_own_rows(caller.account, price_book, wanted)
    body = await write_file(rows, wanted, is_json=is_json, decimal=decimal)
    return Response(body, media_type=JSON if is_json else CSV)


@get(
    "/v1/price-books/{price_book:str}/draft-difference",
    operation_id="get_difference",
    tags=["price books"],
    summary="What the draft would change",
)
async def get_difference(
    price_book: BookInPath,
    caller: NamedDependency[Caller],
    books: NamedDependency[BookDesk],
    shelf: NamedDependency[Shelf],
    *,
    on: Day = None,
) -> Response[bytes]:
    """Say row by row what a publish would change, and by how much prices move."""
    draft = await books.read_draft(caller.account, price_book)
    before = await shelf.in_force(caller.account, price_book, _day(on))
    told = await asyncio.to_thread(difference, before, draft.catalogue)
    return plain_answer(
        DifferenceAnswer(
            draft_digest=draft.draft_digest,
            against=None if before is None else before.revision,
            counts=told.counts,
            changes_count=told.changes_count,
            changes=told.changes,
        )
    )


@get(
    "/v1/price-books/{price_book:str}/draft-samples",
    operation_id="get_sample_quotes",
    tags=["price books"],
    summary="How example quotes would move",
)
async def get_sample_quotes(
    price_book: BookInPath,
    request: Request[Any, Any, Any],
    *,
    caller: NamedDependency[Caller],
    books: NamedDependency[BookDesk],
    shelf: NamedDependency[Shelf],
    sampler: NamedDependency[Sampler],
    on: Day = None,
) -> Response[bytes]:
    """Make a few example quotes under the revision that holds and under the draft, and say which totals move."""
    day = _day(on)
    draft = await books.read_draft(caller.account, price_book)
    before = await shelf.in_force(caller.account, price_book, day)
    moves = await sampler.moves(before, draft.catalogue, day, request)
    against = None if before is None else before.revision
    return plain_answer(SampleMoves(draft_digest=draft.draft_digest, against=against, items=moves))


def _day(text: str | None) -> str:
    """The day asked for, or today; raises ProblemError where no calendar has it."""
    if text is None:
        return dt.datetime.now(dt.UTC).date().isoformat()
    try:
        return dt.date.fromisoformat(text).isoformat()
    except ValueError as error:
        raise bad_parameters((parameter_fault("on", f"there is no day {text}", "Send a day that is."),)) from error
