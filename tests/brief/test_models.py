"""Survey.md, section 10; heat.md, section 2; viewing.md, section 5: fire, screen and bracket of a brief."""

from __future__ import annotations

import msgspec
import pytest

from service.brief import resolve
from service.catalogue import demo_catalogue
from service.errors import Reason, RequestFaultsError
from service.rules import load_rules
from tests.examples_of import DAY, Request, changed, example_a, example_c, faults_of, job_of, request_of, without

BRIEF = "/survey/brief"
APPLIANCE, SCREEN, BRACKET = f"{BRIEF}/appliance", f"{BRIEF}/screen", f"{BRIEF}/screen_bracket"
FIRE: Request = {
    "kind": "custom", "name": "Own", "open_ends_count": 0, "body_width_mm": 760, "body_height_mm": 535, "body_depth_mm": 210,
    "mass_kg": 21, "heat_output_w": 1800, "connection": "plug", "outlet_position": "front_top",
}  # fmt: skip
FIGURES: Request = {
    "clear_above_mm": 12, "clear_side_mm": 6, "clear_rear_mm": 30, "clear_front_mm": 1000, "air_inlet_area_mm2": 7000,
    "air_inlet_position": "front_bottom", "trim_lap_mm": 20, "max_void_deg_c": 45, "may_be_boarded_over": True,
    "outlet_height_mm": 500, "outlet_to_screen_least_mm": 250,
}  # fmt: skip
TELEVISION: Request = {
    "kind": "custom", "name": "Own", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
    "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
}  # fmt: skip
PLATE: Request = {
    "kind": "custom", "name": "Own", "bracket_kind": "tilt", "depth_mm": 55, "mass_kg": 2, "rating_kg": 30, "plate_width_mm": 440,
    "plate_height_mm": 240, "plate_hole_width_mm": 400, "plate_hole_height_mm": 210, "screen_pattern_least_width_mm": 100,
    "screen_pattern_greatest_width_mm": 400, "screen_pattern_least_height_mm": 100, "screen_pattern_greatest_height_mm": 200,
    "hands_at": "sides",
}  # fmt: skip


def with_fire(**values: object) -> Request:
    """Example C with its own fire."""
    return changed(example_c(), {APPLIANCE: {**FIRE, **values}})


def with_screen(**values: object) -> Request:
    """Example A with its own screen, its bracket left to the house."""
    return changed(without(example_a(), BRACKET), {SCREEN: {**TELEVISION, **values}})


@pytest.mark.parametrize(
    ("values", "pointer", "collection"),
    [
        ({f"{APPLIANCE}/model": "AF-999"}, f"{APPLIANCE}/model", "appliances"),
        ({f"{SCREEN}/model": "SC-999"}, f"{SCREEN}/model", "screens"),
        ({f"{BRACKET}/model": "BK-999"}, f"{BRACKET}/model", "brackets"),
    ],
)
def test_models_that_the_catalogue_lacks(values: Request, pointer: str, collection: str) -> None:
    (fault,) = faults_of(changed(example_a(), values))

    assert (pointer, Reason.UNKNOWN_MODEL) == (fault.pointer, fault.reason)
    assert f"ask GET /v1/{collection} for what there is" == fault.remedy


def test_models_of_the_catalogue() -> None:
    job, catalogue = job_of(example_a()), demo_catalogue()

    assert catalogue.appliances["AF-302"] == job.appliance
    assert catalogue.screens["SC-043"] == job.screen
    assert catalogue.brackets["BK-301"] == job.bracket
    assert ("catalogue", "named") == (job.appliance_standing, job.screen_standing)


def test_a_fire_by_its_manual() -> None:
    job = job_of(with_fire(**FIGURES))

    assert ("Own", "custom", "custom") == (job.appliance.model, job.appliance.standing, job.appliance_standing)
    assert (760, 12, "front_top") == (job.appliance.body_width_mm, job.appliance.clear_above_mm, job.appliance.outlet_position)
    assert () == job.missing_figures


