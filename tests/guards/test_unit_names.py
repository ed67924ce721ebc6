"""Every number of a struct says its unit in its name (`service.units.UNIT_SUFFIXES`)."""

from __future__ import annotations

import importlib
import pkgutil
from decimal import Decimal

import msgspec
from msgspec import inspect

import service
from service.units import UNIT_SUFFIXES

# Numbers that need no unit, each with its reason. An entry that no struct has any more fails too.
ALLOWED = {
    "service.brief.job.Assumption.value": "the pointer beside it names the field, and that name says the unit",
    "service.brief.job.Doubt.value": "the pointer beside it names the field, and that name says the unit",
    "service.catalogue.rows.RowFault.line": "a position in a file, counted from 1",
    "service.offers.estimate_wire.EffectAnswer.value": "the pointer beside it names the field, and that name says the unit",
    "service.quote.wire_alternatives.Operation.value": "the path beside it names the field, and that name says the unit",
    "service.rules.load._Row.value": "the row's key ends in the unit (tests/guards/test_rules.py)",
    "service.rules.ruleset.Rule.value": "the row's key ends in the unit (tests/guards/test_rules.py)",
    "service.settings.Settings.port": "a TCP port, a name more than a number",
    "service.store.installation.Runner.group_id": "the operating system's number of a group",
    "service.store.installation.Runner.user_id": "the operating system's number of a user",
    "service.web.problems.Problem.status": "RFC 9457 names it",
    "service.catalogue.item_index.Sought.sizes": "the name of the field beside them says the unit",
    "service.catalogue.item_index.Sought.words": "values of fields, only compared",
    "service.web.problems.ProblemFault.line": "a position in a file, counted from 1",
    "service.web.serving.Door.port": "a number that names, not one that measures",
    "service.survey.terms.PatchStep.value": "the path beside it names the field, and that name says the unit",
    "service.survey.site.Site.storey": "floors above the ground, as a building names them",
}

# Structs whose numbers are all of one unit and bear the symbols of the trade's formulas, each with its reason.
SYMBOLS = {
    "service.frame.setting_out.SettingOut": "the symbols of framing.md, section 1; its docstring says: tenths of a millimetre",
}


def service_structs() -> tuple[type[msgspec.Struct], ...]:
    """Every struct that any module of the service defines."""
    for module in pkgutil.walk_packages(service.__path__, "service."):
        importlib.import_module(module.name)
    found: set[type[msgspec.Struct]] = set()
    waiting: list[type[msgspec.Struct]] = [msgspec.Struct]
    while waiting:
        below = set(waiting.pop().__subclasses__()) - found
        found |= below
        waiting.extend(below)
    return tuple(sorted((kind for kind in found if _is_ours(kind)), key=_name))


def _is_ours(kind: type[msgspec.Struct]) -> bool:
    """Not what the web framework makes of a handler's signature once an application has been made."""
    return kind.__module__.startswith("service.") and not kind.__name__.endswith("_signature_model")


def unnamed_units(kind: type[msgspec.Struct]) -> tuple[str, ...]:
    """Fields of a struct that hold numbers and do not say their unit."""
    try:
        info = inspect.type_info(kind)
    except NameError as error:
        return (f"{_name(kind)}: its annotations cannot be read while it runs: {error}",)
    assert isinstance(info, inspect.StructType)
    names = {field.name for field in info.fields}
    return tuple(
        f"{_name(kind)}.{field.name}"
        for field in info.fields
        if _is_numeric(field.type) and not field.name.endswith(UNIT_SUFFIXES) and not _has_unit_beside(field.name, names)
    )


def _has_unit_beside(name: str, names: set[str]) -> bool:
    return f"{name}_unit" in names or (name == "value" and "unit" in names)


def _name(kind: type[msgspec.Struct]) -> str:
    return f"{kind.__module__}.{kind.__qualname__}"


def _is_numeric(kind: inspect.Type) -> bool:
    if isinstance(kind, inspect.IntType | inspect.FloatType | inspect.DecimalType):
        return True
    return any(_is_numeric(part) for part in _parts(kind))


def _parts(kind: inspect.Type) -> tuple[inspect.Type, ...]:
    match kind:
        case inspect.Metadata():
            return (kind.type,)
        case inspect.UnionType():
            return kind.types
        case inspect.TupleType():
            return kind.item_types
        case inspect.CollectionType():
            return (kind.item_type,)
        case inspect.DictType():
            return (kind.value_type,)
        case _:
            return ()


def test_every_number_says_its_unit() -> None:
    unnamed = {name for kind in service_structs() if _name(kind) not in SYMBOLS for name in unnamed_units(kind)}

    assert set() == unnamed - ALLOWED.keys()
    assert set() == ALLOWED.keys() - unnamed, "take these out of ALLOWED"
    assert SYMBOLS.keys() <= {_name(kind) for kind in service_structs()}


def test_all_structs_are_seen() -> None:
    names = {_name(kind) for kind in service_structs()}

    assert {"service.survey.wishes.Brief", "service.frame.member.Member", "service.catalogue.rates.Account"} <= names


class Planted(msgspec.Struct):
    width: float
    height_mm: float
    loads: dict[str, Decimal]
    levels: tuple[int, ...] | None
    coverage: float
    coverage_unit: str
    value: float
    unit: str
    name: str
    fitted: bool


def test_planted_numbers_without_a_unit_are_found() -> None:
    found = [name.rpartition(".")[2] for name in unnamed_units(Planted)]

    assert ["width", "loads", "levels"] == found
