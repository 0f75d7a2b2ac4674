"""Speeds, passes and minutes of a whole card by hand, from its own sizes, the bar's and the tables.

n = 1000 v/(pi D); t = passes (travel/(feed n) + setting). A tool runs 1 mm beyond the work facing,
3 mm turning; parting, sawing and what the hand does are estimates of the trade.
"""

import math

import pytest

from core.test_route import row
from core.test_tools_hold import settled
from ringwright.core import calculations
from ringwright.core.making import machining_table as tabled
from ringwright.core.ring import blank
from ringwright.core.ring.soak import soak_range

JOBS = [
    {"bore": 79.375, "rings": 3},
    {"bore": 79.375, "rings": 3, "machine": "rigid"},
    {"bore": 150.0, "ring_type": "plain", "rings": 5},
    {"bore": 24.0, "bar_form": "solid", "rings": 2},
    {"bore": 150.0, "finishing": "band", "rings": 4},
    {"bore": 600.0, "rings": 2},
    {"bore": 80.0, "ring_type": "plain", "ring_material": "filled-ptfe-carbon", "rings": 2,
     "wall_pressure": 0.005},
    {"bore": 79.375, "slit_on_stick": True, "rings": 3},
]  # fmt: skip


class Lathe:
    """Cuts as the tables have them, for high-speed steel."""

    def __init__(self, metal, machine):
        self.metal, self.place = tabled.CUTS_AS[metal], machine

    def of(self, low, high):
        return low if self.place == "light" else 0.5 * (low + high)

    def passes(self, stock, operation):
        depth = tabled.DEPTHS[operation][0 if self.place == "light" else 1]
        return max(1, math.ceil(stock / depth - 1e-9))

    def speed(self, operation, share=(1.0, 1.0)):
        low, high, _ = tabled.HSS_SPEEDS[operation][self.metal]
        return self.of(share[0] * low, share[1] * high)

    def feed(self, operation):
        if operation == "turn-rough" and self.place == "light":
            return tabled.LIGHT_ROUGHING_FEED[0]
        return self.of(*tabled.FEEDS[operation][:2])

    def minutes(self, v, size, feed, travel, times, setting):
        """(cutting, setting)."""
        return times * travel / (feed * 1000.0 * v / (math.pi * size)), times * setting


def cuts_by_hand(request, design, tooling, card, bar):
    """Key -> (passes, cutting, setting) of every cut on the lathe."""
    d = design
    lathe = Lathe(d.duty.ring_material.key, request.get("machine", "light"))
    outside, inside = d.blank.rough_outside, d.blank.bored_inside
    wall = 0.5 * (outside - inside)
    # A casting has 3 mm to take off all round, outside and in.
    skin, hole = outside + 6.0, inside - 6.0
    if bar.get("bar_as_cast"):
        skin = bar["bar_as_cast"]["value"]
        # One producer's tube is a quarter of an inch smaller in its bore (read).
        hole = bar["bar_bore"]["value"] - 6.35 if "bar_bore" in bar else 0.0
    length = d.blank.length + 3.0
    rough, half, bore = (1.0, 1.0), (0.5, 1.0), (0.8, 1.0)
    solid = "drill" in [one["key"] for one in card["operations"]]
    if solid:
        hole = row(card, "drill")["sizes"][0]["value"]
    roughed = inside - 0.5

    def made(key, follows, share, operation, size, travel, times):
        v = lathe.speed(follows, share)
        cut = lathe.minutes(v, size, lathe.feed(operation), travel, times,
                            tabled.HANDLING[operation])  # fmt: skip
        return key, (times, *cut)

    across = 0.5 * (skin - (0.0 if solid else hole)) + 1.0
    step = d.allowances.facing + (d.allowances.slit if d.duty.turns == 2 else 0.0)
    turned = 0.5 * (outside - d.blank.finish_outside)
    width = d.section.width + 3.0
    found = [
        made("face-bar", "turn-rough", rough, "face", skin, across, 1),
        made("turn-rough", "turn-rough", rough, "turn-rough", skin, length,
             lathe.passes(0.5 * (skin - outside), "turn-rough")),
        made("bore-rough", "turn-rough", bore, "bore-rough", roughed, length,
             lathe.passes(0.5 * (roughed - hole), "bore-rough")),
        # A cut to measure by, and one to size.
        made("bore", "turn-rough", bore, "bore", inside, length, 2),
        made("part-off", "turn-rough", half, "part", outside, wall + 1.0, 1),
        made("face-blank", "turn-rough", rough, "face", outside, wall + 1.0,
             2 * lathe.passes(d.allowances.facing, "face")),
        made("face-step", "turn-rough", rough, "face", outside, wall + 1.0,
             2 * lathe.passes(step, "face")),
        made("face-sides", "turn-rough", rough, "face", outside, wall + 1.0,
             2 * lathe.passes(step, "face")),
        # All but the last 0.15 as in roughing, then two light cuts.
        made("turn-finish", "turn-finish", rough, "turn-finish", outside, width,
             lathe.passes(max(turned - 0.15, 0.0), "turn-rough") + 2),
    ]  # fmt: skip
    if tooling.inside_clamped is not None and d.allowances.inside:
        found.append(made("bore-clamped", "turn-rough", bore, "bore", tooling.inside_clamped, width,
                          lathe.passes(max(d.allowances.inside, 0.15), "bore")))  # fmt: skip
    return dict(found)


