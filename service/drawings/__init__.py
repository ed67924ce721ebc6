"""The drawings stage: a frame becomes views that a fitter works from, as SVG."""

from service.drawings.register import View, draw

__all__ = ["View", "draw"]
