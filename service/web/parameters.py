"""Parameters of an address: only those that there are, each once, all faults at once; and the types that operations share.

Litestar neither refuses an unknown parameter nor a second one of the same name, and reads bounds only from its own markers.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import TYPE_CHECKING, Annotated, Any, Final
from urllib.parse import parse_qsl

from litestar.params import HeaderParameter, PathParameter, QueryParameter
from msgspec import inspect

from service.web.problems import ProblemFault, bad_parameters, parameter_fault
from service.web.shape_words import fits, shown, unfit

if TYPE_CHECKING:
    from collections.abc import Collection

    from litestar.connection import ASGIConnection
    from litestar.handlers import BaseRouteHandler

CODE_PATTERN: Final = r"^[A-Za-z0-9_-]{1,32}(?!\n)$"  # as `units.Code`
CURSOR_PATTERN: Final = r"^([0-9a-f]{2}){1,32}(?!\n)$"  # a code's bytes in hex: every such text is a position
MOST_NAMED_COUNT: Final = 20

type Shape = inspect.IntType | inspect.StrType

CodeInPath = Annotated[str, PathParameter(pattern=CODE_PATTERN, description="Code in the catalogue.")]
Cursor = Annotated[
    str | None,
    QueryParameter(pattern=CURSOR_PATTERN, description="Where to go on: `next_cursor` of the page before."),
]
Limit = Annotated[int, QueryParameter(ge=1, le=200, description="Most items on the page.")]
GreatestWidth = Annotated[int | None, QueryParameter(ge=0, le=20_000, description="Only what is at most this wide, mm.")]
GreatestHeight = Annotated[int | None, QueryParameter(ge=0, le=20_000, description="Only what is at most this high, mm.")]
GreatestDepth = Annotated[int | None, QueryParameter(ge=0, le=20_000, description="Only what is at most this deep, mm.")]
IfNoneMatch = Annotated[
    str | None,
    HeaderParameter(name="If-None-Match", description="`ETag` of the answer held; 304 if it is still the same."),
]


async def only_good_parameters(connection: ASGIConnection[Any, Any, Any, Any], handler: BaseRouteHandler) -> None:
    """Guard: refuse parameters that the operation has not, that are given twice, or whose value does not fit.

    Raises:
        service.web.problems.ProblemError: naming each.
    """
    shapes = shapes_of(handler)
    query = connection.scope["query_string"].decode("latin-1")
    given = parse_qsl(query, keep_blank_values=True) + list(connection.path_params.items())
    counts = Counter(name for name, _ in given)
    faults = [_unknown(name, shapes) for name in counts if name not in shapes]
    faults += [_repeated(name) for name, count in counts.items() if name in shapes and count > 1]
    faults += [fault for name, text in given if name in shapes and (fault := _unfit(name, text, shapes[name]))]
    if faults:
        raise bad_parameters(tuple(faults[:MOST_NAMED_COUNT]))


def shapes_of(handler: BaseRouteHandler) -> dict[str, Shape]:
    """Name and shape of each parameter of a handler; those with bounds are whole numbers, the others are text.

    The contract is written from these too: Litestar's own export loses a bound of nought where a parameter may be left out.
    """
    fields = handler.parsed_fn_signature.parameters.values()
    markers = [(field.name, field.kwarg_definition) for field in fields]
    return {name: _shape(marker) for name, marker in markers if isinstance(marker, QueryParameter | PathParameter)}


def _shape(marker: QueryParameter | PathParameter) -> Shape:
    if marker.ge is not None:
        return inspect.IntType(ge=int(marker.ge), le=None if marker.le is None else int(marker.le))
    return inspect.StrType(pattern=marker.pattern)


def _unfit(name: str, text: str, shape: Shape) -> ProblemFault | None:
    is_number = isinstance(shape, inspect.IntType) and re.fullmatch(r"-?[0-9]{1,18}", text, flags=re.ASCII)
    value = int(text) if is_number else text
    return None if fits(value, shape) else parameter_fault(name, *unfit(value, shape, ""))


def _unknown(name: str, known: Collection[str]) -> ProblemFault:
    remedy = f"Known are: {', '.join(sorted(known))}." if known else "This operation has none."
    return parameter_fault(name[:80], f"there is no parameter {shown(name)} here", remedy)


def _repeated(name: str) -> ProblemFault:
    return parameter_fault(name, f"{shown(name)} is given more than once", "Give it once.")
