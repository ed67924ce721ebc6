"""An arm that carries the screen: a hand, an accident, sideways; its bearers and its host wall (structure.md, 5.5)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final, NamedTuple

from service.checks.amounts import count, eurocode_5, force, house, length, moment, ratio
from service.checks.bearer_load import ARM, BearerLoad, bearer_load
from service.checks.bearers import bearer_moments_n_mm, biaxial_ratio, stronger_bearer
from service.checks.check import Check, Skipped
from service.checks.timber import joint_n
from service.engineering import actions, embedment, fixing_groups, rows, steel_plates, withdrawal
from service.rules import LoadDuration
from service.survey.wall import WallConstruction
from service.units import millimetres

if TYPE_CHECKING:
    from service.catalogue import Bracket
    from service.checks.check import Result
    from service.checks.ground import Ground

PULL: Final = "fixings.arm_pull"
ACCIDENT: Final = "fixings.arm_accident"
SIDEWAYS: Final = "fixings.arm_sideways"
BEARER: Final = "structure.arm_bearer"
HOST: Final = "structure.arm_host"
CODES: Final = (PULL, ACCIDENT, SIDEWAYS, BEARER, HOST)
SCREW_MM: Final = 8.0  # of a coach screw through the plate of an arm: common practice, no source
STUD_WALLS: Final = frozenset({WallConstruction.TIMBER_STUD, WallConstruction.LATH_AND_PLASTER})
LEAST_STUDS: Final = 2
WASHER_RATIO: Final = 3.0  # of f_c,90,k under a washer: EN 1995-1-1, 8.5.2(2)
ASSUMED: Final = "assumed coach screws of 8 mm through the bearer: the maker's own fixings are not declared"


class Case(NamedTuple):
    """Weight at the tip of the arm in one combination, design."""

    name: str
    load_n: float
    duration: LoadDuration


class Fixing(NamedTuple):
    """Characteristic resistances of one fixing of the plate in the bearer."""

    pull_n: float
    shear_n: float


def arm_checks(ground: Ground) -> tuple[Result, ...]:
    """Checks of an arm; any other bracket is flat."""
    load, bracket = bearer_load(ground), ground.job.bracket
    if load is None or bracket is None or bracket.kind != ARM:
        return tuple(Skipped(code=code, why="no screen hangs on an arm") for code in CODES)
    lasting, accident = persistent(load, ground), accidental(load, ground)
    return (
        _pull(PULL, load, bracket, lasting, ground=ground),
        _pull(ACCIDENT, load, bracket, accident, ground=ground),
        _sideways(load, bracket, ground),
        _bearer(load, max((lasting, accident), key=lambda one: _bearer_ratio(load, one, ground)), ground),
        _host(ground),
    )


def persistent(load: BearerLoad, ground: Ground) -> Case:
    """The screen with a hand that moves it."""
    partial = ground.rules.partial
    moved_n = partial.variable_ratio * ground.rules.actions.arm_hand_n
    return Case("a hand at its tip", partial.permanent_ratio * load.screen_n + moved_n, LoadDuration.SHORT)


def accidental(load: BearerLoad, ground: Ground) -> Case:
    """The screen with somebody who hangs on it; all factors are 1."""
    acts = ground.rules.actions
    pull_n = actions.arm_pull_n(load.screen_n, pull_ratio=acts.arm_pull_ratio, least_n=acts.arm_pull_least_n)
    return Case("somebody who hangs on it", actions.accidental_n(load.screen_n, pull_n), LoadDuration.INSTANTANEOUS)


def fixing_of(load: BearerLoad, ground: Ground) -> Fixing:
    """A coach screw in the bearer with figures taken low; its head lies on the steel plate and is not pulled through."""
    screws, timber = ground.rules.screws, load.beam.strength
    root_mm = screws.root_over_diameter_ratio * SCREW_MM
    held_mm = max(0.0, load.beam.width_mm - SCREW_MM)
    density_ratio = timber.density_kg_m3 / screws.declared_density_kg_m3
    thread_n = withdrawal.withdrawal_n(screws.withdrawal_mpa, SCREW_MM, held_mm, density_ratio)
    effective_mm = embedment.effective_diameter_mm(root_mm, 0.0, 0.0)
    along_mpa = embedment.drilled_embedment_mpa(timber.density_kg_m3, effective_mm)
    pressed_mpa = embedment.angled_embedment_mpa(along_mpa, effective_mm, 90.0)
    bends_n_mm = embedment.yield_moment_n_mm(screws.yield_steel_mpa, effective_mm)
    thin = steel_plates.thin_plate_modes_n(pressed_mpa, load.beam.width_mm, diameter_mm=effective_mm, yield_n_mm=bends_n_mm)
    shank_n = withdrawal.shank_tension_n(screws.tension_steel_mpa, root_mm)
    return Fixing(min(thread_n, shank_n), min(thin))


def _pull(code: str, load: BearerLoad, bracket: Bracket, case: Case, *, ground: Ground) -> Check:
    """Every top fixing takes its share of the turning and of the weight at once: (8.28)."""
    top_count = max(1, bracket.fixing_count // 2)
    pull_n = fixing_groups.prying_tension_n(case.load_n, load.lever_mm, load.rows_mm, top_count)
    shear_n = case.load_n / bracket.fixing_count
    fixing = fixing_of(load, ground)
    resists = [joint_n(value_n, case.duration, ground) for value_n in fixing]
    asked_ratio = rows.pulled_and_sheared_ratio(pull_n / resists[0], shear_n / resists[1])
    return Check(
        code=code,
        subject=bracket.model,
        says=f"{pull_n:.0f} N pull and {shear_n:.0f} N of weight on each of {top_count} top fixings with {case.name}; "
        f"a screw of {SCREW_MM:g} mm in the bearer holds {resists[0]:.0f} N",
        demand=ratio("u", asked_ratio),
        resistance=ratio("limit", 1.0),
        clause=eurocode_5("8.7.2, 8.7.3, (8.28)"),
        inputs=(
            force("F_d", case.load_n), length("e", load.lever_mm), length("z", load.rows_mm), count("n", top_count),
            force("T_d", pull_n), force("V_d", shear_n), force("F_ax,Rd", resists[0]), force("F_v,Rd", resists[1]),
        ),
        unverified=ASSUMED,
        remedy=_bolts(pull_n, load, asked_ratio, ground),
    )  # fmt: skip


def _bolts(pull_n: float, load: BearerLoad, asked_ratio: float, ground: Ground) -> str:
    """What is to be declared, and the washer of a bolt that holds as much: three times the strength across the grain."""
    declared = f"fixings declared for at least {math.ceil(pull_n)} N of pull each"
    if asked_ratio <= 1.0:
        return declared
    pressed_mpa = joint_n(WASHER_RATIO * load.beam.strength.compression_across_mpa, LoadDuration.SHORT, ground)
    washer_mm = math.ceil(math.sqrt(4 * pull_n / (math.pi * pressed_mpa) + SCREW_MM**2))
    return f"bolts through bearer and backboard with washers of at least {washer_mm} mm, a taller plate, or a flat bracket"


def _sideways(load: BearerLoad, bracket: Bracket, ground: Ground) -> Check:
    """The arm swung to a side along the wall: the weight turns the plate in its own plane."""
    case = persistent(load, ground)
    half_count = max(1, bracket.fixing_count // 2)
    turn_n = fixing_groups.prying_tension_n(case.load_n, load.lever_mm, bracket.plate_hole_width_mm, half_count)
    shear_n = turn_n + case.load_n / bracket.fixing_count
    resistance_n = joint_n(fixing_of(load, ground).shear_n, case.duration, ground)
    return Check(
        code=SIDEWAYS,
        subject=bracket.model,
        says=f"{shear_n:.0f} N of {resistance_n:.0f} N on a fixing with the arm swung along the wall and {case.name}",
        demand=force("V_d", shear_n),
        resistance=force("F_v,Rd", resistance_n),
        clause=eurocode_5("8.2.3, (8.9)"),
        inputs=(
            force("F_d", case.load_n), length("e", load.lever_mm), length("s", bracket.plate_hole_width_mm),
            count("n", half_count),
        ),
        unverified=ASSUMED,
        remedy=f"fixings declared for at least {math.ceil(shear_n)} N of shear each, or a wider plate",
    )  # fmt: skip


def _bearer_moments(load: BearerLoad, case: Case, ground: Ground) -> tuple[float, float]:
    accident = case.duration is LoadDuration.INSTANTANEOUS
    uniform_n = load.uniform_n * (1.0 if accident else ground.rules.partial.permanent_ratio)
    return bearer_moments_n_mm(
        load, screen_n=load.share_ratio * case.load_n, pull_n=load.pull_n(case.load_n), uniform_n=uniform_n
    )


def _bearer_ratio(load: BearerLoad, case: Case, ground: Ground) -> float:
    return biaxial_ratio(load.beam, _bearer_moments(load, case, ground), case.duration, ground)


def _bearer(load: BearerLoad, case: Case, ground: Ground) -> Check:
    moments = _bearer_moments(load, case, ground)
    return Check(
        code=BEARER,
        subject=load.mark,
        says=f"the top bearer under the arm and {case.name}, about both axes",
        demand=ratio("u", _bearer_ratio(load, case, ground)),
        resistance=ratio("limit", 1.0),
        clause=eurocode_5("6.1.6, (6.11) and (6.12)"),
        inputs=(
            force("F_d", case.load_n), length("e", load.lever_mm), length("z", load.rows_mm), moment("M_y,d", moments[0]),
            moment("M_z,d", moments[1]), length("L", load.span_mm),
        ),
        unverified=load.assumed,
        remedy=stronger_bearer(load.beam, moments, case.duration, ground),
    )  # fmt: skip


def _host(ground: Ground) -> Check:
    """What the arm pulls on in the end: never plasterboard alone, never steel studs (house choices of the wall table)."""
    job = ground.job
    wall = job.wall_construction
    known = wall is not WallConstruction.UNKNOWN and not (wall in STUD_WALLS and job.studs_tenth_mm is None)
    behind = _points_behind(ground) if known else 0
    resistance = count("there", behind)
    return Check(
        code=HOST,
        subject="host wall",
        says=f"a {wall.value.replace('_', ' ')} wall under an arm"
        + (f": {behind} studs behind the breast" if wall in STUD_WALLS and known else ""),
        demand=count("needed", LEAST_STUDS),
        resistance=resistance if known else None,
        clause=house("an arm needs masonry or studs behind the breast; plasterboard alone carries none"),
        unverified="" if known else "what the wall is made of, or where its studs are, is not known",
        remedy="" if behind >= LEAST_STUDS else "a flat bracket, or a pattress across at least two studs found behind the breast",
    )


def _points_behind(ground: Ground) -> int:
    """Studs behind the breast; masonry is behind it everywhere, and steel studs hold no arm."""
    job = ground.job
    if job.wall_construction in {WallConstruction.STEEL_STUD, WallConstruction.BOARDED_BEHIND_PLASTERBOARD}:
        return 0
    if job.wall_construction not in STUD_WALLS:
        return LEAST_STUDS
    width_mm = millimetres(ground.frame.sizes.frame_width_tenth_mm)
    return sum(1 for x in job.studs_tenth_mm or () if 0 <= millimetres(x) <= width_mm)
