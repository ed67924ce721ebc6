"""Numbers decided outside the team, as data with their sources."""

from service.rules.load import EDITIONS, NEWEST_EDITION, RuleFileError, load_rules, parse_rules
from service.rules.ruleset import DefaultRules, FrameRules, HandlingRules, Rule, RuleSet, Source, TakeOffRules

__all__ = [
    "EDITIONS",
    "NEWEST_EDITION",
    "DefaultRules",
    "FrameRules",
    "HandlingRules",
    "Rule",
    "RuleFileError",
    "RuleSet",
    "Source",
    "TakeOffRules",
    "load_rules",
    "parse_rules",
]
