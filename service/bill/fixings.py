"""Screws, plugs, brackets and packers (`knowledge/materials.md`, section 1)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from service import hardware
from service.bill.needs import pieces
from service.frame import Layer

if TYPE_CHECKING:
    from service.bill.bill import Counts
    from service.bill.needs import Facts, Need
    from service.catalogue import Material

MAGNETS = 4  # of a removable panel


def fixing_needs(facts: Facts) -> tuple[Need, ...]:
    """Everything that holds timber, boards, fire and frame."""
    needs = (*_joints(facts), *_boards(facts), *_house(facts), *_brackets(facts), *_firrings(facts))
    needs = (*needs, *_ledges(facts), _magnets(facts), _packers(facts))
    return tuple(need for need in needs if need.need > 0)


def _joints(facts: Facts) -> list[Need]:
    timber, counts, bought = facts.job.timber, facts.counts, facts.hardware
    b, d = timber.thickness_tenth_mm / 10, timber.width_tenth_mm / 10
    each, wide = facts.market.rules.take_off.joint_screw_count, counts.wide_joints_count
    narrow = counts.joints_count - wide
    ends = counts.ply_end_screws_count
    return [
        pieces(bought.narrow_screw, f"joint screw through {b:g}", each * narrow, f"{narrow} joints through {b:g} x {each}"),
        pieces(
            bought.laminating_screw, "laminating screw", counts.laminating_screws_count - ends,
            "1 every 300 mm of ply and 1 more",
        ),
        pieces(bought.narrow_screw, "screw at a ply's end", ends, f"plies at the jacks of a one-sided fire {ends}"),
        pieces(bought.wide_screw, f"joint screw through {d:g}", each * wide, f"{wide} joints through {d:g} x {each}"),
    ]  # fmt: skip


def _boards(facts: Facts) -> list[Need]:
    job, counts = facts.job, facts.counts
    parts = (
        (Layer.FACING, job.board, counts.face_screws_count, "faces and returns"),
        (Layer.LINING, job.lining, counts.lining_screws_count, "linings"),
        (Layer.LID, job.lid, counts.lid_screws_count, "lid"),
        (Layer.BACKBOARD, job.backboard, counts.backboard_screws_count, "backboard"),
    )
    return [
        pieces(facts.hardware.board_screw(layer), f"screw for {board.description}", count, f"{name} {count}")
        for layer, board, count, name in parts
    ]


def _house(facts: Facts) -> list[Need]:
    """Into fire, ceiling and wall."""
    counts, bought = facts.counts, facts.hardware
    d = facts.job.timber.width_tenth_mm / 10
    return [
        pieces(
            bought.fire_screw, "screw for the fire's brackets", facts.market.rules.take_off.fire_screw_count,
            "the fire 4, where its maker states none",
        ),
        pieces(bought.ceiling_screw, "ceiling screw", counts.ceiling_screws_count, "joists really crossed x 2 rows"),
        pieces(
            bought.wall_fixing, f"wall fixing through {d:g}", counts.wall_fixings_count,
            f"rows through rear rails and uprights {counts.wall_fixings_count}",
        ),
        pieces(
            bought.wall_fixing if facts.job.side_construction is facts.job.wall_construction else None,
            f"fixing into a side wall ({facts.job.side_construction.value.replace('_', ' ')})", counts.side_fixings_count,
            f"front uprights into the side wall {counts.side_fixings_count}",
        ),
        pieces(
            bought.base_fixing, "wall fixing for the brackets of the base", counts.base_brackets_count,
            f"one per station of the base {counts.base_brackets_count}",
        ),
    ]  # fmt: skip


def _magnets(facts: Facts) -> Need:
    """Four hold a removable panel (`knowledge/cladding.md`, section 7)."""
    count = facts.counts.access_panels_count
    catches = hardware.by_use("access_panel", facts.market.catalogue)
    return pieces(catches, "magnet catches of the access panel", MAGNETS * count, f"{MAGNETS} for {count} removable panel")


def _ledges(facts: Facts) -> list[Need]:
    """A beam or shelf and its fixings: named, for a person to choose; what they must bear stands among the checks."""
    count, ledges = facts.counts.ledge_fixings_count, facts.counts.ledges
    return [
        *(pieces(None, ledge, 1, "on the face over the fire") for ledge in ledges),
        *(pieces(None, f"fixing for the {ledge}", count, "one at every stud that it crosses") for ledge in ledges),
    ]


def _firrings(facts: Facts) -> list[Need]:
    """Ripped to the ceiling on site; named for a person to choose, as no stock length is sold for it."""
    counts = facts.counts
    rule = f"{counts.firrings_count} top rails over packing of {facts.market.rules.frame.greatest_packer_mm:g}"
    need = pieces(None, "timber to rip firrings from", counts.firrings_count, rule)
    return [msgspec.structs.replace(need, need=round(counts.firrings_m, 3), need_unit="m", per_pack_unit="m")]


def _brackets(facts: Facts) -> list[Need]:
    counts, bought = facts.counts, facts.hardware
    leg, heavy_leg = _leg_screws(bought.bracket), _leg_screws(bought.heavy_bracket)
    rail, base, heavy = counts.rail_brackets_count, counts.base_brackets_count, counts.heavy_brackets_count
    return [
        pieces(bought.bracket, "angle bracket", rail + base, f"rail ends {rail} + base {base}"),
        pieces(bought.bracket_screw, "bracket screw", rail * 2 * leg + base * leg, f"{rail} x {2 * leg} + {base} x {leg}"),
        pieces(bought.heavy_bracket, "heavy angle bracket", heavy, f"rail ends {heavy}"),
        pieces(bought.heavy_bracket_screw, "bracket screw", heavy * 2 * heavy_leg, f"{heavy} heavy x {2 * heavy_leg}"),
    ]


def _leg_screws(bracket: Material | None) -> int:
    return (bracket.leg_screw_count if bracket else None) or 2


def _packers(facts: Facts) -> Need:
    counts: Counts = facts.counts
    base, ceiling = counts.base_brackets_count, counts.ceiling_screws_count
    wall = counts.wall_fixings_count + counts.side_fixings_count
    more = counts.more_packers_count
    count = 2 * base + 2 * ceiling + wall + base + more
    rule = f"2 x {base} stations + 2 x {ceiling} ceiling screws + {wall + base} wall fixings"
    if more:
        rule += f" + {more} where ceiling or wall are further off"
    return pieces(hardware.by_use("packers", facts.market.catalogue), "packers", count, rule)
