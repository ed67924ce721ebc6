"""The committed OpenAPI document says what the code does: no drift, valid, and schemathesis finds no difference."""

from __future__ import annotations

import json
from collections import Counter, defaultdict
from typing import TYPE_CHECKING, Any, ClassVar, Final

import msgspec
import pytest
import schemathesis
from hypothesis import HealthCheck, Phase, settings
from openapi_spec_validator import validate
from schemathesis.config import SchemathesisConfig

from service.app import contract_path
from service.catalogue import demo_catalogue
from service.errors import Reason
from service.store import Scope
from service.web import EdgeLimits, KeyParts, WebParts, make_application
from service.web.application import HANDLERS
from service.web.contract import make_contract
from service.web.contract_answers import ANSWERS
from service.web.needs import NEEDS, OPEN_TO_ALL
from service.workers import InlineRunner
from tests.web.doubles import HeldKeeper, HeldKeys
from tests.web.willing_desk import REVISION, WillingDesk, make_books_engine

if TYPE_CHECKING:
    from collections.abc import Iterator

    from schemathesis import Case

DOCUMENT: Final[dict[str, Any]] = json.loads(contract_path().read_bytes())
SCHEMAS: Final[dict[str, Any]] = DOCUMENT["components"]["schemas"]
OPERATIONS: Final = {
    operation["operationId"]: (method, path, operation)
    for path, item in DOCUMENT["paths"].items()
    for method, operation in item.items()
}


def test_the_committed_document_is_what_the_code_makes() -> None:
    """Byte for byte; `inglewright openapi` writes it anew."""
    assert make_contract() == contract_path().read_bytes()


def test_the_document_is_valid() -> None:
    validate(DOCUMENT)


def test_every_operation_is_in_it_but_the_page_that_shows_it() -> None:
    handlers = {handler.operation_id for handler in HANDLERS if handler.resolve_include_in_schema()}

    assert handlers == set(OPERATIONS) == set(ANSWERS)


def walk(value: Any) -> Iterator[dict[str, Any]]:  # noqa: ANN401 - any JSON value
    """All objects in a JSON value."""
    if isinstance(value, dict):
        yield value
        value = list(value.values())
    if isinstance(value, list):
        for part in value:
            yield from walk(part)


def test_patterns_can_be_read_by_every_tool() -> None:
    r"""RE2 has no look-ahead, ECMA-262 no `\Z`."""
    patterns = {found["pattern"] for found in walk(DOCUMENT) if isinstance(found.get("pattern"), str)}

    assert len(patterns) > 5
    assert [] == [pattern for pattern in patterns if "(?" in pattern or "\\Z" in pattern]


def reachable(name: str) -> set[str]:
    """Components that a component leads to."""
    found: set[str] = set()
    waiting = [name]
    while waiting:
        new = waiting.pop()
        if new not in found:
            found.add(new)
            waiting += [part["$ref"].rpartition("/")[2] for part in walk(SCHEMAS[new]) if "$ref" in part]
    return found


@pytest.mark.parametrize("body", ["SurveyRequest", "DrawingRequest", "CutPlanRequest", "EstimateRequest"])
def test_requests_are_closed_and_described(body: str) -> None:
    objects = [SCHEMAS[name] for name in reachable(body) if SCHEMAS[name].get("type") == "object"]

    assert len(objects) > 4
    assert all(schema["additionalProperties"] is False for schema in objects)
    assert all(schema["description"] for schema in objects)


@pytest.mark.parametrize("body", ["KeyRequest", "RotationRequest"])
def test_requests_of_keys_are_closed(body: str) -> None:
    objects = [SCHEMAS[name] for name in reachable(body) if SCHEMAS[name].get("type") == "object"]

    assert all(schema["additionalProperties"] is False for schema in objects)


def test_every_operation_names_its_scope_or_is_open() -> None:
    for name, (_, _, operation) in OPERATIONS.items():
        expected = [] if name in OPEN_TO_ALL else [{"key": [NEEDS[name].scope]}]

        assert expected == operation["security"]
    assert {"type": "http", "scheme": "bearer"}.items() <= DOCUMENT["components"]["securitySchemes"]["key"].items()


