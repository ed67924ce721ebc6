"""What README.md and DEVELOPERS.md say of the service is what the service says."""

from __future__ import annotations

import re
from pathlib import Path

import msgspec

from service.catalogue import demo_catalogue
from service.quote import Desk, QuoteDesigned, answer_quote
from service.rules import load_rules
from service.settings import table
from service.survey import SurveyRequest
from service.workers import example_bytes

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")


def _quote_of(body: bytes) -> QuoteDesigned:
    desk = Desk(catalogue=demo_catalogue(), rules=load_rules(), today="2026-12-01")
    answer = answer_quote(msgspec.json.decode(body, type=SurveyRequest), desk)
    assert isinstance(answer, QuoteDesigned)
    return answer


def test_the_answer_shown_is_the_answer_given() -> None:
    quote = _quote_of(example_bytes())
    bars = quote.cut_plan.bars.cost
    shown = set(re.findall(r'"amount": "([0-9.]+)"', README))

    assert shown == {quote.price.net.amount, quote.price.total.amount, bars.amount if bars else None}
    assert f'"bought_count": {quote.cut_plan.bars.proof.bought_count}' in README
    assert quote.origin.catalogue_revision in README
    assert all(reason in README for reason in quote.standing_reasons)
    assert f"{len(quote.frame.members) - 1} more" in README


def test_the_least_request_is_a_request() -> None:
    least = next(line for line in README.splitlines() if line.startswith('{"survey"'))

    assert _quote_of(least.encode()).price.total.currency == "GBP"


def test_every_setting_is_listed_for_developers() -> None:
    assert [row.name for row in table() if f"`{row.name}`" not in DEVELOPERS] == []
