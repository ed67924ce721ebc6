"""Every fault of shape, with pointer and remedy."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec import Meta

from service.errors import RequestFaultsError
from service.survey import SurveyRequest
from service.web import shape
from tests.web.client import survey_body

if TYPE_CHECKING:
    from collections.abc import Callable

    from service.errors import Fault


class Stud(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag="stud", tag_field="kind"):
    length_mm: Annotated[float, Meta(ge=300, le=4_000)]


class Plate(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag="plate", tag_field="kind"):
    count: Annotated[int, Meta(ge=1, le=9)]


class Kit(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    parts: Annotated[tuple[Stud | Plate, ...], Meta(min_length=1, max_length=3)]
    only: Stud | None = None
    code: Annotated[str, Meta(max_length=8, pattern=r"^[a-z/~]+(?!\n)$")] | None = None
    notes: dict[Annotated[str, Meta(max_length=3)], bool] | None = None
    number: Annotated[int, Meta(gt=0, lt=5)] | str | None = None


STUD = {"kind": "stud", "length_mm": 2_440}


def faults_of(value: Any, kind: Any = Kit) -> tuple[Fault, ...]:  # noqa: ANN401 - any JSON value
    with pytest.raises(RequestFaultsError) as caught:
        shape.convert(value, kind)
    return caught.value.faults


def said(value: Any, kind: Any = Kit) -> list[tuple[str, str, str]]:  # noqa: ANN401 - any JSON value
    return [(fault.pointer, fault.detail, fault.remedy) for fault in faults_of(value, kind)]


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        ([], [("", "a list of 0 is not an object", "Send an object.")]),
        ({}, [("/parts", "is missing", "Add it: a list of 1 to 3 values.")]),
        ({"parts": []}, [("/parts", "a list of 0 is not a list of 1 to 3 values", "Send a list of 1 to 3 values.")]),
        ({"parts": None}, [("/parts", "null is not a list of 1 to 3 values", "Send a list of 1 to 3 values.")]),
        ({"parts": [{}]}, [("/parts/0/kind", "is missing", 'Add it: one of "stud", "plate".')]),
        ({"parts": [{"kind": "studd"}]}, [("/parts/0/kind", '"studd" is not one of "stud", "plate"', 'Did you mean "stud"?')]),
        (
            {"parts": [{"kind": []}]},
            [("/parts/0/kind", 'a list of 0 is not one of "stud", "plate"', 'Send one of "stud", "plate".')],
        ),
        ({"parts": ["stud"]}, [("/parts/0", '"stud" is not an object', "Send an object.")]),
        ({"parts": [{"kind": "stud"}]}, [("/parts/0/length_mm", "is missing", "Add it: a number from 300 to 4000.")]),
        (
            {"parts": [{"kind": "stud", "length_mm": 244}]},
            [("/parts/0/length_mm", "244 is not a number from 300 to 4000", "244 looks like centimetres: 2440 mm?")],
        ),
        (
            {"parts": [{"kind": "stud", "length_mm": "2440"}]},
            [("/parts/0/length_mm", '"2440" is not a number from 300 to 4000', "Send the number without quotes: 2440.")],
        ),
        (
            {"parts": [{"kind": "stud", "length_mm": True}]},
            [("/parts/0/length_mm", "true is not a number from 300 to 4000", "Send a number from 300 to 4000.")],
        ),
        (
            {"parts": [{"kind": "plate", "count": 2.5}]},
            [("/parts/0/count", "2.5 is not a whole number from 1 to 9", "Send a whole number from 1 to 9.")],
        ),
        (
            {"parts": [STUD], "only": {"kind": "plate"}},
            [("/only/kind", '"plate" is not "stud"', 'Send "stud".')],
        ),
        ({"parts": [STUD], "kode": "a"}, [("/kode", "there is no such field", "Did you mean `code`?")]),
        ({"parts": [STUD], "zebra": 1}, [("/zebra", "there is no such field", "Remove it.")]),
        (
            {"parts": [STUD], "code": "a\n"},
            [("/code", '"a\\n" is not text of at most 8 characters that matches ^[a-z/~]+$', None)],
        ),
        ({"parts": [STUD], "notes": {"a/b": 1}}, [("/notes/a~1b", "1 is not true or false", "Send true or false.")]),
        (
            {"parts": [STUD], "notes": {"x": "True"}},
            [("/notes/x", '"True" is not true or false', "Send it without quotes: true.")],
        ),
        (
            {"parts": [STUD], "notes": {"long": True}},
            [("/notes/long", 'its name "long" is not text of at most 3 characters', "Name it text of at most 3 characters.")],
        ),
        (
            {"parts": [STUD], "number": 5},
            [("/number", "5 is not a whole number above 0 below 5", "Send a whole number above 0 below 5.")],
        ),
        (
            {"parts": [STUD], "number": []},
            [("/number", "a list of 0 is not a whole number above 0 below 5 or text", None)],
        ),
    ],
)
def test_a_fault_says_where_what_and_what_to_do(value: Any, expected: list[tuple[str, str, str | None]]) -> None:  # noqa: ANN401 - any JSON value
    found = said(value)

    assert [(pointer, detail) for pointer, detail, _ in expected] == [(pointer, detail) for pointer, detail, _ in found]
    assert all(remedy in {None, said} for (_, _, remedy), (_, _, said) in zip(expected, found, strict=True))


def test_all_faults_come_at_once_in_the_order_of_the_body() -> None:
    value = {"parts": [STUD, {"kind": "plate", "count": 0}, {"kind": "stud", "length_mm": 1, "x~y": 2}], "code": 7, "kid": 1}

    assert ["/kid", "/parts/1/count", "/parts/2/x~0y", "/parts/2/length_mm", "/code"] == [
        fault.pointer for fault in faults_of(value)
    ]


def test_a_whole_number_may_be_written_with_a_point() -> None:
    """JSON Schema 2020-12, validation, section 6.1.1: 1.0 is an integer."""
    found: Kit = shape.convert({"parts": [{"kind": "plate", "count": 3.0}]}, Kit)

    assert found == Kit(parts=(Plate(count=3),))
    assert isinstance(found.parts[0], Plate)
    assert isinstance(found.parts[0].count, int)


@pytest.mark.parametrize("value", [10**400, -(10**400), 1e300, 2.0**53])
def test_numbers_beyond_all_bounds_are_faults_and_nothing_worse(value: float) -> None:
    found = faults_of({"parts": [{"kind": "stud", "length_mm": value}, {"kind": "plate", "count": value}]})

    assert ["/parts/0/length_mm", "/parts/1/count"] == [fault.pointer for fault in found]


def test_faults_are_bounded() -> None:
    value = {"parts": [STUD], **{f"wrong_{place}": 1 for place in range(1_000)}}

    assert len(faults_of(value)) == shape.MOST_FAULTS


def test_values_are_repeated_only_in_part() -> None:
    (fault,) = faults_of({"parts": [STUD], "code": "x" * 10_000})

    assert len(fault.detail) < 200


def test_a_survey_shows_the_slip_of_the_whole_list() -> None:
    """2.44 m and 244 cm for 2440 mm."""
    body = survey_body()
    body["survey"]["room"] = {"heights": [{"x_mm": 0, "y_mm": 0, "height_mm": 2.44}]}
    body["survey"]["site"] = {"longest_length_mm": 480}

    assert [
        ("/survey/room/heights/0/height_mm", "2.44 is not a number from 1900 to 4500", "2.44 looks like metres: 2440 mm?"),
        ("/survey/site/longest_length_mm", "480 is not a number from 1800 to 6000", "480 looks like centimetres: 4800 mm?"),
    ] == said(body, SurveyRequest)


JSON_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text(max_size=8),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(["kind", "parts", "code", "notes", "x"]), inner, max_size=4)
    ),
    max_leaves=12,
)


@given(st.one_of(JSON_VALUES, st.fixed_dictionaries({"parts": st.lists(st.one_of(st.just(STUD), JSON_VALUES), max_size=4)})))
def test_the_walk_agrees_with_msgspec(value: Any) -> None:  # noqa: ANN401 - any JSON value
    """What msgspec refuses has a fault of ours with its own words, never the last resort; what it takes comes out the same."""
    expected = _outcome(lambda: msgspec.convert(value, Kit, strict=True))
    found = _outcome(lambda: shape.convert(value, Kit))

    assert expected == found or (expected is None and _has_whole_float(value))


def _outcome(convert: Callable[[], Kit]) -> Kit | None:
    try:
        return convert()
    except msgspec.ValidationError:
        return None
    except RequestFaultsError as error:
        own_words = [fault for fault in error.faults if "/openapi.json" not in fault.remedy]
        return None if own_words else Kit(parts=())


def _has_whole_float(value: Any) -> bool:  # noqa: ANN401 - any JSON value
    if isinstance(value, dict | list):
        return any(_has_whole_float(part) for part in (value.values() if isinstance(value, dict) else value))
    return isinstance(value, float) and value.is_integer()
