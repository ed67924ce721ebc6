"""Serve an application over a socket, in the event loop of the caller."""

from __future__ import annotations

import asyncio
import signal
import socket
from contextlib import asynccontextmanager, closing, contextmanager
from typing import TYPE_CHECKING, Final

import msgspec
import uvicorn

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Iterator

    from service.web.asgi import ASGIApp

BACKLOG_COUNT: Final = 2048
END_SIGNALS: Final = (signal.SIGINT, signal.SIGTERM)
LOOK_AGAIN_SECONDS: Final = 0.02


class StartError(RuntimeError):
    """The service could not start; the message is for the person at the terminal."""


class Served(msgspec.Struct, frozen=True, kw_only=True):
    """An application that is being served."""

    address: str  # such as http://127.0.0.1:8080
    ended: asyncio.Task[None]  # done when a signal has ended it


class Door(msgspec.Struct, frozen=True, kw_only=True):
    """Where to listen, and how long requests in flight may go on when the service stops."""

    host: str
    port: int
    shutdown_seconds: float


class _Server(uvicorn.Server):
    """Leaves signals to `served`. Uvicorn would raise them again when it is done, and so end the process before its owner."""

    @contextmanager
    def capture_signals(self) -> Iterator[None]:
        """Capture none."""
        yield


@asynccontextmanager
async def served(app: ASGIApp, door: Door) -> AsyncIterator[Served]:
    """Serve meanwhile, in the main thread; SIGINT and SIGTERM end it, after the requests in flight.

    Raises:
        StartError: the port is taken, or the application's own start failed.
    """
    with closing(_listen(door)) as listener:
        server = _Server(_configuration(app, door))
        loop = asyncio.get_running_loop()
        for number in END_SIGNALS:
            loop.add_signal_handler(number, server.handle_exit, number, None)
        ended = asyncio.create_task(server.serve(sockets=[listener]))
        while not server.started and not ended.done():
            await asyncio.wait({ended}, timeout=LOOK_AGAIN_SECONDS)
        if not server.started:
            message = "the service ended while it started; its log says why"
            raise StartError(message)
        try:
            yield Served(address=_address(door.host, listener), ended=ended)
        finally:
            server.should_exit = True
            await ended
            for number in END_SIGNALS:
                loop.remove_signal_handler(number)


def _configuration(app: ASGIApp, door: Door) -> uvicorn.Config:
    return uvicorn.Config(
        app,
        loop="none",  # the caller's
        http="httptools",
        ws="none",
        lifespan="on",
        log_config=None,
        access_log=False,
        server_header=False,
        proxy_headers=False,
        timeout_graceful_shutdown=round(door.shutdown_seconds),
    )


def _listen(door: Door) -> socket.socket:
    family = socket.AF_INET6 if ":" in door.host else socket.AF_INET
    try:
        return socket.create_server((door.host, door.port), family=family, backlog=BACKLOG_COUNT)
    except OSError as error:
        message = f"cannot listen on {door.host} port {door.port}: {error.strerror}; choose another with --port"
        raise StartError(message) from error


def _address(host: str, listener: socket.socket) -> str:
    return f"http://{f'[{host}]' if ':' in host else host}:{listener.getsockname()[1]}"
