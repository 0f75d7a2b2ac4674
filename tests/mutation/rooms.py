"""Rooms of the core for tests/mutation/run.py: their modules, and the tests that should notice."""

CUTTING = ("core/test_cutting_parts.py", "core/test_cutting_brute.py", "core/test_cutting.py")
# What each check says, and answers as they were: every room.
RECORDED = ("core/test_findings.py", "core/test_answers_stay.py")
# Room: modules of the core, tests that should notice.
ROOMS = {
    "scrap": (("cutting.scrap",), CUTTING),
    "fillings": (("cutting.patterns",), CUTTING),
    "bounds": (("cutting.bound", "cutting.sets", "cutting.proof"), CUTTING),
    "spring": (
        ("ring.spring",),
        (
            "core/test_spring.py",
            "core/test_ring_by_integrals.py",
            "published/test_ring_elastica.py",
            "published/test_ring_books.py",
        ),
    ),
    "heat-set": (
        ("ring.heat_set",),
        (
            "core/test_heat_set.py",
            "core/test_ring_by_integrals.py",
            "published/test_ring_books.py",
            "published/test_ring_elastica.py",
        ),
    ),
    "winding": (
        ("ring.winding",),
        (
            "core/test_winding.py",
            "core/test_ring_by_integrals.py",
            "published/test_putting_on_programme.py",
        ),
    ),
    "settling": (
        (
            "ring.design", "ring.duty", "ring.allowances", "ring.chosen_section",
            "ring.spring_back", "ring.sizing", "running.ring_at_hand",
        ),
        (
            "core/test_design.py",
            "core/test_sizing.py",
            "core/test_groove_limits.py",
            "core/test_running.py",
            *RECORDED,
        ),
    ),
    "clearances": (
        ("clearances.groove", "clearances.piston", "clearances.ring_gap"),
        (
            "published/test_clearances.py",
            "core/test_one_gap.py",
            "core/test_design.py",
            "core/test_sizing.py",
            *RECORDED,
        ),
    ),
    "making": (
        tuple("making." + name for name in (
            "bar_choice", "bars", "machining", "machining_table", "part_sizes", "route",
            "route_findings", "route_ring", "route_rows", "route_sawing", "route_text",
            "route_text_ring", "route_tube", "route_words", "slitting", "stepped_end", "stock",
            "stock_bars", "stock_findings", "stock_remedies", "tool_list", "tool_work", "tooling",
            "tooling_figures", "tooling_findings", "tooling_remedies",
        )),
        (
            "published/test_machining.py",
            "published/test_bars.py",
            "published/test_blank.py",
            "core/test_bars.py",
            "core/test_blank.py",
            "core/test_tooling.py",
            "core/test_stock.py",
            "core/test_route.py",
            "core/test_tools_hold.py",
            "core/test_tool_pieces.py",
            "core/test_tooling_limits.py",
            "core/test_route_times.py",
            "core/test_stock_sums.py",
            "core/test_card_fits.py",
            *RECORDED,
            "core/test_remedies.py",
        ),
    ),
    "measuring": (
        tuple("measuring." + name for name in (
            "bore_fit", "bore_survey", "inspection", "inspection_findings", "ring_sample",
            "ring_witness", "spread", "survey_findings", "survey_places",
        )),
        (
            "core/test_bore_survey.py",
            "core/test_bore_fit.py",
            "core/test_survey_verdict.py",
            "core/test_inspection.py",
            "core/test_inspection_limits.py",
            "core/test_spread.py",
            *RECORDED,
            "core/test_one_verdict.py",
            "core/test_remedies.py",
        ),
    ),
    "walk": (
        tuple("walk." + name for name in (
            "finished", "follow", "limits", "plan", "resetting", "rings", "states",
        )),
        (
            "core/test_walk.py",
            "core/test_card_limits.py",
            "core/test_follow.py",
            *RECORDED,
        ),
    ),
    "finish": (("making.finish",), ("core/test_finish.py", "core/test_route.py")),
    "tell-tales": (
        ("ring.soak", "measuring.tell_tales"),
        ("core/test_tell_tales.py", "core/test_heat_set.py", *RECORDED),
    ),
    "thumb-rules": (
        ("ring.thumb_rule_table", "ring.thumb_rules"),
        ("core/test_thumb_rules.py", "published/test_ring_books.py"),
    ),
    "without-heat": (
        (
            "ring.without_heat", "wall.ring_without_heat", "wall.without_heat_findings",
            "wall.without_heat_steps",
        ),
        ("published/test_ring_without_heat.py", "core/test_findings.py"),
    ),
    "ring": (
        tuple("ring." + name for name in (
            "blank", "fit_findings", "judging", "remedies", "ring_findings", "ring_remedies",
            "section",
        )),
        (
            "published/test_blank.py",
            "core/test_blank.py",
            "core/test_judging.py",
            "core/test_section.py",
            "core/test_sizing.py",
            "core/test_usual_pressure.py",
            "core/test_one_gap.py",
            *RECORDED,
            "core/test_remedies.py",
        ),
    ),
    "card": (("walk.ring_card",), ("core/test_follow.py", "core/test_card_limits.py")),
    "wall": (
        tuple("wall." + name for name in (
            "bore_shape", "contact", "free_shape", "strip", "uneven", "wall_contact",
            "wall_pressure",
        )),
        (
            "core/test_wall_contact.py",
            "core/test_wall_balance.py",
            "core/test_free_shape.py",
            "published/test_large_deflection.py",
            "published/test_wall_contact_elements.py",
            "published/test_wall_contact_programme.py",
            *RECORDED,
        ),
    ),
    "expander": (
        ("running.expander", "running.coil_expander"),
        ("core/test_expander.py", "core/test_coil_expander.py", "core/test_findings.py"),
    ),
    "valve": (
        ("running.piston_valve", "running.port_crossing", "running.valve_remedies"),
        ("core/test_piston_valve.py", *RECORDED),
    ),
    "running": (
        tuple("running." + name for name in (
            "friction", "leak", "ring_duty", "ring_leak", "running",
            "running_figures", "running_findings", "running_inputs", "running_remedies",
            "sealings", "steam_cycle", "warming", "wear",
        )),
        (
            "core/test_leak.py",
            "core/test_friction_and_wear.py",
            "core/test_steam_cycle.py",
            "published/test_steam_flow.py",
            "published/test_steam_engine.py",
            "core/test_running.py",
            *RECORDED,
        ),
    ),
    "fitting": (
        ("running.ring_spaces", *tuple("fitting." + name for name in (
            "fitting", "groove_recut", "land", "pack", "ring_pack",
        ))),
        (
            "core/test_fitting.py",
            "published/test_land.py",
            "core/test_ring_pack.py",
            "core/test_groove_recut.py",
            "core/test_findings.py",
        ),
    ),
    "properties": (
        tuple("properties." + name for name in (
            "expansion", "fits", "material_list", "material_table", "materials", "steam",
            "steam_properties",
        )),
        (
            "published/test_fits.py",
            "published/test_materials.py",
            "published/test_steam.py",
            "published/test_steam_properties.py",
            "core/test_unknown_grade.py",
        ),
    ),
    "cutting": (("cutting.plan", "cutting.fill", "cutting.search"), CUTTING),
    "catalogue": (
        ("catalogue", *tuple("catalogue." + name for name in (
            "checks", "expander", "fitting", "groove", "inputs", "inputs_blank", "inputs_drawing",
            "inputs_engine", "inputs_expander", "inputs_groove", "inputs_measuring", "inputs_ring",
            "inputs_rings", "inputs_soak", "inputs_stock", "inputs_tools", "inputs_valve",
            "inputs_wall", "inputs_without_heat", "lists", "making", "measuring", "reference",
            "ring", "ring_pack", "running", "soak", "thumb_rules", "wall", "without_heat",
        ))),
        (
            "core/test_catalogue_declared.py",
            "core/test_catalogue_inputs.py",
            "core/test_catalogue.py",
        ),
    ),
    "records": (
        (
            "calculations", "describe", "fields", "job", "least_squares", "problems", "records",
            "reference", "shop_sizes", "sources", "wording",
        ),
        (
            "core/test_short_numbers.py",
            "core/test_reference.py",
            "core/test_catalogue_declared.py",
            "core/test_catalogue_inputs.py",
            "core/test_shop_sizes.py",
            "core/test_tooling.py",
            *RECORDED,
        ),
    ),
    "drawing": (
        tuple("drawing." + name for name in (
            "axes", "blank_views", "blocks", "catalogue", "charts", "curve", "drawing", "entities",
            "gap_views", "holding_views", "job", "lathe_views", "leaders", "letters",
            "operation_marks", "operation_views", "paper", "piston_views", "plain", "rails",
            "ring_views", "setting", "shapes", "style", "svg", "table_views", "template",
            "tool_views", "turned_part", "view", "words",
        )),
        (
            "drawing/test_to_scale.py",
            "drawing/test_operations.py",
            "drawing/test_sheet_words.py",
            "drawing/test_layout.py",
        ),
    ),
}  # fmt: skip
# No recorded answer tells of these: none is looked at.
UNRECORDED = ("drawing", "finish", "thumb-rules", "without-heat", "expander", "fitting")
