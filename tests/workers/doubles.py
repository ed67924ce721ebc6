"""Jobs that a test can ask for: each does one thing that real work might do to a worker."""

from __future__ import annotations

import os
import signal
import time
from pathlib import Path
from typing import TYPE_CHECKING

from service.errors import Fault, Reason, RequestFaultsError
from service.workers import Registry

if TYPE_CHECKING:
    from service.catalogue import Catalogue


def echo(payload: bytes, catalogue: Catalogue) -> bytes:
    return catalogue.revision.encode() + b" " + payload


def process_id(_payload: bytes, _catalogue: Catalogue) -> bytes:
    return str(os.getpid()).encode()


def doze(payload: bytes, _catalogue: Catalogue) -> bytes:
    """Sleep for as many seconds as the payload says; says where it is in a file, if one is named after a space."""
    seconds, _, file = payload.decode().partition(" ")
    if file:
        Path(file).write_text(str(os.getpid()), "utf-8")
    time.sleep(float(seconds))
    return b"slept"


def spin(_payload: bytes, _catalogue: Catalogue) -> bytes:
    while True:
        pass


def eat_memory(_payload: bytes, _catalogue: Catalogue) -> bytes:
    hoard = [bytearray(64 << 20) for _ in range(1_000)]
    return str(len(hoard)).encode()


def stumble(_payload: bytes, _catalogue: Catalogue) -> bytes:
    message = "a mistake with a secret in it"
    raise ZeroDivisionError(message)


def refuse(_payload: bytes, _catalogue: Catalogue) -> bytes:
    raise RequestFaultsError(
        (
            Fault(
                pointer="/survey/brief",
                reason=Reason.CONTRADICTION,
                detail="too wide",
                remedy="narrower",
                related=("/survey/room",),
            ),
            Fault(pointer="", reason=Reason.NO_PRICE, detail="none", remedy="ask"),
        )
    )


def crash(_payload: bytes, _catalogue: Catalogue) -> bytes:
    os.kill(os.getpid(), signal.SIGSEGV)
    return b""


def print_much(payload: bytes, _catalogue: Catalogue) -> bytes:
    os.write(1, b"a native library prints\n" * 1_000)
    return payload


def nothing() -> None:
    """No warming up."""


def die() -> None:
    """A warm-up that fails, as when a library is missing."""
    os._exit(3)


REGISTRY = Registry(
    jobs={
        "echo": echo,
        "process_id": process_id,
        "doze": doze,
        "spin": spin,
        "eat_memory": eat_memory,
        "stumble": stumble,
        "refuse": refuse,
        "crash": crash,
        "print_much": print_much,
    },
    warm_up=nothing,
)
BROKEN = Registry(jobs={}, warm_up=die)
NAME = "tests.workers.doubles:REGISTRY"
BROKEN_NAME = "tests.workers.doubles:BROKEN"
