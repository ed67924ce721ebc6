from __future__ import annotations

import json

import msgspec

from service.cutting import Stopped
from service.quote import signed
from service.signing import SignatureState, check_signature, new_key, read_keys
from tests.quote.text_facts import designed

KEYS = read_keys(new_key("2026-11-25"))
QUOTE = designed("C")


def test_a_quote_is_signed_over_all_of_it() -> None:
    quote = msgspec.json.encode(signed(QUOTE, KEYS.private_jwk))
    changed = json.loads(quote)
    changed["price"]["total"]["amount"] = "1.00"

    assert SignatureState.GOOD is check_signature(quote, KEYS.public_jwks)
    assert SignatureState.BAD is check_signature(json.dumps(changed).encode(), KEYS.public_jwks)


def test_without_a_key_it_goes_out_unsigned() -> None:
    assert signed(QUOTE, None).signature is None


def test_what_the_clock_ended_is_not_signed() -> None:
    proof = msgspec.structs.replace(QUOTE.cut_plan.bars.proof, stopped=Stopped.CLOCK_GUARD)
    bars = msgspec.structs.replace(QUOTE.cut_plan.bars, proof=proof)
    plan = msgspec.structs.replace(QUOTE.cut_plan, bars=bars)

    assert signed(msgspec.structs.replace(QUOTE, cut_plan=plan), KEYS.private_jwk).signature is None