@pytest.mark.parametrize("request_", JOBS, ids=str)
def test_passes_and_minutes_of_every_cut(request_):
    design, tooling = settled({k: v for k, v in request_.items() if k not in LATHE_AND_BAR})
    card = calculations.run("route", request_)
    job = calculations.run("job", request_)
    bar = job["stock"]["figures"] if job.get("stock") else {}
    due = cuts_by_hand(request_, design, tooling, card, bar)
    sticks = None
    checked = 0
    for one in card["operations"]:
        key = one["key"]
        if key not in due:
            continue
        times, cutting, setting = due[key]
        assert one["passes"] == times, key
        assert one["time"]["value"] == pytest.approx(cutting + setting, rel=1e-9), key
        rings = request_["rings"]
        if key == "face-bar":
            # Once for a stick.
            sticks = one["time_all"]["value"] / one["time"]["value"]
            assert sticks == pytest.approx(round(sticks))
            together = sticks * (cutting + setting)
        elif key in ("turn-rough", "bore-rough", "bore"):
            together = rings * cutting + sticks * setting
        else:
            together = rings * (cutting + setting)
        assert one["time_all"]["value"] == pytest.approx(together, rel=1e-9), key
        checked += 1
    assert checked >= 6


LATHE_AND_BAR = ("machine", "bar_form")


@pytest.mark.parametrize("on_stick", [False, True])
def test_minutes_of_the_slitting_saw(on_stick):
    """Round by the angle it is turned, along the outside, and in by its depth; teeth 4 mm apart, an
    even number; sawn off on the stick all the way round."""
    request = {"bore": 79.375, "slit_on_stick": on_stick, "rings": 3}
    design, tooling = settled(request)
    card = calculations.run("route", request)
    saw = tooling.cutter_diameter
    teeth = 2 * round(math.pi * saw / 8.0)
    v, setting = tabled.HSS_SPEEDS["slit-saw"]["grey-iron"][0], tabled.HANDLING["slit-saw"]
    rate = teeth * tabled.FEEDS["slit-saw"][0] * 1000.0 * v / (math.pi * saw)
    outside = design.blank.rough_outside
    wall = 0.5 * (outside - design.blank.bored_inside)
    keys = {"slit-stick": None, "saw-off": 360.0} if on_stick else {"slit": None}
    for key, degrees in keys.items():
        one = row(card, key)
        if degrees is None:
            degrees = next(s["value"] for s in one["sizes"] if s["name"] == "table_travel")
        # Half a millimetre beyond the wall.
        travel = math.pi * outside * degrees / 360.0 + wall + 0.5
        assert one["time"]["value"] == pytest.approx(travel / rate + setting, rel=1e-9)
        assert one["passes"] == 1 and one["feed_per"] == "tooth"
    assert {each.diameter for each in blank.SAWS} >= {saw}


