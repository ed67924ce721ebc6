from __future__ import annotations

import os
import pwd
import shutil
from importlib.util import find_spec
from pathlib import Path

import pytest

from service.store import installation
from service.store.installation import EmbeddedPostgresError, Runner, can_enter, find_runner
from tests.postgres import new_data_dir

ROOT_ONLY = pytest.mark.skipif(os.geteuid() != 0, reason="root's server runs as another user")


def runner(folder: Path) -> Runner:
    return find_runner(folder, folder / "postgres")


def test_programs_run() -> None:
    done = runner(new_data_dir()).run("postgres", "--version")

    assert (0, "postgres (PostgreSQL)") == (done.returncode, done.stdout.rpartition(" ")[0])


def test_a_bad_status_is_told_not_raised() -> None:
    done = runner(new_data_dir()).run("postgres", "--nonsense")

    assert 0 != done.returncode
    assert "--nonsense" in done.stdout


def test_what_is_said_can_go_to_a_file(tmp_path: Path) -> None:
    runner(new_data_dir()).run("postgres", "--version", output=tmp_path / "said")

    assert (tmp_path / "said").read_text().startswith("postgres (PostgreSQL)")


def test_without_the_package_the_way_out_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(installation, "find_spec", lambda _: None)

    with pytest.raises(EmbeddedPostgresError, match="INGLEWRIGHT_DATABASE_URL"):
        runner(new_data_dir())


def test_any_other_user_runs_it_himself(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 1234)

    assert (None, None) == ((found := runner(new_data_dir())).user_id, found.group_id)


@ROOT_ONLY
def test_root_runs_it_as_another() -> None:
    found = runner(new_data_dir())

    assert pwd.getpwnam("inglewright").pw_uid == found.user_id


@ROOT_ONLY
def test_nothing_of_root_is_handed_on() -> None:
    nobody = pwd.getpwnam("nobody")
    other = Runner(programs=Path("/usr/bin"), user_id=nobody.pw_uid, group_id=nobody.pw_gid)

    assert f"{nobody.pw_gid}" == other.run("id", "-G").stdout.strip()
    assert f"{nobody.pw_uid}" == other.run("id", "-u").stdout.strip()
    assert "INGLEWRIGHT" not in other.run("env").stdout


@ROOT_ONLY
def test_files_that_exist_are_run_by_their_owner() -> None:
    folder = new_data_dir()
    (folder / "postgres").mkdir()
    nobody = pwd.getpwnam("nobody")
    os.chown(folder / "postgres", nobody.pw_uid, nobody.pw_gid)

    assert (nobody.pw_uid, nobody.pw_gid) == ((found := runner(folder)).user_id, found.group_id)


@ROOT_ONLY
def test_a_folder_behind_a_closed_door_is_refused_and_not_opened() -> None:
    folder = new_data_dir()
    folder.chmod(0o700)
    inner = folder / "inner"
    inner.mkdir()

    with pytest.raises(EmbeddedPostgresError, match="cannot enter"):
        runner(inner)
    assert 0o700 == folder.stat().st_mode & 0o777


@ROOT_ONLY
def test_no_user_to_be_had(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(installation, "SYSTEM_USER", "inglewright-planted")
    monkeypatch.setenv("PATH", "/nowhere")  # as on a system without useradd

    with pytest.raises(EmbeddedPostgresError, match="start as another user"):
        runner(new_data_dir())


@ROOT_ONLY
def test_programs_that_the_user_cannot_reach_are_copied_once(monkeypatch: pytest.MonkeyPatch) -> None:
    closed = new_data_dir()
    package = closed / installation.PACKAGE
    for name in ("bin", "lib", "share"):
        shutil.copytree(Path(installed_package()) / "pginstall" / name, package / "pginstall" / name)
    for path in (package / "pginstall" / "share").rglob("*"):
        path.chmod(path.stat().st_mode & 0o700)  # as a strict umask leaves them
    closed.chmod(0o700)
    monkeypatch.setattr(installation, "find_spec", lambda _: Spec([str(package)]))
    folder = new_data_dir()

    found = runner(folder)
    again = runner(folder)

    assert found == again
    assert can_enter(found.programs)
    assert folder == found.programs.parents[1]
    assert 0 == found.run("postgres", "--version").returncode
    assert all(path.stat().st_mode & 0o004 for path in found.programs.parent.rglob("*"))
    assert 0o700 == closed.stat().st_mode & 0o777


class Spec:
    """As much of a module's specification as is looked at."""

    def __init__(self, places: list[str]) -> None:
        self.submodule_search_locations = places


def installed_package() -> str:
    spec = find_spec(installation.PACKAGE)
    assert spec is not None
    assert spec.submodule_search_locations
    return spec.submodule_search_locations[0]
