"""Time of the whole quote, stage by stage, as shares of one run: `uv run poe bench`.

Figures are ratios within one run on one machine; nothing here fails on a slow one.
"""

from __future__ import annotations

import statistics
import time
from typing import TYPE_CHECKING

import msgspec
import pytest

from service.bill import Market, take_off
from service.brief import resolve
from service.catalogue import demo_catalogue
from service.checks import settle
from service.cutting import Yard, cut_frame
from service.frame import lay_out
from service.hardware import choose_hardware
from service.labour import estimate, make_site
from service.price import price
from service.quote import Desk, QuoteDesigned, answer_quote
from service.rules import load_rules
from service.survey import SurveyRequest
from tests import examples_of

if TYPE_CHECKING:
    from collections.abc import Callable

ROUNDS_COUNT = 9
EXAMPLES = {"A": examples_of.example_a, "B": examples_of.example_b, "C": examples_of.example_c}


def _median_ms(work: Callable[[], object]) -> float:
    times = []
    for _round in range(ROUNDS_COUNT):
        start = time.perf_counter()
        work()
        times.append((time.perf_counter() - start) * 1000)
    return statistics.median(times)


@pytest.mark.parametrize("name", EXAMPLES)
def test_time_of_each_stage(name: str) -> None:
    rules, catalogue = load_rules(), demo_catalogue()
    body = msgspec.json.encode(EXAMPLES[name]())
    request = msgspec.json.decode(body, type=SurveyRequest)
    job, deal = resolve(request, catalogue, rules, "2026-12-01")
    frame = lay_out(job, rules)
    yard = Yard(catalogue=catalogue, rules=rules)
    plan = cut_frame(frame, job, yard)
    market = Market(catalogue=catalogue, rules=rules)
    hardware = choose_hardware(job, market)
    bill = take_off(frame, plan, job, market, hardware=hardware)
    site = make_site(frame, plan, bill, job=job, rules=rules, scope=deal.scope)
    labour = estimate(site, deal, catalogue)
    desk = Desk(catalogue=catalogue, rules=rules, today="2026-12-01")
    answer = answer_quote(request, desk)
    stages: dict[str, Callable[[], object]] = {
        "decode": lambda: msgspec.json.decode(body, type=SurveyRequest),
        "brief": lambda: resolve(request, catalogue, rules, "2026-12-01"),
        "frame": lambda: lay_out(job, rules),
        "settle": lambda: settle(job, market),
        "cut": lambda: cut_frame(frame, job, yard),
        "bill": lambda: take_off(frame, plan, job, market, hardware=hardware),
        "labour": lambda: estimate(site, deal, catalogue),
        "price": lambda: price(bill, labour, job=job, deal=deal, catalogue=catalogue),
        "encode": lambda: msgspec.json.encode(answer),
    }
    whole = _median_ms(lambda: answer_quote(request, desk))
    print(f"\nexample {name}: whole quote {whole:.1f} ms")
    for stage, work in stages.items():
        took = _median_ms(work)
        print(f"  {stage:8} {took:8.2f} ms  {took / whole:6.1%}")

    assert isinstance(answer, QuoteDesigned)
