"""The OpenAPI 3.1 document that this code keeps, generated and then committed as `openapi/openapi.json`.

Litestar knows paths, parameters and names. Everything with a schema comes from msgspec itself, as Litestar's own export leaves
out bounds, discriminators and closed objects. What an operation answers stands in `contract_answers`; the refusals follow
from its kind by rule, so that none is forgotten.
"""

from __future__ import annotations

import json
from importlib.metadata import version
from typing import TYPE_CHECKING, Any, Final

import msgspec
from litestar.openapi import OpenAPIConfig
from msgspec import inspect

from service.web.application import HANDLERS, make_router
from service.web.contract_answers import ANSWERS
from service.web.contract_parts import HEADERS, REFUSALS, SECURITY, ref, refusals_of, takes_body
from service.web.needs import NEEDS, OPEN_TO_ALL
from service.web.parameters import Shape, shapes_of
from service.web.problems import Problem, ProblemFault
from service.web.shape_words import ONLY_PYTHON

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.web.contract_answered import Answered

SCHEMAS: Final = "#/components/schemas/"
TITLE: Final = "Inglewright"
ABOUT: Final = (
    "Turns a room survey, a chosen electric fire and a screen into a false chimney breast that can be sold and built.\n\n"
    "Every number says its unit in its name. `null` means absent. Whatever is left out takes a default, and every default taken "
    "is listed in the answer. Members that are not known are refused in requests; in answers new ones may appear and are to be "
    "passed over. Every refusal is a problem document (RFC 9457) that names each fault with a pointer and a remedy."
)
TAGS: Final = (
    {
        "name": "calculations",
        "description": "A survey in, a design out. Nothing is stored; the same request has the same answer.",
    },
    {"name": "catalogue", "description": "What the shop sells and knows, of one dated revision."},
    {"name": "price books", "description": "The shop's prices and items: drafts, files, dated revisions, who did what."},
    {"name": "keys", "description": "Who may call for the shop, and for what."},
    {"name": "health", "description": "For whoever starts, stops and routes to the service."},
    {"name": "contract", "description": "This document."},
)

ROWS: Final = {"application/json": {"schema": {"type": "array", "items": {"type": "object"}}}}
SPARING: Final = frozenset({ProblemFault.__name__})  # leaves out members that have nothing to say
UNTYPED: Final[dict[Any, dict[str, Any]]] = {str: {"type": "string"}, dict: {"type": "object"}}

type Json = dict[str, Any]


def make_contract() -> bytes:
    """The document, as it is committed and served."""
    return (json.dumps(_document(), indent=1, ensure_ascii=False) + "\n").encode()


def _document() -> Json:
    config = OpenAPIConfig(title=TITLE, version=version("inglewright"), use_handler_docstrings=True)
    raw = make_router(openapi_config=config).openapi_schema.to_schema()
    schemas, components = _schemas()
    return {
        "openapi": "3.1.0",
        "info": {
            "title": TITLE,
            "version": version("inglewright"),
            "description": ABOUT,
            "license": {"name": "MIT", "identifier": "MIT"},
        },
        "servers": [{"url": "/"}],
        "tags": list(TAGS),
        "paths": {
            path: {method: _operation(found, schemas) for method, found in _methods(item)} for path, item in raw["paths"].items()
        },
        "components": {"schemas": components, "headers": HEADERS, "responses": REFUSALS, "securitySchemes": SECURITY},
    }


def _methods(item: Json) -> Iterator[tuple[str, Json]]:
    return ((method, found) for method, found in item.items() if isinstance(found, dict) and "operationId" in found)


def _schemas() -> tuple[dict[str, Json], Json]:
    """Schema of each operation's answer, by its id; and all components, those of unions under their own names."""
    bodies = [answered.body for answered in ANSWERS.values() if answered.body]
    typed = {name: answered for name, answered in ANSWERS.items() if answered.answer not in UNTYPED}
    found, components = _export([*(answered.answer for answered in typed.values()), *bodies, Problem])
    _, asked = _export(bodies)
    for name, schema in components.items():
        if name not in asked:
            _always_there(name, schema)
    schemas = dict(zip(typed, found[: len(typed)], strict=True))
    for name, answered in typed.items():
        if answered.name:
            components[answered.name] = schemas[name]
            schemas[name] = ref("schemas", answered.name)
    return schemas, {name: _plain(components[name]) for name in sorted(components)}


