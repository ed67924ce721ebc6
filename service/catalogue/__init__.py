"""A catalogue revision as a value: what the shop sells, knows and charges."""

from service.catalogue.demo_data import DEMO_FILES, demo_catalogue, demo_rows, demo_text
from service.catalogue.materials import FixingLoad, Material
from service.catalogue.models import Appliance, Bracket, Screen
from service.catalogue.money_text import money
from service.catalogue.pricing import price_step
from service.catalogue.rates import Account, LabourRate, PriceStep, Trade
from service.catalogue.revision import CatalogueRows, catalogue_digest, fixing_load_key, labour_rate_key, make_catalogue
from service.catalogue.rows import MINOR_PER_MAJOR, RowFault, RowFaultsError, read_rows, to_minor
from service.catalogue.snapshot import Catalogue

__all__ = [
    "DEMO_FILES",
    "MINOR_PER_MAJOR",
    "Account",
    "Appliance",
    "Bracket",
    "Catalogue",
    "CatalogueRows",
    "FixingLoad",
    "LabourRate",
    "Material",
    "PriceStep",
    "RowFault",
    "RowFaultsError",
    "Screen",
    "Trade",
    "catalogue_digest",
    "demo_catalogue",
    "demo_rows",
    "demo_text",
    "fixing_load_key",
    "labour_rate_key",
    "make_catalogue",
    "money",
    "price_step",
    "read_rows",
    "to_minor",
]
