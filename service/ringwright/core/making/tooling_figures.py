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
    angle = CUT_ANGLES[d.duty.end_cut]
    values = {
        "rough_outside_diameter": d.blank.rough_outside,
        "bored_inside_diameter": d.blank.bored_inside,
        "blank_length": d.blank.length,
        "part_length": t.part_length,
        "band_width": d.blank.band_width,
        "finish_outside_diameter": d.blank.finish_outside,
        "clamped_gap": d.allowances.clamped_gap,
        "feeler_gap": t.feeler_gap,
        "clamped_gap_reading": clamped_reading(d),
        "closed_gap_reading": blank.feeler_reading(gap=d.duty.closed_gap, angle=angle),
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
        "d1": d.duty.bore,
        "a1": d.section.thickness,
        "h1": d.section.width,
        "s1": d.duty.closed_gap,
        "s_c": d.allowances.clamped_gap,
        "s": d.allowances.gap_kerf,
        "saw": d.allowances.kerf,
        "k": d.allowances.slit,
        "f": d.allowances.facing,
        "allowance": d.allowances.finishing,
        "b": d.blank.band_width,
        "A": angle,
        "D": d.blank.finish_outside,
        "L": d.blank.length,
        "r_b": d.blank.bored_radius,
        "r": 0.5 * (d.duty.bore - d.section.thickness),
        "m": d.spring.gap_change,
        "eta": d.soak.relief.likely,
        "hot/cold": d.former_growth,
        "spacer": t.spacer_width,
        "opening": d.spring.spacer_width and d.spring.spacer_width - d.allowances.gap_kerf,
    }
    if t.former_diameter is not None:
        small, large = _former_spread(d)
        values["former_diameter"] = (small, t.former_diameter, large)
    else:
        values["spacer_width"] = t.spacer_width
        values["spacer_across"] = t.spacer_across
        values["spacer_taper"] = t.spacer_taper
    if t.slit is not None:
        given["ri"] = 0.5 * d.blank.bored_inside
        given["ro"] = 0.5 * d.blank.rough_outside
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
            values["cut_off_width"] = d.allowances.slit
            values["cut_off_step"] = d.blank.band_width + d.allowances.slit
            values["table_grip"] = t.table_grip
        values["hand_wedge"] = t.slit.hand_wedge
        values["hand_wedge_length"] = t.slit.hand_wedge_length
        values["step"] = t.step
    if t.joint is not None:
        values["tongue_length"] = t.joint.opening
        values["tongue_width"] = t.joint.tongue_width
        values["tongue_overlap"] = t.joint.overlap
    ways = {
        "former_length": "inside-out" if d.duty.turns == 2 else "tool-size",
        "part_length": "blank-width" if t.table_grip is None else "sawn-off",
    }
    return figures_of(TOOLING, values, given, ways)


def _former_spread(d):
    """The former sizes that would suit the best and the poorest relief the soak may give [mm]."""
    inwards = 0.5 * (d.blank.set_thickness - d.section.thickness) - d.allowances.inside
    free = 1.0 / (2.0 / (d.duty.bore - d.section.thickness) - d.spring.curvature_change) + inwards
    sizes = []
    for relief in (d.soak.relief.high, d.soak.relief.low):
        radius = heat_set.former_radius_for(d.blank.bored_radius, free, relief)
        sizes.append(2.0 * (radius - 0.5 * d.blank.set_thickness) / d.former_growth)
    return sizes[0], sizes[1]
