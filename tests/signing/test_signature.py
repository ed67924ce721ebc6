from __future__ import annotations

import json
import subprocess
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.signing import SignatureState, check_signature, new_key, read_keys, sign

KEYS = read_keys(new_key("2026-11-25"))
OTHER = read_keys(new_key("2026-11-25"))
QUOTE = Path(__file__).parents[1].joinpath("examples", "a_three_sided", "quote.json").read_bytes()


def signed(document: bytes, private_jwk: str | None = None) -> dict[str, object]:
    found = sign(document, private_jwk or KEYS.private_jwk or "")
    return {**json.loads(document), "signature": {"key_id": found.key_id, "jws": found.jws}}


def state(document: object, public_jwks: str = KEYS.public_jwks) -> SignatureState:
    return check_signature(json.dumps(document).encode(), public_jwks)


def leaves(value: object, path: tuple[object, ...] = ()) -> list[tuple[object, ...]]:
    if isinstance(value, dict) and value:
        return [leaf for name, one in value.items() for leaf in leaves(one, (*path, name))]
    if isinstance(value, list) and value:
        return [leaf for place, one in enumerate(value) for leaf in leaves(one, (*path, place))]
    return [path]


LEAVES = leaves({name: value for name, value in json.loads(QUOTE).items() if name != "signature"})


def test_a_true_quote_is_good_however_it_is_written() -> None:
    quote = signed(QUOTE)

    assert SignatureState.GOOD is state(quote)
    assert SignatureState.GOOD is check_signature(json.dumps(quote, indent=3, sort_keys=True).encode(), KEYS.public_jwks)
    assert sign(QUOTE, KEYS.private_jwk or "") == sign(QUOTE, KEYS.private_jwk or "")


@given(place=st.sampled_from(LEAVES), value=st.sampled_from(["x", 0.125, True, None, [], {}]))
def test_a_quote_with_one_value_changed_is_bad(place: tuple[object, ...], value: object) -> None:
    quote: object = json.loads(json.dumps(signed(QUOTE)))
    holder = quote
    for step in place[:-1]:
        holder = holder[step]  # type: ignore[index]  # a path into this very document
    if holder[place[-1]] == value:  # type: ignore[index]  # the same
        return
    holder[place[-1]] = value  # type: ignore[index]  # the same

    assert SignatureState.BAD is state(quote)


@given(place=st.sampled_from(LEAVES))
def test_a_quote_with_one_name_changed_is_bad(place: tuple[object, ...]) -> None:
    quote: object = json.loads(json.dumps(signed(QUOTE)))
    holder = quote
    names = [at for at, step in enumerate(place) if isinstance(step, str)]
    for step in place[: names[-1]]:
        holder = holder[step]  # type: ignore[index]  # a path into this very document
    assert isinstance(holder, dict)
    holder[f"{place[names[-1]]}x"] = holder.pop(place[names[-1]])

    assert SignatureState.BAD is state(quote)


def test_other_keys_and_none() -> None:
    quote = signed(QUOTE)

    assert SignatureState.UNKNOWN_KEY is state(quote, OTHER.public_jwks)
    assert SignatureState.MISSING is state(json.loads(QUOTE) | {"signature": None})
    assert SignatureState.MISSING is state({**quote, "signature": {"jws": "a.b"}})
    assert SignatureState.BAD is state({**quote, "signature": {"jws": "a..b"}})
    forged = signed(QUOTE, OTHER.private_jwk)["signature"]
    assert isinstance(forged, dict)
    head = str(quote["signature"]["jws"]).split(".")[0]  # type: ignore[index]  # made above
    assert SignatureState.BAD is state({**quote, "signature": {"jws": f"{head}..{forged['jws'].split('.')[-1]}"}})


@pytest.mark.parametrize("document", [b"[]", b"1", b"{", b'{"a": 36893488147419103232}'])
def test_what_cannot_be_signed_is_refused(document: bytes) -> None:
    with pytest.raises((ValueError, msgspec.DecodeError)):
        sign(document, KEYS.private_jwk or "")


def test_node_reads_the_signature(tmp_path: Path) -> None:
    """A second implementation: Node's own Ed25519, with canonical bytes made in JavaScript."""
    quote, keys = tmp_path / "quote.json", tmp_path / "keys.json"
    quote.write_text(json.dumps(signed(QUOTE)), "utf-8")
    keys.write_text(KEYS.public_jwks, "utf-8")
    script = Path(__file__).parent / "check_signature.mjs"
    run = subprocess.run(["node", str(script), str(quote), str(keys)], capture_output=True, text=True, check=False)  # noqa: S607 - our own script

    assert "good" == run.stdout.strip(), run.stderr
