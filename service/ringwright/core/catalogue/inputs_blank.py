"""Inputs of the blank and its heat set: what is sawn away, left to turn, and how it is soaked."""

import math

from ..fields import field
from ..properties.materials import for_use
from ..wording import decimal
from .inputs import cases, fixed, nothing, rule, steps, table, worked

# Saws to choose an end kerf from [mm]: ISO 2296 thicknesses.
SAWS = (0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.6, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0)
# From this bore on metal is left to turn in whole tenths [mm].
COARSE_FROM = 60.0
# Usual soak of each family of metals [degC]; what cannot be set in the hearth stays cool.
USUAL_SOAK = (("iron", 550.0), ("bronze", 300.0), ("plastic", 100.0))
# Cases of a default.
BANDED = "held by a band"
SHELF_RING = "with a closing ring from the shelf"
COLD = "made without heat"


def standard_saw(closed_gap, bore):
    """Thickness of a saw stiff enough, and not too thin for what is to be left open [mm]."""
    wanted = max(2.0 * closed_gap, min(0.01 * bore, 1.0))
    for saw in SAWS:
        if saw >= wanted:
            return saw
    return _tenths(wanted + 0.1)


def _tenths(value):
    return math.floor(value * 10.0 + 0.5) / 10.0


def _left_on(value, bore):
    """To a tenth; of small rings, of which a tenth is a large part, to a fiftieth [mm]."""
    return _tenths(value) if bore >= COARSE_FROM else math.floor(value * 50.0 + 0.5) / 50.0


def _tenths_of_bore(plus, part, why):
    said = "%s mm and %s %% of the bore" % (plus, decimal(100.0 * part, 1))
    return rule(said, lambda bore: _left_on(plus + part * bore, bore), "%s, %s" % (said, why))


BLANK = table(
    field(
        "end_kerf",
        "length",
        "width of the saw cut through each end",
        rule(
            "a standard saw, a hundredth of the bore up to 1 mm, not less than twice the closed "
            "gap",
            standard_saw,
        ),
        lowest=0.1,
        highest=10.0,
        symbol="s",
    ),
    field(
        "slit_width",
        "length",
        "width of the slit between the turns",
        steps(
            "the bore",
            (
                (30.0, 0.4),
                (40.0, 0.5),
                (50.0, 0.6),
                (60.0, 0.8),
                (150.0, 1.0),
                (200.0, 1.2),
                (None, 1.6),
            ),
            "a saw stiff enough for the bore",
        ),
        lowest=0.1,
        highest=6.0,
        symbol="k",
    ),
    field(
        "facing_allowance",
        "length",
        "metal left on each side for facing",
        fixed(0.25, "cleans up each side"),
        lowest=0.0,
        highest=5.0,
    ),
    field(
        "finishing_allowance",
        "length",
        "metal left on the outside diameter for the last turning",
        cases(
            ("", _tenths_of_bore(0.5, 0.004, "for a ring that is not quite round yet")),
            (BANDED, _tenths_of_bore(0.5, 0.012, "a banded ring is far from round")),
            (COLD, worked("what cleans it", "all that cleans the ring where it lies deepest")),
        ),
        lowest=0.0,
        highest=20.0,
    ),
    field(
        "clamped_gap",
        "length",
        "gap left between the ends when the ring is clamped closed for its last turning",
        cases(
            ("", worked("the closed gap", "the closed gap, so it is turned to the bore")),
            (SHELF_RING, worked("what that leaves", "what the closing ring on the shelf leaves")),
        ),
        lowest=0.0,
        highest=30.0,
        symbol="s_c",
    ),
    field(
        "former_material",
        "choice",
        "what the former is made of",
        fixed("steel", "holds its size when hot"),
        choices=tuple(for_use("former")),
    ),
    field(
        "soak_temperature",
        "temperature",
        "temperature of the heat set",
        cases(
            *[
                (family, fixed(usual, "relieves the metal without spoiling it"))
                for family, usual in USUAL_SOAK
            ]
        ),
        lowest=100.0,
        highest=900.0,
    ),
    field(
        "soak_time",
        "duration",
        "how long the ring is held at that temperature",
        fixed(1.0, "the first hour does most"),
        lowest=0.0,
        highest=48.0,
    ),
    field(
        "shelf_former",
        "length",
        "diameter of a former you have: the ring is designed round it",
        nothing("none"),
        lowest=8.0,
        highest=1000.0,
    ),
)
