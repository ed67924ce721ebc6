from __future__ import annotations

import pytest

from service.catalogue import DatedRevision, in_force


def revision(name: str, day: str, count: int = 1, withdrawn_from: str | None = None) -> DatedRevision:
    return DatedRevision(catalogue_revision=name, effective_from=day, published_count=count, withdrawn_from=withdrawn_from)


REVISIONS = (
    revision("spring", "2026-03-01"),
    revision("summer", "2026-06-01", withdrawn_from="2026-06-10"),
    revision("never", "2026-07-01", withdrawn_from="2026-07-01"),
    revision("autumn", "2026-09-01", 3, withdrawn_from="2026-09-01"),
    revision("autumn again", "2026-09-01", 4),
)


@pytest.mark.parametrize(
    ("day", "expected"),
    [
        ("2026-02-28", None),
        ("2026-03-01", "spring"),
        ("2026-06-01", "summer"),
        ("2026-06-09", "summer"),  # it held on that day, and so it does for ever
        ("2026-06-10", "spring"),
        ("2026-07-01", "spring"),
        ("2026-09-01", "autumn again"),
        ("9999-12-31", "autumn again"),
    ],
)
def test_the_revision_of_a_day(day: str, expected: str | None) -> None:
    found = in_force(reversed(REVISIONS), day)

    assert expected == (None if found is None else found.catalogue_revision)


@pytest.mark.parametrize("day", ["2026-03-01", "2026-06-09", "2026-09-30"])
def test_what_is_published_later_for_later_days_changes_no_day_before(day: str) -> None:
    more = (*REVISIONS, revision("winter", "2026-10-01", 9))

    assert in_force(REVISIONS, day) == in_force(more, day)
