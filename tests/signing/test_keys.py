from __future__ import annotations

import json

import pytest

from service.signing import KeyFileError, new_key, read_keys


def test_a_new_key_signs_and_its_public_half_is_published() -> None:
    keys = read_keys(new_key("2026-11-25"))
    published = json.loads(keys.public_jwks)["keys"]

    assert keys.private_jwk
    assert [{"kty", "crv", "x", "kid", "use", "alg"}] == [set(key) for key in published]
    assert '"d"' not in keys.public_jwks
    assert "SigningKeys(signs=True)" == repr(keys)


def test_the_first_private_key_signs_and_old_ones_stay_published() -> None:
    new, old = (json.loads(new_key("2026-11-25"))["keys"][0] for _each in range(2))
    del old["d"]
    keys = read_keys(json.dumps({"keys": [old, new]}))

    assert new["kid"] == json.loads(keys.private_jwk or "")["kid"]
    assert [old["kid"], new["kid"]] == [key["kid"] for key in json.loads(keys.public_jwks)["keys"]]


@pytest.mark.parametrize(
    "text",
    [
        "", "{}", '{"keys": []}', '{"keys": [{"kty": "oct", "k": "c2VjcmV0"}]}',
        '{"keys": [{"kty": "OKP", "crv": "X25519", "x": "hSDwCYkwp1R0i33ctD73Wg2_Og0mOBr066SpjqqbTmo", "kid": "a"}]}',
        '{"keys": [{"kty": "OKP", "crv": "Ed25519", "x": "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo"}]}',
    ],
)  # fmt: skip
def test_files_that_cannot_be_used_are_refused_without_quoting_them(text: str) -> None:
    with pytest.raises(KeyFileError) as caught:
        read_keys(text)

    assert "c2VjcmV0" not in str(caught.value)
