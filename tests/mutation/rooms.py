"""Rooms of the core for tests/mutation/run.py: their modules."""

# Room: modules of the core.
ROOMS = {
    "scrap": ("cutting.scrap",),
    "fillings": ("cutting.patterns",),
    "bounds": (
        "cutting.bound", "cutting.sets", "cutting.proof",
    ),
    "spring": ("ring.spring",),
    "heat-set": ("ring.heat_set",),
    "winding": ("ring.winding",),
    "settling": (
        "ring.design", "ring.duty", "ring.allowances", "ring.chosen_section",
        "ring.spring_back", "ring.sizing", "running.ring_at_hand",
    ),
    "clearances": (
        "clearances.groove", "clearances.piston", "clearances.ring_gap",
    ),
    "making": (
        "making.bar_choice", "making.bars", "making.machining", "making.machining_table",
        "making.part_sizes", "making.route", "making.route_findings", "making.route_ring",
        "making.route_rows", "making.route_sawing", "making.route_text",
        "making.route_text_ring", "making.route_tube", "making.route_words",
        "making.slitting", "making.stepped_end", "making.stock", "making.stock_bars",
        "making.stock_findings", "making.stock_remedies", "making.tool_list",
        "making.tool_work", "making.tooling", "making.tooling_figures",
        "making.tooling_findings", "making.tooling_remedies",
    ),
    "measuring": (
        "measuring.bore_fit", "measuring.bore_survey", "measuring.inspection",
        "measuring.inspection_findings", "measuring.ring_sample",
        "measuring.ring_witness", "measuring.spread", "measuring.survey_findings",
        "measuring.survey_places",
    ),
    "walk": (
        "walk.finished", "walk.follow", "walk.limits", "walk.plan", "walk.resetting",
        "walk.rings", "walk.states",
    ),
    "finish": ("making.finish",),
    "tell-tales": (
        "ring.soak", "measuring.tell_tales",
    ),
    "thumb-rules": (
        "ring.thumb_rule_table", "ring.thumb_rules",
    ),
    "without-heat": (
        "ring.without_heat", "wall.ring_without_heat", "wall.without_heat_findings",
        "wall.without_heat_steps",
    ),
    "ring": (
        "ring.blank", "ring.fit_findings", "ring.judging", "ring.remedies",
        "ring.ring_findings", "ring.ring_remedies", "ring.section",
    ),
    "card": ("walk.ring_card",),
    "wall": (
        "wall.bore_shape", "wall.contact", "wall.free_shape", "wall.large_deflection", "wall.strip",
        "wall.uneven", "wall.wall_contact", "wall.wall_pressure",
    ),
    "expander": (
        "running.expander", "running.coil_expander",
    ),
    "valve": (
        "running.piston_valve", "running.port_crossing", "running.valve_remedies",
    ),
    "running": (
        "running.friction", "running.leak", "running.ring_duty", "running.ring_leak",
        "running.running", "running.running_figures", "running.running_findings",
        "running.running_inputs", "running.running_remedies", "running.sealings",
        "running.steam_cycle", "running.warming", "running.wear",
    ),
    "fitting": (
        "running.ring_spaces", "fitting.fitting", "fitting.groove_recut", "fitting.land",
        "fitting.pack", "fitting.ring_pack",
    ),
    "properties": (
        "properties.expansion", "properties.fits", "properties.material_list",
        "properties.material_table", "properties.materials", "properties.steam",
        "properties.steam_properties",
    ),
    "cutting": (
        "cutting.plan", "cutting.fill", "cutting.search",
    ),
    "catalogue": (
        "catalogue", "catalogue.checks", "catalogue.expander", "catalogue.fitting",
        "catalogue.groove", "catalogue.inputs", "catalogue.inputs_blank",
        "catalogue.inputs_drawing", "catalogue.inputs_engine",
        "catalogue.inputs_expander", "catalogue.inputs_groove",
        "catalogue.inputs_measuring", "catalogue.inputs_ring", "catalogue.inputs_rings",
        "catalogue.inputs_soak", "catalogue.inputs_stock", "catalogue.inputs_tools",
        "catalogue.inputs_valve", "catalogue.inputs_wall",
        "catalogue.inputs_without_heat", "catalogue.lists", "catalogue.making",
        "catalogue.measuring", "catalogue.reference", "catalogue.ring",
        "catalogue.ring_pack", "catalogue.running", "catalogue.soak",
        "catalogue.thumb_rules", "catalogue.wall", "catalogue.without_heat",
    ),
    "records": (
        "calculations", "describe", "fields", "job", "least_squares", "problems",
        "records", "reference", "shop_sizes", "sources", "wording",
    ),
    "drawing": (
        "drawing.axes", "drawing.blank_views", "drawing.blocks", "drawing.catalogue",
        "drawing.charts", "drawing.curve", "drawing.drawing", "drawing.entities",
        "drawing.gap_views", "drawing.holding_views", "drawing.job",
        "drawing.lathe_views", "drawing.leaders", "drawing.letters",
        "drawing.operation_marks", "drawing.operation_views", "drawing.paper",
        "drawing.piston_views", "drawing.plain", "drawing.rails", "drawing.ring_views",
        "drawing.setting", "drawing.shapes", "drawing.style", "drawing.svg",
        "drawing.table_views", "drawing.template", "drawing.tool_views",
        "drawing.turned_part", "drawing.view", "drawing.words",
    ),
}  # fmt: skip
