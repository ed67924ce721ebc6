"""The drawings stage: a frame becomes views that a fitter works from, a plan what a yard saws from; as SVG, DXF and glTF."""

from service.drawings.cut_bars_view import draw_bar_cuts
from service.drawings.cut_sheets_view import draw_sheet_cuts
from service.drawings.dxf import write_dxf
from service.drawings.gltf import write_gltf
from service.drawings.register import View, draw
from service.drawings.svg import write_svg

__all__ = ["View", "draw", "draw_bar_cuts", "draw_sheet_cuts", "write_dxf", "write_gltf", "write_svg"]
