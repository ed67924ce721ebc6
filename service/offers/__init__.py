"""Offers: whatever runs a quote more than once. Alternatives to what cannot be built, estimates, shortlists."""

from service.offers.answers import answer_bill, answer_frame, answer_quote
from service.offers.estimate_survey import fault_as_asked
from service.offers.estimate_wire import EstimateAnswer, Estimated, EstimateRequest, NotEstimated
from service.offers.estimates import answer_estimate
from service.offers.patch import patched
from service.offers.shortlist_wire import ShortlistAnswer, ShortlistRequest
from service.offers.shortlists import answer_shortlist

__all__ = [
    "EstimateAnswer",
    "EstimateRequest",
    "Estimated",
    "NotEstimated",
    "ShortlistAnswer",
    "ShortlistRequest",
    "answer_bill",
    "answer_estimate",
    "answer_frame",
    "answer_quote",
    "answer_shortlist",
    "fault_as_asked",
    "patched",
]
