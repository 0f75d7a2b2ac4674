"""Rings and sideways turns against finite elements by two general libraries, small deflection.

PyNiteFEA: frames of straight members. scikit-fem: a plane-stress solid, and the torsion of a
rectangle as Poisson's equation. The nonlinear solid cases are in test_ring_solids.py.
"""

import math

import numpy as np
import pytest
import skfem
from Pynite import FEModel3D
from skfem.helpers import ddot, dot, grad, sym_grad, trace

from ringwright.core.ring import spring, winding

BORE, THICKNESS, WIDTH, MODULUS, PRESSURE = 100.0, 4.0, 4.0, 1e5, 0.1
RADIUS = 0.5 * (BORE - THICKNESS)
STEPS = 120


def frame(points, modulus, poisson, thickness, width):
    """Members through `points`, in the X-Z plane: thickness lies in that plane, width along Y."""
    model = FEModel3D()
    model.add_material("iron", modulus, modulus / (2.0 * (1.0 + poisson)), poisson, 0.0)
    in_plane, sideways = width * thickness**3 / 12.0, thickness * width**3 / 12.0
    twist = winding.torsion_constant(thickness, width)
    model.add_section("turn", thickness * width, in_plane, sideways, twist)
    for i, (x, z) in enumerate(points):
        model.add_node(str(i), x, 0.0, z)
    for i in range(len(points) - 1):
        model.add_member(str(i), str(i), str(i + 1), "iron", "turn")
    return model


def half_ring():
    """From the back, on the axis of symmetry, to the tip."""
    angles = [math.pi * i / STEPS for i in range(STEPS + 1)]
    points = [(RADIUS * math.sin(a), -RADIUS * math.cos(a)) for a in angles]
    model = frame(points, MODULUS, 0.26, THICKNESS, WIDTH)
    model.def_support("0", True, True, True, True, True, True)
    for i in range(1, STEPS + 1):
        model.def_support(str(i), False, True, False, True, False, True)
    return model, angles


def solved(model):
    model.analyze_linear(check_statics=False)
    return model


def test_gap_of_a_frame_under_even_pressure():
    model, angles = half_ring()
    each = PRESSURE * WIDTH * 0.5 * BORE * math.pi / STEPS
    for i in range(1, STEPS + 1):
        share = 0.5 if i == STEPS else 1.0
        model.add_node_load(str(i), "FX", -share * each * math.sin(angles[i]))
        model.add_node_load(str(i), "FZ", share * each * math.cos(angles[i]))
    gap = -2.0 * solved(model).nodes[str(STEPS)].DX["Combo 1"]
    first_order = spring.first_order_gap_change(PRESSURE, BORE, THICKNESS, MODULUS)
    assert first_order == pytest.approx(9.7716, abs=5e-5)
    # Hoop thrust, and the straight members, take part in the frame alone.
    assert gap == pytest.approx(first_order, rel=1e-3)


