"""Stand-ins below the web: a keeper and keys without a database, and jobs that answer at once or misbehave on demand."""

from __future__ import annotations

import datetime as dt
import time
from typing import TYPE_CHECKING

import msgspec

from service.catalogue import Catalogue, demo_catalogue
from service.errors import Fault, Reason, RequestFaultsError
from service.store import HeldKey, KeeperState, KeyKind, KeyRow, MadeKey, NewKey, NoKeyError, Scope, SpentKeyError
from service.store.access import digest_of, new_key_text, write_key
from service.workers import Registry
from service.workers.kinds import decode_drawing_task, decode_estimate_task, decode_shortlist_task, decode_survey_task

if TYPE_CHECKING:
    from service.workers.kinds import SurveyTask

FIRST_DAY = "2026-09-01"  # from which the demo's prices hold
NAME = "tests.web.doubles:REGISTRY"


class HeldKeeper:
    """Holds what it is given; `None` is a keeper that has never reached the database."""

    def __init__(self, catalogue: Catalogue | None = None, *, stale: bool = False, age_seconds: float = 3.4) -> None:
        """Hold a catalogue."""
        self.catalogues = {} if catalogue is None else {catalogue.revision: catalogue}
        self.newest = catalogue
        self.others: dict[str, Catalogue] = {}  # of other accounts, one each
        self.stale = stale
        self.age_seconds = age_seconds

    def put(self, catalogue: Catalogue) -> None:
        self.catalogues[catalogue.revision] = catalogue
        self.newest = catalogue

    def current(self, account: str) -> Catalogue | None:
        return self.newest if account == "demo" else self.others.get(account)

    def held(self, account: str, revision: str) -> Catalogue | None:
        if account == "demo":
            return self.catalogues.get(revision)
        other = self.others.get(account)
        return other if other is not None and other.revision == revision else None

    def revision_on(self, account: str, price_book: str | None, day: str) -> str | None:
        found = self.current(account)
        if found is None or price_book not in {None, found.price_book} or day < FIRST_DAY:
            return None
        return found.revision

    async def fetch(self, account: str, revision: str) -> Catalogue | None:
        return self.held(account, revision)

    def state(self) -> KeeperState:
        loaded = self.newest is not None
        return KeeperState(
            loaded=loaded, stale=self.stale, age_seconds=self.age_seconds if loaded else None, version_count=1 if loaded else None
        )


