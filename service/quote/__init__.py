"""The quote stage: everything put together, and written for the wire or for a person."""

from service.quote.answers import answer_bill, answer_frame, answer_quote
from service.quote.origin import ENGINE_VERSION
from service.quote.quote import Desk, Made, design, make_quote, price_job, take_brief
from service.quote.signed import signed
from service.quote.standing import standing_of
from service.quote.text import render_quote_text
from service.quote.wire import BillAnswer, BillDesigned, FrameAnswer, FrameDesigned, QuoteAnswer, QuoteDesigned, Unbuildable
from service.quote.wire_alternatives import AlternativeAnswer, Operation

__all__ = [
    "ENGINE_VERSION",
    "AlternativeAnswer",
    "BillAnswer",
    "BillDesigned",
    "Desk",
    "FrameAnswer",
    "FrameDesigned",
    "Made",
    "Operation",
    "QuoteAnswer",
    "QuoteDesigned",
    "Unbuildable",
    "answer_bill",
    "answer_frame",
    "answer_quote",
    "design",
    "make_quote",
    "price_job",
    "render_quote_text",
    "signed",
    "standing_of",
    "take_brief",
]