def test_force_across_a_frame_that_closes_its_gap_and_that_brings_it_to_the_bore():
    model, _ = half_ring()
    model.add_node_load(str(STEPS // 2), "FX", -1.0)
    nodes = solved(model).nodes
    closed = -2.0 * nodes[str(STEPS)].DX["Combo 1"]
    narrowed = -2.0 * nodes[str(STEPS // 2)].DX["Combo 1"]
    gap = spring.first_order_gap_change(PRESSURE, BORE, THICKNESS, MODULUS)
    across = spring.diametral_force(spring.tangential_force(PRESSURE, BORE, WIDTH))
    assert across.to_close_gap == pytest.approx(gap / closed, rel=2e-3)
    # The free ring's diameter at 90 degrees, less the bore: 2*C*(1 + pi/4), C = m/(3*pi).
    larger = 2.0 * gap / (3.0 * math.pi) * (1.0 + math.pi / 4.0)
    assert across.to_bore_size == pytest.approx(larger / narrowed, rel=2e-3)


def test_ends_of_a_frame_pulled_apart():
    model, _ = half_ring()
    model.add_node_load(str(STEPS), "FX", 1.0)
    model = solved(model)
    opened = 2.0 * model.nodes[str(STEPS)].DX["Combo 1"]
    moment = abs(model.nodes["0"].RxnMY["Combo 1"])
    stress = 6.0 * moment / (WIDTH * THICKNESS**2) / opened
    nominal = spring.nominal_opening_stress(1.0, 0.0, BORE, THICKNESS, MODULUS)
    assert nominal == pytest.approx(stress, rel=2e-3)


def solid_half_ring():
    """(gap, outside stress, inside stress) of the plane-stress half ring under pressure outside."""
    mesh = skfem.MeshQuad.init_tensor(
        np.linspace(0.0, math.pi, 121), np.linspace(-0.5 * THICKNESS, 0.5 * THICKNESS, 5)
    )
    mesh = skfem.MeshQuad2.from_mesh(mesh)
    angle, depth = mesh.doflocs
    radius = RADIUS + depth
    bent = np.vstack([radius * np.sin(angle), -radius * np.cos(angle)])
    mesh = skfem.MeshQuad2(bent, mesh.t)
    basis = skfem.Basis(mesh, skfem.ElementVector(skfem.ElementQuad2()), intorder=6)
    poisson = 0.26
    shear = MODULUS / (2.0 * (1.0 + poisson))
    flat = MODULUS * poisson / (1.0 - poisson**2)

    @skfem.BilinearForm
    def work(u, v, _):
        strain, virtual = sym_grad(u), sym_grad(v)
        return 2.0 * shear * ddot(strain, virtual) + flat * trace(strain) * trace(virtual)

    @skfem.LinearForm
    def push(v, w):
        return -PRESSURE * dot(w.n, v)

    outer = mesh.facets_satisfying(
        lambda x: np.hypot(x[0], x[1]) > RADIUS + 0.49 * THICKNESS, boundaries_only=True
    )
    facets = skfem.FacetBasis(mesh, basis.elem, facets=outer, intorder=6)
    stiffness, load = work.assemble(basis), push.assemble(facets)
    back = basis.get_dofs(lambda x: (np.abs(x[0]) < 1e-9) & (x[1] < 0.0))
    held = np.concatenate([back.all("u^1"), back.all("u^2")[:1]])
    moved = skfem.solve(*skfem.condense(stiffness, load, D=held))
    tip = np.flatnonzero(np.hypot(basis.doflocs[0], basis.doflocs[1] - RADIUS) < 1e-6)
    # Stress across the section at the back, at its quadrature points, carried on to both faces.
    section = mesh.facets_satisfying(
        lambda x: (np.abs(x[0]) < 1e-6) & (x[1] < 0.0), boundaries_only=True
    )
    there = skfem.FacetBasis(mesh, basis.elem, facets=section, intorder=6)
    strain = sym_grad(there.interpolate(moved))
    stress = (2.0 * shear * strain[0, 0] + flat * (strain[0, 0] + strain[1, 1])).ravel()
    depth = -there.global_coordinates()[1].ravel() - RADIUS
    outside, inside = np.polyval(np.polyfit(depth, stress, 5), [0.5 * THICKNESS, -0.5 * THICKNESS])
    return -2.0 * moved[tip[0]], outside, inside


def test_gap_and_stress_of_a_plane_stress_solid():
    gap, outside, inside = solid_half_ring()
    first_order = spring.first_order_gap_change(PRESSURE, BORE, THICKNESS, MODULUS)
    assert gap == pytest.approx(first_order, rel=1e-3)
    stress = spring.closed_stress(PRESSURE, BORE, THICKNESS)
    assert stress.tension == pytest.approx(outside, rel=5e-3)
    assert stress.compression == pytest.approx(-inside, rel=5e-3)
    assert stress.nominal == pytest.approx(180.0)


def turn(width, loaded=0):
    """One turn of a double-turn ring, free end first, its root held; where it is loaded of 180."""
    count = 180
    angles = [2.0 * math.pi * i / count for i in range(count + 1)]
    # Slightly open, so that the ends are two nodes of one place.
    points = [(RADIUS * math.sin(a), -RADIUS * math.cos(a)) for a in angles]
    model = frame(points, MODULUS, 0.26, THICKNESS, width)
    model.def_support(str(count), True, True, True, True, True, True)
    model.add_node_load(str(loaded), "FY", 1.0)
    return solved(model), count


@pytest.mark.parametrize("width", [2.0, 4.0, 6.0])
def test_sideways_stiffness_bending_and_twist_of_one_turn(width):
    model, count = turn(width)
    nodes = model.nodes
    stiffness = 1.0 / nodes["0"].DY["Combo 1"]
    found = winding.axial_stiffness(RADIUS, THICKNESS, width, MODULUS, 0.26)
    assert found == pytest.approx(stiffness, rel=1e-3)
    # Members that meet are at an angle: the mean of both is the moment across the ring.
    before, after = model.members[str(count // 4 - 1)], model.members[str(count // 4)]
    bending = 0.5 * abs(before.moment("Mz", before.L()) + after.moment("Mz", 0.0))
    assert bending == pytest.approx(RADIUS, rel=1e-3)
    opposite = model.members[str(count // 2)].torque(0.0)
    assert abs(opposite) == pytest.approx(2.0 * RADIUS, rel=1e-3)
    # The end moved by 9, opposite the bridge by half of it: two forces do that.
    middle = turn(width, count // 2)[0].nodes[str(count // 2)].DY["Combo 1"]
    across = nodes[str(count // 2)].DY["Combo 1"]
    moves = [[1.0 / stiffness, across], [across, middle]]
    forces = np.linalg.solve(moves, [9.0, 4.5])
    constant = winding.torsion_constant(THICKNESS, width)
    passing = winding.passing_forces(9.0, RADIUS, THICKNESS, width, MODULUS, 0.26, constant)
    assert passing == pytest.approx(forces, rel=1e-3)
    acts = winding.turning_through(9.0, RADIUS, THICKNESS, width, MODULUS, 0.26, True)
    assert acts.force == pytest.approx(forces[0], rel=1e-3)
    assert acts.bending == pytest.approx(
        6.0 * acts.force * bending / (THICKNESS * width**2), rel=2e-3
    )


def ring_sector(radius, shape):
    """(force, shear of the inner face) of a coil of thickness 1 that is pulled along its axis.

    Goehner's stress function, Timoshenko and Goodier's ring sector: div(grad(phi)/r^3) = -2/r^3,
    nil round the edge; shear along the axis grad_r(phi)/r^2, and its sum is the force.
    """
    grid = 0.5 - 0.5 * np.cos(np.linspace(0.0, math.pi, 31))
    mesh = skfem.MeshQuad.init_tensor(radius + grid - 0.5, shape * (grid - 0.5))
    basis = skfem.Basis(mesh, skfem.ElementQuad2())
    stiffness = skfem.BilinearForm(lambda u, v, w: dot(grad(u), grad(v)) / w.x[0] ** 3)
    load = skfem.LinearForm(lambda v, w: 2.0 * v / w.x[0] ** 3).assemble(basis)
    phi = skfem.solve(*skfem.condense(stiffness.assemble(basis), load, D=basis.get_dofs()))
    inside = radius - 0.5
    edge = mesh.facets_satisfying(lambda x: x[0] < inside + 1e-9, boundaries_only=True)
    shear = skfem.FacetBasis(mesh, basis.elem, facets=edge).interpolate(phi).grad[0] / inside**2
    force = skfem.Functional(lambda w: grad(w["phi"])[0] / w.x[0] ** 2).assemble(
        basis, phi=basis.interpolate(phi)
    )
    return abs(force), np.abs(shear).max()


@pytest.mark.parametrize("ratio", [20.0, 40.0])
@pytest.mark.parametrize("shape", [0.5, 1.0, 2.0])
def test_shear_of_a_twisted_ring_on_its_inner_face(ratio, shape):
    """Opposite the bridge a turn is twisted as a coil is that is pulled along its axis."""
    radius = 0.5 * ratio
    force, inner = ring_sector(radius, shape)
    acts = winding.turning_through(2.0, radius, 1.0, shape, 1.0, 0.26, True)
    constant = winding.torsion_constant(1.0, shape)
    most = 2.0 * max(winding.passing_forces(2.0, radius, 1.0, shape, 1.0, 0.26, constant))
    if shape >= 1.0:
        assert acts.twist == pytest.approx(most * inner / force, rel=2e-3)
    else:  # the sides are twisted harder than the inner face, and their shear hardly changes
        sides = winding.torsion_stress(most * radius, 1.0, shape)[0]
        assert acts.twist == pytest.approx(sides, rel=1e-9)
        assert sides > most * inner / force


@pytest.mark.parametrize("ratio", [1.0, 1.3, 2.0, 5.0])
def test_torsion_of_a_rectangle_as_poisson_s_equation(ratio):
    """Prandtl's function: -lap(phi) = 2, nil round the edge; J = 2*integral, stress = slope."""
    sides = [0.5 - 0.5 * np.cos(np.linspace(0.0, math.pi, 41)) for _ in range(2)]
    mesh = skfem.MeshQuad.init_tensor(ratio * sides[0], sides[1])
    basis = skfem.Basis(mesh, skfem.ElementQuad2())
    stiffness = skfem.BilinearForm(lambda u, v, _: dot(grad(u), grad(v))).assemble(basis)
    load = skfem.LinearForm(lambda v, _: 2.0 * v).assemble(basis)
    phi = skfem.solve(*skfem.condense(stiffness, load, D=basis.get_dofs()))
    constant = load @ phi
    assert winding.torsion_constant(1.0, ratio) == pytest.approx(constant, rel=1e-5)
    stresses = winding.torsion_stress(1.0, 1.0, ratio)
    for along, stress in ((1, stresses[0]), (0, stresses[1])):
        edge = mesh.facets_satisfying(lambda x, a=along: x[a] < 1e-9, boundaries_only=True)
        slope = grad(skfem.FacetBasis(mesh, basis.elem, facets=edge).interpolate(phi))[along]
        assert stress == pytest.approx(slope.max() / constant, rel=2e-3)
