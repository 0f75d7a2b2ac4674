"""The land beside a groove, against a handbook's table of ring plates and against finite elements.

Young and Budynas, Roark's Formulas for Stress and Strain, 7th edition, table 11.2: plate constants
and the rows of cases 2b and 2c as printed (read); case 2l, inner edge fixed and outer edge free,
is put together from constants that give those printed rows.
"""

import math

import numpy as np
import pytest
import skfem
from skfem.helpers import ddot, grad

from ringwright.core.fitting import land
from ringwright.core.problems import OutOfRange

POISSON = 0.3
SHARES = (0.1, 0.3, 0.5, 0.7, 0.9)


def constants(c, nu=POISSON):
    """C1, C3, C7, C8, C9, L11, L17 of table 11.2 for b/a = r0/a = c."""
    log = math.log(1.0 / c)
    return {
        "C1": (1 + nu) / 2 * c * log + (1 - nu) / 4 * (1 / c - c),
        "C3": c / 4 * ((c * c + 1) * log + c * c - 1),
        "C7": 0.5 * (1 - nu * nu) * (1 / c - c),
        "C8": 0.5 * (1 + nu + (1 - nu) * c * c),
        "C9": c * ((1 + nu) / 2 * log + (1 - nu) / 4 * (1 - c * c)),
        "L11": (1 + 4 * c * c - 5 * c**4 - 4 * c * c * (2 + c * c) * log) / 64,
        "L17": 0.25 * (1 - (1 - nu) / 4 * (1 - c**4) - c * c * (1 + (1 + nu) * log)),
    }


@pytest.mark.parametrize(
    "c, guided, pushed",
    [
        (0.1, 0.3003, 1.8870),
        (0.3, 0.2185, 0.6015),
        (0.5, 0.1223, 0.3230),
        (0.7, 0.0456, 0.1684),
    ],
)
def test_the_constants_give_the_printed_rows(c, guided, pushed):
    one = constants(c)
    assert one["L17"] / one["C8"] == pytest.approx(guided, abs=5.1e-5)
    top = one["C1"] * one["L17"] - one["C7"] * one["L11"]
    under = one["C1"] * one["C9"] - one["C3"] * one["C7"]
    assert top / under == pytest.approx(pushed, abs=5.1e-5)


@pytest.mark.parametrize("c", SHARES)
@pytest.mark.parametrize("nu", [0.26, 0.3, 0.34])
def test_moment_at_the_root_is_that_of_the_handbook(c, nu):
    one = constants(c, nu)
    handbook = (one["C9"] * (1 - c * c) / (2 * c) - one["L17"]) / one["C8"]
    ours = land.root_moment(0.7, 50.0, 50.0 * c, nu) / (0.7 * 50.0**2)
    assert ours == pytest.approx(handbook, rel=1e-9)


