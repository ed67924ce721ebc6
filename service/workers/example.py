"""The example request of the contract, the demo and the README: worked example A of the trade notes, invented throughout."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import Any

import msgspec


@cache
def example_bytes() -> bytes:
    """The example as it is sent."""
    return files("service.workers").joinpath("example_survey.json").read_bytes()


def example_survey() -> dict[str, Any]:
    """The example as a value, a new one each time."""
    return msgspec.json.decode(example_bytes(), type=dict[str, Any])
