"""The thumb rules of the trade: what each says of a ring, and which input it would settle."""

from collections import namedtuple

from ..wording import fine_length, force, length, stress, wall_pressure

THOU = 0.0254  # [mm]
PRACTICE = "common practice, no source"

# key: as in catalogue.thumb_rules. title: how the trade says it. source: where it was read.
# of: function of a Design, the size that it multiplies [mm]. times: in words what that is.
# shares: the multiples tried, each as it is written and as a number.
# puts: function of (size, Design), the inputs it settles. worked: function of (Design, Behaviour),
# what stands in its place [mm]. gives: what it changes, as (name of the figure, how it is worded).
# says: the sentence that tells them.
Rule = namedtuple(
    "Rule",
    ("key", "title", "source", "of", "times", "shares", "puts", "worked", "gives", "says"),
)

_SPRING = (
    ("wall_pressure", wall_pressure),
    ("closed_stress", stress),
    ("sprung_on_stress", stress),
)
_SPRING_SAYS = "The ring presses with %s; it sees %s in the bore and %s put on."
_BORE, _THICKNESS = "of the bore", "times the thickness"
_SECTIONS = tuple([("1/%d" % parts, 1.0 / parts) for parts in (25, 26, 28, 30, 32)])
# Free gap that goes with the section, in thicknesses.
GAP_OF_SECTION = 4.0


def _bore(design):
    return design.duty.bore


def _inside(design):
    return design.inside_diameter


def _thickness(design):
    return design.section.thickness


def _thou(_design):
    return THOU


TABLE = (
    Rule(
        key="former",
        title="Former 1.022 times the inside of the ring",
        source=PRACTICE,
        of=_inside,
        times="times the inside",
        shares=(("1.022", 1.022),),
        puts=lambda size, d: {"former_ratio": size / d.inside_diameter},
        worked=lambda d, acts: d.spring.former_diameter,
        gives=_SPRING,
        says=_SPRING_SAYS,
    ),
    Rule(
        key="free-gap",
        title="Free gap four times the thickness, or three and a half",
        source="Khurmi and Gupta, section 32.9",
        of=_thickness,
        times=_THICKNESS,
        shares=(("3.5", 3.5), ("3.75", 3.75), ("4", 4.0)),
        puts=lambda size, d: {"free_gap": size},
        worked=lambda d, acts: d.spring.gap_change + d.duty.closed_gap,
        gives=_SPRING,
        says=_SPRING_SAYS,
    ),
    Rule(
        key="section",
        title="Thickness a twenty-fifth to a thirty-second of the bore",
        source="Walshaw, part 2: 1/25 to 1/30; Blake, p. 318: 1/32",
        of=_bore,
        times=_BORE,
        shares=_SECTIONS,
        puts=lambda size, d: {"radial_thickness": size},
        worked=lambda d, acts: d.section.thickness,
        gives=_SPRING,
        says=_SPRING_SAYS,
    ),
    Rule(
        key="section-and-gap",
        title="The same thickness, and a free gap of four times that",
        source="Walshaw, part 2",
        of=_bore,
        times=_BORE,
        shares=_SECTIONS,
        puts=lambda size, d: {"radial_thickness": size, "free_gap": GAP_OF_SECTION * size},
        worked=lambda d, acts: d.section.thickness,
        gives=_SPRING,
        says=_SPRING_SAYS,
    ),
    Rule(
        key="end-gap",
        title="End gap by the inch: 0.002 to 0.004 of the bore",
        source="Khurmi and Gupta, section 32.9",
        of=_bore,
        times=_BORE,
        shares=(("0.002", 0.002), ("0.0025", 0.0025), ("0.003", 0.003), ("0.0035", 0.0035),
                ("0.004", 0.004)),
        puts=lambda size, d: {"closed_gap": size},
        worked=lambda d, acts: d.duty.closed_gap,
        gives=(("closed_gap_hot", length),),
        says="Started hot, %s is left between the ends.",
    ),
    Rule(
        key="width",
        title="Each turn 0.7 to 1 times as wide as thick",
        source="Khurmi and Gupta, section 32.9",
        of=_thickness,
        times=_THICKNESS,
        shares=(("0.7", 0.7), ("0.85", 0.85), ("1", 1.0)),
        puts=lambda size, d: {"ring_width": d.duty.turns * size},
        worked=lambda d, acts: d.turn_width,
        gives=(("tangential_force", force),),
        says="A band closes it with %s.",
    ),
    Rule(
        key="opening",
        title="Ends pulled eight times the thickness apart to put it on",
        source=PRACTICE,
        of=_thickness,
        times=_THICKNESS,
        shares=(("8", 8.0),),
        puts=None,
        worked=lambda d, acts: acts.opening,
        gives=(("sprung_on_stress", stress),),
        says="It sees %s put on.",
    ),
    Rule(
        key="side-clearance",
        title="Groove 0.001 to 0.004 in wider than the ring",
        source="a seal maker's page on cast iron rings",
        of=_thou,
        times="",
        shares=tuple([(fine_length(0.0254 * thou), float(thou)) for thou in (1, 2, 3, 4)]),
        puts=lambda size, d: {
            "groove_width": d.section.width + size,
            "measured_groove_width": None,
        },
        worked=lambda d, acts: d.side_clearance,
        gives=(("side_clearance_hot", length),),
        says="Hot, %s is left at its sides.",
    ),
    Rule(
        key="piston-clearance",
        title="Piston a thousandth of the bore smaller than it",
        source=PRACTICE,
        of=_bore,
        times=_BORE,
        shares=(("0.001", 0.001),),
        puts=lambda size, d: {"piston_diameter": d.duty.bore - size},
        worked=lambda d, acts: d.duty.bore - d.piston_diameter,
        gives=(("piston_clearance_hot", length),),
        says="Hot, %s is left round the piston.",
    ),
)  # fmt: skip
