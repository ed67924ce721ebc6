"""Changes of a brief that may make an unbuildable survey buildable, in families, the best of each family first.

Families: `knowledge/framing.md`, section 13, column "offer"; common practice, no source. No price is looked at.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final, NamedTuple

from service.quote import Operation
from service.survey.wishes import BoardKind, Finish, TopPartHeight

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from service.brief import Job
    from service.catalogue import Catalogue, Material, Screen
    from service.errors import Unmet

BRIEF: Final = "/survey/brief"
STEP_MM: Final = 5.0  # sizes are offered in steps of this: house choice
MOST_OF_A_FAMILY: Final = 12  # tries of one family
DEEPEST_MM, WIDEST_MM = 800.0, 3_000.0  # beyond these a person is asked: house choice


class Change(NamedTuple):
    """One change, as a code, a sentence and a patch."""

    code: str
    says: str
    operations: tuple[Operation, ...]


class Wish(NamedTuple):
    """What families read."""

    job: Job
    catalogue: Catalogue
    unmet: tuple[Unmet, ...]

    def short_mm(self, *codes: str) -> float:
        """By how much the worst of some inequalities is missed."""
        return max((one.short_by_mm for one in self.unmet if one.code in codes), default=0.0)


type Family = Callable[[Wish], Iterator[Change]]


def _set(code: str, says: str, **members: Any) -> Change:  # noqa: ANN401 - any JSON value
    operations = tuple(Operation(path=f"{BRIEF}/{name}", value=value) for name, value in members.items())
    return Change(code, says, operations)


def _down(value_mm: float) -> float:
    return value_mm // STEP_MM * STEP_MM


def _up(value_mm: float) -> float:
    return -(-value_mm // STEP_MM) * STEP_MM


def screens(wish: Wish) -> Iterator[Change]:
    """Smaller screens of the catalogue, the largest first; with the bracket as it is, else with the one that fits it."""
    now = wish.job.screen
    if now is None:
        return
    smaller = [one for one in wish.catalogue.screens.values() if one.diagonal_in < now.diagonal_in or _is_smaller(one, now)]
    for one in sorted(smaller, key=lambda screen: (-screen.diagonal_in, screen.model)):
        choice = {"kind": "catalogue", "model": one.model}
        says = f"screen {one.model}, {one.diagonal_in:g} in"
        yield _set("screen", says, screen=choice)
        yield _set("screen", f"{says}, on a bracket that fits it", screen=choice, screen_bracket=None)


def _is_smaller(one: Screen, now: Screen) -> bool:
    return one.body_width_mm < now.body_width_mm and one.body_height_mm < now.body_height_mm


def platforms(wish: Wish) -> Iterator[Change]:
    """Lower platforms, the highest first; for a platform that is none, the next that is one."""
    now, b = wish.job.platform_tenth_mm / 10, wish.job.timber.thickness_tenth_mm / 10
    short = wish.short_mm("recess_high", "low_top")
    lower = [_down(now - short - step * STEP_MM) for step in (0, 1, 2, 4, 8, 16)] if short else []
    for height in dict.fromkeys([*lower, 2 * b, b, 0.0]):
        if 0 <= height < now:
            yield _set("platform", f"platform {height:g} high", platform_height_mm=height)
    if wish.short_mm("platform"):
        yield _set("platform", f"platform {b:g} high", platform_height_mm=b)


def sills(wish: Wish) -> Iterator[Change]:
    """A lower or higher recess, as near to the wish as can be."""
    now, b = wish.job.upstand_tenth_mm / 10, wish.job.timber.thickness_tenth_mm / 10
    raise_by = wish.short_mm("upstand", "heat")
    if raise_by:
        for step in (0, 1, 2, 4):
            yield _set("sill", f"recess {_up(now + raise_by) + step * STEP_MM:g} above the fire",
                       sill_above_appliance_mm=_up(now + raise_by) + step * STEP_MM)  # fmt: skip
    lower_by = wish.short_mm("recess_high", "low_top")
    least = 2 * b
    if lower_by and _down(now - lower_by) >= least:
        height = _down(now - lower_by)
        yield _set("sill", f"recess {height:g} above the fire", sill_above_appliance_mm=height)


def depths(wish: Wish) -> Iterator[Change]:
    """Deeper breasts, the shallowest first."""
    short = wish.short_mm("depth_ladder", "depth_fire", "depth_screen")
    now = wish.job.depth_tenth_mm / 10
    for step in (0, 1, 2, 4, 8, 16) if short else ():
        depth = _up(now + short) + step * STEP_MM
        if depth <= DEEPEST_MM:
            yield _set("depth", f"breast {depth:g} deep", breast_depth_mm=depth)


def widths(wish: Wish) -> Iterator[Change]:
    """Wider breasts, the narrowest first; the width that a three-sided fire sets."""
    job = wish.job
    if job.width_tenth_mm is None or wish.short_mm("width_fixed"):
        yield _set("width", "the width that the fire sets", breast_width_mm=None)
        return
    short = wish.short_mm("width_fire_1", "width_fire_2", "width_ladder", "recess_wide")
    now = job.width_tenth_mm / 10
    for step in (0, 1, 2, 4, 8, 16, 32, 64) if short else ():
        width = _up(now + short) + step * STEP_MM
        if width <= WIDEST_MM:
            yield _set("width", f"breast {width:g} wide", breast_width_mm=width)


def shifts(wish: Wish) -> Iterator[Change]:
    """The fire nearer to the middle."""
    now = wish.job.shift_tenth_mm / 10
    if not now:
        return
    side = 1 if now > 0 else -1
    room = [one.available_mm for one in wish.unmet if one.code == "width_fire_1" and one.available_mm < abs(now)]
    for place in dict.fromkeys([*(side * _down(one) for one in room), 0.0]):
        yield _set("shift", f"fire {abs(place):g} off the middle" if place else "fire in the middle", appliance_shift_mm=place)


def timbers(wish: Wish) -> Iterator[Change]:
    """Other graded sections of the catalogue: the thinnest first."""
    now = (wish.job.timber.thickness_tenth_mm / 10, wish.job.timber.width_tenth_mm / 10)
    rows = [row for row in wish.catalogue.materials.values() if row.kind == "timber" and row.strength_class]
    by_section: dict[tuple[float, float], Material] = {}
    for row in sorted(rows, key=lambda one: (one.strength_class or "", one.code)):
        by_section.setdefault((row.thickness_mm or 0.0, row.width_mm or 0.0), row)
    for (b, d), row in sorted(by_section.items(), key=lambda one: (one[0][1], one[0][0])):
        if (b, d) != now:
            says = f"timber {b:g} x {d:g} {row.strength_class}"
            yield _set("timber", says, timber={"kind": "catalogue", "code": row.code})


def brackets(wish: Wish) -> Iterator[Change]:
    """Another bracket for the same screen."""
    if wish.job.screen is None:
        return
    yield _set("bracket", "a bracket that fits the screen", screen_bracket=None)
    for one in sorted(wish.catalogue.brackets.values(), key=lambda row: (row.depth_mm, row.model)):
        yield _set("bracket", f"bracket {one.model}", screen_bracket={"kind": "catalogue", "model": one.model})


def no_recess(wish: Wish) -> Iterator[Change]:
    """The same breast without a screen."""
    if wish.job.screen is not None:
        yield _set("no_screen", "no recess for a screen", screen=None, screen_bracket=None)


def tops(wish: Wish) -> Iterator[Change]:
    """Up to the ceiling, or to the height that leaves room for the lid."""
    brief = wish.job.survey.brief
    if isinstance(brief.top, TopPartHeight):
        short = wish.short_mm("recess_high", "low_top")
        if short:
            height = _up(brief.top.height_mm + short)
            yield _set("top", f"breast {height:g} high", top={"kind": "part_height", "height_mm": height})
        for one in wish.unmet:
            if one.code == "part_high" and one.available_mm > 0:
                height = _down(one.available_mm)
                yield _set("top", f"breast {height:g} high", top={"kind": "part_height", "height_mm": height})
        yield _set("top", "up to the ceiling", top={"kind": "ceiling"})
    elif wish.short_mm("bar"):
        height = _down(wish.job.clear_height_tenth_mm / 10 / 2)
        yield _set("top", f"breast {height:g} high", top={"kind": "part_height", "height_mm": height})


def appliances(wish: Wish) -> Iterator[Change]:
    """Another fire of the same open ends, the nearest in length first."""
    now = wish.job.appliance
    like = [one for one in wish.catalogue.appliances.values() if one.open_ends_count == now.open_ends_count]
    rows = [one for one in like if one.model != now.model]
    for one in sorted(rows, key=lambda row: (abs(row.body_width_mm - now.body_width_mm), row.model)):
        yield _set("appliance", f"fire {one.model}", appliance={"kind": "catalogue", "model": one.model})


def finishes(wish: Wish) -> Iterator[Change]:
    """A finish that the board takes, else a board that takes the finish."""
    if not any(one.code == "refused_finish" for one in wish.unmet) and wish.job.finish in {Finish.PAINTED, Finish.SKIMMED}:
        return
    for finish in (Finish.PAINTED, Finish.SKIMMED, Finish.TAPED):
        if finish is not wish.job.finish:
            yield _set("finish", f"finish {finish.value}", finish=finish.value)
    wanted = {Finish.PAINTED: BoardKind.MDF}.get(wish.job.finish, BoardKind.PLASTERBOARD)
    rows = [row for row in wish.catalogue.materials.values() if row.kind == "board" and row.board_kind == wanted.value]
    for row in sorted(rows, key=lambda one: (one.thickness_mm or 0, one.code)):
        yield _set("board", f"board {row.description}", board={"kind": "catalogue", "code": row.code})


def plainer(wish: Wish) -> Iterator[Change]:
    """Without what only a person can lay out."""
    brief = wish.job.survey.brief
    if brief.extras:
        yield _set("plain", "without the extras", extras=None)
    if brief.facing_kg_m2:
        yield _set("plain", "without the facing", facing_kg_m2=None)
    if brief.screen_place is not None:
        yield _set("plain", "the screen in a recess", screen_place=None)
    if brief.cornice is not None:
        yield _set("plain", "the breast under the cornice", cornice="stop_under")


FAMILIES: Final[dict[str, tuple[Family, ...]]] = {
    "recess_high": (screens, platforms, sills, tops, no_recess),
    "recess_wide": (screens, widths, appliances, no_recess),
    "low_top": (platforms, sills, tops, appliances),
    "rows": (brackets, screens, no_recess),
    "upstand": (sills, no_recess, screens),
    "heat": (sills, no_recess, appliances),
    "depth_ladder": (depths, timbers),
    "depth_fire": (depths, appliances),
    "depth_screen": (depths, brackets, no_recess, screens),
    "width_ladder": (widths, timbers, appliances),
    "width_fixed": (widths,),
    "width_fire_1": (widths, shifts, appliances),
    "width_fire_2": (widths, appliances),
    "platform": (platforms,),
    "part_high": (tops, appliances),
    "bar": (platforms, tops, timbers),
    "refused_finish": (finishes,),
    "by_hand": (plainer, finishes),
}
EVERY: Final[tuple[Family, ...]] = (
    screens, platforms, sills, depths, widths, shifts, timbers, brackets, tops, appliances, no_recess, finishes, plainer,
)  # fmt: skip


def families_for(unmet: tuple[Unmet, ...]) -> tuple[Family, ...]:
    """Families in the order in which they are tried: those for what is missed first, then all others."""
    first = [family for one in unmet for family in FAMILIES.get(one.code, ())]
    return tuple(dict.fromkeys([*first, *EVERY]))
