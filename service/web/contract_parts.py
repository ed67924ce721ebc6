"""Headers and refusals of the contract, and the rule which operation has which."""

from __future__ import annotations

from http import HTTPStatus
from typing import TYPE_CHECKING, Any, Final

from service.web.problems import MEDIA_TYPE

if TYPE_CHECKING:
    from service.web.contract_answered import Answered

type Json = dict[str, Any]


def ref(kind: str, name: str) -> Json:
    """A reference to a component."""
    return {"$ref": f"#/components/{kind}/{name}"}


def _header(description: str, *, required: bool = True, **schema: object) -> Json:
    return {"description": description, "required": required, "schema": {"type": "string", **schema}}


HEADERS: Final[Json] = {
    "Accept": _header("The media type that is taken."),
    "Cache-Control": _header("Whether and how the answer may be held."),
    "Catalogue-Age-Seconds": {
        "description": "Seconds since the database last confirmed that no newer catalogue is in force.",
        "required": True,
        "schema": {"type": "integer", "minimum": 0},
    },
    "Catalogue-Revision": _header("The catalogue revision that the answer was made with."),
    "ETag": _header("Entity tag; send it in `If-None-Match` the next time.", pattern='^"[^"]+"$'),
    "Retry-After": {
        "description": "Seconds after which to try again.",
        "required": False,
        "schema": {"type": "integer", "minimum": 0},
    },
    "WWW-Authenticate": {
        "description": "The scheme, and what was wrong or missing (RFC 6750, section 3).",
        "required": False,
        "schema": {"type": "string"},
    },
    "X-Request-Id": _header("Number of the request; the caller's own if it sent a UUID.", format="uuid"),
}
SECURITY: Final[Json] = {
    "key": {
        "type": "http",
        "scheme": "bearer",
        "description": (
            "A key of the shop, `iws_...` for servers and `iwb_...` for browsers. A server key opens what its scopes name; none "
            "includes another. A browser key may stand in a page: it opens only what says so, shows no trade prices, and is "
            "taken only with an `Origin` header that the shop allows. A service that is run as a demo also answers without a key."
        ),
    }
}
_WORDS: Final = {
    HTTPStatus.NOT_MODIFIED: ("NotModified", "The answer that the caller holds is still the right one."),
    HTTPStatus.BAD_REQUEST: ("BadRequest", "The body is not JSON, or a parameter or the Host header is wrong."),
    HTTPStatus.UNAUTHORIZED: ("KeyWanted", "No key, or one that is not known or has ended."),
    HTTPStatus.FORBIDDEN: ("NotOpened", "The key does not open this, or not on this page, or its shop is suspended."),
    HTTPStatus.NOT_FOUND: ("NotFound", "The shop has no such thing."),
    HTTPStatus.REQUEST_TIMEOUT: ("RequestTimeout", "The body did not arrive in time."),
    HTTPStatus.CONFLICT: ("Conflict", "What is there already stands against it."),
    HTTPStatus.REQUEST_ENTITY_TOO_LARGE: ("BodyTooLarge", "The body is larger than the service takes."),
    HTTPStatus.REQUEST_URI_TOO_LONG: ("AddressTooLong", "The address is longer than the service takes."),
    HTTPStatus.UNSUPPORTED_MEDIA_TYPE: ("UnsupportedMediaType", "The body is not of type application/json in UTF-8."),
    HTTPStatus.UNPROCESSABLE_ENTITY: ("Faults", "The body is JSON but cannot be used; `errors` names every fault."),
    HTTPStatus.INTERNAL_SERVER_ERROR: ("Internal", "A mistake of the service, which was logged."),
    HTTPStatus.SERVICE_UNAVAILABLE: ("Unavailable", "No catalogue is held, too much waits, or it took too long: try again."),
}
_MORE_HEADERS: Final = {
    HTTPStatus.UNAUTHORIZED: ("WWW-Authenticate",),
    HTTPStatus.FORBIDDEN: ("WWW-Authenticate",),
    HTTPStatus.NOT_MODIFIED: ("Cache-Control", "ETag"),
    HTTPStatus.UNSUPPORTED_MEDIA_TYPE: ("Accept",),
    HTTPStatus.SERVICE_UNAVAILABLE: ("Retry-After",),
}


def _response(status: HTTPStatus) -> Json:
    _, description = _WORDS[status]
    names = ("X-Request-Id", *_MORE_HEADERS.get(status, ()))
    answer: Json = {"description": description, "headers": {name: ref("headers", name) for name in names}}
    if status is not HTTPStatus.NOT_MODIFIED:
        answer["content"] = {MEDIA_TYPE: {"schema": ref("schemas", "Problem")}}
    return answer


REFUSALS: Final[Json] = {name: _response(status) for status, (name, _) in _WORDS.items()}

_BODY: Final = (
    HTTPStatus.REQUEST_TIMEOUT,
    HTTPStatus.REQUEST_ENTITY_TOO_LARGE,
    HTTPStatus.UNSUPPORTED_MEDIA_TYPE,
    HTTPStatus.UNPROCESSABLE_ENTITY,
)


def takes_body(answered: Answered) -> bool:
    """Whether an operation has a body."""
    return answered.file_body or answered.body is not None


def refusals_of(answered: Answered, *, is_open: bool) -> Json:
    """Which refusals an operation has, by what it takes and whether it asks for a key."""
    statuses = {HTTPStatus.BAD_REQUEST, HTTPStatus.REQUEST_URI_TOO_LONG, HTTPStatus.INTERNAL_SERVER_ERROR}
    statuses |= {HTTPStatus.SERVICE_UNAVAILABLE}
    statuses |= set() if is_open else {HTTPStatus.UNAUTHORIZED, HTTPStatus.FORBIDDEN}
    statuses |= {HTTPStatus.CONFLICT} if answered.conflicts else set()
    statuses |= set(_BODY) if takes_body(answered) else set()
    statuses |= {HTTPStatus.NOT_FOUND} if answered.code or answered.codes else set()
    statuses |= {HTTPStatus.NOT_MODIFIED} if "ETag" in answered.headers else set()
    return {str(int(status)): ref("responses", _WORDS[status][0]) for status in sorted(statuses)}
