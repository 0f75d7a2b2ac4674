"""What is said of a ring made without heat, at each limit and beside it; its figures and steps.

One ring of 120 mm; of how it was made or bears one figure is replaced at a time.
"""

import math

import pytest

from ringwright.core import calculations
from ringwright.core.catalogue.inputs_ring import BAND, CLOSING_RING, FORCED_ROUND
from ringwright.core.problems import InputProblem
from ringwright.core.ring import spring, without_heat
from ringwright.core.wall import ring_without_heat, without_heat_findings, without_heat_steps

GIVEN = {"bore": 120.0, "radial_thickness": 4.0, "ring_width": 6.0, "closed_gap": 0.5}


def made(**more):
    return ring_without_heat._made({**GIVEN, **more})[0]


RINGS = {
    (finishing, again): made(finishing=finishing, bored_again=again)
    for finishing in (CLOSING_RING, BAND, FORCED_ROUND)
    for again in (False, True)
}
MADE = RINGS[CLOSING_RING, False]


def row(check, one=MADE, borne=(), **changed):
    one = one._replace(borne=one.borne._replace(**dict(borne)), **changed)
    found = [each for each in without_heat_findings.findings(one) if each.check == check]
    assert len(found) <= 1
    return found[0] if found else None


def figures(**more):
    answer = calculations.run("ring-without-heat", {**GIVEN, **more})
    return {name: each["value"] for name, each in answer["figures"].items()}


# --- findings ---


@pytest.mark.parametrize("finishing", [CLOSING_RING, BAND, FORCED_ROUND])
def test_what_cleans_it_is_what_it_lies_in_by_and_a_little(finishing):
    one = RINGS[finishing, False]
    kappa = one.design.spring.curvature_change
    needed = without_heat.needed_outside(kappa, 58.0, finishing)
    good = row("cleans-up", one, allowance=needed)
    assert (good.outcome, good.remedy) == ("good", "")
    assert (good.value.value, good.limit.value) == (needed, needed)
    bad = row("cleans-up", one, allowance=needed - 1e-6)
    assert bad.outcome == "stop"
    # In hundredths of a millimetre, upwards.
    least = math.ceil(100.0 * needed) / 100.0
    assert ("Leave at least %.2f" % least) in bad.remedy and least >= needed


def test_how_evenly_thick_it_comes_out():
    """A tenth of 4 mm is to be watched beyond, a fifth of it stops."""
    for varies, outcome, limit in (
        (0.399, "good", 0.4),
        (0.401, "watch", 0.4),
        (0.799, "watch", 0.4),
        (0.801, "stop", 0.8),
    ):
        found = row("even-thickness", thicknesses=[4.0, 4.0 + varies, 3.9999])
        assert found.outcome == outcome
        assert found.value.value == pytest.approx(varies + 1e-4)
        assert found.limit.value == pytest.approx(limit)
    # At the very limit it is still the better of both.
    assert row("even-thickness", thicknesses=[0.4, 0.0]).outcome == "good"
    assert row("even-thickness", thicknesses=[0.8, 0.0]).outcome == "watch"
    found = row("even-thickness", thicknesses=[4.0, 4.52])
    assert "varies by 0.520 mm" in found.why and "13 % of it" in found.why


def test_stress_drawn_closed_closed_in_the_bore_and_sprung_on():
    strength = MADE.design.duty.ring_material.bending_strength
    drawn = row("drawn-closed")
    assert drawn.value.value == pytest.approx(
        without_heat.closing_stress(MADE.design, CLOSING_RING, MADE.sizes.thickness), rel=1e-12
    )
    assert drawn.limit.value == pytest.approx(0.75 * strength)
    for stress, outcome in ((0.449, "good"), (0.451, "watch"), (0.651, "stop")):
        found = row("closed-stress", borne={"tension": stress * strength})
        assert found.outcome == outcome
    d = MADE.design
    clear = 0.5 * (120.0 - d.piston_diameter)
    opened = spring.opening_to_clear(4.0, 120.0, d.spring.gap_change, clear)
    stress = spring.opening_stress(opened, d.spring.gap_change, 120.0, 4.0, d.duty.modulus)
    assert row("sprung-on").value.value == pytest.approx(stress, rel=1e-12)
    shown = figures(finishing=CLOSING_RING)
    assert shown["sprung_on_opening"] == pytest.approx(opened, rel=1e-9)
    assert shown["sprung_on_stress"] == pytest.approx(stress, rel=1e-9)


