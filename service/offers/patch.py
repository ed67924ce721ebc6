"""A change of a request as JSON Patch (RFC 6902): `add` operations on members of the body as it was sent.

An `add` on a member of an object sets it, whether it was there or not; parents that are missing are made (our one liberty,
said in the contract), so that a patch reads the same for a long and for a short request.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec

from service.survey import SurveyRequest

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.quote import Operation


def patched(request: SurveyRequest, operations: Iterable[Operation]) -> SurveyRequest:
    """The request with members set.

    Raises:
        msgspec.ValidationError: the value is none that the member takes.
    """
    body: dict[str, Any] = msgspec.to_builtins(request)
    for operation in operations:
        *parents, last = operation.path.strip("/").split("/")
        holder = body
        for name in parents:
            if holder.get(name) is None:
                holder[name] = {}
            holder = holder[name]
        holder[last] = msgspec.to_builtins(operation.value)
    return msgspec.convert(body, SurveyRequest)
