"""Whoever judges a ring says the same: survey, sizing, inspection, running and spread.

Jobs are drawn by chance with a fixed seed: sizes, taper, ovality, both kinds, every metal.
"""

import math
import random

import pytest

from ringwright.core import calculations
from ringwright.core.catalogue.inputs_ring import FINISHINGS, SETTINGS
from ringwright.core.problems import InputProblem
from ringwright.core.properties.materials import for_use

# What sizing says of the gap, the survey says of both ends of the bore in its own words.
OF_THE_GAP = {"end-gap": "gap-breathes", "gap-wide": "gap-breathes-wide"}
# What the blank goes through on its way to be a ring: past, once it is measured.
OF_THE_BLANK = {"sawn-open", "forming", "turning-through", "setting"}


def job(draw):
    """Inputs of a ring and its engine, without its bore; some of them wrong on purpose."""
    made = {
        "ring_type": draw.choice(["plain", "double-turn"]),
        "ring_material": draw.choice(list(for_use("ring"))),
        "steam_pressure": draw.choice([0.2, 0.7, 1.4, 2.5]),
    }
    for chance, name, values in (
        (0.3, "cylinder_material", list(for_use("cylinder"))),
        (0.3, "piston_material", list(for_use("piston"))),
        (0.3, "steam_temperature", [235.0, 300.0, 390.0]),
        (0.2, "shop_temperature", [-5.0, 10.0, 35.0]),
        (0.3, "wall_pressure", [0.02, 0.05, 0.08, 0.2]),
        (0.2, "setting", list(SETTINGS)),
        (0.2, "finishing", list(FINISHINGS)),
        (0.2, "expander_pressure", [0.02, 0.1]),
    ):
        if draw.random() < chance:
            made[name] = draw.choice(values)
    return made


def sized(draw, made, bore):
    """The same with some sizes given, right and wrong, for a bore."""
    made = dict(made)
    if draw.random() < 0.4:
        made["closed_gap"] = draw.uniform(0.0, 0.015) * bore
    if draw.random() < 0.3:
        made["radial_thickness"] = bore / draw.uniform(14.0, 45.0)
    if draw.random() < 0.2:
        made["piston_diameter"] = bore * (1.0 - draw.uniform(0.0003, 0.01))
    return made


def a_bore(draw):
    return math.exp(draw.uniform(math.log(20.0), math.log(600.0)))


def outcomes(answer):
    return {row["check"]: row["outcome"] for row in answer["findings"]}


def stopped(answer):
    return {row["check"] for row in answer["findings"] if row["outcome"] == "stop"}


def value(answer, name):
    return answer["figures"][name]["value"]


def taken(answer, name):
    return next((row["value"] for row in answer["chosen"] if row["input"] == name), None)


def gauged(draw, size):
    """Readings of a two-point gauge in a bore with taper, bell-mouth and oval of its own."""
    taper = draw.choice([0.0, 1.0, 1.0]) * draw.uniform(0.0, 0.003) * size
    bell = draw.choice([0.0, 1.0]) * draw.uniform(-0.0005, 0.001) * size
    oval = draw.choice([0.0, 1.0]) * draw.uniform(0.0, 0.0012) * size
    return [
        {
            "height": height,
            "direction": direction,
            "diameter": size
            + 0.5 * taper * t
            + bell * t * t
            + oval * math.cos(2.0 * math.radians(direction - 20.0)),
        }
        for height, t in ((5.0, -1.0), (60.0, 0.0), (115.0, 1.0))
        for direction in (0.0, 45.0, 90.0, 135.0)
    ]


def along_the_bore(seen):
    """Bores where the survey's ring is to stand: tightest and slackest, or the bore made true."""
    if seen["verdict"] != "run":
        return [value(seen, "ring_diameter")]
    means = [row["mean_diameter"]["value"] for row in seen["sections"]]
    return [min(means), max(means)]


@pytest.mark.parametrize("seed", range(4))
def test_a_survey_is_never_good_where_sizing_stops(seed):
    """Sizing of the same job is asked at the tightest and the slackest place, with the gap that the
    ring of the survey has there: as it was asked, and with that ring's own thickness and spring."""
    draw = random.Random(seed)
    tried = stops = 0
    while tried < 120:
        size = a_bore(draw)
        asked = sized(draw, job(draw), size)
        try:
            seen = calculations.run("bore-survey", {**asked, "readings": gauged(draw, size)})
        except InputProblem:
            continue
        tried += 1
        own = {
            name: taken(seen, name)
            for name in ("radial_thickness", "wall_pressure")
            if taken(seen, name) is not None
        }
        for bore in along_the_bore(seen):
            gap = value(seen, "closed_gap")
            gap += math.pi * (bore - value(seen, "ring_diameter"))
            there = {**asked, "bore": bore, "closed_gap": max(gap, 0.0)}
            for request in (there, {**there, **own}):
                try:
                    found = stopped(calculations.run("sizing", request))
                except InputProblem:
                    continue
                stops += bool(found)
                assert not found or stopped(seen), (request, found, outcomes(seen))
                if request is not there and seen["verdict"] == "run":
                    for check in found & OF_THE_GAP.keys():
                        assert {check, OF_THE_GAP[check]} & stopped(seen), (request, found)
    assert stops > 60


