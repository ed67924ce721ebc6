"""Whatever a handler, a guard or Litestar itself raises, as a problem document."""

from __future__ import annotations

import json
import logging
from http import HTTPStatus
from typing import TYPE_CHECKING, Any

from litestar import Request, Response
from litestar.exceptions import HTTPException, ValidationException

from service.errors import Reason, RequestFaultsError
from service.store import (
    BookError,
    NoKeyError,
    NoShopError,
    SpentKeyError,
    TooManyKeysError,
    Trouble,
    UnsoundError,
    is_database_away,
)
from service.web.edge import INTERNAL_DETAIL
from service.web.exchange import REQUEST_ID_KEY
from service.web.problems import (
    MEDIA_TYPE,
    ProblemError,
    ProblemFault,
    bad_parameters,
    from_faults,
    parameter_fault,
    problem_body,
)
from service.workers import WorkError

if TYPE_CHECKING:
    from collections.abc import Mapping

log = logging.getLogger(__name__)

_REASONS: Mapping[int, tuple[Reason, str]] = {
    HTTPStatus.NOT_FOUND: (Reason.NOT_FOUND, "There is nothing at this address."),
    HTTPStatus.METHOD_NOT_ALLOWED: (Reason.METHOD_NOT_ALLOWED, "This address does not take that method."),
    HTTPStatus.BAD_REQUEST: (Reason.BAD_PARAMETER, "The request cannot be read."),
}
_STORED: Mapping[type[Exception], Reason] = {
    NoKeyError: Reason.NOT_FOUND,
    NoShopError: Reason.NOT_FOUND,
    SpentKeyError: Reason.SPENT_KEY,
    TooManyKeysError: Reason.TOO_MANY_KEYS,
}
_OF_BOOKS: Mapping[Trouble, Reason] = {
    Trouble.NO_BOOK: Reason.NOT_FOUND,
    Trouble.NO_DRAFT: Reason.NOT_FOUND,
    Trouble.NO_REVISION: Reason.NOT_FOUND,
    Trouble.DRAFT_CHANGED: Reason.DRAFT_CHANGED,
    Trouble.DRAFT_UNSOUND: Reason.DRAFT_UNSOUND,
    Trouble.DAY_HAS_PASSED: Reason.DAY_HAS_PASSED,
    Trouble.NOTHING_WOULD_HOLD: Reason.NOTHING_WOULD_HOLD,
}


def to_problem(request: Request[Any, Any, Any], error: Exception) -> Response[bytes]:
    """Exception handler of the application: any error to its document."""
    problem = as_problem(error)
    request_id = request.scope["state"].get(REQUEST_ID_KEY, "")
    if problem.reason is Reason.INTERNAL and not isinstance(error, WorkError):
        log.error("request %s failed", request_id, exc_info=error)
    if problem.reason is Reason.DATABASE_AWAY:
        log.warning("request %s needs the database: %r", request_id, error)
    body = problem_body(problem, request_id)
    return Response(body, status_code=problem.status, media_type=MEDIA_TYPE, headers=problem.headers)


def as_problem(error: Exception) -> ProblemError:
    """The problem that an exception stands for; what nobody foresaw is a mistake of ours."""
    match error:
        case ProblemError():
            return error
        case RequestFaultsError():
            return from_faults(error.faults)
        case WorkError():
            after = error.retry_after_seconds
            return ProblemError(error.reason, error.detail, headers={} if after is None else {"Retry-After": str(after)})
        case ValidationException():
            return _parameters(error)
        case HTTPException() if error.status_code in _REASONS:
            reason, detail = _REASONS[error.status_code]
            return ProblemError(reason, detail, headers=error.headers)
        case _:
            return _of_the_store(error)


def _of_a_book(error: BookError) -> ProblemError:
    findings = error.soundness.findings if isinstance(error, UnsoundError) else ()
    faults = tuple(
        ProblemFault(
            column=one.column,
            reason=Reason.DRAFT_UNSOUND,
            detail=f"{one.kind} {' '.join(filter(None, one.key))}: {one.detail}",
            remedy=one.remedy,
        )
        for one in findings
        if one.stops
    )
    return ProblemError(_OF_BOOKS[error.trouble], error.detail, faults=faults)


def _of_the_store(error: Exception) -> ProblemError:
    if isinstance(error, BookError):
        return _of_a_book(error)
    reason = _STORED.get(type(error))
    if reason is not None:
        return ProblemError(reason, f"There is {error}." if reason is Reason.NOT_FOUND else f"It cannot be: {error}.")
    if is_database_away(error):
        return ProblemError(Reason.DATABASE_AWAY, "The database does not answer.", headers={"Retry-After": "2"})
    return ProblemError(Reason.INTERNAL, INTERNAL_DETAIL)


def _parameters(error: ValidationException) -> ProblemError:
    """Litestar's faults of path, query and header parameters."""
    extra = error.extra if isinstance(error.extra, list) else []
    faults = [
        parameter_fault(str(item.get("key", "")), f"{json.dumps(item.get('key', ''))}: {item['message']}.", "See /openapi.json.")
        for item in extra
        if isinstance(item, dict) and "message" in item
    ]
    return bad_parameters(tuple(faults)) if faults else ProblemError(Reason.BAD_PARAMETER, "A parameter is wrong.")
