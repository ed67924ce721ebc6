"""Whatever a handler, a guard or Litestar itself raises, as a problem document."""

from __future__ import annotations

import json
import logging
from http import HTTPStatus
from typing import TYPE_CHECKING, Any

from litestar import Request, Response
from litestar.exceptions import HTTPException, ValidationException

from service.errors import Reason, RequestFaultsError
from service.web.edge import INTERNAL_DETAIL
from service.web.exchange import REQUEST_ID_KEY
from service.web.problems import MEDIA_TYPE, ProblemError, bad_parameters, from_faults, parameter_fault, problem_body
from service.workers import WorkError

if TYPE_CHECKING:
    from collections.abc import Mapping

log = logging.getLogger(__name__)

_REASONS: Mapping[int, tuple[Reason, str]] = {
    HTTPStatus.NOT_FOUND: (Reason.NOT_FOUND, "There is nothing at this address."),
    HTTPStatus.METHOD_NOT_ALLOWED: (Reason.METHOD_NOT_ALLOWED, "This address does not take that method."),
    HTTPStatus.BAD_REQUEST: (Reason.BAD_PARAMETER, "The request cannot be read."),
}


def to_problem(request: Request[Any, Any, Any], error: Exception) -> Response[bytes]:
    """Exception handler of the application: any error to its document."""
    problem = as_problem(error)
    request_id = request.scope["state"].get(REQUEST_ID_KEY, "")
    if problem.reason is Reason.INTERNAL and not isinstance(error, WorkError):
        log.error("request %s failed", request_id, exc_info=error)
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