def test_a_bore_that_is_made_true_needs_no_gap_for_its_taper():
    draw = random.Random(3)
    trued = 0
    while trued < 20:
        size = a_bore(draw)
        seen = calculations.run("bore-survey", {"readings": gauged(draw, size)})
        if seen["verdict"] not in ("hone", "bore-out"):
            continue
        trued += 1
        alone = calculations.run("sizing", {"bore": value(seen, "ring_diameter")})
        assert value(seen, "closed_gap") == pytest.approx(value(alone, "closed_gap"), rel=1e-9)


# What both ask after, the ring's springing apart, which a running engine is not asked for.
SHARED = {
    "too-stiff", "too-slack", "end-gap", "gap-wide", "side-clearance", "piston-clearance",
    "piston-seizes", "pairing", "piston-metal", "steam-pressure",
}  # fmt: skip


@pytest.mark.parametrize("seed", range(3))
def test_running_says_of_a_new_ring_what_sizing_says(seed):
    draw = random.Random(100 + seed)
    tried = stops = 0
    while tried < 100:
        size = a_bore(draw)
        asked = {**sized(draw, job(draw), size), "bore": size}
        for name in ("setting", "finishing"):
            asked.pop(name, None)
        try:
            drawn = calculations.run("sizing", asked)
            engine = {"stroke": size, "speed": 150.0, "ring_width": value(drawn, "ring_width")}
            engine["wall_pressure"] = value(drawn, "wall_pressure")
            engine["radial_thickness"] = value(drawn, "radial_thickness")
            side = draw.choice([1.0, 1.0, 0.2, 0.0, 4.0]) * value(drawn, "side_clearance")
            asked["ring_width"] = engine["ring_width"]
            asked["groove_width"] = engine["ring_width"] + side
            drawn = calculations.run("sizing", {**asked, **{
                name: engine[name] for name in ("wall_pressure", "radial_thickness")
            }})  # fmt: skip
            asked.pop("groove_width")
            runs = calculations.run("running", {**asked, **engine, "side_clearance": side})
        except InputProblem:
            continue
        tried += 1
        for check in SHARED:
            one, other = (outcomes(answer).get(check, "good") for answer in (drawn, runs))
            assert one == other, (check, one, other, asked, engine, side)
        hot = outcomes(drawn).get("ring-heat", "good")
        assert outcomes(runs).get("ring-material-heat", "good") == hot
        stops += bool(stopped(drawn) & SHARED)
    assert stops > 30


def test_wear_opens_a_gap_that_new_rings_mend():
    engine = {"bore": 80.0, "stroke": 90.0, "ring_type": "plain", "worn_gap": 1.3}
    found = calculations.run("running", engine)["findings"]
    wide = next(row for row in found if row["check"] == "gap-wide")
    assert wide["outcome"] == "stop" and wide["remedy"].startswith("Make new rings")


@pytest.mark.parametrize("seed", range(2))
def test_spread_stops_what_sizing_stops_and_counts_no_such_ring(seed):
    draw = random.Random(200 + seed)
    tried = edges = 0
    while tried < 40:
        size = a_bore(draw)
        asked = {**sized(draw, job(draw), size), "bore": size}
        try:
            drawn = calculations.run("sizing", asked)
            many = calculations.run("spread", asked)
        except InputProblem:
            continue
        tried += 1
        assert stopped(drawn) == stopped(many) - {"yield"}, asked
        for name, stray in (("lowest_closed_gap", 1.0), ("highest_closed_gap", -1.0)):
            # A ring that is just counted as right: its gap does not stop it, nor leak.
            gap = taken(many, name) + stray * 1e-6
            if not 0.0 <= gap <= 30.0:
                continue
            try:
                edge = outcomes(calculations.run("sizing", {**asked, "closed_gap": gap}))
            except InputProblem:
                continue
            assert edge["end-gap"] != "stop" and "gap-wide" not in edge, (asked, name, gap)
            edges += 1
        if not {"too-slack", "too-stiff"} & stopped(drawn):
            for name, stray in (("lowest_pressure", 1e-9), ("highest_pressure", -1e-9)):
                pressure = taken(many, name) + stray
                own = {**asked, "wall_pressure": pressure}
                try:
                    edge = stopped(calculations.run("sizing", own))
                except InputProblem:
                    continue
                assert not {"too-slack", "too-stiff"} & edge, (asked, name, pressure)
                edges += 1
    assert edges > 60


@pytest.mark.parametrize("seed", range(2))
def test_a_ring_made_as_drawn_passes_as_sizing_passes_it(seed):
    draw = random.Random(300 + seed)
    accepted = refused = 0
    while accepted + refused < 80:
        size = a_bore(draw)
        asked = {**sized(draw, job(draw), size), "bore": size}
        try:
            drawn = calculations.run("sizing", asked)
            # As a feeler reads it, square to the usual cut of 45 degrees.
            feeler = value(drawn, "closed_gap") * 0.5**0.5
            made = {
                "measured_thickness": value(drawn, "radial_thickness"),
                "measured_width": value(drawn, "ring_width"),
                "measured_free_gap": value(drawn, "free_gap"),
                "gap_measured_at": "neutral-line",
                "measured_closed_gap": feeler,
            }
            judged = calculations.run("inspection", {**asked, **made})
        except InputProblem:
            continue
        found = stopped(drawn) - OF_THE_BLANK
        assert (judged["verdict"] == "accept") == (not found), (asked, found, outcomes(judged))
        accepted += judged["verdict"] == "accept"
        refused += judged["verdict"] != "accept"
    assert min(accepted, refused) > 15
