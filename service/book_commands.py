"""`inglewright book ...`: what the addresses of price books do, for a person at a terminal."""

from __future__ import annotations

import datetime as dt
import hashlib
import sys
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from service.catalogue import (
    DecimalMark,
    Encoding,
    RowFaultsError,
    RowKind,
    TextForm,
    difference,
    in_pieces,
    read_csv,
    read_json,
    soundness_of,
    write_csv,
    write_json,
)
from service.store import BookError, ImportMode, ImportOrder, PublishOrder, RowsRefusedError, UnsoundError, WithdrawOrder

if TYPE_CHECKING:
    import argparse
    from collections.abc import AsyncIterator, Awaitable, Callable, Iterator, Sequence

    from service.catalogue import Row, RowFault
    from service.store import BookDesk

    type WithBooks = Callable[[argparse.Namespace, Callable[[BookDesk], Awaitable[Any]]], Any]

ACTOR: Final = "command:book"
SHOWN_COUNT: Final = 50
PIECE_ROWS_COUNT: Final = 5_000
BOOK_REFUSALS: Final = (BookError, RowsRefusedError, RowFaultsError)


def add_book_commands(commands: argparse._SubParsersAction[argparse.ArgumentParser], with_books: WithBooks) -> None:
    """Add the commands.

    Args:
        commands: the command's own.
        with_books: does something with a desk of books on the database of the settings.
    """
    group = commands.add_parser("book", help="import, check, publish and export price books").add_subparsers(
        required=True, metavar="command"
    )
    made = {name: group.add_parser(name, help=about, description=about) for name, (_, about) in COMMANDS.items()}
    for name, parser in made.items():
        parser.set_defaults(run=partial(COMMANDS[name][0], with_books))
        parser.add_argument("account")
        if name != "list":
            parser.add_argument("price_book")
    for name in ("import", "export"):
        made[name].add_argument("kind", choices=list(RowKind))
        made[name].add_argument("--decimal", choices=list(DecimalMark), help="mark before the decimals of a CSV file")
    made["import"].add_argument("file", type=Path, help="a CSV file, or JSON where its name ends so")
    made["import"].add_argument("--mode", choices=list(ImportMode), default=ImportMode.MERGE, help="whether other rows stay")
    made["import"].add_argument("--encoding", choices=list(Encoding))
    made["export"].add_argument("--json", action="store_true", help="JSON instead of CSV")
    made["publish"].add_argument("--from", dest="day", type=dt.date.fromisoformat, help="first day; left out: today")
    made["withdraw"].add_argument("catalogue_revision")


def tell_refusal(error: BaseException) -> None:
    """Say what was refused and why, on the standard error."""
    sys.stderr.write(f"Not done: {error}\n")
    if isinstance(error, RowsRefusedError):
        _tell_faults(error.faults.shown)
    if isinstance(error, RowFaultsError):
        _tell_faults(error.faults)
    if isinstance(error, UnsoundError):
        for one in error.soundness.findings[: error.soundness.stops_count]:
            sys.stderr.write(f"{one.kind} {' '.join(one.key)}, {one.column}: {one.detail}; {one.remedy}\n")


def _tell_faults(faults: Sequence[RowFault]) -> None:
    for fault in faults:
        sys.stderr.write(f"line {fault.line}, {fault.column or 'the whole row'}: {fault.detail}; {fault.remedy}\n")


def _make(with_books: WithBooks, options: argparse.Namespace) -> int:
    is_new = with_books(options, lambda books: books.make_book(options.account, options.price_book, actor=ACTOR))
    print("The price book is there." if is_new else "The price book was there already.")
    return 0


def _list(with_books: WithBooks, options: argparse.Namespace) -> int:
    for book in with_books(options, lambda books: books.list_books(options.account)):
        print(book.price_book, "default" if book.is_default else "", "draft" if book.has_draft else "", sep="\t")
    return 0


def _revisions(with_books: WithBooks, options: argparse.Namespace) -> int:
    for one in with_books(options, lambda books: books.list_revisions(options.account, options.price_book)):
        until = f"until {one.withdrawn_from}" if one.withdrawn_from else ""
        print(one.catalogue_revision, one.effective_from, one.state, until, sep="\t")
    return 0


