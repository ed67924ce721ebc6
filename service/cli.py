"""The command `inglewright`: try it, serve it, bring its database up, open shops and give them keys, write its contract."""

from __future__ import annotations

import argparse
import asyncio
import datetime as dt
import logging
import os
import sys
from contextlib import contextmanager
from typing import TYPE_CHECKING, Final

import httpx
import msgspec
import uvloop

from service.app import contract_path, create_app
from service.book_commands import BOOK_REFUSALS, add_book_commands, tell_refusal
from service.quote import QuoteAnswer, render_quote_text
from service.settings import PREFIX, Settings, SettingsError, load_settings, table
from service.store import (
    WRITE_LIMITS,
    AccountExistsError,
    BookDesk,
    KeyDesk,
    KeyKind,
    NewKey,
    NewShop,
    NoCatalogueError,
    NoKeyError,
    NoShopError,
    Scope,
    ShopChange,
    ShopStatus,
    SpentKeyError,
    TooManyKeysError,
    change_shop,
    create_shop,
    list_shops,
    load_demo,
    make_engine,
    migrate,
)
from service.store.embedded import EmbeddedPostgres, EmbeddedPostgresError, default_data_dir
from service.web.access_log import set_up_logging
from service.web.contract import make_contract
from service.web.serving import Door, StartError, served
from service.workers import example_bytes

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable, Coroutine, Iterator, Sequence
    from typing import Any

log = logging.getLogger(__name__)

