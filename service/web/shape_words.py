"""How a fault of shape is said: what was sent, what is wanted, and the likeliest remedy."""

from __future__ import annotations

import json
import re
from difflib import get_close_matches
from typing import TYPE_CHECKING, Any, Final

from msgspec import inspect

from service.errors import likely_slip
from service.units import DAY_PATTERN, PRINTABLE_PATTERN

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

LONGEST_SHOWN_COUNT: Final = 60  # characters of a value that are repeated
MOST_CHOICES_COUNT: Final = 30
GREATEST_SLIP_MM: Final = 1e9
ONLY_PYTHON: Final = r"(?!\n)"  # keeps `$` from matching before a last newline; means nothing elsewhere
# Patterns that a person would not read: what they ask, in words.
PATTERN_WORDS: Final = {DAY_PATTERN: " that is a day, such as 2026-12-01", PRINTABLE_PATTERN: " without control characters"}

type Number = inspect.IntType | inspect.FloatType
type Sized = inspect.VarTupleType | inspect.DictType | inspect.StrType


def unfit(value: Any, shape: inspect.Type, pointer: str) -> tuple[str, str]:  # noqa: ANN401 - any JSON value
    """Detail and remedy for a value that does not fit a shape."""
    if isinstance(shape, inspect.EnumType):
        return not_one_of(value, _choices(shape))
    detail = f"{shown(value)} is not {wanted(shape)}"
    return detail, _remedy(value, shape, pointer)


def not_one_of(value: Any, choices: Sequence[str]) -> tuple[str, str]:  # noqa: ANN401 - any JSON value
    """Detail and remedy for a word that is none of a closed set."""
    close = get_close_matches(value[:LONGEST_SHOWN_COUNT].lower(), choices, n=1) if isinstance(value, str) else []
    return f"{shown(value)} is not {one_of(choices)}", f'Did you mean "{close[0]}"?' if close else f"Send {one_of(choices)}."


def unknown_field(name: str, known: Sequence[str]) -> tuple[str, str]:
    """Detail and remedy for a member that there is not."""
    close = get_close_matches(name[:LONGEST_SHOWN_COUNT], known, n=1)
    return "there is no such field", f"Did you mean `{close[0]}`?" if close else "Remove it."


def one_of(choices: Sequence[str]) -> str:
    """A closed set, as words."""
    quoted = [json.dumps(choice) for choice in choices[:MOST_CHOICES_COUNT]]
    more = ", ..." if len(choices) > MOST_CHOICES_COUNT else ""
    return f"one of {', '.join(quoted)}{more}" if len(quoted) > 1 else "".join(quoted)


def shown(value: Any) -> str:  # noqa: ANN401 - any JSON value
    """A value as it was sent, shortened; objects and lists by their kind only."""
    if isinstance(value, dict):
        return "an object"
    if isinstance(value, list):
        return f"a list of {len(value)}"
    if isinstance(value, str) and len(value) > LONGEST_SHOWN_COUNT:
        return f'{json.dumps(value[:LONGEST_SHOWN_COUNT])[:-1]}..." of {len(value)} characters'
    if isinstance(value, int) and abs(value) > GREATEST_SLIP_MM**2:
        return "a number beyond all bounds"  # also: Python writes no more than 4300 digits
    return json.dumps(value)


def wanted(shape: inspect.Type) -> str:
    """What fits a shape, as words."""
    bare = plain(shape)
    return _WANTED.get(type(bare), _anything)(bare)


def plain(shape: inspect.Type) -> inspect.Type:
    """A shape without what is only said about it."""
    return plain(shape.type) if isinstance(shape, inspect.Metadata) else shape


def is_of_kind(value: Any, shape: inspect.Type) -> bool:  # noqa: ANN401 - any JSON value
    """Whether a value has the JSON kind of a shape, whatever its bounds. `true` is no number, though Python takes it for one."""
    kinds = _KINDS.get(type(plain(shape)), (object,))
    return isinstance(value, kinds) and (not isinstance(value, bool) or bool in kinds or object in kinds)


def fits(value: Any, shape: inspect.Type) -> bool:  # noqa: ANN401 - any JSON value
    """Whether a scalar has the kind and keeps the bounds of a shape."""
    if not is_of_kind(value, shape):
        return False
    match shape:
        case inspect.IntType() | inspect.FloatType():
            return _is_in_range(value, shape)
        case inspect.EnumType():
            return value in {member.value for member in shape.cls}
        case inspect.StrType():
            return has_room(len(value), shape) and (shape.pattern is None or re.search(shape.pattern, value) is not None)
        case _:
            return True


