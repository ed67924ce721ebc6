"""A job: bytes in, bytes out, and the names of what it depends on. The same for a worker process and for in-process work."""

from __future__ import annotations

import importlib
from collections.abc import Callable, Mapping
from functools import cached_property
from typing import Final, Protocol, cast

import msgspec

from service.catalogue import Catalogue

type JobFunction = Callable[[bytes, Catalogue], bytes]
type PlainFunction = Callable[[bytes], bytes]

_ENCODER: Final = msgspec.msgpack.Encoder()
_CATALOGUE: Final = msgspec.msgpack.Decoder(Catalogue)


class Registry(msgspec.Struct, frozen=True, kw_only=True):
    """Which kinds of job there are, and what is loaded before the first one."""

    jobs: Mapping[str, JobFunction]
    plain_jobs: Mapping[str, PlainFunction] = msgspec.field(default_factory=dict)  # those that need no catalogue
    warm_up: Callable[[], None]


class Snapshot:
    """A catalogue with its two names, and its bytes, made once and only when a worker asks for them."""

    def __init__(self, catalogue: Catalogue) -> None:
        """Name the catalogue by account and revision."""
        self.catalogue = catalogue
        self.account = catalogue.account.account
        self.revision = catalogue.revision

    @cached_property
    def encoded(self) -> bytes:
        """The catalogue as msgpack."""
        return _ENCODER.encode(self.catalogue)


class Job(msgspec.Struct, frozen=True, kw_only=True):
    """One piece of heavy work."""

    kind: str  # a key of the registry
    payload: bytes
    snapshot: Snapshot | None = None  # None: a plain job, which needs no catalogue
    deadline_seconds: float  # how long its caller waits, in the queue and at work together


class Runner(Protocol):
    """The one door to heavy work. `WorkerPool` and `InlineRunner` have it."""

    async def run(self, job: Job) -> bytes:
        """Do a job and return its answer.

        Raises:
            service.errors.RequestFaultsError: the request cannot be answered; every fault is named.
            service.workers.errors.WorkError: the work could not be done; its `reason` says why.
        """
        ...


def decode_catalogue(encoded: bytes) -> Catalogue:
    """The other side of `Snapshot.encoded`."""
    return _CATALOGUE.decode(encoded)


def find_registry(name: str) -> Registry:
    """Load a registry by `module:name`. The one look-up by text: a worker is a new process and can be told no object."""
    module, _, attribute = name.partition(":")
    return cast("Registry", getattr(importlib.import_module(module), attribute))
