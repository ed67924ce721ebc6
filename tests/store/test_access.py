from __future__ import annotations

import hashlib
import hmac
import re

import msgspec
import pytest

from service.store.access import (
    ORIGIN_PATTERN,
    PREFIXES,
    HeldKey,
    KeyKind,
    KeyText,
    digest_of,
    is_same,
    new_key_text,
    read_key,
    write_key,
)

KEY = KeyText(kind=KeyKind.SERVER, key_id="0123456789ab", secret="A" * 43)


def held(key: KeyText) -> HeldKey:
    return HeldKey(
        key_id=key.key_id,
        account="north",
        kind=key.kind,
        scopes=frozenset(),
        secret_digest=digest_of(key),
        expires_at=None,
        revoked_at=None,
        origins=frozenset(),
        is_suspended=False,
    )


@pytest.mark.parametrize("kind", KeyKind)
def test_a_key_is_read_as_it_was_written(kind: KeyKind) -> None:
    key = new_key_text(kind)

    assert key == read_key(write_key(key))
    assert write_key(key).startswith(PREFIXES[kind])


def test_no_two_keys_are_alike_and_each_has_256_random_bits() -> None:
    keys = [new_key_text(KeyKind.SERVER) for _ in range(200)]

    assert 200 == len({key.secret for key in keys}) == len({key.key_id for key in keys})
    assert {43} == {len(key.secret) for key in keys}  # 43 characters of 6 bits hold 256


@pytest.mark.parametrize(
    "text",
    [
        "",
        "iws",
        "iwx_0123456789ab_" + "A" * 43,
        "IWS_0123456789ab_" + "A" * 43,
        "iws_0123456789AB_" + "A" * 43,
        "iws_0123456789ab_" + "A" * 42,
        "iws_0123456789ab_" + "A" * 44,
        "iws_0123456789ab_" + "A" * 42 + "=",
        "iws_0123456789ab_" + "A" * 42 + "é",
        "iws_\u0660\u0661\u0662\u0663456789ab_" + "A" * 43,
        " iws_0123456789ab_" + "A" * 43,
        "iws_0123456789ab_" + "A" * 43 + "\n",
    ],
)
def test_what_is_no_key_is_none(text: str) -> None:
    assert None is read_key(text)


def test_the_digest_is_that_of_blake2_and_of_this_key_alone() -> None:
    """RFC 7693: keyed, 32 bytes. Another public part with the same secret has another digest."""
    expected = hashlib.blake2b(b"A" * 43, digest_size=32, key=b"0123456789ab", person=b"inglewright key").digest()

    assert expected == digest_of(KEY)
    assert expected != digest_of(msgspec.structs.replace(KEY, key_id="0123456789ac"))
    assert b"A" * 43 not in digest_of(KEY)


def test_only_the_very_key_is_the_same() -> None:
    others = [
        msgspec.structs.replace(KEY, secret="A" * 42 + "B"),
        msgspec.structs.replace(KEY, kind=KeyKind.BROWSER),
        msgspec.structs.replace(KEY, key_id="0123456789ac"),
    ]

    assert is_same(KEY, held(KEY))
    assert [False] * 3 == [is_same(other, held(KEY)) for other in others]
    assert not is_same(KEY, None)


def test_digests_are_compared_in_constant_time_also_for_a_key_that_is_not_there(monkeypatch: pytest.MonkeyPatch) -> None:
    compared: list[tuple[bytes, bytes]] = []

    def compare(given: bytes, kept: bytes) -> bool:
        compared.append((given, kept))
        return given == kept

    monkeypatch.setattr(hmac, "compare_digest", compare)
    is_same(KEY, held(KEY))
    is_same(KEY, None)

    assert [(digest_of(KEY), digest_of(KEY)), (digest_of(KEY), bytes(32))] == compared


@pytest.mark.parametrize(
    ("origin", "is_good"),
    [
        ("https://shop.example", True),
        ("https://shop.example:8443", True),
        ("http://localhost:5173", True),
        ("http://127.0.0.1", True),
        ("http://shop.example", False),
        ("https://shop.example/", False),
        ("https://SHOP.example", False),
        ("https://shop.example:0", False),
        ("https://*.example", False),
        ("https://", False),
        ("null", False),
        ("*", False),
        ("", False),
        ("https://shop.example\n", False),
    ],
)
def test_origins_are_those_that_a_browser_sends(origin: str, is_good: bool) -> None:
    """RFC 6454 section 6.2: scheme, host and port only, in lower case."""
    assert is_good == bool(re.search(ORIGIN_PATTERN, origin))
