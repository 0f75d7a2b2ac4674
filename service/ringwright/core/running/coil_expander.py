"""A coil spring laid in a ring behind a piston ring: pressed shut along itself, it pushes out."""

import math
from collections import namedtuple

from ..problems import unworkable
from ..records import GOOD, STOP, Choice, Method, Quantity, finding
from ..ring.remedies import LEFT_OUT
from ..wording import fine_length, length, stress, wall_pressure

# Wires that are sold [mm]; common practice, no source.
WIRES = (0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.6, 2.0, 2.5, 3.0)
# Shear modulus over Young's; within 4 % of what two tables print.
SHEAR = 1.0 / 2.6
# Least coil, least mean coil over its wire, and air left between turns over their wire; practice.
LEAST_COIL, LEAST_INDEX, AIR = 1.0, 3.0, 0.1

# force along it [N], stress in the wire [N/mm2], lengths working and free, air left between turns
# at the inner side [mm].
Coil = namedtuple("Coil", ("force", "stress", "length", "free", "air"))

METHODS = (
    Method(
        "coil-expander",
        "Coil spring in a ring behind a ring",
        "P = p_x h1 d1/2, tau = K 16 (P D/2 + M)/(pi d^3), K = (4 C - 1)/(4 C - 4) + 0.615/C, "
        "C = D/d, L = 2 pi r, L0 = L + 8 P D^3 n/(G d^4), M = pi E G d^4/(8 n D (2 G + E))",
        "a straight spring bent round, its ends butting; D the mean coil, M bends it round",
        ("wahl", "spring-metals", "practice"),
    ),
)


def wahl(index):
    """Wahl's factor K = (4 C - 1)/(4 C - 4) + 0.615/C [1].

    index: C, mean coil over wire, above 1 [1]. Example: 5 gives 1.3105, 7.5 gives 1.1974.
    Source: Wahl, as pages on machine elements print it.
    """
    return (4.0 * index - 1.0) / (4.0 * index - 4.0) + 0.615 / index


def coil(bore, ring_width, pressure, lies_at, outside, wire, turns, modulus):
    """The Coil that presses a ring outwards with `pressure`.

    bore, ring_width [mm]; pressure on the wall, modulus E [N/mm2]; lies_at: diameter of the circle
    of its axis, outside of the coil, wire [mm]; turns [1]. Source: method "coil-expander"; P by
    virtual work.
    """
    mean, shear = outside - wire, SHEAR * modulus
    force = 0.5 * pressure * ring_width * bore
    round_ = math.pi * lies_at
    fourth = wire**4
    bent = math.pi * modulus * shear * fourth / (8.0 * turns * mean * (2.0 * shear + modulus))
    twist = 16.0 * (0.5 * force * mean + bent) / (math.pi * wire**3)
    return Coil(
        force=force,
        stress=wahl(mean / wire) * twist,
        length=round_,
        free=round_ + 8.0 * force * mean**3 * turns / (shear * fourth),
        air=math.pi * (lies_at - mean) / turns - wire,
    )


def most_turns(lies_at, outside, wire):
    """Most turns that keep some air at the inner side [1]. lies_at, outside, wire: as of coil."""
    return int(math.pi * (lies_at - outside + wire) / ((1.0 + AIR) * wire))


def sized(choose, metal, design, added, room, play):
    """(figures, their symbols, list of Finding) of a coil spring behind a ring.

    choose: an inputs.Chooser. metal: of METALS. design: a Design. added: pressure it adds [N/mm2].
    room: behind the ring, play: left of it [mm]. Raises InputProblem where no wire is coiled so.
    """
    # Drawn wire bears in twist what strip bears bent, some 0.3 of its strength: the least printed.
    modulus, bears, _ = metal
    fits = max(
        math.floor(10.0 * min(room - play, 0.9 * design.section.width) + 1e-9) / 10.0, LEAST_COIL
    )
    outside = choose("coil_diameter", fits)
    given = {
        "bore": design.duty.bore,
        "ring_width": design.section.width,
        "pressure": added,
        "lies_at": design.inside_diameter - outside,
        "outside": outside,
        "modulus": modulus,
    }

    def made(wire, turns=None):
        if turns is None:
            turns = max(most_turns(given["lies_at"], outside, wire), 4)
        return coil(wire=wire, turns=turns, **given)

    thickest = outside / (LEAST_INDEX + 1.0)
    wires = [wire for wire in WIRES if wire <= thickest] or [thickest]
    bearing = [wire for wire in wires if made(wire).stress <= bears]
    wire = choose("wire_diameter", bearing[0] if bearing else wires[-1])
    if outside < 3.0 * wire:
        raise unworkable(
            "wire_diameter",
            "so thick a wire cannot be coiled to %s over all" % length(outside),
            "give at most %s, or a larger coil_diameter" % length(outside / 3.0),
            value=wire,
            highest=outside / 3.0,
        )
    most = max(most_turns(given["lies_at"], outside, wire), 4)
    turns = choose("coil_turns", most)
    found = made(wire, turns)
    figures = {
        "expander_room": room,
        "total_wall_pressure": design.spring.wall_pressure + added,
        "coil_force": found.force,
        "wire_stress": found.stress,
        "coil_length": found.length,
        "coil_free_length": found.free,
    }
    shown = {"p": design.spring.wall_pressure, "p_x": added, "h1": design.section.width,
             "d1": design.duty.bore, "D": outside - wire, "d": wire, "n": turns, "E": modulus,
             "r": 0.5 * given["lies_at"]}  # fmt: skip
    free = _left_out(("wire_diameter", "mm"), ("coil_turns", "1")) if bearing else ()
    held = "ring wider" if 0.9 * design.section.width < room - play else "groove deeper"
    helps = "take a larger coil" if outside < fits else "make the " + held
    remedy = "Ask less of it, or %s." % helps
    if bearing:
        remedy = "Take wire of %s with its own number of turns." % fine_length(bearing[0])
    depth = math.ceil(100.0 * (design.groove_depth + outside + play - room) - 1e-6) / 100.0
    return figures, shown, [
        _judged(
            "strip-room", room, outside + play, room >= outside + play - 1e-9, "mm",
            "Behind the ring are %s; the coil and its play need %s."
            % (fine_length(room), fine_length(outside + play)),
            "Turn the groove to a depth of at least %s." % fine_length(depth),
            (Choice("groove_depth", depth, "mm", "clears it"),),
        ),
        _judged(
            "strip-stress", found.stress, bears, found.stress <= bears * (1.0 + 1e-9), "MPa",
            "Pressing with %s, the wire sees %s in twist; it bears %s."
            % (wall_pressure(added), stress(found.stress), stress(bears)),
            remedy, free,
        ),
        _judged(
            "coil-bind", turns, most, turns <= most, "1",
            "On its inner side each turn has %s of air." % fine_length(max(found.air, 0.0)),
            "Give it at most %d turns, or thinner wire." % most, _left_out(("coil_turns", "1")),
        ),
    ]  # fmt: skip


def _left_out(*pairs):
    return tuple([Choice(name, None, unit, LEFT_OUT) for name, unit in pairs])


def _judged(check, value, limit, good, unit, said, remedy, apply):
    outcome = GOOD if good else STOP
    told = (Quantity(value, unit), Quantity(limit, unit), () if good else apply)
    return finding(check, outcome, said, "" if good else remedy, *told)
