"""Figures of a ring, its groove and its piston: what "sizing" answers with."""

from . import answer, table

# What a symbol in a working stands for: its kind. A symbol means one thing within an answer.
SYMBOLS = {
    "d1": "length",
    "a1": "length",
    "h1": "length",
    "h": "length",
    "sigma_p": "pressure",
    "E": "modulus",
    "nu": "ratio",
    "p": "pressure",
    "p_x": "pressure",
    "m": "length",
    "s1": "length",
    "g": "length",
    "kappa0": "curvature",
    "Ft": "force",
    "Df": "length",
    "d1 - 2 a1": "length",
    "r_b": "length",
    "a": "length",
    "b": "length",
    "k": "length",
    "L": "length",
    "eta": "ratio",
    "p_s": "pressure",
    "T_0": "temperature",
    "T_r": "temperature",
    "T_p": "temperature",
    "T_c": "temperature",
    "T_w": "temperature",
    "alpha_r": "expansion",
    "alpha_p": "expansion",
    "alpha_c": "expansion",
    "c": "length",
    "depth": "length",
    "d_p": "length",
    "r": "length",
    "r_o": "length",
    "c_hot": "length",
    "p_c": "pressure",
}

SIZES = "Sizes"
BEARING = "How it bears on the wall"
STRAIN = "What strains it"
GROOVE = "Groove and piston"
HEAT = "Steam and heat"

_PRESSURES = "uniform-pressure, round-set-pressure, band-pressure"
_BEAM = "d1, a1, E, m"
_ROUND = "E, a1, kappa0, r, r_o"
_CLOSED = "closed-stress, round-set-stress"
_CLOSED_OF = "d1, a1, p | d1, a1, E, kappa0"
_RING_HEAT = "alpha_r, alpha_c, T_r, T_c, T_0"
_GROOVE_HEAT = "alpha_r, alpha_p, T_r, T_p, T_0"
_PISTON_HEAT = "d1, alpha_p, alpha_c, T_p, T_w, T_0"
_BLANK = "r_b, a, b, E, nu, L"
_STRIP = "r, a1, h, E, nu, L, eta, k"

