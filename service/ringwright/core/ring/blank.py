"""Sizes of the blank that becomes the ring: diameters, bands, the slit round the tube, the scarfs.

The metal along the neutral line keeps its length whatever is done to the ring, so in every state
circle - gap is the same. Sawing, setting, closing and clamping follow from that one sentence.
"""

import math
from collections import namedtuple

from ..problems import OutOfRange
from ..records import Method
from ..wording import MM_PER_INCH

# All [mm]. finish_outside: turned to, clamped closed. bored_inside, rough_outside: as bored and
# turned before the ends are sawn.
Diameters = namedtuple("Diameters", ("finish_outside", "bored_inside", "rough_outside"))

# centre_distance: axis of the blank to axis of the cutter at full depth [mm]. table_travel: how far
# the table turns while cutting [deg]. outside_half_angle, inside_half_angle: the cutter's own reach
# either side of its centre line at the two surfaces [deg]. hand_wedge [deg] and hand_wedge_length
# [mm, along the inside]: what is left to saw by hand at each end. depth: wall and breakthrough;
# reach: what the cutter can do past its collar [mm]. reaches: True when it is enough.
Slit = namedtuple(
    "Slit",
    (
        "centre_distance",
        "table_travel",
        "outside_half_angle",
        "inside_half_angle",
        "hand_wedge",
        "hand_wedge_length",
        "depth",
        "reach",
        "reaches",
    ),
)

# A slitting saw [mm]: its diameter, its hole, and the collar that leaves its teeth clear.
Saw = namedtuple("Saw", ("diameter", "hole", "collar"))

# A stepped joint [mm]. tongue_width: of each tongue. overlap: of the tongues in the bore.
# opening: gap, ring in the bore, at which the tongues part.
SteppedJoint = namedtuple("SteppedJoint", ("tongue_width", "overlap", "opening"))

# Slitting saws of ISO 2296; diameters and holes from memory, collars by common practice.
SAWS = (
    Saw(20.0, 5.0, 10.0),
    Saw(25.0, 8.0, 12.0),
    Saw(32.0, 8.0, 14.0),
    Saw(40.0, 10.0, 18.0),
    Saw(50.0, 13.0, 25.0),
    Saw(63.0, 16.0, 32.0),
    Saw(80.0, 22.0, 36.0),
    Saw(100.0, 22.0, 40.0),
    Saw(125.0, 22.0, 40.0),
    Saw(160.0, 32.0, 63.0),
    Saw(200.0, 32.0, 63.0),
)
# Slitting and screw-slotting saws as sold in inches; from memory, collars by common practice.
INCH_SAWS = tuple(
    [
        Saw(MM_PER_INCH * diameter, MM_PER_INCH * hole, MM_PER_INCH * collar)
        for diameter, hole, collar in (
            (0.75, 0.25, 0.375),
            (1.0, 0.25, 0.5),
            (1.25, 0.375, 0.5625),
            (1.75, 0.625, 0.875),
            (2.25, 0.625, 1.0),
            (2.5, 0.875, 1.25),
            (3.0, 1.0, 1.375),
            (4.0, 1.0, 1.5),
            (5.0, 1.0, 1.625),
            (6.0, 1.25, 2.0),
            (8.0, 1.25, 2.0),
        )
    ]
)
# Between the work and the collar, so that neither rubs; common practice, no source.
COLLAR_CLEARANCE = 1.0
# A bridge this many bands long twists no harder than a turn bends; see shortest_bridge.
STOUT_BRIDGE = 1.5

