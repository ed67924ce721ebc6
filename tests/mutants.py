"""Mutation testing, by `python -m tests.mutants engineering [module ...]`: not part of CI.

One change at a time is made to a module in memory, and the module's twin test runs in a forked process. A change that no test
notices is alive; it is printed with its line. The exit code is 1 when 5 percent of the changes or more are alive.
"""

from __future__ import annotations

import ast
import copy
import importlib.abc
import importlib.util
import os
import signal
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import pytest

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from importlib.machinery import ModuleSpec
    from types import ModuleType

ROOT = Path(__file__).parents[1]
GREATEST_ALIVE = 0.05
SECONDS_EACH = 60
HEAVY = ("hypothesis.strategies", "numpy", "scipy.optimize", "Pynite", "msgspec")  # read once, before the forks
FLAGS = ("-x", "-q", "-p", "no:cacheprovider", "-W", "ignore::pytest.PytestAssertRewriteWarning")

OPERATORS: dict[type[ast.AST], ast.AST] = {
    ast.Add: ast.Sub(),
    ast.Sub: ast.Add(),
    ast.Mult: ast.Div(),
    ast.Div: ast.Mult(),
    ast.FloorDiv: ast.Mult(),
    ast.Pow: ast.Mult(),
    ast.And: ast.Or(),
    ast.Or: ast.And(),
    ast.USub: ast.UAdd(),
}
COMPARISONS: dict[type[ast.cmpop], tuple[ast.cmpop, ...]] = {
    ast.Lt: (ast.LtE(), ast.GtE()),
    ast.LtE: (ast.Lt(), ast.Gt()),
    ast.Gt: (ast.GtE(), ast.LtE()),
    ast.GtE: (ast.Gt(), ast.Lt()),
    ast.Eq: (ast.NotEq(),),
    ast.NotEq: (ast.Eq(),),
    ast.In: (ast.NotIn(),),
    ast.NotIn: (ast.In(),),
    ast.Is: (ast.IsNot(),),
    ast.IsNot: (ast.Is(),),
}
CALLS = {
    "min": "max",
    "any": "all",
    "sin": "cos",
    "tan": "sin",
    "atan": "tan",
    "sqrt": "cbrt",
    "cosh": "cos",
    "degrees": "radians",
}
CALLS |= {there: here for here, there in CALLS.items() if here != "tan"} | {"abs": "float", "hypot": "dist"}


class Mutant(NamedTuple):
    """A changed module, and what the change is."""

    tree: ast.Module
    what: str


def mutants_of(tree: ast.Module) -> Iterator[Mutant]:
    """Every changed form of a module."""
    quiet = _quiet(tree)
    for place, node in enumerate(ast.walk(tree)):
        for number in range(0 if id(node) in quiet else len(_variants(node))):
            changed = copy.deepcopy(tree)
            target = list(ast.walk(changed))[place]
            was = ast.unparse(target)
            name, value = _variants(target)[number]
            setattr(target, name, value)
            if (now := ast.unparse(target)) != was:
                ast.fix_missing_locations(changed)
                yield Mutant(changed, f"{getattr(node, 'lineno', 0)}: {was[:60]} -> {now[:60]}")


def _quiet(tree: ast.Module) -> set[int]:
    """Nodes that do nothing while the module runs: docstrings and annotations."""
    texts = [node.value for node in ast.walk(tree) if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)]
    notes = [
        part
        for node in ast.walk(tree)
        for name in ("annotation", "returns")
        if isinstance(part := getattr(node, name, None), ast.AST)
    ]
    return {id(below) for top in (*texts, *notes) for below in ast.walk(top)}


def _variants(node: ast.AST) -> list[tuple[str, object]]:
    """Attributes of a node, each with a value to put in its place."""
    match node:
        case ast.Compare():
            return [("ops", ops) for ops in _comparisons(node.ops)]
        case ast.Constant():
            return [("value", value) for value in _constants(node.value)]
        case ast.If() | ast.IfExp():
            return [("test", ast.UnaryOp(ast.Not(), node.test))]
        case ast.Name(id=name) | ast.Attribute(attr=name) if name in CALLS:
            return [("id" if isinstance(node, ast.Name) else "attr", CALLS[name])]
        case ast.BinOp() | ast.BoolOp() | ast.UnaryOp() if type(node.op) in OPERATORS:
            return [("op", OPERATORS[type(node.op)])]
        case _:
            return []


def _comparisons(ops: list[ast.cmpop]) -> Iterator[list[ast.cmpop]]:
    for at, op in enumerate(ops):
        for other in COMPARISONS[type(op)]:
            yield [*ops[:at], other, *ops[at + 1 :]]


def _constants(value: object) -> tuple[object, ...]:
    match value:
        case bool():
            return (not value,)
        case int():
            return (value + 1, value - 1)
        case float():
            return (value + 1.0, value * 1.02)
        case str():
            return (f"?{value}",)
        case _:
            return ()


class Planted(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Lets one module be the changed one."""

    def __init__(self, name: str, path: str, tree: ast.Module) -> None:
        """Name and path of the module, and what it shall hold."""
        self.name, self.path, self.tree = name, path, tree

    def find_spec(self, fullname: str, path: Sequence[str] | None, target: ModuleType | None = None) -> ModuleSpec | None:
        """Of that module only."""
        del path, target
        return importlib.util.spec_from_loader(fullname, self, origin=self.path) if fullname == self.name else None

    def exec_module(self, module: ModuleType) -> None:
        """Run the changed tree."""
        exec(compile(self.tree, self.path, "exec"), module.__dict__)  # noqa: S102 - our own module, changed


def is_noticed(module: Path, tree: ast.Module) -> bool:
    """Whether the module's twin test fails when the module holds that tree."""
    child = os.fork()
    if child == 0:
        signal.alarm(SECONDS_EACH)
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, 1)
        os.dup2(nowhere, 2)
        name = ".".join(module.relative_to(ROOT).with_suffix("").parts)
        sys.meta_path.insert(0, Planted(name, str(module), tree))
        code = 1
        try:
            code = int(pytest.main([str(ROOT / "tests" / module.parent.name / f"test_{module.name}"), *FLAGS]))
        finally:
            os._exit(code != 0)
    return os.waitpid(child, 0)[1] != 0


def main(package: str, *names: str) -> int:
    """Try every change of a package's modules."""
    os.environ["PYTEST_DISABLE_PLUGIN_AUTOLOAD"] = "1"
    os.chdir(ROOT)
    for heavy in HEAVY:
        importlib.import_module(heavy)
    tried = alive = 0
    for module in sorted(ROOT.joinpath("service", package).glob("*.py")):
        if module.stem == "__init__" or (names and module.stem not in names):
            continue
        tree = ast.parse(module.read_text("utf-8"))
        if is_noticed(module, tree) or not is_noticed(module, ast.parse("")):
            sys.stdout.write(f"{module.stem}: its own test fails, or passes without it\n")
            return 1
        mutants = list(mutants_of(tree))
        survivors = [mutant.what for mutant in mutants if not is_noticed(module, mutant.tree)]
        sys.stdout.write(
            "".join((f"{module.stem}: {len(survivors)} of {len(mutants)} alive\n", *(f"  {what}\n" for what in survivors)))
        )
        sys.stdout.flush()
        tried, alive = tried + len(mutants), alive + len(survivors)
    sys.stdout.write(f"{alive} of {tried} alive\n")
    return int(alive >= GREATEST_ALIVE * tried)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
