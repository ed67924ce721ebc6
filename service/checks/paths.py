"""The two ways in which a hung breast gets its weight into the house, which of them is the main one, and what each must show.

Rules: `knowledge/structure.md`, 5.1: each path alone carries 1.0 G; the main one carries 1.35 G with all other loads; a single
path shows a utilisation of at most 0.50, as nothing catches the frame if it goes. A path that fails counts for nothing.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import msgspec

from service.checks.ceiling_rows import Rows, ceiling_rows, pulled_by_the_face_n, row_forces, row_resistance_n, row_value
from service.checks.host import Host, host_of
from service.checks.hung_weight import Load, hung_load
from service.checks.situations import Situation, lost, main_situations
from service.checks.wall_rows import Held, held_fixings, hung_action, worst_fixing
from service.checks.wall_values import fixing_value
from service.engineering import actions
from service.units import millimetres

if TYPE_CHECKING:
    from service.checks.ground import Ground


class Paths(msgspec.Struct, frozen=True, kw_only=True):
    """Both paths of one design and how they are judged."""

    load: Load
    host: Host
    held: tuple[Held, ...]
    rows: Rows | None
    main: str  # `wall`, `ceiling`
    wall_limit_ratio: float
    ceiling_limit_ratio: float
    ceiling_stands: bool  # it carries the lost situation, and the joists bear it
    ceiling_binds: bool  # False: it counts for nothing, and the wall alone is enough

    @property
    def wall_there(self) -> bool:
        """Whether any fixing holds in the wall, as far as is known."""
        return not self.host.nothing and bool(self.held) and not self.host.unknown

    @property
    def count(self) -> int:
        """Paths that are there."""
        return int(self.wall_there) + int(self.ceiling_stands)


def hangs(ground: Ground) -> bool:
    """Whether the upper frame hangs: an end stands open under it."""
    return ground.frame.left_open or ground.frame.right_open


def paths_of(ground: Ground) -> Paths:
    """Both paths of a hung breast."""
    load, host, held, rows = hung_load(ground), host_of(ground), held_fixings(ground), ceiling_rows(ground)
    single_ratio = ground.rules.members.single_path_ratio
    wall_there = not host.nothing and not host.unknown and bool(held)
    wall_main = _worst_wall(ground, load, held, host) if wall_there else math.inf
    stands = rows is not None and ceiling_holds(ground, rows, load)
    on_ceiling = rows is not None and wall_main > 1.0 and not host.unknown and (
        not wall_there or (stands and _ceiling_main(ground, rows, load) <= 1.0)
    )  # fmt: skip
    return Paths(
        load=load, host=host, held=held, rows=rows, main="ceiling" if on_ceiling else "wall",
        wall_limit_ratio=1.0 if stands else single_ratio,
        ceiling_limit_ratio=1.0 if wall_there or host.unknown else single_ratio,
        ceiling_stands=stands, ceiling_binds=not (wall_there and wall_main <= single_ratio),
    )  # fmt: skip


def wall_situations(paths: Paths, ground: Ground) -> tuple[Situation, ...]:
    """What the wall is judged by."""
    return main_situations(ground.rules) if paths.main == "wall" else (lost(ground.rules),)


def ceiling_situations(paths: Paths, ground: Ground) -> tuple[Situation, ...]:
    """What the ceiling is judged by."""
    return main_situations(ground.rules) if paths.main == "ceiling" else (lost(ground.rules),)


def ceiling_holds(ground: Ground, rows: Rows, load: Load) -> bool:
    """Whether the ceiling alone carries 1.0 G, no row lifts, and no joist is asked more than it may be."""
    situation = lost(ground.rules)
    return ceiling_ratio(rows, ground, load, situation) <= 1.0 and joist_n(rows, load) <= ground.rules.actions.joist_extra_n


def joist_n(rows: Rows, load: Load) -> float:
    """What hangs on one joist."""
    return load.weight_n / rows.joist_count


def ceiling_ratio(rows: Rows, ground: Ground, load: Load, situation: Situation, *, pulled: bool = False) -> float:
    """The greater utilisation of both rows; infinite where one lifts or nothing holds."""
    forces, value = row_forces(rows, ground, load, situation), row_value(ground)
    more_n = pulled_by_the_face_n(rows, ground, situation, face_force_n(ground)) if pulled else 0.0
    if min(forces) < 0 or value.single_n <= 0:
        return math.inf
    counts = (rows.rear_count, rows.front_count)
    return max((force + more_n) / row_resistance_n(value, count, situation) for force, count in zip(forces, counts, strict=True))


def face_force_n(ground: Ground) -> float:
    """The line load over the face."""
    width_mm = millimetres(ground.frame.sizes.finished_width_tenth_mm)
    return actions.face_force_n(ground.rules.actions.face_line_n_per_m, width_mm)


def _ceiling_main(ground: Ground, rows: Rows, load: Load) -> float:
    return max(ceiling_ratio(rows, ground, load, one) for one in main_situations(ground.rules))


def _worst_wall(ground: Ground, load: Load, held: tuple[Held, ...], host: Host) -> float:
    return max(
        worst_fixing(held, hung_action(ground, load, one), fixing_value(ground, one, host), ground).utilisation_ratio
        for one in main_situations(ground.rules)
    )
