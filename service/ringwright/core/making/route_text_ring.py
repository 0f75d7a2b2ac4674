"""The words of the route card from the sawn ring to its piston. No numbers: those are its sizes."""

from collections import OrderedDict

from .route_words import DUST, Text

_POT = (
    (
        "double",
        "In the facing pot. At the bridge each side has a step as deep as the slit is wide, and "
        "winds evenly round from there. Lay the ring on the shoulder, bridge down, with the thick "
        "strip under the free end beside it and the thin strip opposite the bridge: so it stands "
        "true and unbent.",
    ),
    ("-double", "In the facing pot, flat on its shoulder."),
    ("set", "It holds by its own spring."),
    ("-set", "The pot presses it shut, and so holds it."),
)
_RUBBED = (
    "-plastic",
    "Rub each side on fine emery paper, oiled, on plate glass, until it is grey all over.",
)
_CLOSED = (
    ("double", "The gap of each turn as given, both alike;"),
    ("-double", "Gap as given;"),
)
_SPIGOT = "Where a thick ring does not go on the spigot, turn that down a little."

RING_TEXT = OrderedDict(
    (
        (
            "turn-through",
            Text(
                "Turn the ring inside out",
                "In both hands; then in a vice with soft jaws, close to the end that is filed.",
                "By hand, slowly; fine file",
                (
                    "Work one free end sideways past the other turn and follow it round, so that "
                    "the two turns pass through one another and change sides. The sawn ends lie "
                    "open now: file them smooth and true to their angle, no further than the "
                    "saw's marks.",
                ),
                "Ends smooth, without a burr. No crack at the roots beside the bridge, seen with a "
                "glass.",
                ("stored-spring", "sharp-edges"),
            ),
        ),
        (
            "put-on-former",
            Text(
                "Spring the ring on to the former",
                "On the set former, by its own spring.",
                "Set former",
                (
                    "Ease the ring on to the former squarely.",
                    ("double", "It stays inside out, its two turns one behind the other."),
                    ("-double", "Its ends lie level."),
                ),
                "It sits square; the ends are free.",
                ("stored-spring",),
            ),
        ),
        (
            "put-on-former-bound",
            Text(
                "Bind the ring down on the former",
                "On the set former, bound with wire.",
                "Set former, soft binding wire",
                (
                    "Ease the ring on to the former and bind it so that it lies on it all round.",
                    ("double", "It stays inside out, its two turns one behind the other."),
                ),
                "No light between ring and former.",
                ("stored-spring",),
            ),
        ),
        (
            "spread",
            Text(
                "Spread the ring on its spacer",
                (
                    ("-double", "Flat on a plate, its ends between the cheeks of the spacer."),
                    (
                        "double",
                        "On its side on a plate, still inside out, the ends of each turn between "
                        "the cheeks of a spacer of their own.",
                    ),
                ),
                (("-double", "Spacer, flat plate"), ("double", "Two spacers alike, flat plate")),
                (
                    ("-double", "Open the gap just far enough for the spacer to go in,"),
                    (
                        "double",
                        "Open the gap of each turn just far enough for its spacer to go in,",
                    ),
                    "its faces along the ends. Nothing else touches the ring.",
                ),
                "Ring flat, ends home on the faces of the spacer.",
                ("stored-spring",),
            ),
        ),
        (
            "soak",
            Text(
                "Heat-set",
                (
                    ("former", "Ring on its former, lying in a closed box."),
                    ("-former", "Ring on its plate, held open as it was spread, in a closed box."),
                ),
                "Furnace, or a hearth with the ring boxed in",
                (
                    ("former", "Bring ring and former up together,"),
                    ("-former", "Bring ring and spacer up together,"),
                    "hold the ring itself at heat, and cool slowly in the box.",
                    ("former", "Rings that have a former each go in at once."),
                    ("-former", "A whole batch goes in at once."),
                    (
                        "drawn",
                        "Drawn bronze has its strength from the drawing: hotter than the most "
                        "given it goes soft for good.",
                    ),
                ),
                "Temperature by pyrometer or crayon at the ring, not by the flame.",
                ("hot-work",),
            ),
        ),
        (
            "take-off",
            Text(
                "Take the ring off cold",
                (
                    ("former", "On the former, on the bench."),
                    ("-former", "Flat on the plate, one hand on the ring."),
                ),
                "By hand",
                (
                    ("former", "Let it cool to the hand, then slide it off the former squarely."),
                    ("-former", "Let it cool to the hand, then draw the spacer out of the gap."),
                ),
                "Ring stays open by itself.",
                ("hot-work", "stored-spring"),
            ),
        ),
        (
            "turn-back",
            Text(
                "Take it off cold and turn it back",
                "In the box until it is cold; then in both hands.",
                "By hand, slowly",
                (
                    "Let it cool to the hand,",
                    ("former", "slide it off the former,"),
                    ("-former", "draw the spacers out of the gaps,"),
                    "and pass the turns back through one another, as they were sawn.",
                ),
                "The two turns press together all round; no crack beside the bridge.",
                ("hot-work", "stored-spring"),
            ),
        ),
        (
            "measure-free-gap",
            Text(
                "Measure the free gap",
                "Flat on a plate, touched by nothing.",
                "Caliper, flat plate",
                (
                    "Measure the gap half-way through the thickness,",
                    ("double", "of each turn, and enter the middle of the two."),
                    ("-double", "and enter it."),
                    "It tells how much the heat relaxed:",
                    ("former", "the former of the next ring goes by it."),
                    ("-former", "the spacer of the next ring goes by it."),
                ),
                "Within its limits; else set it again as its card then says.",
                ("stored-spring",),
            ),
        ),
        (
            "face-step",
            Text(
                "Face the step away from both sides",
                _POT,
                "Facing pot, the two strips, sharp facing tool",
                (
                    "Face the first side until the tool cuts all round and its step is gone. "
                    "Take the strips out, turn the ring over on that side, and face to width.",
                    _RUBBED,
                ),
                "Width even all round; sides flat on a surface plate.",
                ("rotating-work", "stored-spring", DUST),
            ),
        ),
        (
            "face-sides",
            Text(
                "Face both sides to width",
                _POT,
                "Facing pot, sharp facing tool",
                ("Face one side clean, turn the ring over, and face to width.", _RUBBED),
                "Width even all round; sides flat on a surface plate.",
                ("rotating-work", "stored-spring", DUST),
            ),
        ),
        (
            "clamp",
            Text(
                "Close and clamp the ring",
                "In the closing ring; then on the clamp mandrel under its end plate.",
                "Closing ring, clamp mandrel, end plate",
                (
                    "Squeeze the ring into the closing ring and feel its gap: where it is too "
                    "small, bore the closing ring out a little. Put both on the spigot, tighten "
                    "the end plate, then draw the closing ring off.",
                    _SPIGOT,
                ),
                _CLOSED + ("the ring does not slip when the closing ring comes off.",),
                ("stored-spring",),
            ),
        ),
        (
            "clamp-forced",
            Text(
                "Force the ring round and clamp it",
                "In the closing ring; then on the clamp mandrel under its end plate.",
                "Closing ring, clamp mandrel, end plate",
                (
                    "Close the ring on the spigot so that it is forced round from inside and "
                    "outside, feel its gap, then tighten the end plate and draw the closing ring "
                    "off.",
                    _SPIGOT,
                ),
                _CLOSED
                + (
                    "the ring does not slip when the closing ring comes off.",
                    ("light", "Light will show behind the tips: it was set round."),
                ),
                ("stored-spring",),
            ),
        ),
        (
            "clamp-band",
            Text(
                "Close the ring with a band and clamp it",
                "In the closing band; then on the clamp mandrel under its end plate.",
                "Closing band, clamp mandrel with a small spigot, end plate",
                (
                    "Draw the ring shut with the band alone until its gap is right, touching "
                    "nothing inside; tighten the end plate and take the band off.",
                ),
                _CLOSED + ("the ring lies as the band left it.",),
                ("stored-spring",),
            ),
        ),
        (
            "turn-finish",
            Text(
                "Finish-turn the outside",
                "As it was clamped; it is not let go between clamping and the last cut.",
                "Sharp round-nosed tool",
                (
                    "Turn the outside to size; the last two cuts are light.",
                    (
                        "plastic",
                        "Let it come to shop temperature before it is measured: it grows with the "
                        "heat of the cut.",
                    ),
                ),
                "Size by micrometer in three places before it is unclamped.",
                ("rotating-work", "stored-spring", DUST),
            ),
        ),
        (
            "bore-clamped",
            Text(
                "Bore the inside, still clamped",
                "In the outer clamp, put on before the end plate is taken off.",
                "Outer clamp, boring tool",
                (
                    "Slip the cup of the outer clamp over the ring, screw its clamp ring to the "
                    "side outside the end plate, then take end plate and mandrel away and bore "
                    "the inside true with the outside.",
                ),
                "Thickness even all round.",
                ("rotating-work", "stored-spring", DUST),
            ),
        ),
        (
            "dress-ends",
            Text(
                "Dress the ends to the gap",
                (
                    "Square in the bore, pushed in with the piston; to be filed, in a vice with "
                    "soft jaws close to the end.",
                ),
                "Fine file, feelers, the bore or trial bore",
                (
                    ("double", "Measure the gap of each turn."),
                    ("-double", "Measure the gap."),
                    (
                        "double set",
                        "The ends were filed while they lay open: file them again only "
                        "where a gap is too small,",
                    ),
                    ("-double", "File the ends only where it is too small,"),
                    ("double -set", "File the ends only where a gap is too small,"),
                    "both sides of it alike and a little at a time, until it is right.",
                ),
                (
                    ("double", "Both gaps by feeler, parallel from edge to edge."),
                    ("-double", "Gap by feeler, parallel from edge to edge."),
                ),
                ("stored-spring", "sharp-edges", DUST),
            ),
        ),
        (
            "inspect",
            Text(
                "Inspect",
                "In the bore; then free on a surface plate.",
                (
                    ("set", "Bore or trial bore, lamp, feelers, surface plate, kitchen scale"),
                    ("-set", "Bore or trial bore, lamp, feelers, surface plate"),
                ),
                (
                    "Try the ring in the bore with a lamp behind it.",
                    (
                        "set",
                        "Measure free gap, width and thickness; stand it on the scale, gap at the "
                        "side, and press from above until the gap is closed.",
                    ),
                    ("-set", "Measure width and thickness."),
                    "Enter the sizes: they correct the next ring.",
                ),
                (
                    ("set", "No light, or only where the wall picture shows it."),
                    ("-set", "It slides in without force; the expander presses it to the wall."),
                ),
                ("stored-spring",),
            ),
        ),
        (
            "fit",
            Text(
                "Fit to the piston",
                "The piston upright on the bench or in the rod's vice, clean and oiled.",
                (
                    ("-plastic", "Strips of thin brass"),
                    ("plastic", "By hand; the spring expander"),
                ),
                (
                    ("-plastic", "Slide the ring over on strips, oiled, bottom groove first."),
                    (
                        "plastic",
                        "Lay the expander in its groove, bottom groove first, and ease the ring "
                        "over it.",
                    ),
                    "Stagger the gaps, keep them clear of the ports. Run in light with plenty of "
                    "oil.",
                ),
                "Ring turns freely in its groove all round and goes below the land.",
                ("stored-spring", "isolate", "pressure-system"),
            ),
        ),
        (
            "fit-double",
            Text(
                "Wind on to the piston",
                "The piston upright on the bench or in the rod's vice, clean and oiled.",
                (
                    ("-plastic", "Strips of thin brass"),
                    ("plastic", "By hand; the spring expander"),
                ),
                (
                    ("plastic", "Lay the expander in its groove first."),
                    "Oil the ring. Lay one free end on the piston, at its very edge, and wind the "
                    "ring on like a key ring, the crossing spread over a third of a turn. Only "
                    "when all of it is on, slide it along on strips into its groove, bottom groove "
                    "first. Stagger the bridges, keep both gaps of each ring clear of the ports. "
                    "Run in light with plenty of oil.",
                ),
                (
                    "Ring turns freely in its groove all round and goes below the land; no crack "
                    "beside the bridge.",
                ),
                ("stored-spring", "isolate", "pressure-system"),
            ),
        ),
    )
)