WRONG_SETTINGS: Final = 2
NOT_STARTED: Final = 1
NOT_DONE: Final = 1
EXAMPLE_SECONDS: Final = 60.0
DEMO: Final = "demo"
REFUSALS: Final = (AccountExistsError, NoCatalogueError, NoKeyError, NoShopError, SpentKeyError, TooManyKeysError)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command; the exit status: 0 done, 1 not started, 2 wrong settings or arguments."""
    options = _parser().parse_args(arguments)
    run: Callable[[argparse.Namespace], int] = options.run
    try:
        return run(options)
    except SettingsError as error:
        sys.stderr.write(f"The settings are wrong:\n{error}\n`inglewright settings` lists them all.\n")
        return WRONG_SETTINGS
    except BOOK_REFUSALS as error:
        tell_refusal(error)
        return NOT_DONE
    except (*REFUSALS, msgspec.ValidationError) as error:
        sys.stderr.write(f"Not done: {error}\n")
        return NOT_DONE
    except (EmbeddedPostgresError, StartError, OSError) as error:
        sys.stderr.write(f"Not started: {error}\n")
        return NOT_STARTED


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="inglewright", description="A room survey in, a false chimney breast out: frame, cuts, price."
    )
    commands = parser.add_subparsers(required=True, metavar="command")
    demo = _command(commands, "demo", _demo, "quote the example survey with invented data, print the quote, then serve")
    demo.add_argument("--once", action="store_true", help="end after printing")
    serve = _command(commands, "serve", _serve, "serve over HTTP")
    for command in (demo, serve):
        command.add_argument("--host", help="address to listen on")
        command.add_argument("--port", help="port to listen on; 0: a free one")
    _command(commands, "migrate", _migrate, "bring the database to the schema of this version")
    _command(commands, "load-demo", _load_demo, "load the invented demo catalogue")
    _add_account_commands(commands)
    _add_key_commands(commands)
    add_book_commands(commands, _with_books)
    contract = _command(commands, "openapi", _openapi, "write openapi/openapi.json")
    contract.add_argument("--check", action="store_true", help="only say whether the file is up to date")
    _command(commands, "settings", _settings, "list all settings")
    return parser


def _add_account_commands(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    group = commands.add_parser("account", help="open, change and list shops").add_subparsers(required=True, metavar="command")
    create = _command(group, "create", _account_create, "open a shop, on the settings and catalogue of another")
    create.add_argument("account", help="its code: letters, digits, `_`, `-`")
    create.add_argument("--name", required=True, help="its name")
    create.add_argument("--base", default=DEMO, help="account whose settings it begins with and whose catalogue it sees")
    change = _command(group, "change", _account_change, "change a shop; what is not said stays")
    change.add_argument("account")
    change.add_argument("--name")
    change.add_argument("--status", choices=list(ShopStatus))
    for command in (create, change):
        command.add_argument("--origin", action="append", help="page that may use browser keys, such as https://shop.example")
    _command(group, "list", _account_list, "list all shops")


def _add_key_commands(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    group = commands.add_parser("key", help="make, list, rotate and revoke keys").add_subparsers(required=True, metavar="command")
    create = _command(group, "create", _key_create, "make a key and print it, this once")
    rotate = _command(group, "rotate", _key_rotate, "make a key in the place of one and print it, this once")
    revoke = _command(group, "revoke", _key_revoke, "end a key now")
    list_ = _command(group, "list", _key_list, "list the keys of a shop")
    for command in (create, rotate, revoke, list_):
        command.add_argument("account")
    for command in (rotate, revoke):
        command.add_argument("key_id", help="public part of the key, as `list` shows it")
    create.add_argument("--kind", required=True, choices=list(KeyKind))
    create.add_argument("--scope", action="append", default=[], choices=list(Scope), help="of a server key; may be repeated")
    create.add_argument("--label", default="", help="where it is used")
    create.add_argument("--days", type=int, help="it ends after these")
    rotate.add_argument("--overlap-hours", type=float, default=24.0, help="how long the old one goes on")


def _command(
    commands: argparse._SubParsersAction[argparse.ArgumentParser],
    name: str,
    run: Callable[[argparse.Namespace], int],
    help_text: str,
) -> argparse.ArgumentParser:
    command = commands.add_parser(name, help=help_text, description=help_text)
    command.set_defaults(run=run)
    return command


def _demo(options: argparse.Namespace) -> int:
    given = {
        "log_level": os.environ.get(f"{PREFIX}LOG_LEVEL", "warning"),  # the quote is what the person came for
        "demo_account": os.environ.get(f"{PREFIX}DEMO_ACCOUNT") or DEMO,
    }
    settings = _settings_of(options, **({**given, "port": "0"} if options.once and options.port is None else given))
    with database(settings) as urls:
        migrate(urls.owner)
        _run(_with_engine(urls.owner, load_demo))
        _run(_show_and_serve(settings, urls.service, once=options.once))
    return 0


def _serve(options: argparse.Namespace) -> int:
    settings = _settings_of(options)
    with database(settings) as urls:
        if settings.database_url is None:
            migrate(urls.owner)  # an embedded database belongs to this version of the service alone
        _run(_serve_forever(settings, urls.service))
    return 0


def _migrate(options: argparse.Namespace) -> int:
    with database(_settings_of(options)) as urls:
        migrate(urls.owner)
    print("The database has the schema of this version.")
    return 0


def _load_demo(options: argparse.Namespace) -> int:
    is_new = _as_owner(options, load_demo)
    print("The demo catalogue is loaded." if is_new else "The demo catalogue was there already.")
    return 0


def _account_create(options: argparse.Namespace) -> int:
    given = {"account": options.account, "name": options.name, "base_account": options.base, "origins": options.origin or []}
    new = msgspec.convert(given, NewShop)
    _as_owner(options, lambda engine: create_shop(engine, new))
    print(f"The shop {new.account} is open; `inglewright key create {new.account} ...` gives it a key.")
    return 0


def _account_change(options: argparse.Namespace) -> int:
    said = {"name": options.name, "status": options.status, "origins": options.origin}
    change = msgspec.convert({name: value for name, value in said.items() if value is not None}, ShopChange)
    _as_owner(options, lambda engine: change_shop(engine, options.account, change))
    return 0


def _account_list(options: argparse.Namespace) -> int:
    for shop in _as_owner(options, list_shops):
        base = f"on {shop.base_account}" if shop.base_account else ""
        print(shop.account, shop.status, base, shop.name, *shop.origins, sep="\t")
    return 0


def _key_create(options: argparse.Namespace) -> int:
    if (options.kind == KeyKind.SERVER) != bool(options.scope):
        sys.stderr.write("A server key needs a --scope, a browser key has none.\n")
        return WRONG_SETTINGS
    end = None if options.days is None else dt.datetime.now(dt.UTC) + dt.timedelta(days=options.days)
    given = {"kind": options.kind, "label": options.label, "scopes": options.scope, "expires_at": end}
    new = msgspec.convert(given, NewKey)
    made = _as_owner(options, lambda engine: KeyDesk(engine).create(options.account, new))
    _show_key(made.key)
    return 0


def _key_rotate(options: argparse.Namespace) -> int:
    overlap = dt.timedelta(hours=options.overlap_hours)
    made = _as_owner(options, lambda engine: KeyDesk(engine).rotate(options.account, options.key_id, overlap))
    _show_key(made.key)
    return 0


def _key_revoke(options: argparse.Namespace) -> int:
    _as_owner(options, lambda engine: KeyDesk(engine).revoke(options.account, options.key_id))
    return 0


def _key_list(options: argparse.Namespace) -> int:
    for row in _as_owner(options, lambda engine: KeyDesk(engine).list(options.account)):
        ends = f"until {row.expires_at:%Y-%m-%d}" if row.expires_at else ""
        ends = f"revoked {row.revoked_at:%Y-%m-%d}" if row.revoked_at else ends
        used = f"used {row.last_used_at:%Y-%m-%d}" if row.last_used_at else "never used"
        print(row.key_id, row.kind, " ".join(row.scopes), ends, used, row.label, sep="\t")
    return 0


def _show_key(key: str) -> None:
    print(key)
    sys.stderr.write("Keep it now: only a digest of it is stored, and nobody can show it again.\n")


def _openapi(options: argparse.Namespace) -> int:
    path, contract = contract_path(), make_contract()
    is_same = path.exists() and path.read_bytes() == contract
    if options.check:
        print("up to date" if is_same else f"{path.name} is not what the code makes: run `inglewright openapi`")
        return 0 if is_same else NOT_STARTED
    path.write_bytes(contract)
    print(f"{path.name}: {'unchanged' if is_same else 'written'}")
    return 0


def _settings(_options: argparse.Namespace) -> int:
    print("| setting | default | meaning |\n| --- | --- | --- |")
    for row in table():
        print(f"| `{row.name}` | {f'`{row.default}`' if row.default else ''} | {row.meaning} |")
    return 0


def _settings_of(options: argparse.Namespace, **given: str) -> Settings:
    """Settings from the environment, with what the command line says instead; logging set up by them."""
    said = {name: text for name in ("host", "port") if (text := getattr(options, name, None)) is not None}
    changes = {PREFIX + name.upper(): text for name, text in {**given, **said}.items()}
    settings = load_settings({**os.environ, **changes})
    set_up_logging(settings.log_level)
    return settings


class Addresses(msgspec.Struct, frozen=True, kw_only=True):
    """Of the database, for its two users."""

    owner: str
    service: str


@contextmanager
def database(settings: Settings) -> Iterator[Addresses]:
    """Addresses of the database: the one that is set, or an embedded one that runs meanwhile."""
    if settings.database_url is not None:
        yield Addresses(owner=settings.owner_database_url or settings.database_url, service=settings.database_url)
        return
    with EmbeddedPostgres(settings.data_dir or default_data_dir()) as embedded:
        yield Addresses(owner=embedded.url, service=embedded.service_url)


def _run[T](work: Coroutine[Any, Any, T]) -> T:
    return asyncio.run(work, loop_factory=uvloop.new_event_loop)


def _as_owner[T](options: argparse.Namespace, work: Callable[[Any], Awaitable[T]]) -> T:
    """Do something in the database as its owner; the work is given a pool of connections."""
    with database(_settings_of(options)) as urls:
        return _run(_with_engine(urls.owner, work))


def _with_books[T](options: argparse.Namespace, work: Callable[[BookDesk], Awaitable[T]]) -> T:
    """Do something with price books, as the service's own user."""
    with database(_settings_of(options)) as urls:
        return _run(_with_desk(urls.service, work))


