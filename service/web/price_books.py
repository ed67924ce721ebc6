"""/v1/price-books: the books of the caller's own shop, their published revisions, their audit."""

from __future__ import annotations

import datetime as dt
from typing import Annotated, Final

import msgspec
from litestar import Response, get, post
from litestar.di import NamedDependency
from litestar.params import JSONBody, PathParameter, QueryParameter

from service.catalogue import RowKind, rows_of
from service.errors import Fault, Reason, RequestFaultsError
from service.store import BookDesk, PublishOrder, WithdrawOrder
from service.web.book_files import CSV, JSON, write_file
from service.web.book_wire import (
    AuditPage,
    BookList,
    BookMade,
    BookRequest,
    Published,
    PublishRequest,
    RevisionList,
    Withdrawn,
    WithdrawRequest,
)
from service.web.callers import Caller
from service.web.conditional import answer, entity_tag
from service.web.parameters import CODE_PATTERN, IfNoneMatch, Limit
from service.web.shelf import Shelf

REVISION_PATTERN: Final = r"^[A-Za-z0-9._:-]{1,120}(?!\n)$"
NUMBER_PATTERN: Final = r"^[0-9]{1,15}(?!\n)$"
KIND_PATTERN: Final = rf"^({'|'.join(RowKind)})(?!\n)$"
BookInPath = Annotated[str, PathParameter(pattern=CODE_PATTERN, description="The price book.")]
KindInPath = Annotated[str, PathParameter(pattern=KIND_PATTERN, description="What the rows are.")]
RevisionInPath = Annotated[str, PathParameter(pattern=REVISION_PATTERN, description="The catalogue revision.")]
Form = Annotated[str, QueryParameter(pattern=r"^(csv|json)(?!\n)$", description="Form of the file: `csv` or `json`.")]
Decimal = Annotated[
    str | None,
    QueryParameter(
        pattern=r"^(point|comma)(?!\n)$",
        description="Decimal mark of numbers in CSV. With `comma` cells are parted by semicolons, as spreadsheets have it.",
    ),
]
Before = Annotated[
    str | None, QueryParameter(pattern=NUMBER_PATTERN, description="Where to go on: `next_cursor` of the page before.")
]


@get("/v1/price-books", operation_id="list_price_books", tags=["price books"], summary="List price books")
async def list_price_books(
    caller: NamedDependency[Caller], books: NamedDependency[BookDesk], *, if_none_match: IfNoneMatch = None
) -> Response[bytes | None]:
    """List the price books of the shop, and which of them has a draft."""
    return held_answer(BookList(items=await books.list_books(caller.account)), if_none_match)


@post("/v1/price-books", status_code=200, operation_id="create_price_book", tags=["price books"], summary="Make a price book")
async def create_price_book(
    data: JSONBody[BookRequest], caller: NamedDependency[Caller], books: NamedDependency[BookDesk]
) -> Response[bytes]:
    """Make a price book, empty; the first of a shop is its default. Again is fine."""
    is_new = await books.make_book(caller.account, data.price_book, actor=actor_of(caller))
    return plain_answer(BookMade(price_book=data.price_book, was_there=not is_new))


@get("/v1/price-books/{price_book:str}/revisions", operation_id="list_revisions", tags=["price books"], summary="List revisions")
async def list_revisions(
    price_book: BookInPath,
    caller: NamedDependency[Caller],
    books: NamedDependency[BookDesk],
    *,
    if_none_match: IfNoneMatch = None,
) -> Response[bytes | None]:
    """List what was published of a price book, the latest first, with the days on which each holds."""
    return held_answer(RevisionList(items=await books.list_revisions(caller.account, price_book)), if_none_match)


