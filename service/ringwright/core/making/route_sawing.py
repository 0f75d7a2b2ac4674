"""Slitting and sawing a double-turn blank, on a route card: on its mandrel, or on the stick."""

import math

from ..catalogue.inputs import Chooser
from ..catalogue.inputs_stock import SHOP
from ..catalogue.inputs_tools import HSS
from . import machining, route_tube
from .part_sizes import (
    ACROSS_CUT,
    RULE,
    RULE_ENDWISE,
    RULE_INSIDE,
    SET,
    bare,
    between,
)
from .tool_list import slit_mandrel

# How much of what is left to face a sawn side may run out by; common practice, no source.
RUN_SHARE = 0.5
DIAL = "dial gauge on the table's base, moved along the stick"


def rows(work, values):
    """List of route_rows.Operation from the blank, or the bored stick, to the sawn ring.

    work: a route_ring.Work of a double-turn ring. values: checked inputs of the route card.
    """
    on_stick = work.t.table_grip is not None
    found = [_held(work, Chooser(values, SHOP))] if on_stick else []
    found.append(work.bench.hand("mark-out", _marks(work)))
    found.append(_slit(work, on_stick))
    if on_stick:
        found.append(_sawn_off(work))
    t = work.t
    wedge = [
        bare("hand_wedge", "left at each end", t.slit.hand_wedge, "deg", SET),
        bare(
            "hand_wedge_length", "along the inside", t.slit.hand_wedge_length, reading=RULE_INSIDE
        ),
    ]
    return found + [
        work.bench.hand("saw-wedges", wedge),
        work.bench.hand("saw-ends", [work.end_angle(), work.saw_cut()]),
        work.bench.hand("deburr", []),
    ]


def squareness(*, along, outside, allowance):
    """Most that a dial may read along a stick, so that sawn sides still clean up [mm].

    run = allowance/2 * along/outside: a stick that leans by run over `along` gives sides that run
    out by run*outside/along over the ring.

    along: travel of the dial, outside: of the stick, allowance: left to face on each side [mm],
    each more than 0. Source: derived; that half the allowance may go so is common practice.
    """
    return RUN_SHARE * allowance * along / outside


def _held(work, take):
    d, t = work.d, work.t
    along = route_tube.stick_length(d, t, take)
    run = squareness(along=along, outside=d.blank.rough_outside, allowance=d.allowances.facing)
    sizes = [
        bare("table_grip", "in the chuck, at least", t.table_grip, reading=RULE_ENDWISE),
        bare("dial_travel", "dial moved along by", along, reading=RULE_ENDWISE),
        bare("stick_run", "and reading no more than", run, reading=DIAL),
    ]
    return work.bench.set_up("hold-stick", sizes, route_tube.stick_count(d, t, take))


def _marks(work):
    d, t = work.d, work.t
    found = [
        bare("bridge_length", "bridge along the outside", t.bridge_length, reading=RULE),
        bare("band_width", "band", d.blank.band_width),
        work.end_angle(),
    ]
    if t.scarf_length > 0.0:
        found.append(bare("scarf_length", "run of each end", t.scarf_length, reading=RULE))
    return found


def _saw(work):
    t = work.t
    return [
        bare("cutter_diameter", "saw diameter", t.cutter_diameter),
        bare(
            "cutter_centre_distance",
            "centre of work to centre of saw, at full depth",
            t.slit.centre_distance,
            reading=SET,
        ),
    ]


def _cut(work, degrees):
    d, t = work.d, work.t
    return machining.cut(
        operation="slit-saw",
        material_key=d.duty.ring_material.key,
        diameter=t.cutter_diameter,
        travel=math.pi * d.blank.rough_outside * degrees / 360.0 + t.slit.depth,
        tool=HSS,
        machine=work.bench.machine,
        teeth=machining.saw_teeth(t.cutter_diameter),
        inch=work.bench.inch,
    )


def _slit(work, on_stick):
    d, t = work.d, work.t
    sizes = _saw(work)
    sizes[1:1] = [between("slit_width", "slit", d.allowances.slit, work.held.slit, ACROSS_CUT)]
    if not on_stick:
        sizes.insert(0, slit_mandrel(d, t, "mandrel"))
    sizes += [
        bare(
            "start_offset",
            "first turn the bridge mark past the saw's centre by",
            t.slit.outside_half_angle,
            "deg",
            SET,
        ),
        bare("table_travel", "then turn of the table", t.slit.table_travel, "deg", SET),
    ]
    made = _cut(work, t.slit.table_travel)
    return work.bench.turned("slit-stick" if on_stick else "slit", sizes, made)


def _sawn_off(work):
    d, held = work.d, work.held
    sizes = _saw(work)
    sizes[:0] = [
        bare(
            "cut_off_step",
            "move the saw along by",
            d.blank.band_width + d.allowances.slit,
            reading=SET,
        ),
        between("blank_length", "blank, as sawn", d.blank.length, held.length),
    ]
    return work.bench.turned("saw-off", sizes, _cut(work, 360.0))
