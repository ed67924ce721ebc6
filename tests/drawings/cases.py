"""Designs of every kind that the tests of the views go through, as frames with their jobs."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from service.frame import lay_out
from service.rules import load_rules
from tests.examples_of import changed, example_a, example_b, example_c, example_c0, job_of

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame import Frame

BRIEF = "/survey/brief"


def _brief(request: dict[str, Any], **values: object) -> dict[str, Any]:
    return changed(request, {f"{BRIEF}/{name}": value for name, value in values.items()})


def _requests() -> dict[str, dict[str, Any]]:
    a, b, c = example_a(), example_b(), example_c()
    return {
        "a": a,
        "b": b,
        "c": c,
        "c0": example_c0(),
        "no base under three open sides": _brief(a, platform_height_mm=0),
        "no screen": _brief(a, screen=None, screen_bracket=None),
        "wide": _brief(
            a, appliance={"kind": "catalogue", "model": "AF-303"}, screen={"kind": "catalogue", "model": "SC-070"},
            screen_bracket={"kind": "catalogue", "model": "BK-453"}, platform_height_mm=300, sill_above_appliance_mm=240,
            breast_depth_mm=450,
        ),
        "flat base": _brief(c, platform_height_mm=90),
        "pad": _brief(c, platform_height_mm=30),
        "open at the left, low at the left": changed(
            _brief(b, open_ends="left"), {"/survey/floor": {"fall_mm": 25, "low_end": "left", "skirting_height_mm": 120}}
        ),
        "low at the back": changed(c, {"/survey/floor": {"fall_mm": 12, "low_end": "back", "skirting_height_mm": 120}}),
        "low at the front": changed(c, {"/survey/floor": {"fall_mm": 12, "low_end": "front", "skirting_height_mm": 120}}),
        "fall of no known side": changed(c, {"/survey/floor": {"fall_mm": 12, "low_end": "unknown", "skirting_height_mm": 120}}),
        "rails on the floor": changed(
            _brief(c, platform_height_mm=38), {"/survey/floor": {"fall_mm": 12, "low_end": "unknown", "skirting_height_mm": 120}}
        ),
        "packers beside the fire": _brief(
            c, appliance={"kind": "catalogue", "model": "AF-101"}, breast_width_mm=760, appliance_shift_mm=0,
            breast_depth_mm=250, top={"kind": "ceiling"}, platform_height_mm=300,
        ),
        "studs in the cheek, at 1:20": changed(
            _brief(
                c, appliance={"kind": "catalogue", "model": "AF-106"}, screen={"kind": "catalogue", "model": "SC-065"},
                breast_width_mm=2900, appliance_shift_mm=300, breast_depth_mm=420, top={"kind": "ceiling"},
                platform_height_mm=450, board={"kind": "catalogue", "code": "BD-2130R"}, finish="skimmed",
                sill_above_appliance_mm=None,
            ),
            {"/survey/room/wall_length_mm": 4500, "/survey/site/largest_board_length_mm": 3050},
        ),
    }  # fmt: skip


REQUESTS = _requests()


@cache
def case(name: str) -> tuple[Frame, Job]:
    """Frame and job of one design."""
    job = job_of(REQUESTS[name])
    return lay_out(job, load_rules()), job
