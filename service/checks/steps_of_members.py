"""Steps of trimmer, bearers, studs and lid (`knowledge/framing.md`, 10.2, 3, 4, 6 and 7)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.step import deeper_section, in_stronger_class, stronger
from service.frame import Added, Role
from service.units import text_mm

if TYPE_CHECKING:
    from service.checks.step import Stronger, Weak
    from service.frame import Frame

MOST_PLIES_COUNT: Final = 3  # framing.md, 10.2, step 3
STUD_PITCHES_TENTH_MM: Final = (4_000, 3_000)  # step 6
LID_PITCHES_TENTH_MM: Final = (4_000, 3_000)  # step 7
TRIMMER_ROLES: Final = (Role.TRIMMER, Role.TRIMMER_PLY)


def ply_more(weak: Weak) -> Stronger | None:
    """A ply on edge behind the trimmer, as long as the depth between the ladders' uprights has room."""
    count = weak.ground.frame.ply_count + 1
    room = weak.ground.frame.sizes.cross_noggin_length_tenth_mm
    if count > MOST_PLIES_COUNT or count * weak.ground.job.timber.thickness_tenth_mm > room:
        return None
    return stronger(weak, f"{count} {'ply' if count == 1 else 'plies'} on edge behind the trimmer", Added.PLY, ply_count=count)


def stronger_trimmer(weak: Weak) -> Stronger | None:
    """Trimmer and plies of the next class."""
    return in_stronger_class(weak, TRIMMER_ROLES)


def deeper_ply(weak: Weak) -> Stronger | None:
    """Plies of a deeper section that still end below sill and bearers."""
    frame = weak.ground.frame
    width = deeper_section(weak, Role.TRIMMER_PLY, weak.added.ply_width_tenth_mm or weak.ground.job.timber.width_tenth_mm)
    if width is None or frame.ply_count == 0 or frame.levels.appliance_top_tenth_mm + width > _over_plies(frame):
        return None
    return stronger(weak, f"plies {text_mm(width)} deep", Added.DEEP_PLY, ply_width_tenth_mm=width)


def stronger_bearers(weak: Weak) -> Stronger | None:
    """Bearers of the next class."""
    return in_stronger_class(weak, (Role.SCREEN_BEARER,))


def deeper_bearers(weak: Weak) -> Stronger | None:
    """Bearers of a deeper section that stay inside the recess and apart from each other."""
    width = deeper_section(weak, Role.SCREEN_BEARER, weak.added.bearer_width_tenth_mm or weak.ground.job.timber.width_tenth_mm)
    recess = weak.ground.frame.sizes.recess
    if width is None or recess is None or not _bearers_fit(weak.ground.frame, width):
        return None
    return stronger(weak, f"bearers {text_mm(width)} deep", Added.BEARER, bearer_width_tenth_mm=width)


def closer_studs(weak: Weak) -> Stronger | None:
    """Studs at 400, then at 300."""
    now = weak.added.stud_pitch_tenth_mm or weak.ground.job.board.stud_pitch_tenth_mm
    pitch = next((one for one in STUD_PITCHES_TENTH_MM if one < now), None)
    return None if pitch is None else stronger(weak, f"studs at {text_mm(pitch)}", Added.STUD, stud_pitch_tenth_mm=pitch)


def stronger_member(weak: Weak) -> Stronger | None:
    """The members of that role of the next class."""
    return in_stronger_class(weak, (weak.member.role,)) if weak.member else None


def lid_joists(weak: Weak) -> Stronger | None:
    """Joists under the lid at 400, then at 300, where the recess leaves them room."""
    frame, depth = weak.ground.frame, weak.ground.job.timber.width_tenth_mm
    head = frame.levels.recess_head_tenth_mm or 0
    now = weak.added.lid_joist_pitch_tenth_mm or frame.sizes.rail_length_tenth_mm
    pitch = next((one for one in LID_PITCHES_TENTH_MM if one < now), None)
    if pitch is None or frame.full_height or frame.levels.upper_top_tenth_mm - depth < head:
        return None
    return stronger(weak, f"joists under the lid at {text_mm(pitch)}", Added.LID_JOIST, lid_joist_pitch_tenth_mm=pitch)


def stronger_lid_joists(weak: Weak) -> Stronger | None:
    """Lid joists of the next class."""
    return in_stronger_class(weak, (Role.LID_JOIST,)) if weak.added.lid_joist_pitch_tenth_mm else None


def _over_plies(frame: Frame) -> int:
    """The lowest level over the plies that they may reach: under the bearers, and up to the sill."""
    roles = {Role.SILL_RAIL, Role.UPSTAND_RAIL}
    sill = min((one.box.z1_tenth_mm for one in frame.members if one.role in roles), default=frame.levels.upper_top_tenth_mm)
    bearers = [one.box.z0_tenth_mm for one in frame.members if one.role is Role.SCREEN_BEARER]
    return min((sill, *bearers))


def _bearers_fit(frame: Frame, width: int) -> bool:
    recess, sill, head = frame.sizes.recess, frame.levels.recess_sill_tenth_mm, frame.levels.recess_head_tenth_mm
    if recess is None or sill is None or head is None:
        return False
    rows, half = recess.row_levels_tenth_mm, width // 2
    return rows[0] - half >= sill and rows[-1] - half + width <= head and (len(rows) == 1 or rows[-1] - rows[0] >= width)
