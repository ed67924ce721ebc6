"""Hardware: screws, plugs and brackets chosen from what is sold, by size and by what holds in which wall; never by price."""

from service.hardware.choosing import (
    WOOD_BASED,
    board_screw,
    by_use,
    ceiling_screw,
    fire_screw,
    heavy_bracket,
    joint_screw,
    laminating_screw,
    light_bracket,
    smallest,
    wall_fixing,
    wall_load,
)
from service.hardware.hardware import BRACKET_PLATE_MM, Hardware, choose_hardware
from service.hardware.shelf import Shelf

__all__ = [
    "BRACKET_PLATE_MM",
    "WOOD_BASED",
    "Hardware",
    "Shelf",
    "board_screw",
    "by_use",
    "ceiling_screw",
    "choose_hardware",
    "fire_screw",
    "heavy_bracket",
    "joint_screw",
    "laminating_screw",
    "light_bracket",
    "smallest",
    "wall_fixing",
    "wall_load",
]
