"""The tests' own server: left by a killed run, it is cleared away; in use or just let go of, it is not."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

from service.store.embedded import EmbeddedPostgres
from tests.postgres import LEFT_SECONDS, clear_away, cluster_of, new_data_dir

ROOT = Path(__file__).parents[1]
RUN = """
import os, pathlib, signal, sys
from service.store.embedded import EmbeddedPostgres
EmbeddedPostgres(pathlib.Path(sys.argv[1]), durable=False).start()
os.kill(os.getpid(), signal.SIGKILL)
"""


def is_running(folder: Path) -> bool:
    return cluster_of(EmbeddedPostgres(folder)).is_running()


def test_only_the_server_of_a_run_killed_long_ago_is_cleared_away() -> None:
    left, recent, used = new_data_dir(), new_data_dir(), new_data_dir()
    ends = [
        subprocess.run([sys.executable, "-c", RUN, str(folder)], cwd=ROOT, check=False).returncode for folder in (left, recent)
    ]
    assert [-signal.SIGKILL, -signal.SIGKILL] == ends

    with EmbeddedPostgres(used, durable=False):
        for folder in (left, used):
            os.utime(folder / "users.lock", (0, 0))
        clear_away(LEFT_SECONDS)
        assert [False, True, True] == [left.exists(), is_running(recent), is_running(used)]

    cluster_of(EmbeddedPostgres(recent)).stop()
