"""Figures of blank, tools, bar and work: "tooling", "stock" and "route"."""

from . import answer, lists, ring, table

SYMBOLS = dict(ring.SYMBOLS)
SYMBOLS.update(
    {
        "D": "length",
        "s": "length",
        "s_c": "length",
        "f": "length",
        "r": "length",
        "A": "angle",
        "allowance": "length",
        "hot/cold": "ratio",
        "ri": "length",
        "ro": "length",
        "Dc": "length",
        "e": "length",
        "bridge angle": "angle",
        "half angle": "angle",
        "margin": "length",
        "saw": "length",
        "spacer": "length",
        "opening": "length",
        "blank": "length",
        "part": "length",
        "n": "count",
        "sticks": "count",
        "chuck and face": "length",
        "m_r": "mass",
        "price": "price",
        "L_bar": "length",
        "mass": "mass",
        "least mass_g": "mass",
        "least scrap": "length",
        "least cost_b": "money",
    }
)
BLANK = "The blank"
GAPS = "Gaps as it is made"
FORMING = "Setting it"
HOLDING = "Holding it"
SAWING = "Slitting and sawing"
BAR = "The bar"
CUTTING = "Bars bought and begun"
TIME = "Time"
_GAPS = "d1, a1, s1, s_c, s"
_WIDTH = "h1, k, f"
_CUT = "ri, ro, Dc, e"

# name, kind, symbol, label, methods, symbols of its working, group, meaning
TOOLING_FIGURES = table(
    (
        ("rough_outside_diameter", "length", "rough", "Rough outside diameter", "blank-diameters", _GAPS + ", allowance", BLANK, "turned before it is sawn"),
        ("bored_inside_diameter", "length", "bored", "Bored inside diameter", "blank-diameters", _GAPS, BLANK),
        ("blank_length", "length", "L", "Blank length", "blank-width", _WIDTH, BLANK, "along the bore, faced"),
        ("part_length", "length", "part", "Part off at", "blank-width, sawn-off", _WIDTH + " | L", BLANK, "before it is faced"),
        ("band_width", "length", "b", "Band width", "blank-width", _WIDTH, BLANK, "on either side of the slit"),
        ("finish_outside_diameter", "length", "D", "Finish outside diameter", "blank-diameters", _GAPS, BLANK, "turned last, clamped"),
        ("clamped_gap", "length", "s_c", "Clamped gap", "blank-diameters", _GAPS, GAPS, "between the ends as it is held for turning"),
        ("feeler_gap", "length", "s1 at the edge, sin A", "Gap by feeler", "edge-gap", "a1, s1, s, r, A", GAPS, "at the outer edge, in the bore"),
        ("clamped_gap_reading", "length", "s_c at the edge, sin A", "Clamped gap by feeler", "feeler-reading", "a1, s_c, s, r, A", GAPS, "square to the cut, as it is held for turning"),
        ("closed_gap_reading", "length", "s1 sin A", "Closed gap by feeler", "feeler-reading", "s1, A", GAPS, "square to the cut, in the bore"),
        ("former_diameter", "length", "Df", "Former diameter", "former-size, spread-rank", "r_b, r, eta, hot/cold | ", FORMING),
        ("former_length", "length", "Lf", "Former length", "tool-size, inside-out", "L | L, k", FORMING),
        ("spacer_width", "length", "spacer", "Spacer width", "spacer-size, spread-rank", "m, s, s1, eta | ", FORMING, "along the ring, held in the gap while it is heated"),
        ("spacer_across", "length", "spacer sin A", "Spacer, square to the cut", "feeler-reading", "spacer, A", FORMING),
        ("spacer_taper", "angle", "2 opening/(3 r_b)", "Spacer's taper", "spacer-size", "opening, r_b", FORMING, "between its two faces"),
        ("pot_bore", "length", "pot", "Pot bore", "tool-size", "D, allowance", HOLDING, "holds the ring by its outside while it is faced"),
        ("pot_gap", "length", "gap in the pot", "Gap in the pot", "tool-size", "D, allowance", HOLDING),
        ("closing_ring_bore", "length", "closing", "Closing ring bore", "tool-size", "D, allowance", HOLDING),
        ("clamp_mandrel_diameter", "length", "spigot", "Clamp mandrel spigot", "tool-size", "D, a1", HOLDING),
        ("end_plate_diameter", "length", "plate", "End plate diameter", "tool-size", "D, a1", HOLDING),
        ("band_length", "length", "pi (D + allowance) - 10", "Closing band, length", "tool-size", "D, allowance", HOLDING, "round the ring, 10 mm short of meeting"),
        ("outer_clamp_bore", "length", "clamp", "Outer clamp bore", "tool-size", "D", HOLDING),
        ("bridge_length", "length", "bridge", "Bridge length", "bridge", "b, A, margin", SAWING, "along the outside"),
        ("cutter_diameter", "length", "Dc", "Slitting saw", "slit", "ri, ro, e", SAWING, "its diameter"),
        ("cutter_centre_distance", "length", "C", "Saw from the blank's centre", "slit", _CUT, SAWING, "centre to centre"),
        ("table_travel", "angle", "travel", "Table travel", "slit", _CUT + ", bridge angle, half angle", SAWING, "of the rotary table"),
        ("start_offset", "angle", "half angle", "Start from the cut's end", "slit", _CUT, SAWING, "half the angle that the saw spans at the outside"),
        ("slit_mandrel_diameter", "length", "2 ri", "Slitting mandrel", "tool-size", "ri", SAWING),
        ("cut_off_width", "length", "k cut off", "Saw that cuts blanks off", "sawn-off", "k", SAWING, "the slitting saw, on the stick"),
        ("cut_off_step", "length", "b + k", "From slit to cut", "sawn-off", "b, k", SAWING, "how far the saw is moved along, and again to the next slit"),
        ("table_grip", "length", "table grip", "Held on the rotary table", "sawn-off", "", SAWING, "of the stick, in the chuck"),
        ("hand_wedge", "angle", "wedge", "Wedge left for the hand saw", "slit", _CUT, SAWING, "at the outside, at each end of the slit"),
        ("hand_wedge_length", "length", "wedge length", "Wedge, along the inside", "slit", _CUT, SAWING),
        ("step", "length", "k", "Step to face away", "blank-width", "h1, f", SAWING, "that the slit leaves at the bridge"),
        ("scarf_length", "length", "b/tan A", "Scarf length", "scarf", "b, A", SAWING),
        ("tongue_length", "length", "lt", "Tongue length", "stepped-joint", "h1, saw, s1", SAWING),
        ("tongue_width", "length", "(h1 - saw)/2", "Tongue width", "stepped-joint", "h1, saw, s1", SAWING),
        ("tongue_overlap", "length", "lt - s1", "Tongues overlap by", "stepped-joint", "h1, saw, s1", SAWING, "in the bore"),
    ),
    SYMBOLS,
)  # fmt: skip

