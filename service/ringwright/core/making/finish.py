"""Texture and form of a ring's surfaces: what a turned cut leaves, how flat its sides lie."""

from ..records import Method
from ..wording import decimal
from .part_sizes import Size, bare

# Values of Ra to ask for, each twice the one before, none finer than a ring needs [micrometres]:
# the grades of ISO 1302, by three pages.
STEPS = (0.8, 1.6, 3.2, 6.3, 12.5, 25.0)
# Nose of the last tool [mm], and what the shop leaves over the sum, 1.5 to 3 (read); practice.
NOSE, IN_THE_SHOP = 0.4, 2.0
# Sides rubbed on fine emery paper, sides of plastic, turned alone [micrometres]; edges broken [mm];
# share of the side clearance that the sides may be out by: common practice, no source.
SIDES, TURNED_SIDES, EDGES, SHARE = 0.8, 1.6, 0.1, 0.25
# Operations whose cut is the last on what is turned.
_LAST = ("turn-finish", "bore")

METHODS = (
    Method(
        "turned-texture",
        "Texture that a turned cut leaves",
        "Ra = f^2/(32 r), twice that in the shop, then the next value of ISO 1302; r 0.4 mm",
        "a sharp round nose and a feed well below its width",
        ("turned-texture", "practice"),
    ),
)


def turned_ra(feed, nose=NOSE):
    """Ra that a round nose leaves [micrometres]: f^2/(32 r).

    feed: a turn [mm]. nose: its radius r [mm]. Example: 0.2 mm and 0.8 mm give 1.56.
    Source: three pages on turning; exactly f^2/(31.2 r).
    """
    return 1000.0 * feed * feed / (32.0 * nose)


def texture(feed):
    """The Ra to ask of a cut [micrometres]: the next of STEPS. feed: a turn [mm]."""
    left = IN_THE_SHOP * turned_ra(feed)
    for step in STEPS:
        if left <= step:
            return step
    return STEPS[-1]


def textured(sizes, made):
    """The Sizes of a row, the last with the Ra it ends in. sizes: list. made: a machining.Cut."""
    if made.operation not in _LAST or not sizes:
        return sizes
    return sizes[:-1] + [with_ra(sizes[-1], texture(made.feed.value))]


def with_ra(size, ra):
    """A Size whose label says the texture too. size: a Size. ra [micrometres]."""
    return Size(
        name=size.name,
        label="%s, Ra %s" % (size.label, decimal(ra, 1)),
        value=size.value,
        unit=size.unit,
        lower=size.lower,
        upper=size.upper,
        reading=size.reading,
    )


def out_of_flat(design):
    """How far a ring's sides may be out of flat and parallel [mm]. design: a Design."""
    return SHARE * max(design.side_clearance, 0.01)


def flat_sides(design):
    """The Size of that. design: a Design."""
    reading = "feeler under it on a surface plate; micrometer all round"
    return bare("side_flatness", "sides flat and even, within", out_of_flat(design), "mm", reading)


def broken_edges():
    """The Size of edges taken off."""
    return bare("edge_break", "edges broken by, all round", EDGES, "mm", "fine file or stone")
