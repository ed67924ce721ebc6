from __future__ import annotations

from typing import Any

import pytest

from service.labour import make_site, needs_electrician
from service.labour.tasks import WALL_FACTORS, task_inputs
from service.rules import load_rules
from service.survey.wall import WallConstruction
from tests.bill.bill_facts import SKIMMED, TAPED, one_sided
from tests.examples_of import changed, frame_of, job_of
from tests.sold_examples import sell, sold
from tests.variant_requests import in_a_corner, niche, with_access, with_beam


def inputs(request: dict[str, Any]) -> dict[str, tuple[float, float]]:
    at = sell(request)
    site = make_site(at.frame, at.plan, at.bill, job=at.job, rules=load_rules(), scope=at.deal.scope)
    return {f"{row.task} {row.name}": (round(float(row.quantity), 3), row.factor) for row in task_inputs(site)}


@pytest.mark.parametrize(
    ("changes", "name", "expected"),
    [
        ({"/survey/site/storey": 2}, "L01 flight", (2, 1)),
        ({"/survey/site/parking_distance_mm": 45_000}, "L01 ten_m_beyond_20_m", (2.5, 1)),
        ({"/survey/wall/construction": "unknown"}, "L02 job_on_lath_and_plaster_or_unknown", (1, 1)),
        ({"/survey/wall/construction": "unknown"}, "L08 wall_fixing", (20, 1.3)),
        ({"/survey/wall/construction": "aerated_block"}, "L08 wall_fixing", (20, 1.2)),
        ({"/survey/wall/plumb_mm": -12}, "L13 m_wall_edge", (4.05, 1.5)),
        ({"/survey/wall/plumb_mm": -10}, "L13 m_wall_edge", (4.05, 1)),
        ({"/survey/brief/appliance/model": "AF-303", "/survey/brief/platform_height_mm": 250}, "L18 job_over_45_kg", (1, 1)),
        ({"/survey/services/supply_wanted": "new_circuit"}, "L09 new_circuit", (1, 1)),
        ({"/survey/services/supply_wanted": "new_circuit"}, "L19 new_circuit", (1, 1)),
        ({}, "L09 fused_connection", (1, 1)),
        ({}, "L24 lift", (2, 1)),
    ],
)
def test_inputs_that_a_survey_moves(changes: dict[str, object], name: str, expected: tuple[float, float]) -> None:
    """`knowledge/labour.md`, section 1: formulas and the wall factors of L08."""
    assert expected == inputs(changed(sold("A"), changes))[name]


@pytest.mark.parametrize(
    "name",
    [
        "L01 flight",
        "L01 ten_m_beyond_20_m",
        "L02 job_on_lath_and_plaster_or_unknown",
        "L06 job_with_fall_over_15_mm",
        "L18 job_over_45_kg",
    ],
)
def test_extras_stay_out_of_a_plain_job(name: str) -> None:
    assert name not in inputs(sold("A"))


def test_a_fall_over_fifteen_costs_an_hour_more() -> None:
    levels = {"/survey/floor/levels": [], "/survey/floor/fall_mm": 16}

    assert (1, 1) == inputs(changed(sold("C"), levels))["L06 job_with_fall_over_15_mm"]


def test_in_a_corner_old_skirting_comes_off_both_walls_and_the_side_wall_is_drilled() -> None:
    """W 1355 and D 300 are stripped; 4 fixings, into soft block at 1.2 (`knowledge/labour.md`, section 1)."""
    at = sell(in_a_corner(survey__wall__side_construction="aerated_block"))
    site = make_site(at.frame, at.plan, at.bill, job=at.job, rules=load_rules(), scope=at.deal.scope)
    found = task_inputs(site)

    assert [1.655] == [row.quantity for row in found if row.name == "m_stripped"]
    assert (4, 1.2) in [(row.quantity, row.factor) for row in found if row.name == "wall_fixing"]


def test_noggins_between_joists_are_fitted_one_by_one() -> None:
    request = changed(sold("B"), {"/survey/ceiling/noggins": "to_be_fitted"})
    count = frame_of(request).joist_noggin_count

    assert count > 0
    assert (count, 1) == inputs(request)["L08 noggin_between_joists"]
    assert "L08 noggin_between_joists" not in inputs(sold("B"))


