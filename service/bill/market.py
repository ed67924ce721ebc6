"""What the bill reads besides frame, plan and job: the shop, the trade, and how much of the job is sold."""

from __future__ import annotations

import msgspec

from service.catalogue import Catalogue
from service.cutting import QUICK, Effort
from service.rules import RuleSet
from service.survey.terms import Scope


class Market(msgspec.Struct, frozen=True, kw_only=True):
    """Shop, trade and scope."""

    catalogue: Catalogue
    rules: RuleSet
    scope: Scope = Scope.SUPPLY_AND_FIT  # what is only used up on site is bought only where the shop works there
    effort: Effort = QUICK  # of cutting beads and skirting
