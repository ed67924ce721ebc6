from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.quote.origin import ENGINE_VERSION, normalise, origin_of, tidy
from service.rules import NEWEST_EDITION
from service.survey import SurveyRequest
from tests.examples_of import DAY, changed, job_of, request_of
from tests.sold_examples import sold

CATALOGUE = demo_catalogue()
EDITION = NEWEST_EDITION
VENTS = [{"x_mm": 900, "z_mm": 200, "serves": "room"}, {"x_mm": 600, "z_mm": 200, "serves": "floor"}]


def digest(request: dict[str, Any], today: str = DAY) -> str:
    sent = request_of(request)
    return origin_of(normalise(sent, CATALOGUE, today, EDITION), job_of(request), CATALOGUE).request_digest


def test_day_and_revision_are_written_in() -> None:
    undated = changed(sold("A"), {"/terms/date": None})
    terms = normalise(request_of(undated), CATALOGUE, DAY, EDITION).terms

    assert terms is not None
    assert (DAY, CATALOGUE.revision) == (terms.date, terms.catalogue_revision)


def test_the_rule_set_is_written_in() -> None:
    """The design card, section 2: a quote is made again from its normalised request, whatever the newest rules are then."""
    options = normalise(request_of(sold("A")), CATALOGUE, DAY, "gb-2026.1").options

    assert options is not None
    assert "gb-2026.1" == options.rule_set


def test_a_request_without_terms_is_dated_too() -> None:
    terms = normalise(request_of({"survey": sold("A")["survey"]}), CATALOGUE, DAY, EDITION).terms

    assert terms is not None
    assert DAY == terms.date


def test_a_normal_request_stays_as_it_is() -> None:
    normal = normalise(request_of(sold("A")), CATALOGUE, DAY, EDITION)

    assert normal == normalise(normal, CATALOGUE, "2027-05-05", EDITION)
    assert normal == msgspec.json.decode(msgspec.json.encode(normal), type=SurveyRequest)


@pytest.mark.parametrize(
    "values",
    [
        {"/survey/services/air_vents": VENTS[::-1]},
        {"/survey/ceiling/joist_positions_mm": [2550, 1350, 2150, 1750]},
        {"/survey/ceiling/joist_positions_mm": [1350.0, 1750, 2150, 2550]},
        {"/options": {}},
        {"/options": None},
        {"/survey/cleared": []},
        {"/survey/measured": None},
    ],
)
def test_the_same_thing_written_in_another_way_has_the_same_digest(values: dict[str, Any]) -> None:
    plain = changed(sold("A"), {"/survey/services/air_vents": VENTS})

    assert digest(plain) == digest(changed(plain, values))


def test_an_empty_section_is_none() -> None:
    bare = {"survey": {"brief": sold("A")["survey"]["brief"]}}
    empty = {"survey": {**bare["survey"], "wall": {}, "room": {}, "provenance": {}}}

    assert digest(bare) == digest(empty)


@pytest.mark.parametrize(
    "values",
    [
        {"/survey/room/wall_length_mm": 3_901},
        {"/survey/services/accessories": None},  # not told is not the same as none
        {"/terms/reference": "Q-1043"},
        {"/terms/date": "2026-12-02"},
        {"/options": {"kerf_mm": 3}},
        {"/survey/provenance": {"/survey": "stated"}},
    ],
)
def test_another_request_has_another_digest(values: dict[str, Any]) -> None:
    assert digest(sold("A")) != digest(changed(sold("A"), values))


def test_lists_whose_order_means_something_keep_it() -> None:
    route = [{"kind": "stair", "width_mm": 800}, {"kind": "door", "width_mm": 760}]
    sums = [{"name": name, "amount": {"amount": "1.00", "currency": "GBP"}} for name in ("second", "first")]
    extras = [{"kind": "shelf"}, {"kind": "beam"}]
    request = tidy(request_of(changed(sold("A"), {
        "/survey/site/route": route, "/terms/provisional_sums": sums, "/survey/brief/extras": extras,
    })))  # fmt: skip

    assert request.terms is not None
    assert ["second", "first"] == [item.name for item in request.terms.provisional_sums or ()]
    assert ["stair", "door"] == [part.kind for part in (request.survey.site.route if request.survey.site else None) or ()]
    assert ["shelf", "beam"] == [extra.kind for extra in request.survey.brief.extras or ()]


def test_the_engine_names_its_solvers() -> None:
    assert [part.split(" ")[0] for part in ENGINE_VERSION.split("; ")] == ["inglewright", "packingsolver", "highspy"]


def test_an_origin_names_all_that_an_answer_depends_on() -> None:
    origin = origin_of(normalise(request_of(sold("A")), CATALOGUE, DAY, EDITION), job_of(sold("A")), CATALOGUE)

    assert (CATALOGUE.revision, "trade-2026.1", ENGINE_VERSION, DAY) == (
        origin.catalogue_revision, origin.rule_set, origin.engine_version, origin.date,
    )  # fmt: skip
    assert 64 == len(origin.request_digest)
