"""Source of the figures: `knowledge/worked-examples.md`, "After checks" of A and B; `knowledge/worked-checks.md`, A15 and A16."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.checks.bearers import BENDING, SAG, SHEAR, bearer_checks, biaxial_ratio, stronger_bearer
from service.checks.check import Verdict
from service.checks.timber import Beam
from service.rules import LoadDuration, load_rules
from tests.checks.after_checks import after_checks, check_of, checks_of, exact_ratio, of_job, skipped_of
from tests.engineering.beam_model import beam

if TYPE_CHECKING:
    from service.checks.ground import Ground

C16, C24 = (load_rules().strength_class(name) for name in ("C16", "C24"))


@pytest.mark.parametrize(("example", "expected", "moments"), [("A", 0.205, (57.3, 19.2)), ("B", 0.307, (136.9, 24.7))])
def test_top_bearer(example: str, expected: float, moments: tuple[float, float]) -> None:
    found = check_of(bearer_checks, after_checks(example), BENDING)
    by_symbol = {one.symbol: one.value / 1000 for one in found.inputs}

    assert pytest.approx(expected, abs=0.0006) == found.demand.value
    assert pytest.approx(moments, abs=0.06) == (by_symbol["M_y,d"], by_symbol["M_z,d"])


def test_both_axes() -> None:
    """A16: bearer 47 x 100 C24, L 1290, 683.93 N down and 1453.4 N out at mid span, short: (6.12) 0.71689."""
    moments = (683.93 * 1290 / 4, 1453.4 * 1290 / 4)

    assert pytest.approx(0.71689, rel=1e-3) == biaxial_ratio(Beam(47, 100, C24), moments, LoadDuration.SHORT, after_checks("A"))


def test_sag_against_a_finite_element_beam() -> None:
    """PyNiteFEA: 106.9 N at mid span and 57.8 N spread over 1251 mm, 1.6 times in the end."""
    found = beam(1251, 8000 * 38 * 89**3 / 12, uniform_n_per_mm=57.8 / 1251, points=((106.9, 625.5),))

    assert pytest.approx(1.6 * found.middle_sag_mm, rel=1e-3) == check_of(bearer_checks, after_checks("A"), SAG).demand.value


def test_no_screen() -> None:
    assert {BENDING, SHEAR, SAG} == set(skipped_of(bearer_checks, after_checks("C")))


def test_an_arm_is_left_to_its_own_check() -> None:
    assert {BENDING} == set(skipped_of(bearer_checks, _of_bracket(kind="arm")))


def test_remedies_pass() -> None:
    """A remedy applied makes that check pass: the class, or the depth, that is named."""
    ground, small = after_checks("A"), Beam(38, 89, C16)
    moments = (300_000.0, 100_000.0)
    wanted = stronger_bearer(small, moments, LoadDuration.PERMANENT, ground)
    stronger = load_rules().strength_class(wanted.rsplit(" ", 1)[1])

    assert biaxial_ratio(small, moments, LoadDuration.PERMANENT, ground) > 1
    assert biaxial_ratio(small._replace(strength=stronger), moments, LoadDuration.PERMANENT, ground) <= 1
    assert not stronger_bearer(small, (1.0, 1.0), LoadDuration.PERMANENT, ground)
    assert "third bearer" in stronger_bearer(small, (3e6, 1e6), LoadDuration.PERMANENT, ground)


def test_a_heavy_screen_fails_and_says_how_deep() -> None:
    failing = bearer_checks(_of_screen(1000.0))

    assert {Verdict.FAIL} == {one.verdict for code in (BENDING, SHEAR, SAG) for one in checks_of(failing, code)}
    assert all(one.remedy for code in (BENDING, SHEAR, SAG) for one in checks_of(failing, code))


def test_one_bearer_is_not_verified() -> None:
    """Rows nearer than the depth of a bearer share one (framing.md, section 5)."""
    whole = after_checks("A")
    members = tuple(one for one in whole.frame.members if one.mark != "U-B2")
    ground = msgspec.structs.replace(whole, frame=msgspec.structs.replace(whole.frame, members=members))
    found = check_of(bearer_checks, ground, BENDING)

    assert Verdict.PROVISIONAL is found.verdict
    assert "a bracket whose rows are at least 94 mm apart" == found.remedy


def _of_bracket(**values: object) -> Ground:
    ground = after_checks("A")
    assert ground.job.bracket is not None
    return of_job(ground, bracket=msgspec.structs.replace(ground.job.bracket, **values))


def _of_screen(mass_kg: float) -> Ground:
    ground = after_checks("A")
    assert ground.job.screen is not None
    return of_job(ground, screen=msgspec.structs.replace(ground.job.screen, mass_kg=mass_kg))


@given(st.floats(1, 100), st.floats(1, 100))
def test_a_heavier_screen_never_helps(one_kg: float, other_kg: float) -> None:
    light, heavy = (bearer_checks(_of_screen(mass_kg)) for mass_kg in sorted((one_kg, other_kg)))

    for code in (BENDING, SHEAR, SAG):
        for before, after in zip(checks_of(light, code), checks_of(heavy, code), strict=True):
            assert exact_ratio(after) >= exact_ratio(before)
