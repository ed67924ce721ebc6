"""Problem documents (RFC 9457): one table from reason to status, one wire form, one way to make the bytes.

The core names reasons and faults; only here they get a status. `type` is a relative URI, stable for each reason.
"""

from __future__ import annotations

from http import HTTPStatus
from typing import TYPE_CHECKING, Annotated, Final

import msgspec
from msgspec import UNSET, Meta, UnsetType

from service.errors import Fault, Reason

if TYPE_CHECKING:
    from collections.abc import Mapping

MEDIA_TYPE: Final = "application/problem+json"
REMEDY_OF_OURS: Final = "Try again later; if it stays, report the number in `instance`."


class Kind(msgspec.Struct, frozen=True, kw_only=True):
    """What every problem of one reason has in common."""

    status: HTTPStatus
    title: str
    remedy: str  # used where there are no faults with remedies of their own


KINDS: Final[Mapping[Reason, Kind]] = {
    reason: Kind(status=status, title=title, remedy=remedy)
    for reason, status, title, remedy in (
        (Reason.MALFORMED, HTTPStatus.BAD_REQUEST, "The body is not JSON", "Send one JSON value in UTF-8."),
        (Reason.BAD_PARAMETER, HTTPStatus.BAD_REQUEST, "A parameter is wrong", "See `errors`."),
        (Reason.BAD_HOST, HTTPStatus.BAD_REQUEST, "The Host header is wrong", "Send one Host header with a name that is served."),
        (Reason.NOT_FOUND, HTTPStatus.NOT_FOUND, "There is nothing here", "See /openapi.json for the addresses there are."),
        (Reason.METHOD_NOT_ALLOWED, HTTPStatus.METHOD_NOT_ALLOWED, "The method is not allowed", "Use one that `Allow` names."),
        (Reason.NOT_ACCEPTABLE, HTTPStatus.NOT_ACCEPTABLE, "No such form of the answer", "Leave out `Accept`."),
        (Reason.REQUEST_TIMEOUT, HTTPStatus.REQUEST_TIMEOUT, "The body came too slowly", "Send it again, quicker."),
        (Reason.BODY_TOO_LARGE, HTTPStatus.REQUEST_ENTITY_TOO_LARGE, "The body is too large", "Send a smaller one."),
        (Reason.URI_TOO_LONG, HTTPStatus.REQUEST_URI_TOO_LONG, "The address is too long", "Send a shorter one."),
        (Reason.UNSUPPORTED_MEDIA_TYPE, HTTPStatus.UNSUPPORTED_MEDIA_TYPE, "The body has the wrong type", "Send JSON as UTF-8."),
        (Reason.SHAPE, HTTPStatus.UNPROCESSABLE_ENTITY, "The body has the wrong shape", "See `errors`."),
        (Reason.IMPOSSIBLE_VALUE, HTTPStatus.UNPROCESSABLE_ENTITY, "A value cannot be", "See `errors`."),
        (Reason.CONTRADICTION, HTTPStatus.UNPROCESSABLE_ENTITY, "Values contradict each other", "See `errors`."),
        (Reason.UNKNOWN_MODEL, HTTPStatus.UNPROCESSABLE_ENTITY, "The catalogue does not hold this", "See `errors`."),
        (Reason.NOT_ALLOWED, HTTPStatus.UNPROCESSABLE_ENTITY, "This may not be used here", "See `errors`."),
        (Reason.UNCUTTABLE_PIECE, HTTPStatus.UNPROCESSABLE_ENTITY, "No stock is long enough", "See `errors`."),
        (Reason.UNBUILDABLE, HTTPStatus.UNPROCESSABLE_ENTITY, "There is no design to draw", "See `errors` for what would fit."),
        (Reason.NO_PRICE, HTTPStatus.UNPROCESSABLE_ENTITY, "Something has no price", "See `errors`."),
        (Reason.KEY_MISSING, HTTPStatus.UNAUTHORIZED, "A key is wanted", "Send `Authorization: Bearer` with a key of the shop."),
        (Reason.KEY_UNKNOWN, HTTPStatus.UNAUTHORIZED, "The key is not known", "Send the key just as it was given out."),
        (Reason.KEY_EXPIRED, HTTPStatus.UNAUTHORIZED, "The key has expired", "Use its successor, or have a new one made."),
        (Reason.KEY_REVOKED, HTTPStatus.UNAUTHORIZED, "The key was revoked", "Have a new one made."),
        (Reason.KEY_KIND, HTTPStatus.FORBIDDEN, "A browser key does not open this", "Call with a server key, from a server."),
        (Reason.SCOPE_MISSING, HTTPStatus.FORBIDDEN, "The key does not open this", "Use a key with the scope that is named."),
        (
            Reason.ORIGIN_REFUSED,
            HTTPStatus.FORBIDDEN,
            "Not from this page",
            "Have the shop allow the page's origin.",
        ),
        (Reason.ACCOUNT_SUSPENDED, HTTPStatus.FORBIDDEN, "The account is suspended", "Ask whoever runs the service."),
        (Reason.BAD_ROWS, HTTPStatus.UNPROCESSABLE_ENTITY, "The file has faults", "Mend what `errors` names and send it again."),
        (Reason.DRAFT_CHANGED, HTTPStatus.CONFLICT, "The draft has changed", "Look at the draft again, then send its digest."),
        (Reason.DRAFT_UNSOUND, HTTPStatus.UNPROCESSABLE_ENTITY, "The draft does not hold together", "See `errors`."),
        (Reason.DAY_HAS_PASSED, HTTPStatus.UNPROCESSABLE_ENTITY, "That day has passed", "Send today or a later day."),
        (Reason.NOTHING_WOULD_HOLD, HTTPStatus.CONFLICT, "Nothing would hold today", "Publish another revision first."),
        (Reason.SPENT_KEY, HTTPStatus.CONFLICT, "The key cannot be rotated", "Rotate its successor, or make a new key."),
        (Reason.TOO_MANY_KEYS, HTTPStatus.CONFLICT, "There are too many keys", "Revoke one that is not used any more."),
        (Reason.KEYS_UNREAD, HTTPStatus.SERVICE_UNAVAILABLE, "No keys yet", "Try again after `Retry-After` seconds."),
        (Reason.DATABASE_AWAY, HTTPStatus.SERVICE_UNAVAILABLE, "No database now", "Try again after `Retry-After` seconds."),
        (Reason.OVERLOADED, HTTPStatus.SERVICE_UNAVAILABLE, "Too much to do", "Try again after `Retry-After` seconds."),
        (Reason.DEADLINE, HTTPStatus.SERVICE_UNAVAILABLE, "It took too long", "Try again after `Retry-After` seconds."),
        (Reason.NO_CATALOGUE, HTTPStatus.SERVICE_UNAVAILABLE, "No catalogue yet", "Try again after `Retry-After` seconds."),
        (Reason.WORKER_LOST, HTTPStatus.SERVICE_UNAVAILABLE, "The work was lost", "Try again after `Retry-After` seconds."),
        (Reason.INTERNAL, HTTPStatus.INTERNAL_SERVER_ERROR, "A mistake of ours", REMEDY_OF_OURS),
    )
}


