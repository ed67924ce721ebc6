"""Rules of structures: strength classes, factors, actions, screws, host walls (`eurocode.toml`; `knowledge/structure.md`)."""

from __future__ import annotations

from enum import StrEnum

import msgspec


class LoadDuration(StrEnum):
    """How long a load acts in all, longest first: EN 1995-1-1, 2.3.1.2."""

    PERMANENT = "permanent"
    LONG = "long"
    MEDIUM = "medium"
    SHORT = "short"
    INSTANTANEOUS = "instantaneous"


def shortest(durations: tuple[LoadDuration, ...]) -> LoadDuration:
    """The class that a combination takes its k_mod from: EN 1995-1-1, 3.1.3(2)."""
    return max(durations, key=tuple(LoadDuration).index)


class StrengthClass(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Characteristic values of a class of softwood, EN 338; its modulus is the mean, `modulus_low_mpa` the 5 percent value."""

    name: str
    bending_mpa: float
    tension_mpa: float
    tension_across_mpa: float
    compression_mpa: float
    compression_across_mpa: float
    shear_mpa: float
    modulus_mpa: float
    modulus_low_mpa: float
    modulus_across_mpa: float
    shear_modulus_mpa: float
    density_kg_m3: float
    density_mean_kg_m3: float


class DurationFactors(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """k_mod by load-duration class, and k_def, of a material in a service class: `solid_timber_1`."""

    name: str
    permanent_ratio: float
    long_ratio: float
    medium_ratio: float
    short_ratio: float
    instantaneous_ratio: float
    creep_ratio: float

    def k_mod_ratio(self, duration: LoadDuration) -> float:
        """Strength that is left under a load of that duration."""
        return {
            LoadDuration.PERMANENT: self.permanent_ratio,
            LoadDuration.LONG: self.long_ratio,
            LoadDuration.MEDIUM: self.medium_ratio,
            LoadDuration.SHORT: self.short_ratio,
            LoadDuration.INSTANTANEOUS: self.instantaneous_ratio,
        }[duration]


class PartialFactors(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Partial factors of resistance and of actions, and combination factors."""

    solid_timber_ratio: float
    connection_ratio: float
    plywood_ratio: float
    osb_ratio: float
    mdf_ratio: float
    accidental_timber_ratio: float
    permanent_ratio: float
    variable_ratio: float
    stabilising_ratio: float
    accompanying_ratio: float
    quasi_person_ratio: float
    quasi_floor_ratio: float
    quasi_storage_ratio: float
    plug_concrete_ratio: float
    plug_masonry_ratio: float
    plug_aerated_ratio: float
    plug_working_ratio: float
    anchor_bending_ratio: float


class MemberRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What a member may bear and how far it may sag."""

    crack_timber_ratio: float
    crack_panel_ratio: float
    load_sharing_ratio: float
    span_over_sag_plastered_ratio: float
    span_over_sag_bare_ratio: float
    cantilever_over_sag_plastered_ratio: float
    cantilever_over_sag_bare_ratio: float
    span_over_sag_hand_ratio: float
    sag_reserve_mm: float
    wall_yield_mm: float
    least_bearing_factor_ratio: float
    hole_over_width_ratio: float
    hole_from_joint_diameter_ratio: float
    close_ratio: float
    single_path_ratio: float
    hung_ladder_count: int


class ActionRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Loads of things and of people, and the weights at which an engineer is asked."""

    hung_timber_kg_m3: float
    standing_timber_kg_m3: float
    mdf_kn_m3: float
    adhesive_bed_kg_m2: float
    unknown_screen_kg_m2: float
    face_line_n_per_m: float
    face_line_height_mm: float
    hand_n: float
    hand_height_mm: float
    person_n: float
    high_lid_n: float
    high_lid_mm: float
    seat_depth_mm: float
    floor_kn_m2: float
    floor_point_n: float
    stored_kn_m2: float
    arm_hand_n: float
    arm_pull_ratio: float
    arm_pull_least_n: float
    joist_extra_n: float
    hung_mass_kg: float
    arm_screen_kg: float
    facing_refused_kg_m2: float
    facing_engineer_kg_m2: float
    light_partition_n_per_m: float
    light_partition_kn_m2: float
    medium_partition_n_per_m: float
    medium_partition_kn_m2: float
    heavy_partition_n_per_m: float
    heavy_partition_kn_m2: float
    floor_engineer_n_per_m: float


class ScrewRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What stands in for figures that no maker declares, and rules of screws in timber."""

    root_over_diameter_ratio: float
    head_over_diameter_ratio: float
    withdrawal_mpa: float
    head_pull_mpa: float
    declared_density_kg_m3: float
    tension_steel_mpa: float
    yield_steel_mpa: float
    thread_over_diameter_ratio: float
    point_over_diameter_ratio: float
    end_grain_point_over_diameter_ratio: float
    end_grain_least_count: int
    skew_least_deg: float
    predrill_near_end_mm: float
    joint_least_count: int
    bracket_contact_ratio: float
    bracket_lever_ratio: float
    plug_upright_over_diameter_ratio: float
    plug_upright_least_ratio: float


class WallRules(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Distances, tests and stand-off of fixings in the host wall."""

    unit_edge_mm: float
    free_edge_mm: float
    fixing_spacing_mm: float
    pipe_clear_mm: float
    chimney_front_mm: float
    extra_hole_depth_mm: float
    pull_test_ratio: float
    pull_test_least_count: int
    pull_test_share_ratio: float
    multiple_use_least_count: int
    stand_off_sag_mm: float
    held_ends_ratio: float
    overhead_concrete_ratio: float


class WallLoad(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Working load of one fixing in one wall for an estimate: `solid_brick.sound.plug_10`."""

    name: str
    embedment_mm: float
    tension_kn: float
    shear_kn: float