def has_room(count: int, shape: Sized) -> bool:
    """Whether a length is within its bounds."""
    return (shape.min_length or 0) <= count and (shape.max_length is None or count <= shape.max_length)


def _is_in_range(value: float, shape: Number) -> bool:
    return not (
        (shape.ge is not None and value < shape.ge)
        or (shape.gt is not None and value <= shape.gt)
        or (shape.le is not None and value > shape.le)
        or (shape.lt is not None and value >= shape.lt)
    )


def _remedy(value: Any, shape: inspect.Type, pointer: str) -> str:  # noqa: ANN401 - any JSON value
    if isinstance(shape, inspect.IntType | inspect.FloatType):
        if slip := _slip(value, shape, pointer):
            return slip
        if isinstance(value, str) and re.fullmatch(r"-?[0-9]{1,9}(\.[0-9]{1,9})?", value):
            return f"Send the number without quotes: {value}."
    if isinstance(shape, inspect.BoolType) and isinstance(value, str) and value.lower() in {"true", "false"}:
        return f"Send it without quotes: {value.lower()}."
    return f"Send {wanted(shape)}."


def _slip(value: Any, shape: Number, pointer: str) -> str:  # noqa: ANN401 - any JSON value
    """A slip of the unit, for a field whose name ends in `_mm` (a list's values have the list's name)."""
    name = next((part for part in reversed(pointer.split("/")) if not part.isdigit()), "")
    low, high = (shape.ge if shape.gt is None else shape.gt), (shape.le if shape.lt is None else shape.lt)
    if not name.endswith("_mm") or low is None or high is None or not is_of_kind(value, shape) or abs(value) > GREATEST_SLIP_MM:
        return ""
    return likely_slip(float(value), float(low), float(high), "mm")


def _range(shape: Number) -> str:
    low = f" above {shape.gt:g}" if shape.gt is not None else f" from {shape.ge:g}" if shape.ge is not None else ""
    high = f" below {shape.lt:g}" if shape.lt is not None else f" to {shape.le:g}" if shape.le is not None else ""
    return low + high


def _size(shape: Sized, things: str) -> str:
    least, most = shape.min_length or 0, shape.max_length
    if most is None:
        return f" of at least {least} {things}" if least else ""
    return f" of {least} to {most} {things}" if least else f" of at most {most} {things}"


def _pattern(shape: inspect.StrType) -> str:
    if shape.pattern is None:
        return ""
    return PATTERN_WORDS.get(shape.pattern) or f" that matches {shape.pattern.replace(ONLY_PYTHON, '')}"


def _anything(_shape: inspect.Type) -> str:
    return "another value"


def _any_of(shape: inspect.UnionType) -> str:
    parts = [wanted(part) for part in shape.types if not isinstance(part, inspect.NoneType)]
    return " or ".join(dict.fromkeys(parts))


def _choices(shape: inspect.EnumType) -> list[str]:
    return [str(member.value) for member in shape.cls]


_KINDS: Final[dict[type[inspect.Type], tuple[type, ...]]] = {
    inspect.StructType: (dict,),
    inspect.DictType: (dict,),
    inspect.VarTupleType: (list,),
    inspect.StrType: (str,),
    inspect.EnumType: (str,),
    inspect.BoolType: (bool,),
    inspect.IntType: (int,),
    inspect.FloatType: (int, float),
    inspect.NoneType: (type(None),),
}
_WANTED: Final[dict[type[inspect.Type], Callable[[Any], str]]] = {
    inspect.UnionType: _any_of,
    inspect.StructType: lambda _: "an object",
    inspect.DictType: lambda shape: f"an object{_size(shape, 'members')}",
    inspect.VarTupleType: lambda shape: f"a list{_size(shape, 'values')}",
    inspect.StrType: lambda shape: f"text{_size(shape, 'characters')}{_pattern(shape)}",
    inspect.EnumType: lambda shape: one_of(_choices(shape)),
    inspect.BoolType: lambda _: "true or false",
    inspect.IntType: lambda shape: f"a whole number{_range(shape)}",
    inspect.FloatType: lambda shape: f"a number{_range(shape)}",
}
