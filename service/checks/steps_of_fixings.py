"""Steps of wall and ceiling: a rail clear of cables, more fixings, stronger ones (`knowledge/framing.md`, 10.2, 10 to 14)."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from service import hardware
from service.checks.ground import hangs_ladders
from service.checks.step import stronger
from service.frame import Added, Role
from service.units import tenths, text_mm

if TYPE_CHECKING:
    from service.checks.step import Stronger, Weak
    from service.frame import Box, Frame

REAR_RAILS: Final = frozenset({Role.REAR_BOTTOM_RAIL, Role.REAR_MID_RAIL, Role.EXTRA_REAR_RAIL, Role.TOP_RAIL_REAR})
MOST_REAR_RAILS_COUNT: Final = 3  # rails that are added: house choice
MOST_MORE_COUNT: Final = 8  # fixings more in one row or upright: house choice; spacing stops it earlier
APART_DIAMETER_RATIO: Final = 7.0  # along the joist: EN 1995-1-1, Table 8.6, a_1
EDGE_DIAMETER_RATIO: Final = 4.0  # the same, a_2,CG


def rail_under_cables(weak: Weak) -> Stronger | None:
    """A rear rail under the strip where cables may run, where the top row does not count (framing.md, 10.3)."""
    frame, job = weak.ground.frame, weak.ground.job
    if weak.added.extra_rear_rails_tenth_mm or job.cables_scanned or not frame.full_height:
        return None
    thick = job.timber.thickness_tenth_mm
    low = job.clear_height_tenth_mm - tenths(weak.ground.rules.frame.cable_zone_mm) - thick
    while low > frame.levels.appliance_top_tenth_mm and not _free(frame, low, thick):
        low -= 10
    return _rail_at(weak, low) if low > frame.levels.appliance_top_tenth_mm else None


def more_in_top_row(weak: Weak) -> Stronger | None:
    """One more in each rear upright and through the rail of the highest row that counts.

    Where the weight goes through the uprights' fixings only (structure.md, 5.13 g) the uprights' come first.
    """
    uprights, rail = weak.added.top_upright_fixings_count, weak.added.top_rail_fixings_count
    if uprights >= MOST_MORE_COUNT:
        return None
    if hangs_ladders(weak.ground):
        return stronger(weak, "one more fixing in each rear upright in the top row", top_upright_fixings_count=uprights + 1)
    return stronger(
        weak, "one more fixing in each rear upright and through the rail of the top row",
        top_upright_fixings_count=uprights + 1, top_rail_fixings_count=rail + 1,
    )  # fmt: skip


def more_in_all_rows(weak: Weak) -> Stronger | None:
    """One more through every rear rail."""
    count = weak.added.all_rail_fixings_count + 1
    return None if count > MOST_MORE_COUNT else stronger(
        weak, "one more fixing through every rear rail", all_rail_fixings_count=count
    )  # fmt: skip


def rail_between(weak: Weak) -> Stronger | None:
    """A rear rail half way in the longest gap between the rows."""
    frame, thick = weak.ground.frame, weak.ground.job.timber.thickness_tenth_mm
    if len(weak.added.extra_rear_rails_tenth_mm) >= MOST_REAR_RAILS_COUNT:
        return None
    lows = sorted(member.box.z0_tenth_mm for member in frame.members if member.role in REAR_RAILS)
    gaps = sorted(pairwise(lows), key=lambda gap: gap[0] - gap[1])
    apart = tenths(weak.ground.rules.walls.fixing_spacing_mm)
    middles = ((low + high) // 20 * 10 for low, high in gaps if high - low >= 2 * apart)
    free = next((low for low in middles if _free(frame, low, thick)), None)
    return None if free is None else _rail_at(weak, free)


def stronger_wall_fixing(weak: Weak) -> Stronger | None:
    """The next fixing that is declared to bear more in that wall."""
    count, passed_mm = weak.added.wall_fixing_steps_count + 1, weak.ground.job.timber.width_tenth_mm / 10
    found = hardware.wall_fixing(weak.ground.job, passed_mm, weak.shelf, count)
    return None if found is None else stronger(weak, f"wall fixing {found.code}", wall_fixing_steps_count=count)


def second_ceiling_screws(weak: Weak) -> Stronger | None:
    """A second screw where a top rail crosses a joist, where distances along the joist allow it."""
    screw, width_mm = weak.ground.hardware.ceiling_screw, weak.ground.job.timber.width_tenth_mm / 10
    if screw is None or weak.added.ceiling_screws_apart_tenth_mm or not weak.ground.frame.ceiling_screws:
        return None
    diameter_mm = screw.diameter_mm or 0.0
    if width_mm < (APART_DIAMETER_RATIO + 2 * EDGE_DIAMETER_RATIO) * diameter_mm:
        return None
    apart = tenths(APART_DIAMETER_RATIO * diameter_mm)
    return stronger(weak, "a second screw at each crossing of a joist", ceiling_screws_apart_tenth_mm=apart)


def longer_ceiling_screw(weak: Weak) -> Stronger | None:
    """The next longer screw into the joists."""
    count = weak.added.ceiling_screw_steps_count + 1
    found = hardware.ceiling_screw(weak.ground.job, weak.shelf, count)
    return None if found is None else stronger(weak, f"ceiling screw {found.code}", ceiling_screw_steps_count=count)


def _rail_at(weak: Weak, low: int) -> Stronger:
    rails = (*weak.added.extra_rear_rails_tenth_mm, low)
    return stronger(weak, f"a rear rail at {text_mm(low)}", Added.REAR_RAIL, extra_rear_rails_tenth_mm=rails)


def _free(frame: Frame, low: int, thick: int) -> bool:
    """Whether nothing lies where a rear rail would."""
    depth = max(member.box.y1_tenth_mm for member in frame.members if member.role is Role.TOP_RAIL_REAR)
    left = min(member.box.x0_tenth_mm for member in frame.members if member.role is Role.TOP_RAIL_REAR)
    right = max(member.box.x1_tenth_mm for member in frame.members if member.role is Role.TOP_RAIL_REAR)
    boxes = (*(member.box for member in frame.members), *(panel.box for panel in frame.panels))
    return not any(_meets(box, (left, right), depth, (low, low + thick)) for box in boxes)


def _meets(box: Box, x: tuple[int, int], depth: int, z: tuple[int, int]) -> bool:
    return (
        box.y0_tenth_mm < depth and box.y1_tenth_mm > 0 and box.x0_tenth_mm < x[1] and box.x1_tenth_mm > x[0]
        and box.z0_tenth_mm < z[1] and box.z1_tenth_mm > z[0]
    )  # fmt: skip
