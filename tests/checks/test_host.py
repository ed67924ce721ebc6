from __future__ import annotations

import msgspec
import pytest

from service.checks.host import BACKING_NOT_KNOWN, NEVER_DECLARED, NOT_KNOWN, NOTHING_SOLD, STUDS_NOT_FOUND, Host, host_of
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import example, on_wall
from tests.sold_examples import sold

STUDS = {"stud_positions_mm": [1300, 1700, 2100, 2500]}


@pytest.mark.parametrize(
    ("wall", "told", "tension_n", "shear_n", "assumed"),
    [
        ("solid_brick", {}, 630, 980, False),  # FX-3316E 0.45 / 0.70 kN
        ("solid_brick", {"units": "soft_or_old"}, 210, 420, True),
        ("solid_brick", {"units": "perforated"}, 140, 280, True),
        ("solid_brick", {"units": "unknown"}, 140, 280, True),  # the lowest row of the wall
        ("solid_brick", {"units": None}, 630, 980, True),  # taken as sound
        ("dense_block", {}, 350, 630, False),
        ("dense_block", {"units": "light_aggregate"}, 210, 350, True),  # the maker's row is for 7 N/mm2
        ("aerated_block", {}, 140, 280, False),
        ("concrete", {}, 700, 1120, False),
        ("steel_stud", STUDS, 140, 210, False),
        ("plasterboard_on_dabs", {"backing": "solid_brick", "void_mm": 25}, 630, 980, False),
        ("boarded_behind_plasterboard", {"declared_tension_kn": 0.3, "declared_shear_kn": 0.4}, 420, 560, False),
    ],
)
def test_walls(wall: str, told: dict[str, object], tension_n: float, shear_n: float, assumed: bool) -> None:
    """fixings.md, 2.3 and the demo's declared rows, x 1.4 (2.2); worked-examples.md, site settings: 0.63 / 0.98 kN."""
    found = host_of(on_wall(wall, **told))

    assert pytest.approx([tension_n, shear_n]) == [found.tension_n, found.shear_n]
    assert ("", "", assumed) == (found.unknown, found.nothing, bool(found.assumed))


@pytest.mark.parametrize(
    ("wall", "told", "expected"),
    [
        ("unknown", {}, Host(unknown=NOT_KNOWN)),
        ("plasterboard_on_dabs", {"backing": "unknown"}, Host(unknown=BACKING_NOT_KNOWN)),
        ("timber_stud", {}, Host(unknown=STUDS_NOT_FOUND)),
        ("steel_stud", {}, Host(unknown=STUDS_NOT_FOUND)),
        ("lath_and_plaster", STUDS, Host(into_studs=True)),
        ("timber_stud", STUDS, Host(into_studs=True)),
        ("boarded_behind_plasterboard", {}, Host(nothing=NEVER_DECLARED)),
    ],
)
def test_walls_that_give_no_value(wall: str, told: dict[str, object], expected: Host) -> None:
    assert expected == host_of(on_wall(wall, **told))


def test_nothing_sold_for_this_wall() -> None:
    ground = example("A")
    bare = msgspec.structs.replace(ground, hardware=msgspec.structs.replace(ground.hardware, wall_fixing=None, wall_load=None))

    assert Host(nothing=NOTHING_SOLD) == host_of(bare)


def test_one_wall_told_in_full_needs_no_assumption() -> None:
    assert "" == host_of(example("A")).assumed
    assert NOT_KNOWN == host_of(ground_of(sold("A", survey__wall=None))).unknown
