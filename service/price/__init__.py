"""The price stage: bill and labour become money, in minor units, with one rounding rule."""

from service.price.build_up import price
from service.price.price import Price, PricedLine, SaleKind, SaleLine, Stage, Step, StepKind
from service.price.rounding import share, to_minor_units

__all__ = ["Price", "PricedLine", "SaleKind", "SaleLine", "Stage", "Step", "StepKind", "price", "share", "to_minor_units"]
