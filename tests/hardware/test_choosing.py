from __future__ import annotations

import msgspec
import pytest

from service.bill import Market
from service.catalogue import Catalogue, Material, demo_catalogue
from service.hardware.choosing import (
    board_screw,
    by_use,
    ceiling_screw,
    fire_screw,
    heavy_bracket,
    joint_screw,
    laminating_screw,
    light_bracket,
    nth,
    smallest,
    wall_fixing,
)
from service.rules import load_rules
from tests.examples_of import changed, job_of
from tests.sold_examples import sold

CATALOGUE = demo_catalogue()
MARKET = Market(catalogue=CATALOGUE, rules=load_rules())


def code(row: Material | None) -> str:
    return row.code if row else ""


def without(*codes: str) -> Catalogue:
    rows = {key: row for key, row in CATALOGUE.materials.items() if key not in codes}
    return msgspec.structs.replace(CATALOGUE, materials=rows)


@pytest.mark.parametrize(
    ("passed_mm", "expected"),
    [
        (38, "FX-3070M"),  # 5.0 x 70
        (45, "FX-3100V"),  # 5.0 x 100
        (63, "FX-3100V"),
        (70, "FX-3100V"),
        (89, "FX-3150Z"),  # 6.0 x 150
        (95, "FX-3150Z"),
        (144, "FX-3180G"),  # 144 + 6 x 6 = 180 just reaches
        (144.1, ""),  # nothing sold is long enough
    ],
)
def test_joint_screws_as_the_list_has_them(passed_mm: float, expected: str) -> None:
    """`knowledge/materials.md`, section 1, "Screw for a joint": timber passed + 6 diameters (EN 1995-1-1, 8.7.2(3))."""
    assert expected == code(joint_screw(passed_mm, MARKET))


@pytest.mark.parametrize(("thickness_mm", "expected"), [(38, "FX-3070M"), (45, "FX-3070M"), (24, "")])
def test_laminating_screws_stay_inside_two_plies(thickness_mm: float, expected: str) -> None:
    """`knowledge/materials.md`, section 1: 38 + 38 and 45 + 45 take 5.0 x 70."""
    assert expected == code(laminating_screw(thickness_mm, CATALOGUE))


@pytest.mark.parametrize(
    ("kind", "thickness_mm", "expected"),
    [
        ("mdf", 12, "FX-3040E"),
        ("mdf", 15, "FX-3040E"),
        ("mdf", 18, "FX-3045K"),
        ("plywood", 18, "FX-3050R"),
        ("plasterboard", 9.5, "FX-3232N"),
        ("plasterboard", 12.5, "FX-3238V"),
        ("cement_board", 12, "FX-3242Z"),
        ("calcium_silicate", 9, "FX-3242Z"),
        ("mdf", 25, "FX-3045K"),  # not in the table: 25 + 25 of thread
        ("plasterboard", 15, "FX-3242Z"),
        ("mdf", 400, ""),
    ],
)
def test_board_screws_as_the_table_has_them(kind: str, thickness_mm: float, expected: str) -> None:
    """`knowledge/cladding.md`, section 3; others: board + at least 25 of thread."""
    assert expected == code(board_screw(kind, thickness_mm, MARKET))


def test_ceiling_screw_of_the_worked_bill() -> None:
    """Bill A: 38 + 10 + 12.5 + 35 = 95.5 wants the 6.0 x 120 with a flange head."""
    assert "FX-3126Y" == code(ceiling_screw(job_of(sold("A")), MARKET))


def test_fire_screw_and_light_bracket_of_the_worked_bill() -> None:
    assert "FX-3050R" == code(fire_screw(CATALOGUE))
    assert "FX-3405B" == code(light_bracket(CATALOGUE))


