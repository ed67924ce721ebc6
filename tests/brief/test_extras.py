"""Survey.md, section 10, `extras`: what is laid out, and why the rest is quoted by hand."""

from __future__ import annotations

import pytest

from tests.examples_of import Request, changed, job_of
from tests.sold_examples import sold
from tests.variant_requests import niche

NICHE: Request = {"kind": "soundbar_niche", "width_mm": 900, "height_mm": 110, "depth_mm": 90}


def test_a_niche_is_laid_out() -> None:
    job = job_of(niche())

    assert () == job.by_hand
    assert job.niche is not None
    assert (9000, 1100, 900) == (
        job.niche.clear_width_tenth_mm, job.niche.clear_height_tenth_mm, job.niche.bar_depth_tenth_mm
    )  # fmt: skip


@pytest.mark.parametrize(
    ("values", "reason"),
    [
        ({"/survey/brief/extras": [{"kind": "alcove_unit"}]}, "is not laid out yet"),
        ({"/survey/brief/extras": [{"kind": "shelf"}]}, "wants height, projection and mass"),
        ({"/survey/brief/extras": [{**NICHE, "depth_mm": None}]}, "wants its clear width and height and the depth"),
        ({"/survey/brief/extras": [NICHE, NICHE]}, "is the second"),
        ({"/survey/brief/extras": [NICHE], "/survey/brief/screen": None}, "under a screen in a recess only"),
    ],
)
def test_what_is_left_to_a_person(values: Request, reason: str) -> None:
    assert any(reason in says and says.startswith("extra") for says in job_of(changed(sold("A"), values)).by_hand)


@pytest.mark.parametrize(("side", "left"), [("left", True), ("right", False), (None, None)])
def test_an_access_panel_is_laid_out(side: str | None, left: bool | None) -> None:
    wish = {"kind": "access_panel", "width_mm": 250, "side": side}
    job = job_of(changed(sold("B"), {"/survey/brief/extras": [wish]}))

    assert () == job.by_hand
    assert job.access is not None
    assert (left, 2500, 0) == (job.access.left, job.access.width_tenth_mm, job.access.height_tenth_mm)


def test_the_house_chooses_sizes_that_take_the_niche() -> None:
    """Depth for a deep bar: 300 + 40 + 18 is less than the fire wants, 400 + 58 more."""
    free = niche(depth_mm=400, survey__brief__breast_depth_mm=None)

    assert 4600 == job_of(free).depth_tenth_mm
