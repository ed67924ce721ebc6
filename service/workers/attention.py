"""Whether anybody still waits for the job in hand. One job a process, so one flag: a thread sets it, searches read it."""

from __future__ import annotations

import threading
from typing import Final

_GIVEN_UP: Final = threading.Event()


def begin() -> None:
    """A new job comes: somebody waits."""
    _GIVEN_UP.clear()


def give_up() -> None:
    """Nobody waits any more."""
    _GIVEN_UP.set()


def is_given_up() -> bool:
    """Tell whether the job in hand is done for nobody."""
    return _GIVEN_UP.is_set()
