"""Units in and out, against the published definitions.

NIST SP 811 (2008), appendix B, gives these factors as exact or to the digits shown: inch, foot,
pound, pound-force, psi, atmosphere, horsepower (550 ft lbf/s), Btu(IT)/lb, degrees Fahrenheit.
"""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ringwright import units
from ringwright.core.fields import UNIT_OF_KIND

POUND = Fraction("0.45359237")  # kg, exact
GRAVITY = Fraction("9.80665")  # m/s2, exact
INCH = Fraction("25.4")  # mm, exact
PSI = POUND * GRAVITY / INCH**2  # N/mm2, exact by the three above


@pytest.mark.parametrize(
    ("kind", "text", "expected"),
    [
        ("length", "80 mm", 80.0),
        ("length", "80mm", 80.0),
        ("length", " 80 mm ", 80.0),
        ("length", "8 cm", 80.0),
        ("length", "0.08 m", 80.0),
        ("length", "250 um", 0.25),
        ("length", "250 \u00b5m", 0.25),
        ("length", "250 \u03bcm", 0.25),
        ("length", "3.125 in", 79.375),
        ("length", "3 1/8 in", 79.375),
        ("length", "3-1/8 inch", 79.375),
        ("length", '3 1/8"', 79.375),
        ("length", "5/64 inches", 1.984375),
        ("length", "4 thou", 0.1016),
        ("length", "4 mil", 0.1016),
        ("length", "1 ft", 304.8),
        ("length", ".5 mm", 0.5),
        ("length", "5. mm", 5.0),
        ("length", "+5 mm", 5.0),
        ("length", "-1/2 in", -12.7),
        ("length", "1e-3 in", 0.0254),
        ("length", "1.5E2 mm", 150.0),
        ("area", "1 in2", 645.16),
        ("area", "2 sq in", 1290.32),
        ("pressure", "1 bar", 0.1),
        ("pressure", "7 N/mm2", 7.0),
        ("pressure", "100 kPa", 0.1),
        ("pressure", "1 psi", float(PSI)),
        ("pressure", "1000 lbf/in2", float(1000 * PSI)),
        ("steam_pressure", "1 psi gauge", float(PSI)),
        ("steam_pressure", "1 psig", float(PSI)),
        ("steam_pressure", "14.695948775513 psi abs", 0.0),  # SP 811: 1 atm
        ("steam_pressure", "1.01325 bar abs", 0.0),
        ("steam_pressure", "0 psia", -0.101325),
        ("steam_pressure", "2 bara", 0.2 - 0.101325),
        ("modulus", "110 GPa", 110000.0),
        ("modulus", "110 kN/mm2", 110000.0),
        ("modulus", "16 Mpsi", float(16 * 10**6 * PSI)),
        ("modulus", "16000 ksi", float(16 * 10**6 * PSI)),
        ("force", "1 lbf", float(POUND * GRAVITY)),
        ("force", "1 kgf", 9.80665),
        ("force", "1 kg", 9.80665),
        ("force", "850 g", 8.3356525),
        ("force", "16 oz", float(POUND * GRAVITY)),
        ("temperature", "212 degF", 100.0),
        ("temperature", "32 F", 0.0),
        ("temperature", "-40 \u00b0F", -40.0),
        ("temperature", "373.15 K", 100.0),
        ("temperature", "180 \u00b0C", 180.0),
        ("angle", "45 deg", 45.0),
        ("angle", "45\u00b0", 45.0),
        ("angle", "1 rad", 57.29577951308232),
        ("mass", "1 lb", 0.45359237),
        ("mass", "16 oz", 0.45359237),
        ("density", "7.25 g/cm3", 7250.0),
        ("density", "1 lb/in3", float(POUND / (INCH / 1000) ** 3)),
        ("density", "1 lb/ft3", float(POUND / Fraction("0.3048") ** 3)),
        ("expansion", "11.7 um/m/K", 11.7e-6),
        ("expansion", "11.7 ppm/K", 11.7e-6),
        ("expansion", "6.5e-6 1/degF", 11.7e-6),
        ("speed", "250 rpm", 250.0),
        ("speed", "250 1/min", 250.0),
        ("speed", "4 rev/s", 240.0),
        ("surface_speed", "1 m/s", 60.0),
        ("surface_speed", "100 ft/min", 30.48),
        ("duration", "90 min", 1.5),
        ("duration", "2 days", 48.0),
        ("power", "1 hp", float(550 * Fraction("0.3048") * POUND * GRAVITY)),
        ("price", "2 money/lb", float(2 / POUND)),
        ("money", "12.5 money", 12.5),
        ("ratio", "42 %", 0.42),
    ],
)
def test_text_is_read_as_the_standards_define_its_unit(kind, text, expected):
    assert units.read(kind, text) == pytest.approx(expected, rel=1e-15, abs=1e-13)


