"""The import contracts of pyproject.toml are kept, and planted imports break each of them."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest

from tests.guards.tree import ROOT

if TYPE_CHECKING:
    from pathlib import Path

# Module -> imports planted in it. Every contract is broken by one of them at least.
PLANTED = {
    "survey/planted.py": ("service.catalogue.snapshot", "highspy", "typst", "ezdxf", "sqlalchemy", "litestar", "time"),
    "store/planted.py": ("service.survey.survey",),
}


def lint(folder: Path) -> tuple[int, dict[str, str]]:
    """Exit code, and the verdict on each contract."""
    command = [
        sys.executable,
        "-c",
        "import sys; from importlinter.cli import lint_imports; sys.exit(lint_imports(no_cache=True))",
    ]
    run = subprocess.run(
        command, cwd=folder, env={**os.environ, "PYTHONPATH": str(folder)}, capture_output=True, text=True, check=False
    )
    return run.returncode, dict(re.findall(r"^(.+) (KEPT|BROKEN)\b", run.stdout, flags=re.MULTILINE))


@pytest.fixture
def planted(tmp_path: Path) -> Path:
    """A copy of the service with imports that the contracts forbid."""
    shutil.copytree(ROOT / "service", tmp_path / "service", ignore=shutil.ignore_patterns("__pycache__", "demo", "static"))
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    for name, imports in PLANTED.items():
        file = tmp_path / "service" / name
        file.parent.mkdir(exist_ok=True)
        file.parent.joinpath("__init__.py").touch()
        file.write_text("".join(f"import {module}\n" for module in imports))
    return tmp_path


def test_the_contracts_are_kept() -> None:
    code, verdicts = lint(ROOT)

    assert {"KEPT"} == set(verdicts.values()), verdicts
    assert 0 == code


def test_planted_imports_break_every_contract(planted: Path) -> None:
    code, verdicts = lint(planted)

    assert {"BROKEN"} == set(verdicts.values()), verdicts
    assert 0 != code


def test_a_package_without_a_place_is_refused(planted: Path) -> None:
    for name in PLANTED:
        (planted / "service" / name).unlink()
    (planted / "service" / "annexe.py").touch()

    code, verdicts = lint(planted)

    assert "BROKEN" == verdicts["One way"]
    assert 0 != code
