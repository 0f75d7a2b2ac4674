"""Which thicknesses serve: the two shares by the printed formulas, the window by plain laws.

Where the stresses are made plain powers of the thickness the limits of the window are exact.
"""

import math
from types import SimpleNamespace

import pytest

from ringwright.core.ring import heat_set, ring_findings, section, winding
from ringwright.core.ring.section import Task

BORE, E, STRENGTH = 80.0, 101000.0, 210.0


def task(**more):
    usual = {
        "bore": BORE,
        "modulus": E,
        "poisson": 0.26,
        "strength": STRENGTH,
        "brittle": True,
        "pressure": 0.047,
        "turns": 1,
        "setting": heat_set.SPREAD,
        "uniform": True,
        "width": 5.0,
        "width_ratio": 2.1,
        "slit": 0.9,
        "facing": 0.35,
        "finishing": 0.7,
        "piston_clearance": 0.2,
    }
    return Task(**{**usual, **more})


@pytest.mark.parametrize(
    ("setting", "turns", "uniform", "share", "peak"),
    [
        # Mean pressure and peak moment of a round-set ring: 0.900, 0.950 and 1.187 by contact; held
        # by a band 2/3, 0.689, 0.878 and 0.894, its back bearing twice its share of one turn.
        (heat_set.BOUND, 1, False, 0.900, 1.1867),
        (heat_set.SPRUNG, 2, False, 0.950, 1.1867),
        (heat_set.BOUND, 1, True, 2.0 / 3.0, 4.0 / 3.0),
        (heat_set.SPRUNG, 1, True, 0.68947, 1.37894),
        (heat_set.BOUND, 2, True, 0.8782, 4.0 / 3.0),
        (heat_set.SPRUNG, 2, True, 0.8936, 1.37894),
    ],
)
def test_stress_in_the_bore_of_a_round_set_ring(setting, turns, uniform, share, peak):
    """Tension 1.5 peak p0 x (x - 2), x = d1/a1 and p0 the mean pressure over its share."""
    found = section.round_set_factors(setting, turns, uniform)
    assert found == (pytest.approx(share, rel=1e-3), pytest.approx(peak, rel=1e-3))
    asked = task(setting=setting, turns=turns, uniform=uniform)
    stress = 1.5 * peak * 0.047 / share * 32.0 * 30.0
    closed = section.closed_share(asked, 2.5)
    assert closed == pytest.approx(stress / (0.45 * STRENGTH), rel=2e-3)
    # By the factors to all their digits the rest is plain arithmetic.
    exact = 1.5 * found[1] * 0.047 / found[0] * 32.0 * 30.0
    assert closed == pytest.approx(exact / (0.45 * STRENGTH), rel=1e-12)


def test_stress_in_the_bore_of_a_ring_that_was_spread():
    """Tension 3 p x (x - 2), over 0.45 of the strength."""
    stress = 3.0 * 0.047 * 32.0 * 30.0
    found = section.closed_share(task(), 2.5)
    assert found == pytest.approx(stress / (0.45 * STRENGTH), rel=1e-12)


def opened(pressure, thickness, clearance):
    """Stress of a plain ring pulled open by its ends over the piston, as it is printed."""
    d = BORE / thickness
    m = 2.25 * math.pi * pressure * BORE * (d - 1.0) ** 3 / E
    g = 3.0 * math.pi - 14.1 * d**-0.729
    g *= (thickness - clearance) * (1.0 + 1.17 * d**-0.7 * clearance / thickness)
    g *= 1.0 + 0.021 * math.sqrt(d) * m / BORE
    span = BORE - thickness
    nominal = 4.0 * E * thickness * (g - m) / (3.0 * math.pi * span * span)
    return nominal * (1.0 + 5.0 / (6.0 * (d - 1.0))) / (1.0 + 0.3 * (g + 0.5 * m) / BORE)


def test_stress_of_a_plain_ring_on_its_way_over_the_piston():
    found = section.once_share(task(), 2.8)
    assert found == pytest.approx(opened(0.047, 2.8, 0.2) / (0.75 * STRENGTH), rel=1e-6)
    # So springy that its ends need not be pulled: opened evenly, 2 E a1^2/(d1^2 - a1^2).
    even = 2.0 * E * 1.8**2 / (BORE**2 - 1.8**2)
    assert opened(0.1, 1.8, 0.2) < even
    found = section.once_share(task(pressure=0.1), 1.8)
    assert found == pytest.approx(even / (0.75 * STRENGTH), rel=1e-9)


