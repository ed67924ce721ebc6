"""Answers on the wire: millimetres, money as decimal strings, one struct a thing. Clients must tolerate new fields.

`outcome` tells a designed breast from a survey that is sound but cannot be built.
"""

from __future__ import annotations

from typing import Annotated

import msgspec
from msgspec import Meta

from service.bill import Counts, LineGroup, Measures
from service.brief import Assumption, Doubt
from service.checks import Caution, Lift, NotMade, Skipped
from service.errors import Unmet
from service.frame import Axis, CutWhen, EndJoint, Fit, Layer, PanelRole, Role, Unit, Waiting
from service.labour import Programme, Step, Task, TradeHours
from service.quote.wire_alternatives import AlternativeAnswer
from service.quote.wire_checks import CheckAnswer, Strengthening
from service.quote.wire_cuts import CutPlanAnswer
from service.quote.wire_money import PriceBody
from service.quote.wire_recut import RecutAnswer
from service.quote.wire_variants import VariantAnswer
from service.signing import Signature
from service.survey import SurveyRequest
from service.units import Money


class Answer(msgspec.Struct, frozen=True, kw_only=True):
    """What every part of an answer is: immutable, by keyword."""


class Place(Answer, frozen=True, kw_only=True):
    """A box in frame axes: x right along the wall, y out of it, z up; left-handed; origin floor, wall face, left end."""

    x0_mm: float
    x1_mm: float
    y0_mm: float
    y1_mm: float
    z0_mm: float
    z1_mm: float


class Section(Answer, frozen=True, kw_only=True):
    """Cross-section of a member as it stands: narrow and wide side."""

    thickness_mm: float
    width_mm: float


class MemberAnswer(Answer, frozen=True, kw_only=True):
    """One length of timber."""

    mark: str
    role: Role
    unit: Unit
    section: Section
    strength_class: str
    along: Axis
    length_mm: float
    cut_length_mm: int
    slack_mm: float
    fit: Fit
    cut_when: CutWhen
    start_joint: EndJoint
    end_joint: EndJoint
    from_bar: bool
    reason: str
    box: Place


class CutOutAnswer(Answer, frozen=True, kw_only=True):
    """A hole in a board, from its lower left corner."""

    kind: str
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float


class ScrewAnswer(Answer, frozen=True, kw_only=True):
    """A screw through a board, where it meets the timber behind; frame axes."""

    x_mm: float
    y_mm: float
    z_mm: float


class PanelAnswer(Answer, frozen=True, kw_only=True):
    """One board as cut."""

    mark: str
    role: PanelRole
    layer: Layer
    board_code: str
    thickness_mm: float
    width_mm: float
    height_mm: float
    cut_width_mm: int
    cut_height_mm: int
    cut_when: CutWhen
    taper_mm: float  # its lower edge, to the floor
    rise_mm: float  # its upper edge, to the ceiling
    joint_below: bool
    joint_left: bool
    cut_outs: tuple[CutOutAnswer, ...]
    screws: tuple[ScrewAnswer, ...]  # none where no timber lies behind: glued, on magnets, or screwed through its neighbours
    box: Place


class OpeningAnswer(Answer, frozen=True, kw_only=True):
    """An opening in the front of the frame."""

    kind: str
    x0_mm: float
    x1_mm: float
    z0_mm: float
    z1_mm: float


class LevelsAnswer(Answer, frozen=True, kw_only=True):
    """Heights above the highest floor point; null without a screen."""

    platform_mm: float
    appliance_top_mm: float
    upper_top_mm: float
    finished_top_mm: float
    recess_sill_mm: float | None
    recess_head_mm: float | None
    screen_centre_mm: float | None


class RecessSize(Answer, frozen=True, kw_only=True):
    """Width, height and depth of the recess."""

    width_mm: float
    height_mm: float
    depth_mm: float


class SizesAnswer(Answer, frozen=True, kw_only=True):
    """Overall sizes."""

    finished_width_mm: float
    finished_depth_mm: float
    frame_width_mm: float
    frame_depth_mm: float
    rail_length_mm: float
    cross_noggin_length_mm: float
    opening_width_mm: float
    opening_height_mm: float
    upper_height_mm: float
    trimmer_span_mm: float
    recess_clear: RecessSize | None
    recess_framing: RecessSize | None


class TermAnswer(Answer, frozen=True, kw_only=True):
    """One part of a sum."""

    name: str
    value_mm: float


class ClosureAnswer(Answer, frozen=True, kw_only=True):
    """A sum that holds exactly."""

    name: str
    text: str
    terms: tuple[TermAnswer, ...]
    total_mm: float


class WallFixingAnswer(Answer, frozen=True, kw_only=True):
    """One fixing into the wall."""

    x_mm: float
    z_mm: float
    counted: bool
    through: str
    packing_mm: float


class CeilingScrewAnswer(Answer, frozen=True, kw_only=True):
    """One screw into a joist."""

    x_mm: float
    y_mm: float
    through: str
    packing_mm: float


class SideFixingAnswer(Answer, frozen=True, kw_only=True):
    """One fixing of a ladder into the side wall that it stands against."""

    left: bool
    y_mm: float
    z_mm: float
    through: str


class StationAnswer(Answer, frozen=True, kw_only=True):
    """One line of uprights of the base, and the packer under it."""

    x_mm: float
    packer_mm: float  # the greater of both
    rear_packer_mm: float
    front_packer_mm: float


