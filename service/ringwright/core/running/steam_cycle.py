"""A simple stated cycle of one end of a cylinder: power, steam and heat.

    admission   full pressure from the dead centre to cut-off
    expansion   p V = constant (hyperbolic), clearance included, to release
    release     a straight line from the release pressure to the back pressure, over a tenth of the
                stroke or what is left of it
    exhaust     back pressure until compression begins
    compression p V = constant into the clearance

Volumes are shares of the swept volume, pressures absolute. A diagram factor brings the mean
effective pressure down to what an indicator draws; a missing quantity brings the steam the diagram
accounts for up to what the boiler sends. Both are spreads, not constants.
"""

import math
from collections import namedtuple

from ..problems import OutOfRange
from ..records import Method
from ..wording import significant

# Diagram factor, low, usual, high. Worked examples of two textbooks run from 0.6 to 0.85; 0.9 is
# the best to be expected.
DIAGRAM_FACTOR = (0.60, 0.80, 0.90)
# Of the missing quantity, the most that is leakage, valves included.
LEAKAGE_OF_MISSING = 0.50

# Travel over which the steam blows down to the exhaust, share of the stroke; common practice.
BLOW_DOWN = 0.1

# admission, back: absolute pressure [MPa]. cut_off, release, compression, clearance: shares of the
# stroke [1]; compression is the part of the return stroke left when the exhaust closes.
Cycle = namedtuple("Cycle", ("admission", "back", "cut_off", "release", "compression", "clearance"))

# Per unit of swept volume: mean_pressure [MPa], the outward and return parts of it; pressures at
# release and at the end of compression [MPa].
Diagram = namedtuple(
    "Diagram", ("mean_pressure", "outward", "returning", "release_pressure", "compression_pressure")
)

# Steam of one stroke per cubic metre swept [kg/m3]: held at cut-off, kept by compression, used.
SteamPerStroke = namedtuple("SteamPerStroke", ("at_cut_off", "kept", "used"))

# One second's heat [W]: supplied over water at the exhaust's boiling point, turned into work,
# carried away; thermal efficiency [1].
HeatBalance = namedtuple("HeatBalance", ("supplied", "work", "carried_away", "efficiency"))

METHODS = (
    Method(
        "mean-effective-pressure",
        "Mean effective pressure of the stated cycle",
        "p1 x + p1 (c + x) ln((c + r)/(c + x)) + b (p_r + p_b)/2 + (1 - r - b) p_b - p_b (1 - k) "
        "- p_b (c + k) ln((c + k)/c), times the diagram factor; b = 0.1, or 1 - r if less",
        "one cylinder, no lead, no wire-drawing; the diagram factor carries the rest",
        ("hyperbolic", "singh", "joel"),
    ),
    Method(
        "indicated-power",
        "Indicated power",
        "IP = p_m * stroke * pi d1^2/4 * working strokes per second; the rod's area is left out",
        "as mean-effective-pressure",
        ("hyperbolic", "singh"),
    ),
    Method(
        "indicated-steam",
        "Steam the diagram accounts for",
        "(c + x) V/v1 - (c + k) V/v_b, v1 volume of the steam admitted, v_b of dry steam at back "
        "pressure",
        "what is in the cylinder at cut-off less what compression keeps",
        ("machinery-70", "singh"),
    ),
    Method(
        "steam-use",
        "Steam the engine uses",
        "indicated steam/(1 - missing quantity); missing quantity 0.25 to 0.60, about 0.30 on "
        "the average",
        "single cylinders, saturated steam; superheat makes it less",
        ("lineham",),
    ),
    Method(
        "measured-missing-quantity",
        "Missing quantity from a measured feed",
        "1 - indicated steam/feed water measured",
        "steady running, no blow-off, no injector overflow",
        ("lineham", "singh"),
    ),
    Method(
        "heat-balance",
        "Heat balance of the cylinder",
        "supplied M_f (H1 - H_fb) = work + carried away",
        "heat reckoned over water boiling at the back pressure",
        ("hyperbolic", "iapws-if97"),
    ),
)


def cycle(
    *, admission_pressure, back_pressure, cut_off, release=None, compression=None, clearance=0.0
):
    """A Cycle, checked; what is left out by the rules of `usual_release` and `usual_compression`.

    admission_pressure, back_pressure: absolute [MPa], the back pressure the lower. cut_off: 0.02 to
    1. release: cut_off to 1. compression: 0 to 0.95, 0 when there is no clearance. clearance: 0 to
    0.5. All shares of the stroke [1].
    Raises OutOfRange outside those ranges.
    """
    _within("back_pressure", back_pressure, 0.0, admission_pressure)
    _within("cut_off", cut_off, 0.02, 1.0)
    _within("clearance", clearance, 0.0, 0.5)
    if release is None:
        release = usual_release(cut_off)
    if compression is None:
        compression = usual_compression(admission_pressure, back_pressure, clearance)
    _within("release", release, cut_off, 1.0)
    _within("compression", compression, 0.0, 0.95 if clearance > 0.0 else 0.0)
    return Cycle(
        admission=admission_pressure,
        back=back_pressure,
        cut_off=cut_off,
        release=release,
        compression=compression,
        clearance=clearance,
    )


def usual_release(cut_off):
    """Release half-way from cut-off to the end of the stroke, at 0.9 at the earliest [1].

    cut_off: share of the stroke [1]. Source: common practice of slide valves, no source.
    """
    return max(0.9, 0.5 * (1.0 + cut_off))


