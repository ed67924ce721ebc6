from __future__ import annotations

from service.hardware import choose_hardware, wall_load
from tests.examples_of import changed, example_a, example_b, job_of
from tests.hardware.test_choosing import CATALOGUE, MARKET


def test_hardware_is_what_the_bill_buys() -> None:
    """worked-examples.md, bill A: plug, flange-head ceiling screw, joint screws through 38 and 89, light bracket."""
    chosen = choose_hardware(job_of(example_a()), MARKET)

    things = (
        chosen.wall_fixing,
        chosen.ceiling_screw,
        chosen.narrow_screw,
        chosen.wide_screw,
        chosen.bracket,
        chosen.bracket_screw,
    )
    codes = tuple(row.code if row else "" for row in things)
    assert ("FX-3070M", "FX-3150Z", "FX-3405B", "FX-3035Z") == codes[2:]
    assert chosen.wall_fixing
    assert chosen.wall_load
    assert chosen.wall_load.code == chosen.wall_fixing.code
    assert (0.45, 0.7) == (chosen.wall_load.working_tension_kn, chosen.wall_load.working_shear_kn)
    assert chosen.board_screw("facing") == MARKET.catalogue.materials["FX-3040E"]


def test_load_is_of_its_wall_and_units() -> None:
    soft = changed(example_b(), {"/survey/wall/units": "soft_or_old"})
    unknown = changed(example_b(), {"/survey/wall/construction": "unknown"})
    plug = CATALOGUE.materials["FX-3316E"]

    assert wall_load(job_of(example_b()), plug, CATALOGUE) is not None
    assert wall_load(job_of(soft), plug, CATALOGUE) is None
    assert wall_load(job_of(unknown), plug, CATALOGUE) is None
    assert wall_load(job_of(example_b()), None, CATALOGUE) is None
