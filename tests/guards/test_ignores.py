"""Whoever switches a rule off says which and why: `# noqa: X - reason`, `# type: ignore[x]  # reason`."""

from __future__ import annotations

import io
import re
import tokenize

from tests.guards.tree import ROOT

# Spelt in parts, so that these lines are no such comments themselves.
SWITCH = re.compile("no" + "qa|type:" + " ?ignore|pragma:" + " no cover")
REASONED = re.compile("no" + r"qa: [A-Z0-9, ]+ - \w|type:" + r" ignore\[[\w, -]+\] +# ?\w|pragma:" + r" no cover - \w")
ENTRY = re.compile(r'^\s+"[A-Z]+[0-9]*",?(?P<rest>.*)$')


def unreasoned(name: str, text: str) -> tuple[str, ...]:
    """Comments of a Python file that switch a rule off without saying why."""
    tokens = tokenize.generate_tokens(io.StringIO(text).readline)
    comments = [token for token in tokens if token.type == tokenize.COMMENT]
    return tuple(
        f"{name}:{token.start[0]} {token.string}"
        for token in comments
        if SWITCH.search(token.string) and not REASONED.search(token.string)
    )


def unreasoned_entries(toml: str) -> tuple[str, ...]:
    """Rules that stand alone on their line in pyproject.toml (each is an ignore) without a comment beside them."""
    entries = [(line, match["rest"]) for line in toml.splitlines() if (match := ENTRY.match(line))]
    return tuple(line.strip() for line, rest in entries if "#" not in rest)


def test_every_ignore_has_its_reason() -> None:
    files = [file for folder in ("service", "tests", "migrations") for file in sorted(ROOT.joinpath(folder).rglob("*.py"))]
    faults = [fault for file in files for fault in unreasoned(file.relative_to(ROOT).as_posix(), file.read_text("utf-8"))]

    assert [] == faults
    assert () == unreasoned_entries(ROOT.joinpath("pyproject.toml").read_text("utf-8"))


def test_planted_ignores_are_found() -> None:
    bare, named, reasoned = "x = 1  # no" + "qa", "x = 1  # no" + "qa: S101", "x = 1  # no" + "qa: S101, S603 - ours"
    typed, told = "y = 1  # type:" + " ignore[misc]", "y = 1  # type:" + " ignore[misc]  # untyped there"
    text = "\n".join((bare, named, reasoned, typed, told, 's = "# no' + 'qa"', ""))

    found = [fault.split(" ")[0] for fault in unreasoned("a.py", text)]

    assert ["a.py:1", "a.py:2", "a.py:4"] == found
    assert ('"E501",',) == unreasoned_entries('ignore = [\n    "E501",\n    "PD", # no pandas\n]\n')
