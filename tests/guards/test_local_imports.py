"""No import inside a function, except a heavy library on its first use, marked `# heavy: first use`."""

from __future__ import annotations

import ast

from tests.guards.tree import Source, parsed, service_sources

MARK = "# heavy: first use"


def local_imports(source: Source) -> tuple[str, ...]:
    """Imports inside functions that are not marked, and those of our own modules, marked or not."""
    lines = source.text.splitlines()
    inside = {
        node.lineno: node
        for function in source.functions()
        for node in ast.walk(function)
        if isinstance(node, ast.Import | ast.ImportFrom)
    }
    return tuple(
        f"{source.path}:{line} {lines[line - 1].strip()}"
        for line, node in sorted(inside.items())
        if MARK not in lines[line - 1] or _is_ours(node)
    )


def _is_ours(node: ast.Import | ast.ImportFrom) -> bool:
    names = [node.module or ""] if isinstance(node, ast.ImportFrom) else [alias.name for alias in node.names]
    return any(name.split(".")[0] == "service" for name in names)


def test_imports_stand_at_the_top() -> None:
    assert [] == [fault for source in service_sources() for fault in local_imports(source)]


def test_planted_local_imports_are_found() -> None:
    planted = """
import math
if True:
    import json
def draw():
    import ezdxf  # heavy: first use
    import csv
    def inner():
        from service.frame import lay_out  # heavy: first use
"""

    found = local_imports(parsed("service/planted.py", planted))

    expected = (
        "service/planted.py:7 import csv",
        "service/planted.py:9 from service.frame import lay_out  # heavy: first use",
    )
    assert expected == found
