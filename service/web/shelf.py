"""Which catalogue a request works with: taken once, so that all of one answer is of one revision, and how old it is."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING, Final, Protocol

import msgspec

from service.errors import Fault, Reason, RequestFaultsError
from service.web.problems import ProblemError
from service.workers import Snapshot

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.store import KeeperState
    from service.survey import Terms

REVISION_HEADER: Final = "Catalogue-Revision"
AGE_HEADER: Final = "Catalogue-Age-Seconds"
RETRY_AFTER_SECONDS: Final = 2


class Keeper(Protocol):
    """Where catalogues come from: `service.store.CatalogueKeeper`, or a double in a test."""

    def current(self, account: str) -> Catalogue | None:
        """The newest catalogue of an account."""
        ...

    def held(self, account: str, revision: str) -> Catalogue | None:
        """One of the last few, by revision."""
        ...

    def revision_on(self, account: str, price_book: str | None, day: str) -> str | None:
        """Name of the revision of a book (None: the default one) that holds on a day."""
        ...

    async def fetch(self, account: str, revision: str) -> Catalogue | None:
        """A catalogue by its revision, held or not."""
        ...

    def state(self) -> KeeperState:
        """How far it can be relied on to be the newest."""
        ...


class Held(msgspec.Struct, frozen=True, kw_only=True):
    """A catalogue taken for one request."""

    snapshot: Snapshot
    age_seconds: int  # since the database last confirmed that nothing newer is in force

    @property
    def catalogue(self) -> Catalogue:
        """The catalogue."""
        return self.snapshot.catalogue

    @property
    def headers(self) -> dict[str, str]:
        """What an answer says about the catalogue that it was made with."""
        return {REVISION_HEADER: self.snapshot.revision, AGE_HEADER: str(self.age_seconds)}


class Shelf:
    """The snapshots of all accounts, each made once."""

    def __init__(self, keeper: Keeper) -> None:
        """Take from a keeper."""
        self._keeper = keeper
        self._snapshots: dict[int, Snapshot] = {}  # by identity: the keeper holds one object for each revision

    def take(self, account: str) -> Held:
        """The catalogue of today for one request of an account.

        Raises:
            ProblemError: none is held yet.
        """
        newest = self._keeper.current(account)
        if newest is None:
            headers = {"Retry-After": str(RETRY_AFTER_SECONDS)}
            detail = "The shop has no prices in force." if self.state().loaded else "The catalogue has not been read yet."
            raise ProblemError(Reason.NO_CATALOGUE, detail, headers=headers)
        return self._held(newest)

    async def take_for(self, account: str, terms: Terms | None) -> Held:
        """The catalogue for a request with terms: the revision that they name, else the one that holds on their day.

        Raises:
            ProblemError: none is held yet.
            RequestFaultsError: there is no such revision, or none holds on that day.
            OSError, sqlalchemy.exc.SQLAlchemyError: it is not held, and the database is away.
        """
        newest = self.take(account)
        if terms is None:
            return newest
        name = terms.catalogue_revision or self._name_of(account, terms, newest.catalogue)
        catalogue = self._keeper.held(account, name) or await self._keeper.fetch(account, name)
        if catalogue is None:
            raise RequestFaultsError((_gone(name, newest.catalogue.revision),))
        return self._held(catalogue)

    async def in_force(self, account: str, price_book: str, day: str) -> Catalogue | None:
        """What holds on a day of one price book; None: nothing does."""
        name = self._keeper.revision_on(account, price_book, day)
        return None if name is None else self._keeper.held(account, name) or await self._keeper.fetch(account, name)

    async def revision_of(self, account: str, price_book: str, name: str) -> Catalogue:
        """A published revision of a book.

        Raises:
            ProblemError: the book has no such revision.
        """
        found = self._keeper.held(account, name) or await self._keeper.fetch(account, name)
        if found is None or found.price_book != price_book:
            raise ProblemError(Reason.NOT_FOUND, "The price book has no published revision of that name.")
        return found

    def _name_of(self, account: str, terms: Terms, newest: Catalogue) -> str:
        """The revision that holds on the day of the terms; the newest where they say neither day nor another book."""
        if terms.date is None and terms.price_book in {None, newest.price_book}:
            return newest.revision
        day = terms.date or dt.datetime.now(dt.UTC).date().isoformat()
        found = self._keeper.revision_on(account, terms.price_book, day)
        if found is not None:
            return found
        if terms.price_book not in {None, newest.price_book}:
            return newest.revision  # the brief says that there is no such book
        raise RequestFaultsError((_before_all(day),))

    def _held(self, catalogue: Catalogue) -> Held:
        return Held(snapshot=self._snapshot(catalogue), age_seconds=round(self._keeper.state().age_seconds or 0))

    def state(self) -> KeeperState:
        """State of the keeper."""
        return self._keeper.state()

    def _snapshot(self, catalogue: Catalogue) -> Snapshot:
        known = self._snapshots.get(id(catalogue))
        if known is None or known.catalogue is not catalogue:
            known = Snapshot(catalogue)
            self._snapshots = {
                place: snapshot
                for place, snapshot in self._snapshots.items()
                if self._keeper.held(snapshot.account, snapshot.revision) is snapshot.catalogue
            } | {id(catalogue): known}
        return known


def _before_all(day: str) -> Fault:
    return Fault(
        pointer="/terms/date",
        reason=Reason.UNKNOWN_MODEL,
        detail=f"no prices of the price book hold on {day}",
        remedy="Send a day from its first revision on, or leave it out for today.",
    )


def _gone(revision: str, newest: str) -> Fault:
    return Fault(
        pointer="/terms/catalogue_revision",
        reason=Reason.UNKNOWN_MODEL,
        detail=f'the catalogue revision "{revision}" is not held',
        remedy=f'Leave it out, or send the newest: "{newest}".',
    )
