"""The files and the server process of one embedded PostgreSQL: made whole or not at all, started again after any death."""

from __future__ import annotations

import hashlib
import os
import shlex
import shutil
import stat
import subprocess
import tempfile
import time
from pathlib import Path
from typing import Final

from service.store.installation import EmbeddedPostgresError, Runner

MISREAD: Final = frozenset('"$`\\\n')  # by `pg_ctl`, which hands names to a shell inside double quotes
OWNER_ONLY: Final = 0o700
OWNER: Final = "inglewright"
PORT: Final = 5432  # only part of the socket's name
SOCKET_PATH_LENGTH_COUNT: Final = 100  # of bytes; Linux takes 107, macOS 103
RETRY_SECONDS: Final = 20.0
PAUSE_SECONDS: Final = 0.2
START_SECONDS: Final = 60
STOP_SECONDS: Final = 30
SETTINGS: Final = {"listen_addresses": "", "port": str(PORT), "unix_socket_permissions": "0700", "max_connections": "60"}
# For tests: a crash of the machine may lose everything.
NOT_DURABLE: Final = {"fsync": "off", "synchronous_commit": "off", "full_page_writes": "off", "autovacuum": "off"}
# What the server says while the processes of a killed one still end.
STILL_ENDING: Final = ("shared memory", "lock file", "another postmaster")


