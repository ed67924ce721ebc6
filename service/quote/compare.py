"""What differs between two quotes, and why: what was asked, prices, rules, engine, day.

The quotes are read as documents, so that one of an older contract can be compared too.
"""

from __future__ import annotations

from decimal import Decimal
from enum import StrEnum
from itertools import zip_longest
from typing import TYPE_CHECKING, Any, Final

import msgspec

if TYPE_CHECKING:
    from collections.abc import Iterator

type Json = bool | int | float | str | list[Any] | dict[str, Any] | None

MOST_COUNT: Final = 500  # differences that are listed; there may be more
ABSENT: Final = "absent"
ORIGINS: Final = (("catalogue_revision", "prices"), ("rule_set", "rules"), ("engine_version", "engine"), ("date", "day"))


class Cause(StrEnum):
    """Why two quotes differ."""

    REQUEST = "request"  # something else was asked
    PRICES = "prices"  # another revision of the catalogue: stock, models, prices, rates
    RULES = "rules"
    ENGINE = "engine"
    DAY = "day"


class Difference(msgspec.Struct, frozen=True, kw_only=True):
    """One place where two documents differ."""

    pointer: str  # RFC 6901, into both
    first: str  # the value as JSON, shortened; `absent` where there is none
    second: str


class LineDifference(msgspec.Struct, frozen=True, kw_only=True):
    """One line of the sale, or one thing of the bill, that differs; amounts as decimal text, empty where there is none."""

    code: str
    name: str
    first: str
    second: str
    change: str


class Comparison(msgspec.Struct, frozen=True, kw_only=True):
    """What differs between two quotes."""

    same: bool
    causes: tuple[Cause, ...]
    request: tuple[Difference, ...]  # what was asked
    origin: tuple[Difference, ...]
    sale: tuple[LineDifference, ...]  # lines that the customer sees
    bill: tuple[LineDifference, ...]  # packs bought, by code
    members: tuple[Difference, ...]  # timbers by mark: cut lengths
    total_change: str  # second less first, with tax; empty where currencies differ
    differences_count: int  # of all places, listed or not


def compare_quotes(first: bytes, second: bytes) -> Comparison:
    """Compare two quotes as they were sent out.

    Raises:
        ValueError: one of them is no quote of a design.
    """
    one, other = _quote(first), _quote(second)
    request = tuple(_differences(one.get("request"), other.get("request"), "/request"))
    origin = tuple(_differences(one.get("origin"), other.get("origin"), "/origin"))
    everything = sum(1 for _each in _differences(_unsigned(one), _unsigned(other), ""))
    return Comparison(
        same=everything == 0,
        causes=_causes(one, other, asked_otherwise=_asked_otherwise(request)),
        request=request[:MOST_COUNT],
        origin=origin,
        sale=tuple(_lines(one, other, ("price", "lines"), _amount_of)),
        bill=tuple(_lines(one, other, ("bill", "lines"), _packs_of)),
        members=tuple(_members(one, other))[:MOST_COUNT],
        total_change=_total_change(one, other),
        differences_count=everything,
    )


def _quote(document: bytes) -> dict[str, Any]:
    try:
        decoded = msgspec.json.decode(document)
    except msgspec.DecodeError as error:
        message = f"this is no JSON: {error}"
        raise ValueError(message) from error
    if not isinstance(decoded, dict) or decoded.get("outcome") != "designed" or not isinstance(decoded.get("price"), dict):
        message = "this is no quote of a design"
        raise ValueError(message)
    return decoded


def _unsigned(quote: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in quote.items() if name != "signature"}


