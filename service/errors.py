"""What can be wrong with a request, and what keeps a sound survey from being built. No status code is known here."""

from __future__ import annotations

from enum import StrEnum
from typing import Final

import msgspec

# Factors to millimetres are by definition; which slips are worth naming, and in which order: common practice, no source.
SLIPS: Final = (
    (10.0, "centimetres"),
    (1000.0, "metres"),
    (25.4, "inches"),
    (100.0, "decimetres"),
    (0.1, "tenths of a millimetre"),
)


class Reason(StrEnum):
    """Stable code of a problem, one per remedy. `web/problems.py` maps each to a status."""

    MALFORMED = "MALFORMED"  # not JSON, not UTF-8, empty, too deep
    SHAPE = "SHAPE"  # well-formed JSON of the wrong shape, type or range
    IMPOSSIBLE_VALUE = "IMPOSSIBLE_VALUE"  # a value that cannot exist
    CONTRADICTION = "CONTRADICTION"  # two values that cannot both be true
    UNKNOWN_MODEL = "UNKNOWN_MODEL"  # a code or model that the catalogue does not hold
    NOT_ALLOWED = "NOT_ALLOWED"  # a thing that may not be used for this job, such as ungraded timber
    UNCUTTABLE_PIECE = "UNCUTTABLE_PIECE"  # a piece that no stock on offer can give
    UNBUILDABLE = "UNBUILDABLE"  # a sound survey without a design, where only a design can be the answer: a drawing
    NO_PRICE = "NO_PRICE"  # an item of the bill that the price book does not price
    BAD_PARAMETER = "BAD_PARAMETER"
    NOT_FOUND = "NOT_FOUND"
    METHOD_NOT_ALLOWED = "METHOD_NOT_ALLOWED"
    NOT_ACCEPTABLE = "NOT_ACCEPTABLE"
    REQUEST_TIMEOUT = "REQUEST_TIMEOUT"
    BODY_TOO_LARGE = "BODY_TOO_LARGE"
    URI_TOO_LONG = "URI_TOO_LONG"
    UNSUPPORTED_MEDIA_TYPE = "UNSUPPORTED_MEDIA_TYPE"
    BAD_HOST = "BAD_HOST"
    KEY_MISSING = "KEY_MISSING"
    KEY_UNKNOWN = "KEY_UNKNOWN"  # malformed, or not one that was ever given out
    KEY_EXPIRED = "KEY_EXPIRED"
    KEY_REVOKED = "KEY_REVOKED"
    KEY_KIND = "KEY_KIND"  # a browser key where only a server key will do
    SCOPE_MISSING = "SCOPE_MISSING"
    ORIGIN_REFUSED = "ORIGIN_REFUSED"  # a browser key on a page that its shop does not allow
    ACCOUNT_SUSPENDED = "ACCOUNT_SUSPENDED"
    SPENT_KEY = "SPENT_KEY"  # a key that has ended or was rotated before cannot be rotated
    TOO_MANY_KEYS = "TOO_MANY_KEYS"
    KEYS_UNREAD = "KEYS_UNREAD"  # no key can be known yet
    DATABASE_AWAY = "DATABASE_AWAY"  # what is asked needs the database
    BAD_ROWS = "BAD_ROWS"  # a file of rows with faults; nothing of it was taken
    DRAFT_CHANGED = "DRAFT_CHANGED"  # the draft is another than the one that was looked at
    DRAFT_UNSOUND = "DRAFT_UNSOUND"  # the draft does not hold together
    DAY_HAS_PASSED = "DAY_HAS_PASSED"  # a day that has passed keeps the prices it had
    NOTHING_WOULD_HOLD = "NOTHING_WOULD_HOLD"  # the last revision that holds cannot be withdrawn
    OVERLOADED = "OVERLOADED"  # the queue of heavy work is full
    DEADLINE = "DEADLINE"  # the work was not done in the time allowed
    NO_CATALOGUE = "NO_CATALOGUE"  # no catalogue snapshot is held
    WORKER_LOST = "WORKER_LOST"  # the process that did the work ended
    INTERNAL = "INTERNAL"


class Fault(msgspec.Struct, frozen=True, kw_only=True):
    """One thing wrong with a request: where, what, and what to do."""

    pointer: str  # RFC 6901, from the root of the body; "" is the whole body
    reason: Reason
    detail: str  # what is wrong, with the value and the range
    remedy: str  # what to send instead
    related: tuple[str, ...] = ()  # other pointers of a contradiction


class RequestFaultsError(Exception):
    """A request that cannot be answered, with all its faults at once."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        """Keep the faults; there is at least one."""
        super().__init__("; ".join(f"{fault.pointer}: {fault.detail}" for fault in faults))
        self.faults = faults


class Unmet(msgspec.Struct, frozen=True, kw_only=True):
    """One inequality that keeps a sound survey from being built (`knowledge/framing.md`, section 13)."""

    code: str  # such as `recess_high`
    says: str  # one sentence for a person
    asked_mm: float
    available_mm: float
    short_by_mm: float
    offer: str  # what would make it fit, as text with the number


class UnbuildableError(Exception):
    """Raised inside the frame stage; the quote turns it into an answer."""

    def __init__(self, unmet: tuple[Unmet, ...]) -> None:
        """Keep the unmet inequalities; there is at least one."""
        super().__init__("; ".join(item.says for item in unmet))
        self.unmet = unmet


def likely_slip(value: float, low: float, high: float, unit: str) -> str:
    """Name the unit slip that would bring a length into its range, or return an empty text.

    Args:
        value: the number as sent.
        low: least value allowed.
        high: greatest value allowed.
        unit: the unit that is expected; only `mm` has slips worth naming.

    Source: factors by definition; which slips are common: common practice, no source.
    """
    if unit != "mm" or value <= 0 or low <= value <= high:
        return ""
    for factor, name in SLIPS:
        if low <= value * factor <= high:
            return f"{value:g} looks like {name}: {value * factor:g} mm?"
    return ""