class Cluster:
    """One folder of database files, with its server. The caller sees to it that nobody else works on it at once."""

    def __init__(self, folder: Path, runner: Runner, *, durable: bool) -> None:
        """Nothing is touched yet; the server's log is beside the folder."""
        self.folder = folder
        self.log = folder.with_name("postgres.log")
        self.runner = runner
        self.durable = durable

    def make(self) -> None:
        """Make the files unless they exist; a half-made folder is never taken for a whole one.

        Raises:
            EmbeddedPostgresError: they are another version's, or cannot be made.
        """
        if MISREAD & set(str(self.folder)):
            message = f'{self.folder}: choose a folder without any of the characters " $ ` \\ and line breaks in its name'
            raise EmbeddedPostgresError(message)
        if self.folder.exists():
            self._refuse_other_version()
            return
        part = self.folder.with_suffix(".part")
        shutil.rmtree(part, ignore_errors=True)
        part.mkdir(mode=OWNER_ONLY)
        self.runner.give(part)
        # The built-in collation sorts alike on every machine.
        choices = ["--encoding=UTF8", "--locale=C", "--locale-provider=builtin", "--builtin-locale=C.UTF-8", "--no-instructions"]
        choices += [] if self.durable else ["--no-sync"]
        self._must("initdb", "-D", str(part), "-U", OWNER, "--auth=trust", *choices)
        part.rename(self.folder)

    def is_running(self) -> bool:
        """Whether the server's process lives."""
        file = self.folder / "postmaster.pid"
        number = file.read_text().partition("\n")[0].strip() if file.exists() else ""
        # The system may know the number of a server long dead: as somebody else's, or as one that nobody has buried.
        return number.isdigit() and str(self.folder) in _command_of(int(number))

    def start(self) -> None:
        """Start a server that is not running, and wait until it answers; retried while the processes of a killed one still end.

        Raises:
            EmbeddedPostgresError: with the end of the server's log.
        """
        self._forget_dead_server()
        self._make_socket_folder()
        deadline = time.monotonic() + RETRY_SECONDS
        while True:
            length_count = self.log.stat().st_size if self.log.exists() else 0
            if self._try_start():
                return
            said = self.log.read_bytes()[length_count:].decode(errors="replace")
            if not any(words in said for words in STILL_ENDING) or time.monotonic() > deadline:
                message = f"PostgreSQL does not start on {self.folder}; its log {self.log} ends:\n{said[-2000:]}"
                raise EmbeddedPostgresError(message)
            time.sleep(PAUSE_SECONDS)

    def stop(self) -> None:
        """Stop the server: in good order, else at once."""
        for how in ("fast", "immediate"):
            if not self.is_running():
                return
            self.runner.run("pg_ctl", "stop", "-D", str(self.folder), "-m", how, "-w", "-t", str(STOP_SECONDS))

    def make_database(self, name: str) -> None:
        """Wait until the server answers, then make an empty database unless it exists.

        Raises:
            EmbeddedPostgresError: the server does not answer, or refuses.
        """
        deadline = time.monotonic() + RETRY_SECONDS
        while self.runner.run("pg_isready", *self._place()).returncode != 0 and time.monotonic() < deadline:
            time.sleep(PAUSE_SECONDS)
        if name not in self.query("select datname from pg_database").split():
            self.query(f'create database "{name}"')

    def make_user(self, name: str) -> None:
        """Make a user who may log in and nothing else, unless there is one.

        Raises:
            EmbeddedPostgresError: as `query`.
        """
        if name not in self.query("select rolname from pg_roles where rolcanlogin").split():
            is_known = name in self.query("select rolname from pg_roles").split()
            self.query(f'{"alter" if is_known else "create"} role "{name}" login')

    def query(self, statement: str) -> str:
        """Run one statement as the owner in the maintenance database.

        Raises:
            EmbeddedPostgresError: with what PostgreSQL said.
        """
        return self._must("psql", "-X", "-A", "-t", "-q", "-v", "ON_ERROR_STOP=1", *self._place(), "-c", statement)

    def _place(self) -> list[str]:
        return ["-h", str(socket_folder(self.folder)), "-p", str(PORT), "-U", OWNER, "-d", "postgres"]

    def _try_start(self) -> bool:
        settings = SETTINGS | ({} if self.durable else NOT_DURABLE) | {"unix_socket_directories": str(socket_folder(self.folder))}
        options = " ".join(shlex.quote(f"--{name}={value}") for name, value in settings.items())
        how = ["-D", str(self.folder), "-l", str(self.log), "-w", "-t", str(START_SECONDS), "-o", options]
        return self.runner.run("pg_ctl", "start", *how, output=self.log).returncode == 0

    def _must(self, program: str, *arguments: str) -> str:
        done = self.runner.run(program, *arguments)
        if done.returncode != 0:
            message = f"{program} failed on {self.folder}: {done.stdout.strip()[-2000:]}"
            raise EmbeddedPostgresError(message)
        return done.stdout

    def _refuse_other_version(self) -> None:
        ours = self.runner.run("postgres", "--version").stdout.split()[-1].partition(".")[0]
        theirs = (self.folder / "PG_VERSION").read_text().strip()
        if theirs != ours:
            remedy = "move the folder away, or upgrade it by pg_upgrade"
            message = f"{self.folder} was made by PostgreSQL {theirs}, this is {ours}: {remedy}"
            raise EmbeddedPostgresError(message)

    def _forget_dead_server(self) -> None:
        """Write our own process number in the place of a dead server's, which by now may be somebody else's.

        PostgreSQL passes over the number of the process that starts it, and still finds the shared memory of the dead
        server by the other lines of the file. In a container, where numbers begin anew, this is common.
        """
        file = self.folder / "postmaster.pid"
        if file.exists():
            rest = file.read_text().partition("\n")[2]
            with os.fdopen(os.open(file, os.O_WRONLY | os.O_TRUNC | os.O_NOFOLLOW), "w", encoding="utf-8") as sink:
                sink.write(f"{os.getpid()}\n{rest}")

    def _make_socket_folder(self) -> None:
        folder = socket_folder(self.folder)
        if folder == self.folder:
            return
        try:
            folder.mkdir(mode=OWNER_ONLY)
            self.runner.give(folder)
        except FileExistsError:
            found = folder.lstat()
            if (
                not stat.S_ISDIR(found.st_mode)
                or found.st_uid != self.folder.stat().st_uid
                or stat.S_IMODE(found.st_mode) != OWNER_ONLY
            ):
                message = f"{folder} is somebody else's; remove it, or choose a shorter INGLEWRIGHT_DATA_DIR"
                raise EmbeddedPostgresError(message) from None


def socket_folder(cluster: Path) -> Path:
    """Folder of the socket: with the data, or in the system's temporary folder where its name would be too long."""
    if len(os.fsencode(cluster / f".s.PGSQL.{PORT}")) <= SOCKET_PATH_LENGTH_COUNT:
        return cluster
    digest = hashlib.sha256(os.fsencode(cluster)).hexdigest()[:16]
    return Path(tempfile.gettempdir()) / f"inglewright-{digest}"


def _command_of(process_id: int) -> str:
    """The command line of a living process, or an empty text."""
    try:
        if Path("/proc/self").exists():
            return Path(f"/proc/{process_id}/cmdline").read_text(errors="replace").replace("\0", " ")
        return subprocess.run(["ps", "-p", str(process_id), "-o", "args="], capture_output=True, text=True, check=False).stdout  # noqa: S603, S607 - a fixed command
    except OSError:
        return ""
