"""The words of the route card: what to do, with what, what to check, which cautions. No numbers."""

from collections import OrderedDict, namedtuple

Text = namedtuple("Text", ("title", "tool", "text", "check", "cautions"))

TEXT = OrderedDict(
    (
        (
            "survey",
            Text(
                "Survey the bore",
                "Bore gauge or inside micrometer",
                "Gauge the bore at three heights, along and across the crankshaft. Make the ring "
                "to the size where it will run; note taper and ovality.",
                "Readings repeat; the bore is fit for rings.",
                ("isolate", "pressure-system"),
            ),
        ),
        (
            "face-bar",
            Text(
                "Chuck and face the bar",
                "Four-jaw or three-jaw chuck, facing tool",
                "Hold the bar by its chucking piece, set it to run true, face the end clean "
                "through the skin.",
                "Face clean, no skin or blow-holes.",
                ("rotating-work", "iron-dust"),
            ),
        ),
        (
            "drill",
            Text(
                "Drill through",
                "Centre drill, then twist drills in steps",
                "Centre the face and drill right through the blanks, the size given last. Draw "
                "back often to clear the chips.",
                "Hole near enough to the middle to clean up.",
                ("rotating-work", "iron-dust"),
            ),
        ),
        (
            "turn-rough",
            Text(
                "Turn the outside",
                "Turning tool",
                "Turn the outside parallel; the first cut goes under the skin all round. It stays "
                "oversize until last.",
                "Rough size, parallel over the length.",
                ("rotating-work", "iron-dust"),
            ),
        ),
        (
            "bore-rough",
            Text(
                "Rough out the bore",
                "The stoutest boring tool that goes in",
                "Open the bore out to leave two light cuts. In a cored bar the first cut goes "
                "under the skin all round.",
                "No skin, no blow-holes.",
                ("rotating-work", "iron-dust"),
            ),
        ),
        (
            "bore",
            Text(
                "Bore to size",
                "Boring tool",
                "Bore to size with a light last cut: this bore is the finished inside of the ring.",
                "Size by inside micrometer; finish smooth.",
                ("rotating-work", "iron-dust"),
            ),
        ),
        (
            "part-off",
            Text(
                "Part off",
                "Parting tool",
                "Part off each blank with metal left on both sides; catch it on a bar in the "
                "tailstock, not by hand.",
                "Length leaves metal to face.",
                ("rotating-work", "iron-dust"),
            ),
        ),
        (
            "face-blank",
            Text(
                "Face the blank",
                "Soft jaws for the blank, facing tool",
                "Face both sides flat and parallel to the blank's length.",
                "Same width all round by micrometer.",
                ("rotating-work", "iron-dust"),
            ),
        ),
        (
            "mark-out",
            Text(
                "Mark out slit, bridge and ends",
                "Paper template or height gauge and dividers",
                "Scribe the slit line round the middle, the two ends of the bridge, and one end in "
                "each band at the angle given, on opposite sides of the bridge.",
                "Both ends start on the bridge; angled ones lean the same way.",
                ("sharp-edges",),
            ),
        ),
        (
            "slit",
            Text(
                "Slit round the tube",
                "Slitting saw on an arbor, rotary table, slitting mandrel",
                "Clamp the blank on its mandrel, the slit line over the groove. Bring one bridge "
                "mark under the middle of the saw, then turn it away by the first angle, so that "
                "the saw's edge and not its middle stands at the mark. Feed in radially until it "
                "just breaks through, turn the table against the cut by the second angle, and "
                "stop: the edge is at the other mark.",
                "Bridge left solid; bands the same width.",
                ("slitting-saw", "iron-dust"),
            ),
        ),
        (
            "saw-wedges",
            Text(
                "Saw the ends of the slit square",
                "Fine hand saw or piercing saw",
                "The round saw leaves a wedge at each end of the slit; saw through to the bridge "
                "marks.",
                "Slit open through to the marks, inside and out.",
                ("sharp-edges",),
            ),
        ),
        (
            "saw-ends",
            Text(
                "Saw one end in each band",
                "Saw guided at the angle",
                "Saw through one band beside the bridge at the marked angle, then the other band "
                "on the bridge's other side.",
                "Each turn has one free end; the bridge joins them.",
                ("sharp-edges", "iron-dust"),
            ),
        ),
        (
            "saw-end",
            Text(
                "Saw the gap",
                "Saw guided at the angle",
                "Saw the ring through once, at the angle of its ends.",
                "One clean cut, no breakout.",
                ("sharp-edges", "iron-dust"),
            ),
        ),
        (
            "saw-step",
            Text(
                "Saw and file the step",
                "Fine saw, safe-edge file",
                "Saw half-way through the width from one side, and a tongue's length further round "
                "from the other; join the two cuts along the middle with a fine saw. File the "
                "tongues to slide past one another.",
                "Tongues side by side, free to slide, without step.",
                ("sharp-edges", "iron-dust"),
            ),
        ),
        (
            "deburr",
            Text(
                "Take off every burr",
                "Fine file, oilstone",
                "Break all sawn edges, inside too: a burr starts a crack when the ring is bent.",
                "No edge catches a fingernail.",
                ("sharp-edges",),
            ),
        ),
        (
            "turn-through",
            Text(
                "Turn the ring inside out",
                "By hand, slowly; fine file",
                "Work one free end sideways past the other turn and follow it round, so that the "
                "two turns pass through one another and change sides. The sawn ends lie open now: "
                "file them smooth and true to their angle, no further than the saw's marks.",
                "Ends smooth, without a burr. No crack at the roots beside the bridge, seen with a "
                "glass.",
                ("stored-spring", "sharp-edges"),
            ),
        ),
        (
            "put-on-former",
            Text(
                "Spring the ring on to the former",
                "Set former",
                "Ease the ring on to the former squarely and let it hold by its own spring, ends "
                "level.",
                "It sits square; the ends are free.",
                ("stored-spring",),
            ),
        ),
        (
            "put-on-former-bound",
            Text(
                "Bind the ring down on the former",
                "Set former, iron wire",
                "Ease the ring on to the former and bind it with iron wire so that it lies on it "
                "all round.",
                "No light between ring and former.",
                ("stored-spring",),
            ),
        ),
        (
            "spread",
            Text(
                "Spread the ring on its spacer",
                "Spacer, flat plate",
                "Open the gap on the spacer and lay the ring flat on a plate, touching nothing "
                "else.",
                "Ring flat, spacer square in the gap.",
                ("stored-spring",),
            ),
        ),
        (
            "soak",
            Text(
                "Heat-set",
                "Furnace, or a hearth with the ring boxed in",
                "Bring ring and holder up together, hold the ring itself at heat, and cool slowly "
                "in the box. A whole batch goes in at once.",
                "Temperature by pyrometer or crayon at the ring, not by the flame.",
                ("hot-work",),
            ),
        ),
        (
            "take-off",
            Text(
                "Take the ring off cold",
                "By hand",
                "Let it cool to the hand before the spacer or former comes out.",
                "Ring stays open by itself.",
                ("hot-work", "stored-spring"),
            ),
        ),
        (
            "turn-back",
            Text(
                "Take it off cold and turn it back",
                "By hand, slowly",
                "Let it cool to the hand, slide it off the former, and pass the turns back "
                "through one another.",
                "The two turns press together all round.",
                ("hot-work", "stored-spring"),
            ),
        ),
        (
            "measure-free-gap",
            Text(
                "Measure the free gap",
                "Rule or caliper, ring flat on a plate",
                "Measure the gap half-way through the thickness. It tells how much the heat "
                "relaxed: correct the next ring by it.",
                "Within a tenth of the size given; else see inspection.",
                (),
            ),
        ),
        (
            "face-step",
            Text(
                "Face the step away from both sides",
                "Facing pot, sharp facing tool",
                "Press the ring into the pot by its own spring and face one side until the step at "
                "the bridge is gone; turn it over and face to width.",
                "Width even all round; sides flat on a surface plate.",
                ("rotating-work", "stored-spring", "iron-dust"),
            ),
        ),
        (
            "face-sides",
            Text(
                "Face both sides to width",
                "Facing pot, sharp facing tool",
                "Press the ring into the pot by its own spring, face one side, turn it over and "
                "face to width.",
                "Width even all round; sides flat on a surface plate.",
                ("rotating-work", "stored-spring", "iron-dust"),
            ),
        ),
        (
            "clamp",
            Text(
                "Close and clamp the ring",
                "Closing ring, clamp mandrel, end plate",
                "Squeeze the ring into the closing ring, put it on the spigot, tighten the end "
                "plate, then draw the closing ring off.",
                "Gap as given; ring does not slip when the closing ring comes off.",
                ("stored-spring",),
            ),
        ),
        (
            "clamp-forced",
            Text(
                "Force the ring round and clamp it",
                "Closing ring, clamp mandrel, end plate",
                "Close the ring on the spigot so that it is forced round from inside and outside, "
                "then tighten the end plate and draw the closing ring off.",
                "Gap as given; light will show behind the tips of a ring set on a round former.",
                ("stored-spring",),
            ),
        ),
        (
            "clamp-band",
            Text(
                "Close the ring with a band and clamp it",
                "Closing band, clamp mandrel with a small spigot, end plate",
                "Draw the ring shut with the band alone, touching nothing inside, tighten the end "
                "plate, take the band off.",
                "Gap as given; the ring lies as the band left it.",
                ("stored-spring",),
            ),
        ),
        (
            "turn-finish",
            Text(
                "Finish-turn the outside",
                "Sharp round-nosed tool",
                "Turn the outside to the bore with light cuts.",
                "Size by micrometer in three places before it is unclamped.",
                ("rotating-work", "stored-spring", "iron-dust"),
            ),
        ),
        (
            "bore-clamped",
            Text(
                "Bore the inside, still clamped",
                "Outer clamp, boring tool",
                "Slip the cup of the outer clamp over the ring, screw its clamp ring to the side "
                "outside the end plate, then take end plate and mandrel away and bore the inside "
                "true with the outside.",
                "Thickness even all round.",
                ("rotating-work", "stored-spring", "iron-dust"),
            ),
        ),
        (
            "dress-ends",
            Text(
                "Dress the ends to the gap",
                "Fine file, feelers, the bore or trial bore",
                "Square the ring in the bore with the piston and measure the gap, of a double-turn "
                "ring that of each turn. Where it is too small dress both sides of it alike until "
                "it is right.",
                "Each gap by feeler, parallel from edge to edge.",
                ("sharp-edges",),
            ),
        ),
        (
            "inspect",
            Text(
                "Inspect",
                "Bore, lamp, feelers, surface plate, kitchen scale",
                "Try the ring in the bore with a lamp behind it; measure free gap, width, "
                "thickness; press it shut on a scale. Enter the sizes: they correct the next ring.",
                "No light, or only where the wall picture shows it.",
                ("stored-spring",),
            ),
        ),
        (
            "fit",
            Text(
                "Fit to the piston",
                "Strips of thin brass",
                "Slide the ring over on strips, oiled, bottom groove first. Stagger the gaps, keep "
                "them clear of the ports. Run in light with plenty of oil.",
                "Ring turns freely in its groove all round.",
                ("stored-spring", "isolate", "pressure-system"),
            ),
        ),
        (
            "fit-double",
            Text(
                "Wind on to the piston",
                "Strips of thin brass",
                "Oil the ring, start one free end in the groove and wind it on like a key ring, "
                "the crossing spread over a third of a turn. Stagger the bridges. Run in light "
                "with plenty of oil.",
                "Ring turns freely in its groove all round; no crack beside the bridge.",
                ("stored-spring", "isolate", "pressure-system"),
            ),
        ),
    )
)
