"""Checks and strengthening on the page: what fails and what is not verified in words, what passes as a line each."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks import Verdict
from service.quote.text_layout import row, title

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks import NotMade, Strengthened
    from service.quote.wire_checks import CheckAnswer, Strengthening

WORDS = {Verdict.FAIL: "FAILS", Verdict.PROVISIONAL: "not verified", Verdict.ADVISE: "advice", Verdict.PASS: "passes"}
WIDE = 9


def checks_text(checks: tuple[CheckAnswer, ...], not_made: tuple[NotMade, ...]) -> Iterator[str]:
    """Every check with its utilisation, and the families that were not checked."""
    yield from title("CHECKS (demand over resistance)")
    for one in checks:
        ratio = "" if one.utilisation_ratio is None else f"{one.utilisation_ratio:.2f}"
        yield from row(ratio, _says(one), WIDE)
    if not_made:
        yield from title("NOT CHECKED")
    for family in not_made:
        yield from row(family.family, family.says)


def strengthening_text(made: Strengthening) -> Iterator[str]:
    """What was added to the laid-out frame, and for which check; nothing where nothing was."""
    if not made.steps:
        return
    yield from title("ADDED FOR THE CHECKS")
    for number, step in enumerate(made.steps, start=1):
        yield from row(str(number), f"{step.done}: {step.check}, {step.subject}, {_change(step)}", WIDE)


def _says(one: CheckAnswer) -> str:
    parts = [f"{WORDS[one.verdict]}: {one.code}, {one.subject}"]
    if one.verdict is not Verdict.PASS:
        parts += [text for text in (one.says, one.unverified, one.remedy) if text]
    return ". ".join(part.rstrip(".") for part in parts)


def _change(step: Strengthened) -> str:
    before, after = ("-" if ratio is None else f"{ratio:.2f}" for ratio in (step.before_ratio, step.after_ratio))
    return f"{before} to {after}"
