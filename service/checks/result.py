"""What the checks stage yields: cautions with what each stops, and the checks that were not made."""

from __future__ import annotations

from enum import StrEnum

import msgspec


class Stops(StrEnum):
    """What an uncleared caution stops (`knowledge/cautions.md`, section 0)."""

    DESIGN = "design"
    FIRM_QUOTE = "firm_quote"
    THIS_WORK = "this_work"
    EARLY_START = "early_start"
    NOTHING = "nothing"


class Audience(StrEnum):
    """Whom a caution is for."""

    CUSTOMER = "customer"
    FITTER = "fitter"
    SHOP = "shop"


class CautionState(StrEnum):
    """Whether its trigger is known to be true."""

    FIRES = "fires"
    NOT_VERIFIED = "not_verified"  # turns on a value that is unknown or assumed
    CLEARED = "cleared"


class Caution(msgspec.Struct, frozen=True, kw_only=True):
    """One caution; it is never dropped because another one fired, and stays when cleared."""

    code: str
    state: CautionState
    says: str  # what is wrong, the number, the limit, who can clear it and what helps
    stops: Stops
    audience: tuple[Audience, ...]
    who_clears: tuple[str, ...]
    source: str
    cleared_by: str = ""


class NotMade(msgspec.Struct, frozen=True, kw_only=True):
    """A family of checks that this version does not make."""

    family: str
    says: str
