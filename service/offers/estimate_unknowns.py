"""What an estimate does not know, and what each of it does to the price: ranges and effects of `knowledge/survey.md`.

What moves the frame is designed again, from the strengthening that the default needed, and cut again where members or boards
came out otherwise. What moves only hours is reckoned again from the same frame.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

import msgspec

from service.catalogue import price_step
from service.cutting import cut_frame
from service.errors import RequestFaultsError, UnbuildableError
from service.labour import make_site, reckon_again
from service.price import SaleKind, StepKind, price
from service.quote import Made, design, price_plan, take_brief, yard_of
from service.survey.ceiling import JoistDirection
from service.survey.room import HeightPoint, Room
from service.survey.services import Services, SupplyWanted
from service.survey.survey import Provenance
from service.survey.wall import WallConstruction

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.brief import Job
    from service.quote import Desk
    from service.survey import Survey, SurveyRequest

JOINER: Final = "joiner"
MATERIALS_LOW_RATIO, MATERIALS_HIGH_RATIO = -0.05, 0.12  # labour.md, section 5, from memory
HARD_WALL_RATIO: Final = 0.08  # of labour: survey.md, sections 4 and 14, common practice, no source
NOGGINS_HOURS: Final = 1.5  # survey.md, sections 5 and 14, common practice, no source
FLIGHT_HOURS: Final = 0.25  # survey.md, section 9, common practice, no source
FLIGHTS_COUNT: Final = 3  # house choice: few rooms lie higher
UNEVEN_FLOOR_TENTH_MM: Final = 200  # over 15, to which survey.md, section 6 gives an hour
LEAN_MM: Final = 12.0  # the end of the usual range: survey.md, section 4
HEIGHTS_MM: Final = (2_300.0, 2_500.0)  # 2400 by default, +-100: survey.md, section 3


class Base(NamedTuple):
    """The design at the defaults, and what it was made of."""

    made: Made
    request: SurveyRequest
    desk: Desk  # begins with the strengthening of the design

    @property
    def total_minor(self) -> int:
        """Price with tax at the defaults."""
        return self.made.price.total_minor

    @property
    def per_cost_ratio(self) -> float:
        """What a unit of direct cost adds to the price with tax: risk, overhead, profit and tax."""
        price_ = self.made.price
        direct = sum(step.amount_minor for step in price_.steps if step.kind is StepKind.DIRECT_COST)
        works = sum(line.net_minor * (1 + line.tax_ratio) for line in price_.sale if line.kind is SaleKind.WORKS)
        return works / direct if direct else 0.0


class Unknown(NamedTuple):
    """One thing assumed and what its ends do to the price, against the value taken."""

    member: str  # of the answers that settles it; empty: only a survey does
    pointer: str
    says: str
    asks: str
    low_minor: float
    likely_minor: float
    high_minor: float


def unknowns_of(base: Base) -> tuple[Unknown, ...]:
    """Everything that is assumed and moves the price."""
    return tuple(one for part in PARTS for one in part(base))


def _wall(base: Base) -> Iterator[Unknown]:
    if base.made.job.wall_construction is not WallConstruction.UNKNOWN:
        return
    low = _with_job(base, wall_construction=WallConstruction.SOLID_BRICK)
    labour = sum(step.amount_minor for step in base.made.price.steps if step.kind is StepKind.LABOUR)
    high = labour * HARD_WALL_RATIO * base.per_cost_ratio
    says = "solid brick is the low end; a hard or weak wall adds 8 percent of labour"
    yield Unknown("wall", "/survey/wall/construction", says, "What is the wall made of?", low, 0, high)


def _height(base: Base) -> Iterator[Unknown]:
    room = base.request.survey.room
    if room and room.heights:
        return
    ends = [_designed_again(base, _with(base.request.survey, room=_room(height_mm))) for height_mm in HEIGHTS_MM]
    low, high = sorted(0 if end is None else end for end in ends)
    says = f"ceilings of {HEIGHTS_MM[0]:g} to {HEIGHTS_MM[1]:g} high are reckoned with"
    yield Unknown("room_height_mm", "/survey/room/heights", says, "How high is the room?", low, 0, high)


def _room(height_mm: float) -> Room:
    return Room(heights=(HeightPoint(x_mm=0.0, y_mm=0.0, height_mm=height_mm),))


def _supply(base: Base) -> Iterator[Unknown]:
    services = base.request.survey.services
    if services and services.supply_wanted:
        return
    plug = base.made.job.appliance.connection == "plug"
    low = _supplied(base, SupplyWanted.PLUG_IN_REACH) if plug else 0
    says = f"{'a plug in reach' if plug else 'a fused connection'} is the low end, a new circuit the high end"
    asks = "Is there a circuit for the fire, or must a new one be laid?"
    high = _supplied(base, SupplyWanted.NEW_CIRCUIT)
    yield Unknown("supply", "/survey/services/supply_wanted", says, asks, low, 0, high)


def _supplied(base: Base, supply: SupplyWanted) -> int:
    return _with_job(base, survey=_with(base.made.job.survey, services=Services(supply_wanted=supply)))


def _joists(base: Base) -> Iterator[Unknown]:
    if base.made.job.full_height and base.made.job.joists is JoistDirection.UNKNOWN:
        high = _of_hours(base, NOGGINS_HOURS)
        says = f"joists along the wall may want noggins: {NOGGINS_HOURS:g} h"
        yield Unknown("joists", "/survey/ceiling/joists", says, "Which way do the joists of the ceiling run?", 0, 0, high)


def _fall(base: Base) -> Iterator[Unknown]:
    if base.request.survey.floor is None:
        high = max(0, _with_job(base, fall_tenth_mm=UNEVEN_FLOOR_TENTH_MM))
        asks = "How much does the floor fall over the width of the breast?"
        says = "a floor that falls by more than 15 mm takes longer to level on"
        yield Unknown("floor_fall_mm", "/survey/floor/fall_mm", says, asks, 0, 0, high)


def _stairs(base: Base) -> Iterator[Unknown]:
    if base.request.survey.site is None:
        high = _of_hours(base, FLIGHT_HOURS * FLIGHTS_COUNT)
        says = f"ground floor; {FLIGHT_HOURS:g} h for each flight, up to {FLIGHTS_COUNT} reckoned with"
        yield Unknown("flights_count", "/survey/site/storey", says, "How many flights of stairs lead to the room?", 0, 0, high)


def _lean(base: Base) -> Iterator[Unknown]:
    high = max(0, _with_job(base, lean_mm=LEAN_MM))
    yield Unknown("", "/survey/wall/plumb_mm", f"a wall that leans by {LEAN_MM:g} mm takes longer to scribe to", "", 0, 0, high)


def _survey(base: Base) -> Iterator[Unknown]:
    """The shop's allowance for risk falls as the survey gets better."""
    job = msgspec.structs.replace(base.made.job, assumptions=())
    measured = _with(job.survey, provenance={"/survey": Provenance.MEASURED})
    stated, best = (_priced(base, one) for one in (job, msgspec.structs.replace(job, survey=measured)))
    says = "the allowance for risk of a survey with values assumed; less once all is stated or measured"
    yield Unknown("", "/survey/provenance", says, "", best, stated, 0)


