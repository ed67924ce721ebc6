from __future__ import annotations

from service.quote.text_layout import WIDTH
from tests.checks.row_cases import A, B, on
from tests.quote.text_facts import designed, part, read, text_of
from tests.sold_examples import NAMES

HEADINGS = (
    "SIZES", "SUMS THAT MUST CLOSE", "MEMBERS", "BOARDS", "FIXINGS", "BARS AND THEIR CUTS", "SHEETS AND THEIR CUTS",
    "WHAT TO BUY", "HOURS", "PRICE (GBP): the shop's own reckoning", "PRICE (GBP): what the customer sees", "NOT INCLUDED",
    "CHECKS", "CAUTIONS", "MADE FROM",
)  # fmt: skip


def test_all_that_a_person_asks_for_is_there_in_order() -> None:
    """Issue 2: sizes, sums, members by mark, bars and sheets with their cuts, hours, price lines, cautions, not checked."""
    for name in NAMES:
        places = [text_of(name).index(f"\n{heading}") for heading in HEADINGS]

        assert sorted(places) == places


def test_lines_fit_the_page_and_end_cleanly() -> None:
    for name in NAMES:
        for line in text_of(name).split("\n"):
            assert len(line) <= WIDTH
            assert line == line.rstrip()


def test_the_head_says_what_it_is_what_it_costs_and_what_it_is_worth() -> None:
    assert [
        "FALSE CHIMNEY BREAST  Q-1042",
        "for        fire AF-302, screen SC-043",
        "total      5002.66 GBP, with tax",
    ] == text_of("A").split("\n")[:3]
    assert text_of("A").split("\n")[3].startswith(f"standing   {designed('A').standing.upper()}")


def test_a_breast_without_a_screen_says_so() -> None:
    assert "for        fire AF-102, no screen" in text_of("C")


def test_things_not_chosen_yet_are_named_by_what_is_known() -> None:
    request = on(
        A,
        survey__brief__appliance={"kind": "size_class", "open_ends_count": 2, "length_mm": 1335},
        survey__brief__screen={"kind": "size_class", "diagonal_in": 43},
    )
    text = read(request)

    assert "for        fire of 1335 mm, not chosen yet, screen of 43 in, not chosen yet" in text
    assert "standing   ESTIMATE:" in text
    assert "NOT COMPLETE" in text
    assert "provisional sum, still to be priced: 1 x fire like AF-302" in text


def test_things_of_the_customer_are_named_as_the_customer_names_them() -> None:
    fire = {
        "kind": "custom", "name": "Emberline", "open_ends_count": 2, "body_width_mm": 1335, "body_height_mm": 480,
        "body_depth_mm": 330, "mass_kg": 41, "heat_output_w": 2000, "connection": "hard_wired", "outlet_position": "front_bottom",
    }  # fmt: skip
    screen = {
        "kind": "custom", "name": "Wide one", "diagonal_in": 43, "body_width_mm": 964, "body_height_mm": 557, "body_depth_mm": 74,
        "mass_kg": 9.5, "hole_pattern_width_mm": 200, "hole_pattern_height_mm": 200,
    }  # fmt: skip

    assert "for        fire Emberline, screen Wide one" in read(
        on(A, survey__brief__appliance=fire, survey__brief__screen=screen)
    )


def test_what_cannot_be_built_says_why_and_what_would_do() -> None:
    lines = read(on(A, survey__brief__platform_height_mm=1_200, survey__services__gas="present")).split("\n")

    assert [
        "CANNOT BE BUILT AS WISHED",
        "refused b03: there is gas at this wall, and nothing is built over it",
        "    would do: a certificate of a registered gas engineer that it is capped off, sent in `cleared` as",
        "      B03",
        "recess high: upstand, recess and rails want 973 above the fire and there are 815",
        "    asked 973, available 815, short by 158 mm",
    ] == lines[:6]
    assert part("\n".join(lines), "PLEASE CONFIRM")
    assert part("\n".join(lines), "MADE FROM")


def test_no_page_promises_anything() -> None:
    for text in (*(text_of(name) for name in NAMES), read(B)):
        assert not {"safe", "compliant", "guaranteed"} & set(text.lower().replace(".", " ").replace(",", " ").split())
