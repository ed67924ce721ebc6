"""Bodies are read strictly: what is not JSON in UTF-8 is told so; what is, is read as its type and nothing else."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest

from tests.web.client import BODY_LIMIT_BYTES, survey_body

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    import httpx

pytestmark = pytest.mark.anyio
GOOD = json.dumps(survey_body()).encode()
JSON = {"content-type": "application/json"}


async def post(client: httpx.AsyncClient, content: bytes, headers: dict[str, str] | None = None) -> tuple[int, dict[str, Any]]:
    answer = await client.post("/v1/frames", content=content, headers=JSON if headers is None else headers)
    return answer.status_code, answer.json()


MALFORMED = {
    "nothing": b"",
    "blank": b" ",
    "cut off": b"{",
    "single quotes": b"{'a': 1}",
    "NaN": b'{"survey": NaN}',
    "infinity": b'{"survey": Infinity}',
    "beyond a float": b'{"survey": 1e999}',
    "trailing comma": b'{"survey": {},}',
    "trailing bytes": GOOD + b"x",
    "byte order mark": b"\xef\xbb\xbf" + GOOD,
    "no UTF-8": b'{"survey": "\xff"}',
    "no UTF-8 in a name": b'{"\xff": 1}',
    "lone surrogate": b'{"survey": "\\ud800"}',
    "raw control character": b'{"survey": "a\nb"}',
    "deep lists": b"[" * 60_000,
    "deep objects": b'{"a":' * 10_000,
    "endless number": b'{"survey": ' + b"9" * 5_000 + b"}",
    "UTF-16": GOOD.decode().encode("utf-16"),
    "a member twice": b'{"survey": {"brief": {"appliance": {"kind": "catalogue", "model": "A", "model": "B"}}}}',
    "a member twice, one wrong": b'{"survey": {"brief": {"appliance": {"kind": "catalogue", "model": "A"}}}, "survey": 1}',
}


@pytest.mark.parametrize("content", MALFORMED.values(), ids=MALFORMED)
async def test_what_is_no_good_json_is_malformed(client: httpx.AsyncClient, content: bytes) -> None:
    status, problem = await post(client, content)

    assert (400, "MALFORMED", "/problems/malformed") == (status, problem["reason"], problem["type"])


@pytest.mark.parametrize(("content", "place"), [(b'{"survey": "\xff"}', 12), (b'{"survey": {"a\xff": 1}}', 14)])
async def test_the_byte_that_is_no_utf_8_is_counted_in_the_whole_body(
    client: httpx.AsyncClient, content: bytes, place: int
) -> None:
    _, problem = await post(client, content)

    assert f"The body is not UTF-8 at byte {place}." == problem["detail"]


@pytest.mark.parametrize(
    ("terms", "remedy"),
    [
        ({"date": "1.12.2026"}, "Send text that is a day, such as 2026-12-01."),
        ({"reference": "a\u0007"}, "Send text of 1 to 80 characters without control characters."),
    ],
)
async def test_a_pattern_is_said_in_words(client: httpx.AsyncClient, terms: dict[str, str], remedy: str) -> None:
    body = survey_body()
    body["terms"] = terms
    _, problem = await post(client, json.dumps(body).encode())

    assert remedy == problem["errors"][0]["remedy"]


@pytest.mark.parametrize("content", [b"null", b"[]", b'"x"', b"5", b"true", b"{}"])
async def test_json_that_is_no_survey_has_the_wrong_shape(client: httpx.AsyncClient, content: bytes) -> None:
    status, problem = await post(client, content)

    assert (422, "SHAPE") == (status, problem["reason"])
    assert problem["errors"][0]["pointer"] in {"", "/survey"}


@pytest.mark.parametrize(
    "headers",
    [
        {},
        {"content-type": "text/xml"},
        {"content-type": "text/plain"},
        {"content-type": "application/x-www-form-urlencoded"},
        {"content-type": "multipart/form-data; boundary=x"},
        {"content-type": "application/json; charset=latin-1"},
        {"content-type": "application/msgpack"},
        {**JSON, "content-encoding": "gzip"},
    ],
)
async def test_another_type_or_coding_is_not_read(client: httpx.AsyncClient, headers: dict[str, str]) -> None:
    answer = await client.post("/v1/frames", content=GOOD, headers=headers)

    assert (415, "UNSUPPORTED_MEDIA_TYPE") == (answer.status_code, answer.json()["reason"])
    assert answer.headers["accept"] == "application/json"


@pytest.mark.parametrize(
    "media_type", ["application/json", "application/json; charset=utf-8", 'Application/JSON; charset="UTF-8"']
)
async def test_json_in_utf_8_may_be_called_so_in_several_ways(client: httpx.AsyncClient, media_type: str) -> None:
    status, _ = await post(client, GOOD, {"content-type": media_type})

    assert status == 200


@pytest.mark.parametrize("value", ["435", "1e2", True, None, [435], {"x": 1}])
async def test_no_value_is_bent_into_a_number(client: httpx.AsyncClient, value: object) -> None:
    body = survey_body(breast_depth_mm=value, platform_height_mm=None)
    status, problem = await post(client, json.dumps(body).encode())
    expected = (200, None) if value is None else (422, "/survey/brief/breast_depth_mm")

    assert expected == (status, problem["errors"][0]["pointer"] if status == 422 else None)


async def test_a_body_of_the_greatest_size_is_read_and_one_byte_more_is_not(client: httpx.AsyncClient) -> None:
    fits = GOOD + b" " * (BODY_LIMIT_BYTES - len(GOOD))
    read, _ = await post(client, fits)
    status, problem = await post(client, fits + b" ")

    assert read == 200
    assert (413, "BODY_TOO_LARGE") == (status, problem["reason"])
    assert f"The body is larger than {BODY_LIMIT_BYTES} bytes." == problem["detail"]


async def test_a_body_in_pieces_is_bounded_too(client: httpx.AsyncClient) -> None:
    async def pieces() -> AsyncIterator[bytes]:
        for _ in range(BODY_LIMIT_BYTES // 1024 + 2):
            yield b" " * 1024

    answer = await client.post("/v1/frames", content=pieces(), headers=JSON)

    assert (413, "BODY_TOO_LARGE") == (answer.status_code, answer.json()["reason"])


async def test_what_was_sent_arrives(client: httpx.AsyncClient) -> None:
    body = survey_body(breast_depth_mm=435.5, top={"kind": "part_height", "height_mm": 2000})
    body["terms"] = {"crew_count": 2.0, "reference": "Ünïcode 電気 🔥"}
    status, answer = await post(client, json.dumps(body, ensure_ascii=False).encode())

    assert status == 200
    assert answer["request"]["survey"]["brief"]["breast_depth_mm"] == 435.5
    assert answer["request"]["survey"]["brief"]["top"] == {"kind": "part_height", "height_mm": 2000.0}
    assert answer["request"]["terms"]["crew_count"] == 2
    assert answer["request"]["terms"]["reference"] == "Ünïcode 電気 🔥"