def test_iron_breaks_and_bronze_takes_a_set():
    bronze = made(finishing=CLOSING_RING, ring_material="phosphor-bronze")
    for one, word in ((MADE, "will break"), (bronze, "will take a set")):
        strength = one.design.duty.ring_material.bending_strength
        assert word in row("closed-stress", one, borne={"tension": strength}).why


def test_its_mean_pressure_is_judged():
    for pressure, check in ((0.03, "too-slack"), (0.05, "wall-pressure"), (0.1, "too-stiff")):
        assert row(check, borne={"mean_pressure": pressure}).value.value == pressure


def test_how_much_of_the_way_round_it_bears():
    good = row("seals", borne={"contact_share": 0.995})
    assert (good.outcome, good.limit.value) == ("good", 0.995)
    slack = {"contact_share": 0.9949, "slack": [math.radians(20.0), math.radians(41.0)]}
    bad = row("seals", borne=slack)
    assert (bad.outcome, bad.value.value) == ("watch", 0.9949)
    assert "99 % of the way round" in bad.why and "41 degrees behind" in bad.why
    assert bad.remedy.startswith("Hold it by a flexible band")
    assert row("seals", RINGS[BAND, False], slack).remedy == "Turn the inside again too."


def test_light_that_beds_in_and_light_that_does_not():
    for light, outcome, limit in (
        (0.05, "good", 0.05),
        (0.0501, "watch", 0.05),
        (0.25, "watch", 0.05),
        (0.2501, "stop", 0.25),
    ):
        found = row("light", borne={"widest_light": light})
        assert (found.outcome, found.value.value, found.limit.value) == (outcome, light, limit)
    found = row("light", borne={"widest_light": 0.08, "light_place": math.radians(371.0)})
    assert "0.080 mm" in found.why and "11 degrees from the gap" in found.why


def test_a_ring_that_springs_far_is_told_how_far_the_sums_hold():
    assert row("large-deflection", springiness=0.15) is None
    assert row("large-deflection", springiness=0.1501).outcome == "watch"
    found = row("large-deflection", springiness=0.18)
    assert (found.outcome, found.value.value, found.limit.value) == ("watch", 0.18, 0.15)
    assert "takes 18 % of the ring's curvature; beyond 15 %" in found.why


# --- how it is made, and what it bears then ---


def test_the_moment_of_a_ring_that_was_true_while_it_was_held():
    """kappa0 r^2 = 5.7e-4*58^2 = 1.91748 over the back; by a band 4/3 of it there."""
    size = 5.7e-4 * 58.0 * 58.0
    banded = ring_without_heat.held_moment(5.7e-4, 58.0, BAND, 24)
    assert len(banded) == 25
    assert (banded[0], banded[4]) == (0.0, pytest.approx(size / 3.0))
    assert banded[12] == pytest.approx(4.0 / 3.0 * size)
    closed = ring_without_heat.held_moment(5.7e-4, 58.0, CLOSING_RING, 24)
    assert closed[2] == pytest.approx(0.5 / math.sin(2.139182) * size, rel=1e-6)
    assert closed[12] == pytest.approx(size)
    assert (
        ring_without_heat.held_moment(5.7e-4, 58.0, FORCED_ROUND, 24) == [pytest.approx(size)] * 25
    )


def test_a_ring_bored_again_or_forced_round_is_even():
    d = MADE.design
    for finishing in (CLOSING_RING, BAND, FORCED_ROUND):
        borne, thick, share = ring_without_heat.bears(d, 5.7e-4, finishing, True, 48)
        assert thick == [4.0] * 49 and len(borne.pressure) == 49
        peak = {BAND: 4.0 / 3.0, FORCED_ROUND: 1.0}.get(finishing, 1.1866)
        assert share == pytest.approx(peak * 5.7e-4 * 58.0, rel=2e-3)
        _, thick, _ = ring_without_heat.bears(d, 5.7e-4, finishing, False, 48)
        lies = [without_heat.lies_off(finishing, min(i, 48 - i) * math.pi / 24) for i in range(49)]
        size = 5.7e-4 * 58.0 * 58.0
        assert thick == pytest.approx([4.0 - size * off for off in lies], abs=1e-9)


