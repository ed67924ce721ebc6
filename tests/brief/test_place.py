"""Survey.md, sections 3, 7 and 15: the breast against the ends of its wall, doors and radiators."""

from __future__ import annotations

import pytest

from tests.examples_of import Request, changed, example_c, faults_of, job_of, without

ROOM, BRIEF = "/survey/room", "/survey/brief"
CENTRE, LENGTH = f"{ROOM}/breast_centre_from_left_mm", f"{ROOM}/wall_length_mm"
C = without(example_c(), f"{ROOM}/heights", "/survey/floor/levels")  # 1355 wide about 2000: from 1322.5 to 2677.5


def pointers(values: Request, *left_out: str) -> list[str]:
    """What is wrong when example C is changed."""
    return [fault.pointer for fault in faults_of(changed(without(C, *left_out), values))]


@pytest.mark.parametrize(
    ("values", "found"),
    [
        ({CENTRE: 677.4}, [CENTRE]),
        ({CENTRE: 3322.6}, [CENTRE]),
        ({CENTRE: 727.5}, []),
        ({CENTRE: 2000, LENGTH: 1300}, [CENTRE]),
        ({CENTRE: 727.4, LENGTH: 1454.8}, [LENGTH]),
        ({CENTRE: 727.5, LENGTH: 1455}, []),
    ],
)
def test_ends_of_the_wall(values: Request, found: list[str]) -> None:
    """Edge < 0 or beyond the wall: contradiction; W + 2 x 50 > wall: contradiction unless an end stands at a side wall."""
    assert found == pointers(values)


def test_a_wall_of_unknown_length() -> None:
    """The left end is known by the centre alone."""
    assert [CENTRE] == pointers({CENTRE: 600}, LENGTH)
    assert [] == pointers({CENTRE: 5000}, LENGTH)


def test_a_wall_without_a_centre() -> None:
    assert [CENTRE] == pointers({LENGTH: 1354}, CENTRE)
    assert [] == pointers({LENGTH: 1455}, CENTRE)


def test_nothing_is_checked_against_defaults() -> None:
    wide = {f"{BRIEF}/breast_width_mm": 4500}

    assert [] == pointers(wide, ROOM)


@pytest.mark.parametrize("centre_mm", [677.5, 3322.5])
def test_against_a_side_wall(centre_mm: float) -> None:
    """Framing.md, section 14; to the tenth of a millimetre."""
    job = job_of(changed(C, {CENTRE: centre_mm}))

    assert () == job.by_hand
    assert (centre_mm < 2000, centre_mm > 2000) == (job.left_wall, job.right_wall)


def test_between_two_side_walls() -> None:
    """A breast as wide as its wall stands against both."""
    job = job_of(changed(C, {CENTRE: 677.5, LENGTH: 1355}))

    assert (True, True) == (job.left_wall, job.right_wall)


@pytest.mark.parametrize(("centre_mm", "sides"), [(977.5, []), (977.4, ["left"]), (3022.5, []), (3022.6, ["right"])])
def test_a_gap_that_nobody_can_clean(centre_mm: float, sides: list[str]) -> None:
    """0 < gap to a corner < 300: doubtful."""
    doubts = [doubt for doubt in job_of(changed(C, {CENTRE: centre_mm})).doubts if doubt.pointer == CENTRE]

    assert sides == [side for side in ("left", "right") for doubt in doubts if f"at the {side}" in doubt.says]


def obstacle(kind: str, x0_mm: float, x1_mm: float, reach_mm: float = 0) -> Request:
    """A rectangle on the wall."""
    return {f"{ROOM}/obstacles": [{"kind": kind, "x0_mm": x0_mm, "x1_mm": x1_mm, "reach_mm": reach_mm}]}


@pytest.mark.parametrize(
    ("values", "found"),
    [
        (obstacle("door_swing", 2677.4, 3400, 760), [f"{ROOM}/obstacles/0"]),
        (obstacle("door_swing", 2677.5, 3400, 760), []),
        (obstacle("door_swing", 600, 1322.6, 760), [f"{ROOM}/obstacles/0"]),
        (obstacle("door_swing", 2000, 2700, 0), []),
        (obstacle("door", 2600, 3400), [f"{ROOM}/obstacles/0"]),
        (obstacle("door", 2700, 3400), []),
        (obstacle("window", 1500, 2500), []),
        ({"/survey/services/radiators": [{"x0_mm": 2677.4, "x1_mm": 3400}]}, ["/survey/services/radiators/0"]),
        ({"/survey/services/radiators": [{"x0_mm": 2677.5, "x1_mm": 3400}]}, []),
    ],
)
def test_what_stands_in_the_way(values: Request, found: list[str]) -> None:
    """Breast inside a door swing, over a door, before a radiator: contradiction, each with its other field."""
    assert found == pointers(values)


def test_every_hit_is_listed() -> None:
    doors = [{"kind": "door", "x0_mm": x, "x1_mm": x + 100} for x in (1400, 1800, 2200)]

    assert [f"{ROOM}/obstacles/{index}" for index in range(3)] == pointers({f"{ROOM}/obstacles": doors})


def test_where_the_breast_will_stand_is_not_known() -> None:
    """Without a centre nothing is said of doors."""
    assert [] == pointers(obstacle("door", 1900, 2100), CENTRE)


def test_a_width_that_was_sent_is_checked_though_no_fire_was_found() -> None:
    assert [CENTRE, f"{BRIEF}/appliance/model"] == sorted(
        pointers({f"{BRIEF}/appliance/model": "AF-999", CENTRE: 600}), key=lambda pointer: "appliance" in pointer
    )  # fmt: skip
