"""A beam or shelf on the face over the fire: a second rail at its top, plywood between that and the trimmer to fix into.

Rules: `knowledge/framing.md`, section 14; common practice, no source. Whether its fixings bear is for the checks.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from service.errors import Unmet
from service.frame.frame import Layer, Ledge, PanelRole
from service.frame.panels import Piece
from service.frame.placing import box
from service.units import millimetres, tenths, text_mm, whole_mm_down

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

LEAST_FIXINGS = 4  # framing.md, section 14


def rail_level(job: Job, top_of_opening: int) -> int | None:
    """Underside of the rail behind the beam; its top is level with the beam's."""
    if job.ledge is None:
        return None
    return top_of_opening + job.ledge.above_tenth_mm + job.ledge.height_tenth_mm - job.timber.thickness_tenth_mm


def pattress_pieces(at: SettingOut, job: Job, studs: list[Range]) -> tuple[Piece, ...]:
    """Plywood flush with the front of the frame in every bay between trimmer and beam rail."""
    if at.ledge_rail is None:
        return ()
    thick, z = job.backboard.thickness_tenth_mm, (at.z1 + at.b, at.ledge_rail)
    edges = [(0, at.b), *sorted(studs), (at.wf - at.b, at.wf)]
    bays = [(left[1], right[0]) for left, right in pairwise(edges) if right[0] > left[1]]
    return tuple(
        Piece(
            role=PanelRole.PATTRESS, layer=Layer.BACKBOARD, board=job.backboard, width_tenth_mm=bay[1] - bay[0],
            height_tenth_mm=z[1] - z[0], cut_width_mm=whole_mm_down(bay[1] - bay[0]), cut_height_mm=whole_mm_down(z[1] - z[0]),
            box=box(bay, (at.df - thick, at.df), z),
        )
        for bay in bays
        if whole_mm_down(bay[1] - bay[0]) > 0
    )  # fmt: skip


def place_ledge(at: SettingOut, job: Job, studs: list[Range]) -> tuple[Ledge, ...]:
    """Where it stands, and a fixing at every stud that it crosses, four at least."""
    wish = job.ledge
    if wish is None:
        return ()
    wide = wish.width_tenth_mm or at.w
    left = (at.wf - at.beside_left + at.beside_right - wide) // 2 if wish.width_tenth_mm else -at.beside_left
    low = at.z1 + wish.above_tenth_mm
    uprights = [(0, at.b), *studs, (at.wf - at.b, at.wf)]
    crossed = sum(1 for stud in uprights if left < (stud[0] + stud[1]) // 2 < left + wide)
    place = box((left, left + wide), (at.dd, at.dd + wish.projection_tenth_mm), (low, low + wish.height_tenth_mm))
    return (Ledge(kind=wish.kind, box=place, mass_kg=wish.mass_kg, fixings_count=max(crossed, LEAST_FIXINGS)),)


def ledge_refusals(at: SettingOut, job: Job, rules: RuleSet) -> tuple[Unmet, ...]:
    """No room for the rail behind it, or for what stands over it; wider than the breast."""
    wish, cripple = job.ledge, tenths(rules.frame.least_cripple_mm)
    if wish is None:
        return ()
    top = wish.above_tenth_mm + wish.height_tenth_mm
    sums = (
        (2 * at.b + cripple, top, "its top so far over the opening", f"the {wish.kind} {{}} higher"),
        (at.b + cripple, at.u - top, "so much between its top and the sill above", "an upstand {} greater"),
        (wish.width_tenth_mm, at.w, "that width", f"a {wish.kind} {{}} shorter"),
    )
    return tuple(
        Unmet(
            code="ledge",
            says=f"a {wish.kind} over the fire wants {text_mm(asked)} and has {text_mm(there)}: {words}",
            asked_mm=millimetres(asked),
            available_mm=millimetres(there),
            short_by_mm=millimetres(asked - there),
            offer=offer.format(text_mm(asked - there)),
        )
        for asked, there, words, offer in sums
        if asked > there
    )
