"""Texts of the worked examples."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from service.quote import QuoteDesigned, answer_quote, render_quote_text
from tests.examples_of import request_of
from tests.sold_examples import answered, desk_of

if TYPE_CHECKING:
    from service.catalogue import Catalogue


def designed(name: str) -> QuoteDesigned:
    """The answer to a worked example."""
    answer = answered(name)
    assert isinstance(answer, QuoteDesigned)
    return answer


@cache
def text_of(name: str) -> str:
    """The text of a worked example."""
    return render_quote_text(designed(name))


def part(text: str, heading: str) -> list[str]:
    """Lines under a heading, up to the next."""
    lines = text.split("\n")
    start = next(index for index, line in enumerate(lines) if line.startswith(f"{heading} "))
    end = next((index for index in range(start + 1, len(lines)) if lines[index] == ""), len(lines))
    return lines[start + 1 : end]


def read(request: dict[str, Any], catalogue: Catalogue | None = None) -> str:
    """The text of any request."""
    return render_quote_text(answer_quote(request_of(request), desk_of(catalogue)))
