"""Rules of structures: values of the standards as they stand in `structure.md`, and what the UK annex changes."""

from __future__ import annotations

import pytest

from service.rules import EDITIONS, LoadDuration, load_rules, shortest

RULES = load_rules("recommended-2026.1")


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("C14", (14, 7.2, 0.4, 16, 2.0, 3.0, 7000, 4700, 230, 440, 290, 350)),
        ("C16", (16, 8.5, 0.4, 17, 2.2, 3.2, 8000, 5400, 270, 500, 310, 370)),
        ("C18", (18, 10.0, 0.4, 18, 2.2, 3.4, 9000, 6000, 300, 560, 320, 380)),
        ("C20", (20, 11.5, 0.4, 19, 2.3, 3.6, 9500, 6400, 320, 590, 330, 400)),
        ("C22", (22, 13.0, 0.4, 20, 2.4, 3.8, 10000, 6700, 330, 630, 340, 410)),
        ("C24", (24, 14.5, 0.4, 21, 2.5, 4.0, 11000, 7400, 370, 690, 350, 420)),
        ("C27", (27, 16.5, 0.4, 22, 2.5, 4.0, 11500, 7700, 380, 720, 360, 430)),
        ("C30", (30, 19.0, 0.4, 24, 2.7, 4.0, 12000, 8000, 400, 750, 380, 460)),
    ],
)
def test_strength_classes(name: str, values: tuple[float, ...]) -> None:
    """EN 338:2016, Table 1: C16, C18 and C24 as in structure.md 2.1, the others from memory."""
    row = RULES.strength_class(name)

    assert (name, *values) == tuple(getattr(row, field) for field in row.__struct_fields__)


def test_a_class_follows_from_its_bending_strength() -> None:
    """EN 384:2016, 5.4: f_t,0 = -3.07 + 0.73 f_m; f_c,0 = 4.3 f_m^0.5; E_0,05 = 0.67 E; G = E / 16, as EN 338 rounds them.

    From memory of EN 384: an outside look at the table, not its source.
    """
    for row in RULES.timber:
        assert pytest.approx(-3.07 + 0.73 * row.bending_mpa, abs=0.25) == row.tension_mpa
        assert pytest.approx(4.3 * row.bending_mpa**0.5, abs=0.5) == row.compression_mpa
        assert pytest.approx(0.67 * row.modulus_mpa, rel=0.01) == row.modulus_low_mpa
        assert pytest.approx(row.modulus_mpa / 16, rel=0.01) == row.shear_modulus_mpa
        assert pytest.approx(row.modulus_mpa / 30, rel=0.02) == row.modulus_across_mpa
        assert pytest.approx(1.2 * row.density_kg_m3, abs=5) == row.density_mean_kg_m3


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("solid_timber_1", (0.60, 0.70, 0.80, 0.90, 1.10, 0.60)),
        ("solid_timber_2", (0.60, 0.70, 0.80, 0.90, 1.10, 0.80)),
        ("plywood_1", (0.60, 0.70, 0.80, 0.90, 1.10, 0.80)),
        ("osb_3_1", (0.40, 0.50, 0.70, 0.90, 1.10, 1.50)),
        ("mdf_la_1", (0.20, 0.40, 0.60, 0.80, 1.10, 2.25)),
    ],
)
def test_duration_and_creep(name: str, expected: tuple[float, ...]) -> None:
    """EN 1995-1-1, Tables 3.1 and 3.2, as in structure.md 2.2 and 2.3."""
    row = RULES.duration_factors(name)

    assert expected == (*(row.k_mod_ratio(duration) for duration in LoadDuration), row.creep_ratio)