def usual_compression(admission_pressure, back_pressure, clearance):
    """Exhaust closed over the last tenth of the return, later where that would pass admission [1].

    At most clearance * (p1/p_b - 1), which ends at the admission pressure.
    admission_pressure, back_pressure: p1, p_b, absolute [MPa]. clearance: share of the stroke [1].
    Source: common practice, no source.
    """
    return min(0.1, clearance * (admission_pressure / back_pressure - 1.0))


def pressure_outward(stated, travel):
    """Pressure behind the piston on its working stroke [MPa absolute].

    stated: a Cycle. travel: share of the stroke done [1], 0 to 1.
    """
    if travel <= stated.cut_off:
        return stated.admission
    reach = stated.clearance + stated.cut_off
    if travel <= stated.release:
        return stated.admission * reach / (stated.clearance + travel)
    at_release = stated.admission * reach / (stated.clearance + stated.release)
    done = (travel - stated.release) / min(BLOW_DOWN, 1.0 - stated.release)
    return at_release + min(done, 1.0) * (stated.back - at_release)


def pressure_returning(stated, travel):
    """Pressure on the same face during the return [MPa absolute].

    stated: a Cycle. travel: share of the return done [1], 0 to 1.
    """
    left = 1.0 - travel
    if left >= stated.compression:
        return stated.back
    return stated.back * (stated.clearance + stated.compression) / (stated.clearance + left)


def diagram(stated):
    """The areas of the stated cycle's diagram, before any diagram factor: a Diagram.

    p_m = p1 x + p1 (c + x) ln((c + r)/(c + x)) + b (p_r + p_b)/2 + (1 - r - b) p_b
          - p_b (1 - k) - p_b (c + k) ln((c + k)/c), b = 0.1, or 1 - r if that is less

    stated: a Cycle. With c = 0, r = 1, k = 0 it is the books' p1/R (1 + ln R) - p_b.
    Source: hyperbolic expansion; Singh, Applied Thermodynamics, chapter 12.
    """
    reach = stated.clearance + stated.cut_off
    at_release = stated.admission * reach / (stated.clearance + stated.release)
    blown = min(BLOW_DOWN, 1.0 - stated.release)
    outward = (
        stated.admission * stated.cut_off
        + stated.admission * reach * math.log((stated.clearance + stated.release) / reach)
        + 0.5 * blown * (at_release + stated.back)
        + (1.0 - stated.release - blown) * stated.back
    )
    returning = stated.back * (1.0 - stated.compression)
    compressed = stated.back
    if stated.compression > 0.0:
        kept = stated.clearance + stated.compression
        returning += stated.back * kept * math.log(kept / stated.clearance)
        compressed = stated.back * kept / stated.clearance
    return Diagram(
        mean_pressure=outward - returning,
        outward=outward,
        returning=returning,
        release_pressure=at_release,
        compression_pressure=compressed,
    )


def indicated_power(mean_pressure, bore, stroke, strokes_per_minute):
    """Indicated power [W]: p_m * stroke * pi d1^2/4 * working strokes per second.

    mean_pressure: mean effective pressure [MPa]. bore, stroke [mm]. strokes_per_minute: working
    strokes, twice the speed in a double-acting cylinder [1/min]. The rod's area is left out.
    """
    return mean_pressure * swept_volume(bore, stroke) * 1e6 * strokes_per_minute / 60.0


def swept_volume(bore, stroke):
    """pi/4 d1^2 * stroke [m3]. bore, stroke [mm]."""
    return 0.25 * math.pi * bore * bore * stroke * 1e-9


def steam_per_stroke(stated, admitted_volume, back_volume):
    """Steam of one stroke for each cubic metre swept: a SteamPerStroke [kg/m3].

    used = (c + x)/v1 - (c + k)/v_b

    stated: a Cycle. admitted_volume: v1 of the steam admitted [m3/kg]. back_volume: v_b of dry
    steam at the back pressure [m3/kg].
    Source: the steam accounted for by the indicator, Machinery's Reference Series no. 70.
    """
    at_cut_off = (stated.clearance + stated.cut_off) / admitted_volume
    kept = (stated.clearance + stated.compression) / back_volume if stated.clearance else 0.0
    return SteamPerStroke(at_cut_off, kept, at_cut_off - kept)


def steam_used(indicated, missing_quantity):
    """Steam supplied for the steam the diagram accounts for [unit of `indicated`].

    indicated/(1 - missing_quantity)

    missing_quantity: share of the steam supplied [1], 0 to 0.9. Raises OutOfRange outside that.
    Source: Lineham, Text-book of Mechanical Engineering, p. 884.
    """
    _within("missing_quantity", missing_quantity, 0.0, 0.9)
    return indicated / (1.0 - missing_quantity)


def heat_balance(steam_rate, steam_enthalpy, drain_enthalpy, power):
    """Heat supplied, turned to work and carried away in one second: a HeatBalance [W].

    steam_rate [kg/h]. steam_enthalpy, drain_enthalpy: of the steam admitted and of water boiling at
    the back pressure [kJ/kg]. power: indicated [W].
    """
    supplied = steam_rate / 3600.0 * (steam_enthalpy - drain_enthalpy) * 1000.0
    return HeatBalance(
        supplied=supplied, work=power, carried_away=supplied - power, efficiency=power / supplied
    )


def _within(name, value, low, high):
    if not low <= value <= high:
        raise OutOfRange(
            name, value, significant(low, 4) + " to " + significant(high, 4), "the stated cycle"
        )
