from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.catalogue import demo_catalogue, to_minor
from service.cutting import QUICK
from service.errors import RequestFaultsError
from service.offers import answer_quote, patched
from service.quote import Desk, Operation, QuoteDesigned, Unbuildable, VariantAnswer, make_quote
from service.rules import NEWEST_EDITION, load_rules
from service.survey import SurveyRequest
from service.workers import example_survey

DESK = Desk(catalogue=demo_catalogue(), rules=load_rules(NEWEST_EDITION), today="2026-12-01", effort=QUICK)
PATCHES: dict[str, list[tuple[str, Any]]] = {
    "taped": [("board", {"kind": "catalogue", "code": "BD-2126L"}), ("finish", "taped")],
    "smaller screen": [("screen", {"kind": "size_class", "diagonal_in": 40}), ("screen_bracket", None)],
    "without the recess": [("screen", None), ("screen_bracket", None)],
    "other timber": [],
}


def timber_code() -> str:
    """A graded timber of the catalogue that is deeper than the house's."""
    rows = [row for row in demo_catalogue().materials.values() if row.kind == "timber" and row.strength_class]
    return min((row.width_mm, row.code) for row in rows if row.width_mm and row.width_mm > 63)[1]


def variant(name: str) -> dict[str, Any]:
    patch = PATCHES[name] if name != "other timber" else [("timber", {"kind": "catalogue", "code": timber_code()})]
    return {"name": name, "patch": [{"op": "add", "path": f"/survey/brief/{member}", "value": value} for member, value in patch]}


def request(*variants: dict[str, Any]) -> SurveyRequest:
    return msgspec.convert(example_survey() | {"options": {"variants": list(variants)}}, SurveyRequest)


def quote(*variants: dict[str, Any]) -> QuoteDesigned:
    answer = answer_quote(request(*variants), DESK)
    assert isinstance(answer, QuoteDesigned)
    return answer


def total_alone(name: str) -> int:
    """Total of the variant when it is asked for as a quote of its own."""
    plain = msgspec.convert(example_survey(), SurveyRequest)
    steps = [Operation(path=step["path"], value=step["value"]) for step in variant(name)["patch"]]
    return make_quote(patched(plain, steps), DESK).price.total_minor


@pytest.mark.parametrize("name", PATCHES)
def test_a_variant_costs_what_it_costs_alone(name: str) -> None:
    answer = quote(variant(name))
    found = answer.variants[0]

    assert found.total
    assert found.difference
    assert total_alone(name) == to_minor(found.total.amount, "GBP")
    own = to_minor(answer.price.total.amount, "GBP")
    assert total_alone(name) - own == to_minor(found.difference.amount, "GBP")
    assert total_alone(name) != own


def test_variants_come_in_their_order_and_leave_the_quote_as_it_is() -> None:
    names = ["without the recess", "taped"]
    answer, bare = quote(*(variant(name) for name in names)), quote()

    assert names == [one.name for one in answer.variants]
    assert (bare.price, bare.bill, bare.frame) == (answer.price, answer.bill, answer.frame)
    assert bare.origin.request_digest != answer.origin.request_digest


def test_the_order_of_steps_is_kept_in_the_request_that_comes_back() -> None:
    sent = variant("taped")
    back = quote(sent).request

    assert back.options
    assert back.options.variants
    assert [step["path"] for step in sent["patch"]] == [step.path for step in back.options.variants[0].patch]


def test_a_variant_that_cannot_be_built_says_why() -> None:
    wide = {"name": "wide", "patch": [{"path": "/survey/brief/screen", "value": {"kind": "catalogue", "model": "SC-085"}},
                                      {"path": "/survey/brief/screen_bracket", "value": None}]}  # fmt: skip
    found = quote(wide).variants[0]

    assert ("unbuildable", None, None) == (found.outcome, found.total, found.difference)
    assert found.unmet


def test_faults_of_all_variants_come_at_once() -> None:
    wrong = [("/survey/brief/finish", "glossy"), ("/survey/brief/finish/x", 1), ("/survey/room/heights/x", 1)]
    unknown = ("/survey/brief/appliance", {"kind": "catalogue", "model": "AF-999"})
    bodies = [{"name": "x", "patch": [{"path": path, "value": value}]} for path, value in (*wrong, unknown)]
    with pytest.raises(RequestFaultsError) as caught:
        answer_quote(request(*bodies), DESK)

    expected = [f"/options/variants/{place}/patch" for place in range(4)]
    assert expected == [fault.pointer for fault in caught.value.faults]
    assert "/survey/brief/appliance/model" in caught.value.faults[3].detail


def test_a_quote_that_cannot_be_built_has_alternatives_and_no_variants() -> None:
    body = example_survey()
    for point in body["survey"]["room"]["heights"]:
        point["height_mm"] = 1_900
    answer = answer_quote(msgspec.convert(body | {"options": {"variants": [variant("taped")]}}, SurveyRequest), DESK)

    assert isinstance(answer, Unbuildable)


def test_a_variant_is_written_as_every_answer_is() -> None:
    found = quote(variant("without the recess")).variants[0]

    assert found == msgspec.json.decode(msgspec.json.encode(found), type=VariantAnswer)
    assert found.screen_diagonal_in is None
    assert found.on_site_days
