"""Electricity: `knowledge/services.md`, sections 1 to 3; `knowledge/worked-checks.md`, E11."""

from __future__ import annotations

import msgspec
import pytest

from service.checks import Verdict
from service.checks.supply import (
    ACCESS,
    CABLE_COVER,
    CIRCUIT,
    CONNECTION,
    RECESS_SOCKET,
    RESIDUAL_CURRENT,
    SCAN,
    SPARE_WAY,
    WARM_CABLE,
    cable_checks,
    load_checks,
)
from service.checks.void_heat import void_deg_c
from service.survey.wishes import Extra, ExtraKind
from tests.checks.by_manual import by_manual
from tests.checks.grounds import ground_of
from tests.checks.results import the_check, values, why_skipped
from tests.checks.words_of import reviewed, words_of
from tests.examples_of import changed
from tests.sold_examples import sold


def test_one_fused_connection() -> None:
    """E11: P / 230 against 13 A; A: fire 2000, flames 45, screen 75."""
    found = the_check(load_checks, ground_of(sold("A")), CONNECTION)

    assert pytest.approx((2120 / 230, 13)) == values(found)
    assert Verdict.PASS is found.verdict


@pytest.mark.parametrize(("other_w", "verdict"), [(870, Verdict.PASS), (871, Verdict.FAIL)])
def test_thirteen_amps(other_w: float, verdict: Verdict) -> None:
    """E11: 2990 W are 13 A: 2000 + 45 + 75 + 870."""
    found = the_check(load_checks, ground_of(sold("A", survey__services__other_load_w=other_w)), CONNECTION)

    assert verdict is found.verdict
    assert ("1 W less" in found.remedy) == (verdict is Verdict.FAIL)


def test_the_remedy_of_a_connection_passes() -> None:
    """A new circuit, as the remedy says: the fire alone on 20 A."""
    over = sold("A", survey__services__other_load_w=2000)
    ground = ground_of(changed(over, {"/survey/services/supply_wanted": "new_circuit"}))
    found = the_check(load_checks, ground, CONNECTION)

    assert Verdict.FAIL is the_check(load_checks, ground_of(over), CONNECTION).verdict
    assert (9.0, 20) == values(found)  # declared 9.0 A, above 2045 / 230
    assert Verdict.PASS is found.verdict


def test_a_declared_current_counts_where_it_is_larger() -> None:
    found = the_check(load_checks, ground_of(by_manual(current_a=13.5)), CONNECTION)

    assert (Verdict.FAIL, (13.5, 13)) == (found.verdict, values(found))
    assert "0 W less" in found.remedy


def test_a_circuit_is_never_called_adequate() -> None:
    """Services.md 1: above 20 A of a radial it advises; below it says nothing."""
    large = the_check(load_checks, ground_of(sold("A", survey__services__other_load_w=2481)), CIRCUIT)  # 4601 W, 20.004 A

    assert (Verdict.ADVISE, 20) == (large.verdict, values(large)[1])
    assert "separate circuit" in large.remedy
    at_20 = ground_of(sold("A", survey__services__other_load_w=2480))
    assert "electrician's to say" in why_skipped(load_checks, at_20, CIRCUIT)


@pytest.mark.parametrize(
    ("answer", "verdict"),
    [("yes", Verdict.PASS), ("no", Verdict.ADVISE), ("unknown", Verdict.PROVISIONAL), (None, Verdict.PROVISIONAL)],
)
def test_residual_current_protection(answer: str | None, verdict: Verdict) -> None:
    found = the_check(load_checks, ground_of(sold("A", survey__services__rcd=answer)), RESIDUAL_CURRENT)

    assert verdict is found.verdict
    assert (found.remedy == "") == (verdict is Verdict.PASS)


@pytest.mark.parametrize(("answer", "verdict"), [("yes", Verdict.PASS), ("no", Verdict.ADVISE), (None, Verdict.PROVISIONAL)])
def test_a_spare_way_for_a_new_circuit(answer: str | None, verdict: Verdict) -> None:
    ground = ground_of(sold("A", survey__services__supply_wanted="new_circuit", survey__services__spare_way=answer))

    assert verdict is the_check(load_checks, ground, SPARE_WAY).verdict
    assert "no new circuit" in why_skipped(load_checks, ground_of(sold("A")), SPARE_WAY)


