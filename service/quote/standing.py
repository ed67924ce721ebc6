"""Standing of a quote, and what no quote includes (`knowledge/survey.md`, section 1; `knowledge/labour.md`, section 8)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks import CautionState, Stops

if TYPE_CHECKING:
    from service.brief import Job
    from service.checks import Caution
    from service.price import Price

EXCLUSIONS = (
    "asbestos testing and removal",
    "making good beyond 300 mm of the breast",
    "moving radiators, gas or alarms",
    "floor repair",
    "upgrade of the electrical supply",
    "decoration of other walls",
    "curved or tiled work",
    "parking fines",
    "consents",
    "aerial and data beyond the recess",
    "hidden defects",
)


def standing_of(job: Job, cautions: tuple[Caution, ...], price: Price) -> tuple[str, tuple[str, ...]]:
    """`estimate` or `provisional`, with the reasons; never `firm` while checks are not made."""
    reasons = ["strength, fixings, heat, power and viewing are not checked yet"]
    if job.appliance_standing == "size_class" or job.screen_standing == "size_class":
        reasons.append("fire or screen is known by its size class only")
    missing = sum(1 for note in job.assumptions if note.needed_for_firm)
    if missing:
        reasons.append(f"{missing} fields that a firm quote needs are assumed")
    if job.missing_figures:
        reasons.append(f"{len(job.missing_figures)} figures of the makers are missing")
    if job.doubts:
        reasons.append(f"{len(job.doubts)} values are to be confirmed")
    if price.unpriced:
        reasons.append(f"{len(price.unpriced)} things have no price")
    open_stops = [one.code for one in cautions if one.stops in {Stops.DESIGN, Stops.FIRM_QUOTE} and one.state is not CautionState.CLEARED]
    if open_stops:
        reasons.append(f"not cleared: {', '.join(sorted(set(open_stops)))}")
    by_class = job.appliance_standing == "size_class" or job.screen_standing == "size_class"
    return ("estimate" if by_class else "provisional"), tuple(reasons)
