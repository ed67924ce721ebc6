from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks import steps
from service.checks.check import Check, Quantity
from service.checks.settle import content_of, settle
from service.checks.step import Row
from service.frame import Additions
from service.rules import Source
from tests.checks.row_cases import MARKET
from tests.checks.test_steps import ply
from tests.examples_of import example_c, frame_of, job_of

if TYPE_CHECKING:
    from service.checks.ground import Ground

WANTED_PLIES = 2


def plies_wanted(ground: Ground) -> tuple[Check, ...]:
    """A check of the tests: plies behind the trimmer."""
    return (
        Check(
            code="structure.trial", subject="U-T1", says="a trial",
            demand=Quantity(symbol="p", value=WANTED_PLIES, unit="count"),
            resistance=Quantity(symbol="p", value=ground.frame.ply_count, unit="count"), clause=Source(document="house choice"),
        ),
    )  # fmt: skip


@pytest.fixture
def trial(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("service.checks.register.REGISTER", (plies_wanted,))
    monkeypatch.setattr(steps, "TABLE", (Row(frozenset({"structure.trial"}), (ply,)),))


@pytest.mark.usefixtures("trial")
def test_steps_are_taken_until_the_check_holds_and_are_listed() -> None:
    settled = settle(job_of(example_c()), MARKET, Additions(ply_count=0))

    assert WANTED_PLIES == settled.frame.ply_count == settled.content.plies_count
    assert 0 == settled.laid_out.plies_count
    assert () == settled.report.failing
    assert [(None, 2.0), (2.0, 1.0)] == [(one.before_ratio, one.after_ratio) for one in settled.steps]
    assert {("structure.trial", "U-T1", "a ply more")} == {(one.check, one.subject, one.done) for one in settled.steps}


def test_a_check_without_a_step_stays_failed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("service.checks.register.REGISTER", (plies_wanted,))
    monkeypatch.setattr(steps, "TABLE", ())
    settled = settle(job_of(example_c()), MARKET, Additions(ply_count=0))

    assert ("structure.trial",) == tuple(one.code for one in settled.report.failing)
    assert () == settled.steps
    assert settled.laid_out == settled.content


def test_what_is_counted() -> None:
    """Example C after checks: 1 ply, 8 cross noggins, 5 at each end and 4 in the cheeks (`knowledge/worked-examples.md`)."""
    frame = frame_of(example_c(), Additions(ply_count=1))
    content = content_of(frame)

    assert len(frame.members) == content.members_count
    assert (1, len(frame.stations)) == (content.plies_count, content.stations_count)
    assert content.wall_fixings_count >= content.wall_fixings_holding_count
    assert 0 == content.ceiling_screws_count
    assert content == msgspec.json.decode(msgspec.json.encode(content), type=type(content))


def nothing_helps(ground: Ground) -> tuple[Check, ...]:
    """A check of the tests that no step moves."""
    return tuple(
        msgspec.structs.replace(one, resistance=Quantity(symbol="p", value=1.0, unit="count")) for one in plies_wanted(ground)
    )


def test_a_step_that_does_not_help_is_not_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is added costs money: it must bring the check that asked for it nearer to its limit."""
    monkeypatch.setattr("service.checks.register.REGISTER", (nothing_helps,))
    monkeypatch.setattr(steps, "TABLE", (Row(frozenset({"structure.trial"}), (ply,)),))
    settled = settle(job_of(example_c()), MARKET, Additions(ply_count=0))

    assert () == settled.steps
    assert 0 == settled.frame.ply_count
    assert ("structure.trial",) == tuple(one.code for one in settled.report.failing)
