"""Figures of the running engine: "running", "piston-valve", and what both say of warming."""

from . import answer, lists, ring, table

SYMBOLS = {
    "p_s": "pressure",
    "p": "pressure",
    "p1": "pressure",
    "p_b": "pressure",
    "p_m": "pressure",
    "p1 - p2": "pressure",
    "dp": "pressure",
    "q": "pressure",
    "x": "ratio",
    "r": "ratio",
    "k": "ratio",
    "c": "ratio",
    "mu": "ratio",
    "efficiency": "ratio",
    "share": "ratio",
    "n": "count",
    "n_b": "count",
    "v1": "specific_volume",
    "v_b": "specific_volume",
    "H1": "enthalpy",
    "H_fb": "enthalpy",
    "H_feed": "enthalpy",
    "IP": "power",
    "Q": "power",
    "d1": "length",
    "a1": "length",
    "E": "modulus",
    "stroke": "length",
    "strokes": "speed",
    "M": "flow",
    "M_i": "flow",
    "M_f": "flow",
    "W": "flow",
    "W_gap": "flow",
    "W_side": "flow",
    "W_light": "flow",
    "W - W_new": "flow",
    "g": "length",
    "m": "length",
    "s": "length",
    "s1": "length",
    "b": "length",
    "L": "length",
    "T_0": "temperature",
    "T_r": "temperature",
    "T_run": "temperature",
    "T_steam": "temperature",
}
ENGINE = "The engine"
LEAK = "What leaks"
RUB = "Friction and wear"
WARM = "From cold to warm"
PORT = "Across a port"
_CYCLE = "p1, p_b, x, r, k, c"
_START = "T_steam, T_0"

