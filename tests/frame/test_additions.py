from __future__ import annotations

from service.frame import Additions, Role


def test_a_role_keeps_the_class_of_the_job_unless_it_is_named() -> None:
    added = Additions(strong_class="C24", strong_roles=(Role.RAIL,))

    assert ("C24", "C16") == (added.class_of(Role.RAIL, "C16"), added.class_of(Role.UPRIGHT, "C16"))
