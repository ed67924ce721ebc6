"""What keeps a sound survey from being built: each inequality with what is asked, what there is, and what would fit.

Codes and offers: `knowledge/framing.md`, section 13; common practice, no source. Two codes are ours: `width_ladder`, the
sideways twin of `depth_ladder`, and `by_hand`, a wish that is no inequality and is left to a person.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.brief import least_upstand
from service.errors import Unmet
from service.frame.access import access_refusals
from service.frame.ledge import ledge_refusals
from service.frame.niche import lift_of, niche_refusals
from service.frame.pads import greatest_platform, pad_heights
from service.frame.walls import glass_at_wall
from service.units import millimetres, tenths, text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet

type Unmets = tuple[Unmet, ...]

WIDTH_AGREES_TENTH_MM = 10  # a width sent for a three-sided fire may differ by 1 mm: framing.md, section 13


def refusals(at: SettingOut, job: Job, rules: RuleSet) -> Unmets:
    """Every inequality of a setting-out that does not hold."""
    return (
        *_depth(at, job, rules),
        *_width(at, job, rules),
        *glass_at_wall(at),
        *niche_refusals(at, job),
        *access_refusals(at, job, rules),
        *ledge_refusals(at, job, rules),
        *_platform(at, job, rules),
        *_heights(at, job, rules),
        *_recess(at, job, rules),
        *_outlet(at, job),
        *_stock(at, job),
        *_by_hand(job),
    )


def unmet_if(code: str, asked: int, available: int, *, says: str, offer: str) -> Unmets:
    """The inequality asked <= available, in tenths of a millimetre, if it does not hold."""
    if asked <= available:
        return ()
    short = asked - available
    return (
        Unmet(
            code=code,
            says=says,
            asked_mm=millimetres(asked),
            available_mm=millimetres(available),
            short_by_mm=millimetres(short),
            offer=offer,
        ),
    )


def one_of(*offers: str) -> str:
    """The offers that there are, as one sentence; an empty one is none."""
    *first, last = [offer for offer in offers if offer]
    return f"{', '.join(first)}, or {last}" if first else last


def _depth(at: SettingOut, job: Job, rules: RuleSet) -> Unmets:
    ladder = 2 * at.d + tenths(rules.frame.least_noggin_mm) + at.tf
    fire = tenths(job.appliance.body_depth_mm) + job.rear_clearance_tenth_mm
    unmet = unmet_if(
        "depth_ladder", ladder if at.n != 0 else 0, at.dd,
        says=f"a breast {text_mm(at.dd)} deep is too shallow for {text_mm(at.d)} timber front and back",
        offer=f"a depth of {text_mm(ladder)} or more, or a thinner section",
    )  # fmt: skip
    unmet += unmet_if(
        "depth_fire", fire, at.dd,
        says=f"the fire and the space behind it want {text_mm(fire)} of depth",
        offer=f"a depth of {text_mm(fire)}",
    )  # fmt: skip
    if at.recess is None:
        return unmet
    deep = at.recess.depth_tenth_mm + job.backboard.thickness_tenth_mm + at.b
    return unmet + unmet_if(
        "depth_screen", deep, at.dd,
        says=f"the screen recess with its backboard and bearers wants {text_mm(deep)} of depth",
        offer=f"a depth of {text_mm(deep)}, a thinner bracket, plugs to the side, or the glass less set back",
    )  # fmt: skip


def _width(at: SettingOut, job: Job, rules: RuleSet) -> Unmets:
    opening = at.opening_right - at.opening_left
    least = 2 * at.d + tenths(rules.frame.shortest_bar_piece_mm)  # two flat noggins beside each other, a rail between ladders
    unmet = unmet_if(
        "width_ladder", least, at.wf,
        says=f"a frame {text_mm(max(at.wf, 0))} wide is too narrow for {text_mm(at.d)} timber",
        offer="a smaller section, or a wider breast",
    )  # fmt: skip
    if at.left_open and at.right_open:
        sent = at.w if job.width_tenth_mm is None else job.width_tenth_mm
        return unmet + unmet_if(
            "width_fixed", abs(sent - at.w), WIDTH_AGREES_TENTH_MM,
            says=f"a three-sided fire sets the width: it is {text_mm(at.w)}, not {text_mm(sent)}",
            offer=f"width {text_mm(at.w)}, or leave breast_width_mm out",
        )  # fmt: skip
    if at.left_open or at.right_open:
        return unmet + unmet_if(
            "width_fire_2", opening, at.wf - at.b,
            says=f"the opening of {text_mm(opening)} reaches the closed ladder",
            offer=f"a width of {text_mm(opening + at.b + at.w - at.wf)}, "
            f"or {text_mm(opening + 2 * at.b + at.w - at.wf)} with a jack stud",
        )  # fmt: skip
    return unmet + _one_sided(at, job, opening)


def _one_sided(at: SettingOut, job: Job, opening: int) -> Unmets:
    unmet = unmet_if(
        "width_fire_1", opening, at.lr,
        says=f"the opening of {text_mm(opening)} is wider than the {text_mm(max(at.lr, 0))} between the ladders",
        offer=f"a width of {text_mm(opening + 2 * at.b + at.w - at.wf)}, "
        f"or {text_mm(opening + 4 * at.b + at.w - at.wf)} with jack studs",
    )  # fmt: skip
    room = max((at.lr - opening) // 2, 0)
    return unmet + unmet_if(
        "width_fire_1", abs(job.shift_tenth_mm), room,
        says=f"the fire is {text_mm(abs(job.shift_tenth_mm))} off the centre and would reach a ladder",
        offer=f"a shift of at most {text_mm(room)}",
    )  # fmt: skip


def _platform(at: SettingOut, job: Job, rules: RuleSet) -> Unmets:
    if not 0 < at.z0 < at.b:
        return ()
    built = max(total for total in pad_heights(job) if total <= at.z0)
    rest = tenths(rules.frame.pad_rest_mm) if built else 0  # packers alone are no pad
    lower, higher = (text_mm(built) if built else "", text_mm(min((h for h in pad_heights(job) if h > at.z0), default=at.b)))
    return unmet_if(
        "platform", at.z0 - built, rest,
        says=f"a pad of the sheets in the catalogue comes to {text_mm(built)}, not to {text_mm(at.z0)}",
        offer="platform " + one_of("0", lower, higher),
    )  # fmt: skip


def _heights(at: SettingOut, job: Job, rules: RuleSet) -> Unmets:
    unmet: Unmets = ()
    if not at.full_height:
        free = job.clear_height_tenth_mm - tenths(rules.frame.part_height_below_ceiling_mm)
        unmet += unmet_if(
            "part_high", at.top, free,
            says=f"a part-height breast {text_mm(at.top)} high leaves no room to fix its lid",
            offer=f"full height, or a height of {text_mm(free)}",
        )  # fmt: skip
    cripple = tenths(rules.frame.least_cripple_mm)
    if at.recess is None:
        low = max(at.u + at.b + cripple, at.d + at.b)
        unmet += unmet_if(
            "low_top", low, at.hu,
            says=f"above the fire {text_mm(low)} are wanted and there are {text_mm(max(at.hu, 0))}",
            offer=one_of(
                _lower_platform(at, job, rules, by=low - at.hu), _less_upstand(at, rules, by=low - at.hu), _higher_top(at, low)
            ),
        )  # fmt: skip
    least = 2 * at.b + cripple
    if at.recess and at.ply_count:
        least = max(least, at.d)  # the plies end below the recess
    return unmet + unmet_if(
        "upstand", least, at.u,
        says=f"an upstand of {text_mm(at.u)} leaves no room for cripples between trimmer and sill",
        offer=f"an upstand of {text_mm(least)}",
    )  # fmt: skip


def _lower_platform(at: SettingOut, job: Job, rules: RuleSet, *, by: int) -> str:
    """The offer of a platform lower by so much, if that is one that can be built."""
    if at.z0 < by:
        return ""
    return f"a platform of at most {text_mm(greatest_platform(at.z0 - by, job, rules))}"


def _less_upstand(at: SettingOut, rules: RuleSet, *, by: int) -> str:
    least = 2 * at.b + tenths(rules.frame.least_cripple_mm)
    return f"an upstand of {text_mm(at.u - by)}" if at.u - by >= least else ""


def _higher_top(at: SettingOut, low: int) -> str:
    if at.full_height:
        return "a lower fire"
    return f"a breast {text_mm(at.top + low - at.hu)} high"


def _recess(at: SettingOut, job: Job, rules: RuleSet) -> Unmets:
    if at.recess is None or job.screen is None:
        return ()
    wide, high = at.recess.framing_width_tenth_mm, at.u + lift_of(job) + at.recess.framing_height_tenth_mm + 2 * at.b
    least_w = at.lr - 2 * job.gaps.side_tenth_mm - 2 * job.lining.thickness_tenth_mm
    least_h = tenths(job.screen.body_height_mm) - (high - at.hu)
    fixed = at.left_open and at.right_open
    unmet = unmet_if(
        "recess_wide", wide, at.lr,
        says=f"the screen with its gaps and linings wants {text_mm(wide)} between the ladders",
        offer=one_of(
            f"a screen at most {text_mm(least_w)} wide" if least_w > 0 else "",
            "a wider fire" if fixed else f"a width of {text_mm(wide + 2 * at.b + at.w - at.wf)}",
        ),
    )  # fmt: skip
    unmet += unmet_if(
        "recess_high", high, at.hu,
        says=f"upstand, recess and rails want {text_mm(high)} above the fire and there are {text_mm(max(at.hu, 0))}",
        offer=one_of(
            _lower_platform(at, job, rules, by=high - at.hu),
            f"a screen at most {text_mm(least_h)} high" if least_h > 0 else "",
            _higher_top(at, high),
        ),
    )  # fmt: skip
    rows = at.recess.row_levels_tenth_mm
    return unmet + unmet_if(
        "rows", max(at.zs - (rows[0] - at.d // 2), rows[-1] - at.d // 2 + at.d - at.zh), 0,
        says="the hole rows of the bracket miss the recess",
        offer="another bracket, or one with its rows closer together",
    )  # fmt: skip


def _outlet(at: SettingOut, job: Job) -> Unmets:
    fire, under = job.appliance, job.lining.thickness_tenth_mm + job.gaps.bottom_tenth_mm + lift_of(job)
    least = least_upstand(fire, over=job.gap_over_tenth_mm, under=under)
    if at.recess is None or least == 0:
        return ()
    asked = tenths(fire.outlet_to_screen_least_mm or 0.0)
    there = tenths(fire.body_height_mm - (fire.outlet_height_mm or 0.0)) + job.gap_over_tenth_mm + at.u + under
    return unmet_if(
        "heat", asked, there,
        says=f"the maker wants {text_mm(asked)} from the outlet to the underside of the screen; there are {text_mm(there)}",
        offer=f"an upstand of {text_mm(least)}, or a fire that blows out at the bottom",
    )  # fmt: skip


def _stock(at: SettingOut, job: Job) -> Unmets:
    longest = job.timber.stock[-1].length_tenth_mm
    ladder = at.z2 - min(at.foot(left=True), at.foot(left=False))
    allowance = job.allowance_mm * 10 if at.full_height else 0
    need = max(at.wf if at.z0 >= at.b else at.lr, ladder + allowance)
    return unmet_if(
        "bar", need, longest,
        says=f"the longest piece is {text_mm(need)} and the longest timber that passes the way in is {text_mm(longest)}",
        offer="a way in for longer timber, or a splice at a stud, quoted by hand",
    )  # fmt: skip


def _by_hand(job: Job) -> Unmets:
    return tuple(
        Unmet(
            code="by_hand", says=says, asked_mm=0.0, available_mm=0.0, short_by_mm=0.0, offer="a person lays it out and prices it"
        )
        for says in job.by_hand
    )  # fmt: skip
