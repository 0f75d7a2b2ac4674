"""What cannot be worked is refused by the input that asks too much, in words of the trade.

Each was found by requests made up by chance (tests/fuzz/made_up.py) and named no input, or a symbol
of a formula: "thickness = 0.695 is outside less than half the outside".
"""

import pytest

from ringwright.core import calculations
from ringwright.core.problems import InputProblem, NotConverged
from ringwright.core.wall import large_deflection, wall_pressure

REFUSED = [
    # The gap of a free ring is no longer than the ring: half of it is past straight at the back.
    ("ring-without-heat", {"bore": 298.0, "modulus": 250000.0, "free_gap": 700.0}, "free_gap"),
    # A third of the ring is gap, and a band holds it: how it bears does not settle.
    ("ring-without-heat", {"bore": 457.2, "finishing": "band", "free_gap": 461.2079}, "free_gap"),
    # 18 mm are turned off a ring of 10; of 32.7 mm round nearly half is gap.
    ("tooling", {"bore": 10.0, "finishing_allowance": 18.0}, "finishing_allowance"),
    (
        "job",
        {
            "bore": 10.4,
            "closed_gap": 16.2,
            "groove_width": 2.1,
            "relief": 0.73,
            "setting": "sprung",
        },
        "closed_gap",
    ),
    # 50 mm of gap measured in a bore of 73 mm round.
    ("inspection", {"bore": 23.22, "measured_closed_gap": 50.0}, "measured_closed_gap"),
]


@pytest.mark.parametrize(("calculation", "request_", "name"), REFUSED)
def test_what_asks_too_much_is_named(calculation, request_, name):
    with pytest.raises(InputProblem) as refused:
        calculations.run(calculation, request_)
    (fault,) = refused.value.faults
    assert fault.path == (name,)
    assert fault.remedy.startswith("give ")


def test_what_was_designed_and_not_measured_keeps_its_name():
    """The designed gap is at fault, whatever was measured besides."""
    job = {"bore": 23.22, "closed_gap": 50.0, "measured_free_gap": 60.0}
    with pytest.raises(InputProblem) as refused:
        calculations.run("inspection", job)
    assert {fault.path for fault in refused.value.faults} <= {("closed_gap",), ("clamped_gap",)}


NAMES = ("bore_shape", "free_gap", "wall_pressure")


@pytest.mark.parametrize(
    ("given", "name", "remedy"),
    [
        ({"bore_shape": {}, "free_gap": 9.0}, "bore_shape", "look at the sizes of bore_shape"),
        ({"bore_shape": None, "free_gap": 9.0}, "free_gap", "give a smaller free_gap"),
        ({}, "wall_pressure", "give a smaller wall_pressure"),
    ],
)
def test_of_what_does_not_settle_the_likeliest_is_named(given, name, remedy):
    (fault,) = large_deflection.unsettled(given, NAMES).faults
    assert fault.path == (name,)
    assert fault.remedy.startswith(remedy)


@pytest.mark.parametrize("finishing", ["band", "closing-ring"])
def test_a_pressure_on_the_wall_that_does_not_settle_is_refused(monkeypatch, finishing):
    def unsettled(*_):
        raise NotConverged("contact with the wall", 9, "8 passes", "contact")

    monkeypatch.setattr(wall_pressure, "on_wall", unsettled)
    with pytest.raises(InputProblem) as refused:
        calculations.run("wall-pressure", {"bore": 80.0, "free_gap": 8.0, "finishing": finishing})
    assert refused.value.faults[0].path == ("free_gap",)


@pytest.mark.parametrize("calculation", ["running", "ring-pack"])
def test_the_highest_steam_that_may_be_asked_for_is_worked(calculation):
    """10 MPa by the gauge is 10.1 absolute, which the steam's formulas did not take."""
    job = {"bore": 80.0, "stroke": 100.0, "speed": 120.0, "steam_pressure": 10.0}
    assert calculations.run(calculation, job)["figures"]