class ProblemFault(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One thing wrong with the request: where, what, and what to send instead."""

    pointer: Annotated[str, Meta(description="Where in the body: RFC 6901 JSON Pointer; empty for the whole.")] | UnsetType = (
        UNSET
    )
    parameter: Annotated[str, Meta(description="Which parameter, if it is none of the body.")] | UnsetType = UNSET
    line: Annotated[int, Meta(description="Of a file: the line, or the number of the row, from 1.")] | UnsetType = UNSET
    column: Annotated[str, Meta(description="Of a file: the column; empty for the whole row.")] | UnsetType = UNSET
    reason: Reason
    detail: Annotated[str, Meta(description="What is wrong, with the value and what is allowed.")]
    remedy: Annotated[str, Meta(description="What to send instead.")]
    related: Annotated[tuple[str, ...], Meta(description="Pointers of the other values of a contradiction.")] = ()


class Problem(msgspec.Struct, frozen=True, kw_only=True):
    """A problem document, RFC 9457. New members may be added; readers ignore what they do not know."""

    type: Annotated[str, Meta(description="Relative URI, the same for each reason.")]
    title: str
    status: Annotated[int, Meta(ge=400, le=599)]
    detail: str
    instance: Annotated[str, Meta(description="`urn:uuid:` and the number of the request, as in `X-Request-Id`.")]
    reason: Reason
    remedy: str
    errors: Annotated[tuple[ProblemFault, ...], Meta(description="Everything that is wrong, not only the first.")] = ()


class ProblemError(Exception):
    """A request that ends in a problem document."""

    def __init__(
        self,
        reason: Reason,
        detail: str,
        *,
        faults: tuple[ProblemFault, ...] = (),
        headers: Mapping[str, str] | None = None,
    ) -> None:
        """Keep what the document will say."""
        super().__init__(detail)
        self.reason = reason
        self.detail = detail
        self.faults = faults
        self.headers = dict(headers or {})

    @property
    def status(self) -> HTTPStatus:
        """The status of its reason."""
        return KINDS[self.reason].status


def problem_type(reason: Reason) -> str:
    """The relative URI that names a reason."""
    return f"/problems/{reason.lower().replace('_', '-')}"


def problem_body(error: ProblemError, request_id: str) -> bytes:
    """The document of an error, as JSON."""
    kind = KINDS[error.reason]
    problem = Problem(
        type=problem_type(error.reason),
        title=kind.title,
        status=kind.status,
        detail=error.detail,
        instance=f"urn:uuid:{request_id}",
        reason=error.reason,
        remedy=kind.remedy,
        errors=error.faults,
    )
    return _ENCODER.encode(problem)


def from_faults(faults: tuple[Fault, ...]) -> ProblemError:
    """A request with faults in its body; the first fault gives the reason, all share its status."""
    first = faults[0]
    more = f", and {len(faults) - 1} more in `errors`" if len(faults) > 1 else ""
    where = first.pointer or "the body"
    return ProblemError(first.reason, f"{where}: {first.detail}{more}", faults=tuple(map(_wire, faults)))


def bad_parameters(faults: tuple[ProblemFault, ...]) -> ProblemError:
    """A request with wrong parameters."""
    first, *others = faults
    more = f", and {len(others)} more in `errors`" if others else ""
    return ProblemError(Reason.BAD_PARAMETER, f"{first.parameter}: {first.detail}{more}", faults=faults)


def parameter_fault(parameter: str, detail: str, remedy: str) -> ProblemFault:
    """One wrong parameter."""
    return ProblemFault(parameter=parameter, reason=Reason.BAD_PARAMETER, detail=detail, remedy=remedy)


def _wire(fault: Fault) -> ProblemFault:
    return ProblemFault(
        pointer=fault.pointer, reason=fault.reason, detail=fault.detail, remedy=fault.remedy, related=fault.related
    )


_ENCODER: Final = msgspec.json.Encoder()
