from __future__ import annotations

import msgspec
import pytest

from service.catalogue import demo_catalogue
from service.errors import Reason, RequestFaultsError, UnbuildableError
from service.quote import Desk, design, make_quote
from service.quote.quote import price_job, take_brief, yard_of
from service.rules import load_rules
from tests.examples_of import DAY, changed, request_of
from tests.sold_examples import desk_of, made, sold

DESK = Desk(catalogue=demo_catalogue(), rules=load_rules(), today=DAY)
WRONG_ROLE = [{"code": "B03", "name": "N. Body", "role": "owner", "on": "2026-11-21", "evidence": "letter"}]


def test_stages_hand_on_what_they_made() -> None:
    at = made("A")

    assert 52 == at.bill.counts.bar_pieces_count == len([member for member in at.frame.members if member.from_bar])
    assert at.plan.bars.bars_count == sum(line.packs_count for line in at.bill.lines if line.code.startswith("TM"))
    assert at.price.materials_minor == sum(
        line.charged_minor for line in at.price.bill_lines if line.code not in {"SD-8050A", "SD-8070X"}
    )


def test_a_quote_is_the_brief_and_what_follows() -> None:
    request = request_of(sold("C"))
    job, deal = take_brief(request, desk_of())

    assert made("C") == price_job(job, deal, request, desk_of())


def test_everything_that_keeps_a_breast_from_being_built_is_told_at_once() -> None:
    """Gas at the wall and a recess too high: one answer."""
    request = request_of(changed(sold("A"), {"/survey/services/gas": "present", "/survey/brief/platform_height_mm": 1_200}))
    with pytest.raises(UnbuildableError) as caught:
        make_quote(request, DESK)

    assert ["refused_b03", "recess_high"] == [unmet.code for unmet in caught.value.unmet]


def test_a_refusal_alone_is_enough() -> None:
    job, _deal = take_brief(request_of(changed(sold("A"), {"/survey/services/gas": "present"})), DESK)
    with pytest.raises(UnbuildableError) as caught:
        design(job, DESK)

    assert ["refused_b03"] == [unmet.code for unmet in caught.value.unmet]


def test_faults_of_brief_and_cleared_cautions_come_together() -> None:
    values = {"/survey/cleared": WRONG_ROLE, "/survey/brief/screen/model": "SC-999"}
    with pytest.raises(RequestFaultsError) as caught:
        take_brief(request_of(changed(sold("A"), values)), DESK)

    assert {"/survey/brief/screen/model", "/survey/cleared/0/role"} == {fault.pointer for fault in caught.value.faults}


def test_a_caution_cleared_by_the_wrong_person_is_a_fault() -> None:
    with pytest.raises(RequestFaultsError) as caught:
        take_brief(request_of(changed(sold("A"), {"/survey/cleared": WRONG_ROLE})), DESK)

    assert [Reason.NOT_ALLOWED] == [fault.reason for fault in caught.value.faults]


def test_a_fire_for_fixed_wiring_has_no_plug() -> None:
    """`knowledge/survey.md`, section 2: two fields that cannot both be true."""
    with pytest.raises(RequestFaultsError) as caught:
        take_brief(request_of(changed(sold("A"), {"/survey/services/supply_wanted": "plug_in_reach"})), DESK)
    (fault,) = caught.value.faults

    assert Reason.CONTRADICTION is fault.reason
    assert ("/survey/services/supply_wanted", ("/survey/brief/appliance",)) == (fault.pointer, fault.related)


@pytest.mark.parametrize(("options", "kerf_mm"), [(None, None), ({}, None), ({"kerf_mm": 2.5}, 2.5)])
def test_the_saw_comes_from_the_options(options: dict[str, float] | None, kerf_mm: float | None) -> None:
    assert kerf_mm == yard_of(request_of({**sold("C"), "options": options}), DESK).kerf_mm


def test_a_narrower_saw_never_costs_more() -> None:
    narrow = make_quote(request_of({**sold("A"), "options": {"kerf_mm": 0}}), desk_of())

    assert narrow.plan.bars.cost_minor <= made("A").plan.bars.cost_minor
    assert msgspec.structs.replace(narrow.plan, bars=made("A").plan.bars).boards == made("A").plan.boards
