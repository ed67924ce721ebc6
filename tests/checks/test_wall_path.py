from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.checks.check import Skipped, Verdict
from service.checks.hanging import hanging_checks
from service.checks.paths import paths_of
from service.checks.wall_path import FIND_OUT, LADDER, PATH, wall_path_checks
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import ON, example, on_wall, with_screen_of, with_wall_load
from tests.checks.results import the_check, values, why_skipped
from tests.sold_examples import ADDITIONS, sold

if TYPE_CHECKING:
    from service.checks.ground import Ground

STUDS = [1300, 1700, 2100, 2500]


@pytest.mark.parametrize(
    ("name", "ladder", "laid_out", "used", "limit"),
    [
        ("A", False, False, 0.366, 1.0),
        ("A", True, False, 0.471, 1.0),
        ("B", False, True, 0.796, 0.5),  # without the extra rail: fails
        ("B", False, False, 0.408, 0.5),
        ("B", True, False, 0.518, 0.5),  # 5.13 g: fails
    ],
)
def test_worked_examples(name: str, ladder: bool, laid_out: bool, used: float, limit: float) -> None:
    """worked-examples.md, "wall alone", and section 0, "Weight through the uprights' fixings only"."""
    check = the_check(hanging_checks, example(name, ladder=ladder, laid_out=laid_out), PATH)

    assert pytest.approx((used, limit), abs=1e-3) == values(check)
    assert (used <= limit) is check.holds


@pytest.mark.parametrize(("name", "ladder", "used"), [("B", False, 0.629), ("A", True, 0.746), ("B", True, 0.815)])
def test_one_side_ladder_alone(name: str, ladder: bool, used: float) -> None:
    """worked-examples.md, B, "hung corner alone", and section 0, "Ladder alone with person"."""
    check = the_check(hanging_checks, example(name, ladder=ladder), LADDER, "right ladder")

    assert pytest.approx((used, 1.0), abs=1e-3) == values(check)


def test_one_more_plug_in_each_upright() -> None:
    """worked-examples.md, section 0: B with one more in each upright in the top row 0.150 + 0.264 = 0.414; one is enough."""
    check = the_check(hanging_checks, example("B", ladder=True), PATH)
    more = msgspec.structs.replace(ADDITIONS["B"], top_upright_fixings_count=1)
    stronger = the_check(hanging_checks, ground_of(sold("B"), more, ON), PATH)

    assert "needs 1 more fixing in the top row through uprights" == check.remedy
    assert pytest.approx(0.414, abs=0.01) == stronger.demand.value
    assert "" == stronger.remedy


def test_a_wall_of_which_nothing_is_known() -> None:
    """structure.md, 5.1: not verified, not failed."""
    check = the_check(hanging_checks, on_wall("unknown"), PATH)

    assert (Verdict.PROVISIONAL, None, FIND_OUT) == (check.verdict, check.resistance, check.remedy)


def test_a_low_set_value_never_passes() -> None:
    check = the_check(hanging_checks, on_wall("dense_block", units="light_aggregate"), PATH)

    assert Verdict.PASS is not check.verdict
    assert check.unverified.startswith("assumed low-set working load")


@pytest.mark.parametrize(
    ("wall", "told", "verdict", "part"),
    [
        ("solid_brick", {}, Verdict.PASS, "main"),
        ("dense_block", {}, Verdict.PASS, "main"),
        ("concrete", {}, Verdict.PASS, "main"),
        ("aerated_block", {}, Verdict.PASS, "second"),  # too weak for a person: the ceiling is the main path
        ("steel_stud", {"stud_positions_mm": STUDS}, Verdict.PASS, "second"),
        ("timber_stud", {"stud_positions_mm": STUDS}, Verdict.PASS, "main"),
        ("lath_and_plaster", {"stud_positions_mm": STUDS}, Verdict.PASS, "main"),
        ("plasterboard_on_dabs", {"backing": "solid_brick", "lining_mm": 12.5, "void_mm": 20}, Verdict.PASS, "second"),
        ("timber_stud", {}, Verdict.PROVISIONAL, "main"),
        ("plasterboard_on_dabs", {"backing": "unknown"}, Verdict.PROVISIONAL, "main"),
    ],
)
def test_every_wall_once(wall: str, told: dict[str, object], verdict: Verdict, part: str) -> None:
    """Example A, with its four joists, on each wall of fixings.md, 2.1; `verdict` of the part that the wall then plays."""
    check = the_check(hanging_checks, on_wall(wall, **told), PATH)

    assert (verdict, True) == (check.verdict, f"the {part} path" in check.says)


@pytest.mark.parametrize("told", [{}, {"declared_tension_kn": 0.0, "declared_shear_kn": 0.0}])
def test_boards_behind_plasterboard_bear_nothing(told: dict[str, object]) -> None:
    """fixings.md, 2.1 and 2.5: worked-checks.md, H4: never a number of plugs."""
    ground = on_wall("boarded_behind_plasterboard", **told)
    results = [one for one in hanging_checks(ground) if one.code == PATH]

    assert all(isinstance(one, Skipped) or one.verdict is Verdict.FAIL for one in results)
    if told:
        assert "no number of fixings" in the_check(hanging_checks, ground, PATH).remedy


def test_a_breast_that_stands_does_not_hang() -> None:
    assert "no end is open" in why_skipped(hanging_checks, example("C"), PATH)
    assert "" != why_skipped(lambda ground: wall_path_checks(ground, None), example("C"), LADDER)


def used(ground: Ground) -> float:
    check = the_check(lambda one: wall_path_checks(one, paths_of(one)), ground, PATH)
    return check.demand.value / (check.resistance.value if check.resistance and check.resistance.value else 1.0)


BASE = example("B", ladder=True)  # no ceiling path: the limit stays what it is


@given(mass_kg=st.floats(5, 60), more_kg=st.floats(0.1, 40))
def test_a_heavier_screen_never_lowers_it(mass_kg: float, more_kg: float) -> None:
    assert used(with_screen_of(BASE, mass_kg)) <= used(with_screen_of(BASE, mass_kg + more_kg))


@given(tension_kn=st.floats(0.05, 1), shear_kn=st.floats(0.05, 1), share=st.floats(0.1, 1))
def test_a_weaker_wall_never_lowers_it(tension_kn: float, shear_kn: float, share: float) -> None:
    weaker = with_wall_load(BASE, tension_kn * share, shear_kn * share)

    assert used(with_wall_load(BASE, tension_kn, shear_kn)) <= used(weaker) * (1 + 1e-12)


@given(reach_mm=st.floats(40, 600), more_mm=st.floats(1, 400))
def test_a_longer_lever_never_lowers_it(reach_mm: float, more_mm: float) -> None:
    bracket = BASE.job.bracket
    assert bracket is not None

    def reaching(at_mm: float) -> Ground:
        job = msgspec.structs.replace(BASE.job, bracket=msgspec.structs.replace(bracket, reach_mm=at_mm))
        return msgspec.structs.replace(BASE, job=job)

    assert used(reaching(reach_mm)) <= used(reaching(reach_mm + more_mm))


@given(order=st.permutations(range(len(BASE.frame.members))))
def test_the_order_of_members_changes_nothing(order: list[int]) -> None:
    members = tuple(BASE.frame.members[index] for index in order)
    turned = msgspec.structs.replace(BASE, frame=msgspec.structs.replace(BASE.frame, members=members))

    assert pytest.approx(used(BASE)) == used(turned)
