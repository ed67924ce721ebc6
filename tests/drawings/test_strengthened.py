from __future__ import annotations

from service.drawings.strengthened import strengthening_notes
from service.frame import Added, Additions, Reason, Role
from tests.examples_of import example_a, example_b, example_c, frame_of

STRONG = Additions(
    ladder_brackets=True, ladder_halved=True, bracketed_roles=("sill_rail",), heavy_roles=("sill_rail",), strong_class="C24",
    strong_roles=(Role.TRIMMER,), reasons=(Reason(added=Added.LADDER_NOGGIN, says="structure.hung_ladder: a noggin half way"),),
)  # fmt: skip


def test_what_was_added_is_told_with_its_reason() -> None:
    notes = strengthening_notes(frame_of(example_a(), STRONG))
    by_head = {note[0]: note[1:] for note in notes if isinstance(note, tuple)}

    assert ("6 x ladder noggin",) == by_head["added, structure.hung_ladder: a noggin half way:"]
    assert ("sill rail",) == by_head["the heavy bracket at each end of:"]
    assert {"trimmer", "trimmer ply", "16 x ladder noggin"} <= set(by_head["an angle bracket at each end of:"])
    assert ("trimmer",) == by_head["of C24:"]


def test_an_end_on_a_jack_is_told() -> None:
    """Example B: the trimmer bears on a jack at the left and hangs at the right."""
    (note,) = [one for one in strengthening_notes(frame_of(example_b())) if one[0] == "an angle bracket at each end of:"]

    assert "but not where it bears on a jack" == note[-1]


def test_a_plain_frame_on_its_base_has_none() -> None:
    assert [] == strengthening_notes(frame_of(example_c()))