@pytest.mark.parametrize(
    ("kind", "text", "code"),
    [
        ("length", "3 1/8", "unit-missing"),
        ("length", "", "measure"),
        ("length", "mm", "measure"),
        ("length", "80 mmm", "unit-unknown"),
        ("length", "80 Mm", "unit-capitals"),
        ("length", "80 mm^9^9^9", "unit-unknown"),
        ("length", "mm^9^9^9", "measure"),
        ("length", "1,000 mm", "decimal-comma"),
        ("length", "\u0663 mm", "measure"),
        ("length", "8\u0660 mm", "unit-unknown"),
        ("length", "3 1/0 in", "measure-two"),
        ("length", "80 kg", "unit-unknown"),
        ("length", "9" * 60 + " mm", "measure-long"),
        ("length", "1e999 mm", "number-range"),
        ("length", "80 mm\n", "unit-unknown"),
        ("pressure", "20 psi abs", "unit-unknown"),
        ("temperature", "80 mm", "unit-unknown"),
        ("ratio", "42 percent", "unit-unknown"),
    ],
)
def test_other_text_is_refused_with_a_remedy(kind, text, code):
    with pytest.raises(units.UnitProblem) as caught:
        units.read(kind, text)
    assert caught.value.code == code
    assert caught.value.remedy


def test_every_kind_of_measure_has_its_core_unit_at_factor_one():
    for kind, table in units.SCALES.items():
        unit = units.core_unit(kind)
        if unit in table:
            assert table[unit] == (unit, 1, 1, 0)
        else:
            assert unit == "1"
    assert set(UNIT_OF_KIND) | {units.STEAM_PRESSURE, "count"} == set(units.SCALES)


@given(
    st.sampled_from(sorted(k for k, table in units.SCALES.items() if table)),
    st.data(),
)
def test_what_the_pattern_takes_can_be_read(kind, data):
    text = data.draw(st.from_regex(units.pattern(kind).replace("$", r"\Z"), fullmatch=True))
    try:
        assert isinstance(units.read(kind, text), float)
    except units.UnitProblem as problem:
        # What a pattern cannot say: how long a text may be, and that a fraction names its unit.
        assert problem.code in ("measure-long", "unit-missing")


@given(
    st.sampled_from(sorted(k for k, table in units.SCALES.items() if table)),
    st.text(max_size=60),
)
def test_any_text_is_read_or_refused(kind, text):
    try:
        assert isinstance(units.read(kind, text), float)
    except units.UnitProblem as problem:
        assert problem.message
        assert problem.remedy


@given(st.integers(0, 999), st.integers(1, 127), st.sampled_from([2, 4, 8, 16, 32, 64, 128]))
def test_fractions_of_an_inch_are_exact(whole, over, under):
    exact = (whole + Fraction(over, under)) * INCH
    assert units.read("length", "%d %d/%d in" % (whole, over, under)) == float(exact)


@given(st.decimals(min_value=0, max_value=99999, places=4))
def test_decimals_are_rounded_once(number):
    assert units.read("length", "%s in" % number) == float(Fraction(number) * INCH)


@pytest.mark.parametrize(
    ("unit", "value", "shown_unit", "expected", "digits"),
    [
        ("mm", 25.4, "in", 1.0, 1e-15),
        ("MPa", 1.0, "psi", 145.0377377302092, 1e-15),  # 1 / 6894.757293168361 Pa
        ("N", 4.4482216152605, "lbf", 1.0, 1e-15),
        ("degC", 100.0, "degF", 212.0, 1e-15),
        ("degC", -40.0, "degF", -40.0, 1e-15),
        ("kg", 0.45359237, "lb", 1.0, 1e-15),
        ("m/min", 30.48, "ft/min", 100.0, 1e-15),
        ("W", 745.6999, "hp", 1.0, 1e-7),  # SP 811, to its printed digits
        ("kg/m3", 27679.90, "lb/in3", 1.0, 2e-7),
        ("kJ/kg", 2.326, "Btu/lb", 1.0, 1e-15),
        ("m3/kg", 0.06242796, "ft3/lb", 1.0, 1e-7),
        ("1/K", 1.8, "1/degF", 1.0, 1e-15),
        ("money/kg", 1 / 0.45359237, "money/lb", 1.0, 1e-15),
    ],
)
def test_inch_answers_use_the_published_factors(unit, value, shown_unit, expected, digits):
    scale = units.SHOWN_IN_INCHES[unit]
    assert scale.unit == shown_unit
    shown = value * scale.numerator / scale.denominator + scale.offset
    assert shown == pytest.approx(expected, rel=digits)


def test_a_fraction_comes_back_as_it_went_in():
    scale = units.SHOWN_IN_INCHES["mm"]
    for sixty_fourths in range(1, 64 * 20):
        inch = sixty_fourths / 64
        core = units.read("length", "%d/64 in" % sixty_fourths)
        assert core * scale.numerator / scale.denominator + scale.offset == inch