@pytest.mark.parametrize("figure", FIGURES)
def test_a_makers_figure_that_is_missing_is_named(figure: str) -> None:
    """Custom without clearances: maker's figure missing, provisional; never invented."""
    rest = {name: value for name, value in FIGURES.items() if name != figure}

    assert (f"{APPLIANCE}/{figure}",) == job_of(with_fire(**rest)).missing_figures


def test_a_fire_without_an_outlet_has_no_figures_of_it() -> None:
    cold = {**FIGURES, "outlet_position": "none", "heat_output_w": 0}
    cold.pop("outlet_height_mm")
    cold.pop("outlet_to_screen_least_mm")

    assert () == job_of(with_fire(**cold)).missing_figures


def test_figures_that_the_demo_maker_does_not_state() -> None:
    """AF-107 of the demo data lacks three."""
    named = {APPLIANCE: {"kind": "catalogue", "model": "AF-107"}}
    job = job_of(changed(without(example_c(), f"{BRIEF}/breast_width_mm", f"{BRIEF}/appliance_shift_mm"), named))

    expected = {f"{APPLIANCE}/{name}" for name in ("clear_rear_mm", "may_be_boarded_over", "outlet_to_screen_least_mm")}
    assert expected == set(job.missing_figures)


@pytest.mark.parametrize(
    ("values", "pointers"),
    [
        ({"outlet_height_mm": 535.1}, (f"{APPLIANCE}/outlet_height_mm", f"{APPLIANCE}/body_height_mm")),
        ({"outlet_height_mm": 535}, ()),
        ({"heat_output_w": 0}, (f"{APPLIANCE}/heat_output_w", f"{APPLIANCE}/outlet_position")),
        ({"heat_output_w": 0, "outlet_position": "none"}, ()),
        ({"heat_output_w": 1}, ()),
    ],
)
def test_contradictions_of_a_manual(values: Request, pointers: tuple[str, ...]) -> None:
    found = faults_of(with_fire(**values))

    assert pointers == tuple(name for fault in found for name in (fault.pointer, *fault.related))


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("body_width_mm", 400, 2600),
        ("body_height_mm", 300, 900),
        ("body_depth_mm", 120, 450),
        ("mass_kg", 8, 90),
        ("heat_output_w", 0, 3000),
    ],
)
def test_fires_outside_the_usual(name: str, low: float, high: float) -> None:
    """Ranges: width 400..2600, height 300..900, depth 120..450, mass 8..90, heat ..3000; inside the hard limits accepted."""
    pointer = f"{APPLIANCE}/{name}"
    room = {
        f"{BRIEF}/breast_width_mm": None,
        "/survey/room/wall_length_mm": 7000,
        "/survey/room/breast_centre_from_left_mm": 3500,
    }

    def doubted(value: float) -> bool:
        cold = {"outlet_position": "none"} if value == 0 else {}
        request = changed(with_fire(**{name: value}, **cold), room)
        return pointer in {doubt.pointer for doubt in job_of(request).doubts}

    assert (False, False, True) == (doubted(low), doubted(high), doubted(high + 1))
    if low > 0:
        assert doubted(low - 1)


def test_a_fire_of_a_size_class() -> None:
    """size_class gives open ends and length only: the nearest of the catalogue, its width set; never firm."""
    length_mm = 1100
    job = job_of(changed(without(example_a(), f"{BRIEF}/open_ends"), {
        APPLIANCE: {"kind": "size_class", "open_ends_count": 2, "length_mm": length_mm},
    }))  # fmt: skip
    nearest = demo_catalogue().appliances["AF-301"]

    expected = msgspec.structs.replace(nearest, model="like AF-301", body_width_mm=length_mm, standing="size_class")
    assert expected == job.appliance
    assert "size_class" == job.appliance_standing
    assert [True] == [note.needed_for_firm for note in job.assumptions if note.pointer == APPLIANCE]


