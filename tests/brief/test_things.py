"""What a breast is built of: all looked up, or every look-up that failed is named."""

from __future__ import annotations

import msgspec
import pytest

from service.brief import resolve
from service.catalogue import demo_catalogue
from service.errors import Reason, RequestFaultsError
from service.rules import load_rules
from tests.examples_of import DAY, changed, example_a, example_c, faults_of, job_of, request_of, without


def test_house_boards_of_a_job() -> None:
    """Recess linings MDF 15, backboard plywood 18, lid MDF 18 (house choices)."""
    job = job_of(example_a())

    assert ("BD-2015R", "BD-2218L", "BD-2018U") == (job.lining.code, job.backboard.code, job.lid.code)
    assert [120, 150, 180] == [board.thickness_tenth_mm for board in job.pads]


@pytest.mark.parametrize(
    ("lost", "words"), [("BD-2218L", "no plywood 18 for the backboard"), ("BD-2018U", None), ("BD-2312N", None)]
)
def test_a_catalogue_without_a_house_board(lost: str, words: str | None) -> None:
    """MDF 18 has a second sheet in the demo data, plywood 18 has not."""
    catalogue = demo_catalogue()
    less = msgspec.structs.replace(catalogue, materials={code: row for code, row in catalogue.materials.items() if code != lost})
    if words is None:
        assert resolve(request_of(example_a()), less, load_rules(), DAY)
        return

    with pytest.raises(RequestFaultsError, match=words):
        resolve(request_of(example_a()), less, load_rules(), DAY)


@pytest.mark.parametrize(
    ("left_out", "words"),
    [("TM-10", "no stud timber of that section"), ("BD-2015R BD-2031H BD-2045Y", "no MDF 15"), ("BD-2015R", None)],
)
def test_a_catalogue_without_the_houses_timber_or_board(left_out: str, words: str | None) -> None:
    """Nothing named: C16 38 x 63 and MDF 15 are looked for, the smallest sheet of it."""
    catalogue = demo_catalogue()
    kept = {code: row for code, row in catalogue.materials.items() if not code.startswith(tuple(left_out.split()))}
    request = request_of(without(example_c(), "/survey/brief/timber", "/survey/brief/board"))
    less = msgspec.structs.replace(catalogue, materials=kept)
    if words is None:
        assert "BD-2045Y" == resolve(request, less, load_rules(), DAY)[0].board.code
        return

    with pytest.raises(RequestFaultsError, match=words):
        resolve(request, less, load_rules(), DAY)


def test_an_empty_catalogue_names_everything_that_it_lacks() -> None:
    catalogue = msgspec.structs.replace(demo_catalogue(), materials={}, appliances={}, screens={}, brackets={})

    with pytest.raises(RequestFaultsError) as raised:
        resolve(request_of(example_a()), catalogue, load_rules(), DAY)
    assert {Reason.UNKNOWN_MODEL} == {fault.reason for fault in raised.value.faults}
    assert 7 == len(raised.value.faults)  # fire, screen, timber, board, lining, backboard, lid


def test_standing_of_what_was_looked_up() -> None:
    fire = {"kind": "size_class", "open_ends_count": 0, "length_mm": 760}

    assert "size_class" == job_of(changed(example_c(), {"/survey/brief/appliance": fire})).appliance_standing
    assert ("catalogue", "named") == (job_of(example_c()).appliance_standing, job_of(example_c()).screen_standing)


def test_every_failed_look_up_is_named_at_once() -> None:
    lost = {
        "/survey/brief/appliance/model": "AF-0", "/survey/brief/screen/model": "SC-0", "/survey/brief/timber/code": "TM-0",
        "/survey/brief/board/code": "BD-0",
    }  # fmt: skip

    assert set(lost) == {fault.pointer for fault in faults_of(changed(example_a(), lost))}
