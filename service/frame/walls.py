"""A breast whose end stands against a side wall: no return there, the face scribed to it, the ladder fixed to both walls.

Rules: `knowledge/framing.md`, section 14, and `knowledge/cladding.md`, section 6; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.errors import Unmet
from service.frame.frame import SideFixing
from service.frame.member import Role
from service.units import millimetres, tenths, text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.member import Member
    from service.frame.placing import Range
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

CLEAR_BESIDE_GLASS_TENTH_MM = 500  # an end that is no side wall's stands 50 clear of it: survey.md, section 3


def beside(job: Job, *, left: bool) -> int:
    """From the end of the frame to the finished end: the board with its skim, or the packing to a side wall."""
    if job.left_wall if left else job.right_wall:
        return job.side_packing_tenth_mm
    return job.board.thickness_tenth_mm + job.skim_tenth_mm


def face_ends(at: SettingOut, job: Job, rules: RuleSet) -> Range:
    """Where face and lid begin and end: over the edges of the returns, or in a side wall by what is scribed off."""
    allowance = tenths(rules.frame.scribe_mm)
    off = max(job.out_of_square_tenth_mm, 0)
    scribe = allowance + off if off > allowance else allowance  # as returns on a leaning wall
    left = -at.beside_left - scribe if at.left_wall else -at.t
    right = at.wf + at.beside_right + scribe if at.right_wall else at.wf + at.t
    return left, right


def free_ends(at: SettingOut) -> tuple[tuple[bool, Range], ...]:
    """Ends that get a return: whether it is the left one, and where its board lies along the wall."""
    ends = ((True, (-at.t, 0)), (False, (at.wf, at.wf + at.t)))
    return tuple((left, x) for left, x in ends if not (at.left_wall if left else at.right_wall))


def side_fixings(at: SettingOut, rules: RuleSet, members: tuple[Member, ...]) -> tuple[SideFixing, ...]:
    """Through the front upright of a ladder at a side wall, at the pitch of uprights; its rear one is fixed to the host wall."""
    placed: list[SideFixing] = []
    for upright in members:
        box = upright.box
        if upright.role is not Role.LADDER_UPRIGHT or box.y1_tenth_mm != at.df:
            continue
        left = box.x0_tenth_mm == 0
        if not (at.left_wall if left else at.right_wall):
            continue
        count = -(-upright.length_tenth_mm // tenths(rules.frame.upright_fixing_pitch_mm)) + 1
        placed += [
            SideFixing(left=left, y_tenth_mm=at.df - at.d // 2, z_tenth_mm=level, through=upright.mark)
            for level in _levels((box.z0_tenth_mm, box.z1_tenth_mm), count, tenths(rules.frame.side_fixing_from_end_mm))
        ]
    return tuple(placed)


def glass_at_wall(at: SettingOut) -> tuple[Unmet, ...]:
    """No open glass to an end against a wall (framing.md, section 14)."""
    ends = (("left", at.left_open and at.left_wall), ("right", at.right_open and at.right_wall))
    least = CLEAR_BESIDE_GLASS_TENTH_MM
    return tuple(
        Unmet(
            code="end_wall",
            says=f"the fire shows glass at the {side} end, which stands against a side wall",
            asked_mm=millimetres(least),
            available_mm=0.0,
            short_by_mm=millimetres(least),
            offer=f"the breast {text_mm(least)} or more from that wall, or a fire closed at that end",
        )
        for side, shows in ends
        if shows
    )


def wall_notes(at: SettingOut, job: Job) -> list[str]:
    """What the fitter must know of an end at a side wall."""
    rear, notes = job.side_packing_tenth_mm, []
    front = rear + job.out_of_square_tenth_mm
    for side, against in (("left", at.left_wall), ("right", at.right_wall)):
        if against:
            notes.append(
                f"pack between the {side} ladder and the side wall: {text_mm(rear)} behind, {text_mm(front)} at the front"
            )
    return notes


def _levels(upright: Range, count: int, off: int) -> tuple[int, ...]:
    """So many levels, evenly from near the foot to near the top."""
    low, high = upright[0] + off, upright[1] - off
    if high <= low:
        return ((upright[0] + upright[1]) // 2,)
    return tuple(low + (high - low) * step // (count - 1) for step in range(count))
