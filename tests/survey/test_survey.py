"""The request as a whole: what decodes, what is refused, and that every part of it is closed and bounded."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
import pytest
from msgspec import inspect

from service.survey import SurveyRequest
from service.survey.appliance import CatalogueAppliance, OpenEnds
from service.survey.fields import Input
from service.survey.wishes import TopCeiling

if TYPE_CHECKING:
    from collections.abc import Iterator

EXAMPLE = Path(__file__).with_name("design_example.json").read_bytes()  # section 3 of the design, as it stands there
UNBOUNDED = ("*", "+")  # a pattern with one of these needs a greatest length beside it


def inside(kind: inspect.Type, seen: set[type]) -> Iterator[inspect.Type]:
    """A type and every type inside it; each struct once."""
    yield kind
    match kind:
        case inspect.StructType() if kind.cls not in seen:
            seen.add(kind.cls)
            for field in kind.fields:
                yield from inside(field.type, seen)
        case inspect.UnionType():
            for part in kind.types:
                yield from inside(part, seen)
        case inspect.Metadata():
            yield from inside(kind.type, seen)
        case inspect.CollectionType():
            yield from inside(kind.item_type, seen)
        case inspect.DictType():
            yield from inside(kind.key_type, seen)
            yield from inside(kind.value_type, seen)


def all_inside() -> list[inspect.Type]:
    """Every type that a request is made of."""
    return list(inside(inspect.type_info(SurveyRequest), set()))


def test_the_example_of_the_design_decodes() -> None:
    request = msgspec.json.decode(EXAMPLE, type=SurveyRequest)

    room, brief = request.survey.room, request.survey.brief
    assert room is not None
    assert room.heights is not None
    assert (5, 3900) == (len(room.heights), room.wall_length_mm)
    assert (CatalogueAppliance(model="AF-302"), OpenEnds.BOTH, TopCeiling()) == (brief.appliance, brief.open_ends, brief.top)
    assert brief.breast_width_mm is None
    assert () == brief.extras
    assert request.terms is not None
    assert "Q-1042" == request.terms.reference


def test_a_request_goes_out_and_comes_back() -> None:
    request = msgspec.json.decode(EXAMPLE, type=SurveyRequest)

    assert request == msgspec.json.decode(msgspec.json.encode(request), type=SurveyRequest)
    assert request == msgspec.msgpack.decode(msgspec.msgpack.encode(request), type=SurveyRequest)


def test_only_the_fire_must_be_told() -> None:
    request = msgspec.json.decode('{"survey":{"brief":{"appliance":{"kind":"catalogue","model":"AF-302"}}}}', type=SurveyRequest)

    assert (None, None, None) == (request.terms, request.options, request.survey.room)


@pytest.mark.parametrize("body", ["{}", '{"survey":{}}', '{"survey":{"brief":{}}}', '{"survey":null}', "[]", "null"])
def test_less_than_a_fire_is_refused(body: str) -> None:
    with pytest.raises(msgspec.ValidationError):
        msgspec.json.decode(body, type=SurveyRequest)


def objects(value: object) -> Iterator[dict[str, object]]:
    """Every object of a body."""
    if isinstance(value, dict):
        yield value
    for part in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from objects(part)


def test_an_unknown_field_is_refused_wherever_it_stands() -> None:
    body = msgspec.json.decode(EXAMPLE)

    places = list(objects(body))

    assert 18 <= len(places)
    for place in places:
        place["colour"] = 1
        with pytest.raises(msgspec.ValidationError, match="colour"):
            msgspec.convert(body, SurveyRequest)
        del place["colour"]
        msgspec.convert(body, SurveyRequest)


def test_every_part_refuses_unknown_fields_and_is_immutable() -> None:
    structs = [kind.cls for kind in all_inside() if isinstance(kind, inspect.StructType)]

    ours = {kind.__name__ for kind in Input.__subclasses__() if kind.__module__.startswith("service.survey")}
    assert ours <= {kind.__name__ for kind in structs}
    for kind in structs:
        config = kind.__struct_config__
        assert (True, True) == (config.forbid_unknown_fields, config.frozen), kind


def test_every_part_takes_its_fields_by_name_only() -> None:
    for kind in {kind.cls for kind in all_inside() if isinstance(kind, inspect.StructType)}:
        if not kind.__struct_fields__:
            continue
        with pytest.raises(TypeError, match="positional"):
            kind(1)


def test_every_number_text_and_list_is_bounded() -> None:
    """Bounds on all that comes in: no overflow later, and a schema that says what is taken."""
    for kind in all_inside():
        if isinstance(kind, inspect.IntType | inspect.FloatType):
            assert None not in {kind.ge if kind.gt is None else kind.gt, kind.le if kind.lt is None else kind.lt}, kind
        elif isinstance(kind, inspect.StrType):
            bounded = kind.pattern is not None and not any(sign in kind.pattern for sign in UNBOUNDED)
            assert bounded or kind.max_length is not None, kind
        elif isinstance(kind, inspect.CollectionType | inspect.DictType):
            assert kind.max_length is not None, kind


def test_the_schema_can_be_written() -> None:
    """Names must not collide: the contract has one component for each struct and enumeration."""
    _, components = msgspec.json.schema_components([SurveyRequest])

    names = {kind.cls.__name__ for kind in all_inside() if isinstance(kind, inspect.StructType | inspect.EnumType)}
    assert names == components.keys()
