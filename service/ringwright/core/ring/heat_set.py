"""Rings heat-set open on a round former or with a spacer: how they bear, and the former they need.

A ring whose free shape is one round arc of curvature 1/R must be given the curvature
kappa0 = 1/r - 1/R to go into the bore. It then touches over the back with a uniform pressure p0, at
its very tips, and nowhere over SLACK_ANGLE behind each tip; all the ratios below follow from
w'' + w = kappa0*r^2*(sin psi/sin psi0 - 1), w(0) = w(psi0) = w'(psi0) = 0.

`turns` is 1 for a plain ring, 2 for the double-turn ring: one strip of 720 degrees, two free ends.
"""

import math
from collections import namedtuple

from ..catalogue.inputs_ring import BAND, BOUND, FORCED_ROUND, SPREAD, SPRUNG
from ..records import Method

# psi0, the root of sin b - sin(2b)/4 - b/2 = 0 between 1.5 and 2.5 rad.
SLACK_RADIANS = 2.139182173773113
SLACK_ANGLE = math.degrees(SLACK_RADIANS)
_SIN0 = math.sin(SLACK_RADIANS)
_COS0 = math.cos(SLACK_RADIANS)
# Largest of w/(kappa0 r^2), and where it stands behind the tip [deg].
LIGHT_FACTOR = 0.10474779781025534
LIGHT_ANGLE = 32.36661737550137
# Peak of the moment over M0, at 90 degrees behind the tip.
PEAK_MOMENT = 1.0 / _SIN0

# The way a finished ring bears. `uniform`: the same pressure all round, of both turns together;
# else contact over the back and at the tips. `light`: whether the slack lengths also stand off.
Bearing = namedtuple("Bearing", ("uniform", "light"))

# Closed by a flexible band: mean pressure over p0, and how far from round the ring then lies
# (largest less smallest radius) over kappa0*r^2. One turn: 2/3 and max(phi*sin phi)/3 when bound.
# Two turns under one band: no closed form, from a quadratic programme.
_BANDED = {
    (BOUND, 1): (2.0 / 3.0, 0.6066),
    (SPRUNG, 1): (0.68947, 0.5745),
    (BOUND, 2): (0.8782, 0.338),
    (SPRUNG, 2): (0.8936, 0.259),
}
# Force across the ring that closes its gap, over p0*h1*r_o; bound pi/(1 + pi/4), pi/(1 + pi/12).
_ACROSS = {
    (BOUND, 1): 1.75960,
    (SPRUNG, 1): 1.81979,
    (BOUND, 2): 2.48977,
    (SPRUNG, 2): 2.52848,
}


def bearing(setting, finishing):
    """How a ring bears in a round bore, from how it was set and how it was held for turning.

    setting: bound, sprung or spread. finishing: closing-ring, forced-round or band.
    Sprung on its former a ring closes light-tight but for the little that sawing opened it,
    0.017*(kerf - s1), and that goes too if it is turned in a closing ring. A double-turn ring held
    by one band bears uniformly as a whole, its turns in turn bearing all of it or none.
    Source: derived; general law: closed round, the wall pushes back with the very forces that
    deformed the round ring while it was relieved or turned; quadratic programmes agree.
    """
    if setting == SPREAD or finishing == BAND:
        return Bearing(True, False)
    return Bearing(False, setting == BOUND and finishing == FORCED_ROUND)


def mean_share(turns):
    """Mean wall pressure over the contact pressure p0 [1]: 0.900 for one turn, 0.950 for two.

    ((turns*pi - psi0) + (1 - cos psi0)/sin psi0)/(turns*pi). turns: 1 or 2.
    """
    whole = turns * math.pi
    return ((whole - SLACK_RADIANS) + (1.0 - _COS0) / _SIN0) / whole


def sprung_gap_factor(turns):
    """Gap of a ring set sprung on its former over that of one set bound to it [1].

    1/(turns*pi) * integral of M/M0*(1 - cos psi) from the tip, M = M0*sin psi/sin psi0 over the
    slack length and M0 beyond: 1.0342 for one turn, 1.0171 for each gap of a double-turn ring.
    turns: 1 or 2. Source: derived; solid finite elements give 1.0333 for one turn.
    """
    slack = (0.75 - _COS0 + 0.25 * math.cos(2.0 * SLACK_RADIANS)) / _SIN0
    whole = turns * math.pi
    return (slack + (whole - SLACK_RADIANS) + _SIN0) / whole


