"""All addresses together in one application, with the edge around it."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import TYPE_CHECKING, Any, Final, cast

import msgspec
from litestar import Litestar, Request
from litestar.di import Provide

from service.cut_plans import MOST_WORK_COUNT
from service.store import BookDesk
from service.web.appliances import get_appliance, list_appliances
from service.web.bills import create_bill
from service.web.brackets import get_bracket, list_brackets
from service.web.callers import Caller, Gate, Ring, Uses, caller_of
from service.web.catalogue_answers import ask
from service.web.cut_plans import create_cut_plan
from service.web.docs import document, get_contract, get_docs, get_docs_part
from service.web.drafts import discard_draft, export_draft, get_difference, get_draft, get_sample_quotes, import_rows
from service.web.drawings import create_drawing
from service.web.edge import Edge, EdgeLimits
from service.web.estimates import create_estimate
from service.web.failures import to_problem
from service.web.frames import create_frame
from service.web.health import get_live, get_ready
from service.web.keys import Desk, create_key, list_keys, revoke_key, rotate_key
from service.web.materials import get_material, list_materials
from service.web.needs import need_of
from service.web.parameters import only_good_parameters
from service.web.price_books import (
    create_price_book,
    export_revision,
    list_audit,
    list_price_books,
    list_revisions,
    publish_draft,
    withdraw_revision,
)
from service.web.quotes import create_quote
from service.web.sample_moves import Sampler
from service.web.screens import get_screen, list_screens
from service.web.shelf import Keeper, Shelf
from service.web.shortlists import create_shortlist
from service.web.strict import StrictRequest
from service.web.workshop import Workshop
from service.workers import Runner

if TYPE_CHECKING:
    from collections.abc import Mapping

    from service.web.asgi import ASGIApp

HANDLERS: Final = (
    create_frame,
    create_bill,
    create_quote,
    create_drawing,
    create_cut_plan,
    create_estimate,
    create_shortlist,
    list_materials,
    get_material,
    list_appliances,
    get_appliance,
    list_screens,
    get_screen,
    list_brackets,
    get_bracket,
    list_price_books,
    create_price_book,
    list_revisions,
    export_revision,
    get_draft,
    discard_draft,
    import_rows,
    export_draft,
    get_difference,
    get_sample_quotes,
    publish_draft,
    withdraw_revision,
    list_audit,
    list_keys,
    create_key,
    rotate_key,
    revoke_key,
    get_live,
    get_ready,
    get_contract,
    get_docs,
    get_docs_part,
)


class KeyParts(msgspec.Struct, frozen=True, kw_only=True):
    """What the web knows its callers by."""

    ring: Ring
    uses: Uses
    desk: Desk


class WebParts(msgspec.Struct, frozen=True, kw_only=True):
    """What the web needs from the rest of the service."""

    runner: Runner
    keeper: Keeper
    keys: KeyParts
    books: BookDesk
    demo_account: str | None = None  # whose catalogue answers callers that show no key; None: they are refused
    contract: bytes  # the committed OpenAPI document
    body_limit_bytes: int
    limits: EdgeLimits
    cut_work_count: int = MOST_WORK_COUNT  # most work of one cut plan, all its searches together
    lifespan: Callable[[Any], AbstractAsyncContextManager[None]] | None = None  # entered at start, left at the end


def make_application(parts: WebParts) -> Edge:
    """The ASGI application."""
    shelf = Shelf(parts.keeper)
    gate = Gate(parts.keys.ring, parts.keys.uses, parts.demo_account)
    router = make_router(
        guards=[gate.admit, only_good_parameters],
        request_max_body_size=parts.body_limit_bytes,
        dependencies={
            "shelf": _given(shelf),
            "workshop": _given(Workshop(parts.runner, shelf, parts.cut_work_count)),
            "desk": _given(parts.keys.desk),
            "books": _given(parts.books),
            "sampler": _given(Sampler(parts.runner)),
            "contract": _given(document(parts.contract, "application/json")),
        },
        lifespan=[] if parts.lifespan is None else [parts.lifespan],
    )
    return Edge(cast("ASGIApp", router), parts.limits)


def make_router(*, dependencies: Mapping[str, Provide] | None = None, **settings: Any) -> Litestar:  # noqa: ANN401 - Litestar's own
    """All addresses with the strict rules, but with nothing behind them: as such only good for the contract."""
    nothing = {
        name: _given(None) for name in ("shelf", "workshop", "desk", "books", "sampler", "contract")
    }  # Litestar wants a provider for each
    for handler in HANDLERS:
        need_of(handler)  # one that nobody has thought about is not served
    return Litestar(
        route_handlers=HANDLERS,
        request_class=StrictRequest,
        exception_handlers={Exception: to_problem},
        dependencies={"asked": Provide(ask), "caller": Provide(_caller), **(dependencies or nothing)},
        logging_config=None,  # ours (access_log) is set up by the command
        debug=False,  # also when the environment says otherwise: a traceback is nobody's business
        **{"openapi_config": None, **settings},  # the committed document is served, not one made on the spot
    )


async def _caller(request: Request[Any, Any, Any]) -> Caller:
    return caller_of(request)


def _given(part: object) -> Provide:
    return Provide(_always(part), use_cache=False, sync_to_thread=False)


def _always(part: object) -> Callable[[], Any]:
    return lambda: part
