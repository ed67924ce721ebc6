"""Heavy work in the caller's own process: for tests and for the command line. The same door as the pool, no isolation."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING

from service.workers import errors
from service.workers.job import decode_catalogue, find_registry
from service.workers.messages import Outcome
from service.workers.perform import answer_of, perform

if TYPE_CHECKING:
    from service.workers.job import Job

log = logging.getLogger(__name__)


class InlineRunner:
    """Does each job at once. The snapshot goes through its bytes, as it does on the way to a worker process."""

    def __init__(self, registry: str) -> None:
        """Load the registry named `module:name`."""
        self._registry = find_registry(registry)

    async def run(self, job: Job) -> bytes:
        """Do a job; see `Runner`. The deadline is not kept: nothing else could run meanwhile anyway."""
        try:
            catalogue = decode_catalogue(job.snapshot.encoded) if job.snapshot else None
            reply = perform(self._registry, job.kind, job.payload, catalogue)
        except MemoryError as error:
            raise errors.lost() from error
        if reply.outcome is Outcome.FAILED:
            log.error("job %s failed\n%s", job.kind, reply.body.decode(errors="replace"))
        return answer_of(reply)
