"""The figures of the tooling: every size of blank and tools with its formula."""

from collections import OrderedDict

from ..records import figure
from ..ring import blank, heat_set
from ..ring.allowances import CUT_ANGLES
from ..walk.plan import clamped_reading
from . import stepped_end
from .slitting import BREAKTHROUGH


def figures(design, tooling):
    """OrderedDict of Figure. design: a Design. tooling: its Tooling."""
    d, t = design, tooling
    gaps = (
        ("d1", d.bore, "mm"),
        ("a1", d.radial_thickness, "mm"),
        ("s1", d.closed_gap, "mm"),
        ("sc", d.clamped_gap, "mm"),
        ("s", d.gap_kerf, "mm"),
    )
    width = (("w", d.ring_width, "mm"), ("k", d.slit_width, "mm"), ("f", d.facing_allowance, "mm"))
    out = OrderedDict()

    def put(name, value, unit, symbol, method, working=(), low=None, high=None):
        if value is not None:
            out[name] = figure(value, unit, symbol, method, working, low, high)

    allowance = (("allowance", d.finishing_allowance, "mm"),)
    put(
        "rough_outside_diameter",
        d.rough_outside,
        "mm",
        "rough",
        "blank-diameters",
        gaps + allowance,
    )
    put("bored_inside_diameter", d.bored_inside, "mm", "bored", "blank-diameters", gaps)
    put("blank_length", d.blank_length, "mm", "L", "blank-width", width)
    part = blank.part_length(d.blank_length, d.facing_allowance)
    put("part_length", part, "mm", "part", "blank-width", width)
    put("band_width", d.band_width, "mm", "b", "blank-width", width)
    put("finish_outside_diameter", d.finish_outside, "mm", "D", "blank-diameters", gaps)
    put("clamped_gap", d.clamped_gap, "mm", "sc", "blank-diameters", gaps)
    angle = (("A", CUT_ANGLES[d.end_cut], "deg"),)
    put("feeler_gap", t.feeler_gap, "mm", "s1 at the edge, sin A", "edge-gap", gaps + angle)
    put(
        "clamped_gap_reading",
        clamped_reading(d),
        "mm",
        "sc at the edge, sin A",
        "feeler-reading",
        gaps + angle,
    )
    put(
        "closed_gap_reading",
        blank.feeler_reading(gap=d.closed_gap, angle=angle[0][1]),
        "mm",
        "s1 sin A",
        "feeler-reading",
        gaps + angle,
    )
    set_on = (
        ("r_b", d.bored_radius, "mm"),
        ("r", 0.5 * (d.bore - d.radial_thickness), "mm"),
        ("eta", d.relief, "1"),
        ("hot/cold", d.former_growth, "1"),
    )
    if t.former_diameter is not None:
        small, large = _former_spread(d)
        put("former_diameter", t.former_diameter, "mm", "Df", "former-size", set_on, small, large)
        put(
            "former_length",
            t.former_length,
            "mm",
            "Lf",
            "inside-out" if d.turns == 2 else "tool-size",
            width,
        )
    else:
        spacer = (
            ("m", d.gap_change, "mm"),
            ("s", d.gap_kerf, "mm"),
            ("s1", d.closed_gap, "mm"),
            ("eta", d.relief, "1"),
        )
        put("spacer_width", t.spacer_width, "mm", "spacer", "spacer-size", spacer)
        put(
            "spacer_across", t.spacer_across, "mm", "spacer sin A", "feeler-reading", spacer + angle
        )
        put("spacer_taper", t.spacer_taper, "deg", "2 opening/(3 r)", "spacer-size", spacer)
    closed = (("D", d.finish_outside, "mm"),) + allowance
    put("pot_bore", t.pot_bore, "mm", "pot", "tool-size", closed)
    put("pot_gap", t.pot_gap, "mm", "gap in the pot", "tool-size", closed)
    put("closing_ring_bore", t.closing_ring_bore, "mm", "closing", "tool-size", closed)
    spigot = (("D", d.finish_outside, "mm"), ("a1", d.radial_thickness, "mm"))
    put("clamp_mandrel_diameter", t.clamp_mandrel_diameter, "mm", "spigot", "tool-size", spigot)
    put("end_plate_diameter", t.end_plate_diameter, "mm", "plate", "tool-size", spigot)
    put("band_length", t.band_length, "mm", "pi (D + allowance) - 10", "tool-size", closed)
    put("outer_clamp_bore", t.outer_clamp_bore, "mm", "D", "tool-size", spigot)
    if t.slit is not None:
        cut = (
            ("ri", 0.5 * d.bored_inside, "mm"),
            ("ro", 0.5 * d.rough_outside, "mm"),
            ("Dc", t.cutter_diameter, "mm"),
            ("e", BREAKTHROUGH, "mm"),
        )
        put(
            "bridge_length", t.bridge_length, "mm", "bridge", "bridge", (("b", d.band_width, "mm"),)
        )
        put("cutter_diameter", t.cutter_diameter, "mm", "Dc", "slit", cut)
        put("cutter_centre_distance", t.slit.centre_distance, "mm", "C", "slit", cut)
        put(
            "table_travel",
            t.slit.table_travel,
            "deg",
            "travel",
            "slit",
            cut + (("bridge", t.bridge_angle, "deg"),),
        )
        put("start_offset", t.slit.outside_half_angle, "deg", "half angle", "slit", cut)
        put("slit_mandrel_diameter", t.slit_mandrel_diameter, "mm", "2 ri", "tool-size", cut)
        put("hand_wedge", t.slit.hand_wedge, "deg", "wedge", "slit", cut)
        put("hand_wedge_length", t.slit.hand_wedge_length, "mm", "wedge", "slit", cut)
        put("step", t.step, "mm", "k", "blank-width", width)
    put(
        "scarf_length",
        t.scarf_length,
        "mm",
        "b/tan A",
        "scarf",
        (("b", d.band_width, "mm"), ("A", CUT_ANGLES[d.end_cut], "deg")),
    )
    if t.joint is not None:
        stepped_end.put_figures(out, d, t.joint)
    return out


def _former_spread(d):
    """The former sizes that would suit the best and the poorest relief the soak may give [mm]."""
    inwards = 0.5 * (d.set_thickness - d.radial_thickness) - d.inside_allowance
    free = 1.0 / (2.0 / (d.bore - d.radial_thickness) - d.curvature_change) + inwards
    sizes = []
    for relief in (d.relief_high, d.relief_low):
        radius = heat_set.former_radius_for(d.bored_radius, free, relief)
        sizes.append(2.0 * (radius - 0.5 * d.set_thickness) / d.former_growth)
    return sizes[0], sizes[1]
