"""Slitting a double-turn blank: bridge, saw, rotary table, and the mandrel that holds the blank."""

from collections import namedtuple

from ..catalogue.inputs import Chooser
from ..catalogue.inputs_tools import TOOLING
from ..problems import OutOfRange, unworkable
from ..ring import blank
from ..shop_sizes import up

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

# All [mm]; bridge_angle [deg]; cut: a blank.Slit. Either a mandrel or a grip on the table is None.
Slitting = namedtuple(
    "Slitting",
    (
        "bridge_length", "bridge_angle", "cutter_diameter", "cutter_collar", "cut",
        "mandrel_diameter", "mandrel_length", "relief_width", "relief_depth", "table_grip",
    ),
)  # fmt: skip
# Of a plain ring, which is not slit.
NONE = Slitting(
    bridge_length=None,
    bridge_angle=None,
    cutter_diameter=None,
    cutter_collar=None,
    cut=None,
    mandrel_diameter=None,
    mandrel_length=None,
    relief_width=None,
    relief_depth=None,
    table_grip=None,
)


def settle(d, values, cut_angle, chosen):
    """The Slitting of a double-turn blank.

    d: a Design. values: checked inputs of tooling. cut_angle: of the ends to the side [deg].
    chosen: list of Choice, added to. Raises InputProblem where no slit is left to cut.
    """
    wall = 0.5 * (d.blank.rough_outside - d.blank.bored_inside)
    take = Chooser(values, TOOLING)
    saws = blank.INCH_SAWS if values.get("inch_sizes") else blank.SAWS
    shortest = blank.shortest_bridge(band=d.blank.band_width, angle=cut_angle, margin=BRIDGE_MARGIN)
    if values.get("inch_sizes"):
        shortest = up(shortest, 1.0, 1 / 64, True)
    bridge = take("bridge_length", shortest)
    cutter = take("cutter_diameter", _smallest_saw(wall, saws))
    collar = take("cutter_collar", _collar(cutter, saws))
    on_stick = take("slit_on_stick")
    grip = take("table_grip", d.blank.rough_outside) if on_stick else None
    chosen.extend(take.chosen)
    if collar >= cutter:
        raise unworkable(
            "cutter_collar",
            "the collar is as large as the saw",
            "give the collar's diameter, smaller than the saw's",
            value=collar,
            highest=cutter,
        )
    angle = blank.bridge_angle(bridge_length=bridge, outside_radius=0.5 * d.blank.rough_outside)
    try:
        cut = blank.slit(
            inside_radius=0.5 * d.blank.bored_inside,
            outside_radius=0.5 * d.blank.rough_outside,
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
        mandrel_diameter=None if on_stick else d.blank.bored_inside,
        mandrel_length=None if on_stick else d.blank.length - MANDREL_SHORT,
        relief_width=None if on_stick else d.allowances.slit + 2.0 * RELIEF_BESIDE,
        relief_depth=None if on_stick else BREAKTHROUGH + RELIEF_BELOW,
        table_grip=grip,
    )


def _smallest_saw(wall, saws):
    try:
        return blank.smallest_cutter(wall=wall, breakthrough=BREAKTHROUGH, saws=saws).diameter
    except OutOfRange:
        return saws[-1].diameter


def _collar(cutter, saws):
    """Collar of the standard saw of that size, or of the next smaller [mm]."""
    collar = 0.5 * cutter
    for saw in saws:
        if saw.diameter <= cutter:
            collar = saw.collar
    return collar
