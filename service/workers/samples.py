"""Example quotes that show what a change of prices does: the example survey, sold in each of the three ways."""

from __future__ import annotations

from typing import Any, Final

import msgspec

from service.survey import SurveyRequest
from service.workers.example import example_survey

WAYS: Final = ("supply_and_fit", "supply_only", "kit")


def sample_requests(day: str) -> tuple[tuple[str, SurveyRequest], ...]:
    """Name and request of each sample, as of a day (RFC 3339 full-date)."""
    found = []
    for way in WAYS:
        body: dict[str, Any] = example_survey()
        terms = {**body.get("terms", {}), "scope": way, "date": day}
        found.append((way, msgspec.convert({**body, "terms": terms}, SurveyRequest)))
    return tuple(found)