@pytest.mark.parametrize("width", [5.0, 11.0, None])
@pytest.mark.parametrize("sideways", [True, False])
@pytest.mark.parametrize("thickness", [2.4, 3.2])
def test_what_a_double_turn_ring_is_turned_through_with(width, sideways, thickness):
    """The blank: both turns, two slits and two facings; half of the turning is still on it."""
    h = width or 2.1 * thickness
    length = h + 1.8 + 0.7
    band = 0.5 * (h + 0.9) + 0.35
    through = winding.turning_through(
        length, 0.5 * (BORE - thickness), thickness + 0.35, band, E, 0.26, True
    ).equivalent
    plug = winding.plug_stress(0.047, BORE, thickness, E)
    wound = 1.1 * plug
    # So wide a ring is hardest to turn through.
    assert through > wound or (width, thickness) != (11.0, 2.4)
    if sideways:
        # Nine tenths of the blank's length is set, less the slit; each turn half as wide.
        held = 0.9 * length - 0.9
        wound = winding.wound_on_stress(plug, BORE, thickness, 0.5 * h, held, E, 0.26).spread_out
    asked = task(turns=2, width=width)
    found = section.once_share(asked, thickness, sideways)
    assert found == pytest.approx(max(through, wound) / (0.75 * STRENGTH), rel=1e-9)


def wound_round(asked, curvature, thickness, h):
    plug = winding.plug_stress_round(curvature, BORE, thickness, E)
    held = 0.9 * (h + 2.0 * asked.slit + 2.0 * asked.facing) - asked.slit
    return winding.wound_on_stress(plug, BORE, thickness, 0.5 * h, held, E, 0.26).spread_out


def test_a_round_set_ring_is_wound_on_against_its_own_curvature():
    """p0 = E a1^3 kappa0/(3 (d1 - a1) d1), the mean over 0.950: kappa0 from that."""
    # So narrow, and slit so fine, that winding on is worse than turning through.
    asked = task(turns=2, setting=heat_set.BOUND, uniform=False, width=2.2, slit=0.3, facing=0.1)
    a = 4.4
    curvature = 3.0 * (0.047 / heat_set.mean_share(2)) * (BORE - a) * BORE / (E * a**3)
    wound = wound_round(asked, curvature, a, 2.2)
    through = winding.turning_through(
        2.2 + 0.6 + 0.2, 0.5 * (BORE - a), a + 0.35, 1.25 + 0.1, E, 0.26, True
    ).equivalent
    assert wound > through
    assert section.once_share(asked, a) == pytest.approx(wound / (0.75 * STRENGTH), rel=1e-9)


def plain_laws(monkeypatch, lowest, highest, unbent=1.0):
    """Stresses that are met exactly: in the bore at `lowest`, on its way on at `highest` [mm].

    unbent: how much further the balance goes, which leaves out what bends it sideways.
    """
    x = BORE / lowest

    def closed(asked, thickness):
        ratio = asked.bore / thickness
        return asked.pressure / 0.047 * ratio * (ratio - 2.0) / (x * (x - 2.0))

    def once(asked, thickness, sideways=True):
        return (thickness / (highest if sideways else unbent * highest)) ** 1.5

    monkeypatch.setattr(section, "closed_share", closed)
    monkeypatch.setattr(section, "once_share", once)
    return closed, once


@pytest.mark.parametrize("highest", [2.51, 2.7, 2.9, 3.1, 3.3, 3.7, 4.1, 5.3, 6.1])
def test_a_window_from_what_lasts_to_what_may_be_fitted(monkeypatch, highest):
    closed, once = plain_laws(monkeypatch, 2.5, highest)
    found = section.window(task())
    assert found.lowest == pytest.approx(2.5, rel=1e-9)
    assert found.highest == pytest.approx(highest, rel=1e-9)
    assert 2.5 < found.best < highest
    assert closed(task(), found.best) == pytest.approx(once(task(), found.best), rel=1e-3)


