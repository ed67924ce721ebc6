"""What a measure on site changed, as text."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from service.quote.text_layout import title, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.quote.wire_recut import RecutAnswer, RecutMember


def recut_text(recut: RecutAnswer | None) -> Iterator[str]:
    """Measures, then what is cut otherwise; nothing where nothing was measured."""
    if recut is None:
        return
    yield from title("MEASURED ON SITE")
    for one in recut.measures:
        place = "" if one.x_mm is None else f" at {one.x_mm:g}"
        yield from wrapped(f"{one.measure}{place}: {one.measured_mm:g}, surveyed {one.surveyed_mm:g} ({one.differs_mm:+g})")
    if not recut.compared:
        yield from wrapped("the survey alone has no design to compare with")
        return
    stands = "the base is as it was" if recut.base_unchanged else "the base is as measured"
    yield from wrapped(f"{stands}; {recut.members_as_before_count} timbers as before; {recut.pieces_to_cut_count} still to cut")
    for says, group in groupby(recut.members, key=_says):
        yield from wrapped(f"{says}: {', '.join(one.mark for one in group)}")
    for panel in recut.panels:
        new = f"{panel.new_cut_width_mm} x {panel.new_cut_height_mm}" if panel.new_cut_width_mm else "dropped"
        old = f", was {panel.old_cut_width_mm} x {panel.old_cut_height_mm}" if panel.old_cut_width_mm else ", added"
        yield from wrapped(f"{panel.mark}: {new}{old}")


def _says(one: RecutMember) -> str:
    role = one.role.replace("_", " ")
    if one.longer_mm is not None:
        return f"{role} {one.new_cut_length_mm}, was {one.old_cut_length_mm}"
    return f"{role} {one.new_cut_length_mm or one.old_cut_length_mm} {one.change}"
