"""Alternatives to an unbuildable survey on the wire."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

import msgspec
from msgspec import Meta

from service.units import Money

type Scalar = str | int | float | bool | None


class Op(StrEnum):
    """The one operation that is used."""

    ADD = "add"


class Operation(msgspec.Struct, frozen=True, kw_only=True):
    """One operation of a JSON Patch (RFC 6902) on the body as it was sent; parents that are missing are made."""

    path: Annotated[str, Meta(description="RFC 6901 JSON Pointer into the body as sent.")]
    value: Scalar | dict[str, Scalar]
    op: Op = Op.ADD


class AlternativeAnswer(msgspec.Struct, frozen=True, kw_only=True):
    """A design that works: the change that leads to it, and what it comes to, run through everything."""

    code: str  # the family of the change: `screen`, `platform`, `depth`, ...; several are joined by +
    says: str
    patch: tuple[Operation, ...]
    standing: str
    total: Money  # with tax
    complete: bool  # false: something of its bill has no price
    finished_width_mm: float
    finished_depth_mm: float
    finished_top_mm: float
    screen_diagonal_in: float | None
