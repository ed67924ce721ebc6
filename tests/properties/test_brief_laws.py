"""Laws of resolve(): it answers or names faults, always the same, whatever order lists came in."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
from hypothesis import HealthCheck, event, given, settings
from hypothesis import strategies as st

from service.errors import Fault, RequestFaultsError, UnbuildableError
from service.frame import lay_out
from service.rules import load_rules
from tests.examples_of import job_of, request_of
from tests.strategies import requests, shuffled
from tests.wild_strategies import wild_requests

if TYPE_CHECKING:
    from random import Random

    from service.brief import Job
    from service.errors import Unmet
    from service.frame import Frame
    from tests.strategies import Request

MANY = settings(
    max_examples=max(150, settings.default.max_examples if settings.default else 0),
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
RAW = ("survey", "terms")  # the request itself, kept in the job as it came


def answer(request: Request) -> tuple[Job | None, Frame | None, tuple[Fault | Unmet, ...]]:
    """What comes of a request: a job and a frame, a job and what is unmet, or faults. Nothing else is ever raised."""
    try:
        job = job_of(request)
    except RequestFaultsError as error:
        event("faults")
        return None, None, error.faults
    try:
        frame = lay_out(job, load_rules())
    except UnbuildableError as error:
        event("unbuildable")
        return job, None, error.unmet
    event("designed")
    return job, frame, ()


@given(wild_requests())
@MANY
def test_every_request_gets_one_of_three_answers(request: Request) -> None:
    job, frame, said = answer(request)

    assert (frame is None) == bool(said)
    if job is None:
        assert said


@given(wild_requests())
@MANY
def test_faults_point_into_the_body_and_say_what_to_do(request: Request) -> None:
    _job, _frame, said = answer(request)
    for fault in said:
        if isinstance(fault, Fault):
            assert all(pointer.startswith(("/survey", "/terms")) for pointer in (fault.pointer, *fault.related))
            assert fault.detail
            assert fault.remedy


@given(requests())
@MANY
def test_same_survey_same_value(request: Request) -> None:
    first, second = answer(request), answer(msgspec.json.decode(msgspec.json.encode(request)))

    assert first == second
    assert msgspec.json.encode(first[1]) == msgspec.json.encode(second[1])


@given(requests(), st.randoms(use_true_random=False))
@MANY
def test_order_of_lists_does_not_matter(request: Request, chance: Random) -> None:
    def reorder(values: list[object]) -> list[object]:
        return chance.sample(values, len(values))

    job, frame, said = answer(request)
    other_job, other_frame, other_said = answer(shuffled(request, reorder))

    assert (frame, said) == (other_frame, other_said)
    if job is not None and other_job is not None:
        assert known(job) == known(other_job)


def known(job: Job) -> dict[str, object]:
    """Everything of a job but the request as it was sent; a doubt about a point of a list moves with the point."""
    values = {name: value for name, value in msgspec.structs.asdict(job).items() if name not in RAW}
    return values | {"doubts": sorted((doubt.says, str(doubt.value)) for doubt in job.doubts)}


@given(requests())
@MANY
def test_what_is_assumed_may_be_sent(request: Request) -> None:
    """Every default that was listed, sent as stated, gives the same breast: the list hides nothing."""
    job, frame, _said = answer(request)
    if job is None:
        return
    body = msgspec.json.decode(msgspec.json.encode(request))
    for note in job.assumptions:
        if isinstance(note.value, int | float) and not isinstance(note.value, bool) and note.pointer.endswith("_mm"):
            set_at(body, note.pointer, note.value)

    again, same, _again_said = answer(body)

    assert again is not None
    assert frame == same


def set_at(body: Request, pointer: str, value: object) -> None:
    """Put a value at a plain pointer."""
    *way, last = pointer.split("/")[1:]
    part = body
    for name in way:
        part = part.setdefault(name, {})
    part[last] = value


@given(requests())
@MANY
def test_assumptions_point_to_what_was_not_sent(request: Request) -> None:
    """A value that was sent is never assumed, but for lists too short and sizes taken of a class."""
    body = request_of(request)
    job, _frame, _said = answer(request)
    for note in job.assumptions if job else ():
        value: object = body
        for name in note.pointer.split("/")[1:]:
            value = getattr(value, name, None)
        allowed = note.pointer.endswith(("/heights", "/appliance", "/screen"))
        assert value is None or allowed, note.pointer
