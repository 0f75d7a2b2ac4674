"""Clearances from a cold start to steady running: ring gap, side of the groove, piston in the bore.

Two ways of warming bound the truth. Together: ring, piston and cylinder rise as one, a long careful
warming through. In a hurry: ring and piston are at steam temperature at once while the cylinder
wall is still on its way. What is safe in a hurry is safe.
"""

from collections import OrderedDict

from .. import clearances
from ..catalogue import figures_of
from ..catalogue.running import WARMING
from ..records import GOOD, STOP, WATCH, Method, Quantity, Series, finding
from ..wording import fine_length, length, said_up, temperature

POINTS = 7  # the lines are straight

METHODS = (
    Method(
        "warming",
        "Clearances while warming up",
        "hot-closed-gap, hot-side-clearance and hot-piston-clearance at each temperature of the "
        "cylinder wall, with ring and piston at the wall's temperature or at the steam's",
        "bounds: a careful warming through, and a start in a hurry",
        ("expansion",),
    ),
    Method(
        "smallest-safe-gap",
        "Smallest safe cold gap",
        "closed-gap with ring at steam temperature, cylinder in the shop's cold, nothing left over",
        "the worst case: full steam into a stone-cold cylinder",
        ("expansion",),
    ),
)


def cold_ring(given, gap):
    """Sizes and expansions of a ring with that cold gap [mm], as clearances_at asks for them.

    given: filled inputs, see running_inputs.
    """
    ring, piston, cylinder = given["expansions"]
    return {
        "bore": given["bore"],
        "gap": gap,
        "ring_width": given["ring_width"],
        "side_clearance": given["side_clearance"],
        "piston_diameter": given["piston_diameter"],
        "ring_expansion": ring,
        "piston_expansion": piston,
        "cylinder_expansion": cylinder,
        "shop_temperature": given["shop_temperature"],
    }


def clearances_at(ring, *, ring_temperature, piston_temperature, cylinder_temperature):
    """(gap, side clearance, diametral piston clearance) at those temperatures [mm].

    ring: dict with bore, gap, ring_width, side_clearance, piston_diameter [mm], ring_expansion,
    piston_expansion, cylinder_expansion [1/K], shop_temperature [degC]; all sizes cold.
    ring_temperature, piston_temperature, cylinder_temperature [degC]. Raises OutOfRange as
    clearances does.
    """
    shop = ring["shop_temperature"]
    gap = clearances.hot_closed_gap(
        bore=ring["bore"],
        gap=ring["gap"],
        ring_expansion=ring["ring_expansion"],
        cylinder_expansion=ring["cylinder_expansion"],
        ring_temperature=ring_temperature,
        cylinder_temperature=cylinder_temperature,
        shop_temperature=shop,
    )
    side = clearances.hot_side_clearance(
        ring_width=ring["ring_width"],
        clearance=ring["side_clearance"],
        ring_expansion=ring["ring_expansion"],
        piston_expansion=ring["piston_expansion"],
        ring_temperature=ring_temperature,
        piston_temperature=piston_temperature,
        shop_temperature=shop,
    )
    piston = clearances.hot_piston_clearance(
        bore=ring["bore"],
        piston_diameter=ring["piston_diameter"],
        piston_expansion=ring["piston_expansion"],
        cylinder_expansion=ring["cylinder_expansion"],
        piston_temperature=piston_temperature,
        cylinder_temperature=cylinder_temperature,
        shop_temperature=shop,
    )
    return gap, side, piston


def clearances_running(given, gap):
    """The same of a ring with that cold gap [mm], all parts as warm as they run.

    given: filled inputs, see running_inputs.
    """
    warm = given["running_temperature"]
    return clearances_at(
        cold_ring(given, gap),
        ring_temperature=warm,
        piston_temperature=warm,
        cylinder_temperature=warm,
    )


def smallest_safe_gap(ring, steam_temperature):
    """Cold gap that just closes with ring at steam temperature in a stone-cold cylinder [mm].

    ring: as in clearances_at. steam_temperature [degC].
    """
    return clearances.closed_gap(
        bore=ring["bore"],
        ring_expansion=ring["ring_expansion"],
        cylinder_expansion=ring["cylinder_expansion"],
        ring_temperature=steam_temperature,
        cylinder_temperature=ring["shop_temperature"],
        shop_temperature=ring["shop_temperature"],
        margin=0.0,
    )


