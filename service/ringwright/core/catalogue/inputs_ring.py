"""Inputs of a ring and its engine, shared by all that start from them."""

from ..fields import field
from ..properties.materials import for_use
from ..wording import steam_pressure, wall_pressure
from .inputs import cases, fixed, nothing, share, table, worked

PLAIN = "plain"
DOUBLE_TURN = "double-turn"
RING_TYPES = (DOUBLE_TURN, PLAIN)
END_CUTS = ("angled-45", "angled-60", "square", "stepped")
BOUND = "bound"
SPRUNG = "sprung"
SPREAD = "spread"
SETTINGS = (BOUND, SPRUNG, SPREAD)
FORCED_ROUND = "forced-round"
CLOSING_RING = "closing-ring"
BAND = "band"
FINISHINGS = (CLOSING_RING, FORCED_ROUND, BAND)
GREY_IRON = "grey-iron"

# Cases of a default: the ring of a piston valve; a groove that is there; a metal that carries less
# than practice asks; a bore that was surveyed; a spring behind the ring that is being sized.
VALVE = "in a piston valve"
IN_GROOVE = "in a groove that is there"
WEAK_METAL = "where the metal carries less"
SURVEYED = "after a survey"
EXPANDER = "where a strip is sized"

# What practice asks of a ring: 6 to 8 lbf/in2 in model, stationary, marine and road engines
# (Walshaw) [MPa].
PRACTICE_PRESSURE = 0.048
USUAL_STEAM = 0.7
# Lathe work in one piece; fits.py reaches to 1000 mm, and the former is larger than the bore [mm].
SMALLEST_BORE = 10.0
LARGEST_BORE = 900.0

