"""Whole answers: `request.json` of every case to `quote.json` beside it, `answers.json` to `estimate.json`.

`python -m tests.examples.rewrite` writes them again; the diff is read by a person before it is committed.
"""

from __future__ import annotations

from pathlib import Path

import msgspec

from service.catalogue import demo_catalogue
from service.offers import EstimateRequest, answer_estimate, answer_quote
from service.quote import Desk
from service.rules import load_rules
from service.survey import SurveyRequest

FOLDER = Path(__file__).parent
DAY = "2026-12-01"


def cases() -> tuple[str, ...]:
    """Names of the cases: the folders that hold a request."""
    return tuple(sorted(path.parent.name for path in FOLDER.glob("*/request.json")))


def quote_text(case: str) -> str:
    """The answer to the request of a case, laid out to be read."""
    request = msgspec.json.decode((FOLDER / case / "request.json").read_bytes(), type=SurveyRequest)
    desk = Desk(catalogue=demo_catalogue(), rules=load_rules(), today=DAY)
    return msgspec.json.format(msgspec.json.encode(answer_quote(request, desk)), indent=1).decode() + "\n"


def estimates() -> tuple[str, ...]:
    """Names of the estimates: the folders that hold answers."""
    return tuple(sorted(path.parent.name for path in FOLDER.glob("*/answers.json")))


def estimate_text(case: str) -> str:
    """The estimate of a handful of answers, laid out to be read."""
    asked = msgspec.json.decode((FOLDER / case / "answers.json").read_bytes(), type=EstimateRequest)
    desk = Desk(catalogue=demo_catalogue(), rules=load_rules(), today=DAY)
    return msgspec.json.format(msgspec.json.encode(answer_estimate(asked, desk)), indent=1).decode() + "\n"


def rewrite() -> None:
    """Write every answer again."""
    for case in cases():
        (FOLDER / case / "quote.json").write_text(quote_text(case), encoding="utf-8")
    for case in estimates():
        (FOLDER / case / "estimate.json").write_text(estimate_text(case), encoding="utf-8")


if __name__ == "__main__":
    rewrite()