def _export(kinds: list[Any]) -> tuple[tuple[Json, ...], Json]:
    return msgspec.json.schema_components(kinds, ref_template=SCHEMAS + "{name}")


def _always_there(name: str, schema: Json) -> None:
    """In an answer every member is written, also where it is null: a client may count on that."""
    if name not in SPARING and "properties" in schema:
        schema["required"] = list(schema["properties"])
        for member in schema["properties"].values():
            member.pop("default", None)


def _operation(raw: Json, schemas: dict[str, Json]) -> Json:
    name = raw["operationId"]
    answered = ANSWERS[name]
    schema = schemas.get(name) or UNTYPED[answered.answer]
    shapes = shapes_of(next(handler for handler in HANDLERS if handler.operation_id == name))
    parameters = [_parameter(parameter, shapes, answered) for parameter in raw.get("parameters", [])]
    return {
        "operationId": name,
        "summary": raw["summary"],
        "description": raw["description"] + _key_words(name),
        "tags": raw["tags"],
        "security": [] if name in OPEN_TO_ALL else [{"key": [NEEDS[name].scope]}],
        **({"parameters": parameters} if parameters else {}),
        **({"requestBody": _file_body() if answered.file_body else _body(answered)} if takes_body(answered) else {}),
        "responses": {
            str(int(answered.status)): _success(answered, schema),
            **refusals_of(answered, is_open=name in OPEN_TO_ALL),
        },
    }


def _key_words(name: str) -> str:
    if name in OPEN_TO_ALL:
        return ""
    need = NEEDS[name]
    return f"\n\nKey: a server key with the scope `{need.scope}`{', or a browser key' if need.browser else ''}."


def _parameter(raw: Json, shapes: dict[str, Shape], answered: Answered) -> Json:
    """A parameter: what Litestar knows of it, with the bounds that are really held."""
    kept = {name: raw[name] for name in ("name", "in", "description", "required") if raw.get(name) is not None}
    shape = shapes.get(raw["name"], inspect.StrType())
    default = {"default": raw["schema"]["default"]} if "default" in raw["schema"] else {}
    example = {"example": answered.codes.get(raw["name"], answered.code)} if raw["in"] == "path" else {}
    return {**kept, "schema": {**_bounds(shape), **default}, **example}


def _bounds(shape: Shape) -> Json:
    if isinstance(shape, inspect.IntType):
        return {"type": "integer", "minimum": shape.ge, "maximum": shape.le}
    return {"type": "string"} if shape.pattern is None else {"type": "string", "pattern": _pattern(shape.pattern)}


def _body(answered: Answered) -> Json:
    name = "" if answered.body is None else answered.body.__name__
    examples = {name: {"value": value} for name, value in answered.examples}
    return {"required": True, "content": {"application/json": {"schema": ref("schemas", name), "examples": examples}}}


def _file_body() -> Json:
    """A file of rows; what is wrong with one is told by line and column, not by a schema."""
    rows: Json = {"type": "array", "items": {"type": "object"}}
    return {"required": True, "content": {"text/csv": {"schema": {"type": "string"}}, "application/json": {"schema": rows}}}


def _success(answered: Answered, schema: Json) -> Json:
    return {
        "description": answered.description,
        "headers": {name: ref("headers", name) for name in ("X-Request-Id", *answered.headers)},
        "content": {answered.media_type: {"schema": schema}, **(ROWS if answered.is_file else {})},
        **({"links": answered.links} if answered.links else {}),
    }


def _plain(value: Any) -> Any:  # noqa: ANN401 - any JSON value
    """A schema as other tools read it: whole bounds as whole numbers, patterns without Python's own look-ahead."""
    if isinstance(value, dict):
        return {name: _pattern(part) if name == "pattern" else _plain(part) for name, part in value.items()}
    if isinstance(value, list):
        return [_plain(part) for part in value]
    return int(value) if isinstance(value, float) and value.is_integer() else value


def _pattern(text: str) -> str:
    return text.replace(ONLY_PYTHON, "")