def test_problems_are_open_and_name_every_reason() -> None:
    assert SCHEMAS["Problem"].get("additionalProperties") is not False
    assert sorted(SCHEMAS["Reason"]["enum"]) == sorted(Reason)


def test_unions_say_which_member_tells_them_apart() -> None:
    unions = [part for part in walk(SCHEMAS) if "anyOf" in part and sum("$ref" in choice for choice in part["anyOf"]) > 1]

    assert len(unions) > 5
    assert all("discriminator" in part for part in unions)


def test_bounds_of_nought_are_not_lost() -> None:
    """Litestar's own export loses them where a value may be left out."""
    parameters = {parameter["name"]: parameter["schema"] for parameter in OPERATIONS["list_appliances"][2]["parameters"]}
    depth = SCHEMAS["Brief"]["properties"]["platform_height_mm"]["anyOf"][0]

    assert parameters["open_ends_count"] == {"type": "integer", "minimum": 0, "maximum": 2}
    assert (depth["minimum"], depth["maximum"]) == (0, 1500)


def test_a_parameter_is_never_null() -> None:
    schemas = [parameter["schema"] for _, _, operation in OPERATIONS.values() for parameter in operation.get("parameters", [])]

    assert len(schemas) > 10
    assert all(schema["type"] in {"string", "integer"} for schema in schemas)


@pytest.mark.parametrize("name", [name for name, answered in ANSWERS.items() if answered.body])
def test_examples_are_what_they_are_examples_of(name: str) -> None:
    examples = OPERATIONS[name][2]["requestBody"]["content"]["application/json"]["examples"]

    assert examples
    for example in examples.values():
        msgspec.convert(example["value"], ANSWERS[name].body, strict=True)


def test_every_refusal_is_a_problem_document() -> None:
    responses = DOCUMENT["components"]["responses"]
    bodies = {name: list(response["content"]) for name, response in responses.items() if name != "NotModified"}

    assert all(types == ["application/problem+json"] for types in bodies.values())
    for _, _, operation in OPERATIONS.values():
        expected = {"400", "414", "500", "503"}
        expected |= {"401", "403"} if operation["security"] else set()
        assert {"200", "201"} & set(operation["responses"])
        expected |= {"408", "413", "415", "422"} if "requestBody" in operation else set()
        assert expected <= set(operation["responses"])


# ------------------------------------------------------------------------------------------------------- schemathesis
KEYS: Final = HeldKeys()
KEY: Final = KEYS.give("demo", *Scope)
KEYS.rows.clear()  # the key that the requests are made with is not listed, so that none of them ends it
KEYS.rename(KEYS.give("demo", Scope.QUOTE), "0123456789ab")  # as in the examples


@pytest.fixture(scope="module", autouse=True)
def _database() -> None:
    """Made outside the event loop that serves."""
    make_books_engine()


def keeper() -> HeldKeeper:
    """The demo with few fires and screens, as a shortlist tries each with each; also under the name that the examples have."""
    whole = demo_catalogue()
    fires = {model: whole.appliances[model] for model in ("AF-103", "AF-202", "AF-302")}
    screens = {model: whole.screens[model] for model in ("SC-043", "SC-050", "SC-065")}
    few = msgspec.structs.replace(whole, appliances=fires, screens=screens)
    made = HeldKeeper(few)
    made.catalogues[REVISION] = msgspec.structs.replace(few, revision=REVISION)
    return made


class Seen:
    """The application, and what each operation answered."""

    statuses: ClassVar[dict[str, Counter[int]]] = defaultdict(Counter)
    calls_count: ClassVar[int] = 0
    app: ClassVar[Any] = None

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:  # noqa: ANN401 - ASGI
        """Serve; the application is made in the event loop that serves."""
        if Seen.app is None:
            Seen.app = make_application(
                WebParts(
                    runner=InlineRunner("service.workers.jobs:JOBS"),
                    keeper=keeper(),
                    keys=KeyParts(ring=KEYS, uses=KEYS, desk=KEYS),
                    books=WillingDesk(make_books_engine()),
                    contract=contract_path().read_bytes(),
                    body_limit_bytes=256 * 1024,
                    limits=EdgeLimits(deadline_seconds=20),
                )
            )
        Seen.calls_count += 1
        await Seen.app(scope, receive, send)


