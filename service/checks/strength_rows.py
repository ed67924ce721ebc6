"""Cautions S that read a check: what failed after all strengthening, weight on the floor, figures that nobody declared.

Triggers: `knowledge/cautions.md`, section 3. S15 is a fault of the request: a bracket too weak for its screen.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.check import Verdict
from service.checks.finding import Finding
from service.checks.floor_load import LOAD
from service.survey.floor import FloorConstruction
from service.survey.wishes import ExtraKind
from service.units import STANDARD_GRAVITY_M_S2

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.checks.check import Check
    from service.checks.finding import Facts

HOLDING: Final = (  # what holds the breast to the house: structure.md, 5.1, 5.8, 5.13
    "fixings.wall_path", "fixings.wall_one_lost", "fixings.wall_ladder_alone", "fixings.wall_points", "fixings.wall_spacing",
    "fixings.stand_off_bending", "fixings.stand_off_sag", "fixings.ceiling_row", "fixings.ceiling_shear", "fixings.ceiling_lift",
    "fixings.standing_top_row", "structure.ceiling_joist", "structure.hung_paths", "structure.hung_ladder",
    "structure.hung_ladder_timber", "structure.hung_ladder_bracket_width",
)  # fmt: skip
TRIMMER: Final = (
    "structure.trimmer_bending", "structure.trimmer_sideways", "structure.trimmer_shear", "structure.trimmer_sag",
    "structure.trimmer_gap",
)  # fmt: skip
END_JOINTS, FACING = "structure.end_joint", "structure.facing_mass"
LONGEST_SPAN_MM: Final = 3_000.0  # common practice, no source (cautions.md, S12)
HEAVY_KG, HEAVY_KN_M2 = 300.0, 3.0  # common practice, no source (cautions.md, S13)
OF_TIMBER: Final = frozenset({FloorConstruction.BOARDS, FloorConstruction.CHIPBOARD})
STRENGTHS: Final = ("fixings.", "structure.hung_ladder", END_JOINTS, "structure.arm")
SAYS_ASSUMED: Final = ("assumed", "declare")
HANGING_EXTRAS: Final = frozenset({ExtraKind.SHELF, ExtraKind.BEAM})


def strength_rows(facts: Facts) -> Iterator[Finding]:
    """Rows of strength."""
    yield from _holding(facts)
    yield from _trimmer(facts)
    yield from _floor(facts)
    yield from _levers(facts)
    if found := facts.unmet(END_JOINTS):
        marks = ", ".join(sorted({one.subject for one in found}))
        yield Finding("S17", f"Screws into end grain carry nothing at {marks}. Brackets, a cleat or a jack stud there.")
    if found := facts.unmet(FACING):
        yield Finding("S19", f"A heavy facing: {_first(found)}. A structural engineer decides, and there is no automatic price.")
    yield from _undeclared(facts)


def _first(found: tuple[Check, ...]) -> str:
    return found[0].says


def _holding(facts: Facts) -> Iterator[Finding]:
    found = tuple(one for one in facts.unmet(*HOLDING) if one.binding)
    if found:
        remedy = f" {found[0].remedy[:1].upper()}{found[0].remedy[1:]}." if found[0].remedy else ""
        yield Finding("S02", f"What holds the breast to the house is not enough: {_first(found)}.{remedy}")


def _trimmer(facts: Facts) -> Iterator[Finding]:
    span_mm = facts.frame.sizes.trimmer_span_tenth_mm / 10
    if found := facts.unmet(*TRIMMER):
        yield Finding("S12", f"The trimmer over the fire is not enough: {_first(found)}. More plies, or deeper timber.")
    elif span_mm > LONGEST_SPAN_MM:
        yield Finding("S12", f"The trimmer spans {span_mm:g} mm, over {LONGEST_SPAN_MM:g}: a structural engineer decides.")


def _floor(facts: Facts) -> Iterator[Finding]:
    """Tells the weight; the verdict on the floor is that of the check."""
    if facts.floor.construction not in OF_TIMBER:
        return
    mass_kg = next((one.value for check in facts.report.of(LOAD) for one in check.inputs if one.symbol == "m"), 0.0)
    sizes = facts.frame.sizes
    area_m2 = sizes.finished_width_tenth_mm * sizes.finished_depth_tenth_mm / 1e8
    spread_kn_m2 = mass_kg * STANDARD_GRAVITY_M_S2 / area_m2 / 1000
    if mass_kg > HEAVY_KG or spread_kn_m2 > HEAVY_KN_M2:
        yield Finding(
            "S13", f"The breast weighs {mass_kg:.0f} kg, {spread_kn_m2:.1f} kN on each square metre of a timber floor. "
            "Find the joists, and spread the load across them.",
        )  # fmt: skip


def _levers(facts: Facts) -> Iterator[Finding]:
    """A shelf or beam in front of a part-height breast pulls it over; only wall fixings hold it."""
    if facts.frame.full_height:
        return
    hung = sorted({extra.kind.value for extra in facts.job.survey.brief.extras or () if extra.kind in HANGING_EXTRAS})
    if hung:
        yield Finding(
            "S16", f"A {' and a '.join(hung)} in front of a part-height breast: only the wall fixings keep it from tipping."
        )


def _undeclared(facts: Facts) -> Iterator[Finding]:
    found = sorted({one.code for one in facts.report.checks if _is_assumed(one)})
    if found:
        yield Finding(
            "S21", f"Strengths that no maker has declared were taken from tables, low on purpose, for: {', '.join(found)}. "
            "Declared values make them firm.",
        )  # fmt: skip


def _is_assumed(check: Check) -> bool:
    about_fixings = check.code.startswith(STRENGTHS)
    return about_fixings and check.verdict is not Verdict.PASS and any(word in check.unverified for word in SAYS_ASSUMED)