def contact_pressure(curvature_change, bore, thickness, modulus):
    """p0 = E*a1^3*kappa0/(12*r*r_o), the pressure where a round-set ring touches [MPa].

    curvature_change: kappa0, 0 up [1/mm]. bore, thickness [mm]. modulus [MPa].
    Source: derived; solid finite elements with contact within 0.6 % at d1/a1 = 25.
    """
    cube = thickness * thickness * thickness
    return modulus * cube * curvature_change / (3.0 * (bore - thickness) * bore)


def curvature_for_contact(pressure, bore, thickness, modulus):
    """The kappa0 that gives contact pressure p0 [1/mm]; inverse of contact_pressure.

    pressure [MPa], bore and thickness [mm], modulus [MPa].
    """
    cube = thickness * thickness * thickness
    return 3.0 * pressure * (bore - thickness) * bore / (modulus * cube)


def mean_pressure(curvature_change, bore, thickness, modulus, turns):
    """All the outward force of a round-set ring over the swept wall [MPa].

    A ring held by a band for its last turning instead presses as the uniform ring of the same gap
    does: spring.pressure_from_gap.
    curvature_change: kappa0 [1/mm]. bore, thickness [mm], modulus [MPa]. turns: 1 or 2.
    """
    return mean_share(turns) * contact_pressure(curvature_change, bore, thickness, modulus)


def tip_force(pressure, bore, width):
    """Point force of each tip on the wall, F = p0*h1*r_o/sin psi0 [N].

    pressure: contact pressure p0 [MPa]. bore, width of the turn [mm]. Source: derived.
    """
    return 0.5 * pressure * width * bore / _SIN0


def widest_light(curvature_change, bore, thickness):
    """The widest light between a bound-set ring and the wall, 0.1047*kappa0*r^2 [mm].

    curvature_change: kappa0, 0 up [1/mm]. bore, thickness [mm]. Source: derived; solid finite
    elements with contact give 0.1042 mm for 0.1038 at d1/a1 = 25.
    """
    r = 0.5 * (bore - thickness)
    return LIGHT_FACTOR * curvature_change * r * r


def gap_of_curvature(curvature_change, bore, thickness, setting, turns):
    """Change of gap from the bore to free of a ring with that kappa0, m [mm].

    2*pi*(R - r), times sprung_gap_factor when set sprung, along the arc; the straight line between
    the ends is shorter by the share (m/R)^2/24. curvature_change: kappa0, below 1/r [1/mm].
    bore, thickness [mm]. setting: bound or sprung. turns: 1 or 2. Raises ZeroDivisionError at
    kappa0 = 1/r, a straight strip. Source: derived; solid finite elements within 0.1 %.
    """
    r = 0.5 * (bore - thickness)
    free = r / (1.0 - curvature_change * r)
    gap = 2.0 * math.pi * (free - r)
    return gap * sprung_gap_factor(turns) if setting == SPRUNG else gap


def curvature_of_gap(gap, bore, thickness, setting, turns):
    """The kappa0 behind a change of gap m [1/mm]; inverse of gap_of_curvature.

    gap: m [mm]. bore, thickness [mm]. setting: bound or sprung. turns: 1 or 2.
    """
    r = 0.5 * (bore - thickness)
    round_gap = gap / sprung_gap_factor(turns) if setting == SPRUNG else gap
    free = r + round_gap / (2.0 * math.pi)
    return 1.0 / r - 1.0 / free


def band_share(setting, turns):
    """Pressure of a flexible band that closes a round-set ring, over p0 [1].

    The pull of the band is this times p0*h1*d1/2, h1 the whole ring's width; a ring turned, outside
    and bore, while a band holds it has this mean pressure. One turn 2/3 (bound), 0.689 (sprung);
    a double-turn ring under one band 0.878 and 0.894: its turns hold each other from lying askew.
    setting: bound or sprung. turns: 1 or 2. Source: derived; two turns by quadratic programme.
    """
    return _BANDED[(setting, turns)][0]


