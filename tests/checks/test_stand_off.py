from __future__ import annotations

import msgspec
import pytest

from service.checks.check import Verdict
from service.checks.hanging import hanging_checks
from service.checks.stand_off import BENDING, SAG
from service.engineering.host_walls import round_second_moment_mm4
from tests.checks.grounds import ground_of
from tests.checks.hung_grounds import OFF, ON, example, on_wall
from tests.checks.results import the_check, values, why_skipped
from tests.sold_examples import ADDITIONS, sold

DABS = {"backing": "solid_brick", "lining_mm": 12.5, "void_mm": 20}


def test_sag_under_the_weight() -> None:
    """By hand, worked-checks.md, C2: 913.7 N on 16 screws of root 5.0 free over 12.5 + 20 + 3.5 = 36 mm: F l^3 / (3 E I)."""
    check = the_check(hanging_checks, on_wall("plasterboard_on_dabs", **DABS), SAG)
    sag_mm = 913.7 / 16 * 36**3 / (3 * 210_000 * round_second_moment_mm4(5.0))

    assert pytest.approx((sag_mm, 1.0), rel=1e-3) == values(check)


def test_both_bending_resistances_are_told_and_the_smaller_decides() -> None:
    """fixings.md, 2.4: elastic 1.2 x pi 5^3/32 x 600 = 8835.7 N mm over 36 mm, and 1.25."""
    check = the_check(hanging_checks, on_wall("plasterboard_on_dabs", **DABS), BENDING)
    inputs = {one.symbol: one.value for one in check.inputs}

    assert inputs["V_Rk,el"] < inputs["V_Rk,pl"]
    assert pytest.approx(8835.7 / 36 / 1.25, rel=1e-3) == values(check)[1]
    assert f"{inputs['V_Rk,pl']:.0f} N" in check.says


def test_a_deep_void_fails_and_says_how_many_more() -> None:
    check = the_check(hanging_checks, on_wall("plasterboard_on_dabs", ON, **{**DABS, "void_mm": 45}), SAG)
    more = int(check.remedy.rpartition("or ")[2].split()[0])

    assert Verdict.FAIL is check.verdict
    assert check.remedy.startswith("cut the board at each fixing and pack solid")
    assert check.demand.value * 10 / (10 + more) <= 1.0 < check.demand.value * 10 / (10 + more - 1)


def test_where_it_does_not_apply() -> None:
    standing = ground_of(sold("C", survey__wall__construction="plasterboard_on_dabs"), ADDITIONS["C"], OFF)
    bare = on_wall("plasterboard_on_dabs", **DABS)
    none = msgspec.structs.replace(bare, frame=msgspec.structs.replace(bare.frame, wall_fixings=()))

    assert "no fixing bridges plasterboard on dabs" == why_skipped(hanging_checks, example("A"), SAG)
    assert "the frame stands: no weight hangs on its fixings" == why_skipped(hanging_checks, standing, SAG)
    assert "no fixing of the wall takes weight" == why_skipped(hanging_checks, none, BENDING)
