"""The quote stage: everything put together, and written for the wire or for a person."""

from service.quote.answers import answer_bill, answer_frame, answer_quote
from service.quote.origin import ENGINE_VERSION
from service.quote.quote import Desk, Made, design, make_quote
from service.quote.text import render_quote_text
from service.quote.wire import BillAnswer, BillDesigned, FrameAnswer, FrameDesigned, QuoteAnswer, QuoteDesigned, Unbuildable

__all__ = [
    "ENGINE_VERSION",
    "BillAnswer",
    "BillDesigned",
    "Desk",
    "FrameAnswer",
    "FrameDesigned",
    "Made",
    "QuoteAnswer",
    "QuoteDesigned",
    "Unbuildable",
    "answer_bill",
    "answer_frame",
    "answer_quote",
    "design",
    "make_quote",
    "render_quote_text",
]
