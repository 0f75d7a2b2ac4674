"""What to try for each check of sizing that is not good, and how it is said."""

import math

from .. import clearances
from ..catalogue.inputs_blank import BLANK
from ..catalogue.inputs_ring import CLOSING_RING, PRACTICE_PRESSURE, RING, SPREAD, SPRUNG
from ..properties.materials import for_use, material
from ..wording import in_a_sentence, length, said_down, said_up, wall_pressure
from . import remedies, ring_findings
from .design import as_inputs
from .judging import gap_left, judge_gap, least_piston_clearance
from .remedies import change
from .spring_back import TARGETS

FIELDS = dict(RING)
FIELDS.update(BLANK)
# Metals tried in place of one that is too weak.
METALS = 4
# Mended by hand, or by looking again.
_BY_HAND = ("wound-on-in-haste", "steam-pressure")


def told(values, design, rows, judge, fields=FIELDS):
    """The findings of sizing with remedies that were tried.

    values: checked inputs. design: a Design, where the ring is to stand. rows: its findings. judge:
    function of values to (list of Finding, Design). fields: name -> Field of what may be given.
    """

    def options(row):
        return _options(row, values, design)

    return remedies.tried(values, rows, options, judge, fields, _words)


def _options(row, values, d):
    check = row.check
    if check in _BY_HAND or (check == "cold-start" and d.duty.turns == 1):
        return None
    maker = _OPTIONS.get(check)
    if maker is None and check not in _OF_THE_SECTION:
        return None
    found = maker(d, row) if maker else []
    return found + _less_asked(values) if check in _OF_THE_SECTION else found


def _no_target(*pairs):
    """A change of the spring that is asked for: one thing at a time."""
    asked = change(*[(name, None) for name in TARGETS])
    asked.update(change(*pairs))
    return asked


def _less_asked(values):
    """What was asked for, given up bit by bit, and other metals last."""
    targets = [name for name in TARGETS if values.get(name) is not None]
    groups = []
    for names in (("radial_thickness",), tuple(targets), ("ring_width", "groove_width")):
        given = [name for name in names if values.get(name) is not None]
        if given:
            groups.append(given)
    found = []
    for count in range(1, 1 << len(groups)):
        together = []
        for place, given in enumerate(groups):
            if count & (1 << place):
                together += given
        found.append((len(together), count, together))
    found.sort()
    listing = [change(*[(name, None) for name in names]) for _, _, names in found]
    for key in for_use("ring")[:METALS]:
        listing.append(change(("ring_material", key)))
        names = [name for given in groups for name in given] + ["modulus"]
        names = [name for name in names if values.get(name) is not None]
        if names:
            listing.append(change(("ring_material", key), *[(name, None) for name in names]))
    return listing


def _slack(d, row):
    lacking = math.ceil(1000.0 * (PRACTICE_PRESSURE - d.spring.wall_pressure)) / 1000.0
    return [
        _no_target(("wall_pressure", PRACTICE_PRESSURE)),
        _no_target(("wall_pressure", PRACTICE_PRESSURE), ("radial_thickness", None)),
        change(("expander_pressure", max(lacking, RING["expander_pressure"].lowest))),
    ]


def _stiff(d, row):
    found = []
    if d.expander_pressure:
        lacking = math.ceil(1000.0 * max(PRACTICE_PRESSURE - d.spring.wall_pressure, 0.0)) / 1000.0
        low = RING["expander_pressure"].lowest
        found.append(change(("expander_pressure", lacking if lacking >= low else None)))
    return found + [
        _no_target(("wall_pressure", PRACTICE_PRESSURE)),
        _no_target(("wall_pressure", PRACTICE_PRESSURE), ("radial_thickness", None)),
    ]


def _sawn_open(d, row):
    square = change(("end_cut", "square"))
    return [
        change(("end_kerf", None)),
        square,
        change(("end_kerf", None), ("end_cut", "square")),
        change(("end_kerf", said_down(max(2.0 * d.duty.closed_gap, 0.5 * d.allowances.kerf)))),
        _no_target(),
    ]


def _forming(d, row):
    return [
        change(("relief", None)),
        change(("soak_temperature", None), ("soak_time", None), ("relief", None)),
        _no_target(),
    ]


def _opened(d, row):
    """A ring that breaks on its way on: a piston that is too small, or a setting that is harsh."""
    return [change(("piston_diameter", None)), change(("setting", None))]


def _through(d, row):
    return [change(("facing_allowance", None)), change(("finishing_allowance", None))]


def _light(d, row):
    return [
        change(("finishing", CLOSING_RING)),
        change(("setting", SPRUNG)),
        change(("finishing", CLOSING_RING), ("setting", SPRUNG)),
    ]


def _bearing(d, row):
    former = _no_target(("setting", SPREAD))
    return [change(("setting", SPREAD)), former, change(("finishing", "band"))]


def _grip(d, row):
    return [
        change(("relief", None)),
        change(("soak_temperature", None), ("soak_time", None), ("relief", None)),
        change(("slit_width", None)),
        change(("slit_width", said_down(0.5 * d.allowances.slit))),
    ]


