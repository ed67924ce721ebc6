from __future__ import annotations

import pytest

from service.signing import canonical_json


def test_the_example_of_the_standard() -> None:
    """RFC 8785, section 3.2.2 and 3.2.3: numbers, escapes and order of members."""
    given = (
        rb'{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],'
        rb'"string":"\u20ac$\u000F\u000aA\u0027\u0042\u0022\u005c\\\u0022\/","literals":[null,true,false]}'
    )

    assert (
        '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],'
        '"string":"\u20ac$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}'
    ).encode() == canonical_json(given)


@pytest.mark.parametrize("document", [b"{", b'{"a": 1e999}', b'{"a": 9007199254740993}'])
def test_what_has_no_canonical_form_is_refused(document: bytes) -> None:
    with pytest.raises(ValueError, match=r".+"):
        canonical_json(document)
