"""Offers: whatever runs a quote more than once. Alternatives to what cannot be built."""

from service.offers.answers import answer_bill, answer_frame, answer_quote
from service.offers.patch import patched

__all__ = ["answer_bill", "answer_frame", "answer_quote", "patched"]
