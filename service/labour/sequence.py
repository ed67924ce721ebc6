"""The order of work: what each step adds, what is measured in it, who is needed and what must wait.

Order: `knowledge/labour.md`, section 4, `knowledge/cladding.md`, section 10, `knowledge/handling.md`, sections 4 and 8.
Tolerances: `knowledge/cladding.md`, section 8: common practice, no source, but for the plumb of faces (NHBC Standards 9.1.3,
from memory).
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

import msgspec

from service.checks import boards_for_two, may_be_tilted
from service.frame import CutWhen, Layer, Role, Unit
from service.labour.tasks import needs_electrician
from service.survey.wishes import Finish
from service.units import text_mm

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from service.frame import Box, Member, Panel
    from service.labour.tasks import Site

LEVEL_LENGTH_MM, LEVEL_DEPTH_MM, DIAGONALS_MM = 2.0, 1.0, 3.0  # common practice, no source
PLUMB_MM, FLAT_MM = 3.0, 2.0  # over the height; under a 2 m straight edge: common practice, no source
LEVEL_PER_M_MM: Final = 3.0  # NHBC Standards 9.1.3, from memory
PROPS_COUNT: Final = 4  # framing.md, section 12
TWO, ONE = 2, 1
SKIRTING_OVER_TENTH_MM: Final = 200  # cladding.md, section 7: W + 20
CEILING_GAP_MM: Final = 3.0  # ceiling edges are cut short by this and caulked (framing.md, section 11)


class Measured(msgspec.Struct, frozen=True, kw_only=True):
    """Something that is measured in a step: what it must be, and by how much it may differ."""

    what: str
    value_mm: float
    tolerance_mm: float  # plus or minus


class Adding(msgspec.Struct, frozen=True, kw_only=True):
    """So many fixings of one kind."""

    what: str
    fixings_count: int


class Step(msgspec.Struct, frozen=True, kw_only=True):
    """One step. Marks are those of the frame; every timber and board is added in one step."""

    activity: str  # of the programme
    name: str
    does: tuple[str, ...]
    members: tuple[str, ...] = ()
    panels: tuple[str, ...] = ()
    fixings: tuple[Adding, ...] = ()
    measures: tuple[Measured, ...] = ()
    people_count: int = ONE
    props_count: int = 0
    trade: str = "joiner"
    wait: str = ""  # before the next step
    number: str = ""  # "4": its place in the order


def build_sequence(site: Site) -> tuple[Step, ...]:
    """Every step from the bare wall to the hand-over."""
    parts = (_start, _cutting, _base, _measuring, _upper, _electrics, _boards, _finish, _fitting_out)
    steps = [step for part in parts for step in part(site)]
    return tuple(msgspec.structs.replace(step, number=str(place)) for place, step in enumerate(steps, start=1))


def _marks(parts: Iterable[Member | Panel]) -> tuple[str, ...]:
    return tuple(part.mark for part in parts)


def _adding(*things: tuple[str, int]) -> tuple[Adding, ...]:
    return tuple(Adding(what=what, fixings_count=count) for what, count in things if count)


def _start(site: Site) -> Iterator[Step]:
    job, sizes = site.job, site.frame.sizes
    left = job.wall_centre_tenth_mm - sizes.frame_width_tenth_mm // 2
    yield Step(
        activity="N01",
        name="protect_and_set_out",
        does=(
            "power to this wall off and locked, cables and pipes traced and marked",
            f"mark the left end of the frame {text_mm(left)} from the left end of the wall, and plumb lines of both ends",
            "mark studs and joists that were found; check that the fire on site is the fire of this design",
        ),
        measures=(
            Measured(what="width of the frame on the wall", value_mm=sizes.frame_width_tenth_mm / 10, tolerance_mm=1.0),
            Measured(what="lowest clear height over the breast", value_mm=job.clear_height_tenth_mm / 10, tolerance_mm=0.0),
        ),
        people_count=TWO,
    )
    if job.skirting_height_mm > 0:
        yield Step(
            activity="N02", name="strip_skirting", does=(f"skirting off over {text_mm(sizes.finished_width_tenth_mm + 200)}",)
        )


def _cutting(site: Site) -> Iterator[Step]:
    frame = site.frame
    now = [member for member in frame.members if member.from_bar and member.cut_when is CutWhen.NOW]
    yield Step(
        activity="N03", name="cut_what_is_cut_now",
        does=(f"cut the {len(now)} timbers that do not depend on the ceiling; alike lengths with one stop; marks on each",),
    )  # fmt: skip


def _base(site: Site) -> Iterator[Step]:
    frame, sizes = site.frame, site.frame.sizes
    base = [member for member in frame.members if member.unit is Unit.BASE]
    pads = [panel for panel in frame.panels if panel.layer is Layer.PAD]
    if not base and not pads:
        return
    diagonal = math.hypot(sizes.frame_width_tenth_mm, sizes.frame_depth_tenth_mm) / 10
    yield Step(
        activity="N04",
        name="assemble_base",
        does=("assemble the base frame on a flat floor",)
        if base
        else ("lay the sheets of the pad on each other, glued and screwed",),
        members=_marks(base),
        panels=_marks(pads),
        measures=(Measured(what="both diagonals of the base", value_mm=round(diagonal, 1), tolerance_mm=DIAGONALS_MM),),
    )
    packers = [f"{text_mm(one.x_tenth_mm)}: {text_mm(one.packer_tenth_mm)}" for one in frame.stations if one.packer_tenth_mm]
    yield Step(
        activity="N05",
        name="fix_base",
        does=(
            "level the base from the highest point of the floor; protect the floor under packers",
            *((f"packers at {'; '.join(packers)}",) if packers else ()),
        ),
        fixings=_adding(("brackets to the wall", len(frame.stations))),
        measures=(
            Measured(what="level over the length", value_mm=0.0, tolerance_mm=LEVEL_LENGTH_MM),
            Measured(what="level across the depth", value_mm=0.0, tolerance_mm=LEVEL_DEPTH_MM),
            Measured(what="top of the platform", value_mm=frame.levels.platform_tenth_mm / 10, tolerance_mm=1.0),
        ),
    )


def _measuring(site: Site) -> Iterator[Step]:
    """The ceiling above the standing fire decides the upper frame; then what depends on it is cut."""
    frame, levels = site.frame, site.frame.levels
    later = [member for member in frame.members if member.cut_when is CutWhen.AFTER_MEASURE]
    if not later:
        return
    above = levels.finished_top_tenth_mm - levels.appliance_top_tenth_mm + site.job.gap_over_tenth_mm
    yield Step(
        activity="N05", name="measure_above_the_fire",
        does=(
            "stand the fire on the base and measure from its top to the ceiling at both ends and in the middle",
            "send the measures to have the upper frame cut again",
            "take the fire down again before the frame is raised, unless its manual says otherwise",
        ),
        measures=(_top_to_ceiling(above, site),),
        people_count=TWO,
    )  # fmt: skip
    yield Step(
        activity="N03", name="cut_what_waited",
        does=(f"cut the {len(later)} timbers that depend on the measured height: {', '.join(_marks(later))}",),
    )  # fmt: skip


def _top_to_ceiling(above_tenth_mm: int, site: Site) -> Measured:
    """What the pieces that were bought longer can take up."""
    tolerance_mm = float(site.job.allowance_mm)
    return Measured(what="top of the fire to the ceiling", value_mm=above_tenth_mm / 10, tolerance_mm=tolerance_mm)


def _upper(site: Site) -> Iterator[Step]:
    frame, job, counts = site.frame, site.job, site.bill.counts
    upper = [member for member in frame.members if member.unit is Unit.UPPER]
    whole = may_be_tilted(frame, job, site.rules)
    hung = frame.left_open or frame.right_open
    ladders = [one for one in upper if one.role in {Role.LADDER_UPRIGHT, Role.LADDER_NOGGIN}]
    yield Step(
        activity="N04",
        name="assemble_upper_frame" if whole else "assemble_ladders",
        does=(
            "assemble both ladders first, then the rails between them, on the floor in front of the wall"
            if whole
            else "assemble both ladders; the rails are fitted in place: the whole frame cannot be tilted up under this ceiling",
        ),
        members=_marks(upper if whole else ladders),
        fixings=_adding(("brackets at rail ends", counts.rail_brackets_count)) if whole else (),
        measures=_ladder_diagonals(ladders),
        people_count=TWO,
    )
    rest = [one for one in upper if one not in ladders]
    yield Step(
        activity="N06",
        name="raise_and_fix_upper_frame",
        does=_raising_words(site, hung=hung, whole=whole),
        members=() if whole else _marks(rest),
        fixings=_adding(
            ("fixings into the wall", counts.wall_fixings_count),
            ("screws into the ceiling joists", counts.ceiling_screws_count),
            ("brackets at rail ends", 0 if whole else counts.rail_brackets_count),
        ),
        measures=(
            Measured(what="plumb of the front uprights over the height", value_mm=0.0, tolerance_mm=PLUMB_MM),
            Measured(what="level of the trimmer", value_mm=0.0, tolerance_mm=LEVEL_DEPTH_MM),
            Measured(what="opening: platform to trimmer", value_mm=frame.sizes.opening_height_tenth_mm / 10, tolerance_mm=3.0),
        ),
        people_count=max(TWO, *(3 if lift.help == "third_person" else TWO for lift in site.lifts)),
        props_count=PROPS_COUNT if hung else 0,
    )


def _raising_words(site: Site, *, hung: bool, whole: bool) -> tuple[str, ...]:
    gap = text_mm(site.job.gap_over_tenth_mm)
    lifter = any(lift.what == "upper frame" and lift.help == "lifter" for lift in site.lifts)
    return (
        *(("a lifter carries the frame: it is too heavy for the people on site",) if lifter else ()),
        "tilt the frame up and set it plumb" if whole else "stand the ladders up, fix them, then fit the rails from below",
        f"keep the gap of {gap} over the fire along its whole length: no timber rests on the fire",
        *(
            ("props stay until every fixing is in; the frame is never left on props overnight",)
            if hung
            else ("the closed ends stand on the base: fix them there as well",)
        ),
        "detector before every hole; stop where it sounds",
    )


def _ladder_diagonals(ladders: list[Member]) -> tuple[Measured, ...]:
    uprights = [one for one in ladders if one.role is Role.LADDER_UPRIGHT]
    sides = sorted({one.box.x0_tenth_mm for one in uprights})
    found = []
    for side, name in zip(sides, ("left", "right"), strict=False):
        boxes = [one.box for one in uprights if one.box.x0_tenth_mm == side]
        found.append(Measured(what=f"both diagonals of the {name} ladder", value_mm=_diagonal(boxes), tolerance_mm=DIAGONALS_MM))
    return tuple(found)


def _diagonal(boxes: list[Box]) -> float:
    rise = max(box.z1_tenth_mm for box in boxes) - min(box.z0_tenth_mm for box in boxes)
    return round(math.hypot(rise, max(box.y1_tenth_mm for box in boxes) - min(box.y0_tenth_mm for box in boxes)) / 10, 1)


def _electrics(site: Site) -> Iterator[Step]:
    if not needs_electrician(site.job, site.frame):
        return
    yield Step(
        activity="N07", name="electrical_first_fix",
        does=(
            "an electrician runs the supplies before any board closes the frame, and tests them",
            "no hole in trimmers, plies or bearers; holes in other timbers at most a quarter of their width, in the middle",
        ),
        trade="electrician",
    )  # fmt: skip


def _boards(site: Site) -> Iterator[Step]:
    frame, counts = site.frame, site.bill.counts
    faces = [panel for panel in frame.panels if panel.layer is Layer.FACING]
    lid = [panel for panel in frame.panels if panel.layer is Layer.LID]
    sides = [panel for panel in faces if panel.role.value.startswith("return")]
    front = [panel for panel in faces if panel not in sides]
    heavy = set(boards_for_two(frame, site.job, site.rules))
    people = TWO if heavy & {panel.mark for panel in (*faces, *lid)} else ONE
    yield Step(
        activity="N08",
        name="returns",
        does=("scribe the returns to the wall and fix them first", "cut openings for sockets, grilles and hatches before fixing"),
        panels=_marks(sides),
        measures=(Measured(what="plumb of the returns over the height", value_mm=0.0, tolerance_mm=PLUMB_MM),),
        people_count=people,
    )
    ceiling = (f"cut ceiling edges {CEILING_GAP_MM:g} short of the local height and caulk them",) if frame.full_height else ()
    yield Step(
        activity="N08",
        name="faces_and_lid" if lid else "faces",
        does=("fix the faces from the bottom up, over the edges of the returns", *ceiling),
        panels=_marks((*front, *lid)),
        fixings=_adding(
            ("screws of faces and returns", counts.face_screws_count), ("screws of the lid", counts.lid_screws_count)
        ),
        measures=(
            Measured(what="flatness under a 2 m straight edge", value_mm=0.0, tolerance_mm=FLAT_MM),
            *(
                Measured(what=f"diagonals of the {opening.kind} opening, difference", value_mm=0.0, tolerance_mm=DIAGONALS_MM)
                for opening in frame.openings
            ),
        ),
        people_count=people,
    )
    yield from _inside(site)


def _inside(site: Site) -> Iterator[Step]:
    frame, counts = site.frame, site.bill.counts
    inside = [panel for panel in frame.panels if panel.layer in {Layer.LINING, Layer.BACKBOARD}]
    if inside:
        yield Step(
            activity="N09",
            name="linings_and_backboard",
            does=("backboard first, then the linings; bring the cables through before it is closed",),
            panels=_marks(inside),
            fixings=_adding(
                ("screws of linings", counts.lining_screws_count), ("screws of the backboard", counts.backboard_screws_count)
            ),
        )


def _finish(site: Site) -> Iterator[Step]:
    finish, job = site.job.finish, site.job
    words = {
        Finish.PAINTED: ("fill_and_sand", "fill joints and screw heads, sand with the room sheeted", "filler 2 h"),
        Finish.SKIMMED: ("beads_and_skim", "beads, scrim, two coats of skim", "skim 72 to 168 h before the first coat"),
        Finish.TAPED: ("tape_and_fill", "tape the joints and fill them in two coats", "24 h for each coat"),
    }
    name, does, wait = words[finish]
    trade = "plasterer" if finish is Finish.SKIMMED else "decorator"
    yield Step(activity="N10", name=name, does=(does,), trade=trade, wait=wait)
    if job.skirting_height_mm > 0:
        yield Step(activity="N11", name="skirting", does=("mitre the skirting round the breast and scribe it to the old run",))
    first = "mist_coat" if finish is Finish.SKIMMED else "prime"
    last = f"12 h before the fire{_first_heat(finish)}"
    coats = (
        ("N12", first, "all faces and edges", "4 h"),
        ("N13", "caulk_and_first_coat", "caulk edges to wall and ceiling, then paint", "4 h"),
        ("N14", "second_coat", "paint", last),
    )
    for activity, coat, words_of, wait_of in coats:
        yield Step(activity=activity, name=coat, does=(words_of,), trade="decorator", wait=wait_of)


def _first_heat(finish: Finish) -> str:
    return "; 168 h from skim to the first heating" if finish is Finish.SKIMMED else ""


def _fitting_out(site: Site) -> Iterator[Step]:
    job, frame = site.job, site.frame
    electrician = needs_electrician(job, frame)
    yield Step(
        activity="N15",
        name="fire_in",
        does=(
            "set the fire on the platform and fix it as its manual says",
            "check every gap of the maker, and that nothing of the upper frame touches the fire",
        ),
        fixings=_adding(("screws of the fire, where its maker names none", site.rules.take_off.fire_screw_count)),
        measures=(
            Measured(what="gap over the fire", value_mm=job.gap_over_tenth_mm / 10, tolerance_mm=0.0),
            Measured(what="gap behind the fire, at least", value_mm=job.rear_clearance_tenth_mm / 10, tolerance_mm=0.0),
        ),
        people_count=TWO,
    )
    if electrician:
        yield Step(
            activity="N16", name="electrical_second_fix_and_test",
            does=("an electrician connects, tests and certifies; the fire's first run is watched",), trade="electrician",
        )  # fmt: skip
    if frame.screen_hung:
        yield Step(
            activity="N17", name="screen", does=("bracket to both bearers, screen on, cables clear of it",), people_count=TWO,
            measures=_screen_measures(site),
        )  # fmt: skip
    yield Step(
        activity="N18", name="clean_and_hand_over",
        does=("clean, take the waste away, show the isolator and the access, hand over manuals, certificate and drawings",),
    )  # fmt: skip


def _screen_measures(site: Site) -> tuple[Measured, ...]:
    centre = site.frame.levels.screen_centre_tenth_mm
    return (
        () if centre is None else (Measured(what="centre of the screen above the floor", value_mm=centre / 10, tolerance_mm=2.0),)
    )
