from __future__ import annotations

from service.checks import FAMILIES, Content, Quantity, Strengthened, Verdict
from service.quote.text_checks import checks_text, strengthening_text
from service.quote.wire_checks import CheckAnswer, Strengthening
from service.rules import Source

CONTENT = Content(
    members_count=52, plies_count=1, noggins_count=10, stations_count=4, brackets_count=16, wall_fixings_count=16,
    wall_fixings_holding_count=16, ceiling_screws_count=8,
)  # fmt: skip


def answer(verdict: Verdict, ratio: float | None, *, unverified: str = "", remedy: str = "") -> CheckAnswer:
    load = Quantity(symbol="E_d", value=1.0, unit="n")
    return CheckAnswer(
        code="structure.trial", subject="U-T1", says="the trimmer bears 1 N.", verdict=verdict, binding=True, demand=load,
        resistance=None, utilisation_ratio=ratio, clause=Source(document="EN 1990"), inputs=(), unverified=unverified,
        remedy=remedy,
    )  # fmt: skip


def test_what_passes_is_a_line_and_what_does_not_is_told() -> None:
    checks = (
        answer(Verdict.PASS, 0.5), answer(Verdict.FAIL, 1.2, remedy="one ply more"),
        answer(Verdict.PROVISIONAL, None, unverified="the wall is not known"),
    )  # fmt: skip
    lines = "\n".join(checks_text(checks, ()))

    assert "0.50     passes: structure.trial, U-T1\n" in lines
    assert "FAILS: structure.trial, U-T1. the trimmer bears 1 N. one ply more" in lines
    assert "not verified: structure.trial, U-T1. the trimmer bears 1 N. the wall is not known" in lines
    assert "NOT CHECKED" not in lines


def test_families_that_were_not_checked_are_named() -> None:
    assert "NOT CHECKED" in "\n".join(checks_text((), FAMILIES))


def test_steps_stand_in_order_with_what_they_did() -> None:
    step = Strengthened(check="structure.trial", subject="U-T1", done="a ply more", before_ratio=1.2, after_ratio=0.7)
    lines = list(strengthening_text(Strengthening(laid_out=CONTENT, steps=(step,), settled=CONTENT)))

    assert "1        a ply more: structure.trial, U-T1, 1.20 to 0.70" in lines
    assert [] == list(strengthening_text(Strengthening(laid_out=CONTENT, steps=(), settled=CONTENT)))
