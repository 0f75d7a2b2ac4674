"""Numbers as words, for findings and cards: metric first, the inch measure beside it.

One place, from the raw double, with our own half-up rounding: the two Pythons that run this file
print exact ties differently, and the words must be the same in both.
"""

import math

MM_PER_INCH = 25.4
MPA_PER_PSI = 6894.757293168361e-6
N_PER_LBF = 4.4482216152605
KG_PER_LB = 0.45359237


_SCALES = (1, 10, 100, 1000, 10000, 100000, 1000000, 10000000, 100000000, 1000000000)
_HALF = 0.5 + 1e-9
_PARTS = ("", "%d", "%02d", "%03d", "%04d", "%05d", "%06d", "%07d", "%08d", "%09d")


def decimal(value, places):
    """`value` with that many decimals, 0 to 9, ties away from zero, spaces between thousands.

    What misses a tie by no more than the noise of a float is one: 2.675 becomes 2.68.
    """
    scale = _SCALES[places]
    units = int(abs(value) * scale + _HALF)
    whole, part = divmod(units, scale)
    text = str(whole) if whole < 10000 else grouped(whole)
    if places:
        text = text + "." + _PARTS[places] % part
    return "-" + text if value < 0 and units else text


def grouped(whole):
    """A whole number with a space between each three digits from 10 000 on."""
    digits = str(whole)
    if len(digits) < 5:
        return digits
    parts = []
    while len(digits) > 3:
        parts.append(digits[-3:])
        digits = digits[:-3]
    parts.append(digits)
    parts.reverse()
    return " ".join(parts)


def significant(value, figures):
    """`value` to about that many significant figures, never in powers of ten."""
    size = abs(value)
    if size == 0.0:
        return "0"
    places = figures - 1 - int(math.floor(math.log10(size)))
    if places >= 0:
        return decimal(value, min(places, 9))
    step = _SCALES[min(-places, 9)]
    return decimal(math.floor(abs(value) / step + _HALF) * step * (1 if value > 0 else -1), 0)


def length_places(mm):
    """Decimals of a length in millimetres, wherever one is shown; inches take one more.

    Sizes to 0.01 mm or a thou, which is what a lathe is set to. Below 1 mm it is a gap or a
    clearance, and a hundredth would be a fifth of some of them: 0.001 mm or 0.0001 in.
    """
    return 3 if abs(mm) < 1.0 and mm != 0.0 else 2


def said_up(mm):
    """A length rounded up to the digits that `length` says of it [mm]."""
    scale = _SCALES[length_places(mm)]
    return math.ceil(mm * scale) / scale


def said_down(mm):
    """A length rounded down to the digits that `length` says of it [mm]."""
    scale = _SCALES[length_places(mm)]
    return math.floor(mm * scale) / scale


def length(mm):
    """A length: "3.20 mm (0.126 in)", "0.503 mm (0.0198 in)"."""
    places = length_places(mm)
    return decimal(mm, places) + " mm (" + decimal(mm / MM_PER_INCH, places + 1) + " in)"


def fine_length(mm):
    """A clearance or limit, to the micrometre: "0.046 mm (0.0018 in)"."""
    return decimal(mm, 3) + " mm (" + decimal(mm / MM_PER_INCH, 4) + " in)"


def stress(mpa):
    """A stress: "152 N/mm2 (22 000 psi)"."""
    return decimal(mpa, 0) + " N/mm2 (" + significant(mpa / MPA_PER_PSI, 3) + " psi)"


def wall_pressure(mpa):
    """A wall pressure: "0.055 N/mm2 (8.0 psi)"."""
    return decimal(mpa, 3) + " N/mm2 (" + decimal(mpa / MPA_PER_PSI, 1) + " psi)"


def steam_pressure(mpa):
    """A steam pressure: "8.3 bar (120 psi)"."""
    return decimal(mpa * 10.0, 1) + " bar (" + decimal(mpa / MPA_PER_PSI, 0) + " psi)"


def temperature(deg_c):
    """A temperature: "177 C (350 F)"."""
    return decimal(deg_c, 0) + " C (" + decimal(deg_c * 1.8 + 32.0, 0) + " F)"


def force(newton):
    """A force: "18.4 N (4.1 lbf)"."""
    return decimal(newton, 1) + " N (" + decimal(newton / N_PER_LBF, 1) + " lbf)"


def mass(kg):
    """A mass: "2.35 kg (5.2 lb)"."""
    return decimal(kg, 2) + " kg (" + decimal(kg / KG_PER_LB, 1) + " lb)"


def angle(degrees):
    """An angle: "57 degrees"."""
    return decimal(degrees, 0) + " degrees"


def percent_places(share):
    """Decimals of a share of one in per cent, wherever one is shown.

    None from a tenth up, else one, and as many more as keep what is a little off nothing or all
    from reading so: 99.6 is not 100, nor 0.04 nothing.
    """
    size = abs(share) * 100.0
    places = 1 if size < 10.0 and abs(size - int(size + 0.5)) > 1e-9 else 0
    near = min(size, abs(100.0 - share * 100.0))
    while places < 9 and 1e-9 < near * _SCALES[places] < _HALF:
        places += 1
    return places


def percent(share):
    """A share of one as a percentage: "42 %", "5.4 %", "99.6 %"."""
    return decimal(share * 100.0, percent_places(share)) + " %"


def ratio(number):
    """A pure number to three decimals: "1.022"."""
    return decimal(number, 3)


def in_a_sentence(title):
    """A title as it stands within a sentence: no capital at its start, but for letters like PTFE.

    title: text.
    """
    return title if title[1:2].isupper() else title[:1].lower() + title[1:]
