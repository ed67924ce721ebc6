from __future__ import annotations

import msgspec

from service.catalogue import demo_catalogue
from service.cutting import GREEDY
from service.offers import ShortlistRequest
from service.offers.shortlist_pairs import MOST_TRIES_COUNT, Room, pairs_of, request_of
from service.quote import Desk, design, take_brief
from service.rules import NEWEST_EDITION, load_rules

CATALOGUE = demo_catalogue()
DESK = Desk(catalogue=CATALOGUE, rules=load_rules(NEWEST_EDITION), today="2026-12-01", effort=GREEDY)
SCREENS = tuple(sorted(CATALOGUE.screens.values(), key=lambda one: one.diagonal_in))


def room(**asked: object) -> Room:
    return Room(msgspec.convert(asked, ShortlistRequest), None, DESK)


def test_each_screen_has_a_design_or_a_reason() -> None:
    found = pairs_of(CATALOGUE.appliances["AF-302"], SCREENS, room(room_height_mm=2400))

    assert list(SCREENS) == [one.screen for one in found]
    assert all((one.made is None) == bool(one.unmet or one.failing or one.fault) for one in found)
    assert {True, False} == {one.made is None for one in found}


def test_what_begins_with_the_strengthening_of_a_smaller_screen_passes_its_checks() -> None:
    for one in pairs_of(CATALOGUE.appliances["AF-103"], SCREENS[:4], room(room_height_mm=2400)):
        assert one.made
        assert not one.made.settled.report.failing


def test_a_low_room_gets_a_change_that_works() -> None:
    tall = room(room_height_mm=2100, platform_height_mm=600)
    changed = [one for one in pairs_of(CATALOGUE.appliances["AF-103"], SCREENS, tall) if one.change]

    assert changed
    for one in changed:
        assert one.change
        told = {operation.path.rpartition("/")[2]: operation.value for operation in one.change.operations}
        asked = msgspec.convert({"room_height_mm": 2100, "platform_height_mm": 600, **told}, ShortlistRequest)
        job, _deal = take_brief(request_of(one.appliance, one.screen, tall._replace(asked=asked)), DESK)
        assert not design(job, DESK).report.failing


def test_few_changes_are_tried() -> None:
    assert MOST_TRIES_COUNT < len(SCREENS)
