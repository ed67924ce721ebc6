from __future__ import annotations

import msgspec

from service.checks import Content, Report, Verdict
from service.quote.check_body import checks_body, strengthening_body
from tests.checks.test_check import made
from tests.sold_examples import made as sold


def test_verdict_and_utilisation_stand_beside_rounded_numbers() -> None:
    (answer,) = checks_body(Report(checks=(made(1234.56789, 1000.0),)))

    assert (Verdict.FAIL, 1.24) == (answer.verdict, answer.utilisation_ratio)
    assert 1234.57 == answer.demand.value
    assert answer.resistance is not None
    assert ("structure.trial", "U-T1", "EN 1990") == (answer.code, answer.subject, answer.clause.document)


def test_what_is_not_known_is_null() -> None:
    (answer,) = checks_body(Report(checks=(made(1.0, None, unverified="the wall is not known"),)))

    assert (None, None, "the wall is not known") == (answer.resistance, answer.utilisation_ratio, answer.unverified)
    assert answer == msgspec.json.decode(msgspec.json.encode(answer), type=type(answer))


def test_strengthening_is_told_from_laid_out_to_settled() -> None:
    settled = sold("A").settled
    body = strengthening_body(settled)

    assert (settled.laid_out, settled.content, settled.steps) == (body.laid_out, body.settled, body.steps)
    assert isinstance(body.settled, Content)
