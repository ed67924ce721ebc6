"""The variants of framing.md, section 14, as requests: the worked examples moved, bent and added to; sizes are invented."""

from __future__ import annotations

from typing import Any

from tests.examples_of import changed
from tests.sold_examples import sold

type Request = dict[str, Any]


def of_points(request: Request, name: str, values_mm: tuple[float, ...]) -> Request:
    """A level or height at the five points of a firm survey: left, middle, right at the wall, left and right at the depth."""
    points = request["survey"]["room"]["heights"]
    part = "room" if name == "height" else "floor"
    found = [
        {"x_mm": point["x_mm"], "y_mm": point["y_mm"], f"{name}_mm": value}
        for point, value in zip(points, values_mm, strict=True)
    ]
    return changed(request, {f"/survey/{part}/{name}s": found})


def uneven(**values: object) -> Request:
    """Example A: the ceiling 30 higher at the right, the floor 12 lower in the middle, the wall leaning in by 14."""
    levels_mm, rises_mm = (0, -12, -3, -2, -4), (0, 10, 30, 5, 24)
    request = of_points(sold("A"), "height", tuple(2515 - low + rise for low, rise in zip(levels_mm, rises_mm, strict=True)))
    more = {f"/{key.replace('__', '/')}": value for key, value in values.items()}
    return changed(of_points(request, "level", levels_mm), {"/survey/floor/fall_mm": 12, "/survey/wall/plumb_mm": 14, **more})


def niche(width_mm: float = 900, height_mm: float = 110, depth_mm: float = 90, **values: object) -> Request:
    """Example A with a niche for a soundbar under its screen."""
    wish = {"kind": "soundbar_niche", "width_mm": width_mm, "height_mm": height_mm, "depth_mm": depth_mm}
    more = {f"/{key.replace('__', '/')}": value for key, value in values.items()}
    return changed(sold("A"), {"/survey/brief/extras": [wish], **more})


def with_beam(**values: object) -> Request:
    """Example A with an oak beam 1200 x 120 x 110 of 11 kg, 100 over the opening."""
    wish = {"kind": "beam", "width_mm": 1200, "height_mm": 120, "depth_mm": 110, "mass_kg": 11, "above_opening_mm": 100}
    more = {f"/{key.replace('__', '/')}": value for key, value in values.items()}
    return changed(sold("A"), {"/survey/brief/extras": [wish], **more})


def with_access(**values: object) -> Request:
    """Example B, closed at the left, with a removable panel in that return, as its connection is hard-wired."""
    more = {f"/{key.replace('__', '/')}": value for key, value in values.items()}
    return changed(sold("B"), {"/survey/brief/extras": [{"kind": "access_panel", "side": "left"}], **more})


def in_a_corner(**values: object) -> Request:
    """Example C in the left corner of its room: W 1355, D 300, frame 1333 from 10 to 1343. Keys as in `sold`."""
    request = sold("C")
    for point in request["survey"]["room"]["heights"]:
        point["x_mm"] -= 1322.5
    more = {f"/{key.replace('__', '/')}": value for key, value in values.items()}
    return changed(request, {"/survey/room/breast_centre_from_left_mm": 677.5, "/survey/wall/square_mm": 0, **more})
