from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.errors import RequestFaultsError, UnbuildableError
from service.offers import answer_quote
from service.offers.alternatives import MOST_COUNT, OF_THE_BASE, Search, find_alternatives
from service.quote import Desk, QuoteDesigned, Unbuildable, design, take_brief
from tests.examples_of import changed, example_a, example_b, example_c, request_of
from tests.sold_examples import desk_of
from tests.strategies import requests

if TYPE_CHECKING:
    from service.errors import Unmet
    from service.survey import SurveyRequest

B = "/survey/brief"
DESK: Desk = desk_of()
# A request, and families of which at least one must lead out (framing.md, section 13, column "offer").
CASES: dict[str, tuple[dict[str, Any], set[str]]] = {
    "too shallow for the fire": (changed(example_a(), {f"{B}/breast_depth_mm": 250}), {"depth"}),
    "screen too wide": (
        changed(example_b(), {f"{B}/screen": {"kind": "catalogue", "model": "SC-085"}}), {"screen", "width", "no_screen"},
    ),
    "too narrow for the fire": (changed(example_c(), {f"{B}/breast_width_mm": 800}), {"width"}),
    "a finish that the board does not take": (
        changed(example_c(), {f"{B}/finish": "taped", f"{B}/board": {"kind": "catalogue", "code": "BD-2015R"}}), {"finish"},
    ),
    "a platform too high for the recess": (changed(example_a(), {f"{B}/platform_height_mm": 1200}), {"platform", "screen"}),
    "two things at once": (
        changed(example_a(), {f"{B}/breast_depth_mm": 250, f"{B}/sill_above_appliance_mm": 20}), {"depth+sill"},
    ),
}  # fmt: skip


def searched(request: SurveyRequest) -> Search:
    job, _deal = take_brief(request, DESK)
    return find_alternatives(request, job, unmet_of(request), DESK)


def unmet_of(request: SurveyRequest) -> tuple[Unmet, ...]:
    job, _deal = take_brief(request, DESK)
    try:
        design(job, DESK)
    except UnbuildableError as error:
        return error.unmet
    return ()


@pytest.mark.parametrize("name", CASES)
def test_there_is_a_way_out(name: str) -> None:
    data, families = CASES[name]
    request = request_of(data)
    found = searched(request).found

    assert unmet_of(request)
    assert families & {one.code for one in found}
    assert 1 <= len(found) <= MOST_COUNT
    assert len({one.code for one in found}) == len(found)


@pytest.mark.parametrize("name", CASES)
def test_each_patch_applied_to_the_body_as_sent_gives_its_design(name: str) -> None:
    """The patch is applied here by RFC 6902 as read: `add` on an object sets the member."""
    body = CASES[name][0]
    answer = answer_quote(request_of(body), DESK)
    assert isinstance(answer, Unbuildable)
    assert answer.alternatives
    for one in answer.alternatives:
        again: dict[str, Any] = json.loads(json.dumps(body))
        for operation in one.patch:
            *parents, last = operation.path.strip("/").split("/")
            holder = again
            for parent in parents:
                holder = holder.setdefault(parent, {})
            holder[last] = msgspec.to_builtins(operation.value)
        quote = answer_quote(request_of(again), DESK)

        assert isinstance(quote, QuoteDesigned)
        assert (one.total, one.standing) == (quote.price.total, quote.standing)
        assert one.finished_width_mm == quote.frame.sizes.finished_width_mm


def test_the_largest_screen_comes_first() -> None:
    """Of the catalogue's screens that are smaller than 85 in, the next smaller ones do not fit 1650 either."""
    found = next(one for one in searched(request_of(CASES["screen too wide"][0])).found if one.code == "screen")

    assert "SC-060" in found.says


def test_what_must_be_cleared_first_has_no_alternative_and_says_so() -> None:
    request = request_of(changed(example_c(), {"/survey/chimney": {"flue": "in_use"}}))
    answer = answer_quote(request, DESK)

    assert isinstance(answer, Unbuildable)
    assert () == answer.alternatives
    assert "live flue" in answer.no_alternative


def test_prices_do_not_order_alternatives() -> None:
    request = request_of(CASES["screen too wide"][0])
    free = msgspec.structs.replace(DESK, catalogue=msgspec.structs.replace(DESK.catalogue, prices={}))
    job, _deal = take_brief(request, free)

    assert searched(request) == find_alternatives(request, job, unmet_of(request), free)


SPOILT: dict[str, st.SearchStrategy[Any]] = {
    "breast_depth_mm": st.integers(120, 380),
    "breast_width_mm": st.integers(500, 1500),
    "platform_height_mm": st.sampled_from([10, 20, 35, 600, 900, 1200]),
    "sill_above_appliance_mm": st.integers(10, 1200),
    "screen": st.sampled_from([{"kind": "size_class", "diagonal_in": size} for size in (65, 75, 85, 98)]),
    "top": st.sampled_from([{"kind": "part_height", "height_mm": height} for height in (700, 1000, 1300, 2300)]),
    "appliance_shift_mm": st.integers(-600, 600),
    "finish": st.sampled_from(["painted", "taped", "skimmed", "tiled"]),
}


@st.composite
def spoilt_requests(draw: st.DrawFn) -> dict[str, Any]:
    """A request that a person could measure, with one to three wishes that need not fit."""
    request = draw(requests())
    names = draw(st.lists(st.sampled_from(sorted(SPOILT)), min_size=1, max_size=3, unique=True))
    return changed(request, {f"{B}/{name}": draw(SPOILT[name]) for name in names})


@given(data=spoilt_requests())
@settings(max_examples=60)
def test_every_refusal_has_a_way_out_or_says_why_not(data: dict[str, Any]) -> None:
    request = request_of(data)
    try:
        unmet = unmet_of(request)
    except RequestFaultsError:
        return
    if not unmet:
        return
    search = searched(request)

    assert bool(search.found) != bool(search.none_because)
    for one in search.found:
        assert () == unmet_of(one.request)


def test_once_the_base_stands_no_alternative_changes_it() -> None:
    """Example A over a ceiling that leaves 900 where its recess wants 973 and 20 (`tests/quote/test_recut.py`)."""
    points = example_a()["survey"]["room"]["heights"]
    low = changed(example_a(), {"/survey/room/heights": [{**point, "height_mm": 1900} for point in points]})
    answer = answer_quote(request_of(changed(low, {"/survey/measured": {"appliance_top_to_ceiling_mm": [950]}})), DESK)

    assert isinstance(answer, Unbuildable)
    assert answer.alternatives
    assert not {
        operation.path for one in answer.alternatives for operation in one.patch if operation.path.startswith(OF_THE_BASE)
    }
    assert {"platform"}.isdisjoint(one.code for one in answer.alternatives)