async def _with_desk[T](url: str, work: Callable[[BookDesk], Awaitable[T]]) -> T:
    engine = make_engine(url, WRITE_LIMITS)
    try:
        return await work(BookDesk(engine))
    finally:
        await engine.dispose()


async def _with_engine[T](url: str, work: Callable[[Any], Awaitable[T]]) -> T:
    engine = make_engine(url)
    try:
        return await work(engine)
    finally:
        await engine.dispose()


async def _serve_forever(settings: Settings, url: str) -> None:
    async with served(create_app(settings, url), _door(settings)) as service:
        log.info("serving at %s, the contract at %s/docs", service.address, service.address)
        await service.ended


async def _show_and_serve(settings: Settings, url: str, *, once: bool) -> None:
    async with served(create_app(settings, url), _door(settings)) as service:
        print(await _quote_text(service.address))
        if not once:
            print(f"\nServing at {service.address}; to try it: {service.address}/docs. Stop with Ctrl-C.", flush=True)
            await service.ended


def _door(settings: Settings) -> Door:
    return Door(host=settings.host, port=settings.port, shutdown_seconds=settings.shutdown_seconds)


async def _quote_text(address: str) -> str:
    """The example quote, asked for over HTTP as anybody would, as text for a person."""
    headers = {"Content-Type": "application/json"}
    async with httpx.AsyncClient(trust_env=False, timeout=EXAMPLE_SECONDS) as client:
        answer = await client.post(f"{address}/v1/quotes", content=example_bytes(), headers=headers)
    if answer.is_error:
        message = f"the example was refused with {answer.status_code}: {answer.text}"
        raise StartError(message)
    quote: QuoteAnswer = msgspec.json.decode(answer.content, type=QuoteAnswer)
    return render_quote_text(quote)


if __name__ == "__main__":
    sys.exit(main())
