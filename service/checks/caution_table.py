"""Every caution of this version: what it stops, for whom it is, who clears it, and its source (`knowledge/cautions.md`).

What makes a row fire and what it then says stands in the modules of its section: `heat_rows` (H), `power_rows` (E),
`structure_rows` (S), `building_rows` (B), `use_rows` (V), `work_rows` (W), `money_rows` (M).
"""

from __future__ import annotations

from typing import Final, NamedTuple

from service.checks.result import Audience, Clears, Stops
from service.survey.survey import ClearingRole

C, F, S = (Audience.CUSTOMER,), (Audience.FITTER,), (Audience.SHOP,)
CP, FM = "common practice, no source", "from memory"
DESIGN, FIRM, WORK, EARLY, NOTHING = Stops.DESIGN, Stops.FIRM_QUOTE, Stops.THIS_WORK, Stops.EARLY_START, Stops.NOTHING
CODE, MAKER, ELECTRICIAN, GAS = Clears.CODE, Clears.MAKER, Clears.ELECTRICIAN, Clears.GAS
ENGINEER, SURVEYOR, OWNER = Clears.ENGINEER, Clears.SURVEYOR, Clears.OWNER


class CautionKind(NamedTuple):
    """What is fixed about a row."""

    stops: Stops
    audience: tuple[Audience, ...]
    who_clears: tuple[Clears, ...]
    source: str = CP


