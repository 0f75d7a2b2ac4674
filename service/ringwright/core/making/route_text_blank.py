"""The words of the route card from the bar to the sawn ring. No numbers: those are its sizes."""

from collections import OrderedDict

from .route_words import DUST, Text

BLANK_TEXT = OrderedDict(
    (
        (
            "survey",
            Text(
                "Survey the bore",
                "The cylinder, open, cold and wiped dry.",
                "Bore gauge or inside micrometer",
                (
                    "Gauge the bore at three heights in four directions, 45 degrees apart, the "
                    "first along the crankshaft.",
                    "Make the ring to the size that the survey gives.",
                ),
                "Readings repeat; the survey finds the bore fit for rings.",
                ("isolate", "pressure-system"),
            ),
        ),
        (
            "face-bar",
            Text(
                "Chuck and face the end",
                (
                    ("-casting", "In the chuck by as much as is given, running true."),
                    ("casting", "In a four-jaw chuck or on the face plate, running true."),
                ),
                "Four-jaw or three-jaw chuck, facing tool",
                (
                    ("-casting -plastic", "Face the end of the bar clean through its skin."),
                    ("casting -plastic", "Face the end of the casting clean through its skin."),
                    ("plastic", "Face the end clean."),
                ),
                (
                    ("-plastic", "Face clean, no skin or blow-holes."),
                    ("plastic", "Face clean and flat."),
                ),
                ("rotating-work", DUST),
            ),
        ),
        (
            "drill",
            Text(
                "Drill through",
                "As it was faced.",
                "Centre drill, then twist drills in steps",
                (
                    "Centre the face and drill right through the blanks, the size given last. Draw "
                    "back often to clear the chips.",
                ),
                "Hole near enough to the middle to clean up.",
                ("rotating-work", DUST),
            ),
        ),
        (
            "turn-rough",
            Text(
                "Turn the outside",
                (
                    ("-stick", "As it was faced; it is not moved until the blanks are parted off."),
                    ("stick", "As it was faced; it is not moved until it is bored."),
                ),
                "Turning tool",
                (
                    "Turn the outside parallel.",
                    ("-plastic", "The first cut goes under the skin all round."),
                    "It stays oversize until the ring is closed and turned last.",
                ),
                "Rough size, parallel over the length.",
                ("rotating-work", DUST),
            ),
        ),
        (
            "bore-rough",
            Text(
                "Rough out the bore",
                "As it was turned.",
                "The stoutest boring tool that goes in",
                (
                    "Open the bore out to the size given; it leaves metal for two light cuts.",
                    ("-solid -plastic", "The first cut goes under the skin of the core all round."),
                ),
                (("-plastic", "No skin, no blow-holes."), ("plastic", "Smooth and round.")),
                ("rotating-work", DUST),
            ),
        ),
        (
            "bore",
            Text(
                "Bore to size",
                "As it was turned.",
                "Boring tool, freshly ground",
                (
                    "Bore to size, the last cut light.",
                    (
                        "-banded",
                        "This bore is the finished inside of the ring: it is not cut again.",
                    ),
                    (
                        "banded",
                        "It leaves metal inside, which is bored when the ring is held closed.",
                    ),
                    (
                        "plastic",
                        "Let it come to shop temperature before it is measured: it grows "
                        "with the heat of the cut.",
                    ),
                ),
                "Size by inside micrometer; finish smooth.",
                ("rotating-work", DUST),
            ),
        ),
        (
            "part-off",
            Text(
                "Part off",
                "As it was bored.",
                "Parting tool; a bar in the tailstock to catch the blank",
                (
                    "Part off each blank at the length given, which leaves metal to face on both "
                    "sides. Catch it on the bar, not by hand.",
                ),
                "Length leaves metal to face.",
                ("rotating-work", DUST),
            ),
        ),
        (
            "face-blank",
            Text(
                "Face the blank",
                (
                    "In soft jaws by its outside, against their shoulder. It is not sawn yet, and "
                    "larger than the facing pot.",
                ),
                "Soft jaws for the blank, facing tool",
                "Face one side clean; turn it over, and face to the blank's length.",
                "Same width all round by micrometer.",
                ("rotating-work", DUST),
            ),
        ),
        (
            "hold-stick",
            Text(
                "Set the stick up on the rotary table",
                "In a chuck on the rotary table, by the end that was in the lathe.",
                "Rotary table with a chuck, dial gauge",
                (
                    "Set the axis of the stick over the table's. Turn the table with a dial on the "
                    "outside: it runs true. Then move the dial along the stick. Only a stick that "
                    "stands true gives square sides.",
                    "The nut under the saw must clear the chuck at the last blank.",
                ),
                "True by dial, turning and along; tight in the chuck.",
                ("slitting-saw",),
            ),
        ),
        (
            "mark-out",
            Text(
                "Mark out slit, bridge and ends",
                (
                    (
                        "-stick",
                        "On a surface plate, or the paper template wrapped round the blank.",
                    ),
                    (
                        "stick",
                        "On the stick as it stands, or the paper template wrapped round it.",
                    ),
                ),
                "Paper template, or height gauge and dividers",
                (
                    ("stick", "Begin at the free end, and mark each blank when it is its turn."),
                    "Scribe the slit line round the middle, the two ends of the bridge, and one "
                    "end in each band, on opposite sides of the bridge:",
                    ("angled", "both at the angle given."),
                    ("-angled", "both square across the band."),
                ),
                (
                    "Both ends start on the bridge.",
                    ("angled", "They lean the same way."),
                    ("-angled", "They are square to the side."),
                ),
                ("sharp-edges",),
            ),
        ),
        (
            "slit",
            Text(
                "Slit round the tube",
                (
                    "On the slitting mandrel on the rotary table, pinched by its sides, the slit "
                    "line over the groove.",
                ),
                "Slitting saw on an arbor, rotary table, slitting mandrel",
                (
                    "Bring one bridge mark under the middle of the saw, then turn it away by the "
                    "first angle, so that the saw's edge and not its middle stands at the mark. "
                    "Feed in radially until it just breaks through, turn the table against the "
                    "cut by the second angle, and stop: the edge is at the other mark.",
                ),
                "Bridge left solid; bands the same width.",
                ("slitting-saw", DUST),
            ),
        ),
        (
            "slit-stick",
            Text(
                "Slit round the stick",
                "On the rotary table, as it was set up.",
                "Slitting saw on an arbor, rotary table",
                (
                    "Bring one bridge mark under the middle of the saw, then turn it away by the "
                    "first angle, so that the saw's edge and not its middle stands at the mark. "
                    "Feed in radially until it just breaks through, turn the table against the "
                    "cut by the second angle, and stop: the edge is at the other mark.",
                ),
                "Bridge left solid; slit in the middle between both sides.",
                ("slitting-saw", DUST),
            ),
        ),
        (
            "saw-off",
            Text(
                "Saw the blank off",
                "On the rotary table, as it was slit.",
                "The same saw; a bar through the bore to catch the blank",
                (
                    "Move the saw along by the size given. Where the slit came out wider than the "
                    "saw, move it further by half the difference. Feed in to the same depth and "
                    "turn the table once round. Catch the blank on the bar, not by hand. Then "
                    "move on as far again, to the slit of the next blank.",
                ),
                "Same length all round by micrometer; sides left as sawn.",
                ("slitting-saw", DUST),
            ),
        ),
        (
            "saw-wedges",
            Text(
                "Saw the ends of the slit square",
                "On a wooden plug in the vice.",
                "Fine hand saw or piercing saw",
                (
                    "The round saw leaves a wedge on the inside at each end of the slit; saw it "
                    "through to the bridge marks and no further.",
                ),
                "Slit open through to the marks, inside and out.",
                ("sharp-edges", DUST),
            ),
        ),
        (
            "saw-ends",
            Text(
                "Saw one end in each band",
                "On a wooden plug in the vice, the saw clear of the other band.",
                "Saw in a guide",
                (
                    "Saw through one band beside the bridge,",
                    ("angled", "at the marked angle,"),
                    ("-angled", "square across,"),
                    "as far as the slit; then the other band on the bridge's other side.",
                ),
                "Each turn has one free end; the bridge joins them.",
                ("sharp-edges", DUST),
            ),
        ),
        (
            "saw-end",
            Text(
                "Saw the gap",
                "On a wooden plug in the vice.",
                "Saw in a guide",
                (
                    ("angled", "Saw the ring through once, at the angle given."),
                    ("-angled", "Saw the ring through once, square across."),
                ),
                "One clean cut, no breakout.",
                ("sharp-edges", DUST),
            ),
        ),
        (
            "saw-step",
            Text(
                "Saw and file the step",
                "On a wooden plug in the vice.",
                "Fine saw, safe-edge file",
                (
                    "Saw half-way through the width from one side, square across, and a tongue's "
                    "length further round from the other; join the two cuts along the middle. "
                    "File the tongues to slide past one another.",
                ),
                "Tongues side by side, free to slide, without step.",
                ("sharp-edges", DUST),
            ),
        ),
        (
            "deburr",
            Text(
                "Take off every burr",
                "In the hand, gloved.",
                "Fine file, oilstone",
                (
                    "Break all sawn edges, inside too.",
                    ("-plastic", "A burr starts a crack when the ring is bent."),
                    ("plastic", "Pare the threads off with a sharp knife, away from the hand."),
                ),
                "No edge catches a fingernail.",
                ("sharp-edges",),
            ),
        ),
    )
)
