from __future__ import annotations

from service.cut_plans.prices import all_priced, currency_of, faults_of_prices, none_priced, offers_of, price_minor
from tests.cut_plans.cut_requests import bars_body, pounds, read, sheets_body


def test_prices_of_both_parts_are_seen() -> None:
    request = read(bars_body() | sheets_body())

    assert ["/bars/stock", "/sheets/stock"] == list(offers_of(request))
    assert "GBP" == currency_of(request)
    assert () == faults_of_prices(request)


def test_an_offcut_needs_no_price() -> None:
    stock = offers_of(read(bars_body()))["/bars/stock"]

    assert all_priced(stock)
    assert not none_priced(stock)
    assert [700, 400, 0] == [price_minor(one.price) for one in stock]


def test_mixed_currencies_across_bars_and_sheets_point_at_each_other() -> None:
    board = {"code": "b", "width_mm": 2400, "height_mm": 1200, "price": pounds("9.00", "EUR")}
    (fault,) = faults_of_prices(read(bars_body() | sheets_body(stock=[board])))

    assert ("/sheets/stock/0/price/currency", ("/bars/stock/0/price/currency",)) == (fault.pointer, fault.related)
