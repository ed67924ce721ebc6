from __future__ import annotations

import pytest

from service.brief.job import Assumption, Doubt
from service.brief.notes import Notes, scalar
from service.errors import Fault, Reason
from service.survey.fields import Answer


def test_a_value_that_was_sent_is_no_assumption() -> None:
    notes = Notes()
    taken = (
        notes.take("/a", 0, 5, ""),
        notes.choose("/b", "", "x", ""),
        notes.suppose("/c", given=False, default=True, effect=""),
    )

    assert (0, "", False) == taken
    assert [] == notes.assumptions


def test_three_ways_to_take_a_default() -> None:
    notes = Notes()
    taken = (
        notes.take("/a", None, 5.0, "more"),
        notes.choose("/b", None, Answer.NO, "less"),
        notes.suppose("/c", None, (), "none"),
    )

    assert (5.0, Answer.NO, ()) == taken
    assert [
        Assumption(pointer="/a", value=5, effect="more", needed_for_firm=True),
        Assumption(pointer="/b", value="no", effect="less", house_choice=True),
        Assumption(pointer="/c", value="none", effect="none"),
    ] == notes.assumptions


@pytest.mark.parametrize(("value", "said"), [(9.9, True), (10, False), (20, False), (20.1, True), (None, False)])
def test_doubt_outside_a_range(value: float | None, *, said: bool) -> None:
    notes = Notes()
    notes.doubt_outside("/a", value, 10, 20)

    assert said is bool(notes.doubts)


def test_a_doubt_names_the_range() -> None:
    notes = Notes()
    notes.doubt_outside("/a", 20.5, 10, 20)

    assert [Doubt(pointer="/a", value=20.5, says="20.5 is outside the usual 10 to 20: please confirm")] == notes.doubts


def test_a_contradiction_names_all_its_fields() -> None:
    notes = Notes()
    notes.contradict(("/a", "/b", "/c"), detail="a is not b", remedy="send one")

    expected = Fault(pointer="/a", reason=Reason.CONTRADICTION, detail="a is not b", remedy="send one", related=("/b", "/c"))
    assert [expected] == notes.faults


SCALARS = [
    (Answer.YES, "yes"), (2.0, 2), (2.5, 2.5), (None, None), (False, False), ("x", "x"), ((), "none"), ((1, 2), "(1, 2)"),
]  # fmt: skip


@pytest.mark.parametrize(("value", "said"), SCALARS)
def test_scalar(value: object, said: object) -> None:
    assert said == scalar(value)
