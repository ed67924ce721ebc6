"""What each operation asks of its caller, all of it on one page. An operation that does not stand here is not served."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from service.store import Scope

if TYPE_CHECKING:
    from collections.abc import Mapping

    from litestar.handlers import BaseRouteHandler


class Need(msgspec.Struct, frozen=True, kw_only=True):
    """What a caller must have."""

    scope: Scope  # of a server key
    browser: bool = False  # whether a browser key will do


QUOTE: Final = Need(scope=Scope.QUOTE)
PICTURE: Final = Need(scope=Scope.QUOTE, browser=True)
ESTIMATE: Final = Need(scope=Scope.QUOTE, browser=True)
READ: Final = Need(scope=Scope.CATALOGUE_READ)
READ_WITHOUT_TRADE_PRICES: Final = Need(scope=Scope.CATALOGUE_READ, browser=True)
WRITE: Final = Need(scope=Scope.CATALOGUE_WRITE)
ADMIN: Final = Need(scope=Scope.ADMIN)

NEEDS: Final[Mapping[str, Need]] = {
    "create_frame": QUOTE,
    "create_bill": QUOTE,
    "create_quote": QUOTE,
    "create_drawing": PICTURE,
    "create_cut_plan": QUOTE,
    "create_estimate": ESTIMATE,
    "create_shortlist": ESTIMATE,
    "list_materials": READ,
    "get_material": READ,
    "list_appliances": READ_WITHOUT_TRADE_PRICES,
    "get_appliance": READ_WITHOUT_TRADE_PRICES,
    "list_screens": READ_WITHOUT_TRADE_PRICES,
    "get_screen": READ_WITHOUT_TRADE_PRICES,
    "list_brackets": READ,
    "get_bracket": READ,
    "list_price_books": READ,
    "create_price_book": WRITE,
    "list_revisions": READ,
    "export_revision": READ,
    "get_draft": READ,
    "discard_draft": WRITE,
    "import_rows": WRITE,
    "export_draft": READ,
    "get_difference": READ,
    "get_sample_quotes": READ,
    "publish_draft": WRITE,
    "withdraw_revision": WRITE,
    "list_audit": READ,
    "list_keys": ADMIN,
    "create_key": ADMIN,
    "rotate_key": ADMIN,
    "revoke_key": ADMIN,
}
OPEN_TO_ALL: Final = frozenset({"get_live", "get_ready", "get_contract", "get_docs", "get_docs_part"})


def need_of(handler: BaseRouteHandler) -> Need | None:
    """What a handler asks of its caller; None: nothing.

    Raises:
        KeyError: nobody has said.
    """
    name = handler.fn.__name__
    return None if name in OPEN_TO_ALL else NEEDS[name]
