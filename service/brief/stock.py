"""Timber and boards of a job: looked up by code, or as the brief describes them, with the house's choice for the rest."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service.brief.job import Board, Timber, TimberStock
from service.errors import Reason
from service.survey.wishes import CatalogueBoard, CatalogueTimber, CustomBoard, CustomTimber
from service.units import tenths

if TYPE_CHECKING:
    from service.brief.notes import Notes
    from service.catalogue import Catalogue, Material
    from service.rules import RuleSet
    from service.survey.wishes import BoardChoice, TimberChoice

TIMBER = "/survey/brief/timber"
BOARD = "/survey/brief/board"
HOUSE_TIMBER = (380, 630, "C16")  # b, d in tenths of a mm, class: house choice (framing.md, section 1)
WIDE_PITCH_FROM_TENTH_MM = {"mdf": 150, "plywood": 180, "plasterboard": 125}  # studs at 600: framing.md, section 7
WIDE_PITCH_TENTH_MM, NARROW_PITCH_TENTH_MM = 6_000, 4_000


def find_timber(choice: TimberChoice | None, catalogue: Catalogue, longest_mm: float, notes: Notes) -> Timber | None:
    """The studding with all its stock lengths that pass the way in; None with a fault noted."""
    if isinstance(choice, CustomTimber):
        stock = tuple(TimberStock(code="", length_tenth_mm=tenths(length)) for length in sorted(set(choice.lengths_mm)))
        made = Timber(
            thickness_tenth_mm=min(tenths(choice.thickness_mm), tenths(choice.width_mm)),
            width_tenth_mm=max(tenths(choice.thickness_mm), tenths(choice.width_mm)),
            strength_class=choice.strength_class.value,
            stock=stock,
        )
    else:
        found = _timber_of_catalogue(choice, catalogue, notes)
        if found is None:
            return None
        made = found
    passing = tuple(one for one in made.stock if one.length_tenth_mm <= tenths(longest_mm))
    if not passing:
        notes.contradict(
            ("/survey/site/longest_length_mm", TIMBER),
            detail=f"no length of this section is {longest_mm:g} mm or shorter",
            remedy="send a longer longest_length_mm, or another section",
        )
        return None
    return msgspec.structs.replace(made, stock=passing)


def _timber_of_catalogue(choice: CatalogueTimber | None, catalogue: Catalogue, notes: Notes) -> Timber | None:
    section = _wished_section(choice, catalogue, notes)
    if section is None:
        return None
    rows = [row for row in catalogue.materials.values() if row.kind == "timber" and _section(row) == section]
    if not rows:
        notes.refuse(
            Reason.UNKNOWN_MODEL, TIMBER, detail="the catalogue holds no stud timber of that section", remedy="name a timber code"
        )
        return None
    rows.sort(key=lambda row: (row.length_mm or 0, row.code))
    return Timber(
        thickness_tenth_mm=section[0],
        width_tenth_mm=section[1],
        strength_class=section[2] or "",
        density_kg_m3=rows[0].density_kg_m3,
        stock=tuple(TimberStock(code=row.code, length_tenth_mm=tenths(row.length_mm or 0)) for row in rows),
    )


def _wished_section(choice: CatalogueTimber | None, catalogue: Catalogue, notes: Notes) -> tuple[int, int, str | None] | None:
    """Narrow side, wide side and class of the stick that is named, or of the house's stud timber; None with a fault noted."""
    if choice is None:
        notes.choose(TIMBER, None, "C16 38 x 63", "stud timber of the house")
        return HOUSE_TIMBER
    named = catalogue.materials.get(choice.code)
    if named is None or named.kind != "timber":
        notes.refuse(
            Reason.UNKNOWN_MODEL,
            f"{TIMBER}/code",
            detail=f"{choice.code!r} is no timber of the catalogue",
            remedy="ask GET /v1/materials?kind=timber",
        )
        return None
    if named.strength_class is None:
        notes.refuse(
            Reason.NOT_ALLOWED,
            f"{TIMBER}/code",
            detail=f"{choice.code} has no strength class: ungraded timber is refused in a frame that hangs or carries",
            remedy="choose timber graded to EN 338, C16 or better",
        )
        return None
    return _section(named)


