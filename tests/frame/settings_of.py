"""Short ways to the setting-out of a request and to what stands in a frame."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.frame import Additions
from service.frame.setting_out import set_out
from service.rules import load_rules
from tests.examples_of import job_of

if TYPE_CHECKING:
    from service.frame import Role
    from service.frame.placing import Place
    from service.frame.setting_out import SettingOut
    from tests.examples_of import Request

BRIEF = "/survey/brief"


def setting_of(request: Request, ply_count: int | None = None, added: Additions | None = None) -> SettingOut:
    """The setting-out of a request with the demo catalogue."""
    return set_out(job_of(request), load_rules(), added or Additions(ply_count=ply_count))


def timber(thickness_mm: float, width_mm: float) -> Request:
    """A custom section, sold in every usual length."""
    lengths_mm = [2400, 3000, 3600, 4800]
    sides = {"thickness_mm": thickness_mm, "width_mm": width_mm}
    return {"kind": "custom", **sides, "strength_class": "C16", "lengths_mm": lengths_mm}


def of_role(places: tuple[Place, ...], role: Role) -> list[Place]:
    """Places of one role in their order."""
    return [place for place in places if place.role is role]
