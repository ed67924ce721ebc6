"""Entity tags."""

from __future__ import annotations

import pytest

from service.web.conditional import entity_tag, is_held

TAG = entity_tag("a", "b")


@pytest.mark.parametrize(
    ("given", "expected"),
    [
        (None, False),
        ("", False),
        (TAG, True),
        (f"W/{TAG}", True),
        (f'"x", {TAG}', True),
        ("*", True),
        ('"x"', False),
        (TAG.strip('"'), False),
    ],
)
def test_if_none_match(given: str | None, expected: bool) -> None:
    """RFC 9110 section 13.1.2, with the weak comparison of section 8.8.3.2."""
    assert expected is is_held(given, TAG)


def test_tags_differ_with_every_part_and_its_place() -> None:
    tags = {entity_tag("a", "b"), entity_tag("ab"), entity_tag("b", "a"), entity_tag("a", "b", ""), entity_tag("a", "c")}

    assert len(tags) == 5
