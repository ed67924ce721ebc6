from __future__ import annotations

import pytest

from service.catalogue import FORMS, RowKind, demo_rows, key_of


@pytest.mark.parametrize("kind", RowKind)
def test_keys_tell_the_rows_of_the_demo_apart(kind: RowKind) -> None:
    rows = getattr(demo_rows(), kind)

    assert {FORMS[kind].struct} == {type(row) for row in rows}
    assert len(rows) == len({key_of(kind, row) for row in rows})


def test_what_is_not_stated_is_empty_in_a_key() -> None:
    loads = {key_of(RowKind.FIXING_LOADS, row) for row in demo_rows().fixing_loads}

    assert {("FX-3310Y", "solid_brick", "sound", "60"), ("FX-3310Y", "dense_block", "", "60")} <= loads
