"""A catalogue revision as a value: what the shop sells, knows and charges."""

from service.catalogue.demo_data import DEMO_FILES, demo_catalogue, demo_text
from service.catalogue.materials import FixingLoad, Material
from service.catalogue.models import Appliance, Bracket, Screen
from service.catalogue.rates import Account, LabourRate, PriceStep, Trade
from service.catalogue.rows import RowFault, RowFaultsError, read_rows, to_minor
from service.catalogue.snapshot import Catalogue

__all__ = [
    "DEMO_FILES",
    "Account",
    "Appliance",
    "Bracket",
    "Catalogue",
    "FixingLoad",
    "LabourRate",
    "Material",
    "PriceStep",
    "RowFault",
    "RowFaultsError",
    "Screen",
    "Trade",
    "demo_catalogue",
    "demo_text",
    "read_rows",
    "to_minor",
]