METHODS = (
    Method(
        "blank-diameters",
        "Turned and bored sizes of the blank",
        "D = d1 - (s1 - s_c)/pi; bored = D - 2*a1 + (s - s_c)/pi; "
        "rough = D + (s - s_c)/pi + allowance",
        "thin rings, round in each state; gaps along the neutral line",
        ("neutral-line", "american-engineer"),
    ),
    Method(
        "blank-width",
        "Band and blank of a double-turn ring",
        "b = (h1 + k)/2 + f; L = h1 + 2*k + 2*f; part = L + 2*f",
        "turns pressed together side by side; k = 0 for a plain ring; f on each side",
        ("slit-geometry",),
    ),
    Method(
        "sawn-off",
        "Blanks slit and sawn off on the stick",
        "part = L; from slit to cut and from cut to slit b + k; blanks stand L + k apart",
        "one saw of width k for slit and cut; sides left as sawn until the step is faced",
        ("slit-geometry", "practice"),
    ),
    Method(
        "slit",
        "Slit round a tube by a round cutter",
        "C = ri - e + Dc/2; cos(half angle) = (C^2 + rho^2 - Dc^2/4)/(2*C*rho); "
        "travel = 360 - bridge angle - 2*half angle, both at ro",
        "cutter fed radially from outside until it breaks through by e",
        ("slit-geometry", "iso2296"),
    ),
    Method(
        "scarf",
        "Run of an angled end along the circumference",
        "b/tan(A); gap along the circumference = saw/sin(A)",
        "A from the side of the ring, over 0 to 90 degrees",
        ("slit-geometry",),
    ),
    Method(
        "bridge",
        "Shortest bridge",
        "max(2*b/tan(A), 1.5*b) + margin",
        "both scarfs on the bridge; twist of the bridge no more than the bending of a turn",
        ("slit-geometry", "torsion"),
    ),
    Method(
        "feeler-reading",
        "What a feeler reads between angled ends",
        "reading = gap*sin(A)",
        "ends parallel, the feeler square to the cut; gap along the circumference",
        ("slit-geometry",),
    ),
    Method(
        "inside-out",
        "Length of a double-turn ring inside out",
        "2*L - k: one end has moved up and the other down by the blank's length",
        "turns passed through one another, held on the former by their own spring",
        ("slit-geometry",),
    ),
    Method(
        "stepped-joint",
        "Stepped end",
        "tongue width = (h1 - saw)/2; overlap = lt - s1, lt the tongue's length",
        "tongues of equal width",
        ("practice",),
    ),
    Method(
        "edge-gap",
        "Gap at the outer edge of ends sawn parallel and then closed",
        "e = s1 - a1*(s - s1)/(2*r); square to the cut e*sin(A)",
        "ends sawn square before the ring is closed, and not dressed since",
        ("neutral-line",),
    ),
)


def diameters(*, bore, thickness, closed_gap, clamped_gap, kerf, finishing_allowance):
    """Diameters: finish-turned outside, bored inside and rough outside of the blank.

    finish_outside = bore - (closed_gap - clamped_gap)/pi;
    bored_inside = finish_outside - 2*thickness + (kerf - clamped_gap)/pi;
    rough_outside = finish_outside + (kerf - clamped_gap)/pi + finishing_allowance.

    bore: the cylinder [mm]. thickness: radial thickness of the finished ring [mm]. closed_gap:
    wanted in the bore, clamped_gap: left while the outside is finish-turned, kerf: taken out by the
    saw, each along the circumference on the neutral line [mm] (see end_kerf for an angled cut).
    finishing_allowance: left on the outside diameter for the last turning [mm].
    Result: Diameters [mm]. Raises OutOfRange when the blank would have no bore.
    Source: derived; without closed gap, clamped gap and allowance it is the rule bore + cut/pi of
    American Engineer, vol. 86 no. 12.
    """
    finish_outside = bore - (closed_gap - clamped_gap) / math.pi
    growth = (kerf - clamped_gap) / math.pi
    bored_inside = finish_outside - 2.0 * thickness + growth
    if bored_inside <= 0.0:
        raise OutOfRange("thickness", thickness, "less than half the outside", "neutral line")
    return Diameters(finish_outside, bored_inside, finish_outside + growth + finishing_allowance)


def gap_at_edge(*, gap, kerf, thickness, neutral_radius):
    """Gap at the outer edge of ends that were sawn parallel: gap - thickness*(kerf -
    gap)/(2*neutral_radius).

    Closing turns the end faces towards each other, so the outer edges meet first; a feeler reads
    this gap. gap: along the neutral line when closed, kerf: sawn out, thickness, neutral_radius:
    closed [mm]. Result [mm], below 0 when the edges meet before that gap is reached.
    Holds for thin rings closed round. Source: derived.
    """
    return gap - thickness * (kerf - gap) / (2.0 * neutral_radius)


def end_kerf(*, saw_thickness, angle):
    """Kerf along the circumference of a saw cut at `angle` to the ring's side:
    saw_thickness/sin(angle).

    saw_thickness: of the cut [mm]; angle: over 0 to 90 [deg]. Result [mm].
    Raises OutOfRange for another angle. Source: geometry.
    """
    return saw_thickness / math.sin(_radians(angle))


