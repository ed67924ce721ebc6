"""Every fault of shape in a decoded JSON value against a msgspec type, each with its pointer and a remedy.

msgspec stops at the first fault and names it in its own terms. This walk runs only after msgspec has refused a body, so it
costs nothing where all is well. It also turns `8.0` into `8` for whole numbers, which JSON Schema takes for the same
(JSON Schema 2020-12, validation, 6.1.1).
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any, Final

import msgspec
from msgspec import inspect

from service.errors import Fault, Reason, RequestFaultsError
from service.web import shape_words as words
from service.web.shape_words import plain

if TYPE_CHECKING:
    from collections.abc import Callable

MOST_FAULTS: Final = 50  # house choice: more help nobody, and bound the work that a hostile body makes
GREATEST_EXACT_WHOLE: Final = 2**53  # above it a float does not name one whole number: IEEE 754 binary64


@cache
def shape_of(kind: Any) -> inspect.Type:  # noqa: ANN401 - a type form, such as `Annotated[X, ...]`
    """What msgspec knows of a type."""
    return inspect.type_info(kind)


def examine(value: Any, shape: inspect.Type) -> tuple[Any, tuple[Fault, ...]]:  # noqa: ANN401 - any JSON value
    """Hold a value against a shape.

    Args:
        value: what `msgspec.json.decode` gave without a type.
        shape: from `shape_of`.

    Returns:
        The value with whole numbers made whole, and at most `MOST_FAULTS` faults.
    """
    walk = _Walk()
    rebuilt = walk.value(value, shape, "")
    return rebuilt, tuple(walk.faults[:MOST_FAULTS])


def escape(part: str) -> str:
    """One part of a JSON Pointer, RFC 6901 section 3."""
    return part.replace("~", "~0").replace("/", "~1")


class _Walk:
    """One walk through one value; keeps the faults that it meets."""

    def __init__(self) -> None:
        self.faults: list[Fault] = []
        self._ways: dict[type[inspect.Type], Callable[[Any, Any, str], Any]] = {
            inspect.UnionType: self._union,
            inspect.StructType: self._object,
            inspect.VarTupleType: self._array,
            inspect.DictType: self._map,
        }

    def value(self, value: Any, shape: inspect.Type, pointer: str) -> Any:  # noqa: ANN401 - any JSON value
        if len(self.faults) >= MOST_FAULTS:
            return value
        shape = plain(shape)
        way: Callable[[Any, Any, str], Any] = self._ways.get(type(shape), self._scalar)
        return way(value, shape, pointer)

    def _add(self, pointer: str, detail: str, remedy: str) -> None:
        self.faults.append(Fault(pointer=pointer, reason=Reason.SHAPE, detail=detail, remedy=remedy))

    def _unfit(self, value: Any, shape: inspect.Type, pointer: str) -> Any:  # noqa: ANN401 - any JSON value
        self._add(pointer, *words.unfit(value, shape, pointer))
        return value

    def _union(self, value: Any, shape: inspect.UnionType, pointer: str) -> Any:  # noqa: ANN401 - any JSON value
        parts = [plain(part) for part in shape.types]
        if value is None and any(isinstance(part, inspect.NoneType) for part in parts):
            return value
        some = [part for part in parts if not isinstance(part, inspect.NoneType)]
        tagged = [part for part in some if isinstance(part, inspect.StructType) and part.tag_field]
        if len(some) == 1:
            return self.value(value, some[0], pointer)
        if isinstance(value, dict) and tagged:
            return self._tagged(value, tagged, pointer)
        fitting = next((part for part in some if words.is_of_kind(value, part)), None)
        return self._unfit(value, shape, pointer) if fitting is None else self.value(value, fitting, pointer)

    def _tagged(self, value: dict[str, Any], members: list[inspect.StructType], pointer: str) -> Any:  # noqa: ANN401 - any JSON value
        field = str(members[0].tag_field)
        tags = [str(member.tag) for member in members]
        if field not in value:
            self._add(f"{pointer}/{escape(field)}", "is missing", f"Add it: {words.one_of(tags)}.")
        elif value[field] not in tags:
            self._add(f"{pointer}/{escape(field)}", *words.not_one_of(value[field], tags))
        else:
            return self._object(value, members[tags.index(value[field])], pointer)
        return value

    def _object(self, value: Any, shape: inspect.StructType, pointer: str) -> Any:  # noqa: ANN401 - any JSON value
        if not isinstance(value, dict):
            return self._unfit(value, shape, pointer)
        if shape.tag_field and value.get(shape.tag_field) != shape.tag:
            return self._tagged(value, [shape], pointer)
        fields = {field.encode_name: field for field in shape.fields}
        known = [*fields, shape.tag_field] if shape.tag_field else list(fields)
        for name in value:
            if name not in known and shape.forbid_unknown_fields:
                self._add(f"{pointer}/{escape(name)}", *words.unknown_field(name, known))
        for name, field in fields.items():
            if field.required and name not in value:
                self._add(f"{pointer}/{escape(name)}", "is missing", f"Add it: {words.wanted(field.type)}.")
        return {
            name: self.value(part, fields[name].type, f"{pointer}/{escape(name)}") if name in fields else part
            for name, part in value.items()
        }

    def _array(self, value: Any, shape: inspect.VarTupleType, pointer: str) -> Any:  # noqa: ANN401 - any JSON value
        if not isinstance(value, list) or not words.has_room(len(value), shape):
            return self._unfit(value, shape, pointer)
        return [self.value(part, shape.item_type, f"{pointer}/{place}") for place, part in enumerate(value)]

    def _map(self, value: Any, shape: inspect.DictType, pointer: str) -> Any:  # noqa: ANN401 - any JSON value
        if not isinstance(value, dict) or not words.has_room(len(value), shape):
            return self._unfit(value, shape, pointer)
        for name in value:
            if not words.fits(name, plain(shape.key_type)):
                detail, _ = words.unfit(name, plain(shape.key_type), "")
                self._add(f"{pointer}/{escape(name)}", f"its name {detail}", f"Name it {words.wanted(shape.key_type)}.")
        return {name: self.value(part, shape.value_type, f"{pointer}/{escape(name)}") for name, part in value.items()}

    def _scalar(self, value: Any, shape: inspect.Type, pointer: str) -> Any:  # noqa: ANN401 - any JSON value
        if isinstance(shape, inspect.IntType) and isinstance(value, float) and _is_whole(value):
            return self._scalar(int(value), shape, pointer)
        return value if words.fits(value, shape) else self._unfit(value, shape, pointer)


def _is_whole(value: float) -> bool:
    return abs(value) < GREATEST_EXACT_WHOLE and value.is_integer()


def convert(value: Any, kind: Any) -> Any:  # noqa: ANN401 - any JSON value
    """A decoded JSON value as a type, or all its faults.

    Raises:
        service.errors.RequestFaultsError: with every fault.
    """
    rebuilt, faults = examine(value, shape_of(kind))
    if not faults:
        try:
            return msgspec.convert(rebuilt, kind, strict=True)
        except msgspec.ValidationError as error:  # a rule that the walk does not know: never silent
            faults = (Fault(pointer="", reason=Reason.SHAPE, detail=str(error), remedy="See the schema in /openapi.json."),)
    raise RequestFaultsError(faults)
