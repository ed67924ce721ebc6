"""The source of the service as parsed files, for the guards to read."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterator

ROOT = Path(__file__).parents[2]
# What is no shell is core (the contract "pure-core" of pyproject.toml says the same).
SHELLS = frozenset({"app", "cli", "settings", "web", "batch", "workers", "store", "documents"})

type Function = ast.FunctionDef | ast.AsyncFunctionDef


class Source(NamedTuple):
    """One file of the service: its path from the root of the repository, its text, and the tree of it."""

    path: str
    text: str
    tree: ast.Module

    def functions(self) -> Iterator[Function]:
        """Every function and method of the file, also those inside another."""
        return (node for node in ast.walk(self.tree) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef))


def parsed(path: str, text: str) -> Source:
    """A source of a given text; the guards' own tests plant their faults with it."""
    return Source(path, text, ast.parse(text))


def service_sources() -> tuple[Source, ...]:
    """Every file of the service."""
    paths = sorted(ROOT.joinpath("service").rglob("*.py"))
    return tuple(parsed(path.relative_to(ROOT).as_posix(), path.read_text("utf-8")) for path in paths)


def core_sources() -> tuple[Source, ...]:
    """Every file of the service that is no shell."""
    return tuple(source for source in service_sources() if Path(source.path).parts[1].removesuffix(".py") not in SHELLS)
