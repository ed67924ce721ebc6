"""A shortlist: every fire with every screen of the catalogue in one room, ranked, those that do not fit with the reason."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.cutting import GREEDY
from service.errors import Fault, RequestFaultsError
from service.offers.estimate_range import percentiles, spread_over
from service.offers.estimate_survey import board_for, fault_as_asked
from service.offers.estimate_unknowns import unknowns_of
from service.offers.estimates import base_of, head_sizes, labour_spread, range_answer
from service.offers.shortlist_pairs import Pair, Room, pairs_of
from service.offers.shortlist_wire import NearestChange, PairAnswer, ShortlistAnswer, WhyNot
from service.quote import Operation, take_brief

if TYPE_CHECKING:
    from service.offers.estimate_range import Spreading
    from service.offers.estimate_wire import Range
    from service.offers.shortlist_wire import ShortlistRequest
    from service.quote import Desk

BRIEF: Final = "/survey/brief"
RANKING: Final = (
    "Pairs that fit first; then those that miss fewest wishes; then the largest screen; then the lowest likely price; then by "
    "model. Of pairs that do not fit those come first that a change makes fit."
)
NOT_PROVEN: Final = (
    "cuts are the best of a few greedy plans, checked but not proven to cost least",
    "each fire's designs begin with the strengthening of its smaller screen, so that a price may lie a little above its estimate",
    "what the room's unknowns do to the price is reckoned once for each fire",
    "for a pair that does not fit few changes are tried; POST /v1/estimates for it searches further",
)


def answer_shortlist(asked: ShortlistRequest, desk: Desk) -> ShortlistAnswer:
    """Every pair of the catalogue; raises RequestFaultsError for faults of the room, pointing into the request."""
    quick = msgspec.structs.replace(desk, effort=GREEDY)
    catalogue = desk.catalogue
    room = Room(asked, board_for(asked.finish, catalogue), quick)
    screens = tuple(sorted(catalogue.screens.values(), key=lambda one: (one.diagonal_in, one.model)))
    found = [pairs_of(catalogue.appliances[model], screens, room) for model in sorted(catalogue.appliances)]
    _check_room([pair for pairs in found for pair in pairs], quick)
    answers = [answer for pairs in found for answer in _answers(pairs, room)]
    ranked = tuple(sorted(_with_other_things(answers), key=_place))
    return ShortlistAnswer(
        pairs=ranked,
        fitting_count=sum(one.fits for one in ranked),
        ranking=RANKING,
        not_proven=NOT_PROVEN,
        catalogue_revision=catalogue.revision,
        rule_set=desk.rules.edition,
        date=asked.date or desk.today,
    )


def _check_room(pairs: list[Pair], desk: Desk) -> None:
    """Where no pair could be read the room is at fault; those faults that all have are told."""
    if not pairs or not all(pair.fault for pair in pairs):
        return
    common: list[Fault] | None = None
    for pair in pairs:
        faults = _faults(pair, desk)
        common = faults if common is None else [one for one in common if one in faults]
    if common:
        raise RequestFaultsError(tuple(fault_as_asked(one) for one in common))


def _faults(pair: Pair, desk: Desk) -> list[Fault]:
    try:
        take_brief(pair.request, desk)
    except RequestFaultsError as error:
        return list(error.faults)
    return []


def _answers(pairs: tuple[Pair, ...], room: Room) -> list[PairAnswer]:
    """The pairs of one fire; what is unknown of the room is reckoned on its first design."""
    unknown: tuple[Spreading, ...] | None = None
    answers = []
    for pair in pairs:
        price = None
        if pair.made is not None:
            base = base_of(pair.made, pair.request, room.desk)
            if unknown is None:
                unknown = tuple(spread_over(one.low_minor, one.likely_minor, one.high_minor) for one in unknowns_of(base))
            price = range_answer(percentiles(base.total_minor, (labour_spread(base), *unknown)), pair.made.deal.currency)
        answers.append(_answer(pair, price, room.asked))
    return answers


def _answer(pair: Pair, price: Range | None, asked: ShortlistRequest) -> PairAnswer:
    made = pair.made
    return PairAnswer(
        appliance=pair.appliance.model,
        appliance_name=pair.appliance.name,
        screen=pair.screen.model,
        screen_diagonal_in=pair.screen.diagonal_in,
        fits=made is not None,
        price=price,
        complete=made is not None and not made.price.unpriced,
        sizes=head_sizes(made.frame) if made else None,
        wishes_missed=_missed(pair, asked),
        why_not=_why_not(pair),
        nearest_change=_change(pair),
    )


def _why_not(pair: Pair) -> tuple[WhyNot, ...]:
    if pair.fault:
        return (WhyNot(code="contradiction", says=pair.fault),)
    unmet = [WhyNot(code=one.code, says=one.says) for one in pair.unmet]
    failing = [WhyNot(code=one.code, says=one.says) for one in pair.failing]
    return tuple(dict.fromkeys([*unmet, *failing]))


def _change(pair: Pair) -> NearestChange | None:
    """Own change of platform, sill, depth or width; for a check that fails, its remedy."""
    if pair.change:
        answers = tuple(Operation(path=one.path.removeprefix(BRIEF), value=one.value) for one in pair.change.operations)
        return NearestChange(code=pair.change.code, says=pair.change.says, answers=answers)
    remedies = [one.remedy for one in pair.failing if one.remedy]
    return NearestChange(code="check", says=remedies[0], answers=()) if remedies else None


def _missed(pair: Pair, asked: ShortlistRequest) -> tuple[str, ...]:
    sizes = pair.made.frame.sizes if pair.made else None
    missed = {
        "open_ends_count": asked.open_ends_count not in {None, pair.appliance.open_ends_count},
        "least_diagonal_in": asked.least_diagonal_in is not None and pair.screen.diagonal_in < asked.least_diagonal_in,
        "most_width_mm": asked.most_width_mm is not None
        and sizes is not None
        and sizes.finished_width_tenth_mm > asked.most_width_mm * 10,
    }
    return tuple(name for name, is_missed in missed.items() if is_missed)


def _with_other_things(answers: list[PairAnswer]) -> list[PairAnswer]:
    """Where no change of sizes helps: the largest screen that this fire takes, else a fire that takes this screen."""
    fitting = [one for one in answers if one.fits]
    made = []
    for one in answers:
        change = one.nearest_change or (None if one.fits else _other_thing(one, fitting))
        made.append(msgspec.structs.replace(one, nearest_change=change))
    return made


def _other_thing(pair: PairAnswer, fitting: list[PairAnswer]) -> NearestChange | None:
    same_fire = [one for one in fitting if one.appliance == pair.appliance]
    if same_fire:
        best = min(same_fire, key=lambda one: (abs(one.screen_diagonal_in - pair.screen_diagonal_in), one.screen))
        says = f"screen {best.screen}, {best.screen_diagonal_in:g} in"
        return NearestChange(code="screen", says=says, answers=(_choice("screen", best.screen),))
    same_screen = sorted(one.appliance for one in fitting if one.screen == pair.screen)
    if same_screen:
        answers = (_choice("appliance", same_screen[0]),)
        return NearestChange(code="appliance", says=f"fire {same_screen[0]}", answers=answers)
    return None


def _choice(member: str, model: str) -> Operation:
    return Operation(path=f"/{member}", value={"kind": "catalogue", "model": model})


def _place(pair: PairAnswer) -> tuple[bool, int, bool, float, float, str, str]:
    likely = float(pair.price.likely.amount) if pair.price else 0.0
    no_way = pair.nearest_change is None and not pair.fits
    return (not pair.fits, len(pair.wishes_missed), no_way, -pair.screen_diagonal_in, likely, pair.appliance, pair.screen)
