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


class Clears(StrEnum):
    """Who may clear a caution."""

    CODE = "code"  # local building control, or the law
    MAKER = "maker"
    ELECTRICIAN = "electrician"
    GAS = "gas"  # registered gas engineer
    ENGINEER = "engineer"  # structural
    SURVEYOR = "surveyor"
    OWNER = "owner"  # customer, landlord, freeholder


class Caution(msgspec.Struct, frozen=True, kw_only=True):
    """One caution; it is never dropped because another one fired, and stays when cleared."""

    code: str
    state: CautionState
    says: str  # what is wrong, the number, the limit, and what helps
    stops: Stops
    audience: tuple[Audience, ...]
    who_clears: tuple[Clears, ...]
    source: str
    cleared_by: str = ""


class NotMade(msgspec.Struct, frozen=True, kw_only=True):
    """A family of checks that this version does not make."""

    family: str
    says: str
