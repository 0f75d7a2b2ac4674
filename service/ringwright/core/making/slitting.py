"""Slitting a double-turn blank: bridge, saw, rotary table, and the mandrel that holds the blank."""

from collections import namedtuple

from ..problems import OutOfRange, unworkable
from ..records import Choice
from ..ring import blank

# How far the saw passes through the wall [mm].
BREAKTHROUGH = 0.5
# Left beside the scarfs for the hand that saws them [mm].
BRIDGE_MARGIN = 2.0
# The groove in the mandrel, into which the saw breaks through: beside the saw on each side, and
# below its teeth; and how much shorter than the blank the mandrel is, so that its nut pinches the
# blank by its sides [mm]. Common practice, no source.
RELIEF_BESIDE = 0.5
RELIEF_BELOW = 0.5
MANDREL_SHORT = 0.5

# All [mm]; bridge_angle [deg]; cut: a blank.Slit.
Slitting = namedtuple(
    "Slitting",
    (
        "bridge_length", "bridge_angle", "cutter_diameter", "cutter_collar", "cut",
        "mandrel_diameter", "mandrel_length", "relief_width", "relief_depth",
    ),
)  # fmt: skip
# Of a plain ring, which is not slit.
NONE = Slitting(None, None, None, None, None, None, None, None, None)


def settle(d, values, cut_angle, chosen):
    """The Slitting of a double-turn blank.

    d: a Design. values: checked inputs of tooling. cut_angle: of the ends to the side [deg].
    chosen: list of Choice, added to. Raises InputProblem where no slit is left to cut.
    """
    wall = 0.5 * (d.rough_outside - d.bored_inside)
    bridge = values.get("bridge_length")
    if bridge is None:
        bridge = blank.shortest_bridge(band=d.band_width, angle=cut_angle, margin=BRIDGE_MARGIN)
        chosen.append(Choice("bridge_length", bridge, "mm", "both scarfs, and 2 mm for the saw"))
    cutter = values.get("cutter_diameter")
    collar = values.get("cutter_collar")
    if cutter is None:
        try:
            saw = blank.smallest_cutter(wall=wall, breakthrough=BREAKTHROUGH)
        except OutOfRange:
            saw = blank.SAWS[-1]
        cutter = saw.diameter
        chosen.append(Choice("cutter_diameter", cutter, "mm", "the smallest that reaches through"))
    if collar is None:
        collar = _collar(cutter)
        chosen.append(Choice("cutter_collar", collar, "mm", "usual for that saw"))
    if collar >= cutter:
        raise unworkable(
            "cutter_collar",
            "the collar is as large as the saw",
            "give the collar's diameter, smaller than the saw's",
        )
    angle = blank.bridge_angle(bridge_length=bridge, outside_radius=0.5 * d.rough_outside)
    try:
        cut = blank.slit(
            inside_radius=0.5 * d.bored_inside,
            outside_radius=0.5 * d.rough_outside,
            cutter_diameter=cutter,
            breakthrough=BREAKTHROUGH,
            bridge_angle=angle,
            collar_diameter=collar,
        )
    except OutOfRange as problem:
        name = "bridge_length" if problem.name == "bridge_angle" else "cutter_diameter"
        raise unworkable(
            name,
            "with this cutter and bridge there is no slit left to cut",
            "use a smaller cutter or a shorter bridge",
        )
    return Slitting(
        bridge_length=bridge,
        bridge_angle=angle,
        cutter_diameter=cutter,
        cutter_collar=collar,
        cut=cut,
        mandrel_diameter=d.bored_inside,
        mandrel_length=d.blank_length - MANDREL_SHORT,
        relief_width=d.slit_width + 2.0 * RELIEF_BESIDE,
        relief_depth=BREAKTHROUGH + RELIEF_BELOW,
    )


def _collar(cutter):
    """Collar of the standard saw of that size, or of the next smaller [mm]."""
    collar = 0.5 * cutter
    for saw in blank.SAWS:
        if saw.diameter <= cutter:
            collar = saw.collar
    return collar
