"""What to try for each check of tooling that is not good, and how it is said."""

import math

from ..catalogue.inputs_blank import BLANK, SAWS
from ..catalogue.inputs_ring import RING
from ..catalogue.inputs_tools import TOOLING
from ..properties.materials import for_use, material
from ..ring import blank, heat_set, remedies
from ..ring.allowances import CUT_ANGLES
from ..ring.remedies import change
from ..ring.soak import soak_range
from ..wording import in_a_sentence, length, temperature
from .tooling_findings import LEAST_FEELER, LEAST_TONGUE, SPIGOT_PLAY

FIELDS = dict(RING)
FIELDS.update(BLANK)
FIELDS.update(TOOLING)


def told(values, design, tooling, rows, judge):
    """The findings of tooling with remedies that were tried.

    values: checked inputs. design: a Design. tooling: its tooling.Tooling. rows: its findings.
    judge: function of values to (list of Finding, (Design, Tooling)).
    """

    def options(row):
        maker = _OPTIONS.get(row.check)
        return maker(design, tooling) if maker else None

    return remedies.tried(values, rows, options, judge, FIELDS, _words)


def _soak(d, t):
    return [
        change(("ring_material", key), ("modulus", None), ("soak_temperature", None))
        for key in for_use("ring")
        if soak_range(material(key).family) is not None
    ]


def _usual_soak(d, t):
    window = soak_range(d.duty.ring_material.family)
    return [change(("soak_temperature", window.usual))]


def _bridge(d, t):
    needed = blank.shortest_bridge(band=d.blank.band_width, angle=CUT_ANGLES[d.duty.end_cut])
    longer = math.ceil(100.0 * needed) / 100.0
    return [change(("bridge_length", longer)), change(("end_cut", "square"))]


def _reach(d, t):
    listing = [change(("cutter_collar", None)), change(("cutter_diameter", None))]
    return listing + [change(("cutter_diameter", None), ("cutter_collar", None))]


def _slit(d, t):
    thinner = [saw for saw in SAWS if saw <= 0.5 * d.section.width]
    found = [change(("slit_width", saw)) for saw in thinner[-1:]]
    return [change(("slit_width", None))] + found + [change(("ring_width", None))]


def _band(d, t):
    needed = heat_set.band_allowance(
        d.spring.curvature_change, d.duty.bore, d.section.thickness, d.duty.setting, d.duty.turns
    )
    more = math.ceil(
        102.0 * (d.allowances.finishing + needed + d.section.thickness - d.blank.set_thickness)
    )
    return [
        change(("finishing_allowance", None)),
        change(("finishing_allowance", more / 100.0)),
        change(("finishing", "closing-ring")),
    ]


def _pot(d, t):
    fits = d.blank.finish_outside + d.allowances.finishing
    return [change(("shelf_pot", round_down(fits))), change(("shelf_pot", None))]


def _spigot(d, t):
    fits = round_down(t.inside_at_clamp - SPIGOT_PLAY)
    return [change(("shelf_clamp_mandrel", fits)), change(("shelf_clamp_mandrel", None))]


def _feeler(d, t):
    lacking = (LEAST_FEELER - t.feeler_gap) / math.sin(math.radians(CUT_ANGLES[d.duty.end_cut]))
    wider = math.ceil(1000.0 * (d.allowances.clamped_gap + lacking) + 1.0) / 1000.0
    gap = math.ceil(1000.0 * (d.duty.closed_gap + lacking) + 1.0) / 1000.0
    return [change(("closed_gap", max(gap, wider)), ("clamped_gap", None))]


def _tongue(d, t):
    wide = ("ring_width", math.ceil(100.0 * (d.section.width + 2.2 * LEAST_TONGUE)) / 100.0)
    return [change(wide), change(("end_cut", "angled-45")), change(("end_cut", "square"))]


def round_down(value):
    """To the hundredth that is said of it [mm]."""
    return math.floor(100.0 * value) / 100.0


_OPTIONS = {
    "soak": _soak,
    "soak-cold": _usual_soak,
    "soak-hot": _usual_soak,
    "bridge": _bridge,
    "cutter-reach": _reach,
    "slit-width": _slit,
    "band-allowance": _band,
    "pot": _pot,
    "clamp-mandrel": _spigot,
    "feeler-gap": _feeler,
    "tongue": _tongue,
}
_LENGTHS = {
    "bridge_length": "leave a bridge of %s",
    "slit_width": "slit it with a saw of %s",
    "ring_width": "make the ring %s wide",
    "finishing_allowance": "leave %s on the outside for the last turning",
    "shelf_pot": "bore the pot to %s",
    "shelf_clamp_mandrel": "turn the spigot to %s",
    "closed_gap": "give a closed gap of %s",
}
_TAKEN = {
    "cutter_diameter": "take a saw of %s",
    "cutter_collar": "take a collar of %s",
}


def _words(name, value, settled):
    design, tooling = settled
    if value is None and name in _TAKEN:
        return _TAKEN[name] % length(getattr(tooling, name))
    if value is None and name == "finishing_allowance":
        return _LENGTHS[name] % length(design.allowances.finishing)
    if name == "soak_temperature" and value is not None:
        return "soak at %s" % temperature(value)
    if name == "ring_material":
        return "make the ring of " + in_a_sentence(material(value).title)
    if name in _LENGTHS and value is not None:
        return _LENGTHS[name] % length(value)
    return remedies.plain_words(name, value)