def test_round_set_it_presses_with_what_its_curvature_gives():
    """p0 = E a^3 kappa0/(12 r r_o) over the back, by 12*58*60 = 41760."""
    d = MADE.design
    borne = ring_without_heat.bears(d, 5.7e-4, CLOSING_RING, True)[0]
    pressure = d.duty.modulus * 64.0 * 5.7e-4 / 41760.0
    assert borne.pressure[90] == pytest.approx(pressure, rel=1e-6)
    assert len(borne.pressure) == 181
    # One turn: 0.9 of it as a mean, for all but 122.57 degrees behind each tip.
    assert borne.mean_pressure == pytest.approx(0.9 * pressure, rel=1e-3)
    assert borne.contact_share == pytest.approx(1.0 - 2.0 * 122.57 / 360.0, abs=1e-3)
    assert borne.tension == pytest.approx(
        0.5 * 1.18666 * d.duty.modulus * 4.0 * 5.7e-4 * 112.0 / 116.0, rel=2e-3
    )


def test_the_lowest_pressure_leaves_the_half_steps_of_the_ends_out():
    for row in ([0.01, 0.03, 0.05, 0.04, 0.02], [0.01, 0.05, 0.04, 0.03, 0.02]):
        assert ring_without_heat.lowest_pressure(MADE.borne._replace(pressure=row)) == 0.03


@pytest.mark.parametrize("again", [False, True])
@pytest.mark.parametrize("finishing", [CLOSING_RING, BAND, FORCED_ROUND])
def test_what_holds_and_clamps_it_has_its_size(finishing, again):
    shown = figures(finishing=finishing, bored_again=again, clamped_gap=0.3)
    one = made(finishing=finishing, bored_again=again, clamped_gap=0.3)
    outside = 120.0 - 0.2 / math.pi
    held = outside + shown["outside_allowance"]
    assert shown["finish_outside_diameter"] == pytest.approx(outside, rel=1e-9)
    assert shown["second_inside_diameter"] == pytest.approx(outside - 8.0, rel=1e-9)
    assert shown.get("closing_ring_bore") == (
        pytest.approx(held, rel=1e-9) if finishing == CLOSING_RING else None
    )
    # A flexible band is left 10 mm from meeting round it.
    assert shown.get("band_length") == (
        pytest.approx(math.pi * held - 10.0, rel=1e-9) if finishing == BAND else None
    )
    assert shown.get("outer_clamp_bore") == (pytest.approx(outside, rel=1e-9) if again else None)
    assert shown["clamp_mandrel_diameter"] == pytest.approx(one.sizes.spigot, rel=1e-9)
    assert shown["thinnest"] == pytest.approx(min(one.thicknesses), rel=1e-9)
    assert shown["thickest"] == pytest.approx(max(one.thicknesses), rel=1e-9)
    assert shown["tip_force"] == pytest.approx(max(one.borne.tip_forces), abs=1e-9)
    assert (shown["inside_allowance"] > 0.0) == again


@pytest.mark.parametrize(("inch", "step"), [(False, 0.1), (True, 0.127)])
@pytest.mark.parametrize("finishing", [CLOSING_RING, BAND, FORCED_ROUND])
def test_what_is_left_is_the_next_step_up_of_what_cleans_it(finishing, inch, step):
    """Tenths of a millimetre, or five thou."""
    one = made(finishing=finishing, bored_again=True, inch_sizes=inch)
    kappa = one.design.spring.curvature_change
    for left, needed in (
        (one.allowance, without_heat.needed_outside(kappa, 58.0, finishing)),
        (one.inside_allowance, without_heat.needed_inside(kappa, 58.0, finishing)),
    ):
        assert left / step == pytest.approx(round(left / step), abs=1e-6)
        assert -1e-9 <= left - needed < step


def test_light_is_told_by_the_angle_from_the_gap():
    """Forced round it stands off as a round arc does, widest 32.4 degrees behind a tip."""
    shown = figures(finishing=FORCED_ROUND)
    assert shown["light_angle"] == pytest.approx(32.4, abs=2.0)
    size = RINGS[FORCED_ROUND, False].design.spring.curvature_change * 58.0**2
    assert shown["widest_light"] == pytest.approx(0.10475 * size, rel=0.01)