def band_allowance(curvature_change, bore, thickness, setting, turns):
    """How much thicker than a1 a ring must be left to be turned true while a band holds it [mm].

    largest less smallest radius of the banded ring: 0.607*kappa0*r^2 (bound), 0.575 (sprung), a
    double-turn ring 0.338 and 0.259. curvature_change: kappa0, 0 up [1/mm]. bore, thickness [mm].
    setting: bound or sprung. turns: 1 or 2. Source: as band_share.
    """
    r = 0.5 * (bore - thickness)
    return _BANDED[(setting, turns)][1] * curvature_change * r * r


def closing_force(contact, bore, width, setting, turns):
    """Force across a round-set ring at 90 degrees to its gap that closes the gap [N], no friction.

    pi/(1 + pi/4)*p0*h1*r_o for one turn, pi/(1 + pi/12)*p0*h1*r_o for a double-turn ring between
    two plates (at either plate one turn bears a third, the other two thirds); 3.4 and 1.6 % more
    when sprung. contact: p0 [MPa]. bore, width of the whole ring [mm]. setting: bound or sprung.
    turns: 1 or 2. Source: derived; a quadratic programme agrees.
    """
    return _ACROSS[(setting, turns)] * contact * width * 0.5 * bore


def hot_growth(former_expansion, ring_expansion, rise):
    """How much larger a former sets a ring than it measures cold [1].

    (1 + alpha_f*dT)/(1 + alpha_r*dT). former_expansion, ring_expansion: mean over the rise [1/K].
    rise: of both above the shop's temperature [K]. Source: linear expansion.
    """
    return (1.0 + former_expansion * rise) / (1.0 + ring_expansion * rise)


def set_radius(bored_radius, former_radius, relief):
    """Neutral radius of the free ring after setting, R [mm].

    1/R = 1/r_b + eta*(1/r_m - 1/r_b). bored_radius r_b: neutral radius as bored and sawn [mm].
    former_radius r_m: neutral radius on the (hot) former [mm]. relief eta: 0 to 1. Source: derived;
    the ring springs back by the moment that the heat left in it.
    """
    return 1.0 / (1.0 / bored_radius + relief * (1.0 / former_radius - 1.0 / bored_radius))


def former_radius_for(bored_radius, free_radius, relief):
    """The neutral radius on the former that leaves `free_radius` after setting [mm].

    Inverse of set_radius; no former is large enough where it returns a negative radius or raises
    ZeroDivisionError. bored_radius, free_radius: at the neutral line [mm]. relief: above 0 to 1.
    """
    curvature = 1.0 / bored_radius + (1.0 / free_radius - 1.0 / bored_radius) / relief
    return 1.0 / curvature


def relief_given(bored_radius, former_radius, free_radius):
    """The share of moment that the heat really relaxed, from the free radius measured [1].

    Inverse of set_radius in eta. bored_radius, former_radius (hot), free_radius: of the ring as
    set, at the neutral line [mm]. Raises ZeroDivisionError for a former of the ring's own radius.
    """
    return (1.0 / bored_radius - 1.0 / free_radius) / (1.0 / bored_radius - 1.0 / former_radius)


def moment_kept(skin_kept, creep_exponent):
    """Share of the bending moment that is left when creep has left `skin_kept` of the skin's [1].

    3 * integral over 0..1 of y^2*(1 + (s^(1-n) - 1)*y^(n-1))^(-1/(n-1)) dy: held bent, each fibre
    relaxes by d sigma/dt = -B*sigma^n on its own. 1.24 to 1.49 times skin_kept for n = 3..8 and
    s = 0.1..0.5: a test of the skin flatters the relief, 1 - moment_kept.
    skin_kept: s, above 0 to 1 [1]. creep_exponent: n, above 1 [1]. Source: derived, Norton's law.
    """
    power = creep_exponent - 1.0
    excess = skin_kept**-power - 1.0
    total = 0.0
    steps = 100
    for i in range(1, steps + 1):
        y = i / steps
        weight = 1.0 if i == steps else 4.0 if i % 2 else 2.0
        total += weight * y * y * (1.0 + excess * y**power) ** (-1.0 / power)
    return total / steps


def spacer_for(gap, kerf, closed_gap, relief):
    """Width of the spacer that holds the gap open for setting [mm].

    kerf + (m - (kerf - s1))/eta: sawing has already opened the ring by kerf - s1 beyond its gap
    in the bore, the heat has to add the rest.
    gap: wanted change of gap m, bore to free [mm]. kerf: saw cut [mm]. closed_gap: s1, in the
    bore [mm]. relief: eta, above 0 to 1.
    """
    return kerf + (gap - (kerf - closed_gap)) / relief


