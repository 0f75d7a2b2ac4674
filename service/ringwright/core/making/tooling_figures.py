"""The figures of the tooling: every size of blank and tools with its formula."""

from ..catalogue import figures_of
from ..catalogue.making import TOOLING
from ..ring import blank, heat_set
from ..ring.allowances import CUT_ANGLES
from ..walk.plan import clamped_reading
from .slitting import BREAKTHROUGH, BRIDGE_MARGIN


def figures(design, tooling):
    """OrderedDict of Figure. design: a Design. tooling: its Tooling."""
    d, t = design, tooling
    angle = CUT_ANGLES[d.end_cut]
    values = {
        "rough_outside_diameter": d.rough_outside,
        "bored_inside_diameter": d.bored_inside,
        "blank_length": d.blank_length,
        "part_length": t.part_length,
        "band_width": d.band_width,
        "finish_outside_diameter": d.finish_outside,
        "clamped_gap": d.clamped_gap,
        "feeler_gap": t.feeler_gap,
        "clamped_gap_reading": clamped_reading(d),
        "closed_gap_reading": blank.feeler_reading(gap=d.closed_gap, angle=angle),
        "former_length": t.former_length,
        "pot_bore": t.pot_bore,
        "pot_gap": t.pot_gap,
        "closing_ring_bore": t.closing_ring_bore,
        "clamp_mandrel_diameter": t.clamp_mandrel_diameter,
        "end_plate_diameter": t.end_plate_diameter,
        "band_length": t.band_length,
        "outer_clamp_bore": t.outer_clamp_bore,
        "scarf_length": t.scarf_length,
    }
    given = {
        "d1": d.bore,
        "a1": d.radial_thickness,
        "h1": d.ring_width,
        "s1": d.closed_gap,
        "s_c": d.clamped_gap,
        "s": d.gap_kerf,
        "saw": d.end_kerf,
        "k": d.slit_width,
        "f": d.facing_allowance,
        "allowance": d.finishing_allowance,
        "b": d.band_width,
        "A": angle,
        "D": d.finish_outside,
        "L": d.blank_length,
        "r_b": d.bored_radius,
        "r": 0.5 * (d.bore - d.radial_thickness),
        "m": d.gap_change,
        "eta": d.relief,
        "hot/cold": d.former_growth,
        "spacer": t.spacer_width,
        "opening": d.spacer_width and d.spacer_width - d.gap_kerf,
    }
    if t.former_diameter is not None:
        small, large = _former_spread(d)
        values["former_diameter"] = (small, t.former_diameter, large)
    else:
        values["spacer_width"] = t.spacer_width
        values["spacer_across"] = t.spacer_across
        values["spacer_taper"] = t.spacer_taper
    if t.slit is not None:
        given["ri"] = 0.5 * d.bored_inside
        given["ro"] = 0.5 * d.rough_outside
        given["Dc"] = t.cutter_diameter
        given["e"] = BREAKTHROUGH
        given["bridge angle"] = t.bridge_angle
        given["half angle"] = t.slit.outside_half_angle
        given["margin"] = BRIDGE_MARGIN
        values["bridge_length"] = t.bridge_length
        values["cutter_diameter"] = t.cutter_diameter
        values["cutter_centre_distance"] = t.slit.centre_distance
        values["table_travel"] = t.slit.table_travel
        values["start_offset"] = t.slit.outside_half_angle
        if t.table_grip is None:
            values["slit_mandrel_diameter"] = t.slit_mandrel_diameter
        else:
            values["cut_off_width"] = d.slit_width
            values["cut_off_step"] = d.band_width + d.slit_width
            values["table_grip"] = t.table_grip
        values["hand_wedge"] = t.slit.hand_wedge
        values["hand_wedge_length"] = t.slit.hand_wedge_length
        values["step"] = t.step
    if t.joint is not None:
        values["tongue_length"] = t.joint.opening
        values["tongue_width"] = t.joint.tongue_width
        values["tongue_overlap"] = t.joint.overlap
    ways = {
        "former_length": "inside-out" if d.turns == 2 else "tool-size",
        "part_length": "blank-width" if t.table_grip is None else "sawn-off",
    }
    return figures_of(TOOLING, values, given, ways)


def _former_spread(d):
    """The former sizes that would suit the best and the poorest relief the soak may give [mm]."""
    inwards = 0.5 * (d.set_thickness - d.radial_thickness) - d.inside_allowance
    free = 1.0 / (2.0 / (d.bore - d.radial_thickness) - d.curvature_change) + inwards
    sizes = []
    for relief in (d.relief_high, d.relief_low):
        radius = heat_set.former_radius_for(d.bored_radius, free, relief)
        sizes.append(2.0 * (radius - 0.5 * d.set_thickness) / d.former_growth)
    return sizes[0], sizes[1]
