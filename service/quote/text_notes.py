"""What is not included, to be known, assumed, and what an answer was made from, as text."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

import msgspec

from service.checks import CautionState, Clears, Stops
from service.quote.text_layout import number, row, title, value_of, words, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.brief import Assumption, Doubt
    from service.checks import Caution
    from service.errors import Unmet
    from service.quote.wire import Origin, Unbuildable

HEADINGS = {
    Stops.DESIGN: "stops the design until it is cleared",
    Stops.FIRM_QUOTE: "no firm price until it is cleared",
    Stops.THIS_WORK: "that work waits, or is done by the trade named",
    Stops.EARLY_START: "no early start",
    Stops.NOTHING: "to know",
}
CLEARING = {
    Clears.CODE: "building control",
    Clears.MAKER: "the maker",
    Clears.ELECTRICIAN: "a qualified electrician",
    Clears.GAS: "a registered gas engineer",
    Clears.ENGINEER: "a structural engineer",
    Clears.SURVEYOR: "the surveyor",
    Clears.OWNER: "the owner",
}


def cautions_text(cautions: tuple[Caution, ...]) -> Iterator[str]:
    """Cautions by what they stop."""
    yield from title("CAUTIONS (c for the customer, f the fitter, s the shop)")
    for stops, group in groupby(cautions, key=lambda caution: caution.stops):
        yield f"{HEADINGS[stops]}:"
        for caution in group:
            yield from _caution(caution)


def _caution(caution: Caution) -> Iterator[str]:
    says = caution.says
    if caution.state is CautionState.CLEARED:
        says = f"CLEARED by {caution.cleared_by}. {says}"
    elif caution.stops not in {Stops.NOTHING, Stops.EARLY_START}:
        says = f"{says} To be cleared by {' or '.join(CLEARING[who] for who in caution.who_clears)}."
    unsure = "?" if caution.state is CautionState.NOT_VERIFIED else " "
    audience = "".join(reader.value[0] for reader in caution.audience)
    yield from row(f"{caution.code}{unsure} {audience}", says, 9)


def assumed_text(assumptions: tuple[Assumption, ...], doubts: tuple[Doubt, ...]) -> Iterator[str]:
    """What was assumed: what a firm price needs first, then the rest, then the house's choices; what to confirm."""
    parts = (
        ("a firm price needs these told", [note for note in assumptions if note.needed_for_firm]),
        ("taken, not needed for a firm price", [note for note in assumptions if not (note.needed_for_firm or note.house_choice)]),
        ("chosen by the house", [note for note in assumptions if note.house_choice]),
    )
    if assumptions:
        yield from title("ASSUMED")
    for heading, notes in parts:
        if notes:
            yield f"{heading}:"
        for note in notes:
            yield from wrapped(f"{note.pointer} = {value_of(note.value)}: {note.effect}", 2)
    if doubts:
        yield from title("PLEASE CONFIRM")
    for doubt in doubts:
        yield from wrapped(f"{doubt.pointer} = {value_of(doubt.value)}: {doubt.says}", 2)


def origin_text(origin: Origin) -> Iterator[str]:
    """What the answer can be made again from."""
    yield from title("MADE FROM")
    yield from row("catalogue", origin.catalogue_revision)
    yield from row("rules", f"{origin.rule_set}; day {origin.date}")
    yield from row("engine", origin.engine_version)
    yield from row("request", origin.request_digest)


def alternatives_text(answer: Unbuildable) -> Iterator[str]:
    """Designs that work, each with its change and its price; else why there is none."""
    yield from title("WHAT WOULD WORK")
    for one in answer.alternatives:
        complete = "" if one.complete else ", NOT COMPLETE"
        yield from wrapped(f"{one.says}: {one.total.amount} {one.total.currency} with tax{complete}, {one.standing}")
        sizes = (number(value) for value in (one.finished_width_mm, one.finished_top_mm, one.finished_depth_mm))
        yield f"    {' x '.join(sizes)} mm wide, high, deep"
        for step in one.patch:
            yield f"    set {step.path} to {msgspec.json.encode(step.value).decode()}"
    if answer.no_alternative:
        yield from wrapped(answer.no_alternative)


def unmet_text(unmet: tuple[Unmet, ...]) -> Iterator[str]:
    """Why a breast cannot be built as wished, and what would do."""
    for one in unmet:
        yield from wrapped(f"{words(one.code)}: {one.says}")
        if one.short_by_mm:
            asked, there, short = (number(value) for value in (one.asked_mm, one.available_mm, one.short_by_mm))
            yield f"    asked {asked}, available {there}, short by {short} mm"
        yield from wrapped(f"would do: {one.offer}", 4)
