"""Volume, enthalpy and viscosity of water and steam, no more than the running engine needs.

IAPWS-IF97 region 1 (the water that a boiler is fed with, or that leaves a condenser) and region 2
(dry and superheated steam); wet steam as a mixture of the two on the saturation line. Viscosity is
the dilute-gas term of the IAPWS 2008 formulation: at the pressures of these engines the rest is
a few per cent, far inside the spread of any leak.
"""

import math
from collections import namedtuple

from ..problems import OutOfRange
from ..records import Method
from . import steam

GAS_CONSTANT = 0.461526  # [kJ/(kg K)], IF97 equation 1
HIGHEST_PRESSURE = 10.2  # [MPa absolute]: 10 by the gauge, and clear of region 3 everywhere
HIGHEST_TEMPERATURE = 600.0  # [degC]
# Steam given this little below saturation is taken as saturated: gauges and thermometers differ.
SATURATION_TOLERANCE = 1.0  # [K]

# absolute pressure [MPa], temperature [degC], volume [m3/kg], enthalpy [kJ/kg], superheat [K],
# dryness [1].
SteamState = namedtuple(
    "SteamState", ("pressure", "temperature", "volume", "enthalpy", "superheat", "dryness")
)

# (I, J, n) of the sums; IF97 tables 2 and 11. (J, n) of the ideal-gas part of region 2; table 10.
# fmt: off
_REGION_1 = (
    (0, -2, 0.14632971213167), (0, -1, -0.84548187169114), (0, 0, -3.756360367204),
    (0, 1, 3.3855169168385), (0, 2, -0.95791963387872), (0, 3, 0.15772038513228),
    (0, 4, -0.016616417199501), (0, 5, 0.00081214629983568), (1, -9, 0.00028319080123804),
    (1, -7, -0.00060706301565874), (1, -1, -0.018990068218419), (1, 0, -0.032529748770505),
    (1, 1, -0.021841717175414), (1, 3, -5.283835796993e-05), (2, -3, -0.00047184321073267),
    (2, 0, -0.00030001780793026), (2, 1, 4.7661393906987e-05), (2, 3, -4.4141845330846e-06),
    (2, 17, -7.2694996297594e-16), (3, -4, -3.1679644845054e-05), (3, 0, -2.8270797985312e-06),
    (3, 6, -8.5205128120103e-10), (4, -5, -2.2425281908e-06), (4, -2, -6.5171222895601e-07),
    (4, 10, -1.4341729937924e-13), (5, -8, -4.0516996860117e-07), (8, -11, -1.2734301741641e-09),
    (8, -6, -1.7424871230634e-10), (21, -29, -6.8762131295531e-19),
    (23, -31, 1.4478307828521e-20), (29, -38, 2.6335781662795e-23),
    (30, -39, -1.1947622640071e-23), (31, -40, 1.8228094581404e-24),
    (32, -41, -9.3537087292458e-26),
)
_REGION_2 = (
    (1, 0, -0.0017731742473213), (1, 1, -0.017834862292358), (1, 2, -0.045996013696365),
    (1, 3, -0.057581259083432), (1, 6, -0.05032527872793), (2, 1, -3.3032641670203e-05),
    (2, 2, -0.00018948987516315), (2, 4, -0.0039392777243355), (2, 7, -0.043797295650573),
    (2, 36, -2.6674547914087e-05), (3, 0, 2.0481737692309e-08), (3, 1, 4.3870667284435e-07),
    (3, 3, -3.227767723857e-05), (3, 6, -0.0015033924542148), (3, 35, -0.040668253562649),
    (4, 1, -7.8847309559367e-10), (4, 2, 1.2790717852285e-08), (4, 3, 4.8225372718507e-07),
    (5, 7, 2.2922076337661e-06), (6, 3, -1.6714766451061e-11), (6, 16, -0.0021171472321355),
    (6, 35, -23.895741934104), (7, 0, -5.905956432427e-18), (7, 11, -1.2621808899101e-06),
    (7, 25, -0.038946842435739), (8, 8, 1.1256211360459e-11), (8, 36, -8.2311340897998),
    (9, 13, 1.9809712802088e-08), (10, 4, 1.0406965210174e-19), (10, 10, -1.0234747095929e-13),
    (10, 14, -1.0018179379511e-09), (16, 29, -8.0882908646985e-11), (16, 50, 0.10693031879409),
    (18, 57, -0.33662250574171), (20, 20, 8.9185845355421e-25), (20, 35, 3.0629316876232e-13),
    (20, 48, -4.2002467698208e-06), (21, 21, -5.9056029685639e-26), (22, 53, 3.7826947613457e-06),
    (23, 39, -1.2768608934681e-15), (24, 26, 7.3087610595061e-29), (24, 40, 5.5414715350778e-17),
    (24, 58, -9.436970724121e-07),
)
_REGION_2_IDEAL = (
    (0, -9.6927686500217), (1, 10.086655968018), (-5, -0.005608791128302),
    (-4, 0.071452738081455), (-3, -0.40710498223928), (-2, 1.4240819171444),
    (-1, -4.383951131945), (2, -0.28408632460772), (3, 0.021268463753307),
)
# fmt: on
_LARGEST_I = 24
_LARGEST_J = 58

