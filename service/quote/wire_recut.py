"""What a measure on site changed, on the wire."""

from __future__ import annotations

from enum import StrEnum

import msgspec

from service.frame import PanelRole, Role, Unit
from service.survey.measured import PiecesCut


class Change(StrEnum):
    """What became of a piece."""

    CHANGED = "changed"
    ADDED = "added"
    DROPPED = "dropped"


class MeasureTaken(msgspec.Struct, frozen=True, kw_only=True):
    """A measure that differs from the survey, so that it drove the changes."""

    measure: str  # field of `survey.measured`
    x_mm: float | None  # where along the frame, of a packer
    surveyed_mm: float
    measured_mm: float  # the least of several
    differs_mm: float  # measured less surveyed


class RecutMember(msgspec.Struct, frozen=True, kw_only=True):
    """A timber that is cut otherwise than the survey alone has it."""

    mark: str
    role: Role
    unit: Unit
    change: Change
    old_cut_length_mm: int | None
    new_cut_length_mm: int | None
    longer_mm: int | None  # new less old; null where it is added or dropped


class RecutPanel(msgspec.Struct, frozen=True, kw_only=True):
    """A board that is cut otherwise: in size, taper or cut-outs."""

    mark: str
    role: PanelRole
    change: Change
    old_cut_width_mm: int | None
    old_cut_height_mm: int | None
    new_cut_width_mm: int | None
    new_cut_height_mm: int | None


class RecutAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """The upper unit again from what was measured. The bill and the price are of what is still to be bought."""

    compared: bool  # false: the survey alone has no design to compare with, so that no changes are listed
    upper_height_before_mm: float | None
    upper_height_mm: float
    measures: tuple[MeasureTaken, ...]
    members: tuple[RecutMember, ...]
    panels: tuple[RecutPanel, ...]
    members_as_before_count: int
    base_unchanged: bool
    noggins_added_count: int
    noggins_left_over_count: int
    pieces_cut: PiecesCut  # already, so that the cutting plan leaves them out
    pieces_to_cut_count: int  # timbers of the cutting plan