def test_two_fires_equally_near_the_first_by_name() -> None:
    """AF-301 is 980 and AF-302 is 1335 wide: 1157.5 lies half way."""
    named = {APPLIANCE: {"kind": "size_class", "open_ends_count": 2, "length_mm": 1157.5}}

    assert "like AF-301" == job_of(changed(example_a(), named)).appliance.model


@pytest.mark.parametrize(("diagonal_in", "model"), [(43, "SC-043"), (43.1, "SC-050"), (85, "SC-085"), (20, "SC-043")])
def test_a_screen_of_a_size_class(diagonal_in: float, model: str) -> None:
    """Room for up to N inch: the next one as large."""
    request = changed(without(example_a(), BRACKET), {SCREEN: {"kind": "size_class", "diagonal_in": diagonal_in}})
    job = job_of(request)

    assert job.screen is not None
    assert (model, "size_class", "size_class") == (job.screen.model, job.screen.standing, job.screen_standing)
    assert [model] == [note.value for note in job.assumptions if note.pointer == SCREEN]


def test_a_screen_larger_than_the_catalogue_has() -> None:
    request = changed(without(example_a(), BRACKET), {SCREEN: {"kind": "size_class", "diagonal_in": 85.1}})
    (fault,) = faults_of(request)

    assert (SCREEN, Reason.UNKNOWN_MODEL) == (fault.pointer, fault.reason)


def test_a_screen_by_its_data_sheet() -> None:
    own = {"hole_centre_offset_mm": 5, "least_gap_mm": 55, "power_w": 80, "max_ambient_deg_c": 40}
    job = job_of(with_screen(**own))

    assert job.screen is not None
    assert ("Own", "custom", 5, "m6") == (
        job.screen.model, job.screen.standing, job.screen.hole_centre_offset_mm, job.screen.thread
    )  # fmt: skip
    assert () == job.missing_figures
    bare = job_of(with_screen()).missing_figures
    assert {f"{SCREEN}/{name}" for name in own} == set(bare)


@pytest.mark.parametrize(
    ("values", "pointer"),
    [
        ({"hole_pattern_width_mm": 964.1}, f"{SCREEN}/hole_pattern_width_mm"),
        ({"hole_pattern_height_mm": 557.1}, f"{SCREEN}/hole_pattern_height_mm"),
        ({"body_width_mm": 180, "diagonal_in": 120, "body_height_mm": 200}, f"{SCREEN}/body_width_mm"),
        ({"body_width_mm": 43}, f"{SCREEN}/body_width_mm"),
    ],
)
def test_impossible_screens(values: Request, pointer: str) -> None:
    """Hole pattern over the body; a "width" equal to the class in inches is a diagonal."""
    found = faults_of(with_screen(**values))

    assert pointer in {fault.pointer for fault in found}


def test_a_width_in_inches_is_named_so() -> None:
    fault = next(fault for fault in faults_of(with_screen(body_width_mm=43)) if fault.reason is Reason.IMPOSSIBLE_VALUE)

    assert "is it the diagonal?" in fault.detail


@pytest.mark.parametrize(
    ("values", "name"),
    [
        ({"hole_pattern_width_mm": 210}, "hole_pattern_width_mm"),
        ({"body_height_mm": 520}, "body_width_mm"),
        ({"body_height_mm": 590}, "body_width_mm"),
        ({"mass_kg": 60.5}, "mass_kg"),
        ({"diagonal_in": 31.9}, "diagonal_in"),
    ],
)
def test_doubtful_screens(values: Request, name: str) -> None:
    """Pattern no multiple of 50; body w/h outside 1.65..1.85; over 60 kg; diagonal outside 32..98."""
    request = changed(with_screen(**values), {BRACKET: {**PLATE, "rating_kg": 100}})

    assert [f"{SCREEN}/{name}"] == [doubt.pointer for doubt in job_of(request).doubts]
    assert () == job_of(changed(with_screen(), {BRACKET: PLATE})).doubts