def test_fixings_in_cable_zones_wait_for_a_scan() -> None:
    """Example B as laid out: the row of four under the ceiling does not count (worked-examples.md)."""
    found = the_check(cable_checks, ground_of(sold("B")), SCAN)
    scanned = the_check(cable_checks, ground_of(sold("A")), SCAN)

    assert (Verdict.ADVISE, 4) == (found.verdict, found.demand.value)
    assert (Verdict.PASS, 0, "") == (scanned.verdict, scanned.demand.value, scanned.remedy)


def test_cover_of_a_cable_in_the_frame() -> None:
    """Half of the timber's wide side under the board: 89 / 2 + 15; 63 / 2 + 12; 95 / 2 + 12.5 + 2 of skim; least 50."""
    found = [the_check(cable_checks, ground_of(sold(name)), CABLE_COVER) for name in ("A", "C", "B")]

    assert [59.5, 43.5, 62] == [values(one)[1] for one in found]
    assert [Verdict.PASS, Verdict.ADVISE, Verdict.PASS] == [one.verdict for one in found]
    assert "steel plates" in found[1].remedy


def test_a_cable_in_a_warm_void() -> None:
    """BS 7671 Table 4B1: the root of what is left of 40 K."""
    ground = ground_of(sold("A"))
    found = the_check(cable_checks, ground, WARM_CABLE)

    assert pytest.approx(((70 - void_deg_c(ground)) / 40) ** 0.5) == found.inputs[0].value
    assert Verdict.ADVISE is found.verdict
    assert "no heat" in why_skipped(cable_checks, ground_of(by_manual(heat_output_w=0, outlet_position="none")), WARM_CABLE)


def test_the_connection_is_reached_through_the_fires_opening() -> None:
    """Cautions.md, E07: at least 200 x 300; A: opening 1327 x 490, so min(490 / 200, 1327 / 300)."""
    found = the_check(cable_checks, ground_of(sold("A")), ACCESS)

    assert pytest.approx(2.45) == values(found)[1]
    assert Verdict.PASS is found.verdict
    assert "in reach outside" in why_skipped(cable_checks, ground_of(sold("C")), ACCESS)


@pytest.mark.parametrize("side", ["side", "top", "none"])
def test_a_fire_that_is_not_serviced_from_the_front_wants_a_panel(side: str) -> None:
    """The panel that the remedy names would do."""
    ground = ground_of(by_manual(service_access=side, access_width_mm=350, access_height_mm=250))
    found = the_check(cable_checks, ground, ACCESS)
    brief = msgspec.structs.replace(
        ground.job.survey.brief, extras=(Extra(kind=ExtraKind.ACCESS_PANEL, width_mm=350, height_mm=250),)
    )
    job = msgspec.structs.replace(ground.job, survey=msgspec.structs.replace(ground.job.survey, brief=brief))

    assert Verdict.FAIL is found.verdict
    assert "250 x 350 mm" in found.remedy
    assert Verdict.PASS is the_check(cable_checks, msgspec.structs.replace(ground, job=job), ACCESS).verdict


def test_a_socket_beside_the_plate() -> None:
    """A: (1064 - 440) / 2; a twin plate is 146."""
    ground = ground_of(sold("A"))
    found = the_check(cable_checks, ground, RECESS_SOCKET)
    wide = msgspec.structs.replace(ground.job.bracket, plate_width_mm=800)  # type: ignore[type-var]  # A has a bracket
    tight = the_check(
        cable_checks, msgspec.structs.replace(ground, job=msgspec.structs.replace(ground.job, bracket=wide)), RECESS_SOCKET
    )

    assert (146, 312) == values(found)
    assert (Verdict.ADVISE, "a recess wider by 28 mm") == (tight.verdict, tight.remedy)
    assert "no screen" in why_skipped(cable_checks, ground_of(sold("C")), RECESS_SOCKET)


def test_the_words_are_those_that_were_read() -> None:
    assert reviewed("supply") == words_of("supply"), "python -m tests.checks.words_of, then read the diff"
