"""One line of JSON for each request, and for all else that is logged. No body, no key, no address of a caller."""

from __future__ import annotations

import datetime as dt
import logging
import re
import time
from typing import TYPE_CHECKING, Final

import msgspec

if TYPE_CHECKING:
    from collections.abc import Mapping

    from service.web.exchange import Exchange

log = logging.getLogger("inglewright.access")

KNOWN_METHODS: Final = frozenset({"GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"})
NO_ROUTE: Final = "(none)"  # one word for all of them: the addresses that strangers try are without end
_ENCODER: Final = msgspec.json.Encoder()
# W3C Trace Context, section 3.2: version, trace-id, parent-id, flags in lower-case hex; neither id all noughts, no version ff.
_TRACE: Final = re.compile(r"(?!ff)[0-9a-f]{2}-(?!0{32})(?P<trace>[0-9a-f]{32})-(?!0{16})[0-9a-f]{16}-[0-9a-f]{2}(-.*)?")


class JsonFormatter(logging.Formatter):
    """A log record as one line of JSON. `extra={"fields": {...}}` adds members."""

    def format(self, record: logging.LogRecord) -> str:
        """The line."""
        when = dt.datetime.fromtimestamp(record.created, dt.UTC).isoformat(timespec="milliseconds")
        line: dict[str, object] = {"ts": when, "level": record.levelname.lower(), "logger": record.name}
        fields: Mapping[str, object] | None = getattr(record, "fields", None)
        line |= fields if fields is not None else {"message": record.getMessage()}
        if record.exc_info:
            line["traceback"] = self.formatException(record.exc_info)
        return _ENCODER.encode(line).decode()


def set_up_logging(level: str) -> None:
    """Send all logs from a level on (debug, info, warning, error) to the standard error stream, as JSON lines."""
    handler = logging.StreamHandler()
    handler.setFormatter(JsonFormatter())
    logging.basicConfig(level=level.upper(), handlers=[handler], force=True)
    logging.getLogger("httpx").setLevel(logging.WARNING)


def log_access(exchange: Exchange, route: str | None) -> None:
    """Write the line of a finished request."""
    if not log.isEnabledFor(logging.INFO):
        return
    fields = {
        "request_id": exchange.request_id,
        "trace_id": _trace_id(exchange),
        "method": exchange.method if exchange.method in KNOWN_METHODS else "other",
        "route": route or NO_ROUTE,
        "status": exchange.status,
        "client_gone": exchange.client_gone,
        "ms": round((time.perf_counter() - exchange.began) * 1000, 2),
    }
    log.info("request", extra={"fields": fields})


def _trace_id(exchange: Exchange) -> str | None:
    given = next((text for name, text in exchange.scope["headers"] if name == b"traceparent"), b"")
    match = _TRACE.fullmatch(given.decode("latin-1"))
    return match["trace"] if match else None
