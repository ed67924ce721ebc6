"""Bills of the worked examples: code, need before waste, packs, price of one pack, charged.

Source: `knowledge/worked-examples.md`, "Bill A", "Bill B", "Bill C" (after checks). An empty need: the packs are a plan.
"""

from __future__ import annotations

from decimal import Decimal

BILL_A = """
TM-1035A - 5 4.13 20.65
TM-1042H - 3 5.52 16.56
TM-1049R - 4 6.44 25.76
BD-2015R - 3 23.90 71.70
BD-2218L - 1 44.80 44.80
FX-3070M 110 1 9.90 9.90
FX-3150Z 72 2 10.90 21.80
FX-3040E 158 1 5.10 5.10
FX-3050R 14 1 7.60 7.60
FX-3126Y 8 1 9.60 9.60
FX-3316E 16 1 12.70 12.70
FX-3310Y 4 1 16.40 16.40
FX-3405B 22 1 11.30 11.30
FX-3035Z 80 1 6.40 6.40
PK-3601P 44 1 5.40 5.40
SL-4010J 9.305 2 3.90 7.80
SL-4025A 1.707 1 5.20 5.20
SL-4110T 268.7 1 9.60 9.60
SL-4125J 4.889 1 7.30 7.30
SL-4040S 8.564 1 1.55 1.55
PT-6010H 0.5 1 21.40 21.40
PT-6040R 0.833 1 43.80 43.80
JN-7510N 2.287 1 9.90 9.90
EL-7015A 1 1 4.40 4.40
EL-7020F 1 1 1.25 1.25
EL-7040C 1 1 5.30 5.30
EL-7010V 1 1 6.90 6.90
EL-7021G 1 1 1.10 1.10
SD-8010G 4 4 9.40 9.40
SD-8030D 1 1 8.60 8.60
SD-8060L 1 1 12.50 12.50
SD-8020T - 1 4.90 4.90
SD-8050A 1 1 48.00 48.00
SD-8070X 2 2 36.00 72.00
"""
BILL_B = """
TM-1091L - 8 6.19 49.52
TM-1098U - 1 8.28 8.28
TM-1105B - 5 9.66 48.30
BD-2125K - 3 8.10 24.30
BD-2015R - 1 23.90 23.90
BD-2218L - 1 44.80 44.80
FX-3100V 104 2 8.40 16.80
FX-3070M 7 1 9.90 9.90
FX-3150Z 80 2 10.90 21.80
FX-3238V 194 1 5.70 5.70
FX-3040E 44 1 5.10 5.10
FX-3050R 18 1 7.60 7.60
FX-3316E 17 1 12.70 12.70
FX-3310Y 4 1 16.40 16.40
FX-3405B 23 1 11.30 11.30
FX-3035Z 84 1 6.40 6.40
PK-3601P 29 1 5.40 5.40
SL-4010J 5.19 1 3.90 3.90
SL-4025A 1.981 1 5.20 5.20
SL-4110T 29.48 1 9.60 9.60
SL-4125J 0.54 1 7.30 7.30
SL-4040S 9.585 1 1.55 1.55
PL-5045J 10.102 1 4.10 4.10
PL-5025M 4.158 1 9.80 9.80
PL-5063D - 1 2.70 2.70
PL-5060A - 2 2.15 4.30
PT-6010H 0.054 1 21.40 21.40
PT-6031F 1.199 1 31.60 31.60
JN-7510N 2.51 1 9.90 9.90
EL-7015A 1 1 4.40 4.40
EL-7020F 1 1 1.25 1.25
EL-7040C 1 1 5.30 5.30
EL-7010V 1 1 6.90 6.90
EL-7021G 1 1 1.10 1.10
SD-8010G 4 4 9.40 9.40
SD-8030D 1 1 8.60 8.60
SD-8060L 1 1 12.50 12.50
SD-8020T - 1 4.90 4.90
SD-8050A 2 2 48.00 96.00
SD-8070X 2 2 36.00 72.00
"""
BILL_C = """
TM-1007V - 7 3.02 21.14
TM-1021K - 2 4.72 9.44
BD-2012M - 1 19.80 19.80
BD-2018U - 1 27.40 27.40
FX-3070M 128 1 9.90 9.90
FX-3100V 44 1 8.40 8.40
FX-3040E 62 1 5.10 5.10
FX-3045K 16 1 6.30 6.30
FX-3050R 4 1 7.60 7.60
FX-3316E 14 1 12.70 12.70
FX-3310Y 5 1 16.40 16.40
FX-3405B 11 1 11.30 11.30
FX-3035Z 34 1 6.40 6.40
PK-3601P 29 1 5.40 5.40
SL-4010J 5.449 1 3.90 3.90
SL-4025A 1.255 1 5.20 5.20
SL-4110T 192.7 1 9.60 9.60
SL-4125J 2.267 1 7.30 7.30
SL-4040S 4.924 1 1.55 1.55
PT-6010H 0.317 1 21.40 21.40
PT-6040R 0.529 1 43.80 43.80
JN-7510N 1.245 1 9.90 9.90
SD-8010G 4 4 9.40 9.40
SD-8030D 1 1 8.60 8.60
SD-8060L 1 1 12.50 12.50
SD-8020T - 1 4.90 4.90
SD-8050A 1 1 48.00 48.00
"""
BILLS = {"A": BILL_A, "B": BILL_B, "C": BILL_C}
MATERIALS_MINOR = {"A": 44_657, "B": 48_390, "C": 30_533}  # without disposal and hire

type Row = tuple[str, int, int, int]  # need as written, packs, each and charged in minor units


def worked_bill(name: str) -> dict[str, Row]:
    """Code to need, packs, price of one pack and charge of a worked bill."""
    rows = [line.split() for line in BILLS[name].split("\n") if line]
    return {code: (need, int(packs), _minor(each), _minor(charged)) for code, need, packs, each, charged in rows}


def half_a_digit(need: str) -> float:
    """Half of the last digit that a worked figure is written to."""
    return 0.5 * 10.0 ** -len(need.partition(".")[2]) + 1e-9


def _minor(amount: str) -> int:
    return int(Decimal(amount) * 100)