def feeler_reading(*, gap, angle):
    """What a feeler reads, square to the cut, in a gap between angled ends: gap*sin(angle).

    gap: along the circumference [mm]. angle: of the ends to the ring's side, over 0 to 90 [deg].
    Result [mm]. Raises OutOfRange for another angle. Source: geometry.
    """
    return gap * math.sin(_radians(angle))


def gap_of_reading(*, reading, angle):
    """Gap along the circumference of a feeler's reading square to the cut: reading/sin(angle).

    reading [mm]. angle: of the ends to the ring's side, over 0 to 90 [deg]. Result [mm]; inverse of
    feeler_reading. Raises OutOfRange for another angle. Source: geometry.
    """
    return reading / math.sin(_radians(angle))


def inside_out_length(*, blank_length, slit):
    """Length along the axis of a double-turn blank turned inside out: 2*blank_length - slit.

    Passing through one another each turn's free end moves by the whole blank_length, one up and one
    down, while the bridge stays: the one band then lies a blank's length above its place, the other
    below. From outer side to outer side that is blank_length + 2*band, and 2*band + slit is the
    blank. blank_length, slit [mm]. Result [mm]. Source: derived.
    """
    return 2.0 * blank_length - slit


def band_width(*, ring_width, slit, facing_allowance):
    """Width of each band of a double-turn blank: (ring_width + slit)/2 + facing_allowance.

    Pressed together the turns step by the slit across the bridge, so only 2*band - slit can be
    faced clean. ring_width: finished, both turns together; slit: width of the slit;
    facing_allowance: on each side [mm]. Result [mm]. Source: derived.
    """
    return (ring_width + slit) / 2.0 + facing_allowance


def blank_length(*, ring_width, facing_allowance, slit=0.0):
    """Length of the blank along the bar: ring_width + 2*slit + 2*facing_allowance.

    ring_width: finished [mm]. facing_allowance: on each side [mm]. slit: its width, 0 for a plain
    ring [mm]. Result [mm]; for a double-turn blank it is two bands and the slit. Source: derived.
    """
    return ring_width + 2.0 * slit + 2.0 * facing_allowance


def part_length(length, facing_allowance):
    """Length of a blank as it is parted off, with metal to face off both sides.

    length: of the faced blank [mm]. facing_allowance: on each side [mm]. Result [mm].
    """
    return length + 2.0 * facing_allowance


def slit_half_angle(*, centre, radius, cutter_diameter):
    """Half angle that a cutter covers at `radius` of the work: acos((C^2 + rho^2 -
    Dc^2/4)/(2*C*rho)).

    centre: distance of the axes, C [mm]. radius: rho [mm]. cutter_diameter: Dc [mm]. Result [deg].
    Raises OutOfRange where the cutter's edge does not cross that radius. Source: geometry.
    """
    cosine = (centre * centre + radius * radius - cutter_diameter * cutter_diameter / 4.0) / (
        2.0 * centre * radius
    )
    if not -1.0 <= cosine <= 1.0:
        raise OutOfRange("radius", radius, "where the cutter's edge crosses it", "slit geometry")
    return math.degrees(math.acos(cosine))


def slit(
    *,
    inside_radius,
    outside_radius,
    cutter_diameter,
    breakthrough,
    bridge_angle,
    collar_diameter,
    collar_clearance=COLLAR_CLEARANCE,
):
    """Slit: how to set the cutter and the rotary table, and what is left to saw by hand.

    Centre distance C = inside_radius - breakthrough + cutter_diameter/2; table travel =
    360 - bridge_angle - 2*(half angle at outside_radius); wedge = half angle outside - half angle
    inside.

    inside_radius, outside_radius: of the blank as it is slit [mm]. cutter_diameter [mm].
    breakthrough: how far the cutter passes the inside, over 0 [mm]. bridge_angle: solid left at the
    outside [deg]. collar_diameter: of the arbor's collar [mm]. collar_clearance [mm].
    Result: Slit. Raises OutOfRange when the bridge and the cutter leave nothing to turn through, or
    the breakthrough passes the axis. Source: derived.
    """
    if not 0.0 < breakthrough < inside_radius:
        limit = "over 0 and under the inside radius"
        raise OutOfRange("breakthrough", breakthrough, limit, "slit geometry")
    centre = inside_radius - breakthrough + cutter_diameter / 2.0
    outside, inside = [
        slit_half_angle(centre=centre, radius=radius, cutter_diameter=cutter_diameter)
        for radius in (outside_radius, inside_radius)
    ]
    travel = 360.0 - bridge_angle - 2.0 * outside
    if travel < 0.0:
        limit = "less than the cutter leaves"
        raise OutOfRange("bridge_angle", bridge_angle, limit, "slit geometry")
    depth = outside_radius - inside_radius + breakthrough
    reach = (cutter_diameter - collar_diameter) / 2.0 - collar_clearance
    wedge = outside - inside
    return Slit(
        centre_distance=centre,
        table_travel=travel,
        outside_half_angle=outside,
        inside_half_angle=inside,
        hand_wedge=wedge,
        hand_wedge_length=math.radians(wedge) * inside_radius,
        depth=depth,
        reach=reach,
        reaches=reach >= depth,
    )


