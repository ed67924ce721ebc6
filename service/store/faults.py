"""Which exceptions mean that the database is away: not our mistake, worth a retry, 503 on the wire."""

from __future__ import annotations

import asyncpg
from sqlalchemy import exc

# PostgreSQL 18, appendix A: statement cancelled by its timeout; lock not given in time; shut down, crashed, starting up;
# database dropped; too many connections; no such database; class 08 connection, class 28 authorization,
# class 53 out of resources.
AWAY_STATES = frozenset({"57014", "55P03", "57P01", "57P02", "57P03", "57P04", "57P05", "3D000"})
AWAY_CLASSES = ("08", "28", "53")


class NoCatalogueError(LookupError):
    """The database answers, but holds no such account, price book, or revision in force."""


class NoShopError(LookupError):
    """There is no such account, or none with keys."""

    def __init__(self, account: str) -> None:
        """Name it."""
        super().__init__(f"no account {account!r}")


class NoKeyError(LookupError):
    """The account has no key of this public part."""

    def __init__(self, key_id: str) -> None:
        """Name it."""
        super().__init__(f"no key {key_id!r}")


class SpentKeyError(ValueError):
    """The key cannot be rotated any more."""

    def __init__(self, key_id: str, why: str) -> None:
        """Name it, and say why."""
        super().__init__(f"the key {key_id!r} {why}")


class TooManyKeysError(ValueError):
    """The account has as many live keys as it may."""

    def __init__(self, account: str) -> None:
        """Name it."""
        super().__init__(f"the account {account!r} has as many live keys as it may have; revoke one")


def is_database_away(error: BaseException) -> bool:
    """Whether an exception of the driver, of SQLAlchemy or of the socket says that the database cannot be reached or used now.

    Faults of our own statements (a broken constraint, a wrong column) are not: those stay errors.
    """
    state = _sqlstate(error)
    if state:
        return state in AWAY_STATES or state.startswith(AWAY_CLASSES)
    if isinstance(error, exc.DBAPIError):
        return _is_lost(error)
    # A refused connection comes unwrapped, as OSError; TimeoutError is one. SQLAlchemy's own is an empty pool.
    return isinstance(error, (OSError, exc.TimeoutError, asyncpg.InterfaceError, asyncpg.InternalClientError))


def _sqlstate(error: BaseException) -> str | None:
    driver_error = error.orig if isinstance(error, exc.DBAPIError) else error
    return getattr(driver_error, "sqlstate", None)


def _is_lost(error: exc.DBAPIError) -> bool:
    if error.connection_invalidated or isinstance(error, (exc.OperationalError, exc.InterfaceError)):
        return True
    return error.orig is not None and isinstance(error.orig.__cause__, (OSError, asyncpg.ConnectionDoesNotExistError))
