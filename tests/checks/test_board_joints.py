"""Source of the figures: `knowledge/cladding.md`, sections 2 and 3; `knowledge/worked-examples.md`, panels of A, B and C."""

from __future__ import annotations

import msgspec
import pytest

from service.checks.board_joints import GRIP, JOINT, board_joint_checks, screw_edge_mm
from service.checks.check import Verdict
from tests.checks.after_checks import after_checks, check_of, checks_of, exact_ratio, of_hardware, skipped_of


def test_joints_lie_on_the_middle_of_timber() -> None:
    """A: face joint on the head rail, 38 mm: 19 each side of 18 asked for MDF 15 and 19 by the rule; B: 45 mm, 22.5."""
    of_a, of_b = (checks_of(board_joint_checks(after_checks(example)), JOINT) for example in "AB")

    assert [19.0] == [one.resistance.value for one in of_a if one.resistance]
    assert {22.5} <= {one.resistance.value for one in of_b if one.resistance}
    assert {Verdict.PASS} == {one.verdict for one in (*of_a, *of_b)}


def test_one_sheet_has_no_joint() -> None:
    assert {JOINT} == set(skipped_of(board_joint_checks, after_checks("C")))


def test_a_joint_off_its_timber_fails() -> None:
    """The joint of A moved 15 mm down: 4 mm are left under it; moved away, none."""
    whole = after_checks("A")
    for moved, there_mm in ((-150, 4.0), (2000, 0.0)):
        panels = tuple(
            msgspec.structs.replace(one, box=msgspec.structs.replace(one.box, z0_tenth_mm=one.box.z0_tenth_mm + moved))
            if one.joint_below
            else one
            for one in whole.frame.panels
        )
        ground = msgspec.structs.replace(whole, frame=msgspec.structs.replace(whole.frame, panels=panels))
        found = check_of(board_joint_checks, ground, JOINT)

        assert Verdict.FAIL is found.verdict
        assert found.resistance is not None
        assert there_mm == found.resistance.value
        assert "timber at least 38 mm wide behind it, or two beside it" == found.remedy


@pytest.mark.parametrize(
    ("kind", "thickness_mm", "expected_mm"),
    [
        ("mdf", 15, 12),
        ("mdf", 18, 15),
        ("plywood", 18, 15),
        ("plasterboard", 12.5, 13),
        ("cement_board", 12, 15),
        ("other", 12, 15),
    ],
)
def test_screws_keep_from_cut_edges(kind: str, thickness_mm: float, expected_mm: float) -> None:
    assert expected_mm == screw_edge_mm(kind, thickness_mm)


@pytest.mark.parametrize(
    ("example", "layer", "there_mm"), [("A", "facing", 25), ("A", "backboard", 32), ("B", "facing", 25.5), ("C", "lid", 32)]
)
def test_thread_behind_boards(example: str, layer: str, there_mm: float) -> None:
    """cladding.md, 3: at least 25 mm."""
    assert pytest.approx(25 / there_mm) == exact_ratio(check_of(board_joint_checks, after_checks(example), GRIP, layer))


def test_short_or_missing_board_screws() -> None:
    ground = after_checks("A")
    screw = ground.hardware.board_screw("facing")
    assert screw is not None
    short = of_hardware(ground, board_screws=(("facing", msgspec.structs.replace(screw, length_mm=32.0)),))
    told, missing = (check_of(board_joint_checks, each, GRIP, "facing") for each in (short, of_hardware(ground, board_screws=())))

    assert (Verdict.ADVISE, "screws of at least 40 mm") == (told.verdict, told.remedy)
    assert Verdict.FAIL is missing.verdict
