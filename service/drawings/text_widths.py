"""Widths of texts without a font: a table made once, on the safe side of three fonts.

Each number is the widest advance of a character in Inter 4.0 beta 7 Regular (OFL-1.1), Liberation Sans 2.1.5 Regular
(OFL-1.1, as wide as Arial) and DejaVu Sans 2.37, in thousandths of the font size, read from their `hmtx` tables. So a text
keeps within its box with any of the fonts that the SVG asks for.
"""

from __future__ import annotations

from typing import Final

from service.drawings.primitives import Anchor, AreaMm, Text

CAPITAL_SHARE: Final = 0.727  # height of a capital letter over the font size: Inter (`OS/2` sCapHeight 2048 of 2816)
_DESCENT_SHARE: Final = 0.30  # of the capital height, below the baseline: small letters with tails, brackets
_RISE_SHARE: Final = 0.06  # over the capital height: small letters and brackets
_FIRST: Final = 32
_WIDEST: Final = 1015
_WIDTHS: Final = (
    318, 401, 460, 838, 638, 950, 780, 275, 390, 390, 500, 838, 318, 460, 318, 357,
    636, 636, 636, 636, 642, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 556,
    1015, 684, 686, 727, 770, 667, 611, 778, 752, 295, 543, 667, 562, 889, 753, 787,
    667, 787, 722, 667, 642, 741, 684, 989, 685, 667, 685, 390, 357, 390, 838, 556,
    500, 613, 635, 558, 635, 615, 361, 635, 634, 278, 278, 579, 278, 974, 634, 612,
    635, 635, 411, 523, 392, 634, 592, 818, 592, 592, 541, 636, 337, 636,
)  # fmt: skip
_LOW_LETTERS: Final = frozenset("gjpqy,;()Q_[]{}|@")


def text_width_mm(content: str, height_mm: float) -> float:
    """Width of a line of text, in mm, for a height of its capital letters; unknown characters count as the widest."""
    units = sum(_WIDTHS[at] if 0 <= (at := ord(letter) - _FIRST) < len(_WIDTHS) else _WIDEST for letter in content)
    return units * height_mm / CAPITAL_SHARE / 1000


def text_reach_mm(content: str, height_mm: float) -> tuple[float, float]:
    """How far a text reaches below and above its baseline, in mm."""
    return (_DESCENT_SHARE * height_mm if _LOW_LETTERS & set(content) else 0.0), height_mm * (1 + _RISE_SHARE)


def text_area_mm(text: Text) -> AreaMm:
    """Box of a text on the paper, in mm."""
    width = text_width_mm(text.content, text.height_mm)
    back = {Anchor.START: 0.0, Anchor.MIDDLE: width / 2, Anchor.END: width}[text.anchor]
    below, above = text_reach_mm(text.content, text.height_mm)
    x, y = text.at_mm
    if text.turned:
        return (x - above, y - back, x + below, y - back + width)
    return (x - back, y - below, x - back + width, y + above)


def wrap(words: list[str], height_mm: float, width_mm: float) -> list[str]:
    """Words put on as few lines as keep within a width, in their order; a word too long stands alone."""
    lines: list[str] = []
    for word in words:
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width_mm(longer, height_mm) <= width_mm:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
