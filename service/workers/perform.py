"""Do one job and say how it ended, whatever it raises. Runs in a worker process, or in the caller's for `InlineRunner`."""

from __future__ import annotations

import traceback
from typing import TYPE_CHECKING, Final

import msgspec

from service.errors import Fault, RequestFaultsError
from service.workers import errors
from service.workers.messages import Outcome, Reply

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.workers.job import Registry

_FAULTS: Final = msgspec.msgpack.Decoder(tuple[Fault, ...])


def perform(registry: Registry, kind: str, payload: bytes, catalogue: Catalogue | None) -> Reply:
    """Do one job; `catalogue` is None for a plain one.

    Raises:
        MemoryError: there is no memory left; the process is not to be trusted any more.
    """
    try:
        return Reply(outcome=Outcome.DONE, body=_do(registry, kind, payload, catalogue))
    except RequestFaultsError as error:
        return Reply(outcome=Outcome.FAULTS, body=msgspec.msgpack.encode(error.faults))
    except MemoryError:
        raise
    except Exception:  # noqa: BLE001 - the traceback goes to the log, the caller learns that it was our mistake
        return Reply(outcome=Outcome.FAILED, body=traceback.format_exc().encode(errors="replace"))


def _do(registry: Registry, kind: str, payload: bytes, catalogue: Catalogue | None) -> bytes:
    return registry.plain_jobs[kind](payload) if catalogue is None else registry.jobs[kind](payload, catalogue)


def answer_of(reply: Reply) -> bytes:
    """The answer in a reply.

    Raises:
        RequestFaultsError: the request has faults.
        errors.WorkError: the job failed.
    """
    if reply.outcome is Outcome.DONE:
        return reply.body
    if reply.outcome is Outcome.FAULTS:
        raise RequestFaultsError(_FAULTS.decode(reply.body))
    raise errors.failed()
