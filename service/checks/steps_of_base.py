"""Steps of the base: uprights where the load stands, closer stations, bearing (`knowledge/framing.md`, 10.2, 1 and 2)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.checks.step import in_stronger_class, stronger
from service.frame import Added, Role
from service.units import text_mm

if TYPE_CHECKING:
    from service.checks.step import Stronger, Weak

BASE_ROLES: Final = (Role.RAIL, Role.UPRIGHT, Role.CROSS_NOGGIN)
LEAST_STATION_PITCH_TENTH_MM: Final = 2_000  # framing.md, 10.2, step 1


def upright_under_feet(weak: Weak) -> Stronger | None:
    """A station under each foot of the fire."""
    if weak.added.foot_stations or not weak.ground.frame.stations:
        return None
    return stronger(weak, "an upright under each foot of the fire", Added.STATION, foot_stations=True)


def closer_stations(weak: Weak) -> Stronger | None:
    """Stations twice as close, down to 200 mm."""
    pitch = (weak.added.station_pitch_tenth_mm or weak.ground.job.board.stud_pitch_tenth_mm) // 2
    if pitch < LEAST_STATION_PITCH_TENTH_MM or not weak.ground.frame.stations:
        return None
    return stronger(weak, f"stations of the base at {text_mm(pitch)}", Added.STATION, station_pitch_tenth_mm=pitch)


def stronger_base(weak: Weak) -> Stronger | None:
    """The base of the next class."""
    return in_stronger_class(weak, BASE_ROLES)


def wide_packers(weak: Weak) -> Stronger | None:
    """Packers as wide as the rail."""
    return None if weak.added.wide_packers else stronger(weak, "packers as wide as the rail", wide_packers=True)


def second_uprights(weak: Weak) -> Stronger | None:
    """A second upright beside each."""
    if weak.added.second_uprights:
        return None
    return stronger(weak, "a second upright beside each", Added.SECOND_UPRIGHT, second_uprights=True)
