"""Hypothesis strategies: requests that a person could measure, over the whole sane range, and wild ones beyond it.

Ranges: `knowledge/survey.md` (column "range / hard") and, for fires, screens and brackets, its section 10. The sizes of the
breast are drawn about the least that fits, so that most requests can be built and many lie exactly on a limit.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from hypothesis import strategies as st

from service.catalogue import demo_catalogue

if TYPE_CHECKING:
    from collections.abc import Callable

    from hypothesis.strategies import DrawFn, SearchStrategy

type Request = dict[str, Any]

DAY = "2026-12-01"
CATALOGUE = demo_catalogue()
TIMBERS = tuple(row for row in CATALOGUE.materials.values() if row.kind == "timber" and row.strength_class)
BOARDS = tuple(row for row in CATALOGUE.materials.values() if row.kind == "board")
HOUSE_GAPS_MM = 10.0


class Section(NamedTuple):
    """Timber of a request with its two sides in mm."""

    choice: Request
    b_mm: float
    d_mm: float
    shortest_mm: float  # of the bars sold


class Facing(NamedTuple):
    """Board of a request with its thickness and the skim on it in mm."""

    choice: Request
    finish: str
    tf_mm: float


class Fire(NamedTuple):
    """Fire of a request with what the breast follows from, in mm."""

    choice: Request
    ends: int
    width_mm: float
    height_mm: float
    depth_mm: float  # with the clearance behind it
    over_mm: float
    beside_mm: float
    inset_mm: float


class Screen(NamedTuple):
    """Screen of a request with the sizes of its body, its mass and holes."""

    choice: Request
    width_mm: float
    height_mm: float
    depth_mm: float
    mass_kg: float
    holes_mm: tuple[float, float]
    bottom_mm: float  # the maker's gap under it


class Bracket(NamedTuple):
    """Bracket as the brief names it, and its depth."""

    brief: Request
    depth_mm: float


class Hanging(NamedTuple):
    """Screen and bracket of a request with the sizes of the recess framing in mm."""

    brief: Request
    framing_width_mm: float
    framing_height_mm: float
    depth_mm: float


def lengths_mm(low: float, high: float, step_mm: float = 1.0) -> SearchStrategy[float]:
    """A length as measured: whole steps between two limits."""
    return st.integers(int(low / step_mm), int(high / step_mm)).map(lambda count: round(count * step_mm, 1))


def tenths_mm(low: float, high: float) -> SearchStrategy[float]:
    """A length to the tenth of a millimetre, mostly whole."""
    return st.one_of(lengths_mm(low, high), lengths_mm(low, high), lengths_mm(low, high, 0.5), lengths_mm(low, high, 0.1))


@st.composite
def sections(draw: DrawFn) -> Section:
    """Studding of the catalogue, or a custom section, also with odd tenths."""
    if draw(st.integers(0, 2)) < 2:
        row = draw(st.sampled_from(TIMBERS))
        return Section({"kind": "catalogue", "code": row.code}, row.thickness_mm or 0, row.width_mm or 0, 2400)
    b_mm = draw(st.sampled_from((38.0, 38.1, 44.5, 45.0, 47.0, 49.9, 50.0)))
    d_mm = draw(st.sampled_from((63.0, 70.1, 72.9, 73.0, 89.0, 94.7, 97.0, 100.0, 120.0, 122.5, 140.0)))
    lengths = draw(st.lists(st.sampled_from((2400, 3000, 3600, 4200, 4800, 6000)), min_size=1, max_size=4, unique=True))
    strength = draw(st.sampled_from(("C16", "C24")))
    sides = draw(st.permutations(["thickness_mm", "width_mm"])) if b_mm >= 38 else ["thickness_mm", "width_mm"]
    choice = {"kind": "custom", "thickness_mm": b_mm, "width_mm": d_mm, "strength_class": strength, "lengths_mm": lengths}
    if sides[0] == "width_mm" and d_mm <= 100:
        choice |= {"thickness_mm": d_mm, "width_mm": b_mm}
    return Section(choice, b_mm, d_mm, min(lengths))


@st.composite
def facings(draw: DrawFn) -> Facing:
    """A board of the catalogue or a custom one, with the finish."""
    finish = draw(st.sampled_from(("painted", "taped", "skimmed")))
    skim_mm = 2.0 if finish == "skimmed" else 0.0
    if draw(st.integers(0, 3)):
        row = draw(st.sampled_from(BOARDS))
        return Facing({"kind": "catalogue", "code": row.code}, finish, (row.thickness_mm or 0) + skim_mm)
    thickness_mm = draw(st.sampled_from((6.0, 9.5, 10.3, 12.0, 12.1, 12.5, 15.0, 18.7, 25.0, 30.0)))
    kinds = ("mdf", "plasterboard", "plywood", "cement_board", "calcium_silicate")
    choice = {
        "kind": "custom", "board_kind": draw(st.sampled_from(kinds)),
        "thickness_mm": thickness_mm, "sheet_length_mm": draw(st.sampled_from((1800, 2400, 2440, 2500, 3050))),
        "sheet_width_mm": draw(st.sampled_from((900, 1200, 1220, 1250))), "density_kg_m3": draw(lengths_mm(500, 1300)),
    }  # fmt: skip
    return Facing(choice, finish, thickness_mm + skim_mm)


@st.composite
def fires(draw: DrawFn) -> Fire:
    """A fire of the catalogue, by its manual, or of a size class."""
    kind = draw(st.sampled_from(("catalogue", "catalogue", "custom", "custom", "size_class")))
    if kind == "custom":
        return draw(_custom_fires())
    row = draw(st.sampled_from(tuple(CATALOGUE.appliances.values())))
    width_mm = row.body_width_mm
    choice: Request = {"kind": "catalogue", "model": row.model}
    if kind == "size_class":
        width_mm = draw(lengths_mm(400, 2600))
        choice = {"kind": "size_class", "open_ends_count": row.open_ends_count, "length_mm": width_mm}
        like = [one for one in CATALOGUE.appliances.values() if one.open_ends_count == row.open_ends_count]
        row = min(like, key=lambda one: (abs(one.body_width_mm - width_mm), one.model))
    rear_mm = 50.0 if row.clear_rear_mm is None else row.clear_rear_mm
    return Fire(
        choice, row.open_ends_count, width_mm, row.body_height_mm, row.body_depth_mm + rear_mm, row.clear_above_mm or 10.0,
        row.clear_side_mm or 5.0, 4.0 if row.frame_inset_mm is None else row.frame_inset_mm,
    )  # fmt: skip


@st.composite
def _custom_fires(draw: DrawFn) -> Fire:
    ends = draw(st.integers(0, 2))
    width_mm, height_mm, depth_mm = draw(tenths_mm(400, 2600)), draw(tenths_mm(300, 900)), draw(tenths_mm(120, 450))
    outlet = draw(st.sampled_from(("front_top", "front_bottom", "top_front", "top", "none")))
    over_mm, beside_mm = draw(st.none() | tenths_mm(2, 60)), draw(st.none() | tenths_mm(1, 60))
    rear_mm, inset_mm = draw(st.none() | tenths_mm(0, 80)), draw(st.none() | tenths_mm(0, 10))
    figures = {
        "clear_above_mm": over_mm, "clear_side_mm": beside_mm, "clear_rear_mm": rear_mm, "frame_inset_mm": inset_mm,
        "outlet_to_screen_least_mm": draw(st.none() | lengths_mm(0, 400)),
        "outlet_height_mm": None if outlet == "none" else draw(st.none() | lengths_mm(0, height_mm)),
        "clear_front_mm": draw(st.none() | st.just(1000)), "trim_lap_mm": draw(st.none() | st.just(18)),
    }  # fmt: skip
    choice = {
        "kind": "custom", "name": "of a manual", "open_ends_count": ends, "body_width_mm": width_mm, "body_height_mm": height_mm,
        "body_depth_mm": depth_mm, "mass_kg": draw(lengths_mm(8, 90)), "outlet_position": outlet,
        "heat_output_w": 0 if outlet == "none" else draw(lengths_mm(700, 3000)),
        "connection": draw(st.sampled_from(("plug", "hard_wired"))),
        **{name: value for name, value in figures.items() if value is not None},
    }  # fmt: skip
    if ends == 1:
        choice["open_end"] = draw(st.sampled_from(("left", "right", "either")))
    return Fire(
        choice, ends, width_mm, height_mm, depth_mm + (50.0 if rear_mm is None else rear_mm), over_mm or 10.0, beside_mm or 5.0,
        4.0 if inset_mm is None else inset_mm,
    )  # fmt: skip


@st.composite
def hangings(draw: DrawFn, fire: Fire) -> Hanging:
    """A screen that may fit over the fire, with its bracket and wishes."""
    screen = draw(_screens(fire.width_mm + 700))
    rows = _bracket(draw, screen)
    gap_mm = draw(st.sampled_from((50.0, 50.0, 50.0, 55.5, 80.0)))
    back_mm, room_mm = (
        draw(st.none() | st.sampled_from((0.0, 5.0, 25.0, 40.3))),
        draw(st.none() | st.sampled_from((0.0, 25.0, 60.0))),
    )
    hands = draw(st.none() | st.sampled_from(("none", "sides")))
    wishes = {"screen_gap_mm": gap_mm, "glass_set_back_mm": back_mm, "cable_room_mm": room_mm, "hands_at": hands}
    return Hanging(
        {"screen": screen.choice, **rows.brief, **{name: value for name, value in wishes.items() if value is not None}},
        screen.width_mm + 2 * max(gap_mm, 60) + 30,
        screen.height_mm + gap_mm + max(gap_mm, screen.bottom_mm) + 30,
        (25.0 if back_mm is None else back_mm) + screen.depth_mm + max(rows.depth_mm, 25.0 if room_mm is None else room_mm),
    )


@st.composite
def _screens(draw: DrawFn, widest_mm: float) -> Screen:
    rows = [row for row in CATALOGUE.screens.values() if row.body_width_mm < widest_mm] or list(CATALOGUE.screens.values())[:1]
    row = draw(st.sampled_from(rows))
    kind = draw(st.sampled_from(("catalogue", "catalogue", "custom", "size_class")))
    if kind != "custom":
        known = {"kind": "catalogue", "model": row.model}
        choice = known if kind == "catalogue" else {"kind": "size_class", "diagonal_in": row.diagonal_in}
        holes = (row.hole_pattern_width_mm, row.hole_pattern_height_mm)
        return Screen(choice, row.body_width_mm, row.body_height_mm, row.body_depth_mm, row.mass_kg, holes, 0.0)
    width_mm, depth_mm = draw(tenths_mm(700, 1900)), draw(tenths_mm(20, 120))
    height_mm, mass_kg = round(width_mm / draw(st.sampled_from((1.66, 1.72, 1.84))), 1), draw(lengths_mm(4, 45))
    holes = (draw(st.sampled_from((200.0, 300.0, 400.0))), 200.0)
    bottom_mm = draw(st.sampled_from((0.0, 0.0, 50.0, 75.5, 100.0)))
    choice = {
        "kind": "custom", "name": "of a data sheet", "diagonal_in": round(width_mm / 22.4, 1), "body_width_mm": width_mm,
        "body_height_mm": height_mm, "body_depth_mm": depth_mm, "mass_kg": mass_kg, "hole_pattern_width_mm": holes[0],
        "hole_pattern_height_mm": holes[1], "hole_centre_offset_mm": draw(st.sampled_from((0, 0, -35.5, 40, 120))),
        "gap_bottom_mm": bottom_mm,
    }  # fmt: skip
    return Screen(choice, width_mm, height_mm, depth_mm, mass_kg, holes, bottom_mm)


def _bracket(draw: DrawFn, screen: Screen) -> Bracket:
    """A bracket that takes the screen, or the choice left to the house (reckoned with the deepest that it might take)."""
    able = [
        one for one in CATALOGUE.brackets.values()
        if one.rating_kg >= screen.mass_kg
        and one.screen_pattern_least_width_mm <= screen.holes_mm[0] <= one.screen_pattern_greatest_width_mm
        and one.screen_pattern_least_height_mm <= screen.holes_mm[1] <= one.screen_pattern_greatest_height_mm
    ]  # fmt: skip
    kind = draw(st.sampled_from(("house", "catalogue", "custom")))
    if kind == "house" or (kind == "catalogue" and not able):
        return Bracket({}, 45.0)
    if kind == "catalogue":
        one = draw(st.sampled_from(able))
        return Bracket({"screen_bracket": {"kind": "catalogue", "model": one.model}}, one.depth_mm)
    depth_mm, rows_mm = draw(tenths_mm(15, 90)), draw(tenths_mm(40, 420))
    choice = {
        "kind": "custom", "name": "of a leaflet", "bracket_kind": "fixed", "depth_mm": depth_mm, "mass_kg": 2, "rating_kg": 80,
        "plate_width_mm": 440, "plate_height_mm": rows_mm + 20, "plate_hole_width_mm": 400, "plate_hole_height_mm": rows_mm,
        "screen_pattern_least_width_mm": 100, "screen_pattern_greatest_width_mm": 800, "screen_pattern_least_height_mm": 100,
        "screen_pattern_greatest_height_mm": 500,
    }  # fmt: skip
    return Bracket({"screen_bracket": choice}, depth_mm)


def _more(draw: DrawFn, most_mm: float) -> float:
    """How much over the least: often nothing, a tenth, or a little either way of a limit."""
    return draw(st.one_of(st.sampled_from((0.0, 0.1, 0.5, 1.0, -0.1)), tenths_mm(0, most_mm), tenths_mm(0, most_mm)))


def _platform_mm(draw: DrawFn, timber: Section) -> float:
    b_mm, d_mm = timber.b_mm, timber.d_mm
    form = draw(st.sampled_from(("floor", "pad", "flat", "normal", "normal", "normal", "limit")))
    if form == "floor":
        return 0.0
    if form == "pad":
        return draw(st.sampled_from((12.0, 15.0, 18.0, 24.0, 27.5, 36.0)) | tenths_mm(12, b_mm - 0.1))
    if form == "flat":
        return draw(tenths_mm(b_mm, 2 * b_mm + 29.9))
    if form == "limit":
        return round(draw(st.sampled_from((b_mm, 2 * b_mm + 30, d_mm, 2 * d_mm + 40))) - draw(st.sampled_from((0.0, 0.1))), 1)
    return draw(tenths_mm(2 * b_mm + 30, 700))


def _upstand_mm(draw: DrawFn, timber: Section) -> float | None:
    least_mm = 2 * timber.b_mm + 40
    return draw(st.none() | st.just(round(least_mm, 1)) | tenths_mm(least_mm, 450))


@st.composite
def requests(draw: DrawFn) -> Request:
    """A request that a person could measure; most can be built."""
    timber, facing, fire = draw(sections()), draw(facings()), draw(fires())
    hanging = draw(hangings(fire)) if draw(st.integers(0, 2)) else None
    z0_mm, upstand_mm = _platform_mm(draw, timber), _upstand_mm(draw, timber)
    brief: Request = {
        "appliance": fire.choice, "screen": None, "timber": timber.choice, "board": facing.choice, "finish": facing.finish,
        "platform_height_mm": z0_mm, **(hanging.brief if hanging else {}),
    }  # fmt: skip
    niche_mm = _draw_niche(draw, brief, fire) if hanging else (0.0, 0.0, 0.0)
    if upstand_mm is not None:
        brief["sill_above_appliance_mm"] = upstand_mm
    _draw_depth(draw, brief, timber, facing, (fire, hanging))
    width_mm = _draw_width(draw, brief, timber, facing, (fire, hanging))
    above_mm = (
        (upstand_mm or 200)
        + (niche_mm[1] + 30 + timber.b_mm if niche_mm[1] else 0.0)
        + 2 * timber.b_mm
        + (hanging.framing_height_mm if hanging else 40)
    )
    least_mm = z0_mm + fire.height_mm + fire.over_mm + above_mm
    height_mm = _draw_top(draw, brief, least_mm)
    survey = draw(surroundings(width_mm, brief.get("breast_depth_mm", 400.0), height_mm))
    if draw(st.integers(0, 3)) == 0:
        sides = {"side": draw(st.sampled_from(("left", "right")))} if draw(st.booleans()) else {}
        brief["extras"] = [*brief.get("extras", []), {"kind": "access_panel", **sides}]
    _draw_ledge(draw, brief)
    _draw_unevenness(draw, survey)
    _draw_side_walls(draw, survey, brief, fire, width_mm)
    survey["site"] = {"longest_length_mm": draw(st.sampled_from((timber.shortest_mm, 4800, 4800, 4800, 6000)))}
    survey["site"]["longest_length_mm"] = max(survey["site"]["longest_length_mm"], timber.shortest_mm)
    return {"survey": {**survey, "brief": brief}, "terms": {"date": DAY}}


def _draw_depth(draw: DrawFn, brief: Request, timber: Section, facing: Facing, hung: tuple[Fire, Hanging | None]) -> None:
    fire, hanging = hung
    least_mm = max(fire.depth_mm, 2 * timber.d_mm + 30 + facing.tf_mm, hanging.depth_mm + 18 + timber.b_mm if hanging else 0)
    form = draw(st.integers(0, 6))
    if form == 0:
        return  # the house chooses
    touching_mm = 2 * timber.d_mm + facing.tf_mm  # front and rear timber without a noggin between them
    if form == 1 and touching_mm >= least_mm - 30:
        brief["breast_depth_mm"] = round(touching_mm, 1)
    else:
        brief["breast_depth_mm"] = round(least_mm + _more(draw, 250), 1)


def _draw_width(draw: DrawFn, brief: Request, timber: Section, facing: Facing, hung: tuple[Fire, Hanging | None]) -> float:
    """Draw the width and its ends; returns the finished width."""
    fire, hanging = hung
    b_mm, tf_mm = timber.b_mm, facing.tf_mm
    if fire.ends == 2:
        width_mm = fire.width_mm - 2 * fire.inset_mm + 2 * tf_mm
        if width_mm >= 400 and draw(st.integers(0, 3)) == 0:
            brief["breast_width_mm"] = round(width_mm, 1)
        return width_mm
    if fire.ends == 1 and fire.choice["kind"] != "custom":
        brief["open_ends"] = draw(st.sampled_from(("left", "right")))
    opening_mm = (
        fire.width_mm - fire.inset_mm + fire.beside_mm + b_mm if fire.ends else fire.width_mm + 2 * fire.beside_mm + 2 * b_mm
    )
    least_mm = max(opening_mm + 2 * tf_mm, hanging.framing_width_mm + 2 * b_mm + 2 * tf_mm if hanging else 0, 400.1)
    if draw(st.integers(0, 5)) == 0:
        width_mm = least_mm + 4 * b_mm  # the house chooses something near
    else:
        width_mm = round(
            least_mm + draw(st.sampled_from((0, 0, b_mm, 2 * b_mm, 2 * b_mm + 40, 2 * b_mm + 80))) + _more(draw, 900), 1
        )
        brief["breast_width_mm"] = width_mm
    if fire.ends == 0 and draw(st.booleans()):
        room_mm = max(width_mm - 2 * tf_mm - opening_mm, 0) / 2
        brief["appliance_shift_mm"] = draw(
            st.sampled_from((0.0, round(room_mm, 1), -round(room_mm, 1))) | tenths_mm(-room_mm, room_mm)
        )
    return width_mm


def _draw_niche(draw: DrawFn, brief: Request, fire: Fire) -> tuple[float, float, float]:
    """Now and then a niche for a soundbar: its clear width and height, and the depth of the bar."""
    if draw(st.integers(0, 3)):
        return 0.0, 0.0, 0.0
    sizes = draw(tenths_mm(300, max(fire.width_mm - 200, 400))), draw(tenths_mm(60, 180)), draw(tenths_mm(50, 130))
    brief["extras"] = [dict(zip(("width_mm", "height_mm", "depth_mm"), sizes, strict=True)) | {"kind": "soundbar_niche"}]
    return sizes


def _draw_ledge(draw: DrawFn, brief: Request) -> None:
    """Now and then a beam or shelf over the fire."""
    if draw(st.integers(0, 5)):
        return
    wish = {"kind": draw(st.sampled_from(("beam", "shelf"))), "height_mm": draw(tenths_mm(30, 200)), "mass_kg": 8}
    wish |= {"depth_mm": draw(tenths_mm(60, 250)), "above_opening_mm": draw(tenths_mm(80, 250))}
    brief["extras"] = [*brief.get("extras", []), wish | draw(st.sampled_from(({}, {"width_mm": 400.0})))]


def _draw_unevenness(draw: DrawFn, survey: Request) -> None:
    """Now and then a wall out of plumb, a ceiling that rises by up to 140, and levels of an uneven floor at the same points."""
    survey["wall"]["plumb_mm"] = draw(st.sampled_from((0.0, 5.0, 9.5, -11.0, 50.0)))
    if draw(st.integers(0, 3)):
        return
    heights, fall_mm = survey["room"]["heights"], survey["floor"]["fall_mm"]
    lowest_mm = min(point["height_mm"] for point in heights)
    rises_mm = draw(st.permutations([0.0, *(draw(tenths_mm(0, 140)) for _point in heights[1:])]))
    drops_mm = draw(st.permutations([0.0, fall_mm, *(draw(tenths_mm(0, fall_mm)) for _point in heights[2:])]))
    if draw(st.booleans()):
        survey["floor"] = {"levels": [
            {"x_mm": point["x_mm"], "y_mm": point["y_mm"], "level_mm": round(-drop_mm, 1)}
            for point, drop_mm in zip(heights, drops_mm, strict=True)
        ]}  # fmt: skip
    survey["room"]["heights"] = [
        {**point, "height_mm": round(min(lowest_mm + rise_mm, 4500), 1)} for point, rise_mm in zip(heights, rises_mm, strict=True)
    ]


def _draw_side_walls(draw: DrawFn, survey: Request, brief: Request, fire: Fire, width_mm: float) -> None:
    """Now and then move the breast into a corner, or between two walls; only ends without glass."""
    sides = [side for side in ("left", "right") if side != _glass_side(fire, brief)]
    if fire.ends == 2 or "breast_width_mm" not in brief or draw(st.integers(0, 4)):
        return
    side = draw(st.sampled_from((*sides, *(("both",) if len(sides) == 2 else ()))))
    room, wall = survey["room"], survey["wall"]
    if side == "both":
        room["wall_length_mm"] = width_mm
    shift_mm = (0.0 if side != "right" else room["wall_length_mm"] - width_mm) - (
        room["breast_centre_from_left_mm"] - width_mm / 2
    )
    room["breast_centre_from_left_mm"] = room["breast_centre_from_left_mm"] + shift_mm
    if "levels" in survey["floor"]:
        survey["floor"]["levels"] = [
            {**level, "x_mm": min(round(max(level["x_mm"] + shift_mm, 0.0), 1), room["wall_length_mm"])}
            for level in survey["floor"]["levels"]
        ]
    room["heights"] = [
        {**point, "x_mm": min(round(max(point["x_mm"] + shift_mm, 0.0), 1), room["wall_length_mm"])} for point in room["heights"]
    ]
    for part, name in ((survey["ceiling"], "joist_positions_mm"), (wall, "stud_positions_mm")):
        if name in part:
            part[name] = [x for x in part[name] if x <= room["wall_length_mm"]]
    wall["square_mm"] = draw(st.sampled_from((0.0, 3.0, -8.0, 30.0)))


def _glass_side(fire: Fire, brief: Request) -> str:
    """The end where a two-sided fire shows glass; as the service takes one that may show it at either end."""
    if fire.ends != 1:
        return ""
    return str(brief.get("open_ends") or fire.choice.get("open_end") or "right")


def _draw_top(draw: DrawFn, brief: Request, least_mm: float) -> float:
    """Draw the clear height, and part height in a third of the cases; returns the clear height."""
    height_mm = min(max(round(least_mm + 10 + _more(draw, 700), 1), 2200.0), 3000.0)
    if draw(st.integers(0, 2)) == 0:
        most_mm = height_mm - 300
        top_mm = draw(st.sampled_from((least_mm + 18, most_mm)) | tenths_mm(min(least_mm + 18, most_mm), most_mm))
        brief["top"] = {"kind": "part_height", "height_mm": round(max(top_mm, 400), 1)}
    return height_mm


@st.composite
def surroundings(draw: DrawFn, width_mm: float, depth_mm: float, height_mm: float) -> Request:
    wall_mm = max(4000.0, round(width_mm + 1000))
    centre_mm = wall_mm / 2
    xs = (centre_mm - width_mm / 2, centre_mm, centre_mm + width_mm / 2)
    points = [
        {"x_mm": round(x, 1), "y_mm": y} for x, y in ((xs[0], 0), (xs[1], 0), (xs[2], 0), (xs[0], depth_mm), (xs[2], depth_mm))
    ]
    fall_mm = draw(st.sampled_from((0.0, 0.0, 6.0)) | tenths_mm(0, 25))
    floor: Request = {"fall_mm": fall_mm, "low_end": draw(st.sampled_from(("left", "right", "front", "back", "unknown")))}
    heights = [{**point, "height_mm": round(min(height_mm + fall_mm + draw(lengths_mm(0, 12)), 4500), 1)} for point in points]
    joist_mm, pitch_mm = draw(lengths_mm(0, 400)), draw(lengths_mm(300, 650))
    ceiling = draw(
        st.sampled_from(
            (
                {"joists": "unknown"},
                {"joists": "along_wall", "noggins": "to_be_fitted"},
                {"joists": "across_wall", "joist_positions_mm": [joist_mm + pitch_mm * step for step in range(12)]},
                {"joists": "across_wall", "first_joist_mm": joist_mm, "joist_spacing_mm": pitch_mm},
            )
        )
    )
    studs = [joist_mm + pitch_mm * step for step in range(int((wall_mm - joist_mm) // pitch_mm) + 1)]
    wall = draw(
        st.sampled_from(
            (
                {"construction": "solid_brick", "units": "sound"},
                {"construction": "timber_stud", "stud_positions_mm": studs},
                {"construction": "timber_stud"},
                {"construction": "plasterboard_on_dabs", "void_mm": 25},
                {},
            )
        )
    )
    return {
        "room": {"heights": heights, "wall_length_mm": wall_mm, "breast_centre_from_left_mm": centre_mm},
        "floor": floor, "ceiling": ceiling, "wall": wall, "services": {"cable_scan": draw(st.sampled_from(("done", "not_done")))},
    }  # fmt: skip


SHUFFLED: tuple[tuple[str, ...], ...] = (
    ("room", "heights"),
    ("floor", "levels"),
    ("ceiling", "joist_positions_mm"),
    ("wall", "stud_positions_mm"),
)


def shuffled(request: Request, reorder: Callable[[list[Any]], list[Any]]) -> Request:
    """The same request with its lists of places in another order."""
    survey = dict(request["survey"])
    for section, field in SHUFFLED:
        part = survey.get(section)
        if part and part.get(field):
            survey[section] = {**part, field: reorder(list(part[field]))}
    return {**request, "survey": survey}
