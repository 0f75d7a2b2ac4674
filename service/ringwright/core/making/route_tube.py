"""From the bar to faced blanks, or to the bored stick: the first rows of a route card."""

import math

from ..catalogue.inputs import Chooser
from ..catalogue.inputs_stock import SHOP
from ..wording import MM_PER_INCH
from .bar_choice import best_bar, most_on_a_stick, system_of
from .bars import SOLID
from .part_sizes import DRILLED, INSIDE, RULE_ENDWISE, bare, between, limited
from .route_rows import FACE_RUN_OUT, TURN_RUN_OUT

# Where no bar is made so large: metal to take off a casting, on the radius, outside and in [mm];
# common practice, no source.
CASTING_STOCK = 3.0
# Largest drill for a small lathe, the least that it leaves to the boring tool on the diameter, and
# its point over its diameter [mm, mm, 1]; common practice.
LARGEST_DRILL = 25.0
LEFT_BY_DRILL = 2.0
DRILL_POINT = 0.3
# What roughing leaves in the bore on the radius, for a cut to measure by and a cut to size [mm].
LEFT_TO_SIZE = 0.25
CUTS_TO_SIZE = 2


def rows(bench, design, tooling, values, held):
    """List of route_rows.Operation from the bar to the faced blank; to the bored stick where the
    blanks are slit on it.

    bench: a Bench. design: a Design. tooling: its Tooling. values: checked inputs; bar_form and
    bar_sizes choose the bar as the stock list does. held: the CardLimits.
    """
    d = design
    outside, inside = d.blank.rough_outside, d.blank.bored_inside
    bar = bar_of(design, values)
    if bar is None:
        skin, hole = outside + 2.0 * CASTING_STOCK, max(inside - 2.0 * CASTING_STOCK, 0.0)
    else:
        skin, hole = bar.as_cast, max(bar.as_cast_bore, 0.0)
    solid = hole == 0.0 if bar is None else bar.form == SOLID
    length = d.blank.length
    part = tooling.part_length
    take = Chooser(values, SHOP)
    sticks = stick_count(design, tooling, take)
    run = length + TURN_RUN_OUT
    wall = 0.5 * (outside - inside)
    across = 0.5 * (skin - hole) + FACE_RUN_OUT
    grip = max(take("chucking_piece", outside), tooling.table_grip or 0.0)
    gripped = [bare("chucking_piece", "in the chuck, at least", grip, reading=RULE_ENDWISE)]
    found = [
        bench.waited("survey", [bare("bore", "bore", d.duty.bore, reading=INSIDE)], None),
        bench.once("face-bar", gripped, bench.cut("face", skin, across), sticks),
    ]
    if solid:
        hole = drill_for(inside, values.get("inch_sizes"))
        drilled = bench.cut("drill", hole, part + DRILL_POINT * hole)
        sizes = [bare("drill_diameter", "drill", hole, reading=DRILLED)]
        found.append(bench.on_sticks("drill", sizes, drilled, sticks))
    times = bench.passes(0.5 * (skin - outside), "turn-rough")
    rough = between("rough_outside_diameter", "rough outside", outside, held.rough)
    turned = bench.cut("turn-rough", skin, run, times)
    found.append(bench.on_sticks("turn-rough", [rough], turned, sticks))
    roughed = inside - 2.0 * LEFT_TO_SIZE
    if roughed > hole:
        times = bench.passes(0.5 * (roughed - hole), "bore-rough")
        opened = bench.cut("bore-rough", roughed, run, times)
        sizes = [bare("roughed_bore", "bore, roughed", roughed, reading=INSIDE)]
        found.append(bench.on_sticks("bore-rough", sizes, opened, sticks))
    bored = between("bored_inside_diameter", "bore", inside, held.bored, INSIDE)
    made = bench.cut("bore", inside, run, CUTS_TO_SIZE)
    found.append(bench.on_sticks("bore", [bored], made, sticks))
    if tooling.table_grip is not None:
        return found
    parted = bench.cut("part", outside, wall + FACE_RUN_OUT)
    found.append(
        bench.turned("part-off", [bare("part_length", "length off the bar", part)], parted)
    )
    times = 2 * bench.passes(d.allowances.facing, "face")
    faced = bench.cut("face", outside, wall + FACE_RUN_OUT, times)
    sizes = [
        limited("blank_jaws_bore", "soft jaws", outside, "H8", INSIDE),
        between("blank_length", "blank length", length, held.length),
    ]
    found.append(bench.turned("face-blank", sizes, faced))
    return found


def stick_count(design, tooling, take):
    """How many sticks the blanks are turned on [1].

    design: a Design. tooling: its Tooling. take: an inputs.Chooser over SHOP.
    """
    return -(
        -design.duty.rings
        // most_on_a_stick(design.blank.rough_outside, _pitch(design, tooling, take))
    )


def stick_length(design, tooling, take):
    """How much of a stick is blanks, and the cuts between them [mm]. Inputs as of stick_count."""
    pitch = _pitch(design, tooling, take)
    return min(design.duty.rings, most_on_a_stick(design.blank.rough_outside, pitch)) * pitch


def _pitch(design, tooling, take):
    if tooling.table_grip is not None:
        return tooling.part_length + design.allowances.slit
    return tooling.part_length + take("parting_width", design.blank.rough_outside)


def bar_of(design, values):
    """The bars.BarSize that the blanks come out of, None where they come out of a casting.

    design: a Design. values: as of `rows`.
    """
    return best_bar(
        outside=design.blank.rough_outside,
        inside=design.blank.bored_inside,
        family=design.duty.ring_material.family,
        form=values.get("bar_form"),
        system=system_of(values),
    )


def drill_for(inside, inch=False):
    """Drill to go through a solid bar before it is bored [mm].

    inside: bore to be made [mm], above 0. inch: True for drills in fractions of an inch. A whole
    millimetre, or a sixteenth, at least 2 mm under it and at most 25 mm or 1 in; of a very small
    bore three quarters, in inches to the next 64th below. Source: common practice, no source; the
    drills are of ANSI B94.11M, by an encyclopaedia.
    """
    if inch:
        room = min(MM_PER_INCH, inside - LEFT_BY_DRILL)
        for step in (MM_PER_INCH / 16.0, MM_PER_INCH / 64.0):
            whole = math.floor(room / step + 1e-9)
            if whole >= 4:
                return whole * step
        return max(math.floor(0.75 * inside / step), 1) * step
    whole = math.floor(min(LARGEST_DRILL, inside - LEFT_BY_DRILL))
    return float(whole) if whole >= 2 else 0.75 * inside