def _fire(base: Base) -> Iterator[Unknown]:
    """A fire of a size class costs what the catalogue's own of that kind cost, the nearest in length in the middle."""
    job, catalogue = base.made.job, base.desk.catalogue
    if job.appliance_standing != "size_class":
        return
    like = [one for one in catalogue.appliances.values() if one.open_ends_count == job.appliance.open_ends_count]
    like.sort(key=lambda one: (abs(one.body_width_mm - job.appliance.body_width_mm), one.model))
    prices = [found for one in like if (found := _supply_price(base, one.model)) is not None]
    if prices:
        says = "which fire of its class: the price of the nearest in length, and of the cheapest and dearest"
        asks = "Which model is the fire?"
        yield Unknown("appliance", "/survey/brief/appliance", says, asks, min(prices), prices[0], max(prices))


def _supply_price(base: Base, model: str) -> float | None:
    deal, account = base.made.deal, base.desk.catalogue.account
    step = price_step(base.desk.catalogue, model, deal.date)
    return None if step is None else step.amount_minor * (1 + account.handling_ratio) * (1 + deal.tax_ratio)


def _materials(base: Base) -> Iterator[Unknown]:
    goods = base.made.price.materials_minor * (1 + base.desk.catalogue.account.handling_ratio) * base.per_cost_ratio
    says = "materials may come to 5 percent less or 12 percent more: small unknowns that are not reckoned one by one"
    yield Unknown("", "", says, "", goods * MATERIALS_LOW_RATIO, 0, goods * MATERIALS_HIGH_RATIO)


PARTS: Final = (_wall, _height, _supply, _joists, _fall, _stairs, _lean, _survey, _fire, _materials)


def _with(survey: Survey, **parts: object) -> Survey:
    return msgspec.structs.replace(survey, **parts)


def _of_hours(base: Base, hours: float) -> float:
    """What joiner's hours add to the price."""
    trade, account = base.desk.catalogue.trades.get(JOINER), base.desk.catalogue.account
    return hours * trade.charge_per_hour_minor * (1 + account.tool_wear_ratio) * base.per_cost_ratio if trade else 0.0


def _with_job(base: Base, **changes: object) -> int:
    """What other facts of the place do to the price by the hours alone: same frame, same cuts, same bill."""
    made = base.made
    job = msgspec.structs.replace(made.job, **changes)
    site = make_site(made.frame, made.plan, made.bill, job=job, rules=base.desk.rules, scope=made.deal.scope)
    labour = reckon_again(site, made.labour, base.desk.catalogue)
    return price(made.bill, labour, job=made.job, deal=made.deal, catalogue=base.desk.catalogue).total_minor - base.total_minor


def _priced(base: Base, job: Job) -> int:
    made = base.made
    again = price(made.bill, made.labour, job=job, deal=made.deal, catalogue=base.desk.catalogue)
    return again.total_minor - base.total_minor


def _designed_again(base: Base, survey: Survey) -> int | None:
    """What another room does to the price, by a design of its own; None where it cannot be built so."""
    request = msgspec.structs.replace(base.request, survey=survey)
    try:
        job, deal = take_brief(request, base.desk)
        settled = design(job, base.desk)
    except (RequestFaultsError, UnbuildableError):
        return None
    same = (settled.frame.members, settled.frame.panels) == (base.made.frame.members, base.made.frame.panels)
    plan = base.made.plan if same else cut_frame(settled.frame, job, yard_of(request, base.desk))
    return price_plan(job, deal, settled, plan, desk=base.desk).price.total_minor - base.total_minor
