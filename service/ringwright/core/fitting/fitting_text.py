"""The words of the fitting card. Common practice, no source, but for the oil, which articles on
steam cylinder oil say (sources.py, "steam-oil")."""

from ..making.route_words import Text

TEXT = {
    "make-safe": Text(
        "Make the engine safe",
        "Wheels scotched, motion blocked.",
        "Lock or tag for the stop valve",
        "Shut and lock the stop valve, open every drain, wait until all is cold. Then take the "
        "cover off. A valve that weeps fills the cylinder again: let the boiler cool.",
        "No pressure on the gauge, nothing from the drains.",
        ("isolate", "pressure-system", "motion"),
    ),
    "look-over": Text(
        "Look over the bore",
        "",
        "Lamp, bore gauge, scraper",
        "Write down gap and thickness of the old rings. Take off the ridge where they turned "
        "back: new rings break on it.",
        "No ridge, no score that a fingernail catches.",
        ("sharp-edges",),
    ),
    "clean-grooves": Text(
        "Clean the grooves",
        "The piston upright on the bench.",
        "Hardwood or brass scraper, rag",
        "Scrape out carbon, corners first; a scored side leaks whatever the ring. Sides with a "
        "step or taper are trued up square, for rings of the new width; leave the land given.",
        "Width alike all round, no step in the sides.",
        ("sharp-edges",),
    ),
    "try-ring": Text(
        "Try each ring in groove and bore",
        "",
        "Feelers, lamp",
        "Roll it round its groove from outside, then mark it for that groove. Push it square "
        "into the bore with the piston; measure the gap where the bore is tightest.",
        "It goes below the land everywhere. Its ends never meet.",
        ("stored-spring", "sharp-edges"),
    ),
    "oil": Text(
        "Choose the oil, and oil all",
        "",
        "Oil can",
        (
            (
                "-super",
                "For wet or saturated steam take compounded steam cylinder oil: a little fat "
                "keeps water from washing it off.",
            ),
            (
                "super",
                "For this superheated steam take heavy mineral steam cylinder oil made for it; "
                "fat burns to carbon.",
            ),
            "Motor oil is no steam oil. Where exhaust goes back to the boiler, ask for one that "
            "parts from water.",
            ("plastic", "Filled PTFE slides without oil; bore and rod need it still."),
        ),
        "A wet film on bore, grooves and rings.",
        (),
    ),
    "enter": Text(
        "Put the piston into the cylinder",
        "Rod guided, in line with the bore.",
        "Ring clamp, soft mallet",
        "Spread the gaps: two opposite, three a third of a turn apart. Push the piston out of the "
        "clamp into the bore. When it stops, look; never hit it. Close up and turn over twice by "
        "hand.",
        "Even effort all round, and clearance at both dead centres.",
        ("stored-spring", "motion"),
    ),
    "first-steam": Text(
        "First steam",
        "Drains open, nobody in front of covers.",
        "Lubricator seen to feed",
        (
            "Warm the cylinder through with a breath of steam, standing, then turning slowly, "
            "until the drains blow dry. Water that is trapped breaks cover, piston or rod.",
            ("waits", "Load waits until the wall is as warm as given."),
        ),
        "Dry steam at the drains, no knock.",
        ("steam-burns", "pressure-system"),
    ),
    "run-in": Text(
        "Run in",
        "Under steam, by a person licensed or competent for it.",
        "Lubricator at twice its feed",
        "Raise the load by the hours given. After each step let it cool, and feel cover, rod and "
        "gland.",
        "It runs as free hot as cold.",
        ("steam-burns", "motion", "pressure-system"),
    ),
    "look-again": Text(
        "Look when run in, and each season",
        "Made safe as at first.",
        "Feelers, micrometer, notebook",
        (
            "Write down date, hours run, oil, gap, side clearance, thickness and where the face "
            "is bright. Two gaps at known hours tell the wear, and when to look next.",
            ("set", "Rings are due at the gap given, or sooner where they leak."),
            ("-set", "Renew an expander that is broken or flat."),
        ),
        "Face grey and even all round, ends dull.",
        ("isolate", "stored-spring", "sharp-edges"),
    ),
    "lay-up": Text(
        "Lay up for the winter",
        "Boiler laid up by its own rules.",
        "Oil can",
        "Blow the cylinder dry while warm, feed plenty of oil for the last turns. Leave the "
        "drains open and the exhaust covered: damp air condenses, and rings rust to the bore. "
        "Oil it and turn it over monthly.",
        "Bore and rod wet with oil, no water at the drains.",
        ("motion", "steam-burns"),
    ),
}
# (key, mark that must hold, what is seen: what it comes of. What to do).
SIGNS = (
    (
        "steady-blow",
        "",
        "Steady blow at the exhaust, engine held still: steam passes rings or valve. Open one "
        "drain in mid-stroke; steam there comes past the rings.",
    ),
    (
        "knock",
        "",
        "Knock at the ends of the stroke: water. Stop, open the drains, warm through again.",
    ),
    (
        "click",
        "",
        "Light click each turn: side clearance, or an end in a port. Stop and look.",
    ),
    (
        "squeal",
        "",
        "Squeal under load: a dry bore. Take the load off, feed oil, look for scores.",
    ),
    (
        "stiff-hot",
        "",
        "Free cold, stiff hot: ends or piston meet. Let it cool; look for bright places, and file "
        "bright ends to the gap.",
    ),
    (
        "bright-patches",
        "",
        "Face bright in patches: it bears there alone. Run in longer; if light still shows, "
        "survey the bore.",
    ),
    (
        "bright-edge",
        "",
        "Sides bright on one edge: the groove is out of flat. True it up and make wider rings.",
    ),
    (
        "paste",
        "-plastic",
        "Black grit in the grooves: metal worn off, or oil burnt. Clean out, feed more oil.",
    ),
    (
        "turns-apart",
        "double",
        "The two turns stand apart: their grip is gone. Make a new ring, and wind it on slowly.",
    ),
    (
        "rust",
        "",
        "Rust on a face at rest: water stood there. Blow it dry before the next lay-up.",
    ),
)