def _width(d, row):
    most = ring_findings.LARGEST_WIDTH_RATIO * d.section.thickness * d.duty.turns
    narrow = ("ring_width", said_down(most))
    return [change(narrow), change(narrow, ("groove_width", None)), change(("ring_width", None))]


def _pairing(d, row):
    found = []
    for key in for_use("ring"):
        if material(key).hottest >= d.duty.temperature:
            found.append(change(("ring_material", key)))
    return found + [
        change(*(tuple(one.items()) + (("expander_pressure", PRACTICE_PRESSURE),))) for one in found
    ]


def _piston_metal(d, row):
    return [
        change(("piston_material", key))
        for key in for_use("piston")
        if material(key).family != "aluminium"
    ]


def _end_gap(d, row):
    need = said_up(judge_gap(d, d.duty.closed_gap).need)
    gap = ("closed_gap", need)
    found = [change(gap), change(gap, ("clamped_gap", None))]
    found.append(change(gap, ("clamped_gap", None), ("end_kerf", None)))
    return found


def _gap_wide(d, row):
    return [
        change(("closed_gap", None)),
        change(("closed_gap", None), ("clamped_gap", None)),
        change(("ring_type", "double-turn"), ("setting", None)),
    ]


def _cold_start(d, row):
    cold = gap_left(d, d.duty.closed_gap, d.duty.shop)
    return [change(("closed_gap", said_up(d.duty.closed_gap - cold)))]


def _side(d, row):
    _, least, greatest = clearances.running_side_clearance(d.duty.bore)
    short = row.value.value < least
    aim = least + 0.25 * (greatest - least)
    off = row.value.value - aim
    groove = ("groove_width", said_up(d.groove_width - off))
    opened = change(groove, ("ring_width", d.section.width), ("measured_groove_width", None))
    wide = change(("ring_width", None))
    suited = change(("ring_width", said_down(d.section.width + off)))
    return [opened if short else wide, wide, suited]


def _depth(d, row):
    depth = d.section.thickness + clearances.DEPTH_ALLOWANCE
    return [change(("groove_depth", said_up(depth))), change(("radial_thickness", None))]


def _seizes(d, row):
    small = said_down(d.duty.bore - least_piston_clearance(d))
    return [change(("piston_diameter", small)), change(("piston_diameter", None))]


def _proportion(d, row):
    return [change(("radial_thickness", None))]


_OPTIONS = {
    "too-slack": _slack,
    "too-stiff": _stiff,
    "sawn-open": _sawn_open,
    "forming": _forming,
    "sprung-on": _opened,
    "turning-through": _through,
    "light": _light,
    "bearing": _bearing,
    "setting": lambda d, row: [change(("setting", None)), _no_target(("setting", None))],
    "grip": _grip,
    "proportion": _proportion,
    "width": _width,
    "pairing": _pairing,
    "ring-heat": _pairing,
    "piston-metal": _piston_metal,
    "steam": lambda d, row: [change(("steam_temperature", None))],
    "modulus": lambda d, row: [change(("modulus", None))],
    "end-gap": _end_gap,
    "gap-wide": _gap_wide,
    "cold-start": _cold_start,
    "side-clearance": _side,
    "groove-depth": _depth,
    "piston-clearance": lambda d, row: [change(("piston_diameter", None))],
    "piston-seizes": _seizes,
}
_OF_THE_SECTION = (
    "too-slack", "too-stiff", "closed-stress", "forming", "sprung-on", "wound-on",
    "turning-through", "section", "proportion", "springy", "sawn-open", "grip", "light",
    "piston-clearance", "width",
)  # fmt: skip
_LENGTHS = {
    "closed_gap": "give a closed gap of at least %s",
    "end_kerf": "use a saw of %s",
    "slit_width": "slit it with a saw of %s",
    "ring_width": "make the ring %s wide",
    "groove_width": "open the groove to %s",
    "groove_depth": "deepen the groove to %s",
    "piston_diameter": "turn the piston down to %s",
}
# What is taken when they are left out, as far as it is worth saying.
_TAKEN = {
    "radial_thickness": ("the thickness", length),
    "ring_width": ("the ring's width", length),
    "wall_pressure": ("the wall pressure", wall_pressure),
    "closed_gap": ("the closed gap", length),
    "piston_diameter": ("the piston's diameter", length),
    "end_kerf": ("the saw", length),
}


def _words(name, value, design):
    if value is None and name in _TAKEN:
        called, said = _TAKEN[name]
        return "leave %s out, so that %s is taken" % (called, said(as_inputs(design)[name]))
    if name in _LENGTHS and value is not None:
        return _LENGTHS[name] % length(value)
    if name == "wall_pressure" and value is not None:
        return "ask for a wall pressure of %s" % wall_pressure(value)
    if name == "expander_pressure" and value is not None:
        return (
            "fit a spring expander behind it, sized by the calculation of that name, that adds %s"
            % wall_pressure(value)
        )
    if name in ("ring_material", "piston_material"):
        return "make the %s of %s" % (
            "ring" if name == "ring_material" else "piston",
            in_a_sentence(material(value).title),
        )
    return remedies.plain_words(name, value)
