"""A catalogue revision as a value: what the shop sells, knows and charges."""

from service.catalogue.dated import DatedRevision, in_force
from service.catalogue.demo_data import DEMO_FILES, demo_catalogue, demo_rows, demo_text
from service.catalogue.differences import Change, Difference, FieldChange, KindCount, RowChange, difference, rows_of
from service.catalogue.freezing import PARTS, FrozenPart, PartBrokenError, freeze, thaw, thaw_part
from service.catalogue.item_index import ItemIndex, Sought
from service.catalogue.kinds import FORMS, KindForm, Row, RowKind, key_of
from service.catalogue.limits import CLOSED_SETS, CODE_PATTERN, CODES, CURRENCY_PATTERN, TEXT_LENGTH_COUNT, range_of
from service.catalogue.materials import FixingLoad, Material
from service.catalogue.models import Appliance, Bracket, Screen
from service.catalogue.money_text import money
from service.catalogue.pricing import price_step
from service.catalogue.rates import Account, LabourRate, PriceStep, Trade
from service.catalogue.revision import CatalogueRows, catalogue_digest, fixing_load_key, labour_rate_key, make_catalogue
from service.catalogue.row_reading import (
    MOST_ROWS_COUNT,
    MOST_SHOWN_COUNT,
    NO_DAY,
    Faults,
    RowReader,
    in_pieces,
    read_csv,
    read_json,
)
from service.catalogue.row_writing import write_csv, write_json
from service.catalogue.rows import MINOR_PER_MAJOR, RowFault, RowFaultsError, read_rows, to_minor
from service.catalogue.snapshot import Catalogue
from service.catalogue.soundness import Finding, Soundness, soundness_of
from service.catalogue.text_form import DecimalMark, Delimiter, Encoding, TextForm

__all__ = [
    "CLOSED_SETS",
    "CODES",
    "CODE_PATTERN",
    "CURRENCY_PATTERN",
    "DEMO_FILES",
    "FORMS",
    "MINOR_PER_MAJOR",
    "MOST_ROWS_COUNT",
    "MOST_SHOWN_COUNT",
    "NO_DAY",
    "PARTS",
    "TEXT_LENGTH_COUNT",
    "Account",
    "Appliance",
    "Bracket",
    "Catalogue",
    "CatalogueRows",
    "Change",
    "DatedRevision",
    "DecimalMark",
    "Delimiter",
    "Difference",
    "Encoding",
    "Faults",
    "FieldChange",
    "Finding",
    "FixingLoad",
    "FrozenPart",
    "ItemIndex",
    "KindCount",
    "KindForm",
    "LabourRate",
    "Material",
    "PartBrokenError",
    "PriceStep",
    "Row",
    "RowChange",
    "RowFault",
    "RowFaultsError",
    "RowKind",
    "RowReader",
    "Screen",
    "Sought",
    "Soundness",
    "TextForm",
    "Trade",
    "catalogue_digest",
    "demo_catalogue",
    "demo_rows",
    "demo_text",
    "difference",
    "fixing_load_key",
    "freeze",
    "in_force",
    "in_pieces",
    "key_of",
    "labour_rate_key",
    "make_catalogue",
    "money",
    "price_step",
    "range_of",
    "read_csv",
    "read_json",
    "read_rows",
    "rows_of",
    "soundness_of",
    "thaw",
    "thaw_part",
    "to_minor",
    "write_csv",
    "write_json",
]
