"""take_off: frame and cutting plan become a bill."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.bill.bill import Bill
from service.bill.counting import count_things
from service.bill.finishes import finish_needs
from service.bill.fixings import fixing_needs
from service.bill.lengths import bar_lines, bead_lines, sheet_lines, skirting_lines
from service.bill.lines import line_of, merge_needs
from service.bill.masses import bars_kg, boards_kg, gypsum_waste_kg, waste_kg
from service.bill.measuring import measure
from service.bill.needs import Facts
from service.bill.sundries import electrical_needs, site_needs
from service.checks import count_lifts

if TYPE_CHECKING:
    from service.bill.market import Market
    from service.brief import Job
    from service.cutting import FramePlan
    from service.frame import Frame
    from service.hardware import Hardware


def take_off(frame: Frame, plan: FramePlan, job: Job, market: Market, *, hardware: Hardware) -> Bill:
    """Everything to buy for one breast: timber, boards, what is counted, what is cut to length, what is used up on site.

    Args:
        frame: the settled frame.
        plan: how its timber and boards are cut.
        job: what is wished and measured.
        market: what is sold, and how much of the job.
        hardware: the fixings that the checks proved.
    """
    catalogue, rules = market.catalogue, market.rules
    facts = Facts(
        job=job,
        market=market,
        counts=count_things(frame, job, market),
        measures=measure(frame, job, rules),
        lifts=count_lifts(frame, job, rules),
        hardware=hardware,
    )
    boards = boards_kg(plan, job, catalogue)
    bought_kg = bars_kg(plan, job, rules) + sum(boards.values())
    rubbish_kg = waste_kg(bought_kg, frame, job, rules)
    lasting = merge_needs((*fixing_needs(facts), *finish_needs(facts), *electrical_needs(facts)))
    used_up = merge_needs(site_needs(facts, rubbish_kg, gypsum_waste_kg(boards, rules)))
    lines = (
        *bar_lines(plan, job, catalogue),
        *sheet_lines(plan, catalogue),
        *(line_of(need) for need in lasting),
        *bead_lines(facts),
        *skirting_lines(facts),
        *(line_of(need) for need in used_up),
    )
    return Bill(
        lines=lines,
        counts=facts.counts,
        measures=facts.measures,
        mass_bought_kg=round(bought_kg, 1),
        waste_kg=round(rubbish_kg, 1),
    )
