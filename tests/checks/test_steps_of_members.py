"""Framing.md, 10.2, rows 3, 4, 6 and 7."""

from __future__ import annotations

import pytest

from service.checks.steps_of_members import (
    closer_studs,
    deeper_bearers,
    deeper_ply,
    lid_joists,
    ply_more,
    stronger_bearers,
    stronger_lid_joists,
    stronger_member,
    stronger_trimmer,
)
from service.frame import Additions, Role
from tests.checks.weak_spots import said, taken, weak
from tests.examples_of import Request, changed, example_a, example_b, example_c
from tests.properties import laws

DEPTH = "/survey/brief/breast_depth_mm"
TIMBER_63 = changed(example_a(), {"/survey/brief/timber": {"kind": "catalogue", "code": "TM-1007V"}})


def test_plies_up_to_three_and_to_the_room() -> None:
    """P <= 3 and p b <= n: in example C n is 144.5 for 300 deep, that is three plies of 38; at 240 deep n is 102, two."""
    three = ["1 ply on edge behind the trimmer", "2 plies on edge behind the trimmer", "3 plies on edge behind the trimmer"]

    assert three == said(ply_more, weak(example_c(), Additions(ply_count=0)))
    assert three[1:] == said(ply_more, weak(example_a()))
    shallow = changed(example_c(), {DEPTH: 240})
    assert 1020 >= weak(shallow).ground.frame.sizes.cross_noggin_length_tenth_mm >= 760
    assert three[:2] == said(ply_more, weak(shallow, Additions(ply_count=0)))


def test_class_and_depth_of_the_trimmer() -> None:
    assert ["C24 for trimmer, trimmer ply"] == said(stronger_trimmer, weak(example_a()))
    assert ["plies 89 deep"] == said(deeper_ply, weak(example_c(), Additions(ply_count=1)))
    assert [] == said(deeper_ply, weak(example_c(), Additions(ply_count=0)))  # no ply to deepen
    assert [] == said(deeper_ply, weak(example_a()))  # 38 x 89 is the deepest of its thickness that is sold


def test_bearers() -> None:
    """Their section may grow as long as they stay inside the recess: 687 in the clear, rows 200 apart (example A)."""
    assert ["C24 for screen bearer"] == said(stronger_bearers, weak(example_a()))
    assert ["bearers 89 deep"] == said(deeper_bearers, weak(TIMBER_63))
    assert [] == said(deeper_bearers, weak(example_c()))  # no screen


def test_studs_come_closer_twice() -> None:
    """M 600 -> 400 -> 300; a board of 12 begins at 400 (framing.md, section 7)."""
    assert ["studs at 400", "studs at 300"] == said(closer_studs, weak(example_a()))
    assert ["studs at 300"] == said(closer_studs, weak(example_c()))
    assert ["C24 for jamb stud"] == said(stronger_member, weak(example_a(), role=Role.JAMB_STUD))
    assert [] == said(stronger_member, weak(example_a()))


def test_joists_of_the_lid() -> None:
    assert ["joists under the lid at 400", "joists under the lid at 300"] == said(lid_joists, weak(example_c()))
    assert [] == said(lid_joists, weak(example_a()))  # no lid
    assert [] == said(stronger_lid_joists, weak(example_c()))
    assert ["C24 for lid joist"] == said(stronger_lid_joists, weak(example_c(), Additions(lid_joist_pitch_tenth_mm=4_000)))


@pytest.mark.parametrize(
    ("step", "request_", "additions"),
    [
        (ply_more, example_a(), None), (ply_more, example_b(), None), (deeper_ply, example_c(), Additions(ply_count=1)),
        (deeper_bearers, TIMBER_63, None), (closer_studs, example_b(), None), (lid_joists, example_c(), None),
    ],
)  # fmt: skip
def test_what_is_added_keeps_the_laws(step: object, request_: Request, additions: Additions | None) -> None:
    found = taken(step, weak(request_, additions))  # type: ignore[arg-type]  # a step by name
    ground = weak(request_, found.additions).ground

    assert {} == laws.broken(ground.job, ground.frame)
