"""Every public formula of `service/engineering` says where it comes from and what each argument is."""

from __future__ import annotations

import ast

from tests.guards.tree import Function, Source, parsed, service_sources

FOLDER = "service/engineering/"


def undocumented(source: Source) -> tuple[str, ...]:
    """What the docstrings of a module's public functions leave out."""
    public = [node for node in source.tree.body if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")]
    return tuple(f"{source.path}: {node.name} lacks {part}" for node in public for part in _missing(node))


def _missing(function: Function) -> list[str]:
    doc = ast.get_docstring(function) or ""
    lines = [line.strip() for line in doc.splitlines()]
    arguments = [*function.args.posonlyargs, *function.args.args, *function.args.kwonlyargs]
    wanted = [argument.arg for argument in arguments if not any(line.startswith(f"{argument.arg}:") for line in lines)]
    sourced = any(line.startswith("Source:") and line.removeprefix("Source:").strip() for line in lines)
    return [*([] if sourced else ["Source:"]), *wanted]


def test_every_formula_has_its_source_and_arguments() -> None:
    formulas = [source for source in service_sources() if source.path.startswith(FOLDER)]

    assert [] == [fault for source in formulas for fault in undocumented(source)]


def test_planted_formulas_are_found() -> None:
    planted = '''
def sag_mm(load_n: float, span_mm: float) -> float:
    """Sag.

    Args:
        load_n: the load.

    Source:
    """
    return _half(load_n * span_mm)


def told_mm(load_n: float) -> float:
    """Told.

    Args:
        load_n: the load.

    Source: elementary beam theory.
    """
    return load_n


def _half(load_n: float) -> float:
    return load_n / 2
'''

    found = undocumented(parsed("service/engineering/planted.py", planted))

    expected = (
        "service/engineering/planted.py: sag_mm lacks Source:",
        "service/engineering/planted.py: sag_mm lacks span_mm",
    )
    assert expected == found