def smallest_cutter(*, wall, breakthrough, collar_clearance=COLLAR_CLEARANCE, saws=SAWS):
    """The smallest Saw that reaches through the wall past its collar.

    (diameter - collar)/2 - collar_clearance >= wall + breakthrough. wall, breakthrough,
    collar_clearance [mm]. saws: sequence of Saw, any order. Raises OutOfRange when none does.
    Source: sizes of ISO 2296 from memory; collars common practice, no source.
    """
    fitting = [
        saw
        for saw in saws
        if (saw.diameter - saw.collar) / 2.0 - collar_clearance >= wall + breakthrough
    ]
    if not fitting:
        raise OutOfRange("wall", wall, "what the largest saw reaches through", "ISO 2296 sizes")
    return min(fitting)


def scarf_length(*, band, angle):
    """Run of an end cut along the circumference: band/tan(angle).

    band: width cut through [mm]. angle: to the ring's side, over 0 to 90 [deg]. Result [mm], 0 for
    a square end. Raises OutOfRange for another angle. Source: geometry.
    """
    if angle == 90.0:
        return 0.0
    return band / math.tan(_radians(angle))


def shortest_bridge(*, band, angle, margin=0.0):
    """Shortest bridge, at the outside, that holds both end cuts: max(2*band/tan(angle), 1.5*band) +
    margin.

    One cut runs in from each end of the bridge. The bending moment of one turn crosses to the other
    as a twist of the bridge's radial section, length by thickness; 1.5 bands of length keep its
    equivalent stress (sqrt(3)*T*(3 + 1.8*a1/L)/(L*a1^2), a1 the thickness) no higher than the
    bending stress of a turn, 6*M/(band*a1^2), as long as the ring is no thicker than one band.
    band: width of one band [mm]. angle: of the cuts to the ring's side [deg]. margin: for the hand
    that saws [mm]. Result [mm]. Raises OutOfRange for an angle not over 0 to 90. Source: derived;
    the twist of a rectangle: Timoshenko.
    """
    both = 2.0 * scarf_length(band=band, angle=angle)
    return max(both, STOUT_BRIDGE * band) + margin


def bridge_angle(*, bridge_length, outside_radius):
    """Angle of a bridge at the outside: bridge_length/outside_radius [deg].

    bridge_length: along the outside [mm]. outside_radius: of the blank as it is slit [mm].
    Source: geometry.
    """
    return math.degrees(bridge_length / outside_radius)


def stepped_joint(*, ring_width, tongue_length, closed_gap, side_clearance):
    """SteppedJoint of a plain ring: two tongues lying side by side.

    Tongue width (ring_width - side_clearance)/2; overlap = tongue_length - closed_gap.
    ring_width, tongue_length: along the circumference, closed_gap, side_clearance: between the
    tongues [mm]. Raises OutOfRange when the tongues do not overlap in the bore.
    Source: geometry; common practice, no source, for its use.
    """
    overlap = tongue_length - closed_gap
    if overlap <= 0.0:
        raise OutOfRange("tongue_length", tongue_length, "more than the closed gap", "geometry")
    return SteppedJoint((ring_width - side_clearance) / 2.0, overlap, tongue_length)


def _radians(angle):
    if not 0.0 < angle <= 90.0:
        raise OutOfRange("angle", angle, "over 0 to 90 degrees", "geometry")
    return math.radians(angle)
