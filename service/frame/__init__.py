"""The frame stage: a job becomes members, boards and fixings that close to a tenth of a millimetre."""

from service.frame.additions import NOTHING_ADDED, Added, Additions, Reason
from service.frame.frame import (
    CeilingScrew,
    Closure,
    CutOut,
    Frame,
    Layer,
    Ledge,
    Levels,
    Opening,
    Panel,
    PanelRole,
    Recess,
    SideFixing,
    Sizes,
    Station,
    WallFixing,
)
from service.frame.layout import lay_out
from service.frame.member import Axis, Box, CutWhen, EndJoint, Fit, Member, Role, Unit, overlap_tenth_mm
from service.frame.surfaces import off_at
from service.frame.waiting import Waiting, measure_before_cutting

__all__ = [
    "NOTHING_ADDED",
    "Added",
    "Additions",
    "Axis",
    "Box",
    "CeilingScrew",
    "Closure",
    "CutOut",
    "CutWhen",
    "EndJoint",
    "Fit",
    "Frame",
    "Layer",
    "Ledge",
    "Levels",
    "Member",
    "Opening",
    "Panel",
    "PanelRole",
    "Reason",
    "Recess",
    "Role",
    "SideFixing",
    "Sizes",
    "Station",
    "Unit",
    "Waiting",
    "WallFixing",
    "lay_out",
    "measure_before_cutting",
    "off_at",
    "overlap_tenth_mm",
]
