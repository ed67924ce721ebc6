from __future__ import annotations

from service.checks.situations import lost, main_situations, person, push, weight
from service.rules import LoadDuration, load_rules

RULES = load_rules()


def test_factors() -> None:
    """structure.md, 5.1: a lost path 1.0 G, k_mod 0.60, gamma_M 1.0; the main path 1.35 G with 1.5 Q or 1.5 H, k_mod 0.90."""
    found = [
        (one.weight_ratio, one.person_ratio, one.push_ratio, one.k_mod_ratio, one.gamma_m_ratio)
        for one in (lost(RULES), weight(RULES), person(RULES), push(RULES))
    ]

    assert [(1.0, 0, 0, 0.6, 1.0), (1.35, 0, 0, 0.6, 1.3), (1.35, 1.5, 0, 0.9, 1.3), (1.35, 0, 1.5, 0.9, 1.3)] == found


def test_the_main_path_has_one_action_of_a_person_at_a_time() -> None:
    assert all(one.person_ratio * one.push_ratio == 0 for one in main_situations(RULES))
    assert {LoadDuration.PERMANENT, LoadDuration.SHORT} == {one.duration for one in main_situations(RULES)}
