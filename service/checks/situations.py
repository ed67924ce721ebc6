"""Design situations of what hangs: the factors on weight and on a person, how long the load acts, the factor of timber.

Rules: `knowledge/structure.md`, 5.1: each path alone carries 1.0 G, with k_mod 0.60 as a lost path may stay unnoticed; the main
path carries 1.35 G with all other loads. Factors: EN 1990 6.4.3.2 and 6.4.3.3, EN 1995-1-1 2.4.1.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.rules import LoadDuration

if TYPE_CHECKING:
    from service.rules import RuleSet

SOLID_TIMBER: Final = "solid_timber_1"  # k_mod of service classes 1 and 2 is the same: EN 1995-1-1 Table 3.1


class Situation(msgspec.Struct, frozen=True, kw_only=True):
    """One combination of loads."""

    name: str  # in a sentence
    weight_ratio: float
    person_ratio: float = 0.0  # on a person at the front
    push_ratio: float = 0.0  # on the line load on the face
    duration: LoadDuration = LoadDuration.PERMANENT
    k_mod_ratio: float
    gamma_m_ratio: float  # of timber and screws; masonry keeps its own


def lost(rules: RuleSet) -> Situation:
    """The other path is lost: 1.0 G."""
    gamma_m_ratio = rules.partial.accidental_timber_ratio
    return _made("the other path lost", rules, LoadDuration.PERMANENT, weight_ratio=1.0, gamma_m_ratio=gamma_m_ratio)


def weight(rules: RuleSet) -> Situation:
    """The weight for years: 1.35 G."""
    return _made("its weight", rules, LoadDuration.PERMANENT)


def person(rules: RuleSet) -> Situation:
    """The weight and a person at the front: 1.35 G + 1.5 Q."""
    return _made("its weight and a person at the front", rules, LoadDuration.SHORT, person_ratio=rules.partial.variable_ratio)


def push(rules: RuleSet) -> Situation:
    """The weight and the line load on the face: 1.35 G + 1.5 H; one person action at a time."""
    return _made("its weight and a pull on the face", rules, LoadDuration.SHORT, push_ratio=rules.partial.variable_ratio)


def main_situations(rules: RuleSet) -> tuple[Situation, ...]:
    """What the main path carries."""
    return weight(rules), person(rules), push(rules)


def _made(
    name: str,
    rules: RuleSet,
    duration: LoadDuration,
    *,
    weight_ratio: float | None = None,
    person_ratio: float = 0.0,
    push_ratio: float = 0.0,
    gamma_m_ratio: float | None = None,
) -> Situation:
    """k_mod is that of the shortest load: EN 1995-1-1 3.1.3(2)."""
    partial = rules.partial
    return Situation(
        name=name, weight_ratio=partial.permanent_ratio if weight_ratio is None else weight_ratio,
        person_ratio=person_ratio, push_ratio=push_ratio, duration=duration,
        k_mod_ratio=rules.duration_factors(SOLID_TIMBER).k_mod_ratio(duration),
        gamma_m_ratio=partial.connection_ratio if gamma_m_ratio is None else gamma_m_ratio,
    )  # fmt: skip
