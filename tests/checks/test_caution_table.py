from __future__ import annotations

import re
from pathlib import Path

from service.checks import Clears, Stops
from service.checks.caution_table import KINDS, ROLES, clearing_roles
from service.survey.survey import ClearingRole
from tests.checks.row_cases import ALWAYS, CASES, CONTRIVED, A, codes, facts_of, found_in
from tests.guards.tree import ROOT
from tests.sold_examples import NAMES, sold


def test_every_caution_has_a_request_that_makes_it_fire_and_one_that_does_not() -> None:
    assert set(KINDS) == CASES.keys() | CONTRIVED.keys() | ALWAYS


def test_rows_that_no_request_reaches_fire_on_contrived_facts() -> None:
    """By hand: such a design is refused, or laid out so that the check holds; the row stands should that change."""
    plain = found_in(facts_of(A)).keys()
    for code, contrive in CONTRIVED.items():
        says = found_in(contrive())[code]

        assert code not in plain
        assert says[0].isupper()
        assert says.endswith(".")


def test_rows_of_every_breast_fire_on_every_breast() -> None:
    for name in NAMES:
        assert codes(sold(name)) >= ALWAYS


def test_every_caution_has_a_source_readers_and_somebody_who_clears_it() -> None:
    for code, kind in KINDS.items():
        assert kind.source, code
        assert kind.audience, code
        assert kind.who_clears, code
        assert clearing_roles(code), code


def test_every_code_that_a_module_names_is_in_the_table() -> None:
    folder = ROOT / "service" / "checks"
    named = {
        code for file in folder.glob("*_rows.py") for code in re.findall(r'Finding\(\s*"([A-Z]\d\d)"', file.read_text("utf-8"))
    }

    assert set(KINDS) == named
    assert Path(folder).is_dir()


def test_whoever_may_clear_has_a_role() -> None:
    """`knowledge/cautions.md`, head: who clears; `knowledge/survey.md`, section 13: roles."""
    assert set(Clears) == ROLES.keys()
    assert set(ClearingRole) == set(ROLES.values())
    assert () == clearing_roles("Z99")


def test_codes_that_stop_more_than_this_work_are_few() -> None:
    """`knowledge/cautions.md`: rows on design or firm_quote. B04 and B05 by what they find."""
    stopping = {code for code, kind in KINDS.items() if kind.stops in {Stops.DESIGN, Stops.FIRM_QUOTE}}

    assert {
        "H01",
        "H02",
        "H03",
        "H05",
        "H07",
        "H08",
        "E07",
        "V04",
        "V11",
        "W03",
        "S02",
        "S03",
        "S04",
        "S08",
        "S12",
        "S14",
        "S19",
        "S21",
        "B03",
        "B17",
        "V06",
        "M01",
    } == stopping
