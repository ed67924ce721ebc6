"""What the operations of price books take and answer, for the contract."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from service.web.book_wire import (
    AuditPage,
    BookList,
    BookMade,
    BookRequest,
    DifferenceAnswer,
    Discarded,
    DraftAnswer,
    ImportedAnswer,
    Published,
    PublishRequest,
    RevisionList,
    SampleMoves,
    Withdrawn,
    WithdrawRequest,
)
from service.web.contract_answered import HELD, Answered

if TYPE_CHECKING:
    from collections.abc import Mapping

DEMO: Final = {"price_book": "demo"}
OF_KIND: Final = {**DEMO, "kind": "prices"}
REVISION: Final = "demo:demo:2026-09-01:0123456789abcdef"
ROWS: Final = "The rows: CSV (RFC 4180, UTF-8), or a JSON array of objects with the same names."
PUBLISH: Final = {
    "publish_draft": {
        "operationId": "publish_draft",
        "parameters": {"price_book": "$response.body#/price_book"},
    }
}

BOOK_ANSWERS: Final[Mapping[str, Answered]] = {
    "list_price_books": Answered(description="The price books.", answer=BookList, headers=HELD),
    "create_price_book": Answered(
        description="The price book.", answer=BookMade, body=BookRequest, examples=(("trade", {"price_book": "trade"}),)
    ),
    "list_revisions": Answered(description="The revisions.", answer=RevisionList, headers=HELD, codes=DEMO),
    "export_revision": Answered(
        description=ROWS, answer=str, media_type="text/csv", is_file=True, codes={**OF_KIND, "catalogue_revision": REVISION}
    ),
    "get_draft": Answered(
        description="What the draft holds, and what is wrong with it.", answer=DraftAnswer, codes=DEMO, links=PUBLISH
    ),
    "discard_draft": Answered(description="The draft is gone.", answer=Discarded, codes=DEMO),
    "import_rows": Answered(description="What was taken.", answer=ImportedAnswer, file_body=True, codes=OF_KIND),
    "export_draft": Answered(description=ROWS, answer=str, media_type="text/csv", is_file=True, codes=OF_KIND),
    "get_difference": Answered(description="What would change.", answer=DifferenceAnswer, codes=DEMO),
    "get_sample_quotes": Answered(description="What would move.", answer=SampleMoves, codes=DEMO),
    "publish_draft": Answered(
        description="What was published.",
        answer=Published,
        body=PublishRequest,
        conflicts=True,
        examples=(("next_year", {"effective_from": "2027-01-04", "draft_digest": "0123456789abcdef"}),),
        codes=DEMO,
    ),
    "withdraw_revision": Answered(
        description="What holds no more.",
        answer=Withdrawn,
        body=WithdrawRequest,
        conflicts=True,
        examples=(("one", {"catalogue_revision": REVISION}),),
        codes=DEMO,
    ),
    "list_audit": Answered(description="A page of the audit.", answer=AuditPage, codes=DEMO),
}
