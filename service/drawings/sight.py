"""Which members a view shows, and which no view shows, so that each mark stands somewhere."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING, Final

from service.drawings.hidden_lines import Face, largest_visible
from service.drawings.projection import seen_from_front, seen_from_left

if TYPE_CHECKING:
    from collections.abc import Sequence

    from service.frame import Frame, Member, Role, Unit

_SLIVER_TENTH_MM: Final = 60  # a clear part narrower than this does not show its member


def seen_in_front(frame: Frame) -> dict[str, Face]:
    """Members seen from the room, each with its largest clear area, by mark."""
    return _clear([seen_from_front(member.mark, member.box) for member in frame.members])


def seen_beyond(frame: Frame, plane_tenth_mm: int) -> dict[str, Face]:
    """Members wholly beyond the section plane that are seen there, each with its largest clear area, by mark."""
    found = _clear([face for member in frame.members if (face := seen_from_left(member.mark, member.box, plane_tenth_mm))])
    return {mark: face for mark, face in found.items() if face.near_tenth_mm > plane_tenth_mm}


def out_of_sight(frame: Frame, plane_tenth_mm: int) -> tuple[str, ...]:
    """Entries `cross noggin B-N1 B-N2` of the members that neither the front elevation nor the section shows."""
    cut = {member.mark for member in frame.members if member.box.x0_tenth_mm < plane_tenth_mm < member.box.x1_tenth_mm}
    seen = cut | seen_in_front(frame).keys() | seen_beyond(frame, plane_tenth_mm).keys()
    hidden = sorted((member for member in frame.members if member.mark not in seen), key=_kind)
    return tuple(
        f"{role.value.replace('_', ' ')} {' '.join(member.mark for member in members)}"
        for (_, role), members in groupby(hidden, key=_kind)
    )


def _kind(member: Member) -> tuple[Unit, Role]:
    return member.unit, member.role


def _clear(faces: Sequence[Face]) -> dict[str, Face]:
    return {face.mark: clear for face in faces if (clear := largest_visible(face, faces)) and _shows(face, clear)}


def _shows(face: Face, clear: Face) -> bool:
    sides = (clear.right_tenth_mm - clear.left_tenth_mm, clear.high_tenth_mm - clear.low_tenth_mm)
    return clear == face or min(sides) >= _SLIVER_TENTH_MM
