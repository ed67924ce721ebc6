"""The same door without processes."""

from __future__ import annotations

import asyncio

import pytest

from service.catalogue import demo_catalogue
from service.errors import Reason, RequestFaultsError
from service.workers import InlineRunner, Job, Snapshot, WorkError
from tests.workers.doubles import NAME


def run(kind: str, payload: bytes = b"") -> bytes:
    job = Job(kind=kind, payload=payload, snapshot=Snapshot(demo_catalogue()), deadline_seconds=1.0)
    return asyncio.run(InlineRunner(NAME).run(job))


def test_it_answers_as_the_pool_does() -> None:
    assert f"{demo_catalogue().revision} x".encode() == run("echo", b"x")


def test_faults_and_mistakes_come_as_from_the_pool(caplog: pytest.LogCaptureFixture) -> None:
    with pytest.raises(RequestFaultsError):
        run("refuse")
    with pytest.raises(WorkError) as caught:
        run("stumble")

    assert caught.value.reason is Reason.INTERNAL
    assert "ZeroDivisionError" in caplog.text


def test_the_snapshot_survives_its_bytes() -> None:
    """What a worker sees is what the store read."""
    from service.workers.job import decode_catalogue

    assert demo_catalogue() == decode_catalogue(Snapshot(demo_catalogue()).encoded)
