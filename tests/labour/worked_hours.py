"""Hours of the worked examples, task by task.

Source: `knowledge/worked-examples.md`, "Hours A", "Hours B", "Hours C" (after checks); the electrician's 2.0 and 1.5 hours:
`knowledge/labour.md`, section 1, L09 and L19.
"""

from __future__ import annotations

ALONE, PAIR = 1, 2  # the joiner; the joiner and the mate, half the hours each
HOURS = {
    "A": (
        ("L01", 1.25, PAIR),
        ("L02", 1.00, ALONE),
        ("L03", 0.59, ALONE),
        ("L04", 1.60, ALONE),
        ("L05", 4.48, ALONE),
        ("L06", 1.07, ALONE),
        ("L07", 4.00, PAIR),
        ("L08", 2.44, ALONE),
        ("L09", 2.00, ALONE),
        ("L10", 3.04, ALONE),
        ("L11", 1.44, ALONE),
        ("L12", 1.05, ALONE),
        ("L13", 0.83, ALONE),
        ("L14a", 1.50, ALONE),
        ("L15", 0.51, ALONE),
        ("L16", 1.95, ALONE),
        ("L17", 1.29, ALONE),
        ("L18", 2.00, PAIR),
        ("L19", 1.50, ALONE),
        ("L20", 1.50, PAIR),
        ("L21", 1.25, ALONE),
        ("L24", 1.00, ALONE),
    ),
    "B": (
        ("L01", 1.25, PAIR),
        ("L02", 1.00, ALONE),
        ("L03", 0.66, ALONE),
        ("L04", 1.70, ALONE),
        ("L05", 4.70, ALONE),
        ("L06", 1.07, ALONE),
        ("L07", 4.00, PAIR),
        ("L08", 1.89, ALONE),
        ("L09", 2.00, ALONE),
        ("L10", 3.30, PAIR),
        ("L11", 1.90, ALONE),
        ("L12", 1.05, ALONE),
        ("L13", 0.94, ALONE),
        ("L14a", 0.58, ALONE),
        ("L14b", 3.04, ALONE),
        ("L15", 0.58, ALONE),
        ("L16", 2.04, ALONE),
        ("L17", 1.35, ALONE),
        ("L18", 2.00, PAIR),
        ("L19", 1.50, ALONE),
        ("L20", 1.50, PAIR),
        ("L21", 1.25, ALONE),
        ("L24", 1.00, ALONE),
    ),
    "C": (
        ("L01", 1.25, PAIR),
        ("L02", 1.00, ALONE),
        ("L03", 0.59, ALONE),
        ("L04", 1.43, ALONE),
        ("L05", 3.62, ALONE),
        ("L06", 1.15, ALONE),
        ("L07", 2.00, PAIR),
        ("L08", 1.71, ALONE),
        ("L10", 1.73, ALONE),
        ("L12", 0.30, ALONE),
        ("L13", 0.55, ALONE),
        ("L14a", 1.07, ALONE),
        ("L15", 0.30, ALONE),
        ("L16", 1.51, ALONE),
        ("L17", 0.97, ALONE),
        ("L18", 2.00, PAIR),
        ("L21", 1.25, ALONE),
    ),
}
TOGETHER = {"A": 33.79, "B": 36.80, "C": 22.43}  # without the electrician
TRADES = {
    "A": {"joiner": 25.455, "mate": 4.375, "decorator": 3.96},
    "B": {"joiner": 24.535, "mate": 6.025, "decorator": 3.20, "plasterer": 3.04},
    "C": {"joiner": 16.925, "mate": 2.625, "decorator": 2.88},
}
