"""A quote as plain text for a person: what a joiner reads before going to the yard. A hundred columns, no colour."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.quote.text_checks import checks_text, strengthening_text
from service.quote.text_cuts import cuts_text
from service.quote.text_frame import frame_text
from service.quote.text_layout import row, title, words, wrapped
from service.quote.text_money import bill_text, hours_text, price_text
from service.quote.text_notes import alternatives_text, assumed_text, cautions_text, origin_text, unmet_text
from service.quote.text_recut import recut_text
from service.quote.text_work import programme_text, sequence_text
from service.quote.wire import QuoteDesigned, Unbuildable
from service.survey.appliance import CatalogueAppliance, CustomAppliance
from service.survey.wishes import CatalogueScreen, CustomScreen

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.quote.wire import QuoteAnswer
    from service.survey.appliance import ApplianceChoice
    from service.survey.wishes import ScreenChoice


def render_quote_text(answer: QuoteAnswer) -> str:
    """The whole answer as text, lines ended by newlines."""
    parts = _unbuildable(answer) if isinstance(answer, Unbuildable) else _designed(answer)
    return "\n".join(line.rstrip() for line in parts) + "\n"


def _designed(quote: QuoteDesigned) -> Iterator[str]:
    yield from _head(quote)
    yield from frame_text(quote.frame, {board.board_code: board.description for board in quote.cut_plan.boards})
    yield from recut_text(quote.recut)
    yield from cuts_text(quote.cut_plan)
    yield from bill_text(quote.bill)
    yield from hours_text(quote.labour)
    yield from programme_text(quote.labour.programme)
    yield from sequence_text(quote.build_sequence)
    yield from price_text(quote.price)
    yield from title("NOT INCLUDED")
    yield from wrapped("; ".join(quote.exclusions))
    yield from checks_text(quote.checks, quote.checks_not_made)
    yield from strengthening_text(quote.strengthening)
    yield from cautions_text(quote.cautions)
    yield from assumed_text(quote.assumptions, quote.doubts)
    yield from origin_text(quote.origin)


def _head(quote: QuoteDesigned) -> Iterator[str]:
    brief, total = quote.request.survey.brief, quote.price.total
    screen = f", screen {screen_name(brief.screen)}" if brief.screen else ", no screen"
    complete = "" if quote.price.complete else ", NOT COMPLETE"
    yield f"FALSE CHIMNEY BREAST{f'  {quote.reference}' if quote.reference else ''}"
    yield from row("for", f"fire {fire_name(brief.appliance)}{screen}")
    taxed = "with tax" if float(quote.price.tax.amount) else "no tax"
    yield from row("total", f"{total.amount} {total.currency}, {taxed}{complete}")
    yield from row("standing", ": ".join(filter(None, (words(quote.standing).upper(), "; ".join(quote.standing_reasons)))))


def fire_name(choice: ApplianceChoice) -> str:
    """What a fire is called in the request."""
    if isinstance(choice, CatalogueAppliance):
        return choice.model
    return choice.name if isinstance(choice, CustomAppliance) else f"of {choice.length_mm:g} mm, not chosen yet"


def screen_name(choice: ScreenChoice) -> str:
    """What a screen is called in the request."""
    if isinstance(choice, CatalogueScreen):
        return choice.model
    return choice.name if isinstance(choice, CustomScreen) else f"of {choice.diagonal_in:g} in, not chosen yet"


def _unbuildable(answer: Unbuildable) -> Iterator[str]:
    yield "CANNOT BE BUILT AS WISHED"
    yield from unmet_text(answer.unmet)
    yield from alternatives_text(answer)
    yield from assumed_text(answer.assumptions, answer.doubts)
    yield from origin_text(answer.origin)