def solved(b, a, t, *, body=0.0, nu=POISSON, fine=10):
    """Moment at the root of a land, a unit of length round, pressed by 1 N/mm2: axisymmetric solid.

    body: how far the piston reaches on both sides of the land; 0: the land is built in at its root.
    """
    across = np.linspace(b, a, max(8, int(fine * (a - b) / t)) + 1)
    along = np.linspace(0.0, t, fine + 1)
    if body:
        across = np.concatenate([np.linspace(b - body, b, 17)[:-1], across])
        side = np.geomspace(t / fine, body, 12)
        along = np.concatenate([-side[::-1], along, t + side])
    mesh = skfem.MeshQuad.init_tensor(across, along)
    middle = mesh.p[:, mesh.t].mean(axis=1)
    out = (middle[0] > b) & ((middle[1] < 0.0) | (middle[1] > t))
    mesh = skfem.MeshQuad2.from_mesh(mesh.remove_elements(np.nonzero(out)[0]))
    element = skfem.ElementVector(skfem.ElementQuad2())
    lame, shear = nu / ((1 + nu) * (1 - 2 * nu)), 1.0 / (2 * (1 + nu))

    @skfem.BilinearForm
    def stiffness(u, v, w):
        r = w.x[0]
        one, two = grad(u), grad(v)
        strain = 0.5 * (one + np.swapaxes(one, 0, 1))
        other = 0.5 * (two + np.swapaxes(two, 0, 1))
        hoop, against = u[0] / r, v[0] / r
        bulk = (strain[0, 0] + strain[1, 1] + hoop) * (other[0, 0] + other[1, 1] + against)
        return r * (lame * bulk + 2 * shear * (ddot(strain, other) + hoop * against))

    @skfem.LinearForm
    def pressed(v, w):
        return w.x[0] * v[1]

    basis = skfem.Basis(mesh, element, intorder=5)
    face = mesh.facets_satisfying(lambda x: (np.abs(x[1]) < 1e-9) & (x[0] > b))
    load = pressed.assemble(skfem.FacetBasis(mesh, element, facets=face, intorder=5))
    held = basis.get_dofs(lambda x: np.abs(x[0] - (b - body)) < 1e-9)
    moved = skfem.solve(*skfem.condense(stiffness.assemble(basis), load, D=held))
    # Forces with which the root holds the land: what the land's own elements ask of its nodes.
    lands = np.nonzero(mesh.p[:, mesh.t].mean(axis=1)[0] > b)[0]
    own = skfem.Basis(mesh, element, intorder=5, elements=lands)
    push = stiffness.assemble(own) @ moved - load
    place = basis.doflocs
    root = np.abs(place[0] - b) < 1e-9
    radial = np.zeros(basis.N, dtype=bool)
    radial[basis.get_dofs(elements=True).all("u^1")] = True
    pick = root & radial & (place[1] > -1e-9) & (place[1] < t + 1e-9)
    return abs(float((push * (place[1] - 0.5 * t))[pick].sum())) / b


@pytest.mark.parametrize("share", [0.8, 0.9, 0.95])
def test_a_thin_land_built_in_is_that_of_elements(share):
    b, a = 100.0 * share, 100.0
    moment = solved(b, a, 0.08 * (a - b))
    assert land.root_moment(1.0, a, b, POISSON) == pytest.approx(moment, rel=0.01)


@pytest.mark.parametrize("thick", [0.5, 1.0, 1.5])
def test_lands_as_they_are_turned_see_little_else(thick):
    """As wide as they are deep, on a piston that gives: within what the method says of itself."""
    b, a = 36.0, 40.0
    solid = solved(b, a, thick * (a - b), body=12.0)
    assert solid / land.root_moment(1.0, a, b, POISSON) == pytest.approx(1.0, abs=0.02)


@pytest.mark.parametrize("depth", [0.1, 0.5])
def test_a_shallow_land_is_a_bracket(depth):
    # A bracket of that length: q L^2/2 and q L, 1.5 times the mean in the middle.
    bent, shear = land.root_stresses(2.0, 400.0, 400.0 - depth, POISSON, 3.0)
    assert bent == pytest.approx(6.0 * (2.0 * depth**2 / 2.0) / 9.0, rel=0.01)
    assert shear == pytest.approx(1.5 * 2.0 * depth / 3.0, rel=0.01)


@pytest.mark.parametrize("stress", [2.0, 20.0, 60.0])
def test_the_least_land_sees_just_that(stress):
    for inner in (30.0, 36.0, 39.5):
        width = land.least_width(1.2, 40.0, inner, 0.26, stress)
        assert land.telling(*land.root_stresses(1.2, 40.0, inner, 0.26, width)) == pytest.approx(
            stress, rel=1e-9
        )


@pytest.mark.parametrize("inner", [40.0, 40.1, 0.0])
def test_a_land_stands_out_from_what_it_is_built_into(inner):
    with pytest.raises(OutOfRange, match="inner"):
        land.root_moment(0.7, 40.0, inner, POISSON)
    assert land.root_moment(0.7, 40.0, 39.995, POISSON) > 0.0
