from __future__ import annotations

import msgspec

from service.catalogue import demo_catalogue
from service.workers import SurveyTask, encode_task, sample_requests
from service.workers.jobs import make_quote

DAY = "2026-12-01"


def test_every_sample_is_a_quote_with_the_demo() -> None:
    for name, request in sample_requests(DAY):
        task = SurveyTask(request=request, today=DAY, search_seconds=10)
        quote = msgspec.json.decode(make_quote(encode_task(task), demo_catalogue()))

        assert ("designed", True) == (quote["outcome"], quote["price"]["complete"])
        assert request.terms is not None
        assert (name, DAY) == (request.terms.scope, request.terms.date)


def test_samples_are_sold_in_different_ways() -> None:
    assert ["supply_and_fit", "supply_only", "kit"] == [name for name, _ in sample_requests(DAY)]
