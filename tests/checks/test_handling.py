from __future__ import annotations

import msgspec
import pytest

from service.checks import boards_for_two, count_lifts, lifter_days, may_be_tilted, unit_mass_kg
from service.frame import Unit
from service.rules import load_rules
from tests.bill.bill_facts import one_sided
from tests.examples_of import changed, frame_of, job_of
from tests.sold_examples import laid_out, made

RULES = load_rules()


@pytest.mark.parametrize(
    ("name", "base_kg", "upper_kg"),
    [("A", 15.3, 37.9), ("B", 17.9, 58.0), ("C", 7.2, 18.2), ("C0", 0.0, 19.2)],
)
def test_masses_after_checks(name: str, base_kg: float, upper_kg: float) -> None:
    """`knowledge/worked-examples.md`, "Masses at 450 kg/m3"."""
    found = [unit_mass_kg(made(name).frame, unit, RULES) for unit in (Unit.BASE, Unit.UPPER)]

    assert [base_kg, upper_kg] == pytest.approx(found, abs=0.05)


@pytest.mark.parametrize(("name", "upper_kg"), [("A", 37.9), ("B", 55.0), ("C", 16.8), ("C0", 17.8)])
def test_masses_laid_out(name: str, upper_kg: float) -> None:
    """`knowledge/worked-examples.md`, "Masses at 450 kg/m3 laid out"."""
    assert upper_kg == pytest.approx(unit_mass_kg(laid_out(name).frame, Unit.UPPER, RULES), abs=0.05)


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("A", {"base frame": "none", "upper frame": "lifter", "fire": "lifter", "screen": "none"}),
        ("B", {"base frame": "none", "upper frame": "lifter", "fire": "lifter", "screen": "none"}),
        ("C", {"base frame": "none", "upper frame": "none", "fire": "none"}),
        ("C0", {"upper frame": "none", "fire": "none"}),
    ],
)
def test_who_lifts_what(name: str, expected: dict[str, str]) -> None:
    """`knowledge/worked-examples.md`, "lifting" of each example."""
    assert expected == {lift.what: lift.help for lift in count_lifts(made(name).frame, made(name).job, RULES)}


def test_team_values() -> None:
    """`knowledge/labour.md`, section 2: frame 17.6 / 19.8 hung, 21.9 / 24.6 standing; fire 27.3 / 30.8; v 16.5 and 20.5."""
    a = {lift.what: lift for lift in count_lifts(made("A").frame, made("A").job, RULES)}
    c = {lift.what: lift for lift in count_lifts(made("C").frame, made("C").job, RULES)}

    assert (13.2, 17.6, 19.8) == (
        a["upper frame"].one_person_kg,
        a["upper frame"].two_people_kg,
        a["upper frame"].three_people_kg,
    )
    assert (16.4, 21.9, 24.6) == (
        c["upper frame"].one_person_kg,
        c["upper frame"].two_people_kg,
        c["upper frame"].three_people_kg,
    )
    assert (20.5, 27.3, 30.8) == pytest.approx(
        (a["fire"].one_person_kg, a["fire"].two_people_kg, a["fire"].three_people_kg), abs=0.06
    )
    assert 16.5 == a["screen"].one_person_kg


@pytest.mark.parametrize(("mass_kg", "help_"), [(27.3, "none"), (27.4, "third_person"), (30.7, "third_person"), (30.8, "lifter")])
def test_three_seldom_help(mass_kg: float, help_: str) -> None:
    """4/3 x 20.5 = 27.33, 3/2 x 20.5 = 30.75."""
    job = made("C").job
    fire = msgspec.structs.replace(job.appliance, mass_kg=mass_kg)
    lifts = count_lifts(made("C").frame, msgspec.structs.replace(job, appliance=fire), RULES)

    assert help_ == next(lift.help for lift in lifts if lift.what == "fire")


@pytest.mark.parametrize(("name", "days"), [("A", 2), ("B", 2), ("C", 0)])
def test_days_of_hire(name: str, days: int) -> None:
    """Bills A and B: frame and fire are lifted on different days."""
    assert days == lifter_days(count_lifts(made(name).frame, made(name).job, RULES))


def test_two_things_of_one_day_are_one_day() -> None:
    lifts = count_lifts(made("A").frame, made("A").job, RULES)
    heavy = tuple(msgspec.structs.replace(lift, help="lifter") for lift in lifts)

    assert 2 == lifter_days(heavy)
    assert 1 == lifter_days(tuple(lift for lift in heavy if lift.what in {"fire", "screen"}))


@pytest.mark.parametrize(("name", "marks"), [("A", ()), ("B", ("P-FU1",)), ("C", ())])
def test_boards_for_two(name: str, marks: tuple[str, ...]) -> None:
    """`knowledge/worked-examples.md`: L10 of B is for two, "a board over 1.5 m2"; those of A and C are for one."""
    assert marks == boards_for_two(made(name).frame, made(name).job, RULES)


def test_a_long_heavy_return_is_for_two() -> None:
    """`knowledge/handling.md`, section 1: over 2 m and over 12 kg. MDF 15, 2132 x 505: 12.1 kg; 2132 x 495: 11.9."""
    values = {"/survey/brief/board": {"kind": "catalogue", "code": "BD-2015R"}, "/survey/brief/top/height_mm": 2150}
    deep = changed(one_sided("AF-104"), {**values, "/survey/brief/breast_depth_mm": 510})
    less = changed(deep, {"/survey/brief/breast_depth_mm": 500})

    assert {"P-RL1", "P-RR1"} <= set(boards_for_two(frame_of(deep), job_of(deep), RULES))
    assert not {"P-RL1", "P-RR1"} & set(boards_for_two(frame_of(less), job_of(less), RULES))


@pytest.mark.parametrize("name", ["A", "B", "C", "C0"])
def test_worked_frames_may_be_raised_whole(name: str) -> None:
    """`knowledge/worked-examples.md`: diagonal 1639.7 <= 2500, 2391.3 <= 2605; no limit in part height."""
    assert may_be_tilted(made(name).frame, made(name).job, RULES)


@pytest.mark.parametrize(("clear_tenth_mm", "whole"), [(16_548, True), (16_547, False)])
def test_a_frame_is_raised_whole_while_its_diagonal_passes(clear_tenth_mm: int, whole: bool) -> None:
    """`knowledge/handling.md`, section 4: sqrt(H_f^2 + D_f^2) <= H_c - 15. Example A: sqrt(1585^2 + 420^2) = 1639.703."""
    low = msgspec.structs.replace(made("A").job, clear_height_tenth_mm=clear_tenth_mm)

    assert whole == may_be_tilted(made("A").frame, low, RULES)
