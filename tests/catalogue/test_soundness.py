from __future__ import annotations

from typing import Any

import msgspec
import pytest

from service.catalogue import Catalogue, demo_catalogue, soundness, soundness_of

DEMO = demo_catalogue()


def changed(part: str, row_code: str, **changes: Any) -> Catalogue:  # noqa: ANN401 - any field
    rows = getattr(DEMO, part)
    if part in {"fixing_loads", "labour_rates"}:
        return msgspec.structs.replace(DEMO, **{part: (msgspec.structs.replace(rows[0], **changes), *rows[1:])})
    if part == "prices":
        return msgspec.structs.replace(DEMO, prices=rows | {row_code: (msgspec.structs.replace(rows[row_code][0], **changes),)})
    return msgspec.structs.replace(DEMO, **{part: rows | {row_code: msgspec.structs.replace(rows[row_code], **changes)}})


def test_the_demo_is_sound() -> None:
    told = soundness_of(DEMO)

    assert ((), 0, 0) == (told.findings, told.stops_count, told.findings_count)


@pytest.mark.parametrize(
    ("catalogue", "kind", "column", "detail"),
    [
        (changed("materials", "TM-1007V", screw_code="NONE"), "materials", "screw_code", "there is no material NONE"),
        (changed("fixing_loads", "", code="NONE"), "fixing_loads", "code", "there is no material NONE"),
        (changed("appliances", "AF-302", order_codes=("NONE",)), "appliances", "order_codes", "there is no material NONE"),
        (changed("screens", "SC-043", bracket="NONE"), "screens", "bracket", "there is no bracket NONE"),
        (
            changed("appliances", "AF-302", open_ends_count=1, open_end=None),
            "appliances",
            "open_end",
            "one end is open, and it is not said which",
        ),
        (
            changed("brackets", "BK-301", screen_pattern_least_width_mm=500),
            "brackets",
            "screen_pattern_least_width_mm",
            "500 is more than the greatest, 400",
        ),
        (changed("labour_rates", "", trade="baker"), "labour_rates", "trade", "there is no trade baker"),
        (changed("trades", "joiner", currency="EUR"), "trades", "currency", "EUR where the account reckons in GBP"),
        (
            changed("prices", "AF-302", per="metre"),
            "prices",
            "per",
            "a price for each metre of what has no such size",
        ),
    ],
)
def test_what_stops_a_publish(catalogue: Catalogue, kind: str, column: str, detail: str) -> None:
    stops = [one for one in soundness_of(catalogue).findings if one.stops]

    assert [(kind, column, detail)] == [(one.kind, one.column, one.detail) for one in stops]
    assert all(one.remedy and one.key for one in stops)


def test_what_has_no_price_is_named() -> None:
    prices = {code: steps for code, steps in DEMO.prices.items() if code not in {"TM-1007V", "AF-302"}}
    told = soundness_of(msgspec.structs.replace(DEMO, prices=prices))

    assert 0 == told.stops_count
    assert [("TM-1007V",), ("AF-302",)] == [one.key for one in told.findings]
    assert all("still to be priced" in one.detail for one in told.findings)


def test_prices_that_look_wrong_are_named() -> None:
    cheap, dear = (msgspec.structs.replace(DEMO.prices["TM-1007V"][0], from_count=count, amount_minor=count) for count in (1, 10))
    euro = msgspec.structs.replace(cheap, currency="EUR")
    prices = {**DEMO.prices, "TM-1007V": (cheap, dear), "TM-1014C": (euro, *DEMO.prices["TM-1014C"]), "GONE": (cheap,)}
    told = {one.detail for one in soundness_of(msgspec.structs.replace(DEMO, prices=prices)).findings}

    assert {
        "dearer from 10 on than from 1 on",
        "EUR is not taken: the account reckons in GBP",
        "nothing is called GONE",
    } == told


def test_what_stops_comes_first_and_all_are_counted(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(soundness, "MOST_SHOWN_COUNT", 1)
    both = msgspec.structs.replace(changed("screens", "SC-043", bracket="NONE"), prices={})
    told = soundness_of(both)

    assert (1, True, 1) == (len(told.findings), told.findings[0].stops, told.stops_count)
    assert 1 + len(DEMO.materials) + len(DEMO.appliances) + len(DEMO.screens) + len(DEMO.brackets) == told.findings_count
