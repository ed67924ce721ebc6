"""The quote stage: everything put together, and written for the wire or for a person."""

from service.quote.answers import answer_bill, answer_frame, answer_quote
from service.quote.origin import ENGINE_VERSION, normalise, origin_of
from service.quote.quote import Desk, Made, design, design_measured, make_quote, price_job, price_plan, take_brief, yard_of
from service.quote.signed import signed
from service.quote.standing import standing_of
from service.quote.text import render_quote_text
from service.quote.wire import (
    BillAnswer,
    BillDesigned,
    FrameAnswer,
    FrameDesigned,
    Origin,
    QuoteAnswer,
    QuoteDesigned,
    RecessSize,
    Unbuildable,
)
from service.quote.wire_alternatives import AlternativeAnswer, Operation
from service.quote.wire_variants import VariantAnswer, VariantOutcome

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
    "Origin",
    "QuoteAnswer",
    "QuoteDesigned",
    "RecessSize",
    "Unbuildable",
    "VariantAnswer",
    "VariantOutcome",
    "answer_bill",
    "answer_frame",
    "answer_quote",
    "design",
    "design_measured",
    "make_quote",
    "normalise",
    "origin_of",
    "price_job",
    "price_plan",
    "render_quote_text",
    "signed",
    "standing_of",
    "take_brief",
    "yard_of",
]