def gap_from_spacer(spacer, kerf, closed_gap, relief):
    """m = (kerf - s1) + eta*(spacer - kerf) [mm]; inverse of spacer_for.

    spacer, kerf, closed_gap s1 [mm]. relief: eta, 0 to 1.
    """
    return (kerf - closed_gap) + relief * (spacer - kerf)


def spacer_taper(opening, bored_radius):
    """Angle between the two ends of a ring that a spacer has opened [deg]: 2*opening/(3*r).

    Pushed apart at its ends the ring turns them by M = F*r*(1 - cos psi) over E*I, together
    2*pi*F*r^2/(E*I), while the gap opens by 3*pi*F*r^3/(E*I): the seats of the spacer are cut so.
    opening: of the gap beyond the saw cut [mm]. bored_radius: neutral [mm]. Source: derived.
    """
    return math.degrees(2.0 * opening / (3.0 * bored_radius))


def forming_stress(bored_radius, former_radius, thickness, modulus):
    """Largest bending stress when the sawn ring is put on the former cold [MPa].

    1.187*E*a/2*(1/r_b - 1/r_m)*(1 + a/(2*r_m)), inside, a quarter turn from the tip. A ring that is
    then bound down comes on in the same way, and only afterwards eases to an even 1/1.187 of it.
    bored_radius r_b, former_radius r_m: at the neutral line [mm]. thickness: as set [mm]. modulus
    [MPa]. Source: derived, as plug_stress_round of winding: the former is a plug.
    """
    stress = 0.5 * modulus * thickness * (1.0 / bored_radius - 1.0 / former_radius)
    return PEAK_MOMENT * stress * (1.0 + 0.5 * thickness / former_radius)


METHODS = (
    Method(
        "round-set-pressure",
        "How a ring set on a round former bears",
        "p0 = E a1^3 kappa0/(12 r r_o), kappa0 = 1/r - 1/R; mean of one turn 0.900 p0, of a "
        "double-turn 0.950 p0",
        "thin ring, small displacement; 0.6 % of nonlinear solid finite elements at d1/a1 = 25",
        ("contact",),
    ),
    Method(
        "round-set-stress",
        "Stress in the bore of a ring set on a round former",
        "nominal S = 1.187 E a1 kappa0/2 at 90 deg behind each tip; outside S (d1/a1 - 2)/"
        "(d1/a1 - 1), inside S (d1/a1)/(d1/a1 - 1)",
        "thin ring; 0.5 % of nonlinear solid finite elements at d1/a1 = 25",
        ("contact",),
    ),
    Method(
        "band-pressure",
        "Pressure of a ring turned while a band held it",
        "p0 = E a1^3 kappa0/(12 r r_o); mean of one turn, bound, 2/3 p0, sprung 0.689 p0; of a "
        "double-turn, bound, 0.878 p0, sprung 0.894 p0",
        "outside and bore both turned; both turns together",
        ("contact",),
    ),
    Method(
        "round-set-gap",
        "Free gap of a ring set on a round former",
        "m = 2 pi (R - r); sprung on its former 1.034 times (one turn), 1.017 times (double-turn)",
        "thin ring",
        ("contact",),
    ),
    Method(
        "round-set-light",
        "Light and slack length of a ring set on a round former",
        "0.1047 kappa0 r^2 at 32.4 deg from the tip; nothing bears over 122.57 deg behind each tip",
        "new ring, round bore, no steam behind the ring",
        ("contact",),
    ),
    Method(
        "former-size",
        "Former from the wanted spring",
        "1/R = 1/r_b + eta (1/r_m - 1/r_b); hot former larger by (1 + alpha_f dT)/(1 + alpha_r dT)",
        "eta between 0.3 and 1; eta from the last ring beats any table",
        ("beam", "practice"),
    ),
    Method(
        "spacer-size",
        "Spacer from the wanted spring",
        "spacer = s + (m - (s - s1))/eta, s the gap as sawn",
        "gap held open by a spacer, no former",
        ("beam",),
    ),
    Method(
        "forming-stress",
        "Stress on the former, cold",
        "1.187 E a/2 (1/r_b - 1/r_m)(1 + a/(2 r_m))",
        "thin ring, before the heat relaxes it; bound down or not, it comes on by its own spring",
        ("beam", "contact"),
    ),
)
