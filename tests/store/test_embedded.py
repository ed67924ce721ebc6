"""The embedded PostgreSQL as its users see it: several handles and processes, killed ones too, on one folder."""

from __future__ import annotations

import asyncio
import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from service.catalogue import demo_catalogue
from service.store import load_demo, make_engine, migrate, read_catalogue
from service.store.embedded import EmbeddedPostgres, EmbeddedPostgresError, default_data_dir
from tests.postgres import cluster_of, new_data_dir

if TYPE_CHECKING:
    from collections.abc import Iterator

    from service.catalogue import Catalogue

ROOT = Path(__file__).parents[2]
USER = """
import pathlib, sys, time
from service.store.embedded import EmbeddedPostgres
handle = EmbeddedPostgres(pathlib.Path(sys.argv[1]))
print(handle.start(), flush=True)
time.sleep(60)
"""


@pytest.fixture(scope="module")
def data_dir() -> Iterator[Path]:
    folder = new_data_dir()
    yield folder
    handle = EmbeddedPostgres(folder)
    handle.start()
    handle.stop()


def is_running(folder: Path) -> bool:
    return cluster_of(EmbeddedPostgres(folder)).is_running()


def other_user(folder: Path) -> subprocess.Popen[str]:
    """Another process that has started and goes on using the server."""
    process = subprocess.Popen([sys.executable, "-c", USER, str(folder)], cwd=ROOT, stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    assert process.stdout.readline().startswith("postgresql+asyncpg://")
    return process


def end(process: subprocess.Popen[str], how: signal.Signals) -> None:
    process.send_signal(how)
    process.communicate(timeout=30)


async def filled_and_read(url: str) -> Catalogue:
    engine = make_engine(url)
    await load_demo(engine)
    read = await read_catalogue(engine)
    await engine.dispose()
    return read


def test_a_second_start_has_the_data_of_the_first(data_dir: Path) -> None:
    with EmbeddedPostgres(data_dir) as first:
        migrate(first.url)
        assert demo_catalogue() == asyncio.run(filled_and_read(first.url))
    assert not is_running(data_dir)

    with EmbeddedPostgres(data_dir) as second:
        count = cluster_of(second).query("select count(*) from pg_database where datname = 'inglewright'")
        assert demo_catalogue() == asyncio.run(filled_and_read(second.url))
    assert "1" == count.strip()


def test_start_and_stop_again_are_fine(data_dir: Path) -> None:
    handle = EmbeddedPostgres(data_dir)
    assert handle.start() == handle.start()

    handle.stop()
    assert not is_running(data_dir)
    handle.stop()


def test_the_last_of_two_handles_stops_the_server(data_dir: Path) -> None:
    first, second = EmbeddedPostgres(data_dir), EmbeddedPostgres(data_dir)

    assert first.start() == second.start()
    first.stop()
    assert is_running(data_dir)
    second.stop()
    assert not is_running(data_dir)


def test_another_process_keeps_the_server_until_it_ends(data_dir: Path) -> None:
    process = other_user(data_dir)
    try:
        with EmbeddedPostgres(data_dir):
            pass
        assert is_running(data_dir)
    finally:
        end(process, signal.SIGINT)  # which Python ends in good order, as `atexit` sees

    assert not is_running(data_dir)


def test_the_server_of_a_killed_process_is_taken_over(data_dir: Path) -> None:
    end(other_user(data_dir), signal.SIGKILL)
    assert is_running(data_dir)

    with EmbeddedPostgres(data_dir) as handle:
        assert is_running(data_dir)
        assert handle.url
    assert not is_running(data_dir)


def test_a_killed_server_is_started_again_by_the_same_handle(data_dir: Path) -> None:
    with EmbeddedPostgres(data_dir) as handle:
        os.kill(int((data_dir / "postgres" / "postmaster.pid").read_text().split()[0]), signal.SIGKILL)

        handle.start()

        assert "1" == cluster_of(handle).query("select 1").strip()


def test_two_processes_start_at_once_on_a_new_folder() -> None:
    folder = new_data_dir()
    command = [sys.executable, "-c", USER.replace("time.sleep(60)", "handle.stop()"), str(folder)]
    both = [subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True) for _ in range(2)]
    said = [process.communicate(timeout=60)[0] for process in both]

    assert [0, 0] == [process.returncode for process in both]
    assert said[0] == said[1]
    assert not is_running(folder)


def test_missing_folders_are_made() -> None:
    folder = new_data_dir() / "not" / "there"
    with EmbeddedPostgres(folder):
        assert is_running(folder)

    assert 0o700 == (folder / "postgres").stat().st_mode & 0o777


@pytest.mark.parametrize("what", ["a file", "below a file"])
def test_a_folder_that_cannot_be_is_told_with_the_way_out(tmp_path: Path, what: str) -> None:
    (tmp_path / "file").write_text("x")
    folder = tmp_path / "file" if what == "a file" else tmp_path / "file" / "below"

    with pytest.raises(EmbeddedPostgresError, match=r"cannot be used: .*INGLEWRIGHT_DATA_DIR"):
        EmbeddedPostgres(folder).start()


@pytest.mark.parametrize("name", ["gate.lock", "users.lock", "postgres.log", "postgres/postmaster.pid"])
def test_a_link_in_the_folder_is_not_followed(data_dir: Path, tmp_path: Path, name: str) -> None:
    """Root starts the server in a folder of somebody else, who could have root write or give away another file."""
    victim, place = tmp_path / "victim", data_dir / name
    victim.write_text("kept")
    place.unlink(missing_ok=True)
    place.symlink_to(victim)
    try:
        with pytest.raises(EmbeddedPostgresError):
            EmbeddedPostgres(data_dir).start()
    finally:
        place.unlink()

    assert "kept" == victim.read_text()
    assert os.geteuid() == victim.stat().st_uid


def test_a_failed_start_holds_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    folder = new_data_dir()
    monkeypatch.setattr("service.store.cluster.OWNER", "pg_planted")
    with pytest.raises(EmbeddedPostgresError, match="initdb failed"):
        EmbeddedPostgres(folder).start()
    monkeypatch.undo()

    with EmbeddedPostgres(folder):
        assert is_running(folder)
    assert not is_running(folder)


def test_nothing_is_touched_before_the_start(tmp_path: Path) -> None:
    handle = EmbeddedPostgres(tmp_path / "new")

    assert f"host={str(tmp_path / 'new' / 'postgres').replace('/', '%2F')}" in handle.url
    handle.stop()
    assert [] == list(tmp_path.iterdir())


def test_where_the_data_live(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    assert Path("/var/lib/inglewright") == default_data_dir()

    monkeypatch.setattr(os, "geteuid", lambda: 1000)
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setenv("XDG_DATA_HOME", "/data")
    assert Path("/data/inglewright") == default_data_dir()

    monkeypatch.setenv("XDG_DATA_HOME", "")
    monkeypatch.setenv("HOME", "/somewhere")
    assert Path("/somewhere/.local/share/inglewright") == default_data_dir()

    monkeypatch.setattr(sys, "platform", "darwin")
    assert Path("/somewhere/Library/Application Support/inglewright") == default_data_dir()
