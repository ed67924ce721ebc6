"""Primitives to SVG: presentation attributes only, no script, no style, no outside address; same drawing, same bytes."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING, Final

from service.drawings.primitives import AreaMm, Circle, Fill, Line, Pen, PointMm, Polygon, Text
from service.drawings.text_widths import CAPITAL_SHARE, text_area_mm

if TYPE_CHECKING:
    from collections.abc import Iterable

    from service.drawings.primitives import Drawing, Primitive

# Width in mm and dashes as multiples of it. ISO 128-2:2022: dash 12 d, gap 3 d, long dash 24 d, dot 0.5 d (from memory);
# dots are drawn longer, because 0.5 d of a narrow line does not print.
_PENS: Final[dict[Pen, tuple[float, tuple[float, ...]]]] = {
    Pen.CUT: (0.5, ()),
    Pen.VISIBLE: (0.35, ()),
    Pen.HIDDEN: (0.18, (12, 4)),
    Pen.NARROW: (0.18, ()),
    Pen.NEIGHBOUR: (0.25, (24, 4, 2, 4, 2, 4)),
    Pen.GROUND: (0.7, ()),
    Pen.PLANE: (0.7, ()),
}
_FILLS: Final = {
    Fill.PAPER: "#ffffff",
    Fill.BASE: "#e6d3b3",
    Fill.UPPER: "#f5ecdb",
    Fill.BEHIND: "#dcdcdc",
    Fill.BOARD: "#f1f1ee",
    Fill.BASE_SIDE: "#c9b48f",
    Fill.BASE_TOP: "#f0e3cb",
    Fill.UPPER_SIDE: "#dccfb5",
    Fill.UPPER_TOP: "#fbf6ec",
    Fill.BOARD_SIDE: "#d3d3ce",
    Fill.BOARD_TOP: "#fafaf8",
    Fill.GLASS: "#2d3136",
    Fill.GLASS_SIDE: "#44494f",
    Fill.SOLID: "#1c1c1c",
}
_INK: Final = "#1c1c1c"
_FONTS: Final = "Inter, Arial, 'Liberation Sans', Helvetica, 'DejaVu Sans', sans-serif"
_BACKING_MARGIN_MM: Final = 0.3


def write_svg(drawing: Drawing, *, language: str = "en-GB", prefix: str = "") -> str:
    """One SVG document, cropped to the view, in mm.

    Args:
        drawing: what to draw.
        language: BCP 47 tag of its words.
        prefix: goes before every id, for pages that embed several drawings.
    """
    sheet = _Sheet(drawing.area_mm)
    left, low, right, high = drawing.area_mm
    name = f"{prefix}{drawing.name}"
    size = f"{number(right - left)}mm", f"{number(high - low)}mm"
    body = "".join(f'<g id="{escape(name)}-{escape(group.name)}">{sheet.draw(group.parts)}</g>\n' for group in drawing.groups)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{size[0]}" height="{size[1]}" '
        f'viewBox="0 0 {number(right - left)} {number(high - low)}" role="img" lang="{escape(language)}" '
        f'aria-labelledby="{escape(name)}-title {escape(name)}-desc">\n'
        f'<title id="{escape(name)}-title">{escape(drawing.title)}</title>\n'
        f'<desc id="{escape(name)}-desc">{escape(drawing.description)}</desc>\n'
        f'<rect width="{number(right - left)}" height="{number(high - low)}" fill="{_FILLS[Fill.PAPER]}"/>\n'
        f'<g font-family="{_FONTS}" stroke-linejoin="round" fill="none">\n{body}</g>\n</svg>\n'
    )


def number(value_mm: float) -> str:
    """A coordinate with at most two decimals, never `-0`."""
    text = f"{value_mm:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def escape(text: str) -> str:
    """Text that is safe between tags and in attributes; characters that XML 1.0 forbids become U+FFFD."""
    clean = "".join(letter if _is_xml(letter) else "\ufffd" for letter in text)
    return clean.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;").replace("'", "&#39;")


def _is_xml(letter: str) -> bool:
    code = ord(letter)
    return letter in "\t\n\r" or 0x20 <= code <= 0xD7FF or 0xE000 <= code <= 0xFFFD or code >= 0x10000  # noqa: PLR2004 - XML 1.0, production 2


class _Sheet:
    """Turns paper points into SVG coordinates: y down, the left upper corner at 0, 0."""

    def __init__(self, area_mm: AreaMm) -> None:
        self.left_mm, self.high_mm = area_mm[0], area_mm[3]

    def point(self, point_mm: PointMm) -> str:
        return f"{number(point_mm[0] - self.left_mm)} {number(self.high_mm - point_mm[1])}"

    def draw(self, parts: Iterable[Primitive]) -> str:
        return "".join(self._alike(list(same)) for _, same in groupby(parts, key=_style))

    def _alike(self, parts: list[Primitive]) -> str:
        paths = [part for part in parts if isinstance(part, Line | Polygon)]
        if paths:
            return f'<path d="{"".join(self._path(part) for part in paths)}"{_look(paths[0])}/>\n'
        circles = "".join(self._circle(part) for part in parts if isinstance(part, Circle))
        return circles + "".join(self._text(part) for part in parts if isinstance(part, Text))

    def _path(self, part: Line | Polygon) -> str:
        if isinstance(part, Line):
            return f"M{self.point(part.start_mm)}L{self.point(part.end_mm)}"
        return "M" + "L".join(self.point(point) for point in part.points_mm) + "Z"

    def _circle(self, part: Circle) -> str:
        x, y = self.point(part.centre_mm).split()
        return f'<circle cx="{x}" cy="{y}" r="{number(part.radius_mm)}"{_look(part)}/>\n'

    def _text(self, part: Text) -> str:
        x, y = self.point(part.at_mm).split()
        turn = f' transform="rotate(-90 {x} {y})"' if part.turned else ""
        anchor = "" if part.anchor == "start" else f' text-anchor="{part.anchor.value}"'
        size = number(part.height_mm / CAPITAL_SHARE)
        words = f'<text x="{x}" y="{y}" font-size="{size}"{anchor} fill="{_INK}"{turn}>{escape(part.content)}</text>\n'
        return f"{self._backing(part, part.backing)}{words}" if part.backing else words

    def _backing(self, part: Text, fill: Fill) -> str:
        left, low, right, high = text_area_mm(part)
        x, y = self.point((left - _BACKING_MARGIN_MM, high + _BACKING_MARGIN_MM)).split()
        size = number(right - left + 2 * _BACKING_MARGIN_MM), number(high - low + 2 * _BACKING_MARGIN_MM)
        return f'<rect x="{x}" y="{y}" width="{size[0]}" height="{size[1]}" fill="{_FILLS[fill]}"/>\n'


def _style(part: Primitive) -> tuple[str, Pen | None, Fill | None]:
    """What neighbours share to be written together."""
    if isinstance(part, Text):
        return "text", None, None
    if isinstance(part, Circle):
        return "circle", part.pen, part.fill
    return "path", part.pen, None if isinstance(part, Line) else part.fill


def _look(part: Line | Polygon | Circle) -> str:
    fill = None if isinstance(part, Line) else part.fill
    look = f' fill="{_FILLS[fill]}"' if fill else ""
    if part.pen is None:
        return look
    width_mm, dashes = _PENS[part.pen]
    look += f' stroke="{_INK}" stroke-width="{number(width_mm)}"'
    return look + (f' stroke-dasharray="{" ".join(number(width_mm * dash) for dash in dashes)}"' if dashes else "")