# Hand work and waiting [min a ring]; common practice, no source.
BY_HAND = {
    "hold-stick": 10, "mark-out": 5, "saw-wedges": 4, "saw-ends": 4, "saw-end": 4, "saw-step": 4,
    "deburr": 3, "turn-through": 3, "put-on-former": 2, "put-on-former-bound": 2, "spread": 2,
    "take-off": 2, "turn-back": 2, "measure-free-gap": 2, "clamp": 5, "clamp-band": 5,
    "clamp-forced": 5, "dress-ends": 6, "inspect": 10, "fit": 10, "fit-double": 12,
}  # fmt: skip


@pytest.mark.parametrize(
    "request_",
    [*JOBS, {"bore": 80.0, "soak_time": 2.5, "rings": 2},
     {"bore": 80.0, "ring_type": "plain", "end_cut": "stepped", "rings": 2},
     {"bore": 80.0, "setting": "bound", "finishing": "forced-round", "rings": 2}],
    ids=str,
)  # fmt: skip
def test_hand_work_waiting_and_the_whole(request_):
    """One soak for all rings, half an hour more than it holds at heat; the first ring takes the sum
    of the rows, all rings from seven tenths of theirs to twice."""
    card = calculations.run("route", request_)
    rings = request_["rings"]
    first = together = 0.0
    for one in card["operations"]:
        if one["key"] in BY_HAND:
            minutes = BY_HAND[one["key"]]
            assert one["time"]["value"] == minutes, one["key"]
            if one["key"] != "hold-stick":
                assert one["time_all"]["value"] == rings * minutes, one["key"]
        if one["key"] == "soak":
            hours = next(s["value"] for s in one["sizes"] if s["name"] == "soak_time")
            assert hours == request_.get("soak_time", 1.0)
            assert one["time"]["value"] == one["time_all"]["value"] == 60.0 * (hours + 0.5)
        if "time" in one:
            first += one["time"]["value"]
            together += one["time_all"]["value"]
    figures = card["figures"]
    assert figures["time_first_ring"]["value"] == pytest.approx(first, rel=1e-9)
    row_ = figures["time_all_rings"]
    assert (row_["low"], row_["value"], row_["high"]) == pytest.approx(
        (0.7 * together, together, 2.0 * together), rel=1e-9
    )


def test_sizes_of_the_card_that_stand_nowhere_else():
    """Roughed half a millimetre under the bore; strips as thick as the slit and half of it, for the
    step winds evenly; the scale shows the force in kilograms of 9.80665 N (by definition)."""
    request = {"bore": 79.375}
    design, _ = settled(request)
    card = calculations.run("route", request)
    sized = calculations.run("sizing", request)["figures"]
    sizes = {size["name"]: size for one in card["operations"] for size in one["sizes"]}
    bored = sizes["bored_inside_diameter"]["value"]
    assert sizes["roughed_bore"]["value"] == pytest.approx(bored - 0.5)
    slit = sizes["slit_width"]["value"]
    assert sizes["thick_strip"]["value"] == pytest.approx(slit)
    assert sizes["thin_strip"]["value"] == pytest.approx(0.5 * slit)
    force = sized["diametral_force"]["value"]
    assert sizes["scale_reading"]["value"] == pytest.approx(force / 9.80665, rel=1e-9)
    assert sizes["free_gap"]["value"] == pytest.approx(sized["free_gap"]["value"], rel=1e-9)
    assert sizes["blank_length"]["value"] == pytest.approx(
        2.0 * sizes["band_width"]["value"] + slit
    )


def test_the_heat_never_to_pass_stands_on_the_card_unless_it_was_asked_for():
    """At the most that iron stands it still stands there; past it the card says nothing of it."""
    hottest = soak_range("iron").hottest
    for asked, there in ((550.0, True), (hottest, True), (hottest + 1.0, False)):
        sizes = row(calculations.run("route", {"bore": 80.0, "soak_temperature": asked}), "soak")
        named = {size["name"]: size["value"] for size in sizes["sizes"]}
        assert named["soak_temperature"] == asked
        assert named.get("soak_hottest") == (hottest if there else None)