def test_a_longer_load_leaves_less_strength_and_a_damper_place_no_more() -> None:
    for row in RULES.materials:
        factors = [row.k_mod_ratio(duration) for duration in LoadDuration]
        assert sorted(factors) == factors, row.name
    for name in ("solid_timber", "plywood", "osb_3"):
        dry, damp = RULES.duration_factors(f"{name}_1"), RULES.duration_factors(f"{name}_2")
        assert damp.creep_ratio > dry.creep_ratio
        assert all(damp.k_mod_ratio(duration) <= dry.k_mod_ratio(duration) for duration in LoadDuration)


def test_the_shortest_load_gives_the_class() -> None:
    """EN 1995-1-1, 3.1.3(2)."""
    assert LoadDuration.SHORT == shortest((LoadDuration.PERMANENT, LoadDuration.SHORT, LoadDuration.MEDIUM))
    assert LoadDuration.PERMANENT == shortest((LoadDuration.PERMANENT,))
    assert LoadDuration.INSTANTANEOUS == shortest((LoadDuration.INSTANTANEOUS, LoadDuration.LONG))


def test_working_loads_of_walls() -> None:
    """Fixings.md 2.3: wall, units, fixing; embedment mm, tension and shear kN."""
    expected = {
        "solid_brick.sound.plug_8": (50, 0.25, 0.40),
        "solid_brick.sound.plug_10": (60, 0.45, 0.70),
        "solid_brick.soft_or_old.plug_10": (70, 0.15, 0.30),
        "solid_brick.perforated.plug_10": (70, 0.10, 0.20),
        "dense_block.sound.plug_8": (50, 0.20, 0.35),
        "dense_block.light_aggregate.plug_10": (60, 0.15, 0.25),
        "aerated_block.sound.plug_10": (70, 0.10, 0.20),
        "concrete.sound.screw_6": (40, 0.50, 0.80),
        "steel_stud.sound.screw_5": (0, 0.10, 0.15),
    }

    assert expected == {row.name: (row.embedment_mm, row.tension_kn, row.shear_kn) for row in RULES.wall_loads}
    assert 0.45 == RULES.wall_load("solid_brick.sound.plug_10").tension_kn


def test_the_annex_of_the_united_kingdom_changes_these_values_only() -> None:
    """Structure.md 2.7 and 4: L/150 for members that are not plastered, cantilevers L/75, 0.36 kN/m on the face."""
    recommended, british = ({row.key: row.value for row in load_rules(name).rows} for name in ("recommended-2026.1", "gb-2026.1"))

    changed = {key: (recommended[key], value) for key, value in british.items() if value != recommended[key]}

    expected = {
        "members.span_over_sag_bare_ratio": (200, 150),
        "members.cantilever_over_sag_bare_ratio": (100, 75),
        "actions.face_line_n_per_m": (500, 360),
    }
    assert expected == changed
    assert recommended.keys() == british.keys()


def test_the_annex_names_itself_on_its_rows() -> None:
    sources = {row.key: row.source.document for row in load_rules("gb-2026.1").rows}

    assert "NA to BS EN 1991-1-1" == sources["actions.face_line_n_per_m"]
    assert "NA to BS EN 1995-1-1" == sources["members.crack_timber_ratio"]
    assert "EN 338" == sources["timber.C16.bending_mpa"]


def test_partial_factors() -> None:
    """Structure.md 2.4 and 4; fixings.md 2.2."""
    for edition in EDITIONS:
        row = load_rules(edition).partial
        assert (1.3, 1.3, 1.2, 1.2, 1.3, 1.0) == (
            row.solid_timber_ratio,
            row.connection_ratio,
            row.plywood_ratio,
            row.osb_ratio,
            row.mdf_ratio,
            row.accidental_timber_ratio,
        )
        assert (1.35, 1.5, 0.9, 0.7) == (row.permanent_ratio, row.variable_ratio, row.stabilising_ratio, row.accompanying_ratio)
        assert (1.8, 2.5, 2.0, 1.4) == (
            row.plug_concrete_ratio,
            row.plug_masonry_ratio,
            row.plug_aerated_ratio,
            row.plug_working_ratio,
        )