RING = table(
    field(
        "bore",
        "length",
        "bore that the ring runs in, of the cylinder or of a valve's liner: the closed outside "
        "diameter of the ring",
        lowest=SMALLEST_BORE,
        highest=LARGEST_BORE,
        symbol="d1",
        required=True,
    ),
    field(
        "ring_type",
        "choice",
        "plain: one turn, one gap; double-turn: two turns in one piece, each closing the other gap",
        cases(
            ("", fixed(DOUBLE_TURN, "each of its turns closes the gap of the other")),
            (VALVE, fixed(PLAIN, "valve rings are mostly plain")),
        ),
        choices=RING_TYPES,
    ),
    field(
        "inch_sizes",
        "flag",
        "true for a job in inches: what is not given is taken in fractions of an inch and "
        "thousandths, saws, tools and bars as sold in them; false for millimetres. The unit that "
        "answers are shown in changes no size",
        fixed(False),
    ),
    field(
        "rings",
        "count",
        "how many rings to make",
        fixed(2, "two to a piston"),
        lowest=1,
        highest=200,
    ),
    field(
        "radial_thickness",
        "length",
        "radial thickness of the ring",
        worked(
            "from the sections that serve",
            "as safe in the bore as on its way there",
        ),
        lowest=0.3,
        highest=60.0,
        symbol="a1",
    ),
    field(
        "ring_width",
        "length",
        "width of the ring, both turns together",
        cases(
            (PLAIN, share("the thickness", 1.25)),
            (DOUBLE_TURN, share("the thickness", 2.0, "2 thicknesses: each turn as wide as thick")),
            (IN_GROOVE, worked("less its play", "the groove's width less the side clearance")),
        ),
        lowest=0.5,
        highest=150.0,
        symbol="h1",
    ),
    field(
        "groove_width",
        "length",
        "width of a groove that is already there",
        worked("ring width and side clearance"),
        lowest=0.5,
        highest=151.0,
    ),
    field(
        "groove_depth",
        "length",
        "depth of a groove that is already there",
        worked(
            "thickness and the allowance of practice",
            "thickness and the allowance of practice, so that the piston never rides on its ring",
        ),
        lowest=0.3,
        highest=80.0,
    ),
    field(
        "piston_diameter",
        "length",
        "diameter, across its lands, of a piston or piston valve that is already there",
        worked(
            "bore less the clearance its material needs hot", "does not seize on a half-warm bore"
        ),
        lowest=4.0,
        highest=LARGEST_BORE,
    ),
    field(
        "ring_material",
        "choice",
        "what the ring is made of",
        fixed(GREY_IRON, "ring iron, bought as such; for bar of unknown grade choose grade 200"),
        choices=tuple(for_use("ring")),
    ),
    field(
        "modulus",
        "modulus",
        "Young's modulus, to overrule the material's",
        worked("the material's", "of %s"),
        lowest=500.0,
        highest=250000.0,
        symbol="E",
    ),
    field(
        "cylinder_material",
        "choice",
        "what the cylinder is made of",
        fixed(GREY_IRON, "the usual cylinder"),
        choices=tuple(for_use("cylinder")),
    ),
    field(
        "piston_material",
        "choice",
        "what the piston is made of",
        fixed(GREY_IRON, "the usual piston"),
        choices=tuple(for_use("piston")),
    ),
    field(
        "steam_pressure",
        "pressure",
        "steam pressure in the chest, gauge",
        fixed(USUAL_STEAM, "a usual working pressure", steam_pressure(USUAL_STEAM)),
        lowest=0.01,
        highest=10.0,
    ),
    field(
        "steam_temperature",
        "temperature",
        "steam temperature where it is superheated",
        worked("saturation at the steam pressure", "saturated steam"),
        lowest=40.0,
        highest=550.0,
    ),
    field(
        "shop_temperature",
        "temperature",
        "temperature at which parts are measured",
        fixed(20.0, "a usual shop"),
        lowest=-20.0,
        highest=50.0,
    ),
    field(
        "end_cut",
        "choice",
        "how the ends are cut",
        cases(
            ("", fixed("angled-45", "common practice")),
            (VALVE, fixed("square", "common practice in valves")),
        ),
        choices=END_CUTS,
    ),
    field(
        "setting",
        "choice",
        "how the ring is held open while it is heated: bound down on a round former, sprung on "
        "it, or spread by a spacer in the gap",
        cases(
            (DOUBLE_TURN, fixed(SPRUNG, "the usual way with a former")),
            (PLAIN, fixed(SPREAD, "plain rings bear evenly when spread")),
        ),
        choices=SETTINGS,
    ),
    field(
        "finishing",
        "choice",
        "how the ring is held closed for its last turning: in a round closing ring and then "
        "clamped, forced fully round, or by a flexible band with outside and bore turned",
        fixed(CLOSING_RING, "the usual tool; light-tight"),
        choices=FINISHINGS,
    ),
    field(
        "relief",
        "ratio",
        "share of the stress that the soak takes out",
        worked(
            "what the soak relaxes, 0.9 for an hour at 550 degC",
            "what that soak relaxes; from memory of published figures",
        ),
        lowest=0.1,
        highest=1.0,
        symbol="eta",
    ),
    field(
        "wall_pressure",
        "pressure",
        "mean pressure of the ring's own spring on the wall",
        cases(
            (
                "",
                fixed(
                    PRACTICE_PRESSURE,
                    "6 to 8 lbf/in2 is usual",
                    wall_pressure(PRACTICE_PRESSURE) + ", from practice",
                ),
            ),
            (
                WEAK_METAL,
                worked(
                    "what it carries",
                    "the most that %s carries with full margins; 6 to 8 lbf/in2 is usual",
                ),
            ),
        ),
        lowest=0.002,
        highest=1.0,
        symbol="p",
    ),
    field(
        "expander_pressure",
        "pressure",
        "mean pressure on the wall that a spring behind the ring adds to its own",
        cases(
            ("", nothing("no spring behind it")),
            (EXPANDER, worked("what the ring's own lacks to practice's")),
        ),
        lowest=0.001,
        highest=0.5,
        symbol="p_x",
    ),
    field(
        "free_gap",
        "length",
        "gap wanted on the bench, along the neutral line",
        nothing("from the wall pressure"),
        lowest=0.05,
        highest=700.0,
    ),
    field(
        "former_ratio",
        "ratio",
        "former diameter over the finished ring's inside diameter",
        nothing("from the wall pressure"),
        lowest=1.0,
        highest=1.5,
    ),
    field(
        "closed_gap",
        "length",
        "gap between the ends of a new ring in the cold bore",
        cases(
            (
                PLAIN,
                worked(
                    "growth to steam heat in a half-warm cylinder",
                    "ring at steam heat in a half-warm cylinder, and a margin",
                ),
            ),
            (
                DOUBLE_TURN,
                worked(
                    "in a stone-cold one",
                    "ring at steam heat in a stone-cold cylinder, and a margin: a wide gap costs "
                    "little here",
                ),
            ),
            (SURVEYED, worked("where it is tightest", "the usual gap where the bore is tightest")),
        ),
        lowest=0.0,
        highest=30.0,
        symbol="s1",
    ),
)

# Of a groove that was cut for the ring since.
AS_CUT = table(
    field(
        "measured_groove_width",
        "length",
        "width of the groove as cut; the ring is judged by it, and keeps its own size",
        nothing("as drawn: H8 where it is to be cut"),
        lowest=0.5,
        highest=151.0,
    ),
)
