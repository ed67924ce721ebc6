"""How the four lists of the catalogue are answered: filtered, in pages, with an entity tag; and one item by its code."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any, Final

import msgspec
from litestar import Request, Response  # noqa: TC002 - Litestar reads the annotations of `ask`
from litestar.di import NamedDependency  # noqa: TC002 - as above

from service.errors import Reason
from service.web.conditional import answer, entity_tag
from service.web.paging import page_of
from service.web.parameters import IfNoneMatch  # noqa: TC001 - as above
from service.web.problems import ProblemError
from service.web.shelf import Held, Shelf

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping

    from service.catalogue import Catalogue

FORM: Final = "1"  # raised when the form of these answers changes: a held one is then the wrong one
_ENCODER: Final = msgspec.json.Encoder()


class Wish(msgspec.Struct, frozen=True, kw_only=True):
    """Which page of which items is wanted."""

    cursor: str | None
    limit_count: int
    filters: tuple[str | int | None, ...] = ()  # as given, for the entity tag


class Asked(msgspec.Struct, frozen=True, kw_only=True):
    """A question about the catalogue, with the catalogue that answers it."""

    held: Held
    path: str
    if_none_match: str | None

    @property
    def catalogue(self) -> Catalogue:
        """The catalogue."""
        return self.held.catalogue

    def page[T](self, items: Iterable[tuple[str, T]], wish: Wish, page_type: Callable[..., object]) -> Response[bytes | None]:
        """One page of items, sorted by code.

        Args:
            items: code and item, already filtered; read only when the client does not hold the page.
            wish: which page.
            page_type: makes the answer from `items`, `next_cursor` and `catalogue_revision`.
        """

        def make() -> bytes:
            sorted_items = sorted(((code.encode(), item) for code, item in items), key=lambda pair: pair[0])
            codes = [code for code, _ in sorted_items]
            page, next_cursor = page_of([item for _, item in sorted_items], codes, wish.cursor, wish.limit_count)
            return _ENCODER.encode(page_type(items=tuple(page), next_cursor=next_cursor, catalogue_revision=self._revision))

        wished = (str(part) for part in (wish.cursor, wish.limit_count, *wish.filters))
        return self._answer(make, *wished)

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
        tag = entity_tag(FORM, self.path, self._revision, *wished)
        return answer(self.if_none_match, tag, make, headers=self.held.headers)


async def ask(request: Request[Any, Any, Any], shelf: NamedDependency[Shelf], *, if_none_match: IfNoneMatch = None) -> Asked:
    """Dependency: the question of a request, with the catalogue taken once.

    Raises:
        ProblemError: none is held.
    """
    return Asked(held=shelf.take(), path=request.url.path, if_none_match=if_none_match)
