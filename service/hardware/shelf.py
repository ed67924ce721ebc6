"""What things are chosen from: the shop's catalogue, read by the rules of the trade; no price is looked at."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.rules import RuleSet


class Shelf(Protocol):
    """Whatever holds a catalogue and rules."""

    @property
    def catalogue(self) -> Catalogue:
        """What is sold."""

    @property
    def rules(self) -> RuleSet:
        """Numbers of the trade."""
