"""One folder of database files through its deaths. Each test that starts a server takes a second or two."""

from __future__ import annotations

import os
import signal
import subprocess
import time
from typing import TYPE_CHECKING

import pytest

from service.store import cluster as cluster_module
from service.store.cluster import Cluster, socket_folder
from service.store.installation import EmbeddedPostgresError, find_runner
from tests.postgres import new_data_dir

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path


def at(folder: Path, *, durable: bool = False) -> Cluster:
    return Cluster(folder, find_runner(folder.parent, folder), durable=durable)


@pytest.fixture(scope="module")
def made() -> Iterator[Cluster]:
    """Files of a server; it runs or not, as the last test left it. Durable, as it is killed."""
    made = at(new_data_dir() / "postgres", durable=True)
    made.make()
    yield made
    made.stop()


def server_id(cluster: Cluster) -> int:
    return int((cluster.folder / "postmaster.pid").read_text().split()[0])


def kill(cluster: Cluster) -> None:
    os.kill(server_id(cluster), signal.SIGKILL)
    deadline = time.monotonic() + 10
    while cluster.is_running() and time.monotonic() < deadline:
        time.sleep(0.01)


def run(cluster: Cluster) -> None:
    if not cluster.is_running():
        cluster.start()


def test_start_and_stop(made: Cluster) -> None:
    assert not made.is_running()
    made.start()

    assert made.is_running()
    assert "1" == made.query("select 1").strip()
    made.stop()
    assert not made.is_running()
    made.stop()


def test_settings_of_a_server_that_is_to_last(made: Cluster) -> None:
    run(made)

    assert ["on", "on", "on", "", "0700"] == [
        made.query(f"show {name}").strip()
        for name in ("fsync", "synchronous_commit", "full_page_writes", "listen_addresses", "unix_socket_permissions")
    ]


def test_texts_sort_alike_everywhere(made: Cluster) -> None:
    run(made)

    assert "UTF8" == made.query("show server_encoding").strip()
    assert (
        "b C.UTF-8"
        == made.query("select format('%s %s', datlocprovider, datlocale) from pg_database where datname = 'postgres'").strip()
    )


def test_a_database_is_made_once(made: Cluster) -> None:
    run(made)
    made.make_database("shop")
    made.make_database("shop")

    assert ["postgres", "shop", "template0", "template1"] == sorted(made.query("select datname from pg_database").split())


def test_what_postgres_refuses_is_told(made: Cluster) -> None:
    run(made)
    with pytest.raises(EmbeddedPostgresError, match="syntax error"):
        made.query("selekt 1")


def test_killed_and_started_again_at_once_it_has_its_data(made: Cluster) -> None:
    run(made)
    made.query("create table if not exists kept (line text)")
    made.query("insert into kept values ('before the kill')")

    kill(made)
    assert not made.is_running()
    made.start()

    assert "before the kill" in made.query("select line from kept")


def test_a_dead_servers_number_that_is_another_process_now(made: Cluster) -> None:
    """As in a container whose process numbers begin anew, with the same user for both."""
    run(made)
    kill(made)
    other = subprocess.Popen(["/bin/sleep", "60"], cwd="/", user=made.runner.user_id, group=made.runner.group_id)
    try:
        file = made.folder / "postmaster.pid"
        file.write_text(f"{other.pid}\n{file.read_text().partition('\n')[2]}")

        assert not made.is_running()
        made.start()
        assert made.is_running()
        assert None is other.poll()
    finally:
        other.kill()
        other.wait()


def test_an_empty_number_file(made: Cluster) -> None:
    """As a full disk or a crash of the machine leaves it."""
    run(made)
    made.stop()
    (made.folder / "postmaster.pid").write_text("")

    assert not made.is_running()
    made.start()
    assert made.is_running()


def test_a_broken_folder_is_told_with_the_log(made: Cluster) -> None:
    run(made)
    made.stop()
    settings = made.folder / "postgresql.conf"
    text = settings.read_text()
    settings.write_text(f"{text}\nplanted = 1\n")
    with pytest.raises(EmbeddedPostgresError, match="unrecognized configuration parameter"):
        made.start()
    settings.write_text(text)

    made.start()
    assert made.is_running()


def test_another_version_is_refused(made: Cluster) -> None:
    version = made.folder / "PG_VERSION"
    text = version.read_text()
    version.write_text("12\n")
    with pytest.raises(EmbeddedPostgresError, match=r"made by PostgreSQL 12, this is \d\d: move the folder away"):
        made.make()
    version.write_text(text)

    made.make()


def test_a_half_made_folder_is_made_anew() -> None:
    folder = new_data_dir() / "postgres"
    part = folder.with_suffix(".part")
    part.mkdir()
    (part / "PG_VERSION").write_text("18\n")  # initdb was killed here

    at(folder).make()

    assert (folder / "global").is_dir()
    assert not part.exists()


def test_files_that_cannot_be_made_are_told(monkeypatch: pytest.MonkeyPatch) -> None:
    folder = new_data_dir() / "postgres"
    monkeypatch.setattr(cluster_module, "OWNER", "pg_planted")  # a name that PostgreSQL keeps for itself

    with pytest.raises(EmbeddedPostgresError, match=r"initdb failed on .*pg_planted"):
        at(folder).make()
    assert not folder.exists()


@pytest.mark.parametrize("name", ['a "b"', "a $HOME", "a `b`", "a\\b", "a\nb"])
def test_names_that_the_starter_misreads_are_refused(name: str) -> None:
    """`pg_ctl` hands them to a shell inside double quotes."""
    folder = new_data_dir() / name
    folder.mkdir()

    with pytest.raises(EmbeddedPostgresError, match="choose a folder without"):
        at(folder / "postgres").make()


def test_a_long_name_and_an_odd_one() -> None:
    """Longer than a socket's name may be, with what a shell could take amiss."""
    folder = new_data_dir()
    for part in ("it's a folder; for me & ü", "x" * 60, "y" * 60, "postgres"):
        folder /= part
    folder.parent.mkdir(parents=True)
    cluster = at(folder)
    cluster.make()
    cluster.start()
    try:
        assert "1" == cluster.query("select 1").strip()
        assert folder != socket_folder(folder)
        assert 0o700 == socket_folder(folder).stat().st_mode & 0o777
    finally:
        cluster.stop()

    socket_folder(folder).rmdir()
    socket_folder(folder).symlink_to("/tmp")  # noqa: S108 - somebody lies in wait
    with pytest.raises(EmbeddedPostgresError, match="somebody else's"):
        cluster.start()
    socket_folder(folder).unlink()
