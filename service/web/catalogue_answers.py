"""How the four lists of the catalogue are answered: filtered, in pages, with an entity tag; and one item by its code."""

from __future__ import annotations

import json
from collections import OrderedDict
from typing import TYPE_CHECKING, Any, Final

import msgspec
from litestar import Request, Response  # noqa: TC002 - Litestar reads the annotations of `ask`
from litestar.di import NamedDependency  # noqa: TC002 - as above

from service.catalogue import ItemIndex, Sought
from service.errors import Reason
from service.web.callers import Caller
from service.web.conditional import answer, entity_tag
from service.web.parameters import IfNoneMatch  # noqa: TC001 - as above
from service.web.problems import ProblemError
from service.web.shelf import Held, Shelf

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from service.catalogue import Catalogue

FORM: Final = "1"  # raised when the form of these answers changes: a held one is then the wrong one
_ENCODER: Final = msgspec.json.Encoder()


_INDEXES: Final[OrderedDict[int, tuple[object, ItemIndex[Any]]]] = OrderedDict()  # by identity; the list is kept beside its index
KEPT_COUNT: Final = 32  # lists of items with their indexes


def index_of[T: msgspec.Struct](items: Mapping[str, T]) -> ItemIndex[T]:
    """The index of a list of a catalogue, made once for all catalogues that share it."""
    known = _INDEXES.get(id(items))
    if known is None or known[0] is not items:
        _INDEXES[id(items)] = known = (items, ItemIndex(items))
        while len(_INDEXES) > KEPT_COUNT:
            _INDEXES.popitem(last=False)
    _INDEXES.move_to_end(id(items))
    return known[1]


class Wish(msgspec.Struct, frozen=True, kw_only=True):
    """Which page of which items is wanted."""

    cursor: str | None
    limit_count: int
    sought: Sought = Sought()


class Asked(msgspec.Struct, frozen=True, kw_only=True):
    """A question about the catalogue, with the catalogue that answers it."""

    held: Held
    caller: Caller
    path: str
    if_none_match: str | None

    @property
    def catalogue(self) -> Catalogue:
        """The catalogue."""
        return self.held.catalogue

    def page[T: msgspec.Struct](
        self, items: Mapping[str, T], wish: Wish, page_type: Callable[..., object]
    ) -> Response[bytes | None]:
        """One page of items, sorted by code.

        Args:
            items: of the catalogue, by code; read only when the client does not hold the page.
            wish: which page of which of them.
            page_type: makes the answer from `items`, `next_cursor` and `catalogue_revision`.
        """

        def make() -> bytes:
            page, next_cursor = index_of(items).page(wish.sought, wish.cursor, wish.limit_count)
            return _ENCODER.encode(page_type(items=tuple(page), next_cursor=next_cursor, catalogue_revision=self._revision))

        return self._answer(make, str(wish.cursor), str(wish.limit_count), repr(wish.sought))

    def item[T](self, items: Mapping[str, T], code: str) -> Response[bytes | None]:
        """One item.

        Raises:
            ProblemError: the catalogue does not hold it.
        """
        if code not in items:
            raise ProblemError(Reason.NOT_FOUND, f"The catalogue holds no {json.dumps(code)} here.")
        return self._answer(lambda: _ENCODER.encode(items[code]))

    @property
    def _revision(self) -> str:
        return self.held.snapshot.revision

    def _answer(self, make: Callable[[], bytes], *wished: str) -> Response[bytes | None]:
        tag = entity_tag(FORM, self.path, self._revision, str(self.caller.sees_trade_prices), *wished)
        return answer(self.if_none_match, tag, make, headers=self.held.headers)


async def ask(
    request: Request[Any, Any, Any],
    shelf: NamedDependency[Shelf],
    caller: NamedDependency[Caller],
    *,
    if_none_match: IfNoneMatch = None,
) -> Asked:
    """Dependency: the question of a request, with the catalogue taken once.

    Raises:
        ProblemError: none is held.
    """
    return Asked(held=shelf.take(caller.account), caller=caller, path=request.url.path, if_none_match=if_none_match)