class TimberAnswer(Answer, frozen=True, kw_only=True):
    """The studding."""

    thickness_mm: float
    width_mm: float
    strength_class: str
    stock: tuple[str, ...]


class FrameBody(Answer, frozen=True, kw_only=True):
    """Everything of the frame."""

    timber: TimberAnswer
    members: tuple[MemberAnswer, ...]
    panels: tuple[PanelAnswer, ...]
    openings: tuple[OpeningAnswer, ...]
    levels: LevelsAnswer
    sizes: SizesAnswer
    closure: tuple[ClosureAnswer, ...]
    stations: tuple[StationAnswer, ...]
    wall_fixings: tuple[WallFixingAnswer, ...]
    ceiling_screws: tuple[CeilingScrewAnswer, ...]
    side_fixings: tuple[SideFixingAnswer, ...]
    base_mass_kg: float
    upper_mass_kg: float
    measure_before_cutting: tuple[Waiting, ...]
    notes: tuple[str, ...]


class BillLineAnswer(Answer, frozen=True, kw_only=True):
    """One thing to buy; prices are null where the book has none."""

    code: str
    description: str
    group: LineGroup
    unit: str
    need: float | None
    need_unit: str
    waste_ratio: float
    packs_count: int
    charged_ratio: float  # share of the price that is charged: less than 1 for things used again
    rule: str
    each: Money | None
    charged: Money | None
    supplier: str | None
    lead_days: int | None


class BillBody(Answer, frozen=True, kw_only=True):
    """The bill."""

    lines: tuple[BillLineAnswer, ...]
    counts: Counts
    measures: Measures
    mass_bought_kg: float
    waste_kg: float
    materials: Money
    unpriced: tuple[str, ...]


class LabourBody(Answer, frozen=True, kw_only=True):
    """Hours of the job; the range is the 10th to the 90th percentile."""

    tasks: tuple[Task, ...]
    trades: tuple[TradeHours, ...]
    lifts: tuple[Lift, ...]
    lifter_days: int
    electrician_visit_hours: tuple[float, ...]
    person_hours: float
    mean_hours: float
    low_hours: float
    high_hours: float
    visit_days: int
    programme: Programme
    unrated: tuple[str, ...]  # work that the shop's rates do not know: the hours are not complete


class Origin(Answer, frozen=True, kw_only=True):
    """What an answer can be made again from, together with the engine."""

    catalogue_revision: str
    rule_set: str
    engine_version: str
    date: str
    request_digest: Annotated[str, Meta(description="SHA-256 of the normalised request, hexadecimal.")]


class Unbuildable(Answer, frozen=True, kw_only=True, tag="unbuildable", tag_field="outcome"):
    """A survey that is sound but cannot be built as wished: what is asked, what there is, what would fit."""

    unmet: tuple[Unmet, ...]
    alternatives: tuple[AlternativeAnswer, ...] = ()  # at most three, best first
    no_alternative: str = ""  # why there is none
    assumptions: tuple[Assumption, ...]
    doubts: tuple[Doubt, ...]
    origin: Origin


class FrameDesigned(Answer, frozen=True, kw_only=True, tag="designed", tag_field="outcome"):
    """A designed frame."""

    frame: FrameBody
    recut: RecutAnswer | None = None  # where `survey.measured` is sent
    checks: tuple[CheckAnswer, ...]
    checks_skipped: tuple[Skipped, ...]
    checks_not_made: tuple[NotMade, ...]
    strengthening: Strengthening
    cautions: tuple[Caution, ...]
    assumptions: tuple[Assumption, ...]
    doubts: tuple[Doubt, ...]
    origin: Origin


class BillDesigned(Answer, frozen=True, kw_only=True, tag="designed", tag_field="outcome"):
    """The bill of a designed breast, with the cutting plan that it buys for."""

    bill: BillBody
    cut_plan: CutPlanAnswer
    recut: RecutAnswer | None = None  # where `survey.measured` is sent
    checks: tuple[CheckAnswer, ...]
    checks_skipped: tuple[Skipped, ...]
    checks_not_made: tuple[NotMade, ...]
    strengthening: Strengthening
    cautions: tuple[Caution, ...]
    assumptions: tuple[Assumption, ...]
    doubts: tuple[Doubt, ...]
    origin: Origin


class QuoteDesigned(Answer, frozen=True, kw_only=True, tag="designed", tag_field="outcome"):
    """A quote. Its standing is never `firm` while a check fails, is not verified or is not made."""

    reference: str
    standing: str
    standing_reasons: tuple[str, ...]
    frame: FrameBody
    recut: RecutAnswer | None = None  # where `survey.measured` is sent
    checks: tuple[CheckAnswer, ...]
    checks_skipped: tuple[Skipped, ...]
    checks_not_made: tuple[NotMade, ...]
    strengthening: Strengthening
    cut_plan: CutPlanAnswer
    bill: BillBody
    labour: LabourBody
    build_sequence: tuple[Step, ...]
    price: PriceBody
    cautions: tuple[Caution, ...]
    exclusions: tuple[str, ...]
    assumptions: tuple[Assumption, ...]
    doubts: tuple[Doubt, ...]
    request: SurveyRequest
    origin: Origin
    variants: tuple[VariantAnswer, ...] = ()  # in the order of `options.variants`
    signature: Signature | None = None  # null: no key is set, or the clock ended a search, so that it may not come out again


type FrameAnswer = FrameDesigned | Unbuildable
type BillAnswer = BillDesigned | Unbuildable
type QuoteAnswer = QuoteDesigned | Unbuildable
