"""A figure is what its formula gives with the numbers that are shown put in, and with no others.

The formulas are written out here as /v1/methods prints them; the torsion constant is Saint-Venant's
series (Timoshenko and Goodier), summed term by term.
"""

import math

import pytest

from ringwright.core import calculations

DOUBLE = {"bore": 79.375, "ring_width": 5.0, "steam_pressure": 0.83}
JOBS = {
    "double bound": DOUBLE,
    "double forced round": {**DOUBLE, "finishing": "forced-round", "setting": "bound"},
    "double sprung": {**DOUBLE, "setting": "sprung", "bore": 214.0, "ring_width": 11.0},
    "double band": {**DOUBLE, "finishing": "band"},
    "double bronze": {**DOUBLE, "ring_material": "phosphor-bronze", "radial_thickness": 2.9},
    "double spread": {"bore": 150.0, "setting": "spread", "ring_width": 9.0},
    "plain spread": {"bore": 151.3, "ring_type": "plain"},
    "plain bound": {"bore": 61.7, "ring_type": "plain", "setting": "bound"},
}


def torsion(longer, shorter):
    b, t = max(longer, shorter), min(longer, shorter)
    terms = (math.tanh(n * math.pi * b / (2 * t)) / n**5 for n in range(1, 60, 2))
    return b * t**3 * (1 / 3 - 64 / math.pi**5 * t / b * sum(terms))


def shear(torque, longer, shorter):
    """At the middle of a longer side, and of a shorter."""
    b, t = max(longer, shorter), min(longer, shorter)
    twist = torque / torsion(b, t) * t
    odd = range(1, 400, 2)
    middle = sum(1 / (n * n * math.cosh(min(n * math.pi * b / (2 * t), 300.0))) for n in odd)
    signed = range(1, 40001, 2)
    edge = sum((-1) ** ((n - 1) // 2) * math.tanh(n * math.pi * b / (2 * t)) / n**2 for n in signed)
    return twist * (1 - 8 / math.pi**2 * middle), twist * 8 / math.pi**2 * edge


def passing(moved, r, a, b, e, nu):
    """P of turning through."""
    inertia = a * b**3 / 12
    q = 2 * (1 + nu) * inertia / torsion(a, b)
    whole = 2 * (1 + 3 * q) ** 2 - (q - 1) ** 2
    return moved * e * inertia / (math.pi * r**3) * (3 + 5 * q) / whole


def wound(g):
    """Crossing spread over a third of a turn, the first end at the piston's edge."""
    a, h, r = g["a1"], g["h"], g["r"]
    held = max(g.get("eta", 0) * g.get("L", 0) - g.get("k", 0), 0)
    inertia = a * h**3 / 12
    q = 2 * (1 + g["nu"]) * inertia / torsion(a, h)
    lift = 0.95 * h + 0.9 * held
    force = lift * g["E"] * inertia / (math.pi * r**3 * (1 + 3 * q))
    plane = g["sigma_p"] * (1.037 + 2.21 * math.exp(-120 / 16.5))
    sideways = 6 * force * r / (a * h * h)
    long_side, short_side = shear(1.76 * force * r, a, h)
    twist = short_side if a > h else long_side
    return max(plane + sideways, plane / 2 + math.sqrt(plane**2 / 4 + twist**2))


def even(g):
    """S."""
    return 2 * g["E"] * g["a1"] ** 2 / (g["d1"] ** 2 - g["a1"] ** 2)


def on_plug(g):
    ratio = g["d1"] / g["a1"]
    u = 1.5 * g["p"] * ratio * (ratio - 1) / even(g)
    share = 1.1866 - 0.91 * u - 0.38 * u * u if u < 0.5 else 4 / math.pi * (1 - u)
    return max(share, 0) * even(g) * (1 + 1 / (ratio - 1))


def on_plug_round(g):
    left = even(g) - g["E"] * g["a1"] * g["kappa0"] / 2
    return max(1.1866 * left * (1 + 1 / (g["d1"] / g["a1"] - 1)), 0)


def pulled_apart(g):
    d1, a1 = g["d1"], g["a1"]
    book = 4 * g["E"] * a1 * (g["g"] - g["m"]) / (3 * math.pi * (d1 - a1) ** 2)
    return book * (1 + 5 / (6 * (d1 / a1 - 1))) / (1 + 0.30 * (g["g"] + g["m"] / 2) / d1)


# method -> figure -> what its formula gives.
FORMULAS = {
    "grip-force": {
        "grip_force": lambda g: passing(
            max(g["eta"] * g["L"] - g["k"], 0), g["r"], g["a1"], g["h"], g["E"], g["nu"]
        )
    },
    "turning-through": {
        "turning_through_force": lambda g: passing(
            g["L"], g["r_b"], g["a"], g["b"], g["E"], g["nu"]
        )
    },
    "wound-on-stress": {"wound_on_stress": wound},
    "plug-stress": {"sprung_on_stress": on_plug},
    "round-set-plug": {"sprung_on_stress": on_plug_round},
    "opening-stress": {"sprung_on_stress": pulled_apart},
    "closed-stress": {
        "closed_stress": lambda g: 3 * g["p"] * g["d1"] / g["a1"] * (g["d1"] / g["a1"] - 2),
        "closed_stress_nominal": lambda g: 3 * g["p"] * g["d1"] / g["a1"] * (g["d1"] / g["a1"] - 1),
        "closed_compression": lambda g: 3 * g["p"] * (g["d1"] / g["a1"]) ** 2,
    },
    "round-set-pressure": {
        "contact_pressure": lambda g: g["E"] * g["a1"] ** 3 * g["kappa0"] / (12 * g["r"] * g["r_o"])
    },
    "tangential-force": {"tangential_force": lambda g: g["p_c"] * g["h1"] * g["d1"] / 2},
    "geometry": {"inside_diameter": lambda g: g["d1"] - 2 * g["a1"]},
    "former-size": {"former_ratio": lambda g: g["Df"] / (g["d1"] - 2 * g["a1"])},
}


def worked(request):
    """(figure, method, value, symbol -> number shown) of all that stand in FORMULAS."""
    for name, one in calculations.run("sizing", request)["figures"].items():
        if name in FORMULAS.get(one["method"], ()):
            shown = {row["symbol"]: row["value"] for row in one["working"]}
            yield name, one["method"], one["value"], shown


@pytest.mark.parametrize("request_", JOBS.values(), ids=JOBS)
def test_the_formula_with_the_numbers_shown_gives_the_figure(request_):
    """The grip listed the blank's sizes, and a ring set round the pressure of another ring."""
    for name, method, value, shown in worked(request_):
        found = FORMULAS[method][name](shown)
        assert found == pytest.approx(value, rel=1e-6), (name, method, shown)


def test_every_formula_here_is_used_by_some_job():
    used = {(method, name) for job in JOBS.values() for name, method, *_ in worked(job)}
    assert used == {(method, name) for method, names in FORMULAS.items() for name in names}


def test_a_plain_ring_shows_no_slit_and_no_heat_of_two_turns():
    for job in ("plain spread", "plain bound"):
        shown = {name: put for name, _, _, put in worked(JOBS[job])}
        assert shown["wound_on_stress"].keys() == {"sigma_p", "r", "a1", "h", "E", "nu"}