# name, kind, symbol, label, methods, symbols of its working, group, meaning
FIGURES = table(
    (
        ("radial_thickness", "length", "a1", "Radial thickness", "section-window", "d1, E", SIZES, "from the inside of the ring to its outside"),
        ("ring_width", "length", "h1", "Ring width", "ring-width", "d1, a1", SIZES, "along the bore"),
        ("turn_width", "length", "h", "Width of a turn", "ring-width", "h1", SIZES, "half of the ring width of a double-turn ring"),
        ("inside_diameter", "length", "d1 - 2 a1", "Inside diameter", "geometry", "d1, a1", SIZES, "of the ring closed in the bore"),
        ("free_gap", "length", "m + s1", "Free gap", "uniform-gap, round-set-gap, spread-sample", "d1, a1, E, p, s1 | d1, a1, E, p, s1 | ", SIZES, "between the ends of the ring lying free, along its neutral line"),
        ("closed_gap", "length", "s1", "Closed gap", "closed-gap, gap-breathing, spread-sample", "d1, " + _RING_HEAT + " | D_tight, d1 | ", SIZES, "between the ends in the bore, cold"),
        ("closed_gap_thumb_rule", "length", "s1 book", "Closed gap by the book", "thumb-rule-gap", "d1", SIZES, "what the usual rule of thumb gives"),
        ("former_ratio", "ratio", "Df/(d1 - 2 a1)", "Former to ring bore", "former-size", "Df, d1, a1", SIZES, "diameter of the former over the inside diameter of the ring"),
        ("wall_pressure", "pressure", "p", "Mean wall pressure", _PRESSURES + ", pressure-together, wall-contact, spread-sample", " | ".join([_BEAM, _ROUND, _ROUND]) + " | d1, a1, E | d1, a1, E | ", BEARING, "of the ring's own spring, the mean all round"),
        ("total_wall_pressure", "pressure", "p_t", "Pressure with the expander", "expander", "p, p_x", BEARING, "of the ring's own spring and the one behind it"),
        ("contact_pressure", "pressure", "p0", "Contact pressure", _PRESSURES + ", wall-contact", " | ".join([_BEAM, _ROUND, _ROUND]) + " | d1, a1, E, q", BEARING, "where the ring bears"),
        ("widest_light", "length", "w", "Widest light", "round-set-light, wall-contact", "r, kappa0 | d1, a1, E, q", BEARING, "between ring and bore"),
        ("slack_angle", "angle", "psi0", "Slack length behind an end", "round-set-light, wall-contact", " | d1, a1, E, q", BEARING, "that bears nothing"),
        ("tangential_force", "force", "Ft", "Tangential force", "tangential-force", "p_c, h1, d1", BEARING, "at the ends, to close the gap with a band"),
        ("diametral_force", "force", "Fd", "Diametral force", "diametral-force", "Ft", BEARING, "across the ring, to close the gap between two plates"),
        ("diametral_force_to_bore", "force", "Fd bore", "Diametral force to the bore", "diametral-force", "Ft", BEARING, "across the ring, to bring that diameter to the bore"),
        ("grip_force", "force", "P_g", "Grip of the turns", "grip-force", _STRIP, BEARING, "with which the two turns press on one another"),
        ("closed_stress", "pressure", "sigma_t", "Stress in the bore", _CLOSED, _CLOSED_OF, STRAIN, "greatest tension of the ring closed"),
        ("closed_stress_nominal", "pressure", "sigma", "Stress in the bore, nominal", _CLOSED, _CLOSED_OF, STRAIN, "as a straight bar would carry it"),
        ("closed_compression", "pressure", "sigma_c", "Compression in the bore", _CLOSED, _CLOSED_OF, STRAIN, "greatest, at the inside"),
        ("sprung_on_opening", "length", "g", "Opening to go over the piston", "opening-to-clear", "d1, a1, d_p, m", STRAIN, "between the ends"),
        ("sprung_on_stress", "pressure", "sigma_g", "Stress when sprung on", "opening-stress, plug-stress, round-set-plug", "d1, a1, E, m, g | d1, a1, E, p | d1, a1, E, kappa0", STRAIN, "opened over the piston or a plug of its size"),
        ("wound_on_stress", "pressure", "sigma_w", "Stress when wound on", "wound-on-stress", "sigma_p, " + _STRIP, STRAIN, "the crossing spread over a third of a turn"),
        ("turning_through_stress", "pressure", "sigma_v", "Stress when turned through itself", "turning-through", _BLANK, STRAIN, "bending and twist together"),
        ("turning_through_force", "force", "P", "Force to turn it through itself", "turning-through", _BLANK, STRAIN),
        ("forming_stress", "pressure", "sigma_f", "Stress on the former or spacer", "forming-stress, opening-stress", "r_b, a, E", STRAIN, "cold, before the heat"),
        ("groove_width", "length", "h1 + c", "Groove width", "side-clearance", "h1, c", GROOVE),
        ("groove_depth", "length", "depth", "Groove depth", "groove-depth", "a1, " + _GROOVE_HEAT, GROOVE),
        ("side_clearance", "length", "c", "Side clearance", "side-clearance", "h1, c_hot, " + _GROOVE_HEAT, GROOVE, "of the ring in its groove, cold"),
        ("side_clearance_hot", "length", "c_hot", "Side clearance, hot", "hot-side-clearance", "h1, c, " + _GROOVE_HEAT, GROOVE),
        ("back_clearance", "length", "c_b", "Back clearance", "back-clearance", "d1, d_p, a1, depth", GROOVE, "behind the ring, cold"),
        ("back_clearance_hot", "length", "c_b hot", "Back clearance, hot", "back-clearance", "d1, d_p, a1, depth, " + _GROOVE_HEAT, GROOVE),
        ("piston_diameter", "length", "d_p", "Piston diameter", "piston-clearance", _PISTON_HEAT, GROOVE, "over its lands, cold"),
        ("piston_diameter_hot", "length", "d_p hot", "Piston diameter, hot", "hot-piston-clearance", "d_p, alpha_p, T_p, T_0", GROOVE),
        ("piston_clearance", "length", "d1 - d_p", "Piston clearance", "piston-clearance", _PISTON_HEAT + ", d_p", GROOVE, "on the diameter, cold"),
        ("piston_clearance_hot", "length", "d1 - d_p hot", "Piston clearance, hot", "hot-piston-clearance", _PISTON_HEAT + ", d_p", GROOVE),
        ("saturation_temperature", "temperature", "T_s", "Steam as it boils", "saturation-temperature", "p_s", HEAT, "saturation at the steam pressure"),
        ("steam_temperature", "temperature", "T", "Steam temperature", "steam-temperature, saturation-temperature", " | p_s", HEAT),
        ("closed_gap_hot", "length", "s1 hot", "Closed gap, hot", "hot-closed-gap", "d1, s1, " + _RING_HEAT, HEAT, "what is left of it when the engine is started"),
    ),
    dict(SYMBOLS, D_tight="length", q="pressure"),
)  # fmt: skip

SIZING = answer(
    "radial_thickness ring_width turn_width inside_diameter free_gap closed_gap"
    " closed_gap_thumb_rule wall_pressure total_wall_pressure? contact_pressure closed_stress closed_stress_nominal"
    " closed_compression sprung_on_opening? sprung_on_stress wound_on_stress"
    " turning_through_stress? turning_through_force? grip_force? forming_stress tangential_force"
    " diametral_force diametral_force_to_bore? widest_light slack_angle former_ratio?"
    " saturation_temperature steam_temperature closed_gap_hot side_clearance side_clearance_hot"
    " groove_width groove_depth back_clearance back_clearance_hot piston_diameter"
    " piston_diameter_hot piston_clearance piston_clearance_hot",
    (FIGURES,),
)
