"""What strengthening adds to a laid-out frame, as a value: the checks decide it, the layout only places it.

Steps and their limits: `knowledge/framing.md`, section 10.2.
"""

from __future__ import annotations

import msgspec

from service.frame.member import Role


class Additions(msgspec.Struct, frozen=True, kw_only=True):
    """What strengthening adds to the laid-out frame. The checks decide it; the layout only places it."""

    ply_count: int | None = None  # None: the starting guess of framing.md, section 8
    bracketed_roles: tuple[str, ...] = ()  # roles of rails that get a bracket at each end (step 8)
    extra_rear_rails_tenth_mm: tuple[int, ...] = ()  # undersides (step 10)
    strong_class: str = ""  # strength class of the roles below, other than the job's
    strong_roles: tuple[Role, ...] = ()
    reasons: tuple[str, ...] = ()

    def class_of(self, role: Role, job_class: str) -> str:
        """Strength class of the members of a role."""
        return self.strong_class if role in self.strong_roles else job_class


NOTHING_ADDED = Additions()