def _import(with_books: WithBooks, options: argparse.Namespace) -> int:
    body = options.file.read_bytes()
    kind, is_json = RowKind(options.kind), options.file.suffix == ".json"
    form = TextForm(
        encoding=options.encoding and Encoding(options.encoding), decimal_mark=options.decimal and DecimalMark(options.decimal)
    )
    reader, rows = read_json(body, kind) if is_json else read_csv(body, kind, form)
    order = ImportOrder(
        account=options.account,
        price_book=options.price_book,
        kind=kind,
        mode=ImportMode(options.mode),
        file_digest=hashlib.sha256(f"{is_json}{form}".encode() + body).hexdigest(),
        actor=ACTOR,
    )
    done = with_books(options, lambda books: books.import_rows(order, _pieces(rows), reader.faults))
    print(f"{done.rows_count} rows {'were there already' if done.was_there else 'taken into the draft'}.")
    return 0


async def _pieces(rows: Iterator[Row]) -> AsyncIterator[Sequence[Row]]:
    for piece in in_pieces(rows, PIECE_ROWS_COUNT):
        yield piece


def _check(with_books: WithBooks, options: argparse.Namespace) -> int:
    draft = with_books(options, lambda books: books.read_draft(options.account, options.price_book))
    sound = soundness_of(draft.catalogue)
    for one in sound.findings:
        print(f"{'STOPS' if one.stops else 'note '} {one.kind} {' '.join(one.key)} {one.column}: {one.detail}; {one.remedy}")
    print(f"draft {draft.draft_digest}: {sound.stops_count} findings stop it, {sound.findings_count} in all")
    return int(bool(sound.stops_count))


def _diff(with_books: WithBooks, options: argparse.Namespace) -> int:
    async def both(books: BookDesk) -> tuple[Any, Any]:
        draft = await books.read_draft(options.account, options.price_book)
        return await books.read_in_force(options.account, options.price_book), draft.catalogue

    told = difference(*with_books(options, both))
    for change in told.changes:
        moved = "" if change.amount_ratio is None else f" ({change.amount_ratio:+.1%})"
        fields = ", ".join(f"{one.column} {one.before!r} -> {one.after!r}" for one in change.fields)
        print(f"{change.change} {change.kind} {' '.join(change.key)}{moved} {fields}".rstrip())
    print(f"{told.changes_count} changes")
    return 0


def _publish(with_books: WithBooks, options: argparse.Namespace) -> int:
    day = options.day or dt.datetime.now(dt.UTC).date()

    async def publish(books: BookDesk) -> str:
        draft = await books.read_draft(options.account, options.price_book)
        order = PublishOrder(
            account=options.account,
            price_book=options.price_book,
            effective_from=day,
            draft_digest=draft.draft_digest,
            actor=ACTOR,
        )
        return await books.publish(order)

    print(with_books(options, publish))
    return 0


def _withdraw(with_books: WithBooks, options: argparse.Namespace) -> int:
    order = WithdrawOrder(
        account=options.account, price_book=options.price_book, catalogue_revision=options.catalogue_revision, actor=ACTOR
    )
    print(f"It holds no more from {with_books(options, lambda books: books.withdraw(order))} on.")
    return 0


def _discard(with_books: WithBooks, options: argparse.Namespace) -> int:
    with_books(options, lambda books: books.discard_draft(options.account, options.price_book, actor=ACTOR))
    print("The draft is gone.")
    return 0


def _export(with_books: WithBooks, options: argparse.Namespace) -> int:
    kind = RowKind(options.kind)
    rows = with_books(options, lambda books: books.read_own_rows(options.account, options.price_book, kind))
    mark = DecimalMark(options.decimal) if options.decimal else DecimalMark.POINT
    sys.stdout.buffer.write(write_json(rows, kind) if options.json else write_csv(rows, kind, mark))
    sys.stdout.buffer.flush()
    return 0


def _audit(with_books: WithBooks, options: argparse.Namespace) -> int:
    for one in with_books(options, lambda books: books.read_audit(options.account, options.price_book, limit_count=SHOWN_COUNT)):
        facts = (one.kind, one.mode, one.rows_count, one.file_digest, one.catalogue_revision, one.effective_from)
        print(f"{one.at:%Y-%m-%d %H:%M:%S}", one.actor, one.action, *(fact for fact in facts if fact is not None), sep="\t")
    return 0


COMMANDS: Final = {
    "make": (_make, "make a price book"),
    "list": (_list, "list the price books of a shop"),
    "revisions": (_revisions, "list what was published of a price book"),
    "import": (_import, "take a file of rows into the draft, all or nothing"),
    "check": (_check, "look the draft through; the exit status is 1 if something stops it"),
    "diff": (_diff, "say what the draft would change of what holds today"),
    "publish": (_publish, "publish the draft"),
    "withdraw": (_withdraw, "let a revision hold no more"),
    "discard": (_discard, "take the draft away"),
    "export": (_export, "write rows of the draft to the standard output"),
    "audit": (_audit, "say who did what, the newest first"),
}
