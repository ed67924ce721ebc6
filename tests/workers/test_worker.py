"""A worker process by itself."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import sys
import time
from typing import TYPE_CHECKING

from service.catalogue import demo_catalogue
from service.workers.messages import Ask, Hand, Outcome, Reply, pack
from tests.workers.doubles import NAME

if TYPE_CHECKING:
    from collections.abc import Iterator

import struct

import msgspec
import pytest


class Line:
    """The parent's end, blocking."""

    def __init__(self) -> None:
        """Start the worker."""
        self.socket, theirs = socket.socketpair()
        command = [sys.executable, "-m", "service.workers.worker", str(theirs.fileno()), NAME, "0"]
        self.process = subprocess.Popen(command, pass_fds=(theirs.fileno(),))
        theirs.close()
        self.pipe = self.socket.makefile("rb")

    def answer(self) -> Reply:
        """The reply to a job, after the word that it was begun."""
        assert self.read().outcome is Outcome.BEGUN
        return self.read()

    def read(self) -> Reply:
        (length,) = struct.unpack(">I", self.pipe.read(4))
        return msgspec.msgpack.decode(self.pipe.read(length), type=Reply)

    def say(self, message: Ask | Hand) -> None:
        self.socket.sendall(pack(message))

    def close(self) -> None:
        self.pipe.close()
        self.socket.close()


@pytest.fixture
def line() -> Iterator[Line]:
    line = Line()
    yield line
    line.close()
    line.process.kill()
    line.process.wait()


def ask(kind: str, payload: bytes = b"") -> Ask:
    return Ask(kind=kind, account="demo", revision="r", payload=payload)


def test_a_snapshot_is_asked_for_once(line: Line) -> None:
    assert line.read().outcome is Outcome.READY
    line.say(ask("process_id"))
    assert line.answer().outcome is Outcome.NEED_SNAPSHOT
    line.say(Hand(encoded=msgspec.msgpack.encode(demo_catalogue())))
    first = line.read()
    line.say(ask("process_id"))

    assert first == line.answer() == Reply(outcome=Outcome.DONE, body=str(line.process.pid).encode())


def test_an_unknown_kind_fails_and_does_not_end_the_worker(line: Line) -> None:
    line.read()
    line.say(ask("conjure"))
    line.answer()
    line.say(Hand(encoded=msgspec.msgpack.encode(demo_catalogue())))

    assert line.read().outcome is Outcome.FAILED
    line.say(ask("process_id"))
    assert line.answer().outcome is Outcome.DONE


def test_it_ends_with_its_parent_even_in_the_middle_of_a_job(line: Line) -> None:
    line.read()
    line.say(ask("doze", b"30"))
    line.answer()
    line.say(Hand(encoded=msgspec.msgpack.encode(demo_catalogue())))
    time.sleep(0.2)
    line.close()

    assert line.process.wait(5) == 0


def test_signals_of_a_terminal_do_not_end_it(line: Line) -> None:
    line.read()
    for number in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
        os.kill(line.process.pid, number)
    time.sleep(0.2)

    assert line.process.poll() is None
