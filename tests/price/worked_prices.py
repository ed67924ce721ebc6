"""Build-ups of the worked examples, step by step, in minor units.

Source: `knowledge/worked-examples.md`, "Price A", "Price B", "Price C".
"""

from __future__ import annotations

STEPS = {
    "A": {
        "materials": 44_657, "handling": 4_466, "labour joiner": 86_547, "labour mate": 10_063, "labour decorator": 11_484,
        "electrician": 25_520, "travel": 9_000, "delivery": 3_000, "disposal": 4_800, "hire of lifter": 7_200, "tool wear": 1_621,
        "direct cost": 208_358, "risk": 6_251, "overhead": 25_753, "cost": 240_362,
    },
    "B": {
        "materials": 48_390, "handling": 4_839, "labour joiner": 83_419, "labour mate": 13_858, "labour decorator": 9_280,
        "labour plasterer": 14_400, "electrician": 25_520, "travel": 10_800, "delivery": 6_000, "disposal": 9_600,
        "hire of lifter": 7_200, "tool wear": 1_814, "direct cost": 235_120, "risk": 16_458, "overhead": 30_189, "cost": 281_767,
    },
    "C": {
        "materials": 30_533, "handling": 3_053, "labour joiner": 57_545, "labour mate": 6_038, "labour decorator": 8_352,
        "travel": 5_400, "delivery": 3_000, "disposal": 4_800, "tool wear": 1_079, "direct cost": 119_800, "risk": 3_594,
        "overhead": 14_807, "cost": 138_201,
    },
}  # fmt: skip
SALE = {
    "A": (("works", 300_453), ("supply of fire AF-302", 114_400), ("supply of screen bracket BK-301", 2_035)),
    "B": (
        ("works", 352_209), ("supply of fire AF-201", 91_300), ("supply of screen bracket BK-402", 3_520),
        ("provisional sum: new circuit", 50_000), ("rounding", 471),
    ),
    "C": (("works", 184_268), ("rounding", 32)),
}  # fmt: skip
NET_TAX_TOTAL = {"A": (416_888, 83_378, 500_266), "B": (497_500, 99_500, 597_000), "C": (184_300, 36_860, 221_160)}
STAGES = {"A": (151_260, 200_106, 148_900), "B": (149_250, 238_800, 208_950), "C": (55_290, 88_464, 77_406)}
LINE_TAXES_B = (70_442, 18_260, 704, 10_000, 94)
DELIVERIES = {  # goods of the suppliers that stay below 150.00
    "A": "supplier_b 126.40",
    "B": "supplier_b 78.60, supplier_c 45.20",
    "C": "supplier_b 57.10",
}
MATERIALS_SHARE_PERCENT = {"A": 15, "B": 14, "C": 17}  # knowledge/labour.md, section 9: materials over works
