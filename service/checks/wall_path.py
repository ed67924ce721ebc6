"""The wall alone: every counted fixing at its place, tension and shear together (`knowledge/structure.md`, 5.1 and 5.13 f)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.amounts import count, force, house, length, moment, ratio
from service.checks.check import Check, Skipped
from service.checks.ground import hangs_ladders
from service.checks.ladder_parts import LADDER_SHARE, Case, cases_of
from service.checks.paths import wall_situations
from service.checks.wall_rows import Held, hung_action, ladder_fixings, weight_count, worst_fixing
from service.checks.wall_values import fixing_value

if TYPE_CHECKING:
    from service.checks.check import Result
    from service.checks.ground import Ground
    from service.checks.paths import Paths
    from service.checks.wall_rows import Worst
    from service.checks.wall_values import FixingValue

PATH: Final = "fixings.wall_path"
LADDER: Final = "fixings.wall_ladder_alone"
MOST_MORE: Final = 24  # more fixings than this are no remedy
STANDS: Final = "no end is open: the frame stands on its base and does not hang on the wall"
FIND_OUT: Final = "find out what the wall is: a drill hole, a photo, its studs"


type Values = dict[str, FixingValue]  # of one fixing, by the name of the situation


class Part(NamedTuple):
    """What is judged: the whole frame, or one side ladder alone."""

    code: str
    subject: str
    held: tuple[Held, ...]
    share: float  # of the hung weight
    cases: tuple[Case, ...]
    where: str  # more fixings would go


class Judged(NamedTuple):
    """The case that is nearest to its limit."""

    case: Case
    worst: Worst
    value: FixingValue


def wall_path_checks(ground: Ground, paths: Paths | None) -> tuple[Result, ...]:
    """The wall path of a hung breast, and of each side ladder at an open end alone."""
    if paths is None:
        return (Skipped(code=PATH, why=STANDS), Skipped(code=LADDER, why=STANDS))
    nothing = paths.host.nothing or ("" if paths.held or paths.host.unknown else "no fixing into the wall counts")
    if nothing:
        return (Skipped(code=PATH, why=f"{nothing}: there is no wall path"), Skipped(code=LADDER, why=nothing))
    parts = _parts(ground, paths)
    situations = {case.situation.name: case.situation for part in parts for case in part.cases}
    values = {name: fixing_value(ground, situation, paths.host) for name, situation in situations.items()}
    return tuple(_check(part, values, ground, paths) for part in parts)


def _parts(ground: Ground, paths: Paths) -> tuple[Part, ...]:
    limit_ratio = paths.wall_limit_ratio if paths.main == "wall" else 1.0
    whole = tuple(Case(one, limit_ratio) for one in wall_situations(paths, ground))
    ladders = cases_of(paths, ground)
    ends = (("left", ground.frame.left_open), ("right", ground.frame.right_open))
    own = [(side, ladder_fixings(ground, left=side == "left")) for side, is_open in ends if is_open]
    return (
        Part(PATH, "wall fixings", paths.held, 1.0, whole, "in the top row"),
        *(Part(LADDER, f"{side} ladder", held, LADDER_SHARE, ladders, "high in its upright") for side, held in own),
    )


def _judge(part: Part, values: Values, ground: Ground, paths: Paths) -> Judged:
    found = []
    for case in part.cases:
        action, value = hung_action(ground, paths.load, case.situation, part.share), values[case.situation.name]
        found.append(Judged(case, worst_fixing(part.held, action, value, ground), value))
    return max(found, key=lambda one: one.worst.utilisation_ratio / one.case.limit_ratio)


def _check(part: Part, values: Values, ground: Ground, paths: Paths) -> Check:
    case, worst, value = _judge(part, values, ground, paths)
    action = hung_action(ground, paths.load, case.situation, part.share)
    unknown, bears = paths.host.unknown, math.isfinite(worst.utilisation_ratio)
    passes = not unknown and worst.utilisation_ratio <= case.limit_ratio
    pulled_n, sheared_n = (worst.tension_n, worst.shear_n) if math.isfinite(worst.tension_n) else (0.0, action.shear_n)
    asked = ratio("T/T_Rd + V/V_Rd", worst.utilisation_ratio) if bears else force("T + V", pulled_n + sheared_n)
    there = ratio("limit", case.limit_ratio) if bears else force("R_d", 0.0)
    return Check(
        code=part.code,
        subject=part.subject,
        says=f"under {case.situation.name} the fixing that is asked most is pulled with {pulled_n:.0f} N and sheared with "
        f"{sheared_n:.0f} N" + _single(case.limit_ratio, paths),
        demand=asked,
        resistance=None if unknown else there,
        clause=house("5.1: a stiff frame turns about its lowest bearing; T/T_Rd + V/V_Rd of each fixing"),
        inputs=(
            force("G", paths.load.weight_n * part.share), length("e", paths.load.from_wall_mm), moment("M_d", action.moment_n_mm),
            force("V_d", action.shear_n), count("n", sum(one.share for one in part.held)),
            count("n_V", weight_count(part.held, ground)), length("y_max", max((one.above_mm for one in part.held), default=0.0)),
            force("T_1", pulled_n), force("V_1", sheared_n), force("T_Rd", value.tension_n), force("V_Rd", value.shear_n),
        ),
        unverified="; ".join(filter(None, (unknown and f"not verified: {unknown}", paths.load.assumed, value.assumed))),
        remedy=FIND_OUT if unknown else "" if passes else _remedy(part, values, ground, paths),
    )  # fmt: skip


def _single(limit_ratio: float, paths: Paths) -> str:
    if limit_ratio < 1:
        return f"; the wall is the only path, so the sum stays within {limit_ratio:g}"
    return "; the wall is the main path" if paths.main == "wall" else "; the wall is the second path"


def _remedy(part: Part, values: Values, ground: Ground, paths: Paths) -> str:
    """How many more fixings pass."""
    top = Held(max((one.above_mm for one in part.held), default=0.0), through_upright=True)
    for more in range(1, MOST_MORE + 1):
        case, worst, _value = _judge(part._replace(held=(*part.held, *((top,) * more))), values, ground, paths)
        if worst.utilisation_ratio <= case.limit_ratio:
            through = " through uprights" if hangs_ladders(ground) else ""
            return f"needs {more} more fixing{'s' if more > 1 else ''} {part.where}{through}"
    return (
        "no number of fixings of this kind in the top row is enough: thicker or longer fixings declared for this wall, "
        "the weight on the ceiling joists, or closed ends that stand on the base"
    )
