"""What hangs and what stands of a breast, how heavy it is and how far its centre lies from the wall (structure.md, 4 and 5.1).

Timber that hangs is taken as heavy as it may be, timber that keeps a breast from tipping as light as it may be.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.checks.masses import Weighed, centre_from_wall_mm, centre_of_mm, faced_kg, member_kg, weight_n
from service.frame import Layer, PanelRole, Unit
from service.survey.wishes import ExtraKind

if TYPE_CHECKING:
    from service.brief import Job
    from service.checks.ground import Ground
    from service.frame import Frame, Panel

CLOSED_RETURNS: Final = frozenset({PanelRole.RETURN_LEFT, PanelRole.RETURN_RIGHT})
RETURNS: Final = CLOSED_RETURNS | {
    PanelRole.RETURN_BASE_LEFT, PanelRole.RETURN_BASE_RIGHT, PanelRole.RETURN_UPPER_LEFT, PanelRole.RETURN_UPPER_RIGHT,
}  # fmt: skip
OF_BASE: Final = frozenset({PanelRole.FACE_BASE, PanelRole.RETURN_BASE_LEFT, PanelRole.RETURN_BASE_RIGHT, PanelRole.PAD})
ON_THE_FRONT: Final = frozenset({ExtraKind.SHELF, ExtraKind.BEAM})
SIZE_CLASS = "size_class"
MM2_PER_M2 = 1e6


class Load(msgspec.Struct, frozen=True, kw_only=True):
    """A weight, how far its centre lies from the wall, and what of it is only assumed."""

    mass_kg: float
    from_wall_mm: float
    assumed: str = ""

    @property
    def weight_n(self) -> float:
        """The weight."""
        return weight_n(self.mass_kg)


def hung_load(ground: Ground) -> Load:
    """Upper frame, the boards on it, screen and bracket; never the fire or the base."""
    members = _members(ground, ground.rules.actions.hung_timber_kg_m3, Unit.UPPER)
    return _load((*members, *_hung_boards(ground), *_screen(ground)), ground.job)


def standing_load(ground: Ground) -> Load:
    """What keeps a breast from tipping: base, upper frame, boards and lid; never the fire, nor a screen that may go."""
    density = ground.rules.actions.standing_timber_kg_m3
    members = (*_members(ground, density, Unit.BASE), *_members(ground, density, Unit.UPPER))
    boards = (_board(panel, ground, 1.0) for panel in ground.frame.panels)
    found = _load((*members, *boards), ground.job)
    return msgspec.structs.replace(found, assumed="")


def whole_mass_kg(ground: Ground) -> float:
    """All of the breast as it may be: frame, boards, screen, bracket and fire."""
    density = ground.rules.actions.hung_timber_kg_m3
    members = (*_members(ground, density, Unit.BASE), *_members(ground, density, Unit.UPPER))
    boards = (_board(panel, ground, 1.0) for panel in ground.frame.panels)
    return sum(part.mass_kg for part in (*members, *boards, *_screen(ground))) + ground.job.appliance.mass_kg


def _load(parts: tuple[Weighed, ...], job: Job) -> Load:
    by_size = job.screen is not None and job.screen_standing == SIZE_CLASS
    return Load(
        mass_kg=sum(part.mass_kg for part in parts),
        from_wall_mm=centre_of_mm(parts),
        assumed="assumed mass of a screen that is known by its size only" if by_size else "",
    )


def _members(ground: Ground, density_kg_m3: float, unit: Unit) -> tuple[Weighed, ...]:
    return tuple(
        Weighed(what=member.mark, mass_kg=member_kg(member, density_kg_m3), from_wall_mm=centre_from_wall_mm(member.box))
        for member in ground.frame.members
        if member.unit is unit
    )


def _hung_boards(ground: Ground) -> tuple[Weighed, ...]:
    return tuple(
        _board(panel, ground, _share_above_base(panel, ground.frame))
        for panel in ground.frame.panels
        if panel.role not in OF_BASE
    )


def _share_above_base(panel: Panel, frame: Frame) -> float:
    """Of a return that runs down to the floor, what lies beside the upper frame."""
    box, base = panel.box, frame.levels.platform_tenth_mm
    if panel.role not in CLOSED_RETURNS or box.z0_tenth_mm >= base:
        return 1.0
    return max(0, box.z1_tenth_mm - base) / (box.z1_tenth_mm - box.z0_tenth_mm)


def _board(panel: Panel, ground: Ground, share: float) -> Weighed:
    """A board with what is on it. The scribe of a return or lid counts in its mass and not in its centre (structure.md, 5.1)."""
    frame_depth = ground.frame.sizes.frame_depth_tenth_mm
    centre_mm = centre_from_wall_mm(panel.box)
    if panel.layer is Layer.FACING:
        centre_mm += ground.job.skim_tenth_mm / 20  # of board and skim together
    if panel.role in RETURNS:
        centre_mm = frame_depth / 20
    elif panel.layer is Layer.LID:
        centre_mm = panel.box.y1_tenth_mm / 20
    mass_kg = faced_kg(panel, ground.job, ground.rules.actions.adhesive_bed_kg_m2) * share
    return Weighed(what=panel.mark, mass_kg=mass_kg, from_wall_mm=centre_mm)


def _screen(ground: Ground) -> tuple[Weighed, ...]:
    """Screen, its bracket, shelves and beams; an arm stands as it may, out."""
    job = ground.job
    depth_mm = ground.frame.sizes.finished_depth_tenth_mm / 10
    extras = tuple(
        Weighed(what=extra.kind.value, mass_kg=extra.mass_kg or 0.0, from_wall_mm=depth_mm + (extra.depth_mm or 0.0) / 2)
        for extra in job.survey.brief.extras or ()
        if extra.kind in ON_THE_FRONT
    )
    screen, bracket = job.screen, job.bracket
    if screen is None:
        return extras
    plate_mm = _plate_mm(ground)
    hung = (
        Weighed(what=bracket.model, mass_kg=bracket.mass_kg, from_wall_mm=plate_mm + bracket.depth_mm / 2),
    ) if bracket else ()  # fmt: skip
    reach_mm = bracket.reach_mm if bracket else 0.0
    mass_kg = max(screen.mass_kg, _unknown_kg(ground) - sum(part.mass_kg for part in hung))
    return (
        *extras,
        *hung,
        Weighed(what=screen.model, mass_kg=mass_kg, from_wall_mm=plate_mm + reach_mm + screen.body_depth_mm / 2),
    )


def _plate_mm(ground: Ground) -> float:
    """From the wall to the plate of the bracket: on the backboard of a recess, else on the face."""
    recess = ground.frame.sizes.recess
    if recess is None:
        return ground.frame.sizes.finished_depth_tenth_mm / 10
    return (recess.bearer_back_tenth_mm + ground.job.backboard.thickness_tenth_mm) / 10


def _unknown_kg(ground: Ground) -> float:
    """Least mass to take for screen and bracket: by the area of a screen that nobody has weighed, else nothing."""
    screen = ground.job.screen
    if screen is None or (ground.job.screen_standing != SIZE_CLASS and ground.job.bracket is not None):
        return 0.0
    return ground.rules.actions.unknown_screen_kg_m2 * screen.body_width_mm * screen.body_height_mm / MM2_PER_M2
