"""From a request to a Job: models looked up, defaults taken and listed, every fault reported at once."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.brief.deal import resolve_deal
from service.brief.faults import check_open_ends, check_place, check_survey
from service.brief.job import Job, ScreenGaps
from service.brief.models import find_appliance, find_bracket, find_screen
from service.brief.notes import Notes
from service.brief.room_facts import take_room_facts
from service.brief.stock import boards_for_pads, find_board, find_timber, house_board
from service.errors import Reason, RequestFaultsError
from service.survey.services import SupplyWanted
from service.survey.terms import SurveyRequest, Terms
from service.survey.wishes import (
    CatalogueAppliance,
    CustomAppliance,
    Finish,
    HandsAt,
    OpenEnds,
    ScreenPlace,
    TopCeiling,
    TopPartHeight,
)
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.deal import Deal
    from service.brief.job import Board, Timber
    from service.brief.room_facts import RoomFacts
    from service.catalogue import Appliance, Bracket, Catalogue, Screen
    from service.rules import RuleSet
    from service.survey.wishes import Brief

BRIEF = "/survey/brief"
UNBUILT_FINISHES = (Finish.TILED, Finish.SLATTED)


def resolve(request: SurveyRequest, catalogue: Catalogue, rules: RuleSet, today: str) -> tuple[Job, Deal]:
    """Make the job and the deal of a request.

    Raises:
        RequestFaultsError: with every contradiction, impossible value and unknown model.
    """
    notes = Notes()
    survey, brief = request.survey, request.survey.brief
    deal = resolve_deal(request.terms or Terms(), catalogue, today, notes)
    check_survey(survey, deal.date, notes)
    top = notes.choose(f"{BRIEF}/top", brief.top, TopCeiling(), "the breast goes up to the ceiling")
    facts = take_room_facts(survey, isinstance(top, TopCeiling), rules, notes)
    appliance = find_appliance(brief.appliance, catalogue, notes)
    screen = find_screen(brief.screen, catalogue, notes)
    bracket = find_bracket(brief.screen_bracket, screen, catalogue, notes)
    timber = find_timber(brief.timber, catalogue, facts.longest_length_mm, notes)
    board = find_board(brief.board, catalogue, rules, notes)
    lining, backboard, lid = _house_boards(catalogue, rules, notes)
    if notes.faults or None in (appliance, timber, board, lining, backboard, lid):
        raise RequestFaultsError(tuple(notes.faults))
    parts = _Parts(appliance, screen, bracket, timber, board, lining, backboard, lid)  # type: ignore[arg-type]
    return _make_job(request, _Context(catalogue, rules, notes, facts, deal, top), parts), deal


class _Parts:
    """What was looked up, complete."""

    def __init__(  # noqa: PLR0913, PLR0917 - one argument a thing looked up
        self, appliance: Appliance, screen: Screen | None, bracket: Bracket | None, timber: Timber, board: Board, lining: Board, backboard: Board, lid: Board
    ) -> None:
        self.appliance, self.screen, self.bracket = appliance, screen, bracket
        self.timber, self.board, self.lining, self.backboard, self.lid = timber, board, lining, backboard, lid


class _Context:
    """What making a job reads besides the parts."""

    def __init__(  # noqa: PLR0913, PLR0917
        self, catalogue: Catalogue, rules: RuleSet, notes: Notes, facts: RoomFacts, deal: Deal, top: TopCeiling | TopPartHeight
    ) -> None:
        self.catalogue, self.rules, self.notes, self.facts, self.deal, self.top = catalogue, rules, notes, facts, deal, top


def _house_boards(catalogue: Catalogue, rules: RuleSet, notes: Notes) -> tuple[Board | None, Board | None, Board | None]:
    wanted = (("mdf", rules.frame.lining_mm, "recess linings"), ("plywood", rules.frame.backboard_mm, "the backboard"), ("mdf", rules.frame.lid_mm, "the lid"))
    found = [house_board(kind, thickness_mm, catalogue) for kind, thickness_mm, _use in wanted]
    for board, (kind, thickness_mm, use) in zip(found, wanted, strict=True):
        if board is None:
            notes.refuse(Reason.UNKNOWN_MODEL, BRIEF, f"the catalogue holds no {kind} {thickness_mm:g} for {use}", "add it to the catalogue")
    return found[0], found[1], found[2]


def _make_job(request: SurveyRequest, at: _Context, parts: _Parts) -> Job:
    survey, brief, rules, notes, facts = request.survey, request.survey.brief, at.rules, at.notes, at.facts
    ends = check_open_ends(brief.open_ends, parts.appliance, notes)
    finish = notes.choose(f"{BRIEF}/finish", brief.finish, _usual_finish(parts.board), "how the face is finished")
    skim = tenths(rules.frame.skim_mm) if finish is Finish.SKIMMED else 0
    tf = parts.board.thickness_tenth_mm + skim
    gaps = _gaps(brief, parts, rules, notes)
    q = tenths(notes.choose(f"{BRIEF}/glass_set_back_mm", brief.glass_set_back_mm, rules.frame.glass_set_back_mm, "glass behind the finished face") if parts.screen else 0.0)
    kr = tenths(notes.choose(f"{BRIEF}/cable_room_mm", brief.cable_room_mm, rules.frame.cable_room_mm, "plugs to the side; straight plugs want 60") if parts.screen else 0.0)
    rear = tenths(_figure(parts.appliance.clear_rear_mm, rules.frame.rear_clearance_mm))
    inset = tenths(_figure(parts.appliance.frame_inset_mm, rules.frame.frame_inset_mm))
    beside = tenths(_figure(parts.appliance.clear_side_mm, rules.frame.gap_beside_fire_mm))
    over = tenths(_figure(parts.appliance.clear_above_mm, rules.frame.gap_over_fire_mm))
    upstand = _upstand(brief, parts, over, gaps, rules, notes)
    width = _width(brief, ends, parts, (tf, beside, inset, gaps), rules, notes)
    depth = _depth(brief, parts, (tf, rear, q, kr), rules, notes)
    full = isinstance(at.top, TopCeiling)
    shown_width = width if width is not None else tenths(parts.appliance.body_width_mm) - 2 * inset + 2 * tf
    check_place(shown_width / 10, depth / 10, survey, notes)
    _note_by_hand(brief, finish, shown_width - 2 * tf, notes)
    left = facts.centre_tenth_mm - shown_width // 2 + tf  # survey x of the frame's left end
    notes.doubt_outside(f"{BRIEF}/platform_height_mm", brief.platform_height_mm, 0, 700)
    job = Job(
        survey=survey,
        terms=request.terms or Terms(),
        today=at.deal.date,
        rule_edition=rules.edition,
        appliance=parts.appliance,
        appliance_standing=_standing(brief),
        screen=parts.screen,
        screen_standing=parts.screen.standing if parts.screen and parts.screen.standing == "size_class" else "named",
        bracket=parts.bracket,
        open_ends=ends,
        full_height=full,
        clear_height_tenth_mm=facts.clear_height_tenth_mm,
        finished_top_tenth_mm=facts.clear_height_tenth_mm if isinstance(at.top, TopCeiling) else tenths(at.top.height_mm),
        width_tenth_mm=width,
        depth_tenth_mm=depth,
        platform_tenth_mm=tenths(notes.choose(f"{BRIEF}/platform_height_mm", brief.platform_height_mm, rules.defaults.platform_height_mm, "height of the fire above the floor")),
        upstand_tenth_mm=upstand,
        shift_tenth_mm=tenths(brief.appliance_shift_mm or 0.0) if ends is OpenEnds.NONE else 0,
        gaps=gaps,
        set_back_tenth_mm=q,
        cable_room_tenth_mm=kr,
        gap_over_tenth_mm=over,
        gap_beside_tenth_mm=beside,
        rear_clearance_tenth_mm=rear,
        inset_tenth_mm=inset,
        skim_tenth_mm=skim,
        finish=finish,
        allowance_mm=round(notes.choose(f"{BRIEF}/after_measure_allowance_mm", brief.after_measure_allowance_mm, rules.frame.after_measure_allowance_mm, "bought longer where the length follows from the ceiling")),
        timber=parts.timber,
        board=parts.board,
        lining=parts.lining,
        backboard=parts.backboard,
        lid=parts.lid,
        pads=boards_for_pads(at.catalogue),
        wall_construction=facts.wall,
        wall_lining_tenth_mm=facts.wall_lining_tenth_mm,
        wall_void_tenth_mm=facts.wall_void_tenth_mm,
        studs_tenth_mm=None if facts.studs_mm is None else tuple(tenths(x) - left for x in sorted(facts.studs_mm)),
        joists=facts.joists,
        joists_tenth_mm=tuple(tenths(x) - left for x in facts.joists_mm),
        ceiling_lining_tenth_mm=facts.ceiling_lining_tenth_mm,
        ceiling_holds_screws=facts.ceiling_holds_screws,
        noggins=facts.noggins,
        cables_scanned=facts.cables_scanned,
        fall_tenth_mm=facts.fall_tenth_mm,
        low_end=facts.low_end,
        lean_mm=facts.lean_mm,
        skirting_height_mm=facts.skirting_height_mm,
        skirting_thickness_mm=facts.skirting_thickness_mm,
        storey_count=facts.storey_count,
        parking_distance_mm=facts.parking_distance_mm,
        wall_centre_tenth_mm=facts.centre_tenth_mm,
        assumptions=tuple(notes.assumptions),
        doubts=tuple(notes.doubts),
        by_hand=tuple(notes.by_hand),
        missing_figures=tuple(notes.missing_figures),
    )
    if notes.faults:
        raise RequestFaultsError(tuple(notes.faults))
    return job


def _figure(declared_mm: float | None, house_mm: float) -> float:
    """The maker's figure wins, also when it is 0; the house's stands in where there is none."""
    return house_mm if declared_mm is None else declared_mm


def _usual_finish(board: Board) -> Finish:
    return Finish.SKIMMED if board.board_kind == "plasterboard" else Finish.PAINTED


def _standing(brief: Brief) -> str:
    if isinstance(brief.appliance, CatalogueAppliance):
        return "catalogue"
    return "custom" if isinstance(brief.appliance, CustomAppliance) else "size_class"


def _gaps(brief: Brief, parts: _Parts, rules: RuleSet, notes: Notes) -> ScreenGaps:
    if parts.screen is None:
        return ScreenGaps(side_tenth_mm=0, top_tenth_mm=0, bottom_tenth_mm=0)
    wish = notes.choose(f"{BRIEF}/screen_gap_mm", brief.screen_gap_mm, rules.frame.screen_gap_mm, "free air round the screen")
    least = max(wish, rules.frame.screen_gap_mm, parts.screen.least_gap_mm or 0.0)
    own = {side: getattr(brief.screen, f"gap_{side}_mm", None) or 0.0 for side in ("side", "top", "bottom")}
    hands = brief.hands_at or HandsAt(parts.bracket.hands_at if parts.bracket else "none")
    side = max(least, own["side"], rules.frame.hands_gap_mm if hands is HandsAt.SIDES else 0.0)
    return ScreenGaps(side_tenth_mm=tenths(side), top_tenth_mm=tenths(max(least, own["top"])), bottom_tenth_mm=tenths(max(least, own["bottom"])))


def _upstand(brief: Brief, parts: _Parts, over_tenth_mm: int, gaps: ScreenGaps, rules: RuleSet, notes: Notes) -> int:  # noqa: PLR0913, PLR0917
    """The wish, or the house's upstand, never less than the maker's distance from outlet to screen asks."""
    asked = 0
    fire = parts.appliance
    if parts.screen and fire.outlet_to_screen_least_mm is not None and fire.outlet_height_mm is not None:
        above = tenths(fire.body_height_mm - fire.outlet_height_mm) + over_tenth_mm + parts.lining.thickness_tenth_mm + gaps.bottom_tenth_mm
        asked = -((above - tenths(fire.outlet_to_screen_least_mm)) // 50) * 50  # rounded up to 5 mm
    house_mm = max(rules.frame.upstand_mm, asked / 10)
    return tenths(notes.choose(f"{BRIEF}/sill_above_appliance_mm", brief.sill_above_appliance_mm, house_mm, "height of the screen over the fire"))


def _width(brief: Brief, ends: OpenEnds, parts: _Parts, sizes: tuple[int, int, int, ScreenGaps], rules: RuleSet, notes: Notes) -> int | None:  # noqa: PLR0913, PLR0917
    if ends is OpenEnds.BOTH:
        return None if brief.breast_width_mm is None else tenths(brief.breast_width_mm)
    if brief.breast_width_mm is not None:
        return tenths(brief.breast_width_mm)
    tf, beside, inset, gaps = sizes
    b, body = parts.timber.thickness_tenth_mm, tenths(parts.appliance.body_width_mm)
    fire = body + 2 * beside + 4 * b + 2 * tf if ends is OpenEnds.NONE else body - inset + beside + 2 * b + 2 * tf
    recess = 0
    if parts.screen:
        recess = tenths(parts.screen.body_width_mm) + 2 * gaps.side_tenth_mm + 2 * parts.lining.thickness_tenth_mm + 4 * b + 2 * tf
    return _step_up(max(fire, recess), f"{BRIEF}/breast_width_mm", rules, notes)


def _depth(brief: Brief, parts: _Parts, sizes: tuple[int, int, int, int], rules: RuleSet, notes: Notes) -> int:
    if brief.breast_depth_mm is not None:
        return tenths(brief.breast_depth_mm)
    tf, rear, q, kr = sizes
    b, d = parts.timber.thickness_tenth_mm, parts.timber.width_tenth_mm
    least = max(tenths(parts.appliance.body_depth_mm) + rear, 2 * d + tenths(rules.frame.least_noggin_mm) + tf)
    if parts.screen and parts.bracket:
        recess = q + tenths(parts.screen.body_depth_mm) + max(tenths(parts.bracket.depth_mm), kr)
        least = max(least, max(recess, tf + d - parts.backboard.thickness_tenth_mm) + parts.backboard.thickness_tenth_mm + b)
    return _step_up(least, f"{BRIEF}/breast_depth_mm", rules, notes)


def _step_up(least_tenth_mm: int, pointer: str, rules: RuleSet, notes: Notes) -> int:
    step = tenths(rules.defaults.unit_width_step_mm)
    size = -(-least_tenth_mm // step) * step
    notes.take(pointer, None, size / 10, "the least that fits, rounded up to 10 mm")
    return size


def _note_by_hand(brief: Brief, finish: Finish, frame_width_tenth_mm: int, notes: Notes) -> None:
    for index, extra in enumerate(brief.extras or ()):
        notes.by_hand.append(f"extra {index + 1} ({extra.kind.value.replace('_', ' ')}) is not laid out yet: quote it by hand")
    if finish in UNBUILT_FINISHES:
        notes.by_hand.append(f"a {finish.value} face is not priced yet: quote it by hand")
    if brief.screen is not None and brief.screen_place is ScreenPlace.ON_FACE:
        notes.by_hand.append("a screen on the face is not laid out yet: quote it by hand, or ask for a recess")
    if frame_width_tenth_mm > 30_000:
        notes.by_hand.append("a breast wider than 3 m is built in modules, which is not laid out yet: quote it by hand")


def supply_of(job: Job) -> SupplyWanted:
    """How the fire is connected: as wished, else a fused connection on the circuit there is."""
    services = job.survey.services
    return (services.supply_wanted if services else None) or SupplyWanted.FUSED_CONNECTION