# name, kind, symbol, label, methods, symbols of its working, group, meaning
FIGURES = table(
    (
        ("steam_volume", "specific_volume", "v1", "Volume of the steam", "steam-properties", "p1", ENGINE, "as admitted"),
        ("mean_effective_pressure", "pressure", "p_m", "Mean effective pressure", "mean-effective-pressure", _CYCLE, ENGINE),
        ("indicated_power", "power", "IP", "Indicated power", "indicated-power", "p_m, d1, stroke, strokes", ENGINE),
        ("indicated_steam", "flow", "M_i", "Steam by the diagram", "indicated-steam", _CYCLE + ", v1, v_b", ENGINE),
        ("heat_supplied", "power", "Q", "Heat supplied", "heat-balance", "M_f, H1, H_fb", ENGINE),
        ("heat_carried_away", "power", "Q - IP", "Heat carried away", "heat-balance", "Q, IP", ENGINE, "by exhaust, drains and walls"),
        ("thermal_efficiency", "ratio", "IP/Q", "Thermal efficiency", "heat-balance", "Q, IP", ENGINE),
        ("missing_quantity", "ratio", "1 - M_i/M_f", "Missing quantity", "measured-missing-quantity", "M_i, M_f", ENGINE, "share of the feed that the diagram does not show"),
        ("steam_use", "flow", "M", "Steam used", "steam-use", "M_i", LEAK, "with the rings at hand"),
        ("leak_rate", "flow", "W", "Steam leaked", "leak-rate", "W_gap, W_side, W_light", LEAK, "past all the rings"),
        ("leak_share", "ratio", "W/M", "Leak, of the steam used", "leak-share", "W, M", LEAK),
        ("leak_per_stroke", "mass", "W/strokes", "Leak a stroke", "leak-rate", "", LEAK),
        ("gap_leak", "flow", "W_gap", "Leak by the gaps", "choked-flow, ring-spaces", "", LEAK),
        ("gap_leak_napier", "flow", "W_gap book", "Gap leak by Napier's rule", "napier-flow", "", LEAK),
        ("side_face_leak", "flow", "W_side", "Leak past the side faces", "side-face-leak", "", LEAK),
        ("steam_saved", "flow", "W - W_new", "Steam saved", "leak-rate", "", LEAK, "by new rings"),
        ("fuel_saved", "flow", "B", "Fuel saved", "fuel-saved", "W - W_new, H1, H_feed, efficiency", LEAK, "by new rings"),
        ("fuel_saved_in_season", "mass", "B season", "Fuel saved in a season", "fuel-saved", "W - W_new, H1, H_feed, efficiency", LEAK),
        ("mean_piston_speed", "velocity", "v", "Mean piston speed", "mean-piston-speed", "", RUB),
        ("sliding_distance", "distance", "L", "Sliding distance", "sliding-distance", "", RUB, "in an hour"),
        ("wall_pressure_with_steam", "pressure", "p + share dp/n", "Wall pressure with steam", "wall-load", "p, dp, n", RUB),
        ("friction_force", "force", "F", "Force to move the valve", "friction-power", "dp, mu", RUB, "against its rings"),
        ("friction_power", "power", "P", "Power lost in friction", "friction-power", "p, dp, n, mu", RUB),
        ("friction_share", "ratio", "P/IP", "Friction, of the power", "friction-power", "", RUB),
        ("spring_left", "ratio", "p/p_new", "Spring left", "spring-left", "g, m, a1", RUB, "of the ring at hand"),
        ("largest_gap", "length", "s", "Largest gap allowed", "largest-gap", "share", RUB, "cold, at which rings are due"),
        ("gap_growth", "length", "s per 100 h", "Gap grows in 100 h", "gap-growth", "", RUB),
        ("ring_wear", "length", "per 100 h", "Ring wears in 100 h", "ring-wear", "", RUB, "off its radial thickness"),
        ("hours_left", "duration", "t", "Hours left", "next-look", "s", RUB),
        ("next_look", "duration", "t/2", "Look again in", "next-look", "", RUB),
        ("opening", "length", "L", "Opening between bars", "port-opening", "d1, n_b, b", PORT),
        ("outward_pressure", "pressure", "q", "Outward pressure", "outward-pressure", "p, p1 - p2", PORT, "on the ring over a port"),
        ("bulge", "length", "w", "Ring springs out by", "bulge", "L, a1, E, q", PORT, "between bars"),
        ("free_end", "length", "w_e", "Loose end springs by", "free-end", "L, a1, E, q", PORT),
        ("longest_opening", "length", "L_max", "Longest safe opening", "longest-opening", "a1, E", PORT),
        ("bar_pressure", "pressure", "q_b", "Pressure on the bars", "bar-pressure", "p, p1 - p2", PORT, "while they alone bear"),
        ("gap_steady", "length", "s steady", "Gap, running warm", "hot-closed-gap", "T_run", WARM),
        ("gap_cold_start", "length", "s start", "Gap, cold start", "hot-closed-gap", _START, WARM, "ring at steam heat, wall stone-cold"),
        ("side_clearance_steady", "length", "c steady", "Side clearance, running warm", "hot-side-clearance", "T_run", WARM),
        ("side_clearance_cold_start", "length", "c start", "Side clearance, cold start", "hot-side-clearance", _START, WARM, "ring at steam heat, piston cold"),
        ("piston_clearance_steady", "length", "d1 - d_p steady", "Piston clearance, running warm", "hot-piston-clearance", "T_run", WARM),
        ("piston_clearance_cold_start", "length", "d1 - d_p start", "Piston clearance, cold start", "hot-piston-clearance", _START, WARM, "piston at steam heat, wall stone-cold"),
        ("smallest_safe_gap", "length", "s1 safe", "Smallest safe gap", "smallest-safe-gap", "d1, T_steam", WARM, "cold, that just closes in a stone-cold cylinder"),
        ("first_touch_temperature", "temperature", "T touch", "First touch at", "first-touch", "d1, s1", WARM, "in a stone-cold cylinder"),
    ),
    SYMBOLS,
)  # fmt: skip

WARMING = answer(
    "gap_steady gap_cold_start side_clearance_steady side_clearance_cold_start"
    " piston_clearance_steady piston_clearance_cold_start smallest_safe_gap"
    " first_touch_temperature?",
    (FIGURES,),
    lists.WARMING,
)
RUNNING = answer(
    "steam_temperature steam_volume mean_effective_pressure indicated_power indicated_steam"
    " heat_supplied heat_carried_away thermal_efficiency missing_quantity? steam_use leak_rate"
    " leak_share leak_per_stroke gap_leak gap_leak_napier steam_saved fuel_saved"
    " fuel_saved_in_season? mean_piston_speed sliding_distance wall_pressure_with_steam"
    " friction_power friction_share spring_left? largest_gap? gap_growth? ring_wear? hours_left?"
    " next_look?",
    (FIGURES, ring.FIGURES),
    lists.running(FIGURES),
    (("warming", WARMING),),
)
PISTON_VALVE = answer(
    "opening outward_pressure bulge free_end longest_opening bar_pressure free_gap? closed_gap"
    " closed_stress leak_rate gap_leak_napier friction_force friction_power",
    (FIGURES, ring.FIGURES),
    (),
    (("warming", WARMING),),
)
