"""A stage is entered by its door: another package imports `service.frame`, never `service.frame.member`."""

from __future__ import annotations

import ast
from pathlib import Path

from tests.guards.tree import Source, parsed, service_sources

# The survey's modules are the vocabulary of the request; its door names the whole of it only.
OPEN = {"survey"}
# They wire the parts together.
WIRING = {"app.py", "cli.py"}


def side_entries(source: Source) -> tuple[str, ...]:
    """Imports of a module inside another package."""
    own = Path(source.path).parts[1]
    if own in WIRING:
        return ()
    imports = [node for node in ast.walk(source.tree) if isinstance(node, ast.Import | ast.ImportFrom)]
    imported = [(node.lineno, name) for node in imports for name in _names(node)]
    return tuple(f"{source.path}:{line} {name}" for line, name in imported if _is_inside(name, own))


def _names(node: ast.Import | ast.ImportFrom) -> list[str]:
    return [node.module or ""] if isinstance(node, ast.ImportFrom) else [alias.name for alias in node.names]


def _is_inside(name: str, own: str) -> bool:
    match name.split("."):
        case ["service", package, _, *_]:
            return package != own and package not in OPEN
        case _:
            return False


def test_stages_are_entered_by_their_doors() -> None:
    assert [] == [fault for source in service_sources() for fault in side_entries(source)]


def test_planted_side_entries_are_found() -> None:
    planted = """
from service.frame import lay_out
from service.frame.member import Box
from service.survey.wall import Wall
from service.checks.result import Check
import service.cutting.plan
import service.units
"""

    found = side_entries(parsed("service/checks/planted.py", planted))

    expected = (
        "service/checks/planted.py:3 service.frame.member",
        "service/checks/planted.py:6 service.cutting.plan",
    )
    assert expected == found
    assert () == side_entries(parsed("service/app.py", planted))
