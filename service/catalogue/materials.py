"""What a shop sells by code: timber, board, fixings, finishes, sundries. One row of `materials.csv` each.

Null means "not declared" or "does not apply". Columns: `DEVELOPERS.md`, catalogue data.
"""

from __future__ import annotations

import msgspec


class Material(msgspec.Struct, frozen=True, kw_only=True):
    """One thing sold, with the data that the design, the cutting and the checks read."""

    code: str
    kind: str  # timber, board, wood_screw, board_screw, frame_plug, angle_bracket, packer, adhesive, ...
    board_kind: str | None = None  # mdf, plasterboard, plywood, cement_board, calcium_silicate: only for boards
    uses: tuple[str, ...] = ()  # what the shop uses it for, such as `caulk`; the first code of a use is taken
    description: str
    unit: str  # what one pack is called: bar, sheet, box, tin, ...
    pack_count: int = 1
    pack_content: float | None = None  # in `pack_content_unit`, for things sold by measure
    pack_content_unit: str | None = None
    length_mm: float | None = None
    width_mm: float | None = None  # timber: wide side d; board: sheet width
    thickness_mm: float | None = None  # timber: narrow side b
    mass_kg: float | None = None  # of one piece
    strength_class: str | None = None  # EN 338; None: ungraded
    density_kg_m3: float | None = None
    edge: str | None = None
    reaction_to_fire: str | None = None
    stud_pitch_mm: float | None = None  # greatest centre spacing that a board allows
    waste_ratio: float = 0.0
    coverage: float | None = None  # in `coverage_unit`
    coverage_unit: str | None = None
    diameter_mm: float | None = None
    root_diameter_mm: float | None = None
    thread_length_mm: float | None = None
    head_diameter_mm: float | None = None
    withdrawal_mpa: float | None = None
    head_pull_mpa: float | None = None
    declared_density_kg_m3: float | None = None
    yield_moment_n_mm: float | None = None
    tensile_kn: float | None = None
    plug_hole_mm: float | None = None
    least_embedment_mm: float | None = None
    bracket_up_n: float | None = None
    bracket_side_n: float | None = None
    bracket_pull_n: float | None = None
    leg_screw_count: int | None = None
    screw_code: str | None = None
    drill_depth_mm: float | None = None
    greatest_fixture_mm: float | None = None
    head_form: str | None = None
    drive: str | None = None
    predrill: str | None = None
    approval: str | None = None
    free_area_mm2: float | None = None
    standing: str = "stated"  # `invented` in the demo data


class FixingLoad(msgspec.Struct, frozen=True, kw_only=True):
    """Working loads of one plug or screw in one wall, kN; a wall without a row has no value."""

    code: str
    wall: str
    units: str | None = None
    embedment_mm: float | None = None
    working_tension_kn: float
    working_shear_kn: float
    unit_strength_mpa: float | None = None
    least_edge_mm: float | None = None
    least_spacing_mm: float | None = None
    hammer_drilling: bool = False
    multiple_use_only: bool = False
    standing: str = "stated"
