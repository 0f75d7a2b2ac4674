"""From the faced blank to the ring on its piston: sawing, setting and finishing on a route card."""

from ..ring import sizing
from ..ring.allowances import CUT_ANGLES
from ..ring.blank import feeler_reading
from ..ring.soak import can_be_set, soak_range
from ..walk.finished import finished_limits, free_gap_limits, side_limits
from ..walk.plan import clamped_reading
from . import finish, tool_list
from .part_sizes import (
    ACROSS_CUT,
    ALONG,
    DEPTH,
    FEELER,
    FITTED,
    INSIDE,
    MICROMETER,
    RULE,
    SCALE,
    SET,
    bare,
    between,
    limited,
)
from .route_rows import FACE_RUN_OUT, TURN_RUN_OUT

# What the last two light cuts take together, on the radius [mm].
LAST_CUTS = 0.15
HEAT_UP_HOURS = 0.5
AT_RING = "pyrometer or crayon at the ring"
# Weight of a kilogram [N]; by definition.
GRAVITY = 9.80665


class Work:
    """The rows after the blank: sawing, setting, finishing."""

    def __init__(self, design, tooling, bench, held):
        """design: a Design. tooling: its Tooling. bench: a Bench. held: its CardLimits."""
        self.d = design
        self.t = tooling
        self.bench = bench
        self.held = held
        self.own = finished_limits(design)

    def last_turning(self, sizes):
        """The clamped outside: most of the metal as in roughing, then two light cuts."""
        d, bench = self.d, self.bench
        stock = 0.5 * (d.blank.rough_outside - d.blank.finish_outside)
        times = bench.passes(max(stock - LAST_CUTS, 0.0), "turn-rough") + 2
        made = bench.cut(
            "turn-finish", d.blank.rough_outside, d.section.width + TURN_RUN_OUT, times
        )
        return bench.turned("turn-finish", sizes, made)

    def saw_cut(self):
        return between("end_kerf", "saw cut", self.d.allowances.kerf, self.held.kerf, ACROSS_CUT)

    def end_angle(self):
        return bare("end_angle", "ends, to the side", CUT_ANGLES[self.d.duty.end_cut], "deg", SET)

    def plain_sawing(self):
        d = self.d
        key = "saw-end"
        saw = [self.saw_cut()]
        if self.t.joint is None:
            saw.insert(0, self.end_angle())
        else:
            key = "saw-step"
            saw.append(bare("tongue_length", "length of each tongue", self.t.joint.opening))
            # Half of what the saw leaves of the blank; facing takes the same off both tongues.
            wide = self.t.joint.tongue_width + d.allowances.facing
            saw.append(bare("sawn_tongue_width", "tongue, before facing", wide))
        return [
            self.bench.hand(key, saw, "saw-ends"),
            self.bench.hand("deburr", []),
        ]

    def moves(self):
        length = self.d.blank.length
        return bare("blank_length", "each free end moves", length, reading=SET)

    def setting(self):
        d, t = self.d, self.t
        rows = []
        if d.duty.turns == 2:
            rows.append(
                self.bench.hand(
                    "turn-through",
                    [self.moves()],
                )
            )
        if t.former_diameter is not None:
            former = [between("former_diameter", "former", t.former_diameter, self.held.former)]
            key = "put-on-former-bound" if d.duty.setting == "bound" else "put-on-former"
            rows.append(self.bench.hand(key, former, "put-on-former"))
        else:
            rows.append(self.bench.hand("spread", tool_list.spacer_sizes(d, t)))
        soak = [
            bare("soak_temperature", "ring at", d.soak.temperature, "degC", AT_RING),
            bare("soak_time", "held", d.soak.hours, "h", "clock, from when the ring is at heat"),
        ]
        hottest = soak_range(d.duty.ring_material.family).hottest
        if d.soak.temperature <= hottest:
            soak.append(bare("soak_hottest", "never above", hottest, "degC", AT_RING))
        heat = 60.0 * (d.soak.hours + HEAT_UP_HOURS)
        rows.append(self.bench.waited("soak", soak, heat))
        off = "turn-back" if d.duty.turns == 2 else "take-off"
        rows.append(self.bench.hand(off, [], "take-off"))
        # The gap on the bench before turning is along the neutral line of the rough ring.
        rows.append(self.bench.hand("measure-free-gap", [self.free_gap()]))
        return rows

    def free_gap(self):
        d = self.d
        label = each("free gap", d)
        return between(
            "free_gap", label, d.spring.gap_change + d.duty.closed_gap, free_gap_limits(d), ALONG
        )

    def seat(self):
        """Strips that carry a ring with a step, lying free, so that its axis stands square.

        From the bridge its side climbs by the slit's width in a turn: opposite the bridge half of
        it is missing under the ring, at the free end beside the bridge all of it.
        """
        slit = self.d.allowances.slit
        return [
            bare("thick_strip", "strip under the free end", slit, reading=MICROMETER),
            bare("thin_strip", "strip opposite the bridge", 0.5 * slit, reading=MICROMETER),
        ]

    def scale(self):
        """What a kitchen scale shows when the ring is pressed shut across [kg]."""
        force = sizing.behaviour(self.d).to_close_gap
        return bare("scale_reading", "on the scale, gap just closed", force / GRAVITY, "kg", SCALE)

    def finishing(self):
        d, t = self.d, self.t
        # At the bridge each side stands a slit's width above its lowest place.
        stock = d.allowances.facing + (0.0 if d.duty.turns == 1 else d.allowances.slit)
        run = 0.5 * (d.blank.rough_outside - d.blank.bored_inside) + FACE_RUN_OUT
        times = 2 * self.bench.passes(stock, "face")
        faced = self.bench.cut("face", d.blank.rough_outside, run, times)
        sides = finish.SIDES
        if d.duty.ring_material.family == "plastic":
            sides = finish.TURNED_SIDES
        width = [
            limited("pot_bore", "pot", t.pot_bore, "H8", INSIDE),
            finish.with_ra(self.width("finished width, sides"), sides),
            finish.flat_sides(d),
        ]
        if d.duty.turns == 2:
            width[1:1] = self.seat()
        outside = [
            between(
                "finish_outside_diameter",
                "outside, clamped",
                d.blank.finish_outside,
                self.held.finish,
            )
        ]
        clamp = [
            bare("band_length", "band between its lugs", t.band_length, reading=RULE)
            if t.band_length is not None
            else bare(
                "closing_ring_bore", "closing ring, to suit", t.closing_ring_bore, reading=INSIDE
            ),
            between(
                "clamped_gap_reading",
                each("gap while closed", d),
                clamped_reading(d),
                self.held.clamped_gap,
                FEELER,
            ),
            limited("clamp_mandrel_diameter", "spigot", t.clamp_mandrel_diameter, "g6"),
            bare("end_plate_diameter", "end plate", t.end_plate_diameter),
        ]
        gap = [
            between(
                "closed_gap_reading",
                each("gap in the bore", d),
                feeler_reading(gap=d.duty.closed_gap, angle=CUT_ANGLES[d.duty.end_cut]),
                self.held.closed_gap,
                FEELER,
            ),
            bare("feeler_gap", "at the outer edge, before dressing", t.feeler_gap, reading=FEELER),
            finish.broken_edges(),
        ]
        inspect = [
            between("radial_thickness", "thickness", d.section.thickness, self.own.thickness),
            self.width("width"),
            gap[0],
        ]
        if can_be_set(d.duty.ring_material.family):
            inspect[:0] = [self.free_gap()]
            inspect.append(self.scale())
        groove = [
            between(
                "side_clearance",
                "side clearance",
                d.side_clearance,
                side_limits(d),
                FITTED,
            ),
            bare("groove_depth", "groove depth", d.groove_depth, reading=DEPTH),
        ]
        clamp_key = {"closing-ring": "clamp", "forced-round": "clamp-forced", "band": "clamp-band"}[
            d.duty.finishing
        ]
        facing = "face-step" if d.duty.turns == 2 else "face-sides"
        rows = [
            self.bench.turned(facing, width, faced),
            self.bench.hand(clamp_key, clamp, "clamp"),
            self.last_turning(outside),
            self.bench.hand("dress-ends", gap),
            self.bench.hand("inspect", inspect),
            self.bench.hand("fit-double" if d.duty.turns == 2 else "fit", groove),
        ]
        if d.allowances.inside > 0.0:
            inside = between(
                "inside_diameter",
                "inside, clamped",
                t.inside_clamped,
                self.held.bored_clamped,
                INSIDE,
            )
            run = d.section.width + TURN_RUN_OUT
            times = self.bench.passes(max(d.allowances.inside, LAST_CUTS), "bore")
            bored = self.bench.cut("bore", t.inside_clamped, run, times)
            cup = tool_list.outer_clamp(d, t, "outer clamp")
            rows.insert(3, self.bench.turned("bore-clamped", [cup, inside], bored))
        return rows

    def width(self, label):
        return between("ring_width", label, self.d.section.width, self.held.width)


def each(label, design):
    """The label of a gap: a double-turn ring has two. design: a Design."""
    return label + ", of each turn" if design.duty.turns == 2 else label
