"""A quote as plain text for a person: what a joiner reads before going to the yard. Ninety-six columns, no colour."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from service.quote.wire import QuoteDesigned, Unbuildable

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.quote.wire import BarAnswer, FrameBody, MemberAnswer, ProofAnswer, QuoteAnswer, SheetAnswer
    from service.units import Money

WIDTH = 96


def render_quote_text(answer: QuoteAnswer) -> str:
    """The whole answer as text, lines ended by newlines."""
    parts = _unbuildable(answer) if isinstance(answer, Unbuildable) else _designed(answer)
    return "\n".join(line.rstrip() for line in parts) + "\n"


def _designed(quote: QuoteDesigned) -> Iterator[str]:
    yield f"FALSE CHIMNEY BREAST{f'   reference {quote.reference}' if quote.reference else ''}   standing: {quote.standing.upper()}"
    yield from _wrapped("because: " + "; ".join(quote.standing_reasons))
    yield from _sizes(quote.frame)
    yield from _members(quote.frame)
    yield from _boards(quote.frame)
    yield from _cuts(quote)
    yield from _bill(quote)
    yield from _hours(quote)
    yield from _price(quote)
    yield from _cautions(quote)
    yield from _assumed(quote)
    yield from _origin(quote)


def _title(text: str) -> Iterator[str]:
    yield ""
    yield f"{text} {'-' * max(WIDTH - len(text) - 1, 0)}"


def _wrapped(text: str, indent: str = "") -> Iterator[str]:
    line = indent
    for word in text.split():
        if len(line) + len(word) + 1 > WIDTH and line.strip():
            yield line
            line = indent + "  "
        line += ("" if line.endswith(" ") or not line else " ") + word
    if line.strip():
        yield line


def _n(value: float | None) -> str:
    return "-" if value is None else f"{value:g}"


def _m(money: Money | None) -> str:
    return "no price" if money is None else money.amount


def _sizes(frame: FrameBody) -> Iterator[str]:
    yield from _title("SIZES (mm)")
    at, levels = frame.sizes, frame.levels
    yield f"finished   {_n(at.finished_width_mm)} wide x {_n(at.finished_depth_mm)} deep x {_n(levels.finished_top_mm)} high"
    yield f"frame      {_n(at.frame_width_mm)} x {_n(at.frame_depth_mm)}; rails {_n(at.rail_length_mm)}; cross noggins {_n(at.cross_noggin_length_mm)}"
    yield f"timber     {_n(frame.timber.thickness_mm)} x {_n(frame.timber.width_mm)} {frame.timber.strength_class}"
    yield f"levels     platform {_n(levels.platform_mm)}; top of fire opening {_n(levels.appliance_top_mm)}; top of frame {_n(levels.upper_top_mm)}"
    if at.recess_clear and at.recess_framing:
        yield (
            f"recess     clear {_n(at.recess_clear.width_mm)} x {_n(at.recess_clear.height_mm)} x {_n(at.recess_clear.depth_mm)} deep; sill {_n(levels.recess_sill_mm)}, "
            f"head {_n(levels.recess_head_mm)}, screen centre {_n(levels.screen_centre_mm)}"
        )
    yield f"mass       base {_n(frame.base_mass_kg)} kg, upper frame {_n(frame.upper_mass_kg)} kg (timber)"
    yield from _title("SUMS THAT MUST CLOSE")
    for closure in frame.closure:
        yield f"{closure.name.replace('_', ' '):16} {closure.text}"


def _members(frame: FrameBody) -> Iterator[str]:
    yield from _title("MEMBERS")
    yield f"{'mark':26} {'what':20} {'unit':6} {'pieces':>6} {'length':>8} {'cut':>6}  when"
    pieces = [member for member in frame.members if member.from_bar]
    packs = [member for member in frame.members if not member.from_bar]
    yield from _member_rows(pieces)
    yield f"{len(pieces)} pieces, {_n(sum(member.length_mm for member in pieces))} together"
    if packs:
        yield "packs and ripped pieces, made on site:"
        yield from _member_rows(packs)
    for note in frame.notes:
        yield from _wrapped(f"note: {note}")


def _member_rows(members: list[MemberAnswer]) -> Iterator[str]:
    def key(member: MemberAnswer) -> tuple[str, str, float, int, str]:
        return member.unit.value, member.role.value, member.length_mm, member.cut_length_mm, member.cut_when.value

    for (unit, role, length, cut, when), same in groupby(members, key=key):
        marks = [member.mark for member in same]
        shown = marks[0] if len(marks) == 1 else f"{marks[0]} .. {marks[-1]}"
        late = "after measuring" if when == "after_measure" else ""
        yield f"{shown:26} {role.replace('_', ' '):20} {unit:6} {len(marks):6d} {_n(length):>8} {cut:6d}  {late}"


def _boards(frame: FrameBody) -> Iterator[str]:
    yield from _title("BOARDS")
    for panel in frame.panels:
        holes = "".join(f"; cut-out {_n(hole.width_mm)} x {_n(hole.height_mm)}" for hole in panel.cut_outs)
        taper = f"; tapered by {_n(panel.taper_mm)}" if panel.taper_mm else ""
        late = "; after measuring" if panel.cut_when.value == "after_measure" else ""
        size = f"{panel.cut_width_mm} x {panel.cut_height_mm}"
        yield f"{panel.mark:8} {panel.role.value.replace('_', ' '):22} {size:14} {panel.board_code}{holes}{taper}{late}"


def _cuts(quote: QuoteDesigned) -> Iterator[str]:
    bars = quote.cut_plan.bars
    yield from _title("BARS TO BUY AND THEIR CUTS")
    yield ", ".join(f"{one.taken_count} x {one.code}" for one in bars.stock) + f" = {bars.cost.amount} {bars.cost.currency}"
    yield from _wrapped(_proof(bars.proof, "bars"))
    allowance = f"; {bars.allowance_mm} mm left on what is cut after measuring (*)" if bars.allowance_mm else ""
    yield f"saw cut {_n(bars.kerf_mm)}{allowance}"
    for bar in bars.bars:
        yield from _wrapped(_bar(bar))
    yield from _title("SHEETS TO BUY AND THEIR CUTS")
    for board in quote.cut_plan.boards:
        yield (
            f"{board.description}: "
            + ", ".join(f"{one.taken_count} x {one.code}" for one in board.stock)
            + f" = {board.cost.amount} {board.cost.currency}"
        )
        yield from _wrapped(_proof(board.proof, "sheets"))
        for sheet in board.sheets:
            yield from _sheet(sheet)


def _bar(bar: BarAnswer) -> str:
    cuts = []
    for cut in bar.cuts:
        star = "*" if cut.after_measure else ""
        cuts.append(f"{_n(cut.length_mm)}{star} ({'/'.join(cut.marks)})")
    kept = " keep" if bar.keep else ""
    return f"{bar.name}: {bar.bars_count} x {_n(bar.length_mm)}: {' + '.join(cuts)}; rest {_n(bar.rest_mm)}{kept}"


def _sheet(sheet: SheetAnswer) -> Iterator[str]:
    yield f"{sheet.name}: {sheet.sheets_count} x {_n(sheet.width_mm)} x {_n(sheet.height_mm)}"
    for piece in sheet.pieces:
        turned = " turned" if piece.rotated else ""
        yield f"    {'/'.join(piece.marks):8} {_n(piece.width_mm)} x {_n(piece.height_mm)} at {_n(piece.x_mm)}, {_n(piece.y_mm)}{turned}"


def _proof(proof: ProofAnswer, things: str) -> str:
    gap = f"{proof.gap_ratio:.2%}"
    if proof.aim == "length":
        first = f"least length {'proven' if proof.first_proven else f'not proven, bound {_n(proof.length_bound_mm)}, gap {gap}'}"
    else:
        first = f"least cost {'proven' if proof.first_proven else f'not proven, bound {proof.cost_bound.amount}, gap {gap}'}"
    count = "proven fewest" if proof.bought_proven else f"fewest not proven, bound {proof.bought_bound_count}"
    return f"{first}; {proof.bought_count} {things}, {count}"


def _bill(quote: QuoteDesigned) -> Iterator[str]:
    yield from _title("WHAT TO BUY")
    for line in quote.bill.lines:
        need = "" if line.need is None else f"{_n(round(line.need, 2))} {line.need_unit}"
        yield f"{line.code or '?':9} {line.description[:44]:44} {need:>16} {line.packs_count:4d} {line.unit:7} {_m(line.charged):>9}"
    yield f"{'':9} {'materials':44} {'':16} {'':4} {'':7} {_m(quote.bill.materials):>9}"
    for thing in quote.bill.unpriced:
        yield f"no price for: {thing}"


def _hours(quote: QuoteDesigned) -> Iterator[str]:
    yield from _title("HOURS")
    for task in quote.labour.tasks:
        terms = ", ".join(f"{_n(term.quantity)} {term.input.replace('_', ' ')}" for term in task.terms)
        crew = f"{task.trade} x {task.crew_count}" if task.crew_count > 1 else task.trade
        yield f"{task.task:5} {task.name.replace('_', ' '):30} {task.person_hours:6.2f}  {crew:14} {terms[:38]}"
    labour = quote.labour
    yield f"{'':5} {'without the electrician':30} {labour.person_hours:6.2f}  likely {_n(labour.low_hours)} to {_n(labour.high_hours)}; {labour.visit_days} visit days"


def _price(quote: QuoteDesigned) -> Iterator[str]:
    price = quote.price
    yield from _title(f"PRICE ({price.total.currency}): the shop's reckoning")
    for step in price.build_up:
        yield f"{('= ' if step.sum else '  ') + step.name:24} {step.amount.amount:>10}  {step.working[:58]}"
    yield from _title("PRICE: what the customer sees")
    for line in price.lines:
        yield f"{line.name[:40]:40} {line.net.amount:>10}"
    yield f"{'net':40} {price.net.amount:>10}"
    yield f"{'tax, ' + price.tax_note:40} {price.tax.amount:>10}"
    yield f"{'TOTAL':40} {price.total.amount:>10} {price.total.currency}{'' if price.complete else '  NOT COMPLETE: see what has no price'}"
    yield (
        "payments: "
        + ", ".join(f"{stage.name} {stage.amount.amount}" for stage in price.stages)
        + f"; valid until {price.valid_until}"
    )
    yield from _wrapped("not included: " + "; ".join(quote.exclusions))


def _cautions(quote: QuoteDesigned) -> Iterator[str]:
    yield from _title("NOT CHECKED")
    for family in quote.checks_not_made:
        yield from _wrapped(f"{family.family}: {family.says}")
    yield from _title("CAUTIONS")
    for caution in quote.cautions:
        state = {"fires": "", "not_verified": " (not verified)", "cleared": f" (cleared by {caution.cleared_by})"}[
            caution.state.value
        ]
        yield from _wrapped(
            f"{caution.code} stops {caution.stops.value.replace('_', ' ')}{state}: {caution.says} [{', '.join(caution.who_clears)}]"
        )


def _assumed(quote: QuoteDesigned) -> Iterator[str]:
    yield from _title("ASSUMED")
    if not quote.assumptions:
        yield "nothing"
    for note in quote.assumptions:
        kind = " (house choice)" if note.house_choice else ""
        yield from _wrapped(f"{note.pointer} = {note.value}{kind}: {note.effect}")
    for doubt in quote.doubts:
        yield from _wrapped(f"please confirm {doubt.pointer} = {doubt.value}: {doubt.says}")


def _origin(quote: QuoteDesigned) -> Iterator[str]:
    yield from _title("MADE FROM")
    at = quote.origin
    yield f"catalogue {at.catalogue_revision}; rules {at.rule_set}; date {at.date}"
    yield f"engine {at.engine_version}"
    yield f"request {at.request_digest}"


def _unbuildable(answer: Unbuildable) -> Iterator[str]:
    yield "CANNOT BE BUILT AS WISHED"
    for unmet in answer.unmet:
        yield from _wrapped(
            f"{unmet.code}: {unmet.says}; asked {_n(unmet.asked_mm)}, available {_n(unmet.available_mm)}, short by {_n(unmet.short_by_mm)} mm"
        )
        yield from _wrapped(f"would do: {unmet.offer}", "    ")
