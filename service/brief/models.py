"""The fire, the screen and its bracket of a brief, as catalogue models: looked up, taken over, or guessed by size class."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.catalogue import Appliance, Bracket, Catalogue, Screen
from service.errors import Reason
from service.survey.appliance import CatalogueAppliance, CustomAppliance, SizeClassAppliance
from service.survey.wishes import CatalogueBracket, CatalogueScreen, CustomScreen

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.survey.appliance import ApplianceChoice
    from service.survey.wishes import BracketChoice, ScreenChoice, SizeClassScreen

APPLIANCE = "/survey/brief/appliance"
SCREEN = "/survey/brief/screen"
BRACKET = "/survey/brief/screen_bracket"
MAKER_FIGURES = (  # what only the manual can say: heat.md, section 2, need M
    "clear_above_mm",
    "clear_side_mm",
    "clear_rear_mm",
    "clear_front_mm",
    "air_inlet_area_mm2",
    "air_inlet_position",
    "trim_lap_mm",
    "max_void_deg_c",
    "may_be_boarded_over",
)
OUTLET_FIGURES = ("outlet_height_mm", "outlet_to_screen_least_mm")
SCREEN_FIGURES = ("hole_centre_offset_mm", "least_gap_mm", "power_w", "max_ambient_deg_c")

# Usual ranges: survey.md, section 10; common practice, no source.
USUAL_APPLIANCE = (
    ("body_width_mm", 400, 2_600),
    ("body_height_mm", 300, 900),
    ("body_depth_mm", 120, 450),
    ("mass_kg", 8, 90),
    ("heat_output_w", 0, 3_000),
)
USUAL_SCREEN = (("diagonal_in", 32, 98), ("mass_kg", 2, 60))
USUAL_SHAPE = (1.65, 1.85)  # width over height of a body
HOLE_STEP_MM = 50  # common practice, no source (knowledge/survey.md, section 10)
LEAST_MM_PER_INCH = 1.5  # a body narrower than this for its diagonal was measured in inches


def find_appliance(choice: ApplianceChoice, catalogue: Catalogue, notes: Notes) -> Appliance | None:
    """The fire as a model; None, with a fault noted, if there is none such."""
    if isinstance(choice, CatalogueAppliance):
        found = catalogue.appliances.get(choice.model)
        if found is None:
            _unknown(notes, f"{APPLIANCE}/model", choice.model, "appliances")
    elif isinstance(choice, CustomAppliance):
        found = _custom_appliance(choice, notes)
    else:
        found = _appliance_of_class(choice, catalogue, notes)
    if found is not None:
        _note_missing(found, notes)
    return found


def find_screen(choice: ScreenChoice | None, catalogue: Catalogue, notes: Notes) -> Screen | None:
    """The screen as a model, or None: no screen wanted, or none such (then a fault is noted)."""
    if choice is None:
        return None
    if isinstance(choice, CatalogueScreen):
        found = catalogue.screens.get(choice.model)
        if found is None:
            _unknown(notes, f"{SCREEN}/model", choice.model, "screens")
        return found
    if isinstance(choice, CustomScreen):
        return _custom_screen(choice, notes)
    return _screen_of_class(choice, catalogue, notes)


def find_bracket(choice: BracketChoice | None, screen: Screen | None, catalogue: Catalogue, notes: Notes) -> Bracket | None:
    """The bracket: as wished, else the one offered with the screen, else the lightest that takes it."""
    if screen is None:
        return None
    found = _offered_bracket(screen, catalogue, notes) if choice is None else _wished_bracket(choice, catalogue, notes)
    if found is not None:
        _check_bracket(found, screen, notes)
    return found


def _wished_bracket(choice: BracketChoice, catalogue: Catalogue, notes: Notes) -> Bracket | None:
    if isinstance(choice, CatalogueBracket):
        found = catalogue.brackets.get(choice.model)
        if found is None:
            _unknown(notes, f"{BRACKET}/model", choice.model, "brackets")
        return found
    values = {name: value for name, value in msgspec.structs.asdict(choice).items() if name in Bracket.__struct_fields__}
    reach_mm = choice.depth_mm if choice.reach_mm is None else choice.reach_mm
    made = values | {"model": choice.name, "kind": choice.bracket_kind.value, "reach_mm": reach_mm, "standing": "custom"}
    return Bracket(**{**made, "hands_at": choice.hands_at.value})


def _offered_bracket(screen: Screen, catalogue: Catalogue, notes: Notes) -> Bracket | None:
    offered = catalogue.brackets.get(screen.bracket or "") or _lightest_bracket(screen, catalogue)
    if offered is None:
        holes = f"{screen.hole_pattern_width_mm:g} x {screen.hole_pattern_height_mm:g}"
        notes.refuse(
            Reason.UNKNOWN_MODEL,
            BRACKET,
            detail=f"no bracket of the catalogue takes {screen.mass_kg:g} kg on holes {holes}",
            remedy="send a custom bracket",
        )
        return None
    notes.choose(BRACKET, None, offered.model, "the bracket offered with this screen")
    return offered


def _check_bracket(bracket: Bracket, screen: Screen, notes: Notes) -> None:
    """A screen over the rating is refused; one whose holes the bracket does not span cannot hang on it."""
    if screen.mass_kg > bracket.rating_kg:
        notes.refuse(
            Reason.NOT_ALLOWED,
            BRACKET,
            detail=f"bracket {bracket.model} is rated for {bracket.rating_kg:g} kg and the screen weighs {screen.mass_kg:g} kg",
            remedy=f"choose a bracket rated for {screen.mass_kg:g} kg or more",
            related=(SCREEN,),
        )
    if not _spans(bracket, screen):
        wide = f"{bracket.screen_pattern_least_width_mm:g} to {bracket.screen_pattern_greatest_width_mm:g}"
        high = f"{bracket.screen_pattern_least_height_mm:g} to {bracket.screen_pattern_greatest_height_mm:g}"
        holes = f"{screen.hole_pattern_width_mm:g} x {screen.hole_pattern_height_mm:g}"
        notes.contradict(
            (BRACKET, SCREEN),
            detail=f"bracket {bracket.model} takes holes {wide} wide and {high} high; the screen's are {holes}",
            remedy="choose a bracket that takes the screen's holes",
        )


def _spans(bracket: Bracket, screen: Screen) -> bool:
    wide = bracket.screen_pattern_least_width_mm <= screen.hole_pattern_width_mm <= bracket.screen_pattern_greatest_width_mm
    high = bracket.screen_pattern_least_height_mm <= screen.hole_pattern_height_mm <= bracket.screen_pattern_greatest_height_mm
    return wide and high


def _lightest_bracket(screen: Screen, catalogue: Catalogue) -> Bracket | None:
    able = [
        one
        for one in catalogue.brackets.values()
        if one.kind == "fixed" and _spans(one, screen) and one.rating_kg >= screen.mass_kg
    ]
    return min(able, key=lambda bracket: (bracket.rating_kg, bracket.model), default=None)


def _unknown(notes: Notes, pointer: str, code: str, collection: str) -> None:
    notes.refuse(
        Reason.UNKNOWN_MODEL,
        pointer,
        detail=f"the catalogue holds no {code!r} among its {collection}",
        remedy=f"ask GET /v1/{collection} for what there is",
    )


def _custom_appliance(choice: CustomAppliance, notes: Notes) -> Appliance:
    if choice.outlet_height_mm is not None and choice.outlet_height_mm > choice.body_height_mm:
        notes.contradict(
            (f"{APPLIANCE}/outlet_height_mm", f"{APPLIANCE}/body_height_mm"),
            detail=f"the outlet at {choice.outlet_height_mm:g} mm lies above a body {choice.body_height_mm:g} mm high",
            remedy="count the outlet's height from the base of the body",
        )
    if choice.heat_output_w == 0 and choice.outlet_position != "none":
        notes.contradict(
            (f"{APPLIANCE}/heat_output_w", f"{APPLIANCE}/outlet_position"),
            detail="a fire of 0 W has no warm air, yet an outlet is named",
            remedy="send outlet_position none, or the rated heat output",
        )
    for name, low, high in USUAL_APPLIANCE:
        notes.doubt_outside(f"{APPLIANCE}/{name}", getattr(choice, name), low, high)
    values = {name: value for name, value in msgspec.structs.asdict(choice).items() if name in Appliance.__struct_fields__}
    return msgspec.convert({**values, "model": choice.name, "standing": "custom"}, Appliance)


def _appliance_of_class(choice: SizeClassAppliance, catalogue: Catalogue, notes: Notes) -> Appliance | None:
    like = [one for one in catalogue.appliances.values() if one.open_ends_count == choice.open_ends_count]
    if not like:
        notes.refuse(
            Reason.UNKNOWN_MODEL,
            APPLIANCE,
            detail=f"the catalogue holds no fire with {choice.open_ends_count} open ends",
            remedy="send a custom appliance",
        )
        return None
    nearest = min(like, key=lambda one: (abs(one.body_width_mm - choice.length_mm), one.model))
    taken = msgspec.structs.replace(nearest, model=f"like {nearest.model}", body_width_mm=choice.length_mm, standing="size_class")
    notes.take(APPLIANCE, None, nearest.model, f"sizes of {nearest.model} taken, its width set to {choice.length_mm:g} mm")
    return taken


def _screen_of_class(choice: SizeClassScreen, catalogue: Catalogue, notes: Notes) -> Screen | None:
    large = [one for one in catalogue.screens.values() if one.diagonal_in >= choice.diagonal_in]
    if not large:
        notes.refuse(
            Reason.UNKNOWN_MODEL,
            SCREEN,
            detail=f"the catalogue holds no screen of {choice.diagonal_in:g} inches or more",
            remedy="send a custom screen",
        )
        return None
    nearest = min(large, key=lambda one: (one.diagonal_in, one.model))
    notes.take(SCREEN, None, nearest.model, f"body of {nearest.model} taken; another of that size may differ by 15 mm each way")
    return msgspec.structs.replace(nearest, standing="size_class")


def _custom_screen(choice: CustomScreen, notes: Notes) -> Screen:
    _check_holes(choice, notes)
    if choice.body_width_mm <= choice.diagonal_in * LEAST_MM_PER_INCH:
        notes.refuse(
            Reason.IMPOSSIBLE_VALUE,
            f"{SCREEN}/body_width_mm",
            detail=f"{choice.body_width_mm:g} mm is too narrow for {choice.diagonal_in:g} inches: is it the diagonal?",
            remedy="send the width of the body in millimetres",
        )
    ratio, (low, high) = choice.body_width_mm / choice.body_height_mm, USUAL_SHAPE
    if not low <= ratio <= high:
        says = f"a body {ratio:.2f} times as wide as high is outside the usual {low:g} to {high:g}: please confirm"
        notes.doubt(f"{SCREEN}/body_width_mm", choice.body_width_mm, says)
    for name, least, most in USUAL_SCREEN:
        notes.doubt_outside(f"{SCREEN}/{name}", getattr(choice, name), least, most)
    values = {name: value for name, value in msgspec.structs.asdict(choice).items() if name in Screen.__struct_fields__}
    found = Screen(**{**values, "model": choice.name, "thread": choice.thread.value, "standing": "custom"})
    notes.missing_figures.extend(f"{SCREEN}/{name}" for name in SCREEN_FIGURES if getattr(found, name) is None)
    return found


def _check_holes(choice: CustomScreen, notes: Notes) -> None:
    sides = (
        ("width", choice.hole_pattern_width_mm, choice.body_width_mm),
        ("height", choice.hole_pattern_height_mm, choice.body_height_mm),
    )
    for side, pattern_mm, body_mm in sides:
        if pattern_mm > body_mm:
            notes.contradict(
                (f"{SCREEN}/hole_pattern_{side}_mm", f"{SCREEN}/body_{side}_mm"),
                detail=f"holes {pattern_mm:g} mm apart do not lie on a body of {body_mm:g} mm",
                remedy="send the hole pattern of the data sheet, width first",
            )
        if pattern_mm % HOLE_STEP_MM:
            says = f"{pattern_mm:g} is no multiple of {HOLE_STEP_MM}: please confirm"
            notes.doubt(f"{SCREEN}/hole_pattern_{side}_mm", pattern_mm, says)


def _note_missing(appliance: Appliance, notes: Notes) -> None:
    names = [name for name in MAKER_FIGURES if getattr(appliance, name) is None]
    if appliance.outlet_position != "none":
        names += [name for name in OUTLET_FIGURES if getattr(appliance, name) is None]
    notes.missing_figures.extend(f"{APPLIANCE}/{name}" for name in names)
