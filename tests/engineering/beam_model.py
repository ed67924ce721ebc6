"""Beams by finite elements (PyNiteFEA): an outside look at moments, sags and shares. Units N, mm, MPa."""

from __future__ import annotations

from typing import NamedTuple

from Pynite import FEModel3D  # type: ignore[import-untyped]  # the library has no types

COMBINATION = "Combo 1"
# What a support holds: moves along x, y, z, turns about x, y, z.
BUILT_IN = (True, True, True, True, True, True)
PINNED = (True, True, True, True, False, False)
ROLLING = (False, True, True, False, False, False)
GUIDED = (False, False, True, True, True, True)


class Found(NamedTuple):
    """What the model finds."""

    moment_n_mm: float
    sag_mm: float  # greatest
    middle_sag_mm: float
    shear_n: float


def beam(
    span_mm: float,
    stiffness_n_mm2: float,
    *,
    uniform_n_per_mm: float = 0.0,
    points: tuple[tuple[float, float], ...] = (),
    cantilever: bool = False,
) -> Found:
    """Greatest moment and sag of a span on two supports, or of a cantilever, under loads downward (N at mm)."""
    model = FEModel3D()
    model.add_material("wood", stiffness_n_mm2, stiffness_n_mm2, 0.0, 0.0)
    model.add_section("bar", 1.0, 1.0, 1.0, 1.0)
    model.add_node("A", 0.0, 0.0, 0.0)
    model.add_node("B", span_mm, 0.0, 0.0)
    model.def_support("A", *(BUILT_IN if cantilever else PINNED))
    if not cantilever:
        model.def_support("B", *ROLLING)
    model.add_member("M", "A", "B", "wood", "bar")
    if uniform_n_per_mm:
        model.add_member_dist_load("M", "FY", -uniform_n_per_mm, -uniform_n_per_mm)
    for load_n, at_mm in points:
        model.add_member_pt_load("M", "FY", -load_n, at_mm)
    model.analyze(check_statics=False)
    member = model.members["M"]
    sags = [-float(member.deflection("dy", span_mm * step / 400, COMBINATION)) for step in range(401)]
    moments = [abs(float(member.moment("Mz", span_mm * step / 400, COMBINATION))) for step in range(401)]
    moments += [abs(float(member.moment("Mz", at_mm, COMBINATION))) for _, at_mm in points]
    shears = [abs(float(member.shear("Fy", at_mm, COMBINATION))) for at_mm in (0.0, span_mm)]
    return Found(max(moments), max(sags), sags[200], max(shears))


def guided_bar_mm(force_n: float, span_mm: float, stiffness_n_mm2: float) -> float:
    """How far one end of a bar moves that is free to move across and held against turning, the other end built in."""
    model = FEModel3D()
    model.add_material("wood", stiffness_n_mm2, stiffness_n_mm2, 0.0, 0.0)
    model.add_section("bar", 1.0, 1.0, 1.0, 1.0)
    model.add_node("A", 0.0, 0.0, 0.0)
    model.add_node("B", span_mm, 0.0, 0.0)
    model.def_support("A", *BUILT_IN)
    model.def_support("B", *GUIDED)
    model.add_member("M", "A", "B", "wood", "bar")
    model.add_node_load("B", "FY", -force_n)
    model.analyze(check_statics=False)
    return -float(model.nodes["B"].DY[COMBINATION])
