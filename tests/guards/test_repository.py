"""What lies in the repository: the agreed names at the top, no path of one machine, no package registry, no lock file."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

from tests.guards.tree import ROOT

TOP = {"README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "pyproject.toml"} | {
    "service", "migrations", "tests", "openapi", "docker",
}  # fmt: skip
# Spelt in parts, so that this file does not hold what it looks for.
MACHINE_PATH = re.compile(r"(?<![\w.~-])/" + r"(?:work|home|root|Users)/" + r"\w")
REGISTRY = re.compile("|".join(("py" + "pi", "npm" + r"js\.", "python" + "hosted", "jsdel" + "ivr", "unp" + "kg")), re.IGNORECASE)
BINARY = {".png", ".ico", ".woff2", ".pdf", ".glb"}


def tracked(root: Path) -> tuple[str, ...]:
    """Files of the repository, also new ones that are not ignored."""
    command = ("git", "ls-files", "-z", "--cached", "--others", "--exclude-standard")
    listed = subprocess.run(command, cwd=root, capture_output=True, text=True, check=True)
    return tuple(name for name in sorted(listed.stdout.split("\0")) if name and (root / name).is_file())


def foreign_names(names: tuple[str, ...]) -> tuple[str, ...]:
    """Names that have no place at the top, and lock files."""
    top = {Path(name).parts[0] for name in names}
    foreign = sorted(name for name in top if name not in TOP and not name.startswith("."))
    return (*foreign, *(name for name in names if Path(name).name == "uv.lock"))


def foreign_lines(name: str, text: str) -> tuple[str, ...]:
    """Lines that name a path of one machine or a package registry."""
    return tuple(
        f"{name}:{number} {line.strip()[:100]}"
        for number, line in enumerate(text.splitlines(), start=1)
        if MACHINE_PATH.search(line) or REGISTRY.search(line)
    )


@pytest.fixture(scope="module")
def names() -> tuple[str, ...]:
    """Files of this repository."""
    if not (ROOT / ".git").exists():
        pytest.skip("not a git repository: an unpacked archive holds what it holds")
    return tracked(ROOT)


def test_the_top_holds_the_agreed_names(names: tuple[str, ...]) -> None:
    assert () == foreign_names(names)


def test_no_machine_and_no_registry_is_named(names: tuple[str, ...]) -> None:
    texts = [(name, (ROOT / name).read_text("utf-8")) for name in names if Path(name).suffix not in BINARY]

    assert [] == [line for name, text in texts for line in foreign_lines(name, text)]


def test_planted_names_are_found() -> None:
    planted = ("README.md", "notes.txt", "service/app.py", ".ci/run", "scripts/x.sh", "uv.lock")

    assert ("notes.txt", "scripts", "uv.lock", "uv.lock") == foreign_names(planted)


def test_planted_lines_are_found() -> None:
    bad = ("see /" + "home/anna/plan", "from https://" + "py" + "pi.org/simple", 'open("/' + 'work/x")')
    good = ("https://example.org/home/page", "a/work/b", "../work/x", "/v1/quotes")
    text = "\n".join((*good, *bad))

    found = foreign_lines("a.md", text)

    assert tuple(f"a.md:{number} {line}" for number, line in enumerate(bad, start=5)) == found
