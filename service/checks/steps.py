"""What strengthens a design, by the check that fails: steps in order, each with its limit (`knowledge/framing.md`, 10.2)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks import steps_of_base as base
from service.checks import steps_of_fixings as fixings
from service.checks import steps_of_joints as joints
from service.checks import steps_of_members as members
from service.checks.step import Row, Weak

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.check import Check
    from service.checks.ground import Ground
    from service.checks.step import Stronger
    from service.hardware import Shelf

TABLE: Final[tuple[Row, ...]] = (
    Row(
        frozenset({
            "structure.platform_rail_bending", "structure.platform_rail_shear", "structure.platform_rail_sag",
            "structure.platform_rail_jack",
        }),
        (base.upright_under_feet, base.closer_stations, base.stronger_base),
    ),
    Row(
        frozenset({"structure.platform_bearing"}),
        (base.wide_packers, base.second_uprights, base.stronger_base),
    ),
    Row(
        frozenset({
            "structure.trimmer_bending", "structure.trimmer_sideways", "structure.trimmer_shear", "structure.trimmer_sag",
            "structure.trimmer_gap",
        }),
        (members.ply_more, members.stronger_trimmer, members.deeper_ply),
    ),
    Row(
        frozenset({"structure.bearer_bending", "structure.bearer_sag", "structure.bearer_shear"}),
        (members.stronger_bearers, members.deeper_bearers),
    ),
    Row(frozenset({"structure.arm_bearer"}), (members.stronger_bearers, members.deeper_bearers)),
    Row(
        frozenset({
            "structure.stud_bending", "structure.stud_sag", "structure.upright_column", "structure.ladder_sideways",
            "structure.sill_bending", "structure.sill_sag", "structure.sill_shear",
        }),
        (members.closer_studs, members.stronger_member),
    ),
    Row(
        frozenset({"structure.platform_upright"}),
        (base.stronger_base, base.second_uprights),
    ),
    Row(
        frozenset({"structure.lid_board", "structure.lid_joist_bending"}),
        (members.lid_joists, members.stronger_lid_joists),
    ),
    Row(frozenset({"structure.lid_rail_bending", "structure.lid_rail_sag"}), (members.stronger_member, fixings.more_in_all_rows)),
    Row(frozenset({"structure.end_joint"}), (joints.bracket, joints.heavy_bracket, joints.bracket_pair)),
    Row(
        frozenset({
            "fixings.wall_path", "fixings.wall_ladder_alone", "fixings.wall_points", "fixings.wall_one_lost",
            "fixings.stand_off_bending", "fixings.stand_off_sag",
        }),
        (
            fixings.rail_under_cables, fixings.more_in_top_row, fixings.more_in_all_rows, fixings.rail_between,
            fixings.stronger_wall_fixing,
        ),
    ),
    Row(
        frozenset({"fixings.ceiling_row", "fixings.ceiling_shear"}),
        (fixings.second_ceiling_screws, fixings.longer_ceiling_screw),
    ),
    Row(
        frozenset({"structure.hung_ladder", "structure.hung_ladder_timber"}),
        (joints.ladder_brackets, joints.ladder_halved, joints.stronger_noggins),
    ),
    Row(frozenset({"fixings.standing_top_row"}), (fixings.more_in_top_row, fixings.rail_between)),
)  # fmt: skip


def next_steps(failing: tuple[Check, ...], ground: Ground, shelf: Shelf) -> Iterator[tuple[Check, Stronger]]:
    """Every step that is left, in the order of the table, then of the members' marks: the first one is to be taken."""
    return (
        (check, stronger)
        for row in TABLE
        for check in sorted(failing, key=lambda one: one.subject)
        if check.code in row.codes
        for step in row.steps
        if (stronger := step(Weak(check=check, ground=ground, shelf=shelf)))
    )
