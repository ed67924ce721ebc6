"""Screws, plugs, brackets and packers (`knowledge/materials.md`, section 1)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service import hardware
from service.bill.needs import pieces

if TYPE_CHECKING:
    from service.bill.bill import Counts
    from service.bill.needs import Facts, Need


def fixing_needs(facts: Facts) -> tuple[Need, ...]:
    """Everything that holds timber, boards, fire and frame."""
    needs = (*_joints(facts), *_boards(facts), *_house(facts), *_brackets(facts), _packers(facts))
    return tuple(need for need in needs if need.need > 0)


def _joints(facts: Facts) -> list[Need]:
    timber, counts, market = facts.job.timber, facts.counts, facts.market
    b, d = timber.thickness_tenth_mm / 10, timber.width_tenth_mm / 10
    each, wide = market.rules.take_off.joint_screw_count, counts.wide_joints_count
    narrow = counts.joints_count - wide
    plies = "1 every 300 mm of ply and 1 more; 3 more at each jack of a one-sided fire"
    return [
        pieces(
            hardware.joint_screw(b, market), f"joint screw through {b:g}", each * narrow,
            f"{narrow} joints through {b:g} x {each}",
        ),
        pieces(hardware.laminating_screw(b, market.catalogue), "laminating screw", counts.laminating_screws_count, plies),
        pieces(
            hardware.joint_screw(d, market), f"joint screw through {d:g}", each * wide, f"{wide} joints through {d:g} x {each}"
        ),
    ]  # fmt: skip


def _boards(facts: Facts) -> list[Need]:
    job, counts = facts.job, facts.counts
    parts = (
        (job.board, counts.face_screws_count, "faces and returns"),
        (job.lining, counts.lining_screws_count, "linings"),
        (job.lid, counts.lid_screws_count, "lid"),
        (job.backboard, counts.backboard_screws_count, "backboard"),
    )
    return [
        pieces(
            hardware.board_screw(board.board_kind, board.thickness_tenth_mm / 10, facts.market),
            f"screw for {board.description}", count, f"{name} {count}",
        )
        for board, count, name in parts
    ]  # fmt: skip


def _house(facts: Facts) -> list[Need]:
    """Into fire, ceiling and wall."""
    job, counts, market = facts.job, facts.counts, facts.market
    d = job.timber.width_tenth_mm / 10
    return [
        pieces(
            hardware.fire_screw(market.catalogue), "screw for the fire's brackets", market.rules.take_off.fire_screw_count,
            "the fire 4, where its maker states none",
        ),
        pieces(
            hardware.ceiling_screw(job, market), "ceiling screw", counts.ceiling_screws_count, "joists really crossed x 2 rows"
        ),
        pieces(
            hardware.wall_fixing(job, d, market), f"wall fixing through {d:g}", counts.wall_fixings_count,
            f"rows through rear rails and uprights {counts.wall_fixings_count}",
        ),
        pieces(
            hardware.wall_fixing(job, hardware.BRACKET_PLATE_MM, market), "wall fixing for the brackets of the base",
            counts.base_brackets_count, f"one per station of the base {counts.base_brackets_count}",
        ),
    ]  # fmt: skip


def _brackets(facts: Facts) -> list[Need]:
    counts, catalogue = facts.counts, facts.market.catalogue
    light = hardware.light_bracket(catalogue)
    leg = (light.leg_screw_count if light else None) or 2
    rail, base = counts.rail_brackets_count, counts.base_brackets_count
    screw = catalogue.materials.get((light.screw_code if light else None) or "")
    return [
        pieces(light, "angle bracket", rail + base, f"rail ends {rail} + base {base}"),
        pieces(screw, "bracket screw", rail * 2 * leg + base * leg, f"{rail} x {2 * leg} + {base} x {leg}"),
    ]


def _packers(facts: Facts) -> Need:
    counts: Counts = facts.counts
    base, ceiling, wall = counts.base_brackets_count, counts.ceiling_screws_count, counts.wall_fixings_count
    count = 2 * base + 2 * ceiling + wall + base
    rule = f"2 x {base} stations + 2 x {ceiling} ceiling screws + {wall + base} wall fixings"
    return pieces(hardware.by_use("packers", facts.market.catalogue), "packers", count, rule)
