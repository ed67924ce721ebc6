"""What is refused before the application sees it: Host headers and addresses that a router would read in its own way."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

from service.errors import Reason
from service.web.problems import ProblemError

if TYPE_CHECKING:
    from collections.abc import Collection

    from service.web.asgi import Scope

LONGEST_URI_BYTES: Final = 16 * 1024
# RFC 3986 section 3.2.2: a name, an address, or an address of version 6 in brackets; then the port.
_HOST: Final = re.compile(r"(?P<name>[A-Za-z0-9._-]{1,253}|\[[0-9A-Fa-f:.]{2,45}\])(:[0-9]{1,5})?")
_HEALTH: Final = "/health/"


def refusal(scope: Scope, allowed_hosts: Collection[str]) -> ProblemError | None:
    """Why a request goes no further, if it does not.

    Args:
        scope: the request.
        allowed_hosts: names that are served, in lower case; empty: all. Health checks come by address and are let pass.
    """
    return _host_fault(scope, allowed_hosts) or _path_fault(scope)


def _host_fault(scope: Scope, allowed_hosts: Collection[str]) -> ProblemError | None:
    hosts = [text.decode("latin-1") for name, text in scope["headers"] if name == b"host"]
    if not hosts and scope.get("http_version") == "1.0":
        return None
    if len(hosts) != 1:  # RFC 9112 section 3.2: a server must refuse these
        return ProblemError(Reason.BAD_HOST, f"{len(hosts)} Host headers were sent; exactly one is wanted.")
    match = _HOST.fullmatch(hosts[0])
    if match is None:
        return ProblemError(Reason.BAD_HOST, "The Host header is no host name or address.")
    if allowed_hosts and match["name"].lower() not in allowed_hosts and not scope["path"].startswith(_HEALTH):
        return ProblemError(Reason.BAD_HOST, "That host is not served here.")
    return None


def _path_fault(scope: Scope) -> ProblemError | None:
    path = scope["path"]
    if len(scope.get("raw_path") or path) + len(scope["query_string"]) > LONGEST_URI_BYTES:
        return ProblemError(Reason.URI_TOO_LONG, f"The address is longer than {LONGEST_URI_BYTES} bytes.")
    if "\0" in path or "\ufffd" in path or "//" in path or (path.endswith("/") and path != "/"):
        return ProblemError(Reason.NOT_FOUND, "There is nothing at this address.")
    return None
