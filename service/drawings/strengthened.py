"""Notes of a view on what the checks added, what hangs in brackets, what is of a stronger class: by name, as marks stand once."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from service.frame import EndJoint

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.drawings.captions import Note
    from service.frame import Frame, Member

WORDS = {
    EndJoint.BRACKET: "an angle bracket at each end of:",
    EndJoint.HEAVY_BRACKET: "the heavy bracket at each end of:",
    EndJoint.BRACKET_PAIR: "brackets over and under each end of:",
}
BEARS = "but not where it bears on a jack"


def strengthening_notes(frame: Frame) -> list[Note]:
    """What was added, by reason; then what hangs in brackets; then what is of a stronger class."""
    return [*_added(frame), *_brackets(frame), *_stronger(frame)]


def _added(frame: Frame) -> list[Note]:
    reasons = dict.fromkeys(member.reason for member in frame.members if member.reason)
    return [
        (f"added, {reason}:", *_names(member for member in frame.members if member.reason == reason)) for reason in reasons
    ]  # fmt: skip


def _brackets(frame: Frame) -> list[Note]:
    notes: list[Note] = []
    for joint, words in WORDS.items():
        held = [member for member in frame.members if joint in {member.start_joint, member.end_joint}]
        bears = [BEARS] if any(EndJoint.BEARING in {member.start_joint, member.end_joint} for member in held) else []
        if held:
            notes.append((words, *_names(held), *bears))
    return notes


def _stronger(frame: Frame) -> list[Note]:
    name = frame.additions.strong_class
    members = [member for member in frame.members if name and member.strength_class == name]
    return [(f"of {name}:", *_names(members))] if members else []


def _names(members: Iterable[Member]) -> list[str]:
    counts = Counter(member.role.value.replace("_", " ") for member in members)
    return [name if count == 1 else f"{count} x {name}" for name, count in counts.items()]
