"""A PostgreSQL of our own in a folder: started at need, shared by the processes that use the folder, stopped by the last.

It listens on a Unix socket in a folder that only its user (and root) can enter, so it asks for no password. Not for Windows:
there, set INGLEWRIGHT_DATABASE_URL.
"""

from __future__ import annotations

import atexit
import fcntl
import os
import sys
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Final, Self

from sqlalchemy.engine import URL

from service.store.acting import SERVICE_ROLE
from service.store.cluster import OWNER, PORT, Cluster, socket_folder
from service.store.engine import DRIVER
from service.store.installation import EmbeddedPostgresError, find_runner

if TYPE_CHECKING:
    from collections.abc import Iterator
    from types import TracebackType

__all__ = ["EmbeddedPostgres", "EmbeddedPostgresError", "default_data_dir"]

DATABASE: Final = "inglewright"


def default_data_dir() -> Path:
    """Where the embedded database lives unless a setting says otherwise: the system's folder for root, else the user's."""
    if os.geteuid() == 0:
        return Path("/var/lib/inglewright")
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Application Support" / "inglewright"
    return Path(os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share") / "inglewright"


class EmbeddedPostgres:
    """A handle on the PostgreSQL of a data folder; several handles, also of several processes, share one server."""

    def __init__(self, data_dir: Path, *, durable: bool = True) -> None:
        """Nothing is touched before `start`.

        Args:
            data_dir: the folder, made if missing.
            durable: False trades safety against a crash of the machine for speed; for tests.
        """
        self.data_dir = data_dir.expanduser().absolute()
        self.durable = durable
        self._share: int | None = None  # the open file whose shared lock says that we use the server

    @property
    def url(self) -> str:
        """Address of the database for its owner, as the driver takes it."""
        return self.url_of(DATABASE)

    @property
    def service_url(self) -> str:
        """Address of the database for the service, whose user cannot change the schema nor pass row-level security."""
        return self.url_of(DATABASE, SERVICE_ROLE)

    def url_of(self, database: str, user: str = OWNER) -> str:
        """Address of a database of this server."""
        query = {"host": str(socket_folder(self._folder)), "port": str(PORT)}
        return URL.create(DRIVER, username=user, database=database, query=query).render_as_string()

    def start(self) -> str:
        """Have a running server with our database, and give its address. Blocks for up to some seconds; again is fine.

        A server left by a killed process is taken over; one that was killed itself is started again.

        Raises:
            EmbeddedPostgresError: with what is in the way and what to do.
        """
        atexit.register(self.stop)
        try:
            self._start()
        except (OSError, EmbeddedPostgresError) as error:
            self._let_go()
            if isinstance(error, EmbeddedPostgresError):
                raise
            message = f"the folder {self.data_dir} cannot be used: {error}; choose another with INGLEWRIGHT_DATA_DIR"
            raise EmbeddedPostgresError(message) from error
        return self.url

    def stop(self) -> None:
        """Let go of the server; the last one to do so stops it. Again is fine."""
        atexit.unregister(self.stop)
        if self._share is None:
            return
        with self._gate():
            is_last = self._is_alone(self._share)
            self._let_go()
            if is_last:
                self._cluster().stop()

    def __enter__(self) -> Self:
        """Start."""
        self.start()
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        """Stop."""
        self.stop()

    @property
    def _folder(self) -> Path:
        return self.data_dir / "postgres"

    def _cluster(self) -> Cluster:
        return Cluster(self._folder, find_runner(self.data_dir, self._folder), durable=self.durable)

    def _start(self) -> None:
        if not self.data_dir.exists():
            self.data_dir.mkdir(parents=True)
            self.data_dir.chmod(0o755)  # PostgreSQL's own folder in it is closed
        with self._gate():
            if self._share is None:
                self._share = self._open("users.lock")
                fcntl.flock(self._share, fcntl.LOCK_SH)
            cluster = self._cluster()
            cluster.make()
            if not cluster.is_running():
                cluster.start()
            cluster.make_database(DATABASE)
            cluster.make_user(SERVICE_ROLE)

    @contextmanager
    def _gate(self) -> Iterator[None]:
        """One process at a time starts or stops; the system opens the gate again if that one is killed."""
        gate = self._open("gate.lock")
        try:
            fcntl.flock(gate, fcntl.LOCK_EX)
            yield
        finally:
            os.close(gate)

    def _open(self, name: str) -> int:
        return os.open(self.data_dir / name, os.O_RDWR | os.O_CREAT | os.O_NOFOLLOW, 0o600)

    def _let_go(self) -> None:
        if self._share is not None:
            os.close(self._share)
            self._share = None

    @staticmethod
    def _is_alone(share: int) -> bool:
        try:
            fcntl.flock(share, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True
