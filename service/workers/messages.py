"""What a worker process and its parent say to each other: length-prefixed msgpack, never a pickled class.

One message is four bytes of length, big-endian, and a msgpack array. A worker does one job at a time, so an answer needs no
number: the parent sends `Ask`; the worker says that it has begun, may want a snapshot (`Hand`), and tells how it ended.
`Drop` may come at any moment and is not answered.
"""

from __future__ import annotations

import struct
from enum import StrEnum
from typing import TYPE_CHECKING, Final

import msgspec

if TYPE_CHECKING:
    import asyncio
    from typing import BinaryIO

_LENGTH: Final = struct.Struct(">I")


class Outcome(StrEnum):
    """How a job ended, or what the worker needs first."""

    READY = "ready"  # warm, waits for its first job
    BEGUN = "begun"  # the job is in hand; a worker that is gone before it said so has cost nothing
    NEED_SNAPSHOT = "need_snapshot"  # body: empty; the parent sends `Hand`
    DONE = "done"  # body: the answer
    FAULTS = "faults"  # body: msgpack of a tuple of `Fault`
    FAILED = "failed"  # body: traceback as UTF-8, for the log only


class Ask(msgspec.Struct, frozen=True, kw_only=True, array_like=True, tag=True):
    """Do this job."""

    kind: str
    account: str  # empty: a plain job
    revision: str  # of the catalogue; empty: a plain job
    payload: bytes


class Hand(msgspec.Struct, frozen=True, kw_only=True, array_like=True, tag=True):
    """The catalogue snapshot that the worker asked for."""

    encoded: bytes


class Drop(msgspec.Struct, frozen=True, kw_only=True, array_like=True, tag=True):
    """Nobody waits for the job in hand any more: end its searches."""


class Reply(msgspec.Struct, frozen=True, kw_only=True, array_like=True):
    """What came of a job."""

    outcome: Outcome
    body: bytes = b""


type Order = Ask | Hand | Drop

_ENCODER: Final = msgspec.msgpack.Encoder()
_ORDER: Final[msgspec.msgpack.Decoder[Order]] = msgspec.msgpack.Decoder(Ask | Hand | Drop)
_REPLY: Final = msgspec.msgpack.Decoder(Reply)


def pack(message: Order | Reply) -> bytes:
    """One message as bytes, with its length before it."""
    body = _ENCODER.encode(message)
    return _LENGTH.pack(len(body)) + body


def read_order(pipe: BinaryIO) -> Order | None:
    """Read one order, blocking; None at the end of the pipe."""
    body = _read(pipe)
    return None if body is None else _ORDER.decode(body)


async def read_reply(reader: asyncio.StreamReader) -> Reply:
    """Read one reply.

    Raises:
        asyncio.IncompleteReadError: the worker is gone.
    """
    (length,) = _LENGTH.unpack(await reader.readexactly(_LENGTH.size))
    return _REPLY.decode(await reader.readexactly(length))


def _read(pipe: BinaryIO) -> bytes | None:
    head = pipe.read(_LENGTH.size)
    if len(head) < _LENGTH.size:
        return None
    (length,) = _LENGTH.unpack(head)
    body = pipe.read(length)
    return body if len(body) == length else None
