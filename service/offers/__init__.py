"""Offers: whatever runs a quote more than once. Alternatives to what cannot be built, estimates."""

from service.offers.answers import answer_bill, answer_frame, answer_quote
from service.offers.estimate_wire import EstimateAnswer, Estimated, EstimateRequest, NotEstimated
from service.offers.estimates import answer_estimate
from service.offers.patch import patched

__all__ = [
    "EstimateAnswer",
    "EstimateRequest",
    "Estimated",
    "NotEstimated",
    "answer_bill",
    "answer_estimate",
    "answer_frame",
    "answer_quote",
    "patched",
]
