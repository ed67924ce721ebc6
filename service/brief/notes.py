"""A notebook for one resolve(): defaults taken, doubts, faults, wishes left to a person. Used up when the job is made."""

from __future__ import annotations

from enum import Enum

from service.brief.job import Assumption, Doubt, Scalar
from service.errors import Fault, Reason


class Notes:
    """Collects what resolve() has to say; everything at once, never only the first."""

    def __init__(self) -> None:
        """Start empty."""
        self.assumptions: list[Assumption] = []
        self.doubts: list[Doubt] = []
        self.faults: list[Fault] = []
        self.by_hand: list[str] = []
        self.missing_figures: list[str] = []

    def take[T](self, pointer: str, given: T | None, default: T, effect: str) -> T:
        """The value sent, or a default that a firm quote wants replaced by a measured or stated value."""
        if given is not None:
            return given
        self.assumptions.append(Assumption(pointer=pointer, value=scalar(default), effect=effect, needed_for_firm=True))
        return default

    def choose[T](self, pointer: str, given: T | None, default: T, effect: str) -> T:
        """The wish sent, or the house's own choice: listed, but no unknown."""
        if given is not None:
            return given
        self.assumptions.append(Assumption(pointer=pointer, value=scalar(default), effect=effect, house_choice=True))
        return default

    def suppose[T](self, pointer: str, given: T | None, default: T, effect: str) -> T:
        """The value sent, or a default that a firm quote does not need."""
        if given is not None:
            return given
        self.assumptions.append(Assumption(pointer=pointer, value=scalar(default), effect=effect))
        return default

    def doubt_outside(self, pointer: str, value: float | None, low: float, high: float) -> None:
        """Note a number outside its usual range."""
        if value is not None and not low <= value <= high:
            self.doubt(pointer, value, f"{value:g} is outside the usual {low:g} to {high:g}: please confirm")

    def doubt(self, pointer: str, value: Scalar, says: str) -> None:
        """Note a value to be confirmed."""
        self.doubts.append(Doubt(pointer=pointer, value=value, says=says))

    def refuse(self, reason: Reason, pointer: str, *, detail: str, remedy: str, related: tuple[str, ...] = ()) -> None:
        """Note a fault of the request."""
        self.faults.append(Fault(pointer=pointer, reason=reason, detail=detail, remedy=remedy, related=related))

    def contradict(self, pointers: tuple[str, ...], *, detail: str, remedy: str) -> None:
        """Note values that cannot all be true."""
        self.refuse(Reason.CONTRADICTION, pointers[0], detail=detail, remedy=remedy, related=pointers[1:])


def scalar(value: object) -> Scalar:
    """A default as one JSON scalar, for the list of assumptions."""
    if isinstance(value, Enum):
        return str(value.value)
    if isinstance(value, float) and value.is_integer():
        return int(value)
    if value is None or isinstance(value, str | int | float | bool):
        return value
    return "none" if not value else str(value)
