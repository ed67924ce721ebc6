"""Lines of plain text: titles, wrapping, numbers, runs of marks."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from service.units import Money

WIDTH: Final = 100
LAST_NUMBER: Final = re.compile(r"(?P<stem>.*?)(?P<number>\d+)$")


def title(text: str) -> Iterator[str]:
    """A heading over an empty line."""
    yield ""
    yield f"{text} {'-' * max(WIDTH - len(text) - 1, 0)}"


def wrapped(text: str, indent: int = 0, hanging: int = 2) -> Iterator[str]:
    """A text on lines of the width; the lines after the first hang in."""
    line = " " * indent
    fresh = True
    for word in text.split():
        if not fresh and len(line) + 1 + len(word) > WIDTH:
            yield line
            line, fresh = " " * (indent + hanging), True
        line += word if fresh else f" {word}"
        fresh = False
    if not fresh:
        yield line


def row(label: str, text: str, label_width: int = 11) -> Iterator[str]:
    """A label, and its text wrapped beside it."""
    first, *rest = list(wrapped(text, label_width, 0)) or [""]
    yield f"{label:{label_width}}{first[label_width:]}"
    yield from rest


def number(value: float | None) -> str:
    """A number as a person writes it."""
    return "-" if value is None else f"{value:g}"


def value_of(value: str | float | bool | None) -> str:  # noqa: FBT001 - any JSON scalar
    """A JSON scalar as a person writes it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return number(value) if isinstance(value, int | float) or value is None else value


def amount(money: Money | None) -> str:
    """An amount, or that there is none."""
    return "no price" if money is None else money.amount


def words(code: str) -> str:
    """A lower_snake code as words."""
    return code.replace("_", " ")


def runs_of(marks: Iterable[str]) -> str:
    """Marks with their neighbours drawn together: `B-U1..4 U-N2`."""
    parts: list[tuple[str, int, int]] = []
    for mark in marks:
        found = LAST_NUMBER.match(mark)
        if found is None:
            parts.append((mark, -1, -1))
            continue
        stem, at = found["stem"], int(found["number"])
        if parts and parts[-1][0] == stem and parts[-1][2] + 1 == at:
            parts[-1] = (stem, parts[-1][1], at)
        else:
            parts.append((stem, at, at))
    return " ".join(_run(*part) for part in parts)


def _run(stem: str, first: int, last: int) -> str:
    if first < 0:
        return stem
    return f"{stem}{first}" if first == last else f"{stem}{first}..{last}"
