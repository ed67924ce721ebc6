"""Rule files: every row with its source, and every planted fault refused with the row named."""

from __future__ import annotations

import datetime
import re
from importlib.resources import files

import pytest

from service.rules import (
    EDITIONS,
    NEWEST_EDITION,
    DefaultRules,
    FrameRules,
    HandlingRules,
    RuleFileError,
    RuleSet,
    TakeOffRules,
    load_rules,
    parse_rules,
)
from service.rules.load import NAMED_TABLES, TABLES

TRADE = {"frame": FrameRules, "defaults": DefaultRules, "handling": HandlingRules, "take_off": TakeOffRules}


def text_of(name: str) -> str:
    """A rule file."""
    return files("service.rules").joinpath(name).read_text("utf-8")


def trade_text() -> str:
    """The rule file of the trade."""
    return text_of("trade.toml")


def parse_trade(text: str) -> RuleSet:
    """A text in place of the rule file of the trade."""
    return parse_rules("planted", text, text_of("eurocode.toml"), text_of("limits.toml"))


def test_every_edition_loads() -> None:
    for edition in EDITIONS:
        assert edition == load_rules(edition).edition
    assert NEWEST_EDITION in EDITIONS


def test_an_edition_is_read_once() -> None:
    assert load_rules() is load_rules()


def test_unknown_edition() -> None:
    with pytest.raises(KeyError):
        load_rules("trade-1850.1")


def test_every_row_has_its_source_and_first_day() -> None:
    for row in load_rules().rows:
        assert row.source.document, row.key
        assert row.valid_from == datetime.date.fromisoformat(row.valid_from).isoformat(), row.key
        if row.source.document == "house choice":
            assert row.note, row.key


def test_rows_and_values_are_the_same_numbers() -> None:
    rules = load_rules()
    values = {
        f"{table}.{field}": getattr(getattr(rules, table), field)
        for table, kind in TABLES.items()
        for field in kind.__struct_fields__
    } | {
        f"{table}.{thing.name}.{field}": getattr(thing, field)
        for table in NAMED_TABLES
        for thing in getattr(rules, table)
        for field in thing.__struct_fields__[1:]
    }

    assert values == {row.key: row.value for row in rules.rows}


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("gap_over_fire_mm", 10), ("gap_beside_fire_mm", 5), ("frame_inset_mm", 4), ("upstand_mm", 200), ("screen_gap_mm", 50),
        ("hands_gap_mm", 60), ("lining_mm", 15), ("backboard_mm", 18), ("glass_set_back_mm", 25), ("cable_room_mm", 25),
        ("straight_plug_room_mm", 60), ("ceiling_packing_mm", 10), ("lid_mm", 18), ("scribe_mm", 10), ("skim_mm", 2),
        ("after_measure_allowance_mm", 20), ("ladder_pitch_mm", 600), ("shortest_bar_piece_mm", 30), ("least_noggin_mm", 30),
        ("least_cheek_mm", 40), ("least_cripple_mm", 40), ("bottom_noggin_room_mm", 40), ("low_platform_room_mm", 30),
        ("pad_rest_mm", 6), ("greatest_packer_mm", 25), ("high_platform_mm", 1000), ("part_height_below_ceiling_mm", 300),
        ("ply_none_up_to_mm", 1200), ("ply_one_up_to_mm", 1800), ("upright_fixing_pitch_mm", 500),
        ("rail_fixing_pitch_mm", 600), ("cable_zone_mm", 150), ("joint_support_mm", 19), ("joint_off_corner_mm", 100),
        ("least_strip_mm", 100), ("longest_handy_panel_mm", 2000), ("least_cable_space_mm", 30),
    ],
)  # fmt: skip
def test_numbers_of_framing(key: str, value: float) -> None:
    """Framing.md: table of symbols in section 1, and sections 2.1, 2.2, 3 to 8, 10.1, 11 and 13."""
    assert value == getattr(load_rules().frame, key)


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("clear_height_mm", 2400), ("wall_length_mm", 4000), ("seat_distance_mm", 3000), ("eye_height_mm", 1100),
        ("wall_lining_mm", 15), ("wall_void_mm", 20), ("plumb_mm", 5), ("flat_mm", 4), ("floor_fall_mm", 6),
        ("ceiling_lining_mm", 12.5), ("joist_thickness_mm", 38), ("skirting_height_mm", 120), ("skirting_thickness_mm", 15),
        ("platform_height_mm", 300), ("longest_length_house_mm", 4800), ("longest_length_flat_mm", 2400),
        ("longest_length_winding_mm", 3000), ("largest_board_length_mm", 2440), ("largest_board_width_mm", 1220),
        ("ripped_board_width_mm", 600), ("narrowest_door_mm", 760), ("socket_height_mm", 300), ("parking_distance_mm", 20000),
    ],
)  # fmt: skip
def test_defaults_of_the_survey(key: str, value: float) -> None:
    """Survey.md: column "default" of sections 3 to 10."""
    assert value == getattr(load_rules().defaults, key)


