"""A request body is read strictly: its type, its encoding, then straight into the handler's msgspec type.

Litestar by itself would take any Content-Type, turn "5" into 5, and report one fault (`ecosystem` findings, section 3).
"""

from __future__ import annotations

import json
from functools import cache
from typing import Any, Final

import msgspec
from litestar import Request
from litestar.exceptions import LitestarException
from litestar.exceptions.http_exceptions import RequestEntityTooLarge

from service.errors import Reason
from service.web import shape
from service.web.problems import ProblemError

JSON: Final = "application/json"


class StrictRequest(Request[Any, Any, Any]):
    """A request whose body is the handler's type or a problem."""

    async def body(self) -> bytes:
        """The body.

        Raises:
            ProblemError: too large; wrong media type, a coding, or nothing there, where a handler wants a body.
        """
        wants_body = self.route_handler.parsed_data_field is not None
        if wants_body:
            _check_type(self)
        try:
            body = await super().body()
        except RequestEntityTooLarge as error:
            limit_bytes = self.route_handler.resolve_request_max_body_size()
            raise ProblemError(Reason.BODY_TOO_LARGE, f"The body is larger than {limit_bytes} bytes.") from error
        if wants_body and not body:
            raise ProblemError(Reason.MALFORMED, "The body is empty; a JSON object is wanted.")
        return body

    async def json(self) -> Any:  # noqa: ANN401 - the type is the handler's
        """The body as the handler's type; see `decode`."""
        field = self.route_handler.parsed_data_field
        if field is None:
            message = "a handler without a body reads none"
            raise LitestarException(message)
        return decode(await self.body(), field.raw)


def decode(body: bytes, kind: Any) -> Any:  # noqa: ANN401 - the type is the handler's
    """Bytes to a type.

    Raises:
        service.errors.RequestFaultsError: JSON of the wrong shape, with every fault.
        ProblemError: not JSON.
    """
    try:
        value = _decoder(kind).decode(body)
        _refuse_twins(body)
    except msgspec.ValidationError:
        value = _explain(body, kind)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError) as error:
        raise _malformed(error, body) from error
    return value


@cache
def _decoder(kind: Any) -> msgspec.json.Decoder[Any]:  # noqa: ANN401 - the type is the handler's
    return msgspec.json.Decoder(kind)


def _explain(body: bytes, kind: Any) -> Any:  # noqa: ANN401 - the type is the handler's
    """A body that the decoder refused: its faults, or its value if only whole numbers were written with a point."""
    try:
        loose = msgspec.json.decode(body)
        _refuse_twins(body)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError) as error:
        raise _malformed(error, body) from error
    return shape.convert(loose, kind)


def _malformed(error: Exception, body: bytes) -> ProblemError:
    if isinstance(error, UnicodeDecodeError):
        return ProblemError(Reason.MALFORMED, f"The body is not UTF-8 at byte {_first_bad_byte(body)}.")
    if isinstance(error, RecursionError):
        return ProblemError(Reason.MALFORMED, "The body is nested too deeply.")
    return ProblemError(Reason.MALFORMED, f"The body cannot be read: {error}.")


def _first_bad_byte(body: bytes) -> int:
    """Place in the whole body: the decoder counts from the start of one text."""
    try:
        body.decode()
    except UnicodeDecodeError as error:
        return error.start
    return 0


def _refuse_twins(body: bytes) -> None:
    """Refuse a member that stands twice in one object: parsers disagree on which counts (RFC 8259 section 4)."""
    json.loads(body, object_pairs_hook=_pairs, parse_int=float)


def _pairs(pairs: list[tuple[str, Any]]) -> None:
    names = {name for name, _ in pairs}
    if len(names) < len(pairs):
        twin = next(name for place, (name, _) in enumerate(pairs) if name in {earlier for earlier, _ in pairs[:place]})
        raise ProblemError(Reason.MALFORMED, f"The member {json.dumps(twin[:80])} stands twice in one object.")


def _check_type(request: StrictRequest) -> None:
    media_type, options = request.content_type
    charset = options.get("charset", "utf-8").lower()
    if media_type.lower() != JSON or charset not in {"utf-8", "utf8"}:
        sent = request.headers.get("content-type", "")[:80]
        detail = f"The body is of type {json.dumps(sent)}; {JSON} in UTF-8 is wanted."
        raise ProblemError(Reason.UNSUPPORTED_MEDIA_TYPE, detail, headers={"Accept": JSON})
    if (coding := request.headers.get("content-encoding", "identity").strip().lower()) != "identity":
        detail = f"The body is coded as {json.dumps(coding[:80])}; send it as it is."
        raise ProblemError(Reason.UNSUPPORTED_MEDIA_TYPE, detail, headers={"Accept": JSON, "Accept-Encoding": "identity"})