def test_rows_round_the_ring_and_forces_at_a_point():
    borne = MADE.borne._replace(points=[(0.3, 2.5), (6.1, 1.5)])
    (turn,) = ring_without_heat._turns(borne)
    assert turn["turn"] == 1
    angles = turn["angle"].values
    assert (len(angles), angles[0], angles[45]) == (181, 0.0, pytest.approx(90.0))
    assert turn["pressure"].values == borne.pressure and turn["light"].values == borne.light
    first, second = ring_without_heat._points(borne)
    assert (first["turn"], first["force"].value) == (1, 2.5)
    assert second["angle"].value == pytest.approx(math.degrees(6.1), rel=1e-12)
    borne = MADE.borne._replace(
        tip_forces=[1.3, 2.1], widest_light=0.03, light_place=math.radians(371.0)
    )
    shown = ring_without_heat._figures(MADE._replace(borne=borne))
    assert shown["tip_force"].value == 2.1
    assert shown["light_angle"].value == pytest.approx(11.0, rel=1e-9)
    tight = ring_without_heat._figures(MADE._replace(borne=borne._replace(widest_light=0.0)))
    assert tight["light_angle"].value == 0.0


def test_beside_it_stands_a_ring_of_the_same_gap_heated_on_a_former():
    """m = c - s1, R = r + m/(2 pi): p0 = E a^3 kappa0/(12 r r_o), the mean 0.9 of it.

    Each tip presses with p0 h r_o/sin psi0.
    """
    one = RINGS[CLOSING_RING, True]
    spread, former = ring_without_heat._ways(one)[:2]
    kappa = 1.0 / 58.0 - 1.0 / (58.0 + (one.sizes.piece - 0.5) / (2.0 * math.pi))
    pressure = one.design.duty.modulus * 64.0 * kappa / 41760.0
    assert former["largest_pressure"].value == pytest.approx(pressure, rel=1e-9)
    assert former["mean_wall_pressure"].value == pytest.approx(0.9 * pressure, rel=1e-3)
    tip = pressure * 6.0 * 60.0 / math.sin(2.139182)
    assert former["tip_force"].value == pytest.approx(tip, rel=1e-6)
    assert (former["lowest_pressure"].value, former["widest_light"].value) == (0.0, 0.0)
    # Spread, it presses evenly: m = 3 pi r K (1 + 5 K/6 - ...), K = 6 p d1 r^2/(E a^3).
    even = {spread[name].value for name in list(spread)[1:4]}
    assert len(even) == 1
    k = 6.0 * even.pop() * 120.0 * 58.0**2 / (one.design.duty.modulus * 64.0)
    gap = 3.0 * math.pi * 58.0 * k * (1.0 + 5.0 * k / 6.0 - 1.159 * k * k)
    assert gap == pytest.approx(one.sizes.piece - 0.5, rel=1e-4)
    assert (spread["tip_force"].value, spread["widest_light"].value) == (0.0, 0.0)


@pytest.mark.parametrize("own", [(CLOSING_RING, True), (BAND, False), (FORCED_ROUND, False)])
def test_beside_it_stands_every_other_way_without_heat(own):
    """Its own row is of its own figures; another's is that of a ring made so to the same gap."""
    one = RINGS[own]
    one = one._replace(borne=one.borne._replace(tip_forces=[1.3, 2.1], mean_pressure=0.0444))
    held = {
        CLOSING_RING: "held in a closing ring",
        BAND: "held by a flexible band",
        FORCED_ROUND: "forced fully round",
    }
    ways = [(hold, again) for hold in held for again in (False, True)][:5]
    rows = ring_without_heat._ways(one)[2:]
    assert len(rows) == 5
    for (hold, again), row in zip(ways, rows, strict=True):
        turned = "outside and inside" if again else "outside"
        assert row["way"] == "without heat, %s, %s turned again" % (held[hold], turned)
        if (hold, again) == own:
            assert (row["mean_wall_pressure"].value, row["tip_force"].value) == (0.0444, 2.1)
            continue
        kappa = without_heat.curvature_for(one.sizes.piece, 58.0, 0.5, hold)
        borne = ring_without_heat.bears(one.design, kappa, hold, again)[0]
        assert row["mean_wall_pressure"].value == pytest.approx(borne.mean_pressure, rel=3e-3)
        assert row["widest_light"].value == pytest.approx(borne.widest_light, abs=1e-3)


def test_a_free_gap_that_is_none_is_refused_and_the_next_is_not():
    for gap in (0.5, 0.4):
        with pytest.raises(InputProblem) as refused:
            made(finishing=CLOSING_RING, free_gap=gap)
        assert refused.value.faults[0].path == ("free_gap",)
    assert made(finishing=CLOSING_RING, free_gap=0.6).sizes.piece == pytest.approx(0.6, rel=1e-9)


