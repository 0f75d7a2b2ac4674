"""The inputs that describe a ring and its engine, shared by all that start from them."""

from ..fields import field
from ..properties.materials import for_use
from . import heat_set

PLAIN = "plain"
DOUBLE_TURN = "double-turn"
RING_TYPES = (DOUBLE_TURN, PLAIN)
END_CUTS = ("angled-45", "angled-60", "square", "stepped")

# Lathe work in one piece; fits.py reaches to 1000 mm, and the former is larger than the bore.
SMALLEST_BORE = 10.0
LARGEST_BORE = 900.0

RING_FIELDS = (
    field(
        "bore",
        "length",
        "bore of the cylinder, which is the closed outside diameter of the ring",
        lowest=SMALLEST_BORE,
        highest=LARGEST_BORE,
        symbol="d1",
        required=True,
    ),
    field(
        "ring_type",
        "choice",
        "plain: one turn, one gap; double-turn: two turns in one piece, each closing the other gap",
        "double-turn",
        choices=RING_TYPES,
    ),
    field("rings", "count", "how many rings to make", "2", lowest=1, highest=200),
    field(
        "radial_thickness",
        "length",
        "radial thickness of the finished ring",
        "from the window of sections that meets the pressure and the strength",
        lowest=0.3,
        highest=60.0,
        symbol="a1",
    ),
    field(
        "ring_width",
        "length",
        "width of the finished ring, both turns together",
        "plain 1.25 thicknesses, double-turn 2 thicknesses",
        lowest=0.5,
        highest=150.0,
        symbol="h1",
    ),
    field(
        "groove_width",
        "length",
        "width of a groove that is already there",
        "ring width and side clearance",
        lowest=0.5,
        highest=151.0,
    ),
    field(
        "groove_depth",
        "length",
        "depth of a groove that is already there",
        "thickness and the allowance of practice",
        lowest=0.3,
        highest=80.0,
    ),
    field(
        "piston_diameter",
        "length",
        "diameter of a piston that is already there",
        "bore less the clearance its material needs hot",
        lowest=9.0,
        highest=LARGEST_BORE,
    ),
    field(
        "ring_material",
        "choice",
        "what the ring is made of",
        "grey-iron",
        choices=tuple(for_use("ring")),
    ),
    field(
        "modulus",
        "modulus",
        "Young's modulus, to overrule the material's",
        "the material's",
        lowest=500.0,
        highest=250000.0,
        symbol="E",
    ),
    field(
        "cylinder_material",
        "choice",
        "what the cylinder is made of",
        "grey-iron",
        choices=tuple(for_use("cylinder")),
    ),
    field(
        "piston_material",
        "choice",
        "what the piston is made of",
        "grey-iron",
        choices=tuple(for_use("piston")),
    ),
    field(
        "steam_pressure",
        "pressure",
        "steam pressure in the chest, gauge",
        "0.7 MPa",
        lowest=0.01,
        highest=10.0,
    ),
    field(
        "steam_temperature",
        "temperature",
        "steam temperature where it is superheated",
        "saturation at the steam pressure",
        lowest=40.0,
        highest=550.0,
    ),
    field(
        "shop_temperature",
        "temperature",
        "temperature at which parts are measured",
        "20 degC",
        lowest=-20.0,
        highest=50.0,
    ),
    field("end_cut", "choice", "how the ends are cut", "angled-45", choices=END_CUTS),
    field(
        "setting",
        "choice",
        "how the ring is held open while it is heated: bound down on a round former, sprung on "
        "it, or spread by a spacer in the gap",
        "double-turn sprung, plain spread",
        choices=heat_set.SETTINGS,
    ),
    field(
        "finishing",
        "choice",
        "how the ring is held closed for its last turning: in a round closing ring and then "
        "clamped, forced fully round, or by a flexible band with outside and bore turned",
        "closing-ring",
        choices=heat_set.FINISHINGS,
    ),
    field(
        "relief",
        "ratio",
        "share of the moment that the heat relaxes",
        "what the soak relaxes, 0.9 for an hour at 550 degC",
        lowest=0.1,
        highest=1.0,
        symbol="eta",
    ),
    field(
        "wall_pressure",
        "pressure",
        "mean wall pressure wanted",
        "0.048 MPa (7 psi), from practice; less where the metal carries less",
        lowest=0.002,
        highest=1.0,
        symbol="p",
    ),
    field(
        "free_gap",
        "length",
        "gap wanted on the bench, along the neutral line",
        "from the wall pressure",
        lowest=0.05,
        highest=700.0,
    ),
    field(
        "former_ratio",
        "ratio",
        "former diameter over the finished ring's inside diameter",
        "from the wall pressure",
        lowest=1.0,
        highest=1.5,
    ),
    field(
        "closed_gap",
        "length",
        "gap between the ends in the cold bore",
        "expansion to steam heat, with the cylinder half warm for a plain ring and stone cold "
        "for a double-turn ring, and a margin",
        lowest=0.0,
        highest=30.0,
        symbol="s1",
    ),
)

BLANK_FIELDS = (
    field(
        "end_kerf",
        "length",
        "width of the saw cut through each end",
        "a standard saw, a hundredth of the bore up to 1 mm, not less than twice the closed gap",
        lowest=0.1,
        highest=10.0,
        symbol="s",
    ),
    field(
        "slit_width",
        "length",
        "width of the slit between the turns",
        "0.4 to 1.6 mm by bore",
        lowest=0.1,
        highest=6.0,
        symbol="k",
    ),
    field(
        "facing_allowance",
        "length",
        "metal left on each side for facing",
        "0.25 mm",
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "finishing_allowance",
        "length",
        "metal left on the outside diameter for the last turning",
        "0.5 mm and 0.4 % of the bore",
        lowest=0.0,
        highest=20.0,
    ),
    field(
        "clamped_gap",
        "length",
        "gap left between the ends when the ring is clamped closed for its last turning",
        "the closed gap",
        lowest=0.0,
        highest=30.0,
        symbol="s_c",
    ),
    field(
        "former_material",
        "choice",
        "what the former is made of",
        "steel",
        choices=tuple(for_use("former")),
    ),
    field(
        "soak_temperature",
        "temperature",
        "temperature of the heat set",
        "550 degC for iron, 300 degC for bronze",
        lowest=100.0,
        highest=900.0,
    ),
    field(
        "soak_time",
        "duration",
        "how long the ring is held at that temperature",
        "1 h",
        lowest=0.0,
        highest=48.0,
    ),
    field(
        "shelf_former",
        "length",
        "diameter of a former you have: the ring is designed round it",
        "none",
        lowest=8.0,
        highest=1000.0,
    ),
)


def names(fields):
    """The names of a sequence of Field, in order."""
    return [entry.name for entry in fields]
