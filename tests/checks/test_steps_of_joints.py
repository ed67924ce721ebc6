"""Framing.md, 10.2, rows 8 and 13a."""

from __future__ import annotations

from service.checks.steps_of_joints import (
    bracket,
    bracket_pair,
    heavy_bracket,
    ladder_brackets,
    ladder_halved,
    stronger_noggins,
)
from service.frame import Additions, EndJoint, Role
from tests.checks.weak_spots import said, taken, weak
from tests.examples_of import example_a, frame_of


def test_screws_give_way_to_a_bracket_once() -> None:
    sill = weak(example_a(), role=Role.SILL_RAIL)

    assert ["a bracket at each end of the sill rail"] == said(bracket, sill)
    assert [] == said(bracket, weak(example_a(), role=Role.TRIMMER_PLY))  # has one
    assert [] == said(bracket, weak(example_a()))


def test_a_heavy_bracket_lies_on_a_flat_rail_only() -> None:
    """65 wide: on 89 it lies, on an edge of 38 it does not (structure.md, 5.13 b: width <= b + 2)."""
    assert ["the heavy bracket at each end of the sill rail"] == said(heavy_bracket, weak(example_a(), role=Role.SILL_RAIL))
    assert [] == said(heavy_bracket, weak(example_a(), role=Role.TRIMMER_PLY))
    assert [] == said(heavy_bracket, weak(example_a(), role=Role.LADDER_NOGGIN))


def test_a_pair_follows_the_heavy_bracket() -> None:
    spot = weak(example_a(), role=Role.SILL_RAIL)
    heavy = taken(heavy_bracket, spot).additions
    pair = taken(bracket_pair, weak(example_a(), heavy, role=Role.SILL_RAIL)).additions
    joints = {
        (member.start_joint, member.end_joint) for member in frame_of(example_a(), pair).members if member.role is Role.SILL_RAIL
    }

    assert {(EndJoint.BRACKET_PAIR, EndJoint.BRACKET_PAIR)} == joints
    assert [] == said(bracket_pair, weak(example_a(), pair, role=Role.SILL_RAIL))
    assert [] == said(heavy_bracket, weak(example_a(), pair, role=Role.SILL_RAIL))


def test_hung_ladders() -> None:
    spot = weak(example_a())

    assert ["brackets at both ends of every noggin of the hung side ladders"] == said(ladder_brackets, spot)
    assert ["a noggin half way in each bay of the hung side ladders"] == said(ladder_halved, spot)
    assert ["C24 for ladder noggin, ladder upright"] == said(stronger_noggins, spot)
    assert [] == said(ladder_brackets, weak(example_a(), Additions(ladder_brackets=True)))
