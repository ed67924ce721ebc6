"""What strengthening adds to a laid-out frame, as a value: the checks decide it, the layout only places it.

Steps and their limits: `knowledge/framing.md`, section 10.2.
"""

from __future__ import annotations

from enum import StrEnum

import msgspec

from service.frame.member import Role


class Added(StrEnum):
    """What a reason is given for."""

    PLY = "ply"
    DEEP_PLY = "deep_ply"
    STRONG_CLASS = "strong_class"
    REAR_RAIL = "rear_rail"
    LADDER_NOGGIN = "ladder_noggin"
    STATION = "station"
    SECOND_UPRIGHT = "second_upright"
    STUD = "stud"
    MID_NOGGIN = "mid_noggin"
    BEARER = "bearer"
    LID_JOIST = "lid_joist"


class Reason(msgspec.Struct, frozen=True, kw_only=True):
    """Why something was added: the check and what it asked for."""

    added: Added
    says: str


MOVES_JOINTS = ("foot_stations", "station_pitch_tenth_mm", "ply_count", "stud_pitch_tenth_mm", "ladder_halved")


class Additions(msgspec.Struct, frozen=True, kw_only=True):
    """What strengthening adds to the laid-out frame. The checks decide it; the layout only places it."""

    # base (steps 1 and 2)
    foot_stations: bool = False  # an upright under each foot of the fire
    station_pitch_tenth_mm: int | None = None  # None: the board's stud spacing
    second_uprights: bool = False
    wide_packers: bool = False  # under the rails, as wide as these
    # trimmer, bearers, studs, lid (steps 3, 4, 6, 7)
    ply_count: int | None = None  # None: the starting guess of framing.md, section 8
    ply_width_tenth_mm: int | None = None  # of plies from a deeper section; None: the job's timber
    bearer_width_tenth_mm: int | None = None
    third_bearer: bool = False
    stud_pitch_tenth_mm: int | None = None  # None: the board's
    mid_noggins: bool = False  # between the uprights beside fire and recess, at half their height
    lid_joist_pitch_tenth_mm: int | None = None  # None: no joists in the lid
    strong_class: str = ""  # strength class of the roles below, other than the job's
    strong_roles: tuple[Role, ...] = ()
    # joints (steps 8, 13a); the checks of screws say where to predrill (step 9)
    bracketed_roles: tuple[str, ...] = ()  # roles of members that get a bracket at each end
    heavy_roles: tuple[str, ...] = ()  # of these, the heavy bracket
    paired_roles: tuple[str, ...] = ()  # of these, brackets over and under the end
    ladder_brackets: bool = False  # at both ends of every noggin of a hung ladder
    ladder_halved: bool = False  # a noggin half way in each bay of a hung ladder that has room
    # wall and ceiling (steps 10 to 12, 14)
    extra_rear_rails_tenth_mm: tuple[int, ...] = ()  # undersides
    top_upright_fixings_count: int = 0  # more in each rear upright in the top row that counts
    top_rail_fixings_count: int = 0  # more through the rail of that row
    all_rail_fixings_count: int = 0  # more through every rear rail
    ceiling_screws_apart_tenth_mm: int = 0  # a second screw at each crossing, so far from the first; 0: none
    wall_fixing_steps_count: int = 0  # so many sizes longer or thicker than the smallest that does
    ceiling_screw_steps_count: int = 0
    reasons: tuple[Reason, ...] = ()

    def class_of(self, role: Role, job_class: str) -> str:
        """Strength class of the members of a role."""
        return self.strong_class if role in self.strong_roles else job_class

    def same_boards(self, other: Additions) -> bool:
        """Whether boards and their joints are surely the same: nothing that a joint may lie on differs."""
        return all(getattr(self, name) == getattr(other, name) for name in MOVES_JOINTS)

    def reason(self, added: Added) -> str:
        """Why something was added; empty where nothing was said."""
        return "; ".join(dict.fromkeys(reason.says for reason in self.reasons if reason.added is added))


NOTHING_ADDED = Additions()
