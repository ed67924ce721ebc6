from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING

from service.checks import steps
from service.checks.step import Row, Stronger, Weak
from service.checks.steps import next_steps
from service.frame import Additions
from tests.checks.grounds import ground_of
from tests.checks.row_cases import MARKET
from tests.checks.test_check import made
from tests.examples_of import example_c

if TYPE_CHECKING:
    import pytest


def used_up(_weak: Weak) -> None:
    return None


def ply(weak: Weak) -> Stronger | None:
    count = weak.ground.frame.ply_count
    return Stronger(Additions(ply_count=count + 1), "a ply more") if count < 2 else None


def test_the_first_step_that_is_left_comes_first(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(steps, "TABLE", (Row(frozenset({"structure.trial"}), (used_up, ply)),))
    check = made(2.0, 1.0)
    found = list(next_steps((check,), ground_of(example_c(), Additions(ply_count=0)), MARKET))

    assert [(check, Stronger(Additions(ply_count=1), "a ply more"))] == found
    assert [] == list(next_steps((check,), ground_of(example_c(), Additions(ply_count=2)), MARKET))


def test_every_code_of_the_table_is_one_that_a_check_declares() -> None:
    """A check that is renamed would lose its steps in silence."""
    texts = [path.read_text("utf-8") for path in Path("service/checks").glob("*.py") if not path.name.startswith("step")]
    declared = {code for text in texts for code in re.findall(r'^[A-Z_]+: Final = "([a-z_.]+)"$', text, re.MULTILINE)}
    wanted = {code for row in steps.TABLE for code in row.codes}

    assert set() == wanted - declared