KINDS: Final = {
    # 1 heat and the fire
    "H01": CautionKind(FIRM, C + S, (MAKER,)),
    "H02": CautionKind(DESIGN, C + S, (MAKER,)),
    "H03": CautionKind(DESIGN, C + S, (MAKER,)),  # nothing where the maker states no distance
    "H04": CautionKind(NOTHING, C + F, (MAKER,), FM),
    "H05": CautionKind(DESIGN, C + S, (MAKER,)),  # firm_quote for timber behind a board that does not burn
    "H06": CautionKind(NOTHING, F, (MAKER,)),
    "H07": CautionKind(DESIGN, C + S, (MAKER,)),
    "H08": CautionKind(FIRM, C + S, (MAKER,)),
    "H09": CautionKind(WORK, C + F, (MAKER, ELECTRICIAN), "EN 60335-2-30, marking and instructions, from memory"),
    "H10": CautionKind(NOTHING, C, (MAKER,)),
    "H11": CautionKind(NOTHING, C + F, (SURVEYOR,)),
    "H12": CautionKind(NOTHING, C, (CODE,), "ecodesign rules for local space heaters, from memory"),
    "H13": CautionKind(NOTHING, C + S, (CODE, GAS)),  # a flame that is wished has no field: only electric fires can be asked for
    "H14": CautionKind(NOTHING, C, (MAKER,)),
    "H15": CautionKind(NOTHING, C, (MAKER,)),
    "H16": CautionKind(NOTHING, C + S, (CODE,), "Approved Document B volume 1, B2, from memory"),  # firm_quote for a whole wall
    "H17": CautionKind(NOTHING, F + S, (MAKER,), "IEC 60335-1 clause 11, from memory"),
    # 2 electricity
    "E01": CautionKind(WORK, C + F, (ELECTRICIAN,), "BS 7671, from memory"),
    "E02": CautionKind(WORK, C + F, (CODE,), "Approved Document P, 2013 edition: seen in summaries"),
    "E03": CautionKind(WORK, C + F, (CODE,), FM),
    "E04": CautionKind(WORK, C + F, (ELECTRICIAN,), "computed: 13 A x 230 V = 2990 W"),
    "E05": CautionKind(WORK, F, (ELECTRICIAN,), "BS 7671 522.6.202, seen quoted in electricians' articles"),
    "E06": CautionKind(WORK, C + F, (ELECTRICIAN,), "BS 7671 526.3, from memory"),
    "E07": CautionKind(DESIGN, F + S, (ELECTRICIAN,)),
    "E08": CautionKind(WORK, F, (ELECTRICIAN,), "BS 7671 522.6, from memory"),
    "E09": CautionKind(WORK, C + F, (ELECTRICIAN,), FM),
    "E10": CautionKind(WORK, C + F, (MAKER,)),
    "E11": CautionKind(WORK, F, (ELECTRICIAN,), FM),
    "E12": CautionKind(NOTHING, F, (ELECTRICIAN,)),
    "E13": CautionKind(NOTHING, C + S, (CODE,), "Approved Document M volume 1, from memory"),
    "E14": CautionKind(NOTHING, C + F, (MAKER,)),  # an alarm that is too near stops this work
    "E15": CautionKind(WORK, F, (CODE,)),
    # 3 structure and fixing
    "S01": CautionKind(WORK, F, (SURVEYOR,)),
    "S02": CautionKind(FIRM, F + S, (ENGINEER, MAKER)),
    "S03": CautionKind(FIRM, C + S, (SURVEYOR,)),
    "S04": CautionKind(FIRM, F + S, (ENGINEER,)),
    "S05": CautionKind(NOTHING, F, (MAKER,)),
    "S06": CautionKind(NOTHING, F, (MAKER,)),
    "S07": CautionKind(NOTHING, F, (SURVEYOR,)),
    "S08": CautionKind(FIRM, F + S, (SURVEYOR,)),
    "S09": CautionKind(WORK, F, (SURVEYOR,)),
    "S10": CautionKind(WORK, F, (ENGINEER,)),
    "S11": CautionKind(WORK, F, (SURVEYOR,)),
    "S12": CautionKind(FIRM, S, (ENGINEER,), "structure.md, 5.2"),
    "S13": CautionKind(NOTHING, C + S, (ENGINEER,), "EN 1991-1-1, UK annex, from memory; thresholds common practice"),
    "S14": CautionKind(FIRM, C + S, (ENGINEER,)),
    "S16": CautionKind(NOTHING, F + S, (SURVEYOR,)),
    "S17": CautionKind(NOTHING, F, (SURVEYOR,), "EN 1995-1-1, 8.3.1.2, from memory"),
    "S18": CautionKind(NOTHING, C + F, (OWNER, CODE)),
    "S19": CautionKind(FIRM, C + S, (ENGINEER,)),
    "S20": CautionKind(NOTHING, C + F, (SURVEYOR,)),
    "S21": CautionKind(FIRM, S, (MAKER,)),
    # 4 building, old chimney, damp
    "B02": CautionKind(WORK, C + F, (SURVEYOR,)),
    "B03": CautionKind(DESIGN, C + S, (GAS,), "Gas Safety (Installation and Use) Regulations 1998, from memory"),
    "B04": CautionKind(NOTHING, C + S, (GAS, CODE)),  # design for an appliance's vent, firm_quote for an unknown one
    "B05": CautionKind(NOTHING, C + S, (SURVEYOR,)),  # design where damp shows
    "B06": CautionKind(WORK, C + F, (OWNER,), "Control of Asbestos Regulations 2012, from memory"),
    "B07": CautionKind(NOTHING, F, (SURVEYOR,), FM),
    "B08": CautionKind(WORK, F, (SURVEYOR,)),
    "B09": CautionKind(NOTHING, F, (SURVEYOR,)),
    "B10": CautionKind(WORK, C + F, (SURVEYOR,)),
    "B11": CautionKind(WORK, C, (OWNER, CODE)),
    "B12": CautionKind(WORK, F, (CODE,), "Approved Document B, from memory"),
    "B13": CautionKind(NOTHING, C + S, (CODE,)),
    "B14": CautionKind(NOTHING, F, (SURVEYOR,)),
    "B15": CautionKind(NOTHING, C + F, (SURVEYOR,)),
    "B16": CautionKind(WORK, F + S, (SURVEYOR,)),
    "B17": CautionKind(DESIGN, C + S, (SURVEYOR, OWNER)),
    # 5 viewing, use, finish
    "V01": CautionKind(NOTHING, C, (OWNER,)),
    "V02": CautionKind(NOTHING, C, (OWNER,)),
    "V03": CautionKind(NOTHING, C, (OWNER,)),
    "V04": CautionKind(DESIGN, S, (MAKER,)),
    "V05": CautionKind(NOTHING, C, (OWNER,)),
    "V06": CautionKind(FIRM, C + S, (OWNER,)),
    "V07": CautionKind(NOTHING, C, (OWNER,)),
    "V08": CautionKind(NOTHING, C, (OWNER,), "movement of MDF: mdf-info.eu, seen"),
    "V10": CautionKind(NOTHING, C, (MAKER,)),
    "V11": CautionKind(DESIGN, S, (SURVEYOR,)),
    "V12": CautionKind(NOTHING, C, (OWNER,)),
    # 6 work, handling, dust, delivery
    "W01": CautionKind(NOTHING, F + S, (SURVEYOR,), "HSE lifting filter, from memory"),
    "W02": CautionKind(NOTHING, F + S, (SURVEYOR,), "geometry, computed"),
    "W03": CautionKind(DESIGN, F + S, (SURVEYOR,)),
    "W04": CautionKind(NOTHING, F, (CODE,), "EH40, seen in trade articles"),
    "W05": CautionKind(NOTHING, F, (CODE,), FM),
    "W06": CautionKind(NOTHING, F, (CODE,), "Work at Height Regulations 2005, from memory"),
    "W07": CautionKind(NOTHING, S, (CODE,), "CDM Regulations 2015, from memory"),
    "W08": CautionKind(WORK, C + F, (OWNER,)),
    "W09": CautionKind(NOTHING, C + S, (SURVEYOR,)),
    "W10": CautionKind(NOTHING, F, (SURVEYOR,)),
    "W11": CautionKind(NOTHING, F, (SURVEYOR,)),
    "W12": CautionKind(NOTHING, F, (CODE,), FM),
    # 7 money and law
    "M01": CautionKind(FIRM, C + S, (OWNER,)),
    "M02": CautionKind(EARLY, C, (CODE,), "Consumer Contracts Regulations 2013, seen on trading standards pages"),
    "M03": CautionKind(NOTHING, S, (CODE,), "gov.uk guidance on the reverse charge for building services, seen"),
    "M06": CautionKind(NOTHING, C, (MAKER,)),
    "M07": CautionKind(NOTHING, C, (OWNER,)),
}
ROLES: Final = {  # of the person in `cleared` who is who may clear
    Clears.CODE: ClearingRole.BUILDING_CONTROL,
    Clears.MAKER: ClearingRole.MAKER,
    Clears.ELECTRICIAN: ClearingRole.ELECTRICIAN,
    Clears.GAS: ClearingRole.GAS_ENGINEER,
    Clears.ENGINEER: ClearingRole.STRUCTURAL_ENGINEER,
    Clears.SURVEYOR: ClearingRole.SURVEYOR,
    Clears.OWNER: ClearingRole.OWNER,
}


def clearing_roles(code: str) -> tuple[ClearingRole, ...]:
    """Roles that may clear a caution; empty: there is no such caution."""
    kind = KINDS.get(code)
    return tuple(ROLES[who] for who in kind.who_clears) if kind else ()