def warming(ring, steam_temperature, running_temperature):
    """Clearances from cold start to steady running.

    ring: as in clearances_at. steam_temperature, running_temperature (of all parts, steady) [degC].
    Returns an OrderedDict of figures, findings and series. Raises OutOfRange as clearances does.
    """
    shop = ring["shop_temperature"]
    steady = clearances_at(
        ring,
        ring_temperature=running_temperature,
        piston_temperature=running_temperature,
        cylinder_temperature=running_temperature,
    )
    start = clearances_at(
        ring,
        ring_temperature=steam_temperature,
        piston_temperature=steam_temperature,
        cylinder_temperature=shop,
    )
    # The ring is through before the piston: its groove is then still cold.
    squeezed = clearances_at(
        ring,
        ring_temperature=steam_temperature,
        piston_temperature=shop,
        cylinder_temperature=shop,
    )
    start = (start[0], squeezed[1], start[2])
    touch = clearances.first_touch(
        bore=ring["bore"],
        gap=ring["gap"],
        piston_diameter=ring["piston_diameter"],
        ring_expansion=ring["ring_expansion"],
        piston_expansion=ring["piston_expansion"],
        cylinder_expansion=ring["cylinder_expansion"],
        cylinder_temperature=shop,
        shop_temperature=shop,
    )
    safe = smallest_safe_gap(ring, steam_temperature)
    values = {
        "smallest_safe_gap": safe,
        "first_touch_temperature": touch.temperature,
    }
    for index, name in enumerate(("gap", "side_clearance", "piston_clearance")):
        values[name + "_steady"] = steady[index]
        values[name + "_cold_start"] = start[index]
    given = {
        "d1": ring["bore"],
        "s1": ring["gap"],
        "T_run": running_temperature,
        "T_steam": steam_temperature,
        "T_0": shop,
    }
    return OrderedDict(
        (
            ("figures", figures_of(WARMING, values, given)),
            ("first_to_touch", touch.part),
            ("findings", _findings(ring, steady, start, safe, touch, steam_temperature)),
            ("series", _series(ring, steam_temperature)),
        )
    )


def _series(ring, steam_temperature):
    """Clearances against the cylinder wall's temperature, both ways of warming."""
    shop = ring["shop_temperature"]
    walls = []
    lines = [[], [], [], [], [], []]
    for point in range(POINTS):
        wall = shop + (steam_temperature - shop) * point / (POINTS - 1)
        walls.append(wall)
        together = clearances_at(
            ring, ring_temperature=wall, piston_temperature=wall, cylinder_temperature=wall
        )
        hurried = clearances_at(
            ring,
            ring_temperature=steam_temperature,
            piston_temperature=steam_temperature,
            cylinder_temperature=wall,
        )
        for index in range(3):
            lines[index].append(together[index])
            lines[index + 3].append(hurried[index])
    names = ("gap", "side_clearance", "piston_clearance")
    series = OrderedDict((("cylinder_temperature", Series(walls, "degC", "T_c")),))
    for offset, ending in ((0, "_together"), (3, "_hurried")):
        for index, name in enumerate(names):
            series[name + ending] = Series(lines[index + offset], "mm", "")
    return series


def _findings(ring, steady, start, safe, touch, steam_temperature):
    found = []
    for index, check, part in (
        (0, "gap-running", "The gap"),
        (1, "side-clearance-running", "The ring's clearance in its groove"),
        (2, "piston-clearance-running", "The piston's clearance in the bore"),
    ):
        if steady[index] <= 0.0:
            found.append(
                finding(
                    check,
                    STOP,
                    "%s is gone when the engine runs warm." % part,
                    (
                        "File the gap to %s or more."
                        % length(said_up(safe + clearances.running_gap(ring["bore"]))),
                        "Make the ring narrower or the groove wider by %s or more."
                        % fine_length(0.025 - steady[1]),
                        "Turn the piston down by %s or more." % fine_length(0.05 - steady[2]),
                    )[index],
                    Quantity(steady[index], "mm"),
                    Quantity(0.0, "mm"),
                )
            )
    if start[1] <= 0.0 < steady[1]:
        found.append(
            finding(
                "side-clearance-start",
                STOP,
                "The ring, hot before the piston, fills its groove and sticks.",
                "Give it %s more side clearance." % fine_length(0.025 - start[1]),
                Quantity(start[1], "mm"),
                Quantity(0.0, "mm"),
            )
        )
    if touch.temperature is not None and touch.temperature < steam_temperature:
        part = "ring ends" if touch.part == "ring ends" else "piston"
        verb = "meet" if part == "ring ends" else "touches the bore"
        found.append(
            finding(
                "cold-start",
                WATCH,
                "Steam turned straight into a stone-cold cylinder: the %s %s at %s, below the "
                "steam's %s."
                % (part, verb, temperature(touch.temperature), temperature(steam_temperature)),
                "Warm the cylinder through with the drains open before loading the engine%s."
                % (
                    ", or file the gap to %s" % length(said_up(safe))
                    if part == "ring ends"
                    else ", or give the piston more clearance"
                ),
                Quantity(touch.temperature, "degC"),
                Quantity(steam_temperature, "degC"),
            )
        )
    if not found:
        found.append(
            finding(
                "clearances",
                GOOD,
                "Nothing touches, from full steam into a stone-cold cylinder to steady running.",
            )
        )
    return found
