"""Source of the figures: `knowledge/worked-checks.md`, A, at their tolerance of 0.1 percent."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from service.checks.arm import arm_checks
from service.checks.bearers import bearer_checks
from service.checks.board_joints import board_joint_checks
from service.checks.check import Check
from service.checks.joint_screws import joint_screw_checks
from service.checks.ledges import ledge_checks
from service.checks.lid import lid_checks
from service.checks.platform import platform_checks
from service.checks.rail_ends import rail_end_checks
from service.checks.timber import (
    Asked,
    Beam,
    across_resistance_n,
    bending_mpa,
    bent,
    bent_ratio,
    column_resistance_n,
    design_mpa,
    ends_of,
    extent_mm,
    governing,
    joint_n,
    length_mm,
    moment_resistance_n_mm,
    of_roles,
    shear_resistance_n,
    solid_timber,
    stronger_classes,
)
from service.checks.trimmer import trimmer_checks
from service.checks.uprights import upright_checks
from service.frame import Axis, Role
from service.rules import LoadDuration, load_rules
from tests.checks.after_checks import after_checks
from tests.checks.grounds import ground_of
from tests.examples_of import changed, example_a

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.checks.check import Result
    from service.checks.ground import Ground

A = after_checks("A")
RUNS = (
    platform_checks, trimmer_checks, bearer_checks, arm_checks, upright_checks, ledge_checks, lid_checks, rail_end_checks,
    joint_screw_checks, board_joint_checks,
)  # fmt: skip
C16, C24 = (load_rules().strength_class(name) for name in ("C16", "C24"))
TRIMMER = of_roles(A, Role.TRIMMER)[0]
ON_EDGE, FLAT = Beam(47, 75, C16), Beam(75, 47, C16)
SHORT, MEDIUM, PERMANENT = LoadDuration.SHORT, LoadDuration.MEDIUM, LoadDuration.PERMANENT
REL = 1e-3


def test_sides_of_a_member_by_the_axis_of_the_force() -> None:
    assert (89.0, 38.0, "C16") == (*bent(TRIMMER, Axis.Z, A)[:2], bent(TRIMMER, Axis.Z, A).strength.name)
    assert (38.0, 89.0) == bent(TRIMMER, Axis.Y, A)[:2]
    assert 1251 == length_mm(TRIMMER) == extent_mm(TRIMMER.box, Axis.X)
    assert (331.0, 420.0) == ends_of(TRIMMER.box, Axis.Y)


def test_bending() -> None:
    """A8: f_m,d 8.4827 permanent; A9: 12.724 short and u 1.0606 under 594.63 N m."""
    assert pytest.approx(8.4827, rel=REL) == bending_mpa(ON_EDGE, PERMANENT, A)
    assert pytest.approx(1.0606, rel=REL) == bent_ratio(ON_EDGE, 594_630.0, SHORT, A)
    assert pytest.approx(594_630.0 / 1.0606, rel=REL) == moment_resistance_n_mm(ON_EDGE, SHORT, A)


def test_shear() -> None:
    """A10: V 1723.6 N gives 0.49412."""
    assert pytest.approx(1723.6 / 0.49412, rel=REL) == shear_resistance_n(ON_EDGE, SHORT, A)


def test_columns() -> None:
    """A17 weak axis 3619.4 N, A18 strong axis 8804.5 N."""
    assert pytest.approx(3619.4, rel=REL) == column_resistance_n(FLAT, 2350, MEDIUM, A)
    assert pytest.approx(8804.5, rel=REL) == column_resistance_n(ON_EDGE, 2350, MEDIUM, A)


def test_pressure_across_the_grain() -> None:
    """A23 with k_c,90 1.0: sigma 0.29907 of f 1.3538 on 107 mm; at the end of a rail on 77 mm."""
    inside, at_end = (across_resistance_n(FLAT, MEDIUM, A, contact_mm=47, free_mm=free) for free in ((500, 500), (0, 500)))

    assert pytest.approx(2400 / 0.29907 * 0.8 * 2.2 / 1.3, rel=REL) == inside
    assert pytest.approx(77 / 107) == at_end / inside


def test_an_accident_has_factors_of_its_own() -> None:
    """structure.md, 4: k_mod 1.10, gamma_M 1.0."""
    assert pytest.approx(1.1 * 16) == design_mpa(16.0, LoadDuration.INSTANTANEOUS, A)
    assert pytest.approx(1100) == joint_n(1000.0, LoadDuration.INSTANTANEOUS, A)
    assert pytest.approx(0.6 / 1.3 * 1000) == joint_n(1000.0, PERMANENT, A)


@pytest.mark.parametrize(
    ("wall", "expected"),
    [
        ({}, "solid_timber_1"),
        ({"external": True}, "solid_timber_2"),
        ({"external": True, "external_build": "solid"}, "solid_timber_2"),
        ({"external": True, "external_build": "cavity_insulated"}, "solid_timber_1"),
        ({"external": False, "external_build": "solid"}, "solid_timber_1"),
    ],
)
def test_service_class(wall: dict[str, object], expected: str) -> None:
    """structure.md, 2.5: class 2 against an untreated cold solid outside wall."""
    request = changed(example_a(), {f"/survey/wall/{name}": value for name, value in wall.items()})

    assert expected == solid_timber(ground_of(request)).name


def test_the_first_combination_of_equals_governs() -> None:
    """worked-checks.md, H1: the permanent case governs where its k_mod weighs more than the person."""
    assert PERMANENT is governing([Asked(100, 60, PERMANENT), Asked(110, 90, SHORT)]).duration
    assert SHORT is governing([Asked(100, 60, PERMANENT), Asked(160, 90, SHORT)]).duration


@pytest.mark.parametrize("run", RUNS)
@pytest.mark.parametrize("example", ["A", "B", "C"])
def test_order_of_members_changes_nothing(run: Callable[[Ground], tuple[Result, ...]], example: str) -> None:
    """A law: the frame's members, panels and fixings the other way round."""
    ground = after_checks(example)
    frame = ground.frame
    turned = msgspec.structs.replace(
        frame, members=frame.members[::-1], panels=frame.panels[::-1], wall_fixings=frame.wall_fixings[::-1],
        ceiling_screws=frame.ceiling_screws[::-1],
    )  # fmt: skip
    before, after = (
        sorted((one.code, one.subject, round(one.demand.value, 6), one.verdict) for one in run(each) if isinstance(one, Check))
        for each in (ground, msgspec.structs.replace(ground, frame=turned))
    )

    assert before == after


def test_stronger_classes_rise() -> None:
    assert ["C27", "C30"] == [one.name for one in stronger_classes(C24, A)]