def test_the_bracket_offered_with_a_screen() -> None:
    job = job_of(without(example_a(), BRACKET))
    (note,) = [note for note in job.assumptions if note.pointer == BRACKET]

    assert job.bracket == demo_catalogue().brackets["BK-301"]
    assert ("BK-301", True) == (note.value, note.house_choice)


@pytest.mark.parametrize(
    ("values", "model"),
    [
        ({}, "BK-301"),
        ({"mass_kg": 31, "hole_pattern_height_mm": 300}, "BK-318"),
        ({"mass_kg": 55, "hole_pattern_height_mm": 200}, "BK-453"),
    ],
)
def test_the_lightest_bracket_that_takes_a_screen(values: Request, model: str) -> None:
    job = job_of(with_screen(**values))

    assert job.bracket is not None
    assert model == job.bracket.model


def test_no_bracket_takes_it() -> None:
    (fault,) = faults_of(with_screen(mass_kg=70.1))

    assert (BRACKET, Reason.UNKNOWN_MODEL, "send a custom bracket") == (fault.pointer, fault.reason, fault.remedy)


def test_a_bracket_by_its_leaflet() -> None:
    job = job_of(changed(with_screen(), {BRACKET: PLATE}))

    assert job.bracket is not None
    assert ("Own", "tilt", 55, 55, 210, "sides", "custom") == (
        job.bracket.model, job.bracket.kind, job.bracket.depth_mm, job.bracket.reach_mm, job.bracket.plate_hole_height_mm,
        job.bracket.hands_at, job.bracket.standing,
    )  # fmt: skip
    assert 600 == job.gaps.side_tenth_mm  # hands go in


def test_the_reach_of_an_arm() -> None:
    job = job_of(changed(with_screen(), {BRACKET: {**PLATE, "reach_mm": 500}}))

    assert job.bracket is not None
    assert 500 == job.bracket.reach_mm


def test_an_overloaded_bracket_is_refused() -> None:
    """Rated mass < screen mass: refuse (caution S15)."""
    (fault,) = faults_of(changed(with_screen(mass_kg=30.1), {BRACKET: PLATE}))

    assert (BRACKET, Reason.NOT_ALLOWED, (SCREEN,)) == (fault.pointer, fault.reason, fault.related)
    assert "rated for 30 kg and the screen weighs 30.1 kg" in fault.detail
    assert () == faults_of(changed(with_screen(mass_kg=30), {BRACKET: PLATE}))


@pytest.mark.parametrize(
    ("values", "fits"),
    [
        ({"hole_pattern_width_mm": 400, "hole_pattern_height_mm": 200}, True),
        ({"hole_pattern_width_mm": 100, "hole_pattern_height_mm": 100}, True),
        ({"hole_pattern_width_mm": 450}, False),
        ({"hole_pattern_width_mm": 50}, False),
        ({"hole_pattern_height_mm": 250}, False),
        ({"hole_pattern_height_mm": 50}, False),
    ],
)
def test_a_bracket_must_span_the_holes(values: Request, *, fits: bool) -> None:
    found = faults_of(changed(with_screen(**values), {BRACKET: PLATE}))

    assert ([] if fits else [(BRACKET, Reason.CONTRADICTION)]) == [(fault.pointer, fault.reason) for fault in found]


def test_no_screen_no_bracket() -> None:
    job = job_of(example_c())

    assert (None, None) == (job.screen, job.bracket)


def test_a_size_class_that_the_catalogue_has_no_fire_of() -> None:
    catalogue = demo_catalogue()
    fires = {model: fire for model, fire in catalogue.appliances.items() if fire.open_ends_count != 2}
    request = changed(example_a(), {APPLIANCE: {"kind": "size_class", "open_ends_count": 2, "length_mm": 1300}})

    with pytest.raises(RequestFaultsError, match="no fire with 2 open ends"):
        resolve(request_of(request), msgspec.structs.replace(catalogue, appliances=fires), load_rules(), DAY)
