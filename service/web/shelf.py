"""Which catalogue a request works with: taken once, so that all of one answer is of one revision, and how old it is."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, Protocol

import msgspec

from service.errors import Fault, Reason, RequestFaultsError
from service.web.problems import ProblemError
from service.workers import Snapshot

if TYPE_CHECKING:
    from service.catalogue import Catalogue
    from service.store import KeeperState

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
    """The snapshots of one account, each made once."""

    def __init__(self, keeper: Keeper, account: str) -> None:
        """Take from a keeper, for one account."""
        self._keeper = keeper
        self._account = account
        self._snapshots: dict[int, Snapshot] = {}  # by identity: the keeper holds one object for each revision

    def take(self, revision: str | None = None) -> Held:
        """The catalogue for one request.

        Args:
            revision: the one that the request names; None: the newest.

        Raises:
            ProblemError: none is held yet.
            RequestFaultsError: the one named is not held any more.
        """
        newest = self._keeper.current(self._account)
        if newest is None:
            headers = {"Retry-After": str(RETRY_AFTER_SECONDS)}
            raise ProblemError(Reason.NO_CATALOGUE, "The catalogue has not been read yet.", headers=headers)
        catalogue = newest if revision is None else self._keeper.held(self._account, revision)
        if catalogue is None:
            raise RequestFaultsError((_gone(str(revision), newest.revision),))
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
                if self._keeper.held(self._account, snapshot.revision) is snapshot.catalogue
            } | {id(catalogue): known}
        return known


def _gone(revision: str, newest: str) -> Fault:
    return Fault(
        pointer="/terms/catalogue_revision",
        reason=Reason.UNKNOWN_MODEL,
        detail=f'the catalogue revision "{revision}" is not held',
        remedy=f'Leave it out, or send the newest: "{newest}".',
    )
