"""The catalogue: accounts, items, price books with dated revisions, and the notice of each change."""

from __future__ import annotations

from alembic import op

revision = "r20261125_catalogue"
down_revision = None
branch_labels = None
depends_on = None

TABLES = (
    """
    CREATE TABLE account (
        account TEXT COLLATE "C" NOT NULL,
        currency TEXT NOT NULL,
        handling_ratio DOUBLE PRECISION NOT NULL,
        subcontract_handling_ratio DOUBLE PRECISION NOT NULL,
        overhead_ratio DOUBLE PRECISION NOT NULL,
        margin_ratio DOUBLE PRECISION NOT NULL,
        risk_measured_ratio DOUBLE PRECISION NOT NULL,
        risk_stated_ratio DOUBLE PRECISION NOT NULL,
        risk_assumed_ratio DOUBLE PRECISION NOT NULL,
        tool_wear_ratio DOUBLE PRECISION NOT NULL,
        dust_sheet_charge_ratio DOUBLE PRECISION NOT NULL,
        electrician_certificate_minor BIGINT NOT NULL,
        travel_per_day_minor BIGINT NOT NULL,
        delivery_minor BIGINT NOT NULL,
        delivery_free_from_minor BIGINT NOT NULL,
        delivery_suppliers TEXT[] NOT NULL,
        tax_standard_ratio DOUBLE PRECISION NOT NULL,
        tax_reduced_ratio DOUBLE PRECISION NOT NULL,
        tax_rounding TEXT NOT NULL,
        packs_charged TEXT NOT NULL,
        validity_days INTEGER NOT NULL,
        deposit_ratio DOUBLE PRECISION NOT NULL,
        deposit_greatest_ratio DOUBLE PRECISION NOT NULL,
        stage_ratio DOUBLE PRECISION NOT NULL,
        crew_count INTEGER NOT NULL,
        standing TEXT NOT NULL,
        base_account TEXT COLLATE "C",
        CONSTRAINT pk_account PRIMARY KEY (account),
        CONSTRAINT ck_account_account CHECK (account ~ '^[A-Za-z0-9_-]{1,32}$'),
        CONSTRAINT ck_account_currency CHECK (currency ~ '^[A-Z]{3}$'),
        CONSTRAINT ck_account_handling_ratio CHECK (handling_ratio between 0 and 1),
        CONSTRAINT ck_account_subcontract_handling_ratio
            CHECK (subcontract_handling_ratio between 0 and 1),
        CONSTRAINT ck_account_overhead_ratio CHECK (overhead_ratio between 0 and 1),
        CONSTRAINT ck_account_margin_ratio CHECK (margin_ratio between 0 and 1),
        CONSTRAINT ck_account_risk_measured_ratio CHECK (risk_measured_ratio between 0 and 1),
        CONSTRAINT ck_account_risk_stated_ratio CHECK (risk_stated_ratio between 0 and 1),
        CONSTRAINT ck_account_risk_assumed_ratio CHECK (risk_assumed_ratio between 0 and 1),
        CONSTRAINT ck_account_tool_wear_ratio CHECK (tool_wear_ratio between 0 and 1),
        CONSTRAINT ck_account_dust_sheet_charge_ratio CHECK (dust_sheet_charge_ratio between 0 and 1),
        CONSTRAINT ck_account_electrician_certificate_minor
            CHECK (electrician_certificate_minor between 0 and 1000000000000),
        CONSTRAINT ck_account_travel_per_day_minor
            CHECK (travel_per_day_minor between 0 and 1000000000000),
        CONSTRAINT ck_account_delivery_minor CHECK (delivery_minor between 0 and 1000000000000),
        CONSTRAINT ck_account_delivery_free_from_minor
            CHECK (delivery_free_from_minor between 0 and 1000000000000),
        CONSTRAINT ck_account_tax_standard_ratio CHECK (tax_standard_ratio between 0 and 1),
        CONSTRAINT ck_account_tax_reduced_ratio CHECK (tax_reduced_ratio between 0 and 1),
        CONSTRAINT ck_account_tax_rounding CHECK (tax_rounding in ('per_line', 'per_invoice')),
        CONSTRAINT ck_account_packs_charged CHECK (packs_charged in ('whole', 'pro_rata')),
        CONSTRAINT ck_account_validity_days CHECK (validity_days between 0 and 1000000000),
        CONSTRAINT ck_account_deposit_ratio CHECK (deposit_ratio between 0 and 1),
        CONSTRAINT ck_account_deposit_greatest_ratio CHECK (deposit_greatest_ratio between 0 and 1),
        CONSTRAINT ck_account_stage_ratio CHECK (stage_ratio between 0 and 1),
        CONSTRAINT ck_account_crew_count CHECK (crew_count between 1 and 1000000000),
        CONSTRAINT ck_account_standing CHECK (char_length(standing) <= 400),
        CONSTRAINT ck_account_base_account_differs CHECK (base_account <> account),
        CONSTRAINT fk_account_base_account_account FOREIGN KEY(base_account)
            REFERENCES account (account)
    )
    """,
    """
    CREATE TABLE catalogue_version (
        is_only BOOLEAN DEFAULT true NOT NULL,
        version_count BIGINT DEFAULT 0 NOT NULL,
        CONSTRAINT pk_catalogue_version PRIMARY KEY (is_only),
        CONSTRAINT ck_catalogue_version_one_row CHECK (is_only)
    )
    """,
    """
    CREATE TABLE appliance (
        account TEXT COLLATE "C" NOT NULL,
        model TEXT COLLATE "C" NOT NULL,
        name TEXT NOT NULL,
        open_ends_count INTEGER NOT NULL,
        open_end TEXT,
        body_width_mm DOUBLE PRECISION NOT NULL,
        body_height_mm DOUBLE PRECISION NOT NULL,
        body_depth_mm DOUBLE PRECISION NOT NULL,
        mass_kg DOUBLE PRECISION NOT NULL,
        heat_output_w DOUBLE PRECISION NOT NULL,
        flame_w DOUBLE PRECISION,
        current_a DOUBLE PRECISION,
        outlet_position TEXT NOT NULL,
        outlet_height_mm DOUBLE PRECISION,
        clear_above_mm DOUBLE PRECISION,
        clear_side_mm DOUBLE PRECISION,
        clear_rear_mm DOUBLE PRECISION,
        clear_front_mm DOUBLE PRECISION,
        outlet_to_screen_least_mm DOUBLE PRECISION,
        outlet_to_shelf_least_mm DOUBLE PRECISION,
        air_inlet_area_mm2 DOUBLE PRECISION,
        air_inlet_position TEXT,
        frame_inset_mm DOUBLE PRECISION,
        trim_lap_mm DOUBLE PRECISION,
        connection TEXT NOT NULL,
        non_combustible_above_mm DOUBLE PRECISION,
        max_void_deg_c DOUBLE PRECISION,
        may_be_boarded_over BOOLEAN,
        options TEXT[] NOT NULL,
        standing TEXT NOT NULL,
        CONSTRAINT pk_appliance PRIMARY KEY (account, model),
        CONSTRAINT ck_appliance_open_ends_count_greatest CHECK (open_ends_count <= 2),
        CONSTRAINT ck_appliance_model CHECK (model ~ '^[A-Za-z0-9_-]{1,32}$'),
        CONSTRAINT ck_appliance_name CHECK (char_length(name) <= 400),
        CONSTRAINT ck_appliance_open_ends_count CHECK (open_ends_count between 0 and 1000000000),
        CONSTRAINT ck_appliance_open_end CHECK (open_end in ('left', 'right', 'either')),
        CONSTRAINT ck_appliance_body_width_mm CHECK (body_width_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_body_height_mm CHECK (body_height_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_body_depth_mm CHECK (body_depth_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_mass_kg CHECK (mass_kg between 0 and 1000000000),
        CONSTRAINT ck_appliance_heat_output_w CHECK (heat_output_w between 0 and 1000000000),
        CONSTRAINT ck_appliance_flame_w CHECK (flame_w between 0 and 1000000000),
        CONSTRAINT ck_appliance_current_a CHECK (current_a between 0 and 1000000000),
        CONSTRAINT ck_appliance_outlet_position CHECK (char_length(outlet_position) <= 400),
        CONSTRAINT ck_appliance_outlet_height_mm CHECK (outlet_height_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_clear_above_mm CHECK (clear_above_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_clear_side_mm CHECK (clear_side_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_clear_rear_mm CHECK (clear_rear_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_clear_front_mm CHECK (clear_front_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_outlet_to_screen_least_mm
            CHECK (outlet_to_screen_least_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_outlet_to_shelf_least_mm
            CHECK (outlet_to_shelf_least_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_air_inlet_area_mm2 CHECK (air_inlet_area_mm2 between 0 and 1000000000),
        CONSTRAINT ck_appliance_air_inlet_position CHECK (char_length(air_inlet_position) <= 400),
        CONSTRAINT ck_appliance_frame_inset_mm CHECK (frame_inset_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_trim_lap_mm CHECK (trim_lap_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_connection CHECK (char_length(connection) <= 400),
        CONSTRAINT ck_appliance_non_combustible_above_mm
            CHECK (non_combustible_above_mm between 0 and 1000000000),
        CONSTRAINT ck_appliance_max_void_deg_c CHECK (max_void_deg_c between 0 and 1000000000),
        CONSTRAINT ck_appliance_standing CHECK (char_length(standing) <= 400),
        CONSTRAINT fk_appliance_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE bracket (
        account TEXT COLLATE "C" NOT NULL,
        model TEXT COLLATE "C" NOT NULL,
        kind TEXT NOT NULL,
        depth_mm DOUBLE PRECISION NOT NULL,
        reach_mm DOUBLE PRECISION NOT NULL,
        mass_kg DOUBLE PRECISION NOT NULL,
        rating_kg DOUBLE PRECISION NOT NULL,
        plate_hole_width_mm DOUBLE PRECISION NOT NULL,
        plate_hole_height_mm DOUBLE PRECISION NOT NULL,
        plate_width_mm DOUBLE PRECISION NOT NULL,
        plate_height_mm DOUBLE PRECISION NOT NULL,
        fixing_count INTEGER NOT NULL,
        screen_pattern_least_width_mm DOUBLE PRECISION NOT NULL,
        screen_pattern_greatest_width_mm DOUBLE PRECISION NOT NULL,
        screen_pattern_least_height_mm DOUBLE PRECISION NOT NULL,
        screen_pattern_greatest_height_mm DOUBLE PRECISION NOT NULL,
        tilt_deg DOUBLE PRECISION,
        hands_at TEXT NOT NULL,
        lift_height_mm DOUBLE PRECISION,
        standing TEXT NOT NULL,
        CONSTRAINT pk_bracket PRIMARY KEY (account, model),
        CONSTRAINT ck_bracket_model CHECK (model ~ '^[A-Za-z0-9_-]{1,32}$'),
        CONSTRAINT ck_bracket_kind CHECK (char_length(kind) <= 400),
        CONSTRAINT ck_bracket_depth_mm CHECK (depth_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_reach_mm CHECK (reach_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_mass_kg CHECK (mass_kg between 0 and 1000000000),
        CONSTRAINT ck_bracket_rating_kg CHECK (rating_kg between 0 and 1000000000),
        CONSTRAINT ck_bracket_plate_hole_width_mm CHECK (plate_hole_width_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_plate_hole_height_mm
            CHECK (plate_hole_height_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_plate_width_mm CHECK (plate_width_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_plate_height_mm CHECK (plate_height_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_fixing_count CHECK (fixing_count between 0 and 1000000000),
        CONSTRAINT ck_bracket_screen_pattern_least_width_mm
            CHECK (screen_pattern_least_width_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_screen_pattern_greatest_width_mm
            CHECK (screen_pattern_greatest_width_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_screen_pattern_least_height_mm
            CHECK (screen_pattern_least_height_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_screen_pattern_greatest_height_mm
            CHECK (screen_pattern_greatest_height_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_tilt_deg CHECK (tilt_deg between -1000000000 and 1000000000),
        CONSTRAINT ck_bracket_hands_at CHECK (char_length(hands_at) <= 400),
        CONSTRAINT ck_bracket_lift_height_mm CHECK (lift_height_mm between 0 and 1000000000),
        CONSTRAINT ck_bracket_standing CHECK (char_length(standing) <= 400),
        CONSTRAINT fk_bracket_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE fixing_load (
        account TEXT COLLATE "C" NOT NULL,
        code TEXT COLLATE "C" NOT NULL,
        wall TEXT COLLATE "C" NOT NULL,
        units TEXT,
        embedment_mm DOUBLE PRECISION,
        working_tension_kn DOUBLE PRECISION NOT NULL,
        working_shear_kn DOUBLE PRECISION NOT NULL,
        unit_strength_mpa DOUBLE PRECISION,
        least_edge_mm DOUBLE PRECISION,
        least_spacing_mm DOUBLE PRECISION,
        hammer_drilling BOOLEAN NOT NULL,
        multiple_use_only BOOLEAN NOT NULL,
        standing TEXT NOT NULL,
        CONSTRAINT uq_fixing_load_account_code_wall_units_embedment_mm
            UNIQUE NULLS NOT DISTINCT (account, code, wall, units, embedment_mm),
        CONSTRAINT ck_fixing_load_code CHECK (code ~ '^[A-Za-z0-9_-]{1,32}$'),
        CONSTRAINT ck_fixing_load_wall CHECK (char_length(wall) <= 400),
        CONSTRAINT ck_fixing_load_units CHECK (char_length(units) <= 400),
        CONSTRAINT ck_fixing_load_embedment_mm CHECK (embedment_mm between 0 and 1000000000),
        CONSTRAINT ck_fixing_load_working_tension_kn
            CHECK (working_tension_kn between 0 and 1000000000),
        CONSTRAINT ck_fixing_load_working_shear_kn CHECK (working_shear_kn between 0 and 1000000000),
        CONSTRAINT ck_fixing_load_unit_strength_mpa CHECK (unit_strength_mpa between 0 and 1000000000),
        CONSTRAINT ck_fixing_load_least_edge_mm CHECK (least_edge_mm between 0 and 1000000000),
        CONSTRAINT ck_fixing_load_least_spacing_mm CHECK (least_spacing_mm between 0 and 1000000000),
        CONSTRAINT ck_fixing_load_standing CHECK (char_length(standing) <= 400),
        CONSTRAINT fk_fixing_load_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE labour_rate (
        account TEXT COLLATE "C" NOT NULL,
        task TEXT COLLATE "C" NOT NULL,
        term TEXT COLLATE "C" NOT NULL,
        input TEXT COLLATE "C" NOT NULL,
        rate_hours DOUBLE PRECISION NOT NULL,
        trade TEXT COLLATE "C" NOT NULL,
        crew_count INTEGER NOT NULL,
        note TEXT NOT NULL,
        CONSTRAINT pk_labour_rate PRIMARY KEY (account, task, term, input, trade),
        CONSTRAINT ck_labour_rate_task CHECK (char_length(task) <= 400),
        CONSTRAINT ck_labour_rate_term CHECK (char_length(term) <= 400),
        CONSTRAINT ck_labour_rate_input CHECK (char_length(input) <= 400),
        CONSTRAINT ck_labour_rate_rate_hours CHECK (rate_hours between 0 and 1000000000),
        CONSTRAINT ck_labour_rate_trade CHECK (char_length(trade) <= 400),
        CONSTRAINT ck_labour_rate_crew_count CHECK (crew_count between 1 and 1000000000),
        CONSTRAINT ck_labour_rate_note CHECK (char_length(note) <= 400),
        CONSTRAINT fk_labour_rate_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE material (
        account TEXT COLLATE "C" NOT NULL,
        code TEXT COLLATE "C" NOT NULL,
        kind TEXT NOT NULL,
        board_kind TEXT,
        uses TEXT[] NOT NULL,
        description TEXT NOT NULL,
        unit TEXT NOT NULL,
        pack_count INTEGER NOT NULL,
        pack_content DOUBLE PRECISION,
        pack_content_unit TEXT,
        length_mm DOUBLE PRECISION,
        width_mm DOUBLE PRECISION,
        thickness_mm DOUBLE PRECISION,
        mass_kg DOUBLE PRECISION,
        strength_class TEXT,
        density_kg_m3 DOUBLE PRECISION,
        edge TEXT,
        reaction_to_fire TEXT,
        stud_pitch_mm DOUBLE PRECISION,
        waste_ratio DOUBLE PRECISION NOT NULL,
        coverage DOUBLE PRECISION,
        coverage_unit TEXT,
        diameter_mm DOUBLE PRECISION,
        root_diameter_mm DOUBLE PRECISION,
        thread_length_mm DOUBLE PRECISION,
        head_diameter_mm DOUBLE PRECISION,
        withdrawal_mpa DOUBLE PRECISION,
        head_pull_mpa DOUBLE PRECISION,
        declared_density_kg_m3 DOUBLE PRECISION,
        yield_moment_n_mm DOUBLE PRECISION,
        tensile_kn DOUBLE PRECISION,
        plug_hole_mm DOUBLE PRECISION,
        least_embedment_mm DOUBLE PRECISION,
        bracket_up_n DOUBLE PRECISION,
        bracket_side_n DOUBLE PRECISION,
        bracket_pull_n DOUBLE PRECISION,
        leg_screw_count INTEGER,
        screw_code TEXT,
        drill_depth_mm DOUBLE PRECISION,
        greatest_fixture_mm DOUBLE PRECISION,
        head_form TEXT,
        drive TEXT,
        predrill TEXT,
        approval TEXT,
        free_area_mm2 DOUBLE PRECISION,
        standing TEXT NOT NULL,
        CONSTRAINT pk_material PRIMARY KEY (account, code),
        CONSTRAINT ck_material_code CHECK (code ~ '^[A-Za-z0-9_-]{1,32}$'),
        CONSTRAINT ck_material_kind CHECK (char_length(kind) <= 400),
        CONSTRAINT ck_material_board_kind CHECK (char_length(board_kind) <= 400),
        CONSTRAINT ck_material_description CHECK (char_length(description) <= 400),
        CONSTRAINT ck_material_unit CHECK (char_length(unit) <= 400),
        CONSTRAINT ck_material_pack_count CHECK (pack_count between 1 and 1000000000),
        CONSTRAINT ck_material_pack_content CHECK (pack_content between 0 and 1000000000),
        CONSTRAINT ck_material_pack_content_unit CHECK (char_length(pack_content_unit) <= 400),
        CONSTRAINT ck_material_length_mm CHECK (length_mm between 0 and 1000000000),
        CONSTRAINT ck_material_width_mm CHECK (width_mm between 0 and 1000000000),
        CONSTRAINT ck_material_thickness_mm CHECK (thickness_mm between 0 and 1000000000),
        CONSTRAINT ck_material_mass_kg CHECK (mass_kg between 0 and 1000000000),
        CONSTRAINT ck_material_strength_class CHECK (char_length(strength_class) <= 400),
        CONSTRAINT ck_material_density_kg_m3 CHECK (density_kg_m3 between 0 and 1000000000),
        CONSTRAINT ck_material_edge CHECK (char_length(edge) <= 400),
        CONSTRAINT ck_material_reaction_to_fire CHECK (char_length(reaction_to_fire) <= 400),
        CONSTRAINT ck_material_stud_pitch_mm CHECK (stud_pitch_mm between 0 and 1000000000),
        CONSTRAINT ck_material_waste_ratio CHECK (waste_ratio between 0 and 1),
        CONSTRAINT ck_material_coverage CHECK (coverage between 0 and 1000000000),
        CONSTRAINT ck_material_coverage_unit CHECK (char_length(coverage_unit) <= 400),
        CONSTRAINT ck_material_diameter_mm CHECK (diameter_mm between 0 and 1000000000),
        CONSTRAINT ck_material_root_diameter_mm CHECK (root_diameter_mm between 0 and 1000000000),
        CONSTRAINT ck_material_thread_length_mm CHECK (thread_length_mm between 0 and 1000000000),
        CONSTRAINT ck_material_head_diameter_mm CHECK (head_diameter_mm between 0 and 1000000000),
        CONSTRAINT ck_material_withdrawal_mpa CHECK (withdrawal_mpa between 0 and 1000000000),
        CONSTRAINT ck_material_head_pull_mpa CHECK (head_pull_mpa between 0 and 1000000000),
        CONSTRAINT ck_material_declared_density_kg_m3
            CHECK (declared_density_kg_m3 between 0 and 1000000000),
        CONSTRAINT ck_material_yield_moment_n_mm CHECK (yield_moment_n_mm between 0 and 1000000000),
        CONSTRAINT ck_material_tensile_kn CHECK (tensile_kn between 0 and 1000000000),
        CONSTRAINT ck_material_plug_hole_mm CHECK (plug_hole_mm between 0 and 1000000000),
        CONSTRAINT ck_material_least_embedment_mm CHECK (least_embedment_mm between 0 and 1000000000),
        CONSTRAINT ck_material_bracket_up_n CHECK (bracket_up_n between 0 and 1000000000),
        CONSTRAINT ck_material_bracket_side_n CHECK (bracket_side_n between 0 and 1000000000),
        CONSTRAINT ck_material_bracket_pull_n CHECK (bracket_pull_n between 0 and 1000000000),
        CONSTRAINT ck_material_leg_screw_count CHECK (leg_screw_count between 0 and 1000000000),
        CONSTRAINT ck_material_screw_code CHECK (char_length(screw_code) <= 400),
        CONSTRAINT ck_material_drill_depth_mm CHECK (drill_depth_mm between 0 and 1000000000),
        CONSTRAINT ck_material_greatest_fixture_mm CHECK (greatest_fixture_mm between 0 and 1000000000),
        CONSTRAINT ck_material_head_form CHECK (char_length(head_form) <= 400),
        CONSTRAINT ck_material_drive CHECK (char_length(drive) <= 400),
        CONSTRAINT ck_material_predrill CHECK (char_length(predrill) <= 400),
        CONSTRAINT ck_material_approval CHECK (char_length(approval) <= 400),
        CONSTRAINT ck_material_free_area_mm2 CHECK (free_area_mm2 between 0 and 1000000000),
        CONSTRAINT ck_material_standing CHECK (char_length(standing) <= 400),
        CONSTRAINT fk_material_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE price_book (
        account TEXT COLLATE "C" NOT NULL,
        price_book TEXT COLLATE "C" NOT NULL,
        is_default BOOLEAN NOT NULL,
        CONSTRAINT pk_price_book PRIMARY KEY (account, price_book),
        CONSTRAINT ck_price_book_price_book CHECK (price_book ~ '^[A-Za-z0-9_-]{1,32}$'),
        CONSTRAINT fk_price_book_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE UNIQUE INDEX ix_price_book_one_default
        ON price_book (account) WHERE is_default
    """,
    """
    CREATE TABLE screen (
        account TEXT COLLATE "C" NOT NULL,
        model TEXT COLLATE "C" NOT NULL,
        diagonal_in DOUBLE PRECISION NOT NULL,
        body_width_mm DOUBLE PRECISION NOT NULL,
        body_height_mm DOUBLE PRECISION NOT NULL,
        body_depth_mm DOUBLE PRECISION NOT NULL,
        mass_kg DOUBLE PRECISION NOT NULL,
        hole_pattern_width_mm DOUBLE PRECISION NOT NULL,
        hole_pattern_height_mm DOUBLE PRECISION NOT NULL,
        hole_centre_offset_mm DOUBLE PRECISION,
        thread TEXT NOT NULL,
        power_w DOUBLE PRECISION,
        max_ambient_deg_c DOUBLE PRECISION,
        least_gap_mm DOUBLE PRECISION,
        bracket TEXT,
        standing TEXT NOT NULL,
        CONSTRAINT pk_screen PRIMARY KEY (account, model),
        CONSTRAINT ck_screen_model CHECK (model ~ '^[A-Za-z0-9_-]{1,32}$'),
        CONSTRAINT ck_screen_diagonal_in CHECK (diagonal_in between 0 and 1000000000),
        CONSTRAINT ck_screen_body_width_mm CHECK (body_width_mm between 0 and 1000000000),
        CONSTRAINT ck_screen_body_height_mm CHECK (body_height_mm between 0 and 1000000000),
        CONSTRAINT ck_screen_body_depth_mm CHECK (body_depth_mm between 0 and 1000000000),
        CONSTRAINT ck_screen_mass_kg CHECK (mass_kg between 0 and 1000000000),
        CONSTRAINT ck_screen_hole_pattern_width_mm
            CHECK (hole_pattern_width_mm between 0 and 1000000000),
        CONSTRAINT ck_screen_hole_pattern_height_mm
            CHECK (hole_pattern_height_mm between 0 and 1000000000),
        CONSTRAINT ck_screen_hole_centre_offset_mm
            CHECK (hole_centre_offset_mm between -1000000000 and 1000000000),
        CONSTRAINT ck_screen_thread CHECK (char_length(thread) <= 400),
        CONSTRAINT ck_screen_power_w CHECK (power_w between 0 and 1000000000),
        CONSTRAINT ck_screen_max_ambient_deg_c CHECK (max_ambient_deg_c between 0 and 1000000000),
        CONSTRAINT ck_screen_least_gap_mm CHECK (least_gap_mm between 0 and 1000000000),
        CONSTRAINT ck_screen_bracket CHECK (char_length(bracket) <= 400),
        CONSTRAINT ck_screen_standing CHECK (char_length(standing) <= 400),
        CONSTRAINT fk_screen_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE trade (
        account TEXT COLLATE "C" NOT NULL,
        trade TEXT COLLATE "C" NOT NULL,
        charge_per_hour_minor BIGINT NOT NULL,
        currency TEXT NOT NULL,
        least_hours_per_visit_hours DOUBLE PRECISION,
        standing TEXT NOT NULL,
        CONSTRAINT pk_trade PRIMARY KEY (account, trade),
        CONSTRAINT ck_trade_trade CHECK (char_length(trade) <= 400),
        CONSTRAINT ck_trade_charge_per_hour_minor
            CHECK (charge_per_hour_minor between 0 and 1000000000000),
        CONSTRAINT ck_trade_currency CHECK (currency ~ '^[A-Z]{3}$'),
        CONSTRAINT ck_trade_least_hours_per_visit_hours
            CHECK (least_hours_per_visit_hours between 0 and 1000000000),
        CONSTRAINT ck_trade_standing CHECK (char_length(standing) <= 400),
        CONSTRAINT fk_trade_account_account FOREIGN KEY(account)
            REFERENCES account (account) ON DELETE CASCADE
    )
    """,
    """
    CREATE TABLE price_book_revision (
        revision_id BIGINT GENERATED ALWAYS AS IDENTITY,
        account TEXT COLLATE "C" NOT NULL,
        price_book TEXT COLLATE "C" NOT NULL,
        effective_from DATE NOT NULL,
        state TEXT NOT NULL,
        source_digest TEXT NOT NULL,
        created_at TIMESTAMP WITH TIME ZONE DEFAULT now() NOT NULL,
        published_at TIMESTAMP WITH TIME ZONE,
        CONSTRAINT pk_price_book_revision PRIMARY KEY (revision_id),
        CONSTRAINT fk_price_book_revision_account_price_book_price_book FOREIGN KEY(account, price_book)
            REFERENCES price_book (account, price_book) ON DELETE CASCADE,
        CONSTRAINT ck_price_book_revision_state_known
            CHECK (state in ('draft', 'published', 'withdrawn')),
        CONSTRAINT ck_price_book_revision_published_at_known
            CHECK (state <> 'published' or published_at is not null),
        CONSTRAINT ck_price_book_revision_source_digest CHECK (source_digest ~ '^[0-9a-f]{64}$')
    )
    """,
    """
    CREATE UNIQUE INDEX ix_price_book_revision_one_published
        ON price_book_revision (account, price_book, effective_from) WHERE state = 'published'
    """,
    """
    CREATE TABLE price (
        revision_id BIGINT NOT NULL,
        code TEXT COLLATE "C" NOT NULL,
        from_count INTEGER NOT NULL,
        amount_minor BIGINT NOT NULL,
        currency TEXT NOT NULL,
        supplier TEXT NOT NULL,
        lead_days INTEGER NOT NULL,
        CONSTRAINT pk_price PRIMARY KEY (revision_id, code, from_count),
        CONSTRAINT ck_price_code CHECK (code ~ '^[A-Za-z0-9_-]{1,32}$'),
        CONSTRAINT ck_price_from_count CHECK (from_count between 1 and 1000000000),
        CONSTRAINT ck_price_amount_minor CHECK (amount_minor between 0 and 1000000000000),
        CONSTRAINT ck_price_currency CHECK (currency ~ '^[A-Z]{3}$'),
        CONSTRAINT ck_price_supplier CHECK (char_length(supplier) <= 400),
        CONSTRAINT ck_price_lead_days CHECK (lead_days between 0 and 1000000000),
        CONSTRAINT fk_price_revision_id_price_book_revision FOREIGN KEY(revision_id)
            REFERENCES price_book_revision (revision_id) ON DELETE CASCADE
    )
    """,
)
FIRST_ROW = "INSERT INTO catalogue_version DEFAULT VALUES"
WATCHED = (
    "account", "material", "appliance", "screen", "bracket", "labour_rate", "trade", "fixing_load",
    "price_book", "price_book_revision", "price",
)  # fmt: skip
# The notice is delivered at commit. The count is one row, so that writers of the catalogue wait for one another.
NOTICE = """
    CREATE FUNCTION catalogue_changed() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
        UPDATE catalogue_version SET version_count = version_count + 1;
        PERFORM pg_notify('inglewright_catalogue', '');
        RETURN NULL;
    END
    $$
    """
TRIGGER = """
    CREATE TRIGGER {table}_changed AFTER INSERT OR UPDATE OR DELETE OR TRUNCATE ON {table}
    FOR EACH STATEMENT EXECUTE FUNCTION catalogue_changed()
    """


def upgrade() -> None:
    for statement in (*TABLES, FIRST_ROW, NOTICE, *(TRIGGER.format(table=table) for table in WATCHED)):
        op.execute(statement)


def downgrade() -> None:
    for table in ("catalogue_version", *reversed(WATCHED)):
        op.drop_table(table)
    op.execute("DROP FUNCTION catalogue_changed()")
