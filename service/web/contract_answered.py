"""The form in which the contract is told what an operation takes and answers."""

from __future__ import annotations

from collections.abc import Mapping
from http import HTTPStatus
from typing import Any, Final

import msgspec

JSON: Final = "application/json"
HELD: Final = ("Cache-Control", "ETag")


class Answered(msgspec.Struct, frozen=True, kw_only=True):
    """What an operation takes and answers."""

    description: str  # of the answer
    status: HTTPStatus = HTTPStatus.OK
    conflicts: bool = False  # whether what is there may stand against it
    answer: Any  # struct or union of structs; `str` for text, `dict` for any object
    name: str = ""  # of a union, in the contract
    media_type: str = JSON
    headers: tuple[str, ...] = ()  # besides the number of the request
    body: type[msgspec.Struct] | None = None
    examples: tuple[tuple[str, Any], ...] = ()  # of the body
    code: str = ""  # an example of the code in the address
    codes: Mapping[str, str] = {}  # the same where the address has several
    file_body: bool = False  # the body is a file of rows
    is_file: bool = False  # the answer is a file of rows, as CSV or as JSON
    links: Mapping[str, Any] = {}
