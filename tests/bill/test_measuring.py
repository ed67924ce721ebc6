from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec
import pytest

from service.bill.measuring import measure, panel_area_m2
from service.rules import load_rules
from tests.bill.bill_facts import SKIMMED, TAPED, one_sided
from tests.examples_of import changed, frame_of, job_of
from tests.sold_examples import made, sold
from tests.variant_requests import in_a_corner, niche

if TYPE_CHECKING:
    from service.bill import Measures

RULES = load_rules()
WORKED = {  # knowledge/worked-examples.md: needs of the bills, inputs of the hours, and the area sums under each bill
    "A": {
        "return_edge_m": 4.050, "ceiling_edge_m": 2.227, "face_joint_m": 1.357, "skirting_m": 2.287, "facing_gross_m2": 4.489,
        "cut_edge_m": 7.896, "paint_m2": 4.999, "painted_board_gross_m2": 4.889, "ply_m": 1.251,
    },
    "B": {
        "return_edge_m": 4.625, "ceiling_edge_m": 2.450, "scrim_m": 10.102, "skim_m2": 4.158, "facing_gross_m2": 5.451,
        "lining_m2": 0.540, "skirting_m": 2.510, "ply_m": 1.531, "cut_edge_m": 0.0, "painted_board_gross_m2": 0.540,
    },
    "C": {
        "return_edge_m": 2.324, "lid_edge_m": 1.355, "face_joint_m": 1.170, "skirting_m": 1.245, "cut_edge_m": 4.585,
        "paint_m2": 3.172, "painted_board_gross_m2": 2.267, "lid_visible_m2": 0.407, "visible_m2": 1.599 + 0.708, "ply_m": 1.255,
    },
}  # fmt: skip


def measured(request: dict[str, Any]) -> Measures:
    return measure(frame_of(request), job_of(request), RULES)


@pytest.mark.parametrize("name", WORKED)
def test_lengths_and_areas_are_the_worked_ones(name: str) -> None:
    """Lengths +-0.0005 m as written, areas +-0.001 m2 (`knowledge/worked-examples.md`, section 0)."""
    found = msgspec.structs.asdict(made(name).bill.measures)

    for key, value in WORKED[name].items():
        assert value == pytest.approx(found[key], abs=0.00101), key


def test_a_fire_on_the_floor_has_no_board_and_so_no_cut_edge_under_it() -> None:
    """C0: sides and top of the opening 770 x 545, and the lid's front and sides 1955."""
    at = measured(sold("C0"))

    assert 2 * 0.545 + 0.770 + 1.955 == pytest.approx(at.cut_edge_m)


def test_cut_edges_run_round_the_open_corner() -> None:
    """`knowledge/cladding.md`, section 5, of example B in MDF: both edges of face and return at the open end, one upright."""
    request = changed(
        sold("B"), {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2015R"}, "/survey/brief/finish": "painted"}
    )
    at, sizes = measured(request), frame_of(request).sizes
    across_mm = (sizes.board_opening_width_tenth_mm + sizes.finished_depth_tenth_mm) / 10
    upright_mm = sizes.opening_height_tenth_mm / 10

    assert (2 * across_mm + upright_mm) / 1000 + at.recess_perimeter_m == pytest.approx(at.cut_edge_m)


def test_plywood_is_filled_and_painted_like_any_board() -> None:
    at = measured(changed(sold("A"), {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2218L"}}))

    assert at.facing_gross_m2 + at.lining_m2 == pytest.approx(at.painted_board_gross_m2)
    assert at.cut_edge_m > 0
    assert () == at.bead_edges_mm


def test_taped_plasterboard_gets_tape_and_beads_but_no_skim() -> None:
    at = measured(changed(sold("C"), TAPED))

    assert 0 == at.skim_m2
    assert at.scrim_m > 0
    assert (1162, 1162) == at.bead_edges_mm
    assert at.visible_m2 + at.lid_visible_m2 == pytest.approx(at.paint_m2)


def test_skim_ends_under_the_lid() -> None:
    """C skimmed: faces and returns 1162 high; the 18 of the lid's edge is painted, not skimmed. Openings under 0.5 m2 stay in."""
    at = measured(changed(sold("C"), SKIMMED))

    assert (1.355 + 2 * 0.300) * 1.162 == pytest.approx(at.skim_m2)
    assert (1162, 1162) == at.bead_edges_mm
    assert (1.355 + 2 * 0.300) * 0.018 + 1.355 * 0.300 == pytest.approx(at.paint_m2 - at.skim_m2)


@pytest.mark.parametrize(("model", "taken_off"), [("AF-102", False), ("AF-104", True)])
def test_only_openings_over_half_a_square_metre_are_taken_off(model: str, taken_off: bool) -> None:
    """`knowledge/cladding.md`, section 5. Openings: 770 x 545 = 0.420 m2 and 1280 x 480 = 0.614 m2."""
    at = measured(one_sided(model))
    whole_m2 = (2.000 + 2 * 0.300) * 1.180

    assert whole_m2 - (1.280 * 0.480 if taken_off else 0.0) == pytest.approx(at.visible_m2)


def test_the_area_of_a_board_is_gross() -> None:
    """Example A: the lower strip of the face, 1357 x 916, with its cut-out."""
    strip = next(panel for panel in made("A").frame.panels if panel.cut_outs)

    assert 1.357 * 0.916 == pytest.approx(panel_area_m2(strip))


def test_edges_in_a_corner() -> None:
    """Lid and skirting meet two walls: 1355 + 300; the face is scribed instead of a return, so as much wall edge as before."""
    request = in_a_corner()
    at = measure(frame_of(request), job_of(request), RULES)

    assert (1.655, 2.324) == (at.lid_edge_m, at.return_edge_m)
    assert round(1.599 + 0.354, 3) == round(at.visible_m2, 3)  # one return of 300 x 1180 less


def test_edges_of_a_niche() -> None:
    """900 x 110 clear, 115 deep: 2.02 of edge round it and four corners more of 0.115; too small to be taken off the paint."""
    with_it = measure(frame_of(niche()), job_of(niche()), RULES)
    plain = measure(frame_of(sold("A")), job_of(sold("A")), RULES)

    assert 2.02 == round(with_it.recess_perimeter_m - plain.recess_perimeter_m, 6)
    assert 0.46 == round(with_it.lining_corner_m - plain.lining_corner_m, 6)
    assert plain.visible_m2 == with_it.visible_m2