# IAPWS 2008 viscosity, table 1, for temperatures over the critical one [uPa s].
_VISCOSITY = (1.67752, 2.20462, 0.6366564, -0.241605)
CRITICAL_TEMPERATURE = 647.096

METHODS = (
    Method(
        "steam-properties",
        "Volume and enthalpy of steam",
        "v = (R T/p) pi (g0_pi + gr_pi), h = R T tau (g0_tau + gr_tau), region 2; "
        "h of water from region 1; wet steam x v_g and h_f + x (h_g - h_f)",
        "to 10.2 MPa absolute and 600 degC",
        ("iapws-if97",),
    ),
    Method(
        "steam-viscosity",
        "Viscosity of steam",
        "mu = 100 sqrt(T/Tc)/(1.67752 + 2.20462 Tc/T + 0.6366564 (Tc/T)^2 - 0.241605 (Tc/T)^3) "
        "uPa s",
        "dilute gas; within 5 % of the full formulation to 2 MPa",
        ("iapws-viscosity",),
    ),
)


def steam_state(absolute_pressure, temperature=None, dryness=1.0):
    """Steam of that pressure as a SteamState: superheated, dry or wet.

    v = R T/p * (1 + pi * sum n I pi^(I-1) (tau - 0.5)^J), pi = p/1 MPa, tau = 540 K/T, and likewise
    h (IF97 equations 15 to 17); wet: v = x v_g, h = h_f + x (h_g - h_f).

    absolute_pressure: p [MPa], 611.213e-6 to 10.2. temperature: of superheated steam [degC], None
    or within 1 K of boiling for saturated steam. dryness: x [1], 0.5 to 1, ignored when
    superheated.
    Raises OutOfRange outside those, and for a temperature more than 1 K below boiling.
    Example: 1 MPa dry, 0.19435 m3/kg and 2777.1 kJ/kg. Source: IAPWS-IF97.
    """
    _check_pressure(absolute_pressure)
    if not 0.5 <= dryness <= 1.0:
        raise OutOfRange("dryness", dryness, "0.5 to 1", "wet steam")
    boiling = saturation_temperature(absolute_pressure)
    superheat = 0.0 if temperature is None else temperature - boiling
    if superheat < -SATURATION_TOLERANCE:
        raise OutOfRange("temperature", temperature, "the boiling point or more", "IAPWS-IF97")
    if temperature is not None and temperature > HIGHEST_TEMPERATURE:
        raise OutOfRange("temperature", temperature, "up to 600 degC", "IAPWS-IF97 region 2")
    if superheat > 0.0:
        volume, enthalpy = _region_2(temperature + steam.KELVIN, absolute_pressure)
        return SteamState(
            pressure=absolute_pressure,
            temperature=temperature,
            volume=volume,
            enthalpy=enthalpy,
            superheat=superheat,
            dryness=1.0,
        )
    volume, enthalpy = _region_2(boiling + steam.KELVIN, absolute_pressure)
    if dryness < 1.0:
        liquid = _region_1_enthalpy(boiling + steam.KELVIN, absolute_pressure)
        volume = dryness * volume
        enthalpy = liquid + dryness * (enthalpy - liquid)
    return SteamState(
        pressure=absolute_pressure,
        temperature=boiling,
        volume=volume,
        enthalpy=enthalpy,
        superheat=0.0,
        dryness=dryness,
    )


