"""One worker process: reads jobs from its socket, does them one after another, keeps a few catalogue snapshots.

Started as `python -m service.workers.worker <descriptor> <registry> <memory_bytes>`; ends when its parent does.
"""

from __future__ import annotations

import os
import queue
import resource
import signal
import socket
import sys
import threading
from collections import OrderedDict
from typing import TYPE_CHECKING, Final

from service.workers import attention
from service.workers.job import decode_catalogue, find_registry
from service.workers.messages import Ask, Drop, Hand, Order, Outcome, Reply, pack, read_order
from service.workers.perform import perform

if TYPE_CHECKING:
    from typing import BinaryIO

    from service.catalogue import Catalogue
    from service.workers.job import Registry

SNAPSHOTS_KEPT_COUNT: Final = 4  # house choice: today's revision, the one before, and one for each of two other accounts
EXIT_NO_MEMORY: Final = 71  # free for use; only logged


class _Parent:
    """The line to the parent. A thread reads, so that the end of the parent ends this process even in the middle of a job."""

    def __init__(self, line: socket.socket) -> None:
        self._line = line
        self._orders: queue.SimpleQueue[Order] = queue.SimpleQueue()
        threading.Thread(target=self._read, args=(line.makefile("rb"),), daemon=True).start()

    def _read(self, pipe: BinaryIO) -> None:
        while (order := read_order(pipe)) is not None:
            if isinstance(order, Drop):
                attention.give_up()
                continue
            if isinstance(order, Ask):
                attention.begin()
            self._orders.put(order)
        os._exit(0)

    def next(self) -> Order:
        return self._orders.get()

    def say(self, reply: Reply) -> None:
        self._line.sendall(pack(reply))


class _Snapshots:
    """The catalogue snapshots used last, by account and revision."""

    def __init__(self, parent: _Parent) -> None:
        self._parent = parent
        self._kept: OrderedDict[tuple[str, str], Catalogue] = OrderedDict()

    def get(self, account: str, revision: str) -> Catalogue:
        """The snapshot named; asked from the parent on a miss."""
        name = (account, revision)
        if name not in self._kept:
            self._kept[name] = self._fetch()
            while len(self._kept) > SNAPSHOTS_KEPT_COUNT:
                self._kept.popitem(last=False)
        self._kept.move_to_end(name)
        return self._kept[name]

    def _fetch(self) -> Catalogue:
        self._parent.say(Reply(outcome=Outcome.NEED_SNAPSHOT))
        order = self._parent.next()
        assert isinstance(order, Hand), "a snapshot was asked for"  # noqa: S101 - the parent sends nothing else here
        return decode_catalogue(order.encoded)


def main(descriptor: int, registry_name: str, memory_bytes: int) -> None:
    """Warm up, say so, and work until the parent closes the line."""
    _shield(memory_bytes)
    registry = find_registry(registry_name)
    registry.warm_up()
    parent = _Parent(socket.socket(fileno=descriptor))
    parent.say(Reply(outcome=Outcome.READY))
    try:
        _work(parent, registry)
    except MemoryError:
        os._exit(EXIT_NO_MEMORY)
    except OSError:  # the parent went while we were speaking
        os._exit(0)


def _shield(memory_bytes: int) -> None:
    """Bound the address space, mute the standard output, leave signals to the parent, which drains before it ends us."""
    for name in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
        signal.signal(name, signal.SIG_IGN)
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # solvers print what nobody reads
    if memory_bytes:
        resource.setrlimit(resource.RLIMIT_AS, (memory_bytes, memory_bytes))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def _work(parent: _Parent, registry: Registry) -> None:
    snapshots = _Snapshots(parent)
    while True:
        order = parent.next()
        assert isinstance(order, Ask), "no snapshot was asked for"  # noqa: S101 - the parent sends nothing else here
        parent.say(Reply(outcome=Outcome.BEGUN))
        catalogue = snapshots.get(order.account, order.revision) if order.revision else None
        parent.say(perform(registry, order.kind, order.payload, catalogue))


if __name__ == "__main__":
    main(int(sys.argv[1]), sys.argv[2], int(sys.argv[3]))
