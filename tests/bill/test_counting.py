from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.bill import Market
from service.bill.counting import count_things, free_area_mm2, grilles_count, panel_screws
from service.catalogue import Catalogue, demo_catalogue
from service.frame import Axis, Box, CutOut, CutWhen, Layer, Panel, PanelRole
from service.rules import load_rules
from tests.bill.bill_facts import one_sided
from tests.examples_of import changed, frame_of, job_of
from tests.sold_examples import NAMES, laid_out, made, sold

RULES = load_rules()
MARKET = Market(catalogue=demo_catalogue(), rules=RULES)
COUNTED = (  # A, B, C, C0 after checks: knowledge/worked-examples.md, "Fixings" of each example, and its member table
    ("bar_pieces", 52, 54, 48, 29),
    ("butting", 43, 45, 39, 24),
    ("joints", 88, 92, 80, 50),
    ("wide_joints", 36, 40, 22, 12),
    ("laminating_screws", 6, 7, 12, 12),
    ("rail_brackets", 18, 19, 6, 6),
    ("base_brackets", 4, 4, 5, 0),
    ("wall_fixings", 16, 17, 14, 14),
    ("ceiling_screws", 8, 0, 0, 0),
    ("face_screws", 122, 194, 62, 54),
    ("lining_screws", 36, 44, 0, 0),
    ("backboard_screws", 10, 14, 0, 0),
    ("lid_screws", 0, 0, 16, 16),
    ("openings", 2, 2, 1, 1),
    ("small_openings", 3, 3, 0, 0),
)
BRACKETS_LAID_OUT = {"A": 16, "B": 15, "C": 0}  # "what | laid out | after checks" of each example


@pytest.mark.parametrize("row", COUNTED, ids=lambda row: row[0])
def test_counts_after_checks_are_the_worked_ones(row: tuple[str, int, int, int, int]) -> None:
    what, *worked = row

    assert worked == [getattr(made(name).bill.counts, f"{what}_count") for name in NAMES]


@pytest.mark.parametrize("name", BRACKETS_LAID_OUT)
def test_brackets_laid_out_are_the_worked_ones(name: str) -> None:
    assert BRACKETS_LAID_OUT[name] == laid_out(name).bill.counts.rail_brackets_count


def test_a_jack_takes_three_more_screws_of_a_ply_only_under_a_one_sided_fire() -> None:
    """`knowledge/materials.md`, section 1: C has two jacks (ceil(1255/300) + 1 + 2 x 3), B has one and is two-sided."""
    assert 6 == made("C").bill.counts.ply_end_screws_count
    assert 0 == made("B").bill.counts.ply_end_screws_count
    assert 12 == made("C").bill.counts.laminating_screws_count
    assert 7 == made("B").bill.counts.laminating_screws_count


def panel(width_mm: int, height_mm: int, layer: Layer = Layer.FACING, cut_outs: tuple[CutOut, ...] = ()) -> Panel:
    box = Box(x0_tenth_mm=0, x1_tenth_mm=0, y0_tenth_mm=0, y1_tenth_mm=0, z0_tenth_mm=0, z1_tenth_mm=0)
    return Panel(
        mark="P", role=PanelRole.FACE_UPPER, layer=layer, board_code="", thickness_tenth_mm=150, width_tenth_mm=width_mm * 10,
        height_tenth_mm=height_mm * 10, cut_width_mm=width_mm, cut_height_mm=height_mm, cut_when=CutWhen.NOW, box=box,
        cut_outs=cut_outs,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("code", "expected"),
    [
        # 1357 x 916: round it 2 x (5 + 4) MDF, 2 x (7 + 5) at 200; field 2 columns x 3; round the hole 1064 x 657
        ("BD-2015R", 2 * (5 + 4) + 2 * 3 + 2 * (4 + 3)),
        ("BD-2125K", 2 * (7 + 5) + 2 * 3 + 2 * (6 + 4)),
        ("BD-2312N", 2 * (7 + 5) + 2 * 3 + 2 * (6 + 4)),
    ],
)
def test_screws_of_a_board_by_hand(code: str, expected: int) -> None:
    """`knowledge/cladding.md`, section 3: perimeter, field, cut-out; 300 in MDF, 200 in gypsum and cement."""
    job = job_of(changed(sold("A"), {"/survey/brief/board": {"kind": "catalogue", "code": code}}))
    hole = CutOut(kind="recess", x_tenth_mm=0, y_tenth_mm=0, width_tenth_mm=10_640, height_tenth_mm=6_570)

    assert expected == panel_screws(panel(1357, 916, cut_outs=(hole,)), job, RULES)


def test_linings_and_backboards_are_counted_by_their_longest_side() -> None:
    """`knowledge/cladding.md`, section 3: 2 x (ceil(longest / 300) + 1)."""
    job = job_of(sold("A"))

    assert [10, 8] == [panel_screws(panel(longest, 114, Layer.LINING), job, RULES) for longest in (1094, 657)]
    assert 14 == panel_screws(panel(1531, 899, Layer.BACKBOARD), job, RULES)


def test_a_fire_on_a_plug_needs_no_opening_of_its_own() -> None:
    counts = made("C").bill.counts

    assert 0 == counts.small_openings_count
    assert 1 == laid_out("C").bill.counts.openings_count


@pytest.mark.parametrize(
    ("model", "expected"),
    [("AF-104", 0), ("AF-105", 1)],  # demo data: air from the front; 9000 mm2 from the rear, and a grille gives 18000
)
def test_a_fire_that_breathes_from_the_void_gets_grilles(model: str, expected: int) -> None:
    """`knowledge/materials.md`, section 2: ceil(inlet area / free area of a grille)."""
    job = job_of(one_sided(model))

    assert expected == grilles_count(job, MARKET)
    assert expected == count_things(frame_of(one_sided(model)), job, MARKET).grilles_count


def test_a_grille_without_a_declared_area_counts_half_of_its_gross() -> None:
    """`knowledge/heat.md`, section 4: 225 x 75 / 2 = 8437.5 mm2, so 9000 mm2 take two."""
    rows = {code: row for code, row in demo_catalogue().materials.items() if row.kind != "grille"}
    undeclared = msgspec.structs.replace(demo_catalogue().materials["EL-7063C"], uses=("grille",))
    market = Market(catalogue=_with(rows | {"EL-7063C": undeclared}), rules=RULES)

    assert 8437.5 == free_area_mm2(market)
    assert 2 == grilles_count(job_of(one_sided("AF-105")), market)


def test_without_a_grille_in_the_catalogue_one_is_still_asked_for() -> None:
    rows = {code: row for code, row in demo_catalogue().materials.items() if row.kind != "grille"}

    assert 1 == grilles_count(job_of(one_sided("AF-105")), Market(catalogue=_with(rows), rules=RULES))


def test_pieces_along_the_depth_are_screwed_through_the_wide_side() -> None:
    """`knowledge/materials.md`, section 1: Jd counts cross and ladder noggins."""
    frame = made("A").frame
    along_y = sum(member.along is Axis.Y for member in frame.members)

    assert 2 * along_y == made("A").bill.counts.wide_joints_count


def _with(materials: dict[str, Any]) -> Catalogue:
    return msgspec.structs.replace(demo_catalogue(), materials=materials)
