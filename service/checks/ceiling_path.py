"""The ceiling alone: rows of screws in joists that are really crossed, and these joists (`knowledge/structure.md`, 5.1)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.amounts import count, eurocode_5, force, house, length
from service.checks.ceiling_rows import pulled_by_the_face_n, row_forces, row_resistance_n, row_value, screw_shear_n
from service.checks.check import Check, Skipped
from service.checks.paths import ceiling_situations, face_force_n, joist_n
from service.checks.situations import push
from service.engineering import load_paths, withdrawal
from service.survey.ceiling import Ceiling, CeilingKind, JoistDirection

if TYPE_CHECKING:
    from service.checks.ceiling_rows import Rows, RowValue
    from service.checks.check import Quantity, Result
    from service.checks.ground import Ground
    from service.checks.paths import Paths
    from service.checks.situations import Situation

ROW: Final = "fixings.ceiling_row"
LIFT: Final = "fixings.ceiling_lift"
JOIST: Final = "structure.ceiling_joist"
SHEAR: Final = "fixings.ceiling_shear"
CODES: Final = (ROW, LIFT, SHEAR, JOIST)
MOST_SCREWS: Final = 40
NO_PATH: Final = {
    CeilingKind.TRUSS_TIE: "no structural fixing goes into the tie of a roof truss: ask a structural engineer",
    CeilingKind.SUSPENDED_GRID: "a suspended grid carries nothing",
    CeilingKind.STEEL_FURRING: "steel furring carries nothing",
    CeilingKind.UNKNOWN: "what the ceiling is is not known",
    CeilingKind.POST_TENSIONED: "nothing is drilled into a post-tensioned slab",
}


class Row(NamedTuple):
    """One row of screws in the situation that asks most of it."""

    mark: str
    screw_count: int
    force_n: float
    situation: Situation


def ceiling_path_checks(ground: Ground, paths: Paths | None) -> tuple[Result, ...]:
    """Rows and joists of the ceiling path; why there is none."""
    if paths is None:
        return _skipped("no end is open: the frame stands on its base and does not hang from the ceiling")
    if not ground.frame.full_height:
        return _skipped("the breast ends below the ceiling")
    if paths.rows is None:
        return _skipped(f"there is no ceiling path: {_why_none(ground)}")
    value = row_value(ground)
    rows = tuple(_row(row, value, ground, paths) for row in _rows_of(paths.rows, value, ground, paths))
    return (*rows, _lift(paths.rows, ground, paths), _shear(paths.rows, ground, paths), _joist(paths.rows, ground, paths))


def _skipped(why: str) -> tuple[Skipped, ...]:
    return tuple(Skipped(code=code, why=why) for code in CODES)


def _why_none(ground: Ground) -> str:
    kind = (ground.job.survey.ceiling or Ceiling()).kind
    if kind in NO_PATH:
        return NO_PATH[kind]
    if not ground.job.ceiling_holds_screws:
        return "the layout puts no screws into this ceiling"
    if ground.job.joists is JoistDirection.ALONG_WALL:
        return "the joists run along the wall, and no noggins are fitted between them"
    return "no joist over the breast was found"


def _rows_of(rows: Rows, value: RowValue, ground: Ground, paths: Paths) -> tuple[Row, ...]:
    """Each row in its worst situation. Without a wall the pull on the face goes to the rows as well."""
    found = []
    for situation in ceiling_situations(paths, ground):
        forces = row_forces(rows, ground, paths.load, situation)
        pulled = not paths.wall_there and not paths.host.unknown
        more_n = pulled_by_the_face_n(rows, ground, situation, face_force_n(ground)) if pulled else 0.0
        found.append(
            (
                Row(rows.rear_mark, rows.rear_count, forces.rear_n + more_n, situation),
                Row(rows.front_mark, rows.front_count, forces.front_n + more_n, situation),
            )
        )
    return tuple(max(same, key=lambda one: _asked_ratio(one, value)) for same in zip(*found, strict=True))


def _asked_ratio(row: Row, value: RowValue) -> float:
    resistance_n = row_resistance_n(value, row.screw_count, row.situation)
    return row.force_n / resistance_n if resistance_n > 0 else math.inf


def _row(row: Row, value: RowValue, ground: Ground, paths: Paths) -> Check:
    limit_ratio = paths.ceiling_limit_ratio
    resistance_n = row_resistance_n(value, row.screw_count, row.situation) * limit_ratio
    single = f"; the ceiling is the only path and is used to {limit_ratio:g} at most" if limit_ratio < 1 else ""
    pulled = value.pulled
    parts: tuple[Quantity, ...] = ()
    if pulled is not None:
        parts = (force("F_thread,k", pulled.thread_n), force("F_head,k", pulled.head_n), length("l_ef", pulled.thread_mm))
    return Check(
        code=ROW,
        subject=row.mark,
        says=f"under {row.situation.name} {row.screw_count} screws are pulled with {max(0.0, row.force_n):.0f} N{single}",
        demand=force("N_d", max(0.0, row.force_n)),
        resistance=force("N_Rd", resistance_n),
        clause=eurocode_5("8.7.2, (8.40a), (8.40b), (8.41)"),
        inputs=(force("G", paths.load.weight_n), length("e", paths.load.from_wall_mm), count("n", row.screw_count),
                count("n_ef", withdrawal.acting_count(row.screw_count)), *parts),
        binding=paths.ceiling_binds,
        unverified="; ".join(filter(None, (value.assumed, paths.load.assumed))),
        remedy=_row_remedy(row, value, ground, limit_ratio) if row.force_n > resistance_n else "",
    )  # fmt: skip


def _row_remedy(row: Row, value: RowValue, ground: Ground, limit_ratio: float) -> str:
    """The number of screws that passes, and the head or thread where that governs."""
    screw = ground.hardware.ceiling_screw
    if screw is None or value.single_n <= 0:
        return "no screw that is sold reaches through the rail into the joists"
    enough = next(
        (
            n
            for n in range(row.screw_count, MOST_SCREWS)
            if row_resistance_n(value, n, row.situation) * limit_ratio >= row.force_n
        ),
        None,
    )
    says = [f"{enough - row.screw_count} more screws in this row"] if enough is not None else []
    if value.pulled is not None:
        single_n = row_resistance_n(value, row.screw_count, row.situation) * limit_ratio / value.single_n
        wanted_n = row.force_n / single_n
        at = screw.declared_density_kg_m3 or ground.rules.screws.declared_density_kg_m3
        ratio = ground.rules.strength_class("C16").density_kg_m3 / at
        both = []  # a head and a thread that are both too weak are mended together
        if value.pulled.head_n < wanted_n:
            of_head = screw.head_pull_mpa or ground.rules.screws.head_pull_mpa
            both.append(f"washers of at least {math.ceil(withdrawal.head_for_force_mm(wanted_n, of_head, ratio))} mm")
        if value.pulled.thread_n < wanted_n:
            of_thread = screw.withdrawal_mpa or ground.rules.screws.withdrawal_mpa
            held_mm = withdrawal.thread_for_force_mm(wanted_n, of_thread, screw.diameter_mm or 0.0, ratio)
            both.append(f"{math.ceil(held_mm - value.pulled.thread_mm)} mm more thread in the joist")
        says += [" and ".join(both)] if both else []
    return "needs " + ", or ".join(says) if says else "let the wall carry it"


def _lift(rows: Rows, ground: Ground, paths: Paths) -> Check:
    """The weight, with a person where the ceiling is the main path, pulls between the rows."""
    worst = max(ceiling_situations(paths, ground), key=lambda one: _centre_mm(one, ground, paths))
    centre_mm = _centre_mm(worst, ground, paths)
    lifts = load_paths.row_lifts(centre_mm, rows.rear_mm, rows.front_mm)
    behind = centre_mm < rows.rear_mm
    return Check(
        code=LIFT,
        subject="ceiling rows",
        says=f"under {worst.name} the load acts {centre_mm:.0f} mm from the wall; the rows are at {rows.rear_mm:.0f} and "
        f"{rows.front_mm:.0f} mm" + (": one row lifts" if lifts else ""),
        demand=length("x_r", rows.rear_mm) if behind else length("e", centre_mm),
        resistance=length("e", centre_mm) if behind else length("x_f", rows.front_mm),
        clause=house("5.1: the load acts between the rows, else one of them lifts"),
        binding=paths.ceiling_binds,
        remedy="let the wall be the main path, or a shallower breast" if lifts else "",
    )


def _shear(rows: Rows, ground: Ground, paths: Paths) -> Result:
    """A pull on the face goes through the ceiling screws where no wall takes it."""
    if paths.wall_there or paths.host.unknown:
        return Skipped(code=SHEAR, why="the wall takes a pull on the face")
    situation, screw_count = push(ground.rules), rows.rear_count + rows.front_count
    asked_n = situation.push_ratio * face_force_n(ground) / screw_count
    single_n = screw_shear_n(ground, situation) * paths.ceiling_limit_ratio
    return Check(
        code=SHEAR,
        subject="ceiling screws",
        says=f"a pull on the face shears each of {screw_count} ceiling screws with {asked_n:.0f} N",
        demand=force("V_d", asked_n),
        resistance=force("V_Rd", single_n),
        clause=eurocode_5("8.2.2 over a gap, plastic limit"),
        inputs=(force("H", face_force_n(ground)), count("n", screw_count)),
        remedy=f"needs {math.ceil(asked_n * screw_count / single_n) - screw_count} more screws"
        if single_n and asked_n > single_n
        else "",
    )


def _centre_mm(situation: Situation, ground: Ground, paths: Paths) -> float:
    weight_n = situation.weight_ratio * paths.load.weight_n
    person_n = situation.person_ratio * ground.rules.actions.person_n
    depth_mm = ground.frame.sizes.finished_depth_tenth_mm / 10
    return (weight_n * paths.load.from_wall_mm + person_n * depth_mm) / (weight_n + person_n)


def _joist(rows: Rows, ground: Ground, paths: Paths) -> Check:
    each_n, limit_n = joist_n(rows, paths.load), ground.rules.actions.joist_extra_n
    return Check(
        code=JOIST,
        subject="ceiling joists",
        says=f"{rows.joist_count} joists carry {each_n:.0f} N each more than they were built for",
        demand=force("G/n", each_n),
        resistance=force("limit", limit_n),
        clause=house("ceiling joists are not designed for hung walls: more on one joist is for an engineer"),
        inputs=(force("G", paths.load.weight_n), count("n", rows.joist_count)),
        binding=paths.ceiling_binds,
        unverified=paths.load.assumed,
        remedy=f"at least {math.ceil(paths.load.weight_n / limit_n)} joists, the wall alone, or a structural engineer's word"
        if each_n > limit_n
        else "",
    )
