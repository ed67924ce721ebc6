"""What the rows of the cautions read and yield."""

from __future__ import annotations

from typing import NamedTuple

import msgspec

from service.brief import Job
from service.checks.check import Check, Verdict
from service.checks.report import Report
from service.checks.result import CautionState, Stops
from service.frame import Frame
from service.rules import RuleSet
from service.survey.ceiling import Ceiling
from service.survey.floor import Floor
from service.survey.room import Room
from service.survey.services import Chimney, Services
from service.survey.site import Site
from service.survey.wall import Wall
from service.units import UNIT_SUFFIXES


def field_name(pointer: str) -> str:
    """What a field of the survey is called in a sentence: its section and name, without its unit."""
    section, name = ("", *pointer.split("/"))[-2:]
    unit = max((suffix for suffix in UNIT_SUFFIXES if name.endswith(suffix)), key=len, default="")
    return f"{'fire' if section == 'appliance' else section} {name.removesuffix(unit)}".replace("_", " ").strip()


def said(check: Check) -> str:
    """A check as one or two sentences: what it says, and what helps."""
    return " ".join(f"{part[0].upper()}{part[1:].rstrip('.')}." for part in (check.says, check.remedy) if part)


class Finding(NamedTuple):
    """One row whose trigger is true, or cannot be verified."""

    code: str
    says: str
    state: CautionState = CautionState.FIRES
    stops: Stops | None = None  # None: as the table has it


class Awaited(NamedTuple):
    """One thing that is bought, and the days that its supplier takes."""

    what: str
    lead_days: int


class Facts(msgspec.Struct, frozen=True, kw_only=True):
    """What triggers read: the design, and the survey with empty parts for what was not told."""

    job: Job
    frame: Frame
    rules: RuleSet
    report: Report  # what the checks say; a trigger reads it and does not calculate again
    awaited: tuple[Awaited, ...] = ()  # empty where nothing is bought yet: a frame

    def unmet(self, *codes: str) -> tuple[Check, ...]:
        """Checks of these codes that are not met: failed, or advice against it."""
        return tuple(one for code in codes for one in self.report.of(code) if one.verdict in {Verdict.FAIL, Verdict.ADVISE})

    @property
    def room(self) -> Room:
        """The room."""
        return self.job.survey.room or Room()

    @property
    def wall(self) -> Wall:
        """The host wall."""
        return self.job.survey.wall or Wall()

    @property
    def ceiling(self) -> Ceiling:
        """The ceiling."""
        return self.job.survey.ceiling or Ceiling()

    @property
    def floor(self) -> Floor:
        """The floor."""
        return self.job.survey.floor or Floor()

    @property
    def services(self) -> Services:
        """Services on the wall."""
        return self.job.survey.services or Services()

    @property
    def chimney(self) -> Chimney:
        """The old chimney."""
        return self.job.survey.chimney or Chimney()

    @property
    def site(self) -> Site:
        """The site."""
        return self.job.survey.site or Site()

    def reaches(self, x0_mm: float, x1_mm: float, margin_mm: float = 0.0) -> bool:
        """Whether a stretch of the wall lies within the breast, or nearer to it than a margin."""
        half_mm = self.frame.sizes.finished_width_tenth_mm / 20 + margin_mm
        centre_mm = self.job.wall_centre_tenth_mm / 10
        return x0_mm < centre_mm + half_mm and x1_mm > centre_mm - half_mm

    def over_fire(self, x_mm: float) -> bool:
        """Whether a point of the wall lies over or under the fire's opening."""
        left_mm = self.job.wall_centre_tenth_mm / 10 - self.frame.sizes.frame_width_tenth_mm / 20
        fire = next(one for one in self.frame.openings if one.kind == "fire")
        return left_mm + fire.x0_tenth_mm / 10 <= x_mm <= left_mm + fire.x1_tenth_mm / 10

    def holds(self, x_mm: float, margin_mm: float = 0.0) -> bool:
        """Whether a point of the wall lies within the breast, its edges included, or nearer to it than a margin."""
        half_mm = self.frame.sizes.finished_width_tenth_mm / 20 + margin_mm
        return abs(x_mm - self.job.wall_centre_tenth_mm / 10) <= half_mm