def _differences(first: Json, second: Json, pointer: str) -> Iterator[Difference]:
    """Every leaf that differs, in the order of the first document; lists are compared place by place."""
    if isinstance(first, dict) and isinstance(second, dict):
        for name in dict.fromkeys([*first, *second]):
            step = f"{pointer}/{name.replace('~', '~0').replace('/', '~1')}"
            yield from _members_of(first, second, name, step)
    elif isinstance(first, list) and isinstance(second, list):
        for place, (one, other) in enumerate(zip_longest(first, second, fillvalue=ABSENT)):
            yield from _differences(one, other, f"{pointer}/{place}")
    elif first != second or isinstance(first, bool) is not isinstance(second, bool):
        yield Difference(pointer=pointer, first=_short(first), second=_short(second))


def _members_of(first: dict[str, Any], second: dict[str, Any], name: str, pointer: str) -> Iterator[Difference]:
    """A member that is null is as good as none: clients leave it out."""
    yield from _differences(first.get(name), second.get(name), pointer)


def _short(value: Json) -> str:
    text = msgspec.json.encode(value).decode() if value != ABSENT else ABSENT
    return text if len(text) <= 120 else f"{text[:117]}..."  # noqa: PLR2004 - fits a line


def _asked_otherwise(request: tuple[Difference, ...]) -> bool:
    """Whether more than day and revision, which are causes of their own, differ."""
    own = ("/request/terms/date", "/request/terms/catalogue_revision")
    return any(one.pointer not in own for one in request)


def _causes(one: dict[str, Any], other: dict[str, Any], *, asked_otherwise: bool) -> tuple[Cause, ...]:
    first, second = one.get("origin") or {}, other.get("origin") or {}
    moved = [Cause(cause) for name, cause in ORIGINS if first.get(name) != second.get(name)]
    return (*((Cause.REQUEST,) if asked_otherwise else ()), *moved)


def _lines(one: dict[str, Any], other: dict[str, Any], path: tuple[str, str], value: Any) -> Iterator[LineDifference]:  # noqa: ANN401 - a function of a line
    first, second = _by_code(one, path), _by_code(other, path)
    for key in dict.fromkeys([*first, *second]):
        before, after = value(first.get(key)), value(second.get(key))
        if before != after:
            line = second.get(key) or first.get(key) or {}
            name = str(line.get("name") or line.get("description") or "")
            yield LineDifference(code=key, name=name, first=before, second=after, change=_change(before, after))


def _by_code(quote: dict[str, Any], path: tuple[str, str]) -> dict[str, dict[str, Any]]:
    """Lines by code, else by name; the second of the same name is told apart."""
    found: dict[str, dict[str, Any]] = {}
    for line in (quote.get(path[0]) or {}).get(path[1]) or []:
        key = str(line.get("code") or line.get("name") or line.get("description") or "")
        found[key if key not in found else f"{key} #{len(found)}"] = line
    return found


def _amount_of(line: dict[str, Any] | None) -> str:
    return str(line["net"]["amount"]) if line else ""


def _packs_of(line: dict[str, Any] | None) -> str:
    return str(line["packs_count"]) if line else ""


def _change(before: str, after: str) -> str:
    return str(Decimal(after or "0") - Decimal(before or "0"))


def _members(one: dict[str, Any], other: dict[str, Any]) -> Iterator[Difference]:
    first, second = _cut_lengths(one), _cut_lengths(other)
    for mark in dict.fromkeys([*first, *second]):
        if first.get(mark) != second.get(mark):
            before, after = (lengths.get(mark, ABSENT) for lengths in (first, second))
            yield Difference(pointer=f"/frame/members/{mark}", first=before, second=after)


def _cut_lengths(quote: dict[str, Any]) -> dict[str, str]:
    members = (quote.get("frame") or {}).get("members") or []
    return {str(member["mark"]): str(member["cut_length_mm"]) for member in members}


def _total_change(one: dict[str, Any], other: dict[str, Any]) -> str:
    first, second = one["price"]["total"], other["price"]["total"]
    if first["currency"] != second["currency"]:
        return ""
    return str(Decimal(second["amount"]) - Decimal(first["amount"]))