# A body of the right shape may still contradict itself, name what the catalogue does not hold, or give a day that there is
# not: JSON Schema cannot say so. Such a body is a 422 with its faults, not an answer.
RULES_OF_THE_TRADE: Final = {"positive_data_acceptance": {"expected-statuses": ["2xx", "422"]}}
CALCULATIONS: Final = ("create_frame", "create_drawing", "create_cut_plan", "create_estimate")
# A file of rows is told its faults by line; a day may have passed; a draft or revision may be another. No schema says so.
OF_BOOKS: Final = ("import_rows", "publish_draft", "withdraw_revision")
RULES_OF_BOOKS: Final = {"positive_data_acceptance": {"expected-statuses": ["2xx", "404", "409", "422"]}}
# A day that no calendar has.
DATED: Final = ("get_difference", "get_sample_quotes")
RULES_OF_DAYS: Final = {"positive_data_acceptance": {"expected-statuses": ["2xx", "400", "404"]}}
# Bills and quotes take the very body of frames, whose 4 000 boundary cases run in full; 1 100 of them would make a whole quote
# each, 0.1 s a piece, or a shortlist. They run with `--hypothesis-profile=explore`; examples, fuzzing and sequences always run.
ALL_BOUNDARIES: Final = settings.get_current_profile_name() == "explore"
CONFIG: Final = SchemathesisConfig.from_dict(
    {
        "auth": {"openapi": {"key": {"bearer": KEY}}},
        "phases": {"coverage": {"generate-duplicate-query-parameters": True}},
        "operations": [
            {"include-operation-id": [*CALCULATIONS], "checks": RULES_OF_THE_TRADE},
            {"include-operation-id": [*OF_BOOKS], "checks": RULES_OF_BOOKS},
            {"include-operation-id": [*DATED], "checks": RULES_OF_DAYS},
            {
                "include-operation-id": ["create_bill", "create_quote", "create_shortlist"],
                "checks": RULES_OF_THE_TRADE,
                "phases": {"coverage": {"enabled": ALL_BOUNDARIES}},
            },
        ],
    }
)
schema = schemathesis.openapi.from_path(str(contract_path()), config=CONFIG)
schema.app = Seen()
BOUNDED: Final = settings(
    max_examples=80,
    deadline=None,
    derandomize=True,
    suppress_health_check=list(HealthCheck),
    phases=[Phase.explicit, Phase.generate],
)


@schema.parametrize()
@BOUNDED
def test_the_service_keeps_its_contract(case: Case[Any]) -> None:
    response = case.call_and_validate()
    Seen.statuses[case.operation.definition.raw["operationId"]][response.status_code] += 1


WITHOUT_KEY: Final = schemathesis.openapi.from_path(
    str(contract_path()), config=SchemathesisConfig.from_dict({"phases": {"coverage": {"enabled": False}}})
)
WITHOUT_KEY.app = Seen()


@WITHOUT_KEY.include(path_regex="^/v1/(price-books|materials|screens|brackets|appliances)").parametrize()
@settings(BOUNDED, max_examples=15)
def test_without_a_key_nothing_of_the_catalogue_opens(case: Case[Any]) -> None:
    response = case.call()

    assert response.status_code in {401, 404, 405}, response.text
    assert response.headers["content-type"] == ["application/problem+json"]


def test_the_service_keeps_its_contract_over_several_requests() -> None:
    before = Seen.calls_count
    schema.as_state_machine().run(settings=settings(BOUNDED, max_examples=20, stateful_step_count=6))

    assert Seen.calls_count - before >= 40


def test_every_operation_was_seen_to_succeed() -> None:
    """A run in which every call is refused is green too, and says nothing."""
    assert {name for name, statuses in Seen.statuses.items() if {200, 201} & {*statuses}} == set(OPERATIONS)
