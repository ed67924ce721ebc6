"""Cautions S: structure and fixing, as far as no calculation is needed (`knowledge/cautions.md`, section 3)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.finding import Finding
from service.checks.result import CautionState
from service.survey.ceiling import CeilingKind, JoistDirection
from service.survey.fields import Answer
from service.survey.services import ExistingBreast
from service.survey.wall import WallConstruction

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.finding import Facts

OPEN = CautionState.NOT_VERIFIED
LEAST_STUDS_COUNT = 2  # common practice, no source (knowledge/cautions.md, S08)
SAT_ON_MM = (400.0, 700.0)  # depth of a lid that will be sat or stood on: common practice, no source
STUD_WALLS = frozenset({WallConstruction.TIMBER_STUD, WallConstruction.STEEL_STUD, WallConstruction.LATH_AND_PLASTER})
SLABS = frozenset({CeilingKind.HOLLOW_PLANK, CeilingKind.POST_TENSIONED, CeilingKind.CONCRETE_CAST, CeilingKind.BEAM_AND_BLOCK})
OF_WALL: Final = {
    WallConstruction.STEEL_STUD: Finding(
        "S04", "Steel studs carry light frames only and never an arm. Fit a pattress, or ladders that stand on the floor."
    ),
    WallConstruction.AERATED_BLOCK: Finding("S05", "Aerated block: plugs declared for it, no hammer action, more fixings."),
    WallConstruction.PLASTERBOARD_ON_DABS: Finding(
        "S06", "Plasterboard on dabs carries nothing. Long fixings reach the masonry, packed solid behind the board."
    ),
    WallConstruction.LATH_AND_PLASTER: Finding("S07", "Lath and plaster: into the studs only, pre-drilled. Plaster may fall."),
}  # fmt: skip


def structure_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of structure and fixing."""
    if facts.frame.left_open or facts.frame.right_open:
        yield Finding(
            "S01",
            "The upper frame hangs. Every wall and ceiling fixing is in before the props go, and nothing bears on the fire.",
        )
    yield from _wall(facts)
    if facts.frame.full_height:
        yield from _ceiling(facts)
    if facts.chimney.existing_breast in {ExistingBreast.REMOVED_ABOVE, ExistingBreast.REMOVED_BELOW}:
        yield Finding(
            "S14", "Part of the old chimney breast was removed. What carries the rest is a question for a structural engineer."
        )
    yield from _lid(facts)


def _wall(facts: Facts) -> Iterator[Finding]:
    wall = facts.job.wall_construction
    if wall is WallConstruction.UNKNOWN:
        yield Finding(
            "S03", "What the wall is made of is not known, so no strength is taken for it. A drill hole or a photo tells.", OPEN
        )
    if wall in OF_WALL:
        yield OF_WALL[wall]
    if wall in STUD_WALLS:
        yield from _studs(facts)
    if facts.wall.party is Answer.YES:
        yield Finding("S18", "A party wall: no fixing goes deeper than half its thickness, and noisy work keeps to agreed hours.")


def _studs(facts: Facts) -> Iterator[Finding]:
    studs = facts.job.studs_tenth_mm
    if studs is None:
        yield Finding(
            "S08", "The studs of the wall were not found, and no fixing between studs counts. Find them with a detector.", OPEN
        )
        return
    behind = sum(1 for x in studs if 0 <= x <= facts.frame.sizes.frame_width_tenth_mm)
    if behind < LEAST_STUDS_COUNT:
        yield Finding(
            "S08", f"{behind} studs behind the breast are fewer than {LEAST_STUDS_COUNT}. Fit a pattress across the studs."
        )


def _ceiling(facts: Facts) -> Iterator[Finding]:
    job, kind = facts.job, facts.ceiling.kind
    if job.joists is not JoistDirection.ACROSS_WALL:
        state = OPEN if job.joists is JoistDirection.UNKNOWN else CautionState.FIRES
        yield Finding(
            "S09", "Screws into ceiling board alone count for nothing. Fit noggins between the joists first, or use none.", state
        )
    if kind in SLABS:
        yield Finding("S10", "Nothing is drilled into this slab before its drawings or a scan are seen.")
    if kind is CeilingKind.SUSPENDED_GRID:
        yield Finding("S11", "Nothing is fixed to a suspended grid.")


def _lid(facts: Facts) -> Iterator[Finding]:
    depth_mm = facts.frame.sizes.finished_depth_tenth_mm / 10
    if not facts.frame.full_height and SAT_ON_MM[0] <= depth_mm <= SAT_ON_MM[1]:
        yield Finding("S20", f"A lid {depth_mm:g} mm deep will be sat or stood on. Its supports are at most 400 mm apart.")
