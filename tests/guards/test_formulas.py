"""Every public formula of `service/engineering` says where it comes from, what each argument is, and the unit of every number."""

from __future__ import annotations

import ast

from service.units import UNIT_SUFFIXES
from tests.guards.tree import Function, Source, parsed, service_sources

FOLDER = "service/engineering/"


def undocumented(source: Source) -> tuple[str, ...]:
    """What the docstrings of a module's public functions leave out."""
    public = [node for node in source.tree.body if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")]
    return tuple(f"{source.path}: {node.name} lacks {part}" for node in public for part in _missing(node))


def without_unit(source: Source) -> tuple[str, ...]:
    """Numbers that a module's public functions take or yield without their unit in the name."""
    public = [node for node in source.tree.body if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")]
    named = [
        (node.name, name, kind)
        for node in public
        for name, kind in ((node.name, node.returns), *((argument.arg, argument.annotation) for argument in _arguments(node)))
    ]
    return tuple(f"{source.path}: {where}: {name}" for where, name, kind in named if _is_number(kind) and not _has_unit(name))


def _arguments(function: Function) -> list[ast.arg]:
    return [*function.args.posonlyargs, *function.args.args, *function.args.kwonlyargs]


def _is_number(kind: ast.expr | None) -> bool:
    return kind is not None and bool({"float", "int"} & {node.id for node in ast.walk(kind) if isinstance(node, ast.Name)})


def _has_unit(name: str) -> bool:
    return f"_{name}".endswith(UNIT_SUFFIXES)


def _missing(function: Function) -> list[str]:
    doc = ast.get_docstring(function) or ""
    lines = [line.strip() for line in doc.splitlines()]
    wanted = [argument.arg for argument in _arguments(function) if not any(line.startswith(f"{argument.arg}:") for line in lines)]
    sourced = any(line.startswith("Source:") and line.removeprefix("Source:").strip() for line in lines)
    return [*([] if sourced else ["Source:"]), *wanted]


def test_every_formula_has_its_source_and_arguments() -> None:
    formulas = [source for source in service_sources() if source.path.startswith(FOLDER)]

    assert formulas
    assert [] == [fault for source in formulas for fault in undocumented(source)]


def test_every_number_of_a_formula_has_its_unit() -> None:
    formulas = [source for source in service_sources() if source.path.startswith(FOLDER)]

    assert [] == [fault for source in formulas for fault in without_unit(source)]


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


def test_planted_numbers_without_a_unit_are_found() -> None:
    planted = """
def sag(load_n: float, spans: tuple[float, ...], *, count: int) -> float: ...
def sags_mm(load_n: float, *, soft: bool, name: str) -> tuple[float, float]: ...
def lifts(ratio: float) -> bool: ...
def _half(load): ...
"""

    found = without_unit(parsed("service/engineering/planted.py", planted))

    assert ("service/engineering/planted.py: sag: sag", "service/engineering/planted.py: sag: spans") == found
