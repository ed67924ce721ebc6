"""The command `inglewright`: try it, serve it, bring its database up, write its contract."""

from __future__ import annotations

import argparse
import asyncio
import logging
import os
import sys
from contextlib import contextmanager
from typing import TYPE_CHECKING, Final

import httpx
import msgspec
import uvloop

from service.app import contract_path, create_app
from service.quote import QuoteAnswer, render_quote_text
from service.settings import PREFIX, Settings, SettingsError, load_settings, table
from service.store import load_demo, make_engine, migrate
from service.store.embedded import EmbeddedPostgres, EmbeddedPostgresError, default_data_dir
from service.web.access_log import set_up_logging
from service.web.contract import make_contract
from service.web.serving import Door, StartError, served
from service.workers import example_bytes

if TYPE_CHECKING:
    from collections.abc import Callable, Coroutine, Iterator, Sequence
    from typing import Any

log = logging.getLogger(__name__)

WRONG_SETTINGS: Final = 2
NOT_STARTED: Final = 1
EXAMPLE_SECONDS: Final = 60.0


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command; the exit status: 0 done, 1 not started, 2 wrong settings or arguments."""
    options = _parser().parse_args(arguments)
    run: Callable[[argparse.Namespace], int] = options.run
    try:
        return run(options)
    except SettingsError as error:
        sys.stderr.write(f"The settings are wrong:\n{error}\n`inglewright settings` lists them all.\n")
        return WRONG_SETTINGS
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
    contract = _command(commands, "openapi", _openapi, "write openapi/openapi.json")
    contract.add_argument("--check", action="store_true", help="only say whether the file is up to date")
    _command(commands, "settings", _settings, "list all settings")
    return parser


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
    given = {"log_level": os.environ.get(f"{PREFIX}LOG_LEVEL", "warning")}  # the quote is what the person came for
    settings = _settings_of(options, **({**given, "port": "0"} if options.once and options.port is None else given))
    with database(settings) as url:
        migrate(url)
        _run(_load(url))
        _run(_show_and_serve(settings, url, once=options.once))
    return 0


def _serve(options: argparse.Namespace) -> int:
    settings = _settings_of(options)
    with database(settings) as url:
        if settings.database_url is None:
            migrate(url)  # an embedded database belongs to this version of the service alone
        _run(_serve_forever(settings, url))
    return 0


def _migrate(options: argparse.Namespace) -> int:
    with database(_settings_of(options)) as url:
        migrate(url)
    print("The database has the schema of this version.")
    return 0


def _load_demo(options: argparse.Namespace) -> int:
    with database(_settings_of(options)) as url:
        is_new = _run(_load(url))
    print("The demo catalogue is loaded." if is_new else "The demo catalogue was there already.")
    return 0


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


@contextmanager
def database(settings: Settings) -> Iterator[str]:
    """Address of the database: the one that is set, or an embedded one that runs meanwhile."""
    if settings.database_url is not None:
        yield settings.database_url
        return
    with EmbeddedPostgres(settings.data_dir or default_data_dir()) as embedded:
        yield embedded.url


def _run[T](work: Coroutine[Any, Any, T]) -> T:
    return asyncio.run(work, loop_factory=uvloop.new_event_loop)


async def _load(url: str) -> bool:
    engine = make_engine(url)
    try:
        return await load_demo(engine)
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
