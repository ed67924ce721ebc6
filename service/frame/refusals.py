"""What keeps a sound survey from being built: each inequality with what is asked, what there is, and what would fit.

Codes and offers: `knowledge/framing.md`, section 13; common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.errors import Unmet
from service.units import tenths, text_mm

if TYPE_CHECKING:
    from service.brief import Job
    from service.frame.setting_out import SettingOut
    from service.rules import RuleSet


class Refusals:
    """Collects the unmet inequalities of one setting-out."""

    def __init__(self, job: Job, rules: RuleSet, at: SettingOut) -> None:
        """Start with nothing unmet."""
        self.job, self.rules, self.at = job, rules, at
        self.unmet: list[Unmet] = []

    def all(self) -> tuple[Unmet, ...]:
        """Every inequality that does not hold."""
        self._depth()
        self._fire_width()
        self._platform()
        self._heights()
        self._recess()
        self._outlet()
        self._bracket()
        self._stock()
        for says in self.job.by_hand:
            self.unmet.append(Unmet(code="by_hand", says=says, asked_mm=0.0, available_mm=0.0, short_by_mm=0.0, offer="a person lays it out and prices it"))
        return tuple(self.unmet)

    def _need(self, code: str, asked: int, available: int, says: str, offer: str) -> None:  # noqa: PLR0913, PLR0917 - the parts of a refusal
        """Note the inequality asked <= available if it does not hold."""
        if asked > available:
            self.unmet.append(
                Unmet(code=code, says=says, asked_mm=asked / 10, available_mm=available / 10, short_by_mm=(asked - available) / 10, offer=offer)
            )

    def _depth(self) -> None:
        at, job = self.at, self.job
        least_n = tenths(self.rules.frame.least_noggin_mm)
        if at.n != 0:
            self._need(
                "depth_ladder", 2 * at.d + least_n + at.tf, at.dd,
                f"a breast {text_mm(at.dd)} deep is too shallow for {text_mm(at.d)} timber front and back",
                f"a depth of {text_mm(2 * at.d + least_n + at.tf)} or more, or a thinner section",
            )  # fmt: skip
        fire = tenths(job.appliance.body_depth_mm) + job.rear_clearance_tenth_mm
        self._need(
            "depth_fire", fire, at.dd,
            f"the fire and the space behind it want {text_mm(fire)} of depth",
            f"a depth of {text_mm(fire)}",
        )  # fmt: skip
        if at.recess:
            deep = at.recess.depth_tenth_mm + job.backboard.thickness_tenth_mm + at.b
            self._need(
                "depth_screen", deep, at.dd,
                f"the screen recess with its backboard and bearers wants {text_mm(deep)} of depth",
                f"a depth of {text_mm(deep)}, a thinner bracket, plugs to the side, or the glass less set back",
            )  # fmt: skip

    def _fire_width(self) -> None:
        at, job = self.at, self.job
        opening = at.opening_right - at.opening_left
        if at.left_open and at.right_open:
            if job.width_tenth_mm is not None:
                self._need(
                    "width_fixed", abs(job.width_tenth_mm - at.w), 10,
                    f"a three-sided fire sets the width: it is {text_mm(at.w)}, not {text_mm(job.width_tenth_mm)}",
                    f"width {text_mm(at.w)}, or leave breast_width_mm out",
                )  # fmt: skip
        elif at.left_open or at.right_open:
            self._need(
                "width_fire_2", opening, at.wf - at.b,
                f"the opening of {text_mm(opening)} reaches the closed ladder",
                f"a width of {text_mm(opening + at.b + 2 * at.tf)}, or {text_mm(opening + 2 * at.b + 2 * at.tf)} with a jack stud",
            )  # fmt: skip
        else:
            self._one_sided(opening)

    def _one_sided(self, opening: int) -> None:
        at, job = self.at, self.job
        self._need(
            "width_fire_1", opening, at.lr,
            f"the opening of {text_mm(opening)} is wider than the {text_mm(max(at.lr, 0))} between the ladders",
            f"a width of {text_mm(opening + 2 * at.b + 2 * at.tf)}, or {text_mm(opening + 4 * at.b + 2 * at.tf)} with jack studs",
        )  # fmt: skip
        room = (at.lr - opening) // 2
        if room >= 0:
            self._need(
                "width_fire_1", abs(job.shift_tenth_mm), room,
                f"the fire is {text_mm(abs(job.shift_tenth_mm))} off the centre and would reach a ladder",
                f"a shift of at most {text_mm(room)}",
            )  # fmt: skip

    def _platform(self) -> None:
        at, rules = self.at, self.rules
        rest = tenths(rules.frame.pad_rest_mm)
        if rest < at.z0 < at.b:
            built = max((total for total in pad_heights(self.job) if total <= at.z0), default=0)
            self._need(
                "platform", at.z0 - built, rest,
                f"a pad of the sheets in the catalogue comes to {text_mm(built)}, short of {text_mm(at.z0)}",
                f"platform 0, {text_mm(built)} or {text_mm(at.b)}",
            )  # fmt: skip

    def _heights(self) -> None:
        at, frame = self.at, self.rules.frame
        if not at.full_height:
            free = self.job.clear_height_tenth_mm - tenths(frame.part_height_below_ceiling_mm)
            self._need(
                "part_high", at.top, free,
                f"a part-height breast {text_mm(at.top)} high leaves no room to fix its lid",
                f"full height, or a height of {text_mm(free)}",
            )  # fmt: skip
        if at.recess is None:
            low = max(at.u + at.b + tenths(frame.least_cripple_mm), at.d)
            self._need(
                "low_top", low, at.hu,
                f"above the fire {text_mm(low)} are wanted and there are {text_mm(at.hu)}",
                f"a platform of at most {text_mm(max(at.z0 - (low - at.hu), 0))}, or a smaller upstand",
            )  # fmt: skip
        least = 2 * at.b + tenths(frame.least_cripple_mm)
        if at.recess and at.ply_count:
            least = max(least, at.d)  # the plies end below the recess
        self._need(
            "upstand", least, at.u,
            f"an upstand of {text_mm(at.u)} leaves no room for cripples between trimmer and sill",
            f"an upstand of {text_mm(least)}",
        )  # fmt: skip

    def _recess(self) -> None:
        at, job = self.at, self.job
        if at.recess is None or job.screen is None:
            return
        recess = at.recess
        sides = 2 * job.gaps.side_tenth_mm + 2 * job.lining.thickness_tenth_mm
        self._need(
            "recess_wide", recess.framing_width_tenth_mm, at.lr,
            f"the screen with its gaps and linings wants {text_mm(recess.framing_width_tenth_mm)} between the ladders",
            f"a screen at most {text_mm(max(at.lr - sides, 0))} wide"
            + ("" if at.left_open and at.right_open else f", or a width of {text_mm(recess.framing_width_tenth_mm + 2 * at.b + 2 * at.tf)}"),
        )  # fmt: skip
        high = at.u + recess.framing_height_tenth_mm + 2 * at.b
        self._need(
            "recess_high", high, at.hu,
            f"upstand, recess and rails want {text_mm(high)} above the fire",
            f"a platform of at most {text_mm(max(at.z0 - (high - at.hu), 0))}, or a screen at most "
            f"{text_mm(max(tenths(job.screen.body_height_mm) - (high - at.hu), 0))} high",
        )  # fmt: skip
        low, top = recess.row_levels_tenth_mm[0] - at.d // 2, recess.row_levels_tenth_mm[-1] + at.d // 2
        self._need(
            "rows", max(at.zs - low, top - at.zh), 0,
            "the hole rows of the bracket miss the recess",
            "another bracket, or one with its rows closer together",
        )  # fmt: skip

    def _outlet(self) -> None:
        at, job, fire = self.at, self.job, self.job.appliance
        if at.recess is None or fire.outlet_to_screen_least_mm is None or fire.outlet_height_mm is None or fire.outlet_position == "none":
            return
        least = tenths(fire.outlet_to_screen_least_mm)
        there = tenths(fire.body_height_mm - fire.outlet_height_mm) + job.gap_over_tenth_mm + at.u
        there += job.lining.thickness_tenth_mm + job.gaps.bottom_tenth_mm
        more = -((there - least) // 50) * 50
        self._need(
            "heat", least, there,
            f"the maker wants {text_mm(least)} from the outlet to the underside of the screen; there are {text_mm(there)}",
            f"an upstand of {text_mm(at.u + more)}, or a fire that blows out at the bottom",
        )  # fmt: skip

    def _bracket(self) -> None:
        screen, bracket = self.job.screen, self.job.bracket
        if screen and bracket and screen.mass_kg > bracket.rating_kg:
            self.unmet.append(
                Unmet(
                    code="bracket_rating",
                    says=f"bracket {bracket.model} is rated for {bracket.rating_kg:g} kg and the screen weighs {screen.mass_kg:g} kg",
                    asked_mm=0.0, available_mm=0.0, short_by_mm=0.0,
                    offer=f"a bracket rated for {screen.mass_kg:g} kg or more",
                )
            )  # fmt: skip

    def _stock(self) -> None:
        at, job = self.at, self.job
        longest = job.timber.stock[-1].length_tenth_mm
        ladder = at.z2 - min(at.foot(left=True), at.foot(left=False))
        need = max(at.wf if at.z0 >= at.b else at.lr, ladder + (job.allowance_mm * 10 if at.full_height else 0))
        self._need(
            "bar", need, longest,
            f"the longest piece is {text_mm(need)} and the longest timber that passes the way in is {text_mm(longest)}",
            "a way in for longer timber, or a splice at a stud, quoted by hand",
        )  # fmt: skip


def pad_heights(job: Job) -> dict[int, tuple[int, ...]]:
    """Heights of a solid pad that sheets of the catalogue add up to, each with its sheets, thickest first and fewest."""
    best: dict[int, tuple[int, ...]] = {0: ()}
    for _layer in range(4):
        for total, layers in list(best.items()):
            for board in job.pads:
                taller = total + board.thickness_tenth_mm
                stack = tuple(sorted((*layers, board.thickness_tenth_mm), reverse=True))
                if taller < job.timber.thickness_tenth_mm and (taller not in best or len(stack) < len(best[taller])):
                    best[taller] = stack
    return best
