"""What is sawn, left to turn and soaked out of a ring, by hand figures and at its limits."""

import math
from types import SimpleNamespace as Record

import pytest

from ringwright.core.catalogue.inputs import Chooser
from ringwright.core.catalogue.inputs_blank import BLANK
from ringwright.core.catalogue.inputs_ring import RING
from ringwright.core.problems import InputProblem
from ringwright.core.ring import allowances


def allowed(end_cut="square", turns=2, finishing="forced-round", setting="bound", **values):
    duty = Record(
        bore=80.0,
        closed_gap=0.35,
        end_cut=end_cut,
        turns=turns,
        finishing=finishing,
        setting=setting,
    )
    return allowances.allowances_of(Chooser(values, RING, BLANK), duty)


@pytest.mark.parametrize(
    ("end_cut", "longer"),
    [
        # One over the sine of 45 and of 60 degrees.
        ("angled-45", math.sqrt(2.0)),
        ("angled-60", 2.0 / math.sqrt(3.0)),
        ("square", 1.0),
        ("stepped", 1.0),
    ],
)
def test_an_angled_saw_takes_more_out_along_the_ring(end_cut, longer):
    found = allowed(end_cut, end_kerf=0.9)
    assert found.kerf == 0.9
    assert found.gap_kerf == pytest.approx(0.9 * longer, rel=1e-12)


def test_only_a_double_turn_ring_is_slit():
    assert allowed(turns=1, slit_width=0.7).slit == 0.0
    assert allowed(turns=2, slit_width=0.7).slit == 0.7


@pytest.mark.parametrize(
    ("finishing", "setting", "left", "inside"),
    [
        # 0.5 mm and 1.2 % of an 80 mm bore is 1.46, half of it inside: to a tenth of a millimetre.
        ("band", "bound", 1.5, 0.75),
        ("band", "sprung", 1.5, 0.75),
        # 0.5 mm and 0.4 % is 0.82, all of it outside: spread by a spacer it wants no band.
        ("band", "spread", 0.8, 0.0),
        ("forced-round", "bound", 0.8, 0.0),
        ("forced-round", "spread", 0.8, 0.0),
    ],
)
def test_a_banded_ring_is_turned_inside_as_well(finishing, setting, left, inside):
    found = allowed(finishing=finishing, setting=setting)
    assert found.finishing == left
    assert found.inside == pytest.approx(inside, abs=1e-12)


def test_clamping_has_to_close_something():
    with pytest.raises(InputProblem) as caught:
        allowed(end_kerf=0.9, clamped_gap=0.9)
    (fault,) = caught.value.faults
    assert (fault.path, fault.value, fault.highest) == (("clamped_gap",), 0.9, 0.9)
    found = allowed(end_kerf=0.9, clamped_gap=0.8999, facing_allowance=0.3)
    assert (found.clamped_gap, found.facing) == (0.8999, 0.3)
    # Turned to the bore where nothing is given: the gap that it has there.
    assert allowed().clamped_gap == 0.35


def soaked(family="iron", **values):
    take = Chooser(values, RING, BLANK)
    return allowances.soak_of(take, family), take


def test_a_soak_that_relaxes_less_than_a_tenth_is_refused():
    """Between 8 % at 350 C and 18 % at 400 C, an hour of each (the table's own, from memory)."""
    # 360.2 C: 0.08 + 0.10 * 10.2/50 = 0.1004.
    found, take = soaked(soak_temperature=360.2, soak_time=1.0)
    assert found.relief.likely == pytest.approx(0.1004, abs=1e-9)
    assert (found.temperature, found.hours) == (360.2, 1.0)
    (noted,) = take.chosen
    assert (noted.input, noted.value) == ("relief", found.relief.likely)
    with pytest.raises(InputProblem, match="relaxes next to nothing") as caught:
        soaked(soak_temperature=359.8, soak_time=1.0)
    assert "soak at 550 degC" in caught.value.faults[0].remedy


def test_a_tenth_itself_will_do(monkeypatch):
    expected = allowances.soaking.Relief(0.05, 0.1, 0.15)
    monkeypatch.setattr(allowances.soaking, "expected_relief", lambda *asked: expected)
    assert soaked()[0].relief == expected


def test_the_relief_of_the_last_ring_beats_the_table():
    found, take = soaked(relief=0.62, soak_temperature=300.0)
    assert found.relief == (0.62, 0.62, 0.62)
    assert [row.input for row in take.chosen] == ["soak_time"]


def test_what_heat_does_not_set_is_taken_as_it_is_turned():
    assert soaked("plastic")[0].relief == (1.0, 1.0, 1.0)