@pytest.mark.parametrize(
    ("lowest", "highest", "window"),
    [
        # What lasts breaks on its way on.
        (2.5, 2.49, (None, None)),
        # Thicker than a twelfth of the bore, 6.667 mm, and no thinner than a fiftieth, 1.6 mm.
        (6.66, 20.0, (6.66, 80.0 / 12.0)),
        (6.67, 20.0, (None, None)),
        (1.2, 1.605, (1.6, 1.605)),
        (1.2, 1.595, (None, None)),
        (1.2, 1.4, (None, None)),
        (1.2, 20.0, (1.6, 80.0 / 12.0)),
    ],
)
def test_where_no_thickness_serves(monkeypatch, lowest, highest, window):
    plain_laws(monkeypatch, lowest, highest)
    found = section.window(task())
    for got, expected in zip((found.lowest, found.highest), window, strict=True):
        assert got == (expected and pytest.approx(expected, rel=1e-9))
    assert 1.6 <= found.best <= 80.0 / 12.0


def test_the_best_may_be_fitted_too(monkeypatch):
    """Equally safe without what bends it sideways would be 2.63 mm, more than may be fitted."""
    plain_laws(monkeypatch, 2.5, 2.55, unbent=1.1)
    found = section.window(task())
    assert found.best == found.highest == pytest.approx(2.55, rel=1e-9)
    # Where nothing serves it is left as it is, to be shown.
    plain_laws(monkeypatch, 2.5, 2.4, unbent=1.1)
    found = section.window(task())
    assert found.highest is None
    assert 2.5 < found.best < 2.6


def test_the_most_that_a_metal_bears(monkeypatch):
    """Fitted up to 2.7 mm; there it lasts at the pressure that makes its share one."""
    plain_laws(monkeypatch, 3.1, 2.7)
    worn, fits = BORE / 3.1, BORE / 2.7
    expected = 0.047 * worn * (worn - 2.0) / (fits * (fits - 2.0))
    assert section.bearable_pressure(task()) == pytest.approx(expected, rel=1e-9)


def test_only_the_pressure_is_another():
    before = task()
    after = section.at_pressure(before, 0.061)
    assert after == Task(**{**{n: getattr(before, n) for n in Task._fields}, "pressure": 0.061})


@pytest.mark.parametrize("strength", [150.0, 240.0])
@pytest.mark.parametrize("turns", [1, 2])
def test_a_real_window_ends_where_the_shares_are_one(strength, turns):
    asked = task(strength=strength, turns=turns, width=None, width_ratio=1.9)
    found = section.window(asked)
    most = section.bearable_pressure(asked)
    # At what it bears at most the window shuts, and a thousandth more leaves none.
    narrow = section.window(section.at_pressure(asked, 0.99 * most))
    assert narrow.lowest == pytest.approx(narrow.highest, rel=0.02)
    assert section.window(section.at_pressure(asked, 1.01 * most)).lowest is None
    if found.lowest is not None:
        assert section.closed_share(asked, found.lowest) == pytest.approx(1.0, rel=1e-9)
        if found.highest < BORE / 12.0:
            assert section.once_share(asked, found.highest) == pytest.approx(1.0, rel=2e-3)


@pytest.mark.parametrize(
    ("share", "for_years", "once"),
    [
        (0.45, "good", "good"),
        (0.453, "watch", "good"),
        (0.648, "watch", "good"),
        (0.652, "stop", "good"),
        (0.75, "stop", "good"),
        (0.755, "stop", "watch"),
        (0.948, "stop", "watch"),
        (0.952, "stop", "stop"),
    ],
)
def test_a_metal_carries_less_for_years_than_once_on_the_bench(share, for_years, once):
    """Of its strength in bending 45 % in the bore is let be and 65 % stops; on the bench 75 % and
    95 %: common practice, no source."""
    duty = SimpleNamespace(
        ring_material=SimpleNamespace(bending_strength=STRENGTH, family="iron"),
        setting=heat_set.SPREAD,
        turns=1,
    )
    stress = share * STRENGTH
    acts = SimpleNamespace(closed_tension=stress, forming=stress, sprung_on=stress)
    rows = []
    ring_findings._stresses(rows, SimpleNamespace(duty=duty), acts)
    assert {row.check: row.outcome for row in rows} == {
        "closed-stress": for_years,
        "forming": once,
        "sprung-on": once,
    }