class HeldKeys:
    """Keys in memory: ring, desk and uses in one."""

    def __init__(self) -> None:
        """Hold none."""
        self.is_loaded = True
        self.held: dict[str, HeldKey] = {}
        self.rows: dict[str, KeyRow] = {}
        self.used: list[tuple[str, str]] = []

    def find(self, key_id: str) -> HeldKey | None:
        return self.held.get(key_id)

    def note(self, account: str, key_id: str, at: dt.datetime) -> None:
        assert at.tzinfo is dt.UTC
        self.used.append((account, key_id))

    def give(self, account: str, *scopes: Scope, origin: str = "", **changes: object) -> str:
        """A key that opens scopes, or with an origin a browser key; changes make it worse."""
        kind = KeyKind.BROWSER if origin else KeyKind.SERVER
        made = self._make(account, NewKey(kind=kind, label="given", scopes=scopes), None)
        key_id = made.row.key_id
        self.held[key_id] = msgspec.structs.replace(self.held[key_id], origins=frozenset({origin} - {""}), **changes)
        return made.key

    def rename(self, key: str, key_id: str) -> None:
        """Give a key another public part; it opens nothing any more, but can be listed, rotated and revoked."""
        given = key.split("_")[1]
        self.rows[key_id] = msgspec.structs.replace(self.rows.pop(given), key_id=key_id)
        self.held[key_id] = msgspec.structs.replace(self.held.pop(given), key_id=key_id)

    async def create(self, account: str, new: NewKey) -> MadeKey:
        return self._make(account, new, None)

    async def list(self, account: str) -> tuple[KeyRow, ...]:
        return tuple(row for row in reversed(self.rows.values()) if self.held[row.key_id].account == account)

    async def rotate(self, account: str, key_id: str, overlap: dt.timedelta) -> MadeKey:
        row = self._row(account, key_id)
        if row.revoked_at or any(other.rotated_from == key_id for other in self.rows.values()):
            raise SpentKeyError(key_id, "has ended")
        self._end(key_id, expires_at=dt.datetime.now(dt.UTC) + overlap)
        return self._make(account, NewKey(kind=row.kind, label=row.label, scopes=row.scopes), key_id)

    async def revoke(self, account: str, key_id: str) -> KeyRow:
        self._row(account, key_id)
        self._end(key_id, revoked_at=dt.datetime.now(dt.UTC))
        return self.rows[key_id]

    def _row(self, account: str, key_id: str) -> KeyRow:
        if key_id not in self.rows or self.held[key_id].account != account:
            raise NoKeyError(key_id)
        return self.rows[key_id]

    def _end(self, key_id: str, **end: dt.datetime) -> None:
        self.rows[key_id] = msgspec.structs.replace(self.rows[key_id], **end)
        self.held[key_id] = msgspec.structs.replace(self.held[key_id], **end)

    def _make(self, account: str, new: NewKey, rotated_from: str | None) -> MadeKey:
        text = new_key_text(new.kind)
        row = KeyRow(
            key_id=text.key_id,
            kind=new.kind,
            label=new.label,
            scopes=new.scopes,
            created_at=dt.datetime.now(dt.UTC),
            expires_at=new.expires_at,
            revoked_at=None,
            rotated_from=rotated_from,
            last_used_at=None,
        )
        self.rows[text.key_id] = row
        self.held[text.key_id] = HeldKey(
            key_id=text.key_id,
            account=account,
            kind=new.kind,
            scopes=frozenset(new.scopes),
            secret_digest=digest_of(text),
            expires_at=new.expires_at,
            revoked_at=None,
            origins=frozenset(),
            is_suspended=False,
        )
        return MadeKey(row=row, key=write_key(text))


def demo_keeper() -> HeldKeeper:
    return HeldKeeper(demo_catalogue())


def frame(payload: bytes, catalogue: Catalogue) -> bytes:
    """Answers with what it was given; the reference of the survey's terms can ask for worse."""
    task = decode_survey_task(payload)
    _misbehave(task)
    given = {"outcome": "designed", "today": task.today, "revision": catalogue.revision}
    return msgspec.json.encode({**given, "request": task.request})


def drawing(payload: bytes, catalogue: Catalogue) -> bytes:
    task = decode_drawing_task(payload)
    return f'<svg xmlns="http://www.w3.org/2000/svg"><title>{task.request.view} {catalogue.revision}</title></svg>'.encode()


def estimate(payload: bytes, catalogue: Catalogue) -> bytes:
    """The revision that an estimate would be made with."""
    decode_estimate_task(payload)
    return msgspec.json.encode({"outcome": "designed", "origin": {"catalogue_revision": catalogue.revision}})


def shortlist(payload: bytes, catalogue: Catalogue) -> bytes:
    """The revision that a shortlist would be made with."""
    decode_shortlist_task(payload)
    return msgspec.json.encode({"pairs": [], "catalogue_revision": catalogue.revision})


def _misbehave(task: SurveyTask) -> None:
    wish = task.request.terms.reference if task.request.terms else None
    if wish == "refuse":
        raise RequestFaultsError(
            (
                Fault(
                    pointer="/survey/brief/open_ends",
                    reason=Reason.CONTRADICTION,
                    detail="open both",
                    remedy="x",
                    related=("/survey",),
                ),
                Fault(pointer="/survey/brief/appliance/model", reason=Reason.UNKNOWN_MODEL, detail="no AF-999", remedy="AF-302"),
            )
        )
    if wish == "stumble":
        message = "a secret"
        raise KeyError(message)
    if wish == "doze":
        time.sleep(30)


def nothing() -> None:
    """No warming up."""


REGISTRY = Registry(
    jobs={
        "frame": frame,
        "bill": frame,
        "quote": frame,
        "drawing": drawing,
        "estimate": estimate,
        "shortlist": shortlist,
    },
    warm_up=nothing,
)
