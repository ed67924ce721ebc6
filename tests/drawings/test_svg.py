"""The SVG writer: well formed, safe to embed, accessible, and the same bytes each time."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from service.drawings.primitives import Anchor, Circle, Drawing, Fill, Group, Line, Pen, Polygon, Primitive, Text
from service.drawings.svg import escape, number, write_svg

NAMESPACE = "{http://www.w3.org/2000/svg}"


def drawing(*parts: Primitive, title: str = "Title") -> Drawing:
    return Drawing(
        name="view", title=title, description="What it shows", scale_ratio=10, area_mm=(-10.0, -5.0, 90.0, 45.0),
        groups=(Group(name="part", parts=parts),),
    )  # fmt: skip


def parsed(text: str) -> ElementTree.Element:
    return ElementTree.fromstring(text)  # noqa: S314 - our own text


@pytest.mark.parametrize(
    ("value_mm", "expected"),
    [(0.0, "0"), (-0.0, "0"), (-0.001, "0"), (1.0, "1"), (1.005, "1"), (12.346, "12.35"), (-3.1, "-3.1"), (100.0, "100")],
)
def test_numbers_have_at_most_two_decimals_and_no_negative_nought(value_mm: float, expected: str) -> None:
    assert expected == number(value_mm)


def test_paper_y_goes_up_and_svg_y_goes_down() -> None:
    text = write_svg(drawing(Line(start_mm=(-10.0, 45.0), end_mm=(0.0, 0.0), pen=Pen.VISIBLE)))

    assert 'd="M0 0L10 45"' in text
    assert 'viewBox="0 0 100 50"' in text


def test_the_picture_says_what_it_is_to_a_reader_without_eyes() -> None:
    root = parsed(write_svg(drawing(title="Front"), prefix="a1-", language="en-GB"))

    assert ("img", "en-GB", "a1-view-title a1-view-desc") == (root.get("role"), root.get("lang"), root.get("aria-labelledby"))
    labels = {element.get("id"): element.text for element in root if element.get("id")}
    assert {"a1-view-title": "Front", "a1-view-desc": "What it shows"} == labels


def test_every_id_carries_the_prefix() -> None:
    root = parsed(write_svg(drawing(Text(at_mm=(0.0, 0.0), content="x", height_mm=2.5)), prefix="p-"))

    assert {"p-view-title", "p-view-desc", "p-view-part"} == {element.get("id") for element in root.iter() if element.get("id")}


def test_words_of_others_stay_words() -> None:
    nasty = "<script>alert('x')</script> & \"quote\" \x00\x1b\ud800"
    text = write_svg(drawing(Text(at_mm=(0.0, 0.0), content=nasty, height_mm=2.5), title=nasty), prefix='"><x y="')

    root = parsed(text.encode("utf-8", "strict").decode("utf-8"))
    assert [] == [element.tag for element in root.iter() if element.tag.removeprefix(NAMESPACE) in {"script", "x"}]
    assert "<script>alert('x')</script> & \"quote\" \ufffd\ufffd\ufffd" == next(root.iter(f"{NAMESPACE}text")).text


def test_escape_covers_the_five_and_what_xml_forbids() -> None:
    assert "&amp;&lt;&gt;&quot;&#39;\ufffd\ufffe".replace("\ufffe", "\ufffd") == escape("&<>\"'\x07\uffff")


def test_there_is_no_script_no_style_and_no_outside_address() -> None:
    text = write_svg(
        drawing(
            Line(start_mm=(0.0, 0.0), end_mm=(1.0, 1.0), pen=Pen.NEIGHBOUR),
            Polygon(points_mm=((0.0, 0.0), (1.0, 0.0), (1.0, 1.0)), pen=Pen.CUT, fill=Fill.BOARD),
            Circle(centre_mm=(3.0, 3.0), radius_mm=1.0, fill=Fill.SOLID),
            Text(at_mm=(5.0, 5.0), content="U-S1", height_mm=2.5, anchor=Anchor.END, turned=True, backing=Fill.PAPER),
        )
    )

    assert {"svg", "title", "desc", "rect", "g", "path", "circle", "text"} == {
        element.tag.removeprefix(NAMESPACE) for element in parsed(text).iter()
    }
    assert ["http://www.w3.org/2000/svg"] == re.findall(r"\w+://[^\"' ]+", text)
    names = {name for element in parsed(text).iter() for name in element.keys()}  # noqa: SIM118 - an element is no dictionary
    assert set() == {name for name in names if name.startswith("on") or name in {"style", "href", "class"}}


def test_like_lines_share_one_path_and_others_keep_their_order() -> None:
    thin = [Line(start_mm=(float(step), 0.0), end_mm=(float(step), 5.0), pen=Pen.NARROW) for step in range(3)]
    text = write_svg(drawing(*thin, Polygon(points_mm=((0.0, 0.0), (9.0, 0.0), (9.0, 9.0)), fill=Fill.PAPER), thin[0]))

    assert [3, 1, 1] == [path.count("M") for path in re.findall(r' d="([^"]+)"', text)]


def test_turned_text_reads_from_the_right() -> None:
    text = write_svg(drawing(Text(at_mm=(0.0, 0.0), content="430", height_mm=2.5, anchor=Anchor.MIDDLE, turned=True)))

    assert 'transform="rotate(-90 10 45)"' in text
    assert 'font-size="3.44"' in text  # 2.5 mm capitals: 2.5 / 0.727
