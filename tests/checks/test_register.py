from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks import register
from service.checks.check import Skipped
from service.checks.ground import Ground
from service.hardware import choose_hardware
from service.rules import load_rules
from tests.checks.test_check import made
from tests.examples_of import example_a, frame_of, job_of
from tests.hardware.test_choosing import MARKET

if TYPE_CHECKING:
    import pytest


def test_results_come_in_the_order_of_the_register(monkeypatch: pytest.MonkeyPatch) -> None:
    skipped = Skipped(code="structure.lid", why="full height")
    monkeypatch.setattr(register, "REGISTER", (lambda _g: (made(2.0, 1.0), skipped), lambda _g: (made(1.0, 2.0),)))
    job = job_of(example_a())
    ground = Ground(job=job, frame=frame_of(example_a()), rules=load_rules(), hardware=choose_hardware(job, MARKET))

    report = register.check(ground)

    assert (made(2.0, 1.0), made(1.0, 2.0)) == report.checks
    assert (skipped,) == report.skipped
    assert (made(2.0, 1.0),) == report.failing
