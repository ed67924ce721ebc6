"""All results of one design, and the families of checks that yielded none."""

from __future__ import annotations

from typing import Final

import msgspec

from service.checks.check import Check, Skipped, Verdict
from service.checks.result import NotMade

FAMILIES: Final = (
    NotMade(family="structure", says="strength, sag and stability of members, joints and the hung frame are not checked"),
    NotMade(
        family="fixings", says="resistance of wall and ceiling fixings is not checked: their number is a pattern, not a proof"
    ),
    NotMade(family="heat", says="cavity temperature, air, and the maker's clearances beyond outlet and gaps are not checked"),
    NotMade(family="power", says="circuit, cable zones and access to connections are not checked"),
    NotMade(family="viewing", says="viewing height and distance are not checked"),
    NotMade(family="handling", says="the way in, corners and work at height are not checked; masses to be lifted are"),
)


class Report(msgspec.Struct, frozen=True, kw_only=True):
    """All results of one design."""

    checks: tuple[Check, ...] = ()
    skipped: tuple[Skipped, ...] = ()

    @property
    def failing(self) -> tuple[Check, ...]:
        """Checks that bind and are not met."""
        return tuple(check for check in self.checks if check.verdict is Verdict.FAIL)

    @property
    def provisional(self) -> tuple[Check, ...]:
        """Checks that turn on something that is not declared, not known or not verified."""
        return tuple(check for check in self.checks if check.verdict is Verdict.PROVISIONAL)

    @property
    def not_made(self) -> tuple[NotMade, ...]:
        """Families of which no check said anything, not even why it does not apply."""
        codes = (*(one.code for one in self.checks), *(one.code for one in self.skipped))
        said = {code.partition(".")[0] for code in codes}
        return tuple(family for family in FAMILIES if family.family not in said)

    def of(self, code: str) -> tuple[Check, ...]:
        """The results of one check, in the order of the report."""
        return tuple(check for check in self.checks if check.code == code)