def test_a_band_bores_it_again_and_others_do_not_by_themselves():
    assert made(finishing=BAND).bored_again is True
    assert made(finishing=CLOSING_RING).bored_again is False


def test_a_thick_ring_in_a_small_bore_leaves_no_room_to_clamp_it():
    thick = {"bore": 12.0, "radial_thickness": 5.5, "ring_width": 3.0, "finishing": FORCED_ROUND}
    with pytest.raises(InputProblem) as refused:
        ring_without_heat._made({**thick, "bored_again": True, "wall_pressure": 0.05})
    assert refused.value.faults[0].path == ("radial_thickness",)
    thin = {**thick, "radial_thickness": 2.0}
    assert ring_without_heat._made({**thin, "wall_pressure": 0.05})[0].sizes.spigot > 0.0


def test_a_gap_may_be_clamped_to_just_less_than_the_piece():
    piece = MADE.sizes.piece
    given = {**GIVEN, "finishing": CLOSING_RING}
    assert ring_without_heat._made({**given, "clamped_gap": piece - 1e-6})
    for gap in (piece, piece + 0.1):
        with pytest.raises(InputProblem) as refused:
            ring_without_heat._made({**given, "clamped_gap": gap})
        (fault,) = refused.value.faults
        assert (fault.path, fault.value) == (("clamped_gap",), gap)
        assert fault.highest == pytest.approx(piece)


# --- the steps ---


def test_the_piece_is_marked_along_the_outside():
    """c*(first outside/2)/R, for the piece is measured along the middle: a wedge."""
    sizes = MADE.sizes._replace(piece=13.0, first_outside=125.0, free_radius=60.0)
    assert without_heat_steps.marked(sizes) == pytest.approx(13.0 * 62.5 / 60.0, rel=1e-12)


def said(one):
    return dict(step.split(": ", 1) for step in without_heat_steps.steps(one))


def test_first_turning_and_parting_off():
    d = MADE.design
    text = said(MADE)["First turning"]
    assert "%.2f mm" % MADE.sizes.first_outside in text
    assert "%.2f mm" % MADE.sizes.first_inside in text
    # 6 wide, and what is faced off on both sides.
    assert "Part it off at %.2f mm" % (6.0 + 2.0 * d.allowances.facing) in text
    assert "face both sides to 6.00 mm" in text


@pytest.mark.parametrize(("cut", "sine"), [("square", 1.0), ("angled-60", math.sqrt(0.75))])
def test_the_packing_is_what_a_feeler_reads_square_to_the_cut(cut, sine):
    one = made(finishing=CLOSING_RING, end_cut=cut, clamped_gap=0.44)
    steps = said(one)
    assert "a packing of %.3f mm" % (0.44 * sine) in steps["Close it"]
    how = "both ends square to" if cut == "square" else "both ends at 60 degrees to"
    assert how in steps["Cut the piece out"]
    assert "bored %.2f mm" % one.sizes.held_outside in steps["Close it"]


def test_a_ring_forced_round_stands_between_bore_and_plug():
    one = RINGS[FORCED_ROUND, False]
    text = said(one)["Close it"]
    assert "a bore of %.2f mm" % one.sizes.held_outside in text
    plug = one.sizes.held_outside - 2.0 * one.sizes.thickness
    assert "a plug of %.2f mm" % plug in text
    assert "Bore it again" not in said(one)


def test_by_a_band_it_lies_oval_and_is_bored_again():
    one = RINGS[BAND, True]
    steps = said(one)
    assert "flexible band" in steps["Close it"]
    # A third of kappa0*r^2 out at gap and back, 0.1902654 in across them, on the radius.
    size = one.design.spring.curvature_change * 58.0**2
    long = one.sizes.held_outside + 2.0 / 3.0 * size
    short = one.sizes.held_outside - 2.0 * 0.1902654 * size
    assert "about %.2f mm" % long in steps["Close it"]
    assert "%.2f mm (%.3f in) across" % (short, short / 25.4) in steps["Close it"]
    assert long - short > 1.5
    assert "in a bore of 120.00 mm" in steps["Bore it again"]
    assert "bore it to 112.00 mm" in steps["Bore it again"]
    assert "%.2f mm" % one.sizes.plate in steps["Clamp it"]
    assert "The gap is 0.500 mm" in steps["Try it in the bore"]