def test_how_the_upper_frame_is_raised() -> None:
    """`knowledge/labour.md`, section 1, L07: 3.0, 4.0 with an open end, 2.0 part height; x 1.5 if built in place."""
    closed = changed(one_sided("AF-104"), {"/survey/brief/top": {"kind": "ceiling"}})
    tight = changed(closed, {"/survey/brief/platform_height_mm": 0, "/survey/brief/breast_depth_mm": 500})

    assert (1, 1) == inputs(closed)["L07 job_full_height_all_ends_closed"]
    assert (1, 1.5) == inputs(tight)["L07 job_full_height_all_ends_closed"]
    assert (1, 1) == inputs(sold("A"))["L07 job_full_height_with_open_end"]
    assert (1, 1) == inputs(sold("C"))["L07 job_part_height"]


def test_a_fire_on_the_floor_has_no_base_to_level() -> None:
    assert "L06 job" not in inputs(sold("C0"))
    assert (1, 1) == inputs(sold("C"))["L06 job"]


def test_a_pad_is_levelled_too() -> None:
    pad = changed(sold("C"), {"/survey/brief/platform_height_mm": 18})

    assert (1, 1) == inputs(pad)["L06 job"]
    assert "L06 station" not in inputs(pad)


def test_a_grille_is_an_opening() -> None:
    assert (1 + 1, 1) == inputs(one_sided("AF-105"))["L12 socket_grille_or_hatch"]


@pytest.mark.parametrize(
    ("code", "name"), [("BD-2218L", "mdf"), ("BD-2312N", "cement_or_silicate"), ("BD-2412X", "cement_or_silicate")]
)
def test_rates_of_other_boards(code: str, name: str) -> None:
    """`knowledge/labour.md`, section 1, L10: MDF, plasterboard, cement or silicate; plywood is worked like MDF."""
    found = inputs(changed(sold("C"), {"/survey/brief/board": {"kind": "catalogue", "code": code}}))

    assert f"L10 {name}_m2" in found
    assert f"L10 {name}_screw" in found


def test_finishes_ask_different_trades() -> None:
    """`knowledge/labour.md`, section 1, L14a, L14b, L16."""
    painted, skimmed, taped = (inputs(changed(sold("C"), changes)) for changes in ({}, SKIMMED, TAPED))

    assert not {"L14b job", "L14b m_bead", "L14b m_scrim", "L14b m2"} & painted.keys()
    assert {"L14b job", "L14b m_bead", "L14b m_scrim", "L14b m2"} <= skimmed.keys()
    assert {"L14b m2"} == skimmed.keys() - taped.keys() - {"L16 m2_mist_coat"}
    assert 2.324 == taped["L14b m_bead"][0]
    assert "L14a m_joint" in set(taped) - set(skimmed)
    assert [(3, 1), (3, 1), (4, 1)] == [found["L16 coat"] for found in (painted, taped, skimmed)]


def test_every_wall_has_its_factor() -> None:
    assert set(WallConstruction) == WALL_FACTORS.keys()


@pytest.mark.parametrize(("name", "needed"), [("A", True), ("B", True), ("C", False)])
def test_who_needs_an_electrician(name: str, needed: bool) -> None:
    """`knowledge/worked-examples.md`, prices A, B, C."""
    assert needed == needs_electrician(job_of(sold(name)), frame_of(sold(name)))


def test_without_skirting_there_is_none_to_strip_or_return() -> None:
    assert not {"L03 job", "L17 m"} & inputs(changed(sold("C"), {"/survey/floor/skirting_height_mm": 0})).keys()
    assert {"L03 job", "L17 m"} <= inputs(sold("C")).keys()


def test_a_skimmed_face_without_recess_or_lid_leaves_nothing_to_fill() -> None:
    request = changed(one_sided("AF-104"), {**SKIMMED, "/survey/brief/top": {"kind": "ceiling"}})

    assert "L14a job" not in inputs(request)
    assert (3, 1) == inputs(request)["L16 coat"]  # mist and two


def test_a_niche_and_a_removable_panel() -> None:
    """`knowledge/labour.md`, section 1, L22: niche 1.25, removable panel 0.75, beam 1.5."""
    assert (1, 1) == inputs(niche())["L22 niche"]
    assert (1, 1) == inputs(with_access())["L22 removable_panel"]
    assert (1, 1) == inputs(with_beam())["L22 beam"]
    assert not [name for name in inputs(sold("A")) if name.startswith("L22")]
