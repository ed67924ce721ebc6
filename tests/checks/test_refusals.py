from __future__ import annotations

from typing import Any

import pytest

from service.checks import refusals_of
from tests.checks.row_cases import A, C, on
from tests.examples_of import job_of

VENT = [{"x_mm": 2_000, "z_mm": 200, "serves": "appliance"}]
SHARED = {"survey__chimney__flue": "blocked_and_vented", "survey__chimney__flue_shared": "yes"}
FLAT = {"survey__chimney__flue": "open", "survey__chimney__flue_shared": "unknown", "survey__site__building": "flat"}


def clear(code: str, role: str) -> list[dict[str, str]]:
    return [{"code": code, "name": "N. Body", "role": role, "on": "2026-11-21", "evidence": "certificate"}]


def refused(request: dict[str, Any]) -> list[str]:
    return [one.code for one in refusals_of(job_of(request))]


@pytest.mark.parametrize("name", ["A", "C"])
def test_a_plain_job_is_not_refused(name: str) -> None:
    assert [] == refused({"A": A, "C": C}[name])


@pytest.mark.parametrize(
    ("changes", "code", "role"),
    [
        ({"survey__services__gas": "present"}, "B03", "gas_engineer"),
        ({"survey__wall__damp": "showing"}, "B05", "surveyor"),
        ({"survey__services__air_vents": VENT}, "B04", "gas_engineer"),
        (SHARED, "B17", "owner"),
        (FLAT, "B17", "surveyor"),
    ],
)
def test_what_the_trade_refuses_until_it_is_cleared(changes: dict[str, Any], code: str, role: str) -> None:
    """`knowledge/services.md`, section 7; `knowledge/cautions.md`, B03, B04, B05, B17: an answer with an offer."""
    request = on(A, **changes)
    (unmet,) = refusals_of(job_of(request))

    assert f"refused_{code.lower()}" == unmet.code
    assert code in unmet.offer
    assert (0.0, 0.0, 0.0) == (unmet.asked_mm, unmet.available_mm, unmet.short_by_mm)
    assert [] == refused(on(request, survey__cleared=clear(code, role)))


@pytest.mark.parametrize(("code", "role"), [("B03", "surveyor"), ("B05", "owner"), ("B04", "owner")])
def test_the_wrong_person_clears_nothing(code: str, role: str) -> None:
    changes: dict[str, dict[str, Any]] = {
        "B03": {"survey__services__gas": "present"},
        "B05": {"survey__wall__damp": "showing"},
        "B04": {"survey__services__air_vents": VENT},
    }

    assert [f"refused_{code.lower()}"] == refused(on(A, **changes[code], survey__cleared=clear(code, role)))


def test_a_live_flue_is_never_boxed_in() -> None:
    """B01: nothing clears it."""
    assert ["refused_b01"] == refused(on(A, survey__chimney__flue="in_use"))


@pytest.mark.parametrize(
    "changes",
    [
        {"survey__services__gas": "unknown"},  # from not knowing comes a caution, no refusal
        {"survey__services__gas": "capped_off"},
        {"survey__wall__damp": "suspected"},
        {"survey__services__air_vents": [{"x_mm": 700, "z_mm": 200, "serves": "appliance"}]},  # beside the breast
        {"survey__services__air_vents": [{"x_mm": 2_000, "z_mm": 200, "serves": "unknown"}]},
        {"survey__chimney__flue": "unknown"},
        {"survey__chimney__flue": "unknown", "survey__chimney__flue_shared": "unknown", "survey__site__building": "flat"},
        {"survey__chimney__flue": "open", "survey__chimney__flue_shared": "unknown"},  # a house of its own
        {"survey__chimney__flue": "open", "survey__site__building": "flat"},  # not asked: a caution
        {"survey__chimney__flue": "none", "survey__chimney__flue_shared": "yes"},
    ],
)
def test_what_is_not_refused(changes: dict[str, Any]) -> None:
    """`knowledge/cautions.md`, section 0: not_verified never stops design."""
    assert [] == refused(on(A, **changes))


def test_everything_refused_is_told_at_once() -> None:
    request = on(A, survey__services__gas="present", survey__services__air_vents=VENT, survey__wall__damp="showing", **SHARED)

    assert ["refused_b17", "refused_b03", "refused_b04", "refused_b05"] == refused(request)


@pytest.mark.parametrize(
    ("code", "finish", "fits"),
    [
        ("BD-2015R", "painted", True),
        ("BD-2015R", "skimmed", False),
        ("BD-2015R", "taped", False),
        ("BD-2218L", "painted", True),
        ("BD-2125K", "painted", False),
        ("BD-2125K", "skimmed", True),
        ("BD-2126L", "taped", True),
        ("BD-2412X", "painted", True),
        ("BD-2412X", "skimmed", True),
        ("BD-2412X", "taped", False),
    ],
)
def test_finishes_and_the_boards_that_take_them(code: str, finish: str, fits: bool) -> None:
    """`knowledge/cladding.md`, section 5: A painted board, B taped plasterboard, C skimmed."""
    request = on(C, survey__brief__board={"kind": "catalogue", "code": code}, survey__brief__finish=finish)

    assert ([] if fits else ["refused_finish"]) == refused(request)


def test_a_finish_that_does_not_go_is_offered_one_that_does() -> None:
    request = on(C, survey__brief__board={"kind": "catalogue", "code": "BD-2125K"}, survey__brief__finish="painted")
    (unmet,) = refusals_of(job_of(request))

    assert "finish taped or skimmed, or a board of another kind" == unmet.offer


@pytest.mark.parametrize(
    ("wall", "expected"),
    [
        ({"survey__wall__construction": "steel_stud", "survey__wall__stud_positions_mm": [1500, 1900, 2300]}, ["refused_s04"]),
        ({"survey__wall__construction": "timber_stud", "survey__wall__stud_positions_mm": [200]}, ["refused_arm"]),
        ({"survey__wall__construction": "timber_stud", "survey__wall__stud_positions_mm": [1500, 1900, 2300]}, []),
        ({"survey__wall__construction": "timber_stud"}, []),
        ({}, []),
    ],
)
def test_an_arm_in_front_of_plasterboard_alone_is_refused(wall: dict[str, Any], expected: list[str]) -> None:
    """`knowledge/fixings.md`, 2.1 and 2.5: never a number of plugs; studs that were not found are left to the checks."""
    arm = on(A, survey__brief__screen_bracket={"kind": "catalogue", "model": "BK-605"})

    assert expected == refused(on(arm, **wall))