def saturation_temperature(absolute_pressure):
    """Boiling point at an absolute pressure [degC].

    absolute_pressure [MPa], 611.213e-6 to 22.064. Raises OutOfRange outside that.
    Source: IAPWS-IF97 region 4.
    """
    return steam.saturation_temperature(absolute_pressure, 0.0)


def water_enthalpy(temperature, absolute_pressure=None):
    """Enthalpy of water [kJ/kg].

    h = R T tau * sum n (7.1 - pi)^I J (tau - 1.222)^(J-1), pi = p/16.53 MPa, tau = 1386 K/T (IF97
    equation 7).

    temperature [degC], 0 to 350. absolute_pressure [MPa], None for water about to boil.
    Raises OutOfRange outside that. Example: 300 K, 3 MPa gives 115.331273 kJ/kg (IF97 table 5).
    """
    kelvin = temperature + steam.KELVIN
    if not 273.15 <= kelvin <= 623.15:
        raise OutOfRange("temperature", temperature, "0 to 350 degC", "IAPWS-IF97 region 1")
    if absolute_pressure is None:
        absolute_pressure = steam.saturation_pressure(temperature, 0.0)
    return _region_1_enthalpy(kelvin, absolute_pressure)


def viscosity(temperature):
    """Viscosity of steam [Pa s], dilute gas.

    mu = 100 sqrt(T/Tc)/sum H_i (Tc/T)^i [uPa s].

    temperature [degC], 0 to 900. Raises OutOfRange outside that.
    Source: IAPWS 2008 viscosity, equation 11; table 1.
    """
    if not 0.0 <= temperature <= 900.0:
        raise OutOfRange("temperature", temperature, "0 to 900 degC", "IAPWS 2008 viscosity")
    inverse = CRITICAL_TEMPERATURE / (temperature + steam.KELVIN)
    h0, h1, h2, h3 = _VISCOSITY
    total = h0 + inverse * (h1 + inverse * (h2 + inverse * h3))
    return 1e-4 / (math.sqrt(inverse) * total)


def _check_pressure(absolute_pressure):
    if not steam.LOWEST_PRESSURE <= absolute_pressure <= HIGHEST_PRESSURE:
        raise OutOfRange(
            "absolute_pressure", absolute_pressure, "611.213 Pa to 10.2 MPa", "IAPWS-IF97 region 2"
        )


def _powers(base, largest):
    row = [1.0]
    for _ in range(largest):
        row.append(row[-1] * base)
    return row


def _region_2(kelvin, pressure):
    """(volume [m3/kg], enthalpy [kJ/kg]) of steam at that temperature [K] and pressure [MPa]."""
    tau = 540.0 / kelvin
    pi_power = _powers(pressure, _LARGEST_I)
    tau_power = _powers(tau - 0.5, _LARGEST_J)
    by_pi = 0.0
    by_tau = 0.0
    for i, j, n in _REGION_2:
        by_pi += n * i * pi_power[i - 1] * tau_power[j]
        if j:
            by_tau += n * j * pi_power[i] * tau_power[j - 1]
    for j, n in _REGION_2_IDEAL:
        by_tau += n * j * tau ** (j - 1)
    heat = GAS_CONSTANT * kelvin
    return heat * (1.0 + pressure * by_pi) / (1000.0 * pressure), heat * tau * by_tau


def _region_1_enthalpy(kelvin, pressure):
    tau = 1386.0 / kelvin
    a = 7.1 - pressure / 16.53
    b = tau - 1.222
    by_tau = 0.0
    for i, j, n in _REGION_1:
        if j:
            by_tau += n * j * a**i * b ** (j - 1)
    return GAS_CONSTANT * kelvin * tau * by_tau
