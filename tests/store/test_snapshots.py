from __future__ import annotations

import msgspec

from service.catalogue import PARTS, demo_catalogue
from service.store.snapshots import Snapshots

DEMO = demo_catalogue()


def parts(**changes: object) -> dict[str, object]:
    return {f"{name}-{id(changes.get(name))}": changes.get(name, getattr(DEMO, name)) for name in PARTS}


def test_nothing_is_held_at_first() -> None:
    held = Snapshots(2)

    assert None is held.get("demo", DEMO.revision)
    assert {} == held.parts


def test_parts_are_forgotten_with_the_last_catalogue_that_has_them() -> None:
    held = Snapshots(1)
    held.put_parts("one", "demo", parts(prices={}), is_current=True)
    first = set(held.parts)
    held.put_parts("two", "demo", parts(), is_current=True)

    assert None is held.get("demo", "one")
    assert {*parts()} == set(held.parts) != first


def test_equal_catalogues_are_one() -> None:
    held = Snapshots(2)
    first = held.put(DEMO, is_current=True)

    assert first is held.put(msgspec.structs.replace(DEMO), is_current=True)


def test_accounts_that_are_gone_are_let_go() -> None:
    held = Snapshots(2)
    held.put_parts("one", "demo", parts(), is_current=True)
    held.keep_only(set())

    assert None is held.get("demo", "one")
    assert {} == held.parts
