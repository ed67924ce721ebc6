from __future__ import annotations

import msgspec

from service.checks.step import deeper_section, in_stronger_class, stronger, stronger_class
from service.frame import Added, Additions, Reason, Role
from tests.checks.row_cases import MARKET
from tests.checks.weak_spots import weak
from tests.examples_of import changed, example_a, example_c

ONLY_C16 = msgspec.structs.replace(
    MARKET.catalogue,
    materials={code: row for code, row in MARKET.catalogue.materials.items() if row.strength_class != "C24"},
)


def test_the_member_of_a_check() -> None:
    spot = weak(example_a(), role=Role.SILL_RAIL)

    assert spot.member is not None
    assert (spot.check.subject, Role.SILL_RAIL) == (spot.member.mark, spot.member.role)
    assert weak(example_a()).member is None


def test_a_member_that_is_added_says_which_check_wanted_it() -> None:
    found = stronger(weak(example_a()), "a ply more", Added.PLY, ply_count=2)

    assert 2 == found.additions.ply_count
    assert (Reason(added=Added.PLY, says="structure.trial: a ply more"),) == found.additions.reasons
    assert () == stronger(weak(example_a()), "wide packers", wide_packers=True).additions.reasons


def test_the_next_class_of_the_section_that_is_sold() -> None:
    """The demo sells C16 and C24 of 38 x 89; a section that is not sold has no stronger class."""
    odd = {"kind": "custom", "thickness_mm": 38, "width_mm": 90, "strength_class": "C16", "lengths_mm": [4800]}

    assert "C24" == stronger_class(weak(example_a()))
    assert "" == stronger_class(weak(example_a(), catalogue=ONLY_C16))
    assert "" == stronger_class(weak(changed(example_a(), {"/survey/brief/timber": odd})))


def test_roles_are_made_stronger_once() -> None:
    found = in_stronger_class(weak(example_a()), (Role.RAIL, Role.UPRIGHT))
    assert found is not None

    assert ("C24 for rail, upright", "C24", (Role.RAIL, Role.UPRIGHT)) == (
        found.says, found.additions.strong_class, found.additions.strong_roles
    )  # fmt: skip
    assert in_stronger_class(weak(example_a(), found.additions), (Role.RAIL,)) is None
    assert in_stronger_class(weak(example_a(), catalogue=ONLY_C16), (Role.RAIL,)) is None


def test_deeper_sections_are_of_the_same_thickness_and_class() -> None:
    """The demo sells 38 x 63 and 38 x 89 in C16 and C24."""
    assert 890 == deeper_section(weak(example_c()), Role.TRIMMER_PLY, 630)
    assert deeper_section(weak(example_c()), Role.TRIMMER_PLY, 890) is None
    strong = Additions(strong_class="C24", strong_roles=(Role.TRIMMER_PLY,))
    assert 890 == deeper_section(weak(example_c(), strong), Role.TRIMMER_PLY, 630)
    assert deeper_section(weak(example_c(), strong, catalogue=ONLY_C16), Role.TRIMMER_PLY, 630) is None
