"""Two rings in bores by CalculiX, made when the test runs: steam behind one, the other in an oval
bore.

Bench: bore 80 mm, d1/a1 about 31, free ring 2.5 % larger, cast iron. See ring_in_bore_elements.py.
Finer meshes move the elements' light by 0.1 micrometres and their force by 0.5 %.
"""

import math

import pytest

from published.ring_in_bore_elements import Case, solve
from ringwright.core.wall import bore_shape, free_shape
from ringwright.core.wall.wall_contact import Ring, bear

STEPS = 720
RINGS = {
    "steam": Case(bore=80.0, thickness=2.6, free=39.6675, modulus=1e5, oval=0.0, steam=0.05),
    "oval": Case(bore=80.0, thickness=2.6, free=39.6675, modulus=1e5, oval=0.04, steam=0.0),
}


@pytest.mark.slow
@pytest.mark.parametrize("name", RINGS)
def test_the_core_bears_as_plane_elements_with_contact_do(name, tmp_path):
    case = RINGS[name]
    found = solve(case, tmp_path)
    radius = 0.5 * (case.bore - case.thickness)
    moment = free_shape.round_arc(1.0 / radius - 1.0 / case.free, radius, STEPS + 1)
    shape = bore_shape.Shape(0.0, (bore_shape.Harmonic(2, case.oval, 0.0),), None)
    angles = [i * 2.0 * math.pi / STEPS for i in range(STEPS + 1)]
    added = bore_shape.wall_moment(shape, angles)
    ring = Ring(case.bore, case.thickness, 1.0, case.modulus, 1, case.steam, 0.0)
    borne = bear(ring, [a + b for a, b in zip(moment, added, strict=True)])
    tips = sum(borne.tip_forces) / borne.total
    print("\n%s" % name, found, borne.total, borne.widest_light, tips)
    assert borne.total == pytest.approx(found.force, rel=0.013)
    assert borne.widest_light == pytest.approx(found.light, abs=0.001)
    assert math.degrees(borne.light_place) == pytest.approx(found.place, abs=1.0)
    assert tips == pytest.approx(found.tips, abs=0.003)