SKIM = "[frame.skim_mm]\nvalue = 2"
PLANTED = {
    "no source": ('source = { document = "common practice, no source" }\nnote = "ca;', 'note = "ca;', "frame.gap_over_fire_mm"),
    "no value": ("[frame.gap_over_fire_mm]\nvalue = 10\n", "[frame.gap_over_fire_mm]\n", "frame.gap_over_fire_mm"),
    "words for a number": ("[frame.scribe_mm]\nvalue = 10", '[frame.scribe_mm]\nvalue = "ten"', "frame.scribe_mm"),
    "no day": ("[frame.skim_mm]\nvalue = 2\nvalid_from = 2026-01-01", "[frame.skim_mm]\nvalue = 2", "frame.skim_mm"),
    "no such day": ("[frame.skim_mm]\nvalue = 2\nvalid_from = 2026-01-01", f"{SKIM}\nvalid_from = 1", "frame.skim_mm"),
    "unknown part": ("[frame.skim_mm]\nvalue = 2", "[frame.skim_mm]\nvalue = 2\nworth = 3", "frame.skim_mm"),
    "row missing": ("[frame.skim_mm]", "[frame.skimming_mm]", "skim"),
    "row unknown": ("[take_off.joint_screw_count]", "[take_off.nail_count]", "count"),
    "half a screw": ("[take_off.joint_screw_count]\nvalue = 2", "[take_off.joint_screw_count]\nvalue = 2.5", "joint_screw_count"),
}  # fmt: skip


@pytest.mark.parametrize(("sound", "bad", "named"), PLANTED.values(), ids=PLANTED)
def test_planted_faults_are_refused_by_name(sound: str, bad: str, named: str) -> None:
    text = trade_text()
    assert sound in text

    with pytest.raises(RuleFileError, match=named):
        parse_trade(text.replace(sound, bad, 1))


def test_a_table_that_nothing_reads_is_refused() -> None:
    row = '\n[fire.gap_mm]\nvalue = 1\nvalid_from = 2026-01-01\nsource = { document = "common practice, no source" }\n'

    with pytest.raises(RuleFileError, match=r"unknown tables \['fire'\]"):
        parse_trade(trade_text() + row)


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("", r"\[frame\]"),
        ("frame = 1", r"unknown tables \['frame'\]"),
        ("[frame", "not TOML"),
        ("[frame]\ngap_mm = 3", r"\[frame.gap_mm\]"),
    ],
)
def test_what_is_no_rule_file_is_refused(text: str, named: str) -> None:
    with pytest.raises(RuleFileError, match=named):
        parse_trade(text)


def test_no_row_comes_twice() -> None:
    keys = [row.key for row in load_rules().rows]

    assert len(set(keys)) == len(keys)
    for table, kind in TRADE.items():
        assert len(kind.__struct_fields__) == sum(key.startswith(f"{table}.") for key in keys), table


SKIM_ROW = '\n[frame.skim_mm]\nvalue = 3\nvalid_from = 2026-02-01\nsource = { document = "planted" }\n'


def test_a_later_file_takes_the_place_of_rows() -> None:
    plain = parse_trade(trade_text())
    changed = parse_rules("planted", trade_text(), text_of("eurocode.toml"), text_of("limits.toml"), SKIM_ROW)

    assert 2 == plain.frame.skim_mm
    assert 3 == changed.frame.skim_mm
    assert [row.key for row in plain.rows] == [row.key for row in changed.rows]
    assert ["2026-02-01"] == [row.valid_from for row in changed.rows if row.key == "frame.skim_mm"]


def test_the_rows_of_the_trade_are_the_same_in_every_edition() -> None:
    for edition in EDITIONS:
        rules = load_rules(edition)
        assert all(getattr(rules, table) == getattr(load_rules(), table) for table in TRADE), edition


@pytest.mark.parametrize(
    ("text", "named"),
    [
        (re.sub(r"(?s)\[timber\.C14\].*?(?=\n#)", "[timber]", text_of("eurocode.toml")), r"\[timber\] has no rows"),
        ("timber = 1", r"unknown tables \['timber'\]"),
        (text_of("eurocode.toml").replace("[timber.C18]", "[timber.C18]\nclass_mm = 1"), r"\[timber.C18\].*class_mm"),
        (text_of("eurocode.toml").replace("shear_mpa = ", "share_mpa = ", 1), r"\[timber.C14\].*share_mpa"),
    ],
)
def test_faults_of_named_tables_are_refused_by_name(text: str, named: str) -> None:
    with pytest.raises(RuleFileError, match=named):
        parse_rules("planted", trade_text(), text, text_of("limits.toml"))