STOCK_FIGURES = table(
    (
        ("bar_diameter", "length", "nominal", "Bar, nominal diameter", "cast-skin", "blank", BAR),
        ("bar_as_cast", "length", "as cast", "Bar over its skin", "cast-skin", "blank", BAR),
        ("bar_bore", "length", "nominal bore", "Core, nominal bore", "cast-skin", "blank", BAR),
        ("blanks", "count", "n", "Blanks", "stock-length", "", BAR, "rings and spares"),
        ("bar_length", "length", "L_bar", "Bar length", "stock-length", "part, n, sticks, chuck and face", BAR, "all of it, with chucking, facing and parting"),
        ("mass", "mass", "mass", "Mass of the bar", "stock-mass", "L_bar", BAR),
        ("swarf_share", "ratio", "1 - m_r/mass", "Turned to swarf", "stock-mass", "m_r, mass", BAR),
        ("cost", "money", "cost", "Cost of the bar", "stock-mass", "mass, price", BAR),
        ("bars_bought", "count", "bars bought", "Bars to buy", "cutting-stock", "", CUTTING),
        ("bought_mass", "mass", "mass_b", "Mass bought", "stock-mass", "", CUTTING),
        ("bought_cost", "money", "cost_b", "Cost of what is bought", "cutting-stock", "least cost_b", CUTTING),
        ("bars_begun", "count", "bars begun", "Own bars begun", "cutting-stock", "", CUTTING),
        ("begun_mass", "mass", "mass_g", "Mass of own bars begun", "cutting-stock", "least mass_g", CUTTING),
        ("scrap_length", "length", "scrap", "Scrap", "cutting-stock", "least scrap", CUTTING, "offcuts too short to keep, added up"),
        ("kept_length", "length", "kept", "Offcuts kept", "cutting-stock", "", CUTTING, "added up"),
    ),
    SYMBOLS,
)  # fmt: skip

ROUTE_FIGURES = table(
    (
        ("time_first_ring", "minutes", "t_1", "Time of the first ring", "machining-time", "", TIME),
        ("time_all_rings", "minutes", "t_all", "Time of all rings", "machining-time", "n", TIME, "hand work and waiting apart"),
    ),
    SYMBOLS,
)  # fmt: skip

# Sizes on the route card that are a tool's: one tool serves all rings, so what is measured of it with
# one ring holds for the others.
TOOL_SIZES = (
    "blank_jaws_bore",
    "slit_mandrel_diameter",
    "cutter_diameter",
    "former_diameter",
    "spacer_width",
    "spacer_across",
    "pot_bore",
    "thick_strip",
    "thin_strip",
    "closing_ring_bore",
    "band_length",
    "clamp_mandrel_diameter",
    "end_plate_diameter",
    "outer_clamp_bore",
)

TOOLING = answer(
    "rough_outside_diameter bored_inside_diameter blank_length part_length band_width"
    " finish_outside_diameter clamped_gap feeler_gap clamped_gap_reading? closed_gap_reading? former_diameter? former_length? spacer_width? spacer_across? spacer_taper?"
    " pot_bore pot_gap closing_ring_bore? clamp_mandrel_diameter end_plate_diameter band_length? outer_clamp_bore? bridge_length?"
    " cutter_diameter? cutter_centre_distance? table_travel? start_offset? slit_mandrel_diameter? cut_off_width? cut_off_step? table_grip? hand_wedge? hand_wedge_length? step?"
    " scarf_length? tongue_length? tongue_width? tongue_overlap?",
    (TOOLING_FIGURES,),
    lists.TOOLING,
)
STOCK = answer(
    "bar_diameter? bar_as_cast? bar_bore? blanks bar_length mass? swarf_share? cost? bars_bought?"
    " bars_begun? bought_mass? bought_cost? begun_mass? scrap_length? kept_length?",
    (STOCK_FIGURES,),
    lists.STOCK,
)
ROUTE = answer("time_first_ring time_all_rings", (ROUTE_FIGURES,), lists.ROUTE)
JOB = answer(
    "",
    (),
    (),
    (("sizing", ring.SIZING), ("tooling", TOOLING), ("stock", STOCK), ("route", ROUTE)),
)
