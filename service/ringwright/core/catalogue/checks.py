"""Every check that a finding may carry: its key, the room that makes it, and what it judges."""

from collections import OrderedDict

from . import Check

_ROOMS = (
    (
        "ring",
        (
            ("too-stiff", "whether the section can be put on at all"),
            ("too-slack", "whether the section can press as asked"),
            ("wall-pressure", "wall pressure against practice"),
            ("sawn-open", "the width sawn out of a ring that is not heat-set"),
            ("closed-stress", "stress in the bore"),
            ("forming", "stress on the former or spacer"),
            ("turning-through", "stress when the turns pass through one another"),
            ("wound-on", "stress when wound on to the piston"),
            (
                "wound-on-in-haste",
                "stress when wound on in haste, the crossing within 20 degrees, or with the first "
                "end let down by the ring's width",
            ),
            ("sprung-on", "stress when opened over the piston or a plug"),
            ("light", "light between ring and bore"),
            ("bearing", "how evenly the ring bears"),
            ("setting", "whether the way of setting suits the ring"),
            ("grip", "how the two turns hold each other"),
            ("section", "the section against those that serve"),
            ("proportion", "radial thickness against the bore"),
            ("width", "ring width against practice, and as made"),
            ("springy", "whether the ring springs too far for these sums"),
            ("pairing", "ring metal on cylinder metal"),
            ("piston-metal", "piston metal against the steam's heat"),
            ("steam-pressure", "steam pressure against what such engines carry"),
            ("ring-heat", "the ring's metal against the steam's heat"),
            ("steam", "steam temperature against its pressure"),
            ("modulus", "the modulus given against the metal's"),
            ("end-gap", "what is left of the gap when hot"),
            ("gap-wide", "whether the gap is wider than needed"),
            ("cold-start", "what is left of the gap when hot steam meets a stone-cold cylinder"),
            ("side-clearance", "clearance of the ring in its groove"),
            ("groove-depth", "room behind the ring"),
            ("piston-clearance", "clearance of the piston"),
            ("piston-seizes", "whether the piston binds when hot"),
        ),
    ),
    (
        "wall",
        (
            ("no-contact", "whether the ring touches the bore at all"),
            ("large-deflection", "whether the ring moves too far for these sums"),
            ("seals", "how far round the ring presses"),
        ),
    ),
    (
        "measuring",
        (
            ("verdict", "what to do with the bore"),
            ("ring-follows", "whether a ring follows this bore"),
            ("gap-breathes", "the gap where the bore is tightest"),
            ("gap-breathes-wide", "the gap where the bore is widest"),
            ("gauge-in-doubt", "whether the gauge is fine enough for what it is asked"),
            ("readings-disagree", "how far readings scatter"),
            ("ovality-unseen", "whether ovality could be seen"),
            ("two-directions", "whether two directions were gauged"),
            ("pressure", "wall pressure that the ring shows"),
            ("agreement", "whether the measures agree"),
            ("thickness", "radial thickness as made"),
            ("thickness-over", "radial thickness against the groove"),
            ("width-lost", "side clearance as made"),
            ("closed-gap", "closed gap as made, against what heat takes"),
            ("closed-gap-wide", "closed gap as made, against what leaks"),
            ("free-shape", "the ring's shape lying free"),
            ("relief", "share of the stress that the soak took out, or should take out"),
            ("yield", "how many rings come out within limits"),
            ("matters-most", "which input moves the pressure most"),
        ),
    ),
    (
        "making",
        (
            ("tongue", "whether the tongues of a stepped end still overlap"),
            ("soak", "time and heat of the soak"),
            ("soak-cold", "whether the soak is too cold"),
            ("soak-hot", "whether the soak is too hot"),
            ("bridge", "length of the bridge"),
            ("cutter-reach", "whether the saw reaches through"),
            ("slit-width", "the slit against the saw's thickness"),
            ("band-allowance", "metal left on the bands for facing"),
            ("pot", "whether the pot on the shelf holds this ring"),
            ("clamp-mandrel", "whether the clamp mandrel on the shelf holds this ring"),
            ("feeler-gap", "the gap as a feeler reads it"),
            ("bar", "whether there is a bar to suit"),
            ("stick", "length that can be chucked"),
            ("chucking-piece", "length left to hold the bar by"),
            ("rack", "whether the bars at hand are enough"),
            ("rack-unsuited", "bars at hand that do not suit"),
            ("metal", "metal of bars and rings"),
            ("offer-price", "whether each bar offered has a price"),
            ("spares", "whether there are spares"),
            ("cut-list", "how near the cut list is to the least possible"),
            ("spindle-speed", "speeds that the lathe does not have"),
            ("batch", "whether the rings are best made at once"),
            ("limits", "whether the limits on the card can be worked to"),
        ),
    ),
    (
        "walk",
        (
            ("size-out", "a size measured of a ring, outside its limits"),
            ("ring-made", "whether a ring being made comes right"),
        ),
    ),
    (
        "running",
        (
            ("friction", "share of the power lost in friction"),
            ("spring", "whether the ring has the spring it is asked for"),
            ("leak", "share of the steam that leaks"),
            ("double-turn-leak", "how sure the leak of a double-turn ring is"),
            ("compression", "compression of the cycle"),
            ("power", "whether the cycle gives any power"),
            ("missing-quantity", "steam that the diagram does not show"),
            ("leak-against-feed", "the leak against the feed measured"),
            ("groove", "wear of the groove"),
            ("ring-material-heat", "the ring's metal against the steam's heat"),
            ("wear", "how the gap grows"),
            ("gap-running", "the gap when the engine runs warm"),
            ("side-clearance-running", "side clearance when it runs warm"),
            ("piston-clearance-running", "piston clearance when it runs warm"),
            ("side-clearance-start", "side clearance when the ring is hot first"),
            ("clearances", "whether anything touches"),
            ("ring-over-port", "ring width against the port"),
            ("bulge", "how far the ring springs out between bars"),
            ("joint", "whether an end of the ring can catch in an opening"),
            ("bar-wear", "wear of the bars"),
        ),
    ),
)

# key -> Check, in the order of the rooms.
CHECKS = OrderedDict()
for _room, _rows in _ROOMS:
    for _key, _judges in _rows:
        CHECKS[_key] = Check(_key, _room, _judges)


def all_checks(answers):
    """key -> Check: those above, and what a sequence of Answer adds."""
    found = OrderedDict(CHECKS)
    for one in answers:
        for check in one.checks:
            found[check.key] = check
    return found