@pytest.mark.parametrize(
    ("wall", "passed_mm", "expected"),
    [
        ({"construction": "solid_brick"}, 89, "FX-3316E"),  # counterbored: 64 + 5 + 15 + 60 = 144
        ({"construction": "solid_brick"}, 95, "FX-3316E"),  # 70 + 5 + 15 + 60 = 150
        ({"construction": "solid_brick"}, 63, "FX-3316E"),  # too little left to sink the head: 63 + 80 = 143
        ({"construction": "solid_brick"}, 2, "FX-3310Y"),
        ({"construction": "unknown"}, 63, "FX-3316E"),  # billed as brick
        ({"construction": "concrete"}, 63, "FX-3340F"),  # concrete screw first
        ({"construction": "concrete"}, 145, "FX-3323M"),  # too thick for it: 120 + 20 + 60 = 200
        ({"construction": "solid_brick"}, 146, ""),
        ({"construction": "aerated_block"}, 63, "FX-3331W"),  # 63 + 20 + 70 = 153
        ({"construction": "aerated_block"}, 2, "FX-3320J"),
        ({"construction": "plasterboard_on_dabs", "void_mm": 25, "backing": "dense_block"}, 63, "FX-3323M"),  # 63 + 45 + 60 = 168
        ({"construction": "plasterboard_on_dabs", "void_mm": 25}, 2, "FX-3310Y"),  # backing unknown: as brick
        ({"construction": "timber_stud", "lining_mm": 12.5}, 63, "FX-3120S"),  # 63 + 17.5 + 35 = 115.5
        ({"construction": "lath_and_plaster", "lining_mm": 25}, 95, "FX-3180G"),  # 95 + 30 + 35 = 160: materials.md, section 1
        ({"construction": "timber_stud", "lining_mm": 12.5}, 140, "FX-3180G"),  # only with the head sunk: 115 + 17.5 + 35
        ({"construction": "timber_stud", "lining_mm": 12.5}, 160, ""),
        ({"construction": "steel_stud", "lining_mm": 12.5}, 89, "FX-3348P"),
        ({"construction": "steel_stud", "lining_mm": 12.5}, 140, ""),
    ],
)
def test_wall_fixings(wall: dict[str, object], passed_mm: float, expected: str) -> None:
    """`knowledge/materials.md`, section 1, "Wall": timber + packing 5 + plaster + embedment; a head sunk by 25 in masonry."""
    job = job_of(changed(sold("C"), {"/survey/wall": {"lining_mm": 15, **wall}}))

    assert expected == code(wall_fixing(job, passed_mm, MARKET))


def test_nothing_on_sale_is_nothing_chosen() -> None:
    bare = Market(
        catalogue=without(*(key for key, row in CATALOGUE.materials.items() if row.kind != "timber")), rules=MARKET.rules
    )
    job = job_of(sold("A"))

    assert "" == code(by_use("caulk", bare.catalogue))
    assert "" == code(light_bracket(bare.catalogue))
    assert ["", "", ""] == [code(row) for row in (joint_screw(38, bare), ceiling_screw(job, bare), wall_fixing(job, 89, bare))]


def test_the_first_code_of_a_use_is_taken() -> None:
    other = msgspec.structs.replace(CATALOGUE.materials["SL-4040S"], code="SL-4000A")
    rows = {**CATALOGUE.materials, "SL-4000A": other}

    assert "SL-4040S" == code(by_use("caulk", CATALOGUE))
    assert "SL-4000A" == code(by_use("caulk", msgspec.structs.replace(CATALOGUE, materials=rows)))


def test_the_smallest_is_the_shortest_then_the_thinnest() -> None:
    rows = [CATALOGUE.materials[one] for one in ("FX-3126Y", "FX-3100V", "FX-3120S")]

    assert "FX-3100V" == code(smallest(rows))
    assert "" == code(smallest([]))


def test_the_heavy_bracket_is_the_next_above_the_light_one() -> None:
    """Invented brackets of the demo: 2600 N and 4200 N upwards."""
    assert "FX-3412J" == code(heavy_bracket(CATALOGUE))
    assert "" == code(heavy_bracket(without("FX-3412J")))
    assert "" == code(heavy_bracket(without("FX-3405B", "FX-3412J")))


def test_so_many_sizes_above_the_smallest() -> None:
    rows = [row for row in CATALOGUE.materials.values() if row.kind == "angle_bracket"]

    assert ["FX-3405B", "FX-3412J", ""] == [code(nth(rows, index)) for index in range(3)]


def test_a_stronger_fixing_is_declared_to_bear_more_in_that_wall() -> None:
    """Longer plugs of the demo bear no more in brick (0.45 kN, all three): there is none that is stronger, unless one is sold."""
    job = job_of(sold("A"))
    loads = tuple(
        msgspec.structs.replace(row, working_tension_kn=0.6) if (row.code, row.wall) == ("FX-3323M", "solid_brick") else row
        for row in CATALOGUE.fixing_loads
    )
    market = Market(catalogue=msgspec.structs.replace(CATALOGUE, fixing_loads=loads), rules=load_rules())

    assert ["FX-3316E", ""] == [code(wall_fixing(job, 89, MARKET, index)) for index in range(2)]
    assert ["FX-3316E", "FX-3323M", ""] == [code(wall_fixing(job, 89, market, index)) for index in range(3)]


def test_a_longer_screw_into_a_stud_or_joist() -> None:
    job = job_of(changed(sold("A"), {"/survey/wall/construction": "timber_stud", "/survey/wall/stud_positions_mm": [1400, 1800]}))
    sizes = [code(wall_fixing(job, 40, MARKET, index)) for index in range(2)]

    assert sizes[0] != sizes[1]
    assert ["FX-3126Y", ""] == [code(ceiling_screw(job, MARKET, index)) for index in range(2)]
