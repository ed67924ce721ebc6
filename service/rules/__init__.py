"""Numbers decided outside the team, as data with their sources."""

from service.rules.eurocode import (
    ActionRules,
    DurationFactors,
    LoadDuration,
    MemberRules,
    PartialFactors,
    ScrewRules,
    StrengthClass,
    WallLoad,
    WallRules,
    shortest,
)
from service.rules.limits import AccessRules, HeatRules, LiftZone, PowerRules, ViewingRules
from service.rules.load import EDITIONS, NEWEST_EDITION, RuleFileError, load_rules, parse_rules
from service.rules.ruleset import DefaultRules, FrameRules, HandlingRules, Rule, RuleSet, Source, TakeOffRules

__all__ = [
    "EDITIONS",
    "NEWEST_EDITION",
    "AccessRules",
    "ActionRules",
    "DefaultRules",
    "DurationFactors",
    "FrameRules",
    "HandlingRules",
    "HeatRules",
    "LiftZone",
    "LoadDuration",
    "MemberRules",
    "PartialFactors",
    "PowerRules",
    "Rule",
    "RuleFileError",
    "RuleSet",
    "ScrewRules",
    "Source",
    "StrengthClass",
    "TakeOffRules",
    "ViewingRules",
    "WallLoad",
    "WallRules",
    "load_rules",
    "parse_rules",
    "shortest",
]
