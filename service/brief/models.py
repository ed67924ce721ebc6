"""The fire, the screen and its bracket of a brief, as catalogue models: looked up, taken over, or guessed by size class."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.catalogue import Appliance, Bracket, Catalogue, Screen
from service.errors import Reason
from service.survey.wishes import (
    CatalogueAppliance,
    CatalogueBracket,
    CatalogueScreen,
    CustomAppliance,
    CustomBracket,
    CustomScreen,
    SizeClassAppliance,
)

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.survey.wishes import ApplianceChoice, BracketChoice, ScreenChoice, SizeClassScreen

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
SCREEN_FIGURES = ("hole_centre_offset_mm", "least_gap_mm", "power_w", "max_ambient_deg_c")


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
        _check_custom_screen(choice, notes)
        values = {name: value for name, value in msgspec.structs.asdict(choice).items() if name in Screen.__struct_fields__}
        found = Screen(**{**values, "model": choice.name, "thread": choice.thread.value})
        notes.missing_figures.extend(f"{SCREEN}/{name}" for name in SCREEN_FIGURES if getattr(found, name) is None)
        return found
    return _screen_of_class(choice, catalogue, notes)


def find_bracket(choice: BracketChoice | None, screen: Screen | None, catalogue: Catalogue, notes: Notes) -> Bracket | None:
    """The bracket: as wished, else the one offered with the screen, else the lightest that takes it."""
    if screen is None:
        return None
    if isinstance(choice, CatalogueBracket):
        found = catalogue.brackets.get(choice.model)
        if found is None:
            _unknown(notes, f"{BRACKET}/model", choice.model, "brackets")
        return found
    if isinstance(choice, CustomBracket):
        values = {name: value for name, value in msgspec.structs.asdict(choice).items() if name in Bracket.__struct_fields__}
        values |= {"model": choice.name, "kind": choice.bracket_kind.value, "reach_mm": choice.reach_mm or choice.depth_mm}
        return Bracket(**{**values, "hands_at": choice.hands_at.value})
    offered = catalogue.brackets.get(screen.bracket or "") or _lightest_bracket(screen, catalogue)
    if offered is None:
        notes.refuse(
            Reason.UNKNOWN_MODEL,
            BRACKET,
            f"no bracket of the catalogue takes {screen.mass_kg:g} kg on holes "
            f"{screen.hole_pattern_width_mm:g} x {screen.hole_pattern_height_mm:g}",
            "send a custom bracket",
        )
        return None
    return notes.choose(BRACKET, None, offered, f"bracket {offered.model}, the one offered with this screen")


def takes(bracket: Bracket, screen: Screen) -> bool:
    """Whether the bracket's range covers the screen's holes and its rating the mass."""
    wide = bracket.screen_pattern_least_width_mm <= screen.hole_pattern_width_mm <= bracket.screen_pattern_greatest_width_mm
    high = bracket.screen_pattern_least_height_mm <= screen.hole_pattern_height_mm <= bracket.screen_pattern_greatest_height_mm
    return wide and high and bracket.rating_kg >= screen.mass_kg


def _lightest_bracket(screen: Screen, catalogue: Catalogue) -> Bracket | None:
    fit = [bracket for bracket in catalogue.brackets.values() if bracket.kind == "fixed" and takes(bracket, screen)]
    return min(fit, key=lambda bracket: (bracket.rating_kg, bracket.model), default=None)


def _unknown(notes: Notes, pointer: str, code: str, collection: str) -> None:
    notes.refuse(
        Reason.UNKNOWN_MODEL, pointer, f"the catalogue holds no {code!r} among its {collection}", f"ask GET /v1/{collection} for what there is"
    )


def _custom_appliance(choice: CustomAppliance, notes: Notes) -> Appliance:
    if choice.outlet_height_mm is not None and choice.outlet_height_mm > choice.body_height_mm:
        notes.contradict(
            (f"{APPLIANCE}/outlet_height_mm", f"{APPLIANCE}/body_height_mm"),
            f"the outlet at {choice.outlet_height_mm:g} mm lies above a body {choice.body_height_mm:g} mm high",
            "count the outlet's height from the base of the body",
        )
    if choice.heat_output_w == 0 and choice.outlet_position != "none":
        notes.contradict(
            (f"{APPLIANCE}/heat_output_w", f"{APPLIANCE}/outlet_position"),
            "a fire of 0 W has no warm air, yet an outlet is named",
            "send outlet_position none, or the rated heat output",
        )
    notes.doubt_outside(f"{APPLIANCE}/body_width_mm", choice.body_width_mm, 400, 2_600)
    notes.doubt_outside(f"{APPLIANCE}/body_height_mm", choice.body_height_mm, 300, 900)
    notes.doubt_outside(f"{APPLIANCE}/body_depth_mm", choice.body_depth_mm, 120, 450)
    notes.doubt_outside(f"{APPLIANCE}/mass_kg", choice.mass_kg, 8, 90)
    notes.doubt_outside(f"{APPLIANCE}/heat_output_w", choice.heat_output_w, 0, 3_000)
    values = {name: value for name, value in msgspec.structs.asdict(choice).items() if name in Appliance.__struct_fields__}
    return msgspec.convert({**values, "model": choice.name, "standing": "custom"}, Appliance)


def _appliance_of_class(choice: SizeClassAppliance, catalogue: Catalogue, notes: Notes) -> Appliance | None:
    like = [one for one in catalogue.appliances.values() if one.open_ends_count == choice.open_ends_count]
    if not like:
        notes.refuse(
            Reason.UNKNOWN_MODEL, APPLIANCE, f"the catalogue holds no fire with {choice.open_ends_count} open ends", "send a custom appliance"
        )
        return None
    nearest = min(like, key=lambda one: (abs(one.body_width_mm - choice.length_mm), one.model))
    taken = msgspec.structs.replace(nearest, model=f"like {nearest.model}", body_width_mm=choice.length_mm, standing="size_class")
    notes.suppose(APPLIANCE, None, nearest.model, f"sizes of {nearest.model} taken, its width set to {choice.length_mm:g} mm")
    return taken


def _screen_of_class(choice: SizeClassScreen, catalogue: Catalogue, notes: Notes) -> Screen | None:
    large = [one for one in catalogue.screens.values() if one.diagonal_in >= choice.diagonal_in]
    if not large:
        notes.refuse(
            Reason.UNKNOWN_MODEL, SCREEN, f"the catalogue holds no screen of {choice.diagonal_in:g} inches or more", "send a custom screen"
        )
        return None
    nearest = min(large, key=lambda one: (one.diagonal_in, one.model))
    notes.suppose(SCREEN, None, nearest.model, f"body of {nearest.model} taken; another of that size may differ by 15 mm each way")
    return msgspec.structs.replace(nearest, standing="size_class")


def _check_custom_screen(choice: CustomScreen, notes: Notes) -> None:
    for side in ("width", "height"):
        pattern, body = getattr(choice, f"hole_pattern_{side}_mm"), getattr(choice, f"body_{side}_mm")
        if pattern > body:
            notes.contradict(
                (f"{SCREEN}/hole_pattern_{side}_mm", f"{SCREEN}/body_{side}_mm"),
                f"holes {pattern:g} mm apart do not lie on a body of {body:g} mm",
                "send the hole pattern of the data sheet, width first",
            )
        if pattern % 50:
            notes.doubt(f"{SCREEN}/hole_pattern_{side}_mm", pattern, f"{pattern:g} is no multiple of 50: please confirm")
    if choice.body_width_mm <= choice.diagonal_in * 1.5:
        notes.refuse(
            Reason.IMPOSSIBLE_VALUE,
            f"{SCREEN}/body_width_mm",
            f"{choice.body_width_mm:g} mm is too narrow for a screen of {choice.diagonal_in:g} inches: is it the diagonal?",
            "send the width of the body in millimetres",
        )
    notes.doubt_outside(f"{SCREEN}/body_width_mm", choice.body_width_mm / choice.body_height_mm, 1.65, 1.85)
    notes.doubt_outside(f"{SCREEN}/mass_kg", choice.mass_kg, 2, 60)


def _note_missing(appliance: Appliance, notes: Notes) -> None:
    names = [name for name in MAKER_FIGURES if getattr(appliance, name) is None]
    if appliance.outlet_position != "none":
        names += [name for name in ("outlet_height_mm", "outlet_to_screen_least_mm") if getattr(appliance, name) is None]
    notes.missing_figures.extend(f"{APPLIANCE}/{name}" for name in names)
