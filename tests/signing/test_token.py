from __future__ import annotations

import base64
import zlib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.signing import canonical_json
from service.signing.token import MOST_BYTES, Opened, TokenError, make_token, open_token

SECRET, OTHER = bytes(range(32)), bytes(range(1, 33))
WORDS = ("survey", "brief", "kind", "catalogue", "model", "heights", "x_mm", "y_mm", "height_mm")
NOW = 1_800_000_000
REQUEST = canonical_json(Path(__file__).parents[1].joinpath("examples", "a_three_sided", "request.json").read_bytes())


def token_of(document: bytes = REQUEST, *, expires: int = NOW + 60, secret: bytes = SECRET) -> str:
    return make_token(document, account="demo", expires_seconds=expires, secret=secret, words=WORDS)


def opened(token: str, *, now: int = NOW) -> Opened:
    return open_token(token, now_seconds=now, secret=SECRET, words=WORDS)


def test_a_token_gives_back_what_it_was_made_of() -> None:
    assert Opened(account="demo", expires_seconds=NOW + 60, document=REQUEST) == opened(token_of())
    assert token_of() == token_of()


def test_a_full_survey_stays_within_an_address() -> None:
    """At most 1,900 characters for an ordinary survey."""
    assert len(token_of()) <= 1_900


@given(place=st.integers(0, 5_000), letter=st.sampled_from("ABab01-_"))
def test_one_letter_changed_opens_nothing(place: int, letter: str) -> None:
    token = token_of()
    at = place % len(token)
    changed = f"{token[:at]}{letter}{token[at + 1 :]}"
    if base64.urlsafe_b64decode(changed + "==="[: -len(changed) % 4]) == base64.urlsafe_b64decode(
        token + "==="[: -len(token) % 4]
    ):
        return

    with pytest.raises(TokenError):
        opened(changed)


@given(text=st.text(max_size=200))
def test_any_text_is_answered(text: str) -> None:
    with pytest.raises(TokenError):
        opened(text)


def test_a_token_is_over_at_its_end_and_says_so() -> None:
    with pytest.raises(TokenError, match="no longer valid") as caught:
        opened(token_of(), now=NOW + 60)

    assert caught.value.expired


def test_a_token_of_another_service_or_account_is_refused() -> None:
    with pytest.raises(TokenError, match="not made here") as caught:
        opened(token_of(secret=OTHER))

    assert not caught.value.expired


def test_a_document_that_grows_too_large_is_refused() -> None:
    """A bomb can only be sealed by ourselves; it is refused all the same."""
    bomb = b"0" * (MOST_BYTES + 1)

    assert len(zlib.compress(bomb)) < 200
    with pytest.raises(TokenError, match="too large"):
        opened(token_of(bomb))
