"""Stand-ins below the web: a keeper without a database, and jobs that answer at once or misbehave on demand."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

import msgspec

from service.catalogue import Catalogue, demo_catalogue
from service.errors import Fault, Reason, RequestFaultsError
from service.store import KeeperState
from service.workers import Registry
from service.workers.kinds import decode_drawing_task, decode_survey_task

if TYPE_CHECKING:
    from service.workers.kinds import SurveyTask

NAME = "tests.web.doubles:REGISTRY"


class HeldKeeper:
    """Holds what it is given; `None` is a keeper that has never reached the database."""

    def __init__(self, catalogue: Catalogue | None = None, *, stale: bool = False, age_seconds: float = 3.4) -> None:
        """Hold a catalogue."""
        self.catalogues = {} if catalogue is None else {catalogue.revision: catalogue}
        self.newest = catalogue
        self.stale = stale
        self.age_seconds = age_seconds

    def put(self, catalogue: Catalogue) -> None:
        self.catalogues[catalogue.revision] = catalogue
        self.newest = catalogue

    def current(self, account: str) -> Catalogue | None:
        return self.newest if account == "demo" else None

    def held(self, account: str, revision: str) -> Catalogue | None:
        return self.catalogues.get(revision) if account == "demo" else None

    def state(self) -> KeeperState:
        loaded = self.newest is not None
        return KeeperState(
            loaded=loaded, stale=self.stale, age_seconds=self.age_seconds if loaded else None, version_count=1 if loaded else None
        )


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


REGISTRY = Registry(jobs={"frame": frame, "bill": frame, "quote": frame, "drawing": drawing}, warm_up=nothing)
