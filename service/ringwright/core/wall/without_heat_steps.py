"""The steps by which a ring is made without heat, and the words for how it is held."""

import math

from ..catalogue.inputs_ring import BAND, CLOSING_RING, FORCED_ROUND
from ..ring import without_heat
from ..ring.allowances import CUT_ANGLES
from ..ring.blank import feeler_reading
from ..wording import angle, fine_length, length

HELD = (
    (CLOSING_RING, "held in a closing ring"),
    (BAND, "held by a flexible band"),
    (FORCED_ROUND, "forced fully round"),
)


def marked(sizes):
    """The piece as it is marked along the outside of the first turning [mm].

    sizes: without_heat.Sizes; c*(outside)/(2 R).
    """
    return sizes.piece * 0.5 * sizes.first_outside / sizes.free_radius


def oval(made):
    """Diameters of the ring as a band holds it: from the gap to the back, and across that [mm].

    made: a ring_without_heat.Made.
    """
    d = made.design
    r = 0.5 * (d.duty.bore - d.section.thickness)
    size = 2.0 * d.spring.curvature_change * r * r
    places = (math.pi, 0.5 * math.pi)
    return [made.sizes.held_outside + size * without_heat.lies_off(BAND, psi) for psi in places]


def steps(made):
    """The steps of a ring_without_heat.Made in order, as texts: "Close it: Press the ring ..."."""
    d, sizes = made.design, made.sizes
    facing = d.allowances.facing
    cut = CUT_ANGLES[d.duty.end_cut]
    packing = feeler_reading(gap=made.clamped_gap, angle=cut)
    said = [
        (
            "First turning",
            "Turn the blank to %s outside and bore it to %s at one setting. Part it off at %s and "
            "face both sides to %s."
            % (
                length(sizes.first_outside),
                length(sizes.first_inside),
                length(d.section.width + 2.0 * facing),
                length(d.section.width),
            ),
        ),
        (
            "Cut the piece out",
            "Mark %s along the outside and saw both ends %s to the side of the ring, parallel to "
            "each other. File the ends clean and break their edges. The piece is %s along the "
            "middle of the ring's thickness."
            % (
                length(marked(sizes)),
                "square" if cut == 90.0 else "at " + angle(cut),
                length(sizes.piece),
            ),
        ),
        ("Close it", _closed(made, packing)),
        (
            "Clamp it",
            "Clamp the ring between the shoulder and the end plate of %s, round a spigot of %s. "
            "Take off what closed it, and check that the gap has not moved."
            % (length(sizes.plate), length(sizes.spigot)),
        ),
        (
            "Second turning",
            "Turn the outside to %s with light cuts. No first skin may be left: %s stand on the "
            "diameter for it." % (length(sizes.outside), length(made.allowance)),
        ),
    ]
    if made.bored_again:
        said.append(
            (
                "Bore it again",
                "Without letting it spring, clamp the ring by its outside in a bore of %s, and "
                "bore it to %s." % (length(sizes.outside), length(sizes.inside)),
            )
        )
    said.append(
        (
            "Try it in the bore",
            "Take the burrs off and put the ring alone into the cylinder, square to the bore. The "
            "gap is %s; hold a lamp behind the ring and look for light."
            % fine_length(d.duty.closed_gap),
        )
    )
    return ["%s: %s" % (title, text) for title, text in said]


def _closed(made, packing):
    gap = "a packing of %s between the ends" % fine_length(packing)
    outside = length(made.sizes.held_outside)
    if made.finishing == BAND:
        along, across = oval(made)
        return (
            "Draw the ring together with a flexible band, %s. It lies oval now: about %s from the "
            "gap to the back, %s across." % (gap, length(along), length(across))
        )
    if made.finishing == CLOSING_RING:
        return (
            "Press the ring into a closing ring bored %s, with %s. Behind each end it stands off "
            "the closing ring; that is as it should be." % (outside, gap)
        )
    return (
        "Close the ring with %s, and force it round between a bore of %s and a plug of %s, so that "
        "it stands off neither."
        % (gap, outside, length(made.sizes.held_outside - 2.0 * made.sizes.thickness))
    )
