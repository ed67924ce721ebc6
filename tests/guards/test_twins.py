"""Every module of the core that holds functions has its twin: service/frame/base.py <-> tests/frame/test_base.py."""

from __future__ import annotations

import re
from pathlib import Path

from tests.guards.tree import ROOT, Source, core_sources, parsed


def twin(path: str) -> str:
    """Path of the test file of a module."""
    _, *folders, name = Path(path).parts
    return Path("tests", *folders, f"test_{name}").as_posix()


def missing_twin(source: Source, root: Path) -> str:
    """What is missing for a module, or an empty text."""
    if all(function.name == "__init__" for function in source.functions()):
        return ""
    if source.path.endswith("__init__.py"):
        return f"{source.path}: a door exports and holds no function"
    path = root / twin(source.path)
    if path.exists() and re.search(r"^ *(async )?def test_", path.read_text("utf-8"), flags=re.MULTILINE):
        return ""
    return f"{source.path}: no test in {twin(source.path)}"


def test_every_module_of_the_core_has_its_twin() -> None:
    missing = [fault for source in core_sources() if (fault := missing_twin(source, ROOT))]

    assert [] == missing


def test_planted_modules_without_a_twin_are_found(tmp_path: Path) -> None:
    (tmp_path / "tests" / "frame").mkdir(parents=True)
    (tmp_path / "tests" / "frame" / "test_good.py").write_text("def test_it() -> None: ...\n")
    (tmp_path / "tests" / "frame" / "test_empty.py").write_text("# nothing yet\n")
    code = "def lay() -> None: ...\n"
    only_made = "class A(Exception):\n    def __init__(self) -> None: ...\n"
    planted = {"good": code, "empty": code, "bare": code, "words": "X = 1\n", "made": only_made, "__init__": code}

    found = [missing_twin(parsed(f"service/frame/{name}.py", text), tmp_path) for name, text in planted.items()]

    expected = [
        "",
        "service/frame/empty.py: no test in tests/frame/test_empty.py",
        "service/frame/bare.py: no test in tests/frame/test_bare.py",
        "",
        "",
        "service/frame/__init__.py: a door exports and holds no function",
    ]
    assert expected == found
