"""Saturated steam: temperature from gauge pressure and back (IAPWS-IF97, region 4)."""

import math

from ..problems import OutOfRange
from ..records import Method

ATMOSPHERE = 0.101325  # standard atmosphere [MPa]; 101 325 Pa exactly
KELVIN = 273.15
LOWEST_TEMPERATURE = 273.15  # [K], IF97 equation 30 and 31
HIGHEST_TEMPERATURE = 647.096  # [K], critical point
LOWEST_PRESSURE = 611.213e-6  # [MPa absolute]
HIGHEST_PRESSURE = 22.064  # [MPa absolute], critical point

# IF97 table 34: coefficients n1 to n10 of the dimensionless saturation equation.
N1 = 0.11670521452767e4
N2 = -0.72421316703206e6
N3 = -0.17073846940092e2
N4 = 0.12020824702470e5
N5 = -0.32325550322333e7
N6 = 0.14915108613530e2
N7 = -0.48232657361591e4
N8 = 0.40511340542057e6
N9 = -0.23855557567849
N10 = 0.65017534844798e3

METHODS = (
    Method(
        "saturation-temperature",
        "Saturation temperature of steam",
        "b = (p/(1 MPa))^(1/4), p = p_s + 0.101 MPa; "
        "E = b^2 + n3 b + n6; F = n1 b^2 + n4 b + n7; G = n2 b^2 + n5 b + n8; "
        "D = 2G/(-F - sqrt(F^2 - 4EG)); T = (n10 + D - sqrt((n10 + D)^2 - 4(n9 + n10 D)))/2",
        "absolute pressure 611.213 Pa to 22.064 MPa; gauge pressure over a standard atmosphere",
        ("iapws-if97",),
    ),
    Method(
        "saturation-pressure",
        "Saturation pressure of steam",
        "v = T + n9/(T - n10); A = v^2 + n1 v + n2; B = n3 v^2 + n4 v + n5; "
        "C = n6 v^2 + n7 v + n8; p = (2C/(-B + sqrt(B^2 - 4AC)))^4 MPa",
        "273.15 to 647.096 K; gauge pressure over a standard atmosphere",
        ("iapws-if97",),
    ),
)


def saturation_temperature(gauge_pressure, atmosphere=ATMOSPHERE):
    """Temperature at which water boils under that pressure [degC].

    T = (n10 + D - sqrt((n10 + D)^2 - 4(n9 + n10 D)))/2, with D from b = p^(1/4) (IF97 equation 31).

    gauge_pressure: pressure above the atmosphere [MPa]; with `atmosphere` added, 611.213e-6 to
    22.064 MPa absolute. atmosphere: pressure of the air [MPa].
    Raises OutOfRange outside that range.
    Example: 1 MPa absolute gives 453.035632 K, that is 179.885632 degC (IF97 table 36).
    Source: IAPWS-IF97, section 8.2.
    """
    absolute = gauge_pressure + atmosphere
    if not LOWEST_PRESSURE <= absolute <= HIGHEST_PRESSURE:
        raise OutOfRange(
            "gauge_pressure",
            gauge_pressure,
            "611.213 Pa to 22.064 MPa absolute",
            "IAPWS-IF97 region 4",
        )
    root = math.sqrt(absolute)
    beta = math.sqrt(root)
    e = root + N3 * beta + N6
    f = N1 * root + N4 * beta + N7
    g = N2 * root + N5 * beta + N8
    d = 2.0 * g / (-f - math.sqrt(f * f - 4.0 * e * g))
    shifted = N10 + d
    return 0.5 * (shifted - math.sqrt(shifted * shifted - 4.0 * (N9 + N10 * d))) - KELVIN


def saturation_pressure(temperature, atmosphere=ATMOSPHERE):
    """Gauge pressure at which water boils at that temperature [MPa].

    p = (2C/(-B + sqrt(B^2 - 4AC)))^4 (IF97 equation 30).

    temperature: of the boiling water [degC], 0 to 373.946. atmosphere: pressure of the air [MPa].
    Raises OutOfRange outside that range.
    Example: 226.85 degC (500 K) gives 2.63889776 MPa absolute (IF97 table 35).
    Source: IAPWS-IF97, section 8.1.
    """
    kelvin = temperature + KELVIN
    if not LOWEST_TEMPERATURE <= kelvin <= HIGHEST_TEMPERATURE:
        raise OutOfRange("temperature", temperature, "0 to 373.946 degC", "IAPWS-IF97 region 4")
    v = kelvin + N9 / (kelvin - N10)
    v2 = v * v
    a = v2 + N1 * v + N2
    b = N3 * v2 + N4 * v + N5
    c = N6 * v2 + N7 * v + N8
    quarter = 2.0 * c / (-b + math.sqrt(b * b - 4.0 * a * c))
    square = quarter * quarter
    return square * square - atmosphere
