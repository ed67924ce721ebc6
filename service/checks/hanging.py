"""A hung breast: the ways of its weight into the house, judged together, as each limit turns on what the other way bears."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.amounts import count, house
from service.checks.ceiling_path import ceiling_path_checks
from service.checks.check import Check, Skipped
from service.checks.hung_ladder import hung_ladder_checks
from service.checks.ladder_timber import ladder_timber_checks
from service.checks.paths import hangs, paths_of
from service.checks.stand_off import stand_off_checks
from service.checks.wall_path import wall_path_checks

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.checks.paths import Paths

PATHS: Final = "structure.hung_paths"
STANDS: Final = "no end is open: the frame stands on its base"


def hanging_checks(ground: Ground) -> tuple[Result, ...]:
    """Wall, ceiling, side ladders; why they do not apply to a breast that stands."""
    paths = paths_of(ground) if hangs(ground) else None
    return (
        *hung_paths_checks(paths),
        *wall_path_checks(ground, paths),
        *stand_off_checks(ground, paths),
        *ceiling_path_checks(ground, paths),
        *hung_ladder_checks(ground, paths),
        *ladder_timber_checks(ground, paths),
    )


def hung_paths_checks(paths: Paths | None) -> tuple[Result, ...]:
    """In how many ways the weight of a hung frame reaches the house, and which of them is the main one."""
    if paths is None:
        return (Skipped(code=PATHS, why=STANDS),)
    unknown = paths.host.unknown
    names = [name for name, there in (("the wall", paths.wall_there), ("the ceiling", paths.ceiling_stands)) if there]
    says = f"ways for the weight into the house: {' and '.join(names) or 'none'}"
    if names and not unknown:
        says += f"; the {paths.main} is the main path" + ("" if len(names) > 1 else " and the only one")
    return (
        Check(
            code=PATHS,
            subject="hung frame",
            says=says,
            demand=count("paths", 1),
            resistance=None if unknown else count("paths", paths.count),
            clause=house("5.1: each of two paths carries the weight alone; a single one is used to 0.50 at most"),
            unverified=f"not verified: {unknown}" if unknown else "",
            remedy=_more_paths(paths.count, unknown),
        ),
    )


def _more_paths(there: int, unknown: str) -> str:
    if unknown:
        return "find out what the wall is: a drill hole, a photo, its studs"
    return "" if there else "fixings into a wall that holds them, noggins between joists, or closed ends that stand on the base"
