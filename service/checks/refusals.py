"""What the trade does not build until it is cleared or changed: answers with an offer, not errors.

Rules: `knowledge/services.md`, section 7; `knowledge/cautions.md` (B01, B03, B04, B05, B17); `knowledge/cladding.md`,
section 5 for boards and finishes.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.checks.cleared import cleared_by
from service.errors import Unmet
from service.survey.fields import Answer
from service.survey.services import Chimney, Flue, GasState, Services, VentServes
from service.survey.site import Building
from service.survey.wall import Damp, WallConstruction
from service.survey.wishes import Finish

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.brief import Job

BESIDE_FIRE_TENTH_MM = 2_000  # about the boards beside a fire whose breast has no width yet: house choice
ARM = "arm"
LEAST_STUDS = 2  # behind an arm: common practice, no source
STUDDED = frozenset({WallConstruction.TIMBER_STUD, WallConstruction.LATH_AND_PLASTER})
FINISHES = {  # boards that take a finish: common practice, no source
    Finish.PAINTED: frozenset({"mdf", "plywood", "cement_board", "calcium_silicate"}),
    Finish.TAPED: frozenset({"plasterboard"}),
    Finish.SKIMMED: frozenset({"plasterboard", "cement_board", "calcium_silicate"}),
}


def refusals_of(job: Job) -> tuple[Unmet, ...]:
    """Every reason not to build, with what would change it."""
    return (*_flue(job), *_gas(job), *_vents(job), *_damp(job), *_arm(job), *_finish(job))


def _refusal(code: str, says: str, offer: str) -> Unmet:
    return Unmet(code=f"refused_{code}", says=says, asked_mm=0.0, available_mm=0.0, short_by_mm=0.0, offer=offer)


def _flue(job: Job) -> Iterator[Unmet]:
    chimney = job.survey.chimney or Chimney()
    if chimney.flue is Flue.IN_USE:
        yield _refusal(
            "b01",
            "the flue is in use, and a live flue is never boxed in",
            "another wall, or the appliance on that flue taken out of use",
        )
    if chimney.flue in {Flue.NONE, Flue.IN_USE} or cleared_by("B17", job.survey):
        return
    if chimney.flue_shared is Answer.YES:
        yield _refusal(
            "b17", "another dwelling uses this flue", "another wall, or word that the flue is not used, sent in `cleared` as B17"
        )
    elif chimney.flue not in {None, Flue.UNKNOWN} and chimney.flue_shared is Answer.UNKNOWN and _beside_another_dwelling(job):
        yield _refusal(
            "b17",
            "another dwelling may use this flue: it is in a flat or on a party wall",
            "find out whose it is, and send flue_shared, or B17 in `cleared`",
        )


def _beside_another_dwelling(job: Job) -> bool:
    site, wall = job.survey.site, job.survey.wall
    return (site is not None and site.building is Building.FLAT) or (wall is not None and wall.party is Answer.YES)


def _gas(job: Job) -> Iterator[Unmet]:
    services = job.survey.services or Services()
    if services.gas is GasState.PRESENT and not cleared_by("B03", job.survey):
        yield _refusal(
            "b03",
            "there is gas at this wall, and nothing is built over it",
            "a certificate of a registered gas engineer that it is capped off, sent in `cleared` as B03",
        )


def _vents(job: Job) -> Iterator[Unmet]:
    vents = (job.survey.services or Services()).air_vents or ()
    half = (job.width_tenth_mm or round(job.appliance.body_width_mm * 10) + 2 * BESIDE_FIRE_TENTH_MM) / 2
    covered = [
        one for one in vents if one.serves is VentServes.APPLIANCE and abs(one.x_mm * 10 - job.wall_centre_tenth_mm) <= half
    ]
    if covered and not cleared_by("B04", job.survey):
        places = ", ".join(f"{one.x_mm:g}" for one in covered)
        yield _refusal(
            "b04",
            f"the breast would cover an air vent that serves an appliance, at {places}",
            "another place, or the vent moved by a gas engineer, sent in `cleared` as B04",
        )


def _damp(job: Job) -> Iterator[Unmet]:
    wall = job.survey.wall
    if wall is not None and wall.damp is Damp.SHOWING and not cleared_by("B05", job.survey):
        yield _refusal("b05", "damp is showing on this wall", "the cause found and cured, sent in `cleared` as B05")


def _arm(job: Job) -> Iterator[Unmet]:
    """An arm in front of plasterboard that nothing stands behind (`knowledge/fixings.md`, 2.1 and 2.5; caution S04)."""
    if job.screen is None or job.bracket is None or job.bracket.kind != ARM:
        return
    offer = "a flat bracket, or a pattress on studs or masonry that is found behind the breast"
    if job.wall_construction is WallConstruction.STEEL_STUD:
        yield _refusal("s04", "steel studs carry light frames only, and never an arm", offer)
    elif job.wall_construction in STUDDED and job.studs_tenth_mm is not None:
        width = job.width_tenth_mm or round(job.appliance.body_width_mm * 10)
        behind = sum(1 for x in job.studs_tenth_mm if 0 <= x <= width)
        if behind < LEAST_STUDS:
            yield _refusal("arm", f"{behind} studs stand behind the breast, and plasterboard alone carries no arm", offer)


def _finish(job: Job) -> Iterator[Unmet]:
    """A finish that the board does not take (`knowledge/cladding.md`, section 5)."""
    kinds = FINISHES.get(job.finish)
    if kinds is None or job.board.board_kind in kinds:
        return
    fitting = [finish.value for finish, boards in FINISHES.items() if job.board.board_kind in boards]
    why = {
        Finish.PAINTED: "its joints and screw heads are taped or skimmed before paint",
        Finish.TAPED: "tape and compound are for the edges of plasterboard",
        Finish.SKIMMED: "skim plaster does not hold on wood-based board",
    }[job.finish]
    name = job.board.board_kind.replace("_", " ")
    yield _refusal(
        "finish",
        f"a {job.finish.value} face does not go with {name}: {why}",
        f"finish {' or '.join(fitting)}, or a board of another kind",
    )
