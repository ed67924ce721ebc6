"""Modules of at most 400 lines, function bodies of at most 40, at most 4 positional arguments."""

from __future__ import annotations

import ast

from tests.guards.tree import Function, Source, parsed, service_sources

MODULE_LINES = 400
BODY_LINES = 40
POSITIONAL = 4


def oversized(source: Source) -> tuple[str, ...]:
    """What is too long in a module, or takes too much."""
    length = len(source.text.splitlines())
    faults = [f"{source.path}: {length} lines"] if length > MODULE_LINES else []
    for function in source.functions():
        where = f"{source.path}:{function.lineno} {function.name}"
        if (body := _body_lines(function)) > BODY_LINES:
            faults.append(f"{where}: body of {body} lines")
        if (arguments := _positional(function)) > POSITIONAL:
            faults.append(f"{where}: {arguments} positional arguments")
    return tuple(faults)


def _body_lines(function: Function) -> int:
    body = function.body[1:] if ast.get_docstring(function) is not None else function.body
    return (body[-1].end_lineno or 0) - body[0].lineno + 1 if body else 0


def _positional(function: Function) -> int:
    names = [argument.arg for argument in (*function.args.posonlyargs, *function.args.args)]
    return len(names) - (names[:1] in (["self"], ["cls"]))


def test_modules_and_functions_are_small() -> None:
    assert [] == [fault for source in service_sources() for fault in oversized(source)]


def test_planted_giants_are_found() -> None:
    long_body = "\n".join(["def long():", '    """Doc."""', *["    x = 1"] * 41])
    just_fits = "\n".join(["def fits(self, a, b, c, d, *, e=0):", '    """Doc."""', *["    x = 1"] * 40])
    many = "def many(a, b, c, /, d, e): ..."
    rest = "\n" * (MODULE_LINES - 86)

    found = oversized(parsed("service/planted.py", f"{long_body}\n{just_fits}\n{many}\n{rest}\nx = 1"))

    expected = (
        "service/planted.py: 402 lines",
        "service/planted.py:1 long: body of 41 lines",
        "service/planted.py:86 many: 5 positional arguments",
    )
    assert expected == found
