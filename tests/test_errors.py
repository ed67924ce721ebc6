"""Faults, and the slips of units that they name."""

from __future__ import annotations

import pytest

from service.errors import Fault, Reason, RequestFaultsError, UnbuildableError, Unmet, likely_slip


def test_reasons_are_their_own_names() -> None:
    """Codes on the wire are UPPER_SNAKE (AIP-193) and never change by a renaming alone."""
    assert [reason.name for reason in Reason] == [reason.value for reason in Reason]
    assert all(reason.isupper() for reason in Reason)


@pytest.mark.parametrize(
    ("value", "slip"),
    [
        (244, "244 looks like centimetres: 2440 mm?"),
        (2.44, "2.44 looks like metres: 2440 mm?"),
        (96, "96 looks like inches: 2438.4 mm?"),
        (24, "24 looks like decimetres: 2400 mm?"),
        (24400, "24400 looks like tenths of a millimetre: 2440 mm?"),
    ],
)
def test_a_slip_of_units_in_a_room_height_is_named(value: float, slip: str) -> None:
    """A height of 15 to 45 is decimetres, 150 to 450 cm, 1.5 to 4.5 m, 60 to 180 inches: survey findings, section 2, computed."""
    assert slip == likely_slip(value, 1_900, 4_500, "mm")


@pytest.mark.parametrize(
    ("value", "low", "high", "unit"),
    [
        (2440, 1_900, 4_500, "mm"),  # in its range
        (1_900, 1_900, 4_500, "mm"),
        (1_000, 300, 15_000, "mm"),  # in its range, and ten times it as well
        (60, 1_900, 4_500, "mm"),  # 1524 mm as inches: still too low
        (700, 1_900, 4_500, "mm"),  # no factor brings it in
        (0, 1_900, 4_500, "mm"),
        (-244, 1_900, 4_500, "mm"),
        (0.5, 3, 200, "kg"),  # only lengths have slips worth naming
    ],
)
def test_no_slip_is_guessed(value: float, low: float, high: float, unit: str) -> None:
    assert not likely_slip(value, low, high, unit)


def test_all_faults_are_in_the_message() -> None:
    faults = tuple(
        Fault(pointer=pointer, reason=Reason.SHAPE, detail="too low", remedy="send more")
        for pointer in ("/survey/a", "/survey/b")
    )

    error = RequestFaultsError(faults)

    assert faults == error.faults
    assert "/survey/a: too low; /survey/b: too low" == str(error)


def test_all_unmet_inequalities_are_in_the_message() -> None:
    unmet = tuple(
        Unmet(code="recess_high", says=says, asked_mm=900, available_mm=800, short_by_mm=100, offer="a smaller screen")
        for says in ("The recess is too high.", "The fire is too wide.")
    )

    error = UnbuildableError(unmet)

    assert unmet == error.unmet
    assert "The recess is too high.; The fire is too wide." == str(error)
