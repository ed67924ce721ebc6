from __future__ import annotations

import pytest

from service.checks.ground import class_of, hangs_ladders
from service.frame import Additions, Role
from tests.checks.grounds import ground_of, rules_without_ladder
from tests.examples_of import example_a, example_c


def test_members_have_the_class_of_the_job_unless_they_were_made_stronger() -> None:
    ground = ground_of(example_a(), Additions(strong_class="C24", strong_roles=(Role.TRIMMER, Role.TRIMMER_PLY)))
    classes = {member.role: class_of(member, ground).name for member in ground.frame.members}

    assert "C24" == classes[Role.TRIMMER] == classes[Role.TRIMMER_PLY]
    assert {"C16"} == {name for role, name in classes.items() if role not in {Role.TRIMMER, Role.TRIMMER_PLY}}


@pytest.mark.parametrize(
    ("request_", "rules", "expected"),
    [(example_a(), None, True), (example_a(), rules_without_ladder(), False), (example_c(), None, False)],
)
def test_ladders_hang_at_open_ends_unless_switched_off(request_: dict[str, object], rules: None, *, expected: bool) -> None:
    """`knowledge/structure.md`, 5.13."""
    assert expected == hangs_ladders(ground_of(request_, rules=rules))