def _section(row: Material) -> tuple[int, int, str | None]:
    sides = sorted((tenths(row.thickness_mm or 0), tenths(row.width_mm or 0)))
    return sides[0], sides[1], row.strength_class


def find_board(choice: BoardChoice | None, catalogue: Catalogue, rules: RuleSet, notes: Notes) -> Board | None:
    """The facing board; None with a fault noted."""
    if isinstance(choice, CustomBoard):
        thickness = tenths(choice.thickness_mm)
        return Board(
            code="",
            board_kind=choice.board_kind.value,
            description=f"custom {choice.board_kind.value} {choice.thickness_mm:g}",
            thickness_tenth_mm=thickness,
            sheet_length_tenth_mm=max(tenths(choice.sheet_length_mm), tenths(choice.sheet_width_mm)),
            sheet_width_tenth_mm=min(tenths(choice.sheet_length_mm), tenths(choice.sheet_width_mm)),
            mass_kg_m2=choice.density_kg_m3 * choice.thickness_mm / 1000,
            edge="square",
            stud_pitch_tenth_mm=_pitch(choice.board_kind.value, thickness),
        )
    if isinstance(choice, CatalogueBoard):
        row = catalogue.materials.get(choice.code)
        if row is None or row.kind != "board":
            notes.refuse(
                Reason.UNKNOWN_MODEL,
                f"{BOARD}/code",
                detail=f"{choice.code!r} is no board of the catalogue",
                remedy="ask GET /v1/materials?kind=board",
            )
            return None
        return board_of(row)
    board = house_board("mdf", rules.frame.lining_mm, catalogue)
    if board is None:
        detail = f"the catalogue holds no MDF {rules.frame.lining_mm:g}"
        notes.refuse(Reason.UNKNOWN_MODEL, BOARD, detail=detail, remedy="name a board code")
        return None
    notes.choose(BOARD, None, board.code, f"{board.description}, the house's board")
    return board


def _pitch(board_kind: str, thickness_tenth_mm: int) -> int:
    """Greatest centre spacing of studs behind a board; the closer one for a board that stands in no row of the table."""
    least = WIDE_PITCH_FROM_TENTH_MM.get(board_kind)
    return WIDE_PITCH_TENTH_MM if least is not None and thickness_tenth_mm >= least else NARROW_PITCH_TENTH_MM


def house_board(board_kind: str, thickness_mm: float, catalogue: Catalogue) -> Board | None:
    """The plain sheet of a kind and thickness: the smallest, then the first by code; no price is looked at."""
    boards = [row for row in catalogue.materials.values() if row.kind == "board" and row.board_kind == board_kind]
    rows = [row for row in boards if row.thickness_mm == thickness_mm]
    first = min(rows, key=lambda row: ((row.length_mm or 0) * (row.width_mm or 0), row.code), default=None)
    return None if first is None else board_of(first)


def boards_for_pads(catalogue: Catalogue) -> tuple[Board, ...]:
    """Plywood and MDF sheets that a very low platform can be built up from, one a thickness, plywood before MDF."""
    best: dict[int, Board] = {}
    rows = [row for row in catalogue.materials.values() if row.kind == "board" and row.board_kind in {"plywood", "mdf"}]
    for row in sorted(rows, key=lambda row: (row.board_kind != "plywood", row.code)):
        board = board_of(row)
        best.setdefault(board.thickness_tenth_mm, board)
    return tuple(best[thickness] for thickness in sorted(best))


def board_of(row: Material) -> Board:
    """A catalogue row of kind board as the layout reads it."""
    length_mm, width_mm = row.length_mm or 0.0, row.width_mm or 0.0
    area_m2 = length_mm * width_mm / 1_000_000
    return Board(
        code=row.code,
        board_kind=row.board_kind or "mdf",
        description=row.description,
        thickness_tenth_mm=tenths(row.thickness_mm or 0),
        sheet_length_tenth_mm=tenths(max(length_mm, width_mm)),
        sheet_width_tenth_mm=tenths(min(length_mm, width_mm)),
        mass_kg_m2=(row.mass_kg or 0.0) / area_m2 if area_m2 else 0.0,
        edge=row.edge or "square",
        stud_pitch_tenth_mm=tenths(row.stud_pitch_mm or 400),
    )