@get(
    "/v1/price-books/{price_book:str}/revisions/{catalogue_revision:str}/{kind:str}",
    operation_id="export_revision",
    tags=["price books"],
    summary="Rows of a revision as a file",
)
async def export_revision(
    price_book: BookInPath,
    catalogue_revision: RevisionInPath,
    kind: KindInPath,
    *,
    caller: NamedDependency[Caller],
    shelf: NamedDependency[Shelf],
    form: Form = "csv",
    decimal: Decimal = None,
) -> Response[bytes]:
    """Rows of one kind of a published revision, those of the base catalogue among them, in a form that an import takes."""
    catalogue = await shelf.revision_of(caller.account, price_book, catalogue_revision)
    is_json, wanted = form == "json", RowKind(kind)
    body = await write_file(rows_of(catalogue, wanted), wanted, is_json=is_json, decimal=decimal)
    return Response(body, media_type=JSON if is_json else CSV)


@post(
    "/v1/price-books/{price_book:str}/publications",
    status_code=200,
    operation_id="publish_draft",
    tags=["price books"],
    summary="Publish the draft",
)
async def publish_draft(
    data: JSONBody[PublishRequest], price_book: BookInPath, caller: NamedDependency[Caller], books: NamedDependency[BookDesk]
) -> Response[bytes]:
    """Freeze the draft with all that a quote depends on. It holds from its day on and is never edited; every process sees it
    within a second. For a day that has a revision already the later one holds. A day that has passed is refused, but for the
    first revision of a book.
    """  # noqa: D205 - one paragraph, as the contract shows it
    order = PublishOrder(
        account=caller.account,
        price_book=price_book,
        effective_from=day_of(data.effective_from, "/effective_from"),
        draft_digest=data.draft_digest,
        actor=actor_of(caller),
    )
    name = await books.publish(order)
    return plain_answer(Published(price_book=price_book, catalogue_revision=name, effective_from=order.effective_from))


@post(
    "/v1/price-books/{price_book:str}/withdrawals",
    status_code=200,
    operation_id="withdraw_revision",
    tags=["price books"],
    summary="Withdraw a revision",
)
async def withdraw_revision(
    data: JSONBody[WithdrawRequest], price_book: BookInPath, caller: NamedDependency[Caller], books: NamedDependency[BookDesk]
) -> Response[bytes]:
    """Let a revision hold no more from today on; for the days on which it held it stays. The last one that holds is not
    withdrawn.
    """  # noqa: D205 - as above
    order = WithdrawOrder(
        account=caller.account,
        price_book=price_book,
        catalogue_revision=data.catalogue_revision,
        actor=actor_of(caller),
    )
    day = await books.withdraw(order)
    return plain_answer(Withdrawn(price_book=price_book, catalogue_revision=data.catalogue_revision, withdrawn_from=day))


@get("/v1/price-books/{price_book:str}/audit", operation_id="list_audit", tags=["price books"], summary="Who did what")
async def list_audit(
    price_book: BookInPath,
    caller: NamedDependency[Caller],
    books: NamedDependency[BookDesk],
    *,
    cursor: Before = None,
    limit: Limit = 50,
) -> Response[bytes]:
    """List who imported, published and withdrew what, when, from a file of which digest; the newest first."""
    before = None if cursor is None else int(cursor)
    found = await books.read_audit(caller.account, price_book, before_count=before, limit_count=limit + 1)
    next_cursor = str(found[limit - 1].entry_count) if len(found) > limit else None
    return plain_answer(AuditPage(items=found[:limit], next_cursor=next_cursor))


def actor_of(caller: Caller) -> str:
    """Who does it, for the audit."""
    return f"key:{caller.key_id}" if caller.key_id else "demo"


def plain_answer(body: msgspec.Struct) -> Response[bytes]:
    """JSON that is not held."""
    return Response(msgspec.json.encode(body), media_type=JSON)


def held_answer(body: msgspec.Struct, if_none_match: str | None) -> Response[bytes | None]:
    """JSON with an entity tag made from itself."""
    content = msgspec.json.encode(body)
    return answer(if_none_match, entity_tag(content.decode()), lambda: content, headers={})


def day_of(text: str, pointer: str) -> dt.date:
    """A day that there is; raises RequestFaultsError."""
    try:
        return dt.date.fromisoformat(text)
    except ValueError as error:
        fault = Fault(
            pointer=pointer, reason=Reason.IMPOSSIBLE_VALUE, detail=f"there is no day {text}", remedy="Send a day that is."
        )
        raise RequestFaultsError((fault,)) from error
