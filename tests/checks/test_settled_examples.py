"""What the checks add to the worked examples: `knowledge/worked-examples.md`, "After checks" of A, B, C, C0, and its head note.

The columns are written with the hung ladder of structure.md 5.13 switched off; the head note of section 0 gives what comes with
it on.
"""

from __future__ import annotations

from functools import cache

import pytest

from service.checks import Settled, settle
from service.frame import EndJoint, Role
from tests.checks.grounds import rules_without_ladder
from tests.checks.row_cases import MARKET
from tests.examples_of import job_of
from tests.sold_examples import NAMES, sold


@cache
def settled(name: str, *, ladder: bool) -> Settled:
    market = MARKET if ladder else type(MARKET)(catalogue=MARKET.catalogue, rules=rules_without_ladder())
    return settle(job_of(sold(name)), market)


def done(name: str, *, ladder: bool) -> list[tuple[str, str]]:
    return [(one.check, one.done) for one in settled(name, ladder=ladder).steps]


SILL = ("structure.end_joint", "a bracket at each end of the sill rail")
PLY = ("structure.trimmer_bending", "1 ply on edge behind the trimmer")
LID_RAILS = [
    ("structure.end_joint", "a bracket at each end of the top rail front"),
    ("structure.end_joint", "a bracket at each end of the top rail rear"),
]


def test_steps_of_example_a() -> None:
    """A: step 8; "sill + 2 = 18; base 4 besides"."""
    assert [SILL] == done("A", ladder=False)
    assert 18 == settled("A", ladder=False).content.brackets_count
    assert 16 == settled("A", ladder=False).content.wall_fixings_count


def test_steps_of_example_b() -> None:
    """B: steps 8 and 10; 54 members, rear rail at 2425, 19 brackets, 17 fixings and nothing above 2470."""
    made = settled("B", ladder=False)

    assert SILL == done("B", ladder=False)[0]
    assert ["a rear rail at 2425"] == [says for _code, says in done("B", ladder=False)[1:]]
    assert (54, 19, 17) == (made.content.members_count, made.content.brackets_count, made.content.wall_fixings_count)
    assert 24_700 >= max(one.z_tenth_mm for one in made.frame.wall_fixings)


@pytest.mark.parametrize(("name", "members"), [("C", 48), ("C0", 29)])
def test_steps_of_example_c(name: str, members: int) -> None:
    """C and C0: steps 3 and 8; one ply, brackets at ply 2 and top rails 4 = 6, 14 fixings."""
    made = settled(name, ladder=False)

    assert [PLY, *LID_RAILS] == done(name, ladder=False)
    assert (members, 6, 14) == (made.content.members_count, made.content.brackets_count, made.content.wall_fixings_count)


def test_the_ply_of_example_c_has_its_seat() -> None:
    """C, noggin levels: laid out 134, 616.5, 1099; after checks 134, 679 and 1099, that is at z1."""
    levels = {one.box.z0_tenth_mm / 10 for one in settled("C", ladder=False).frame.members if one.role is Role.LADDER_NOGGIN}

    assert 679 in levels
    assert 616.5 not in levels


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("ladder", [True, False])
def test_nothing_fails_when_it_is_settled(name: str, *, ladder: bool) -> None:
    assert [] == [(one.code, one.subject) for one in settled(name, ladder=ladder).report.failing]


@pytest.mark.parametrize(("name", "noggins", "brackets"), [("A", 16, 32), ("B", 16, 18)])
def test_hung_ladders(name: str, noggins: int, brackets: int) -> None:
    """Head note: A 8 noggins a ladder and 32 brackets in all; B 9 in its open ladder, with 7 in the closed one, and 18."""
    found = [one for one in settled(name, ladder=True).frame.members if one.role is Role.LADDER_NOGGIN]

    assert noggins == len(found)
    assert brackets == sum(joint is EndJoint.BRACKET for one in found for joint in (one.start_joint, one.end_joint))


@pytest.mark.parametrize(("name", "first", "last"), [("A", 1.245, 0.786), ("B", 1.302, 0.734)])
def test_hung_ladders_in_figures(name: str, first: float, last: float) -> None:
    """Head note: A with a person 1.245, then 0.786; B by its weight 0.651, then 0.367, of the 0.50 of a single path.

    Utilisations are rounded up to 0.01.
    """
    steps = [one for one in settled(name, ladder=True).steps if one.check == "structure.hung_ladder"]

    assert steps[0].before_ratio is None
    assert [first, last] == pytest.approx([one.after_ratio for one in steps], abs=0.01)


def test_one_more_plug_in_each_upright_of_b() -> None:
    """Head note: 0.206 + 0.312 = 0.518 of 0.50 fails; one more plug in each upright in the top row: 0.414 of 0.50, that is 0.828.

    The plugs sit 100 under the row, so that they pull a little less: 0.84.
    """
    (step,) = [one for one in settled("B", ladder=True).steps if one.check == "fixings.wall_path"]

    assert "one more fixing in each rear upright in the top row" == step.done
    assert 1.04 == step.before_ratio
    assert 0.828 == pytest.approx(step.after_ratio, abs=0.02)
    assert 19 == settled("B", ladder=True).content.wall_fixings_count
