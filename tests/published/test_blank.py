"""The blank against printed rules: turned size, and the twist of a rectangular bar."""

import math

import pytest

from ringwright.core.ring import blank


@pytest.mark.parametrize(("bore", "cut"), [(20.0, 1.0), (16.0, 0.5), (3.125, 0.125)])
def test_turned_size_is_the_bore_and_the_cut_over_pi(bore, cut):
    """American Engineer, vol. 86 no. 12: turn to the bore and the piece cut out, over 3.1416."""
    found = blank.diameters(
        bore=bore, thickness=bore / 30, closed_gap=0, clamped_gap=0, kerf=cut, finishing_allowance=0
    )
    assert found.rough_outside == pytest.approx(bore + cut / 3.1416, abs=1e-5)


# Greatest shear of a rectangular bar in torsion, T/(alpha*long*short^2); Timoshenko, Strength of
# Materials, table of torsion constants, as open programmes quote it: long/short and alpha.
ALPHA = ((1.0, 0.208), (1.5, 0.231), (2.0, 0.246), (3.0, 0.267), (4.0, 0.282), (10.0, 0.312))


def greatest_shear_share(long, short):
    """alpha by Saint-Venant's series."""
    ratio = long / short
    terms = sum(1 / (n * n * math.cosh(n * math.pi * ratio / 2)) for n in range(1, 40, 2))
    peak = 1 - 8 / math.pi**2 * terms
    twist = (
        1
        / 3
        * (
            1
            - 192
            / math.pi**5
            / ratio
            * sum(math.tanh(n * math.pi * ratio / 2) / n**5 for n in range(1, 40, 2))
        )
    )
    return twist / peak


@pytest.mark.parametrize(("ratio", "alpha"), ALPHA)
def test_the_series_gives_the_printed_constants(ratio, alpha):
    assert greatest_shear_share(ratio, 1.0) == pytest.approx(alpha, abs=6e-4)


@pytest.mark.parametrize("thickness", [0.3, 0.5, 0.8, 1.0, 1.2, 1.5])
def test_the_stoutest_bridge_twists_no_harder_than_a_turn_bends(thickness):
    """Equivalent stress of the twisted bridge section against the bending stress of one band."""
    band = 1.0
    bridge = blank.shortest_bridge(band=band, angle=90.0)
    long, short = max(bridge, thickness), min(bridge, thickness)
    shear = 1 / (greatest_shear_share(long, short) * long * short**2)
    bending = 6 / (band * thickness**2)
    assert math.sqrt(3) * shear <= bending
