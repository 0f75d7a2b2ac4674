"""The list of methods: every formula the figures rest on, where it holds, and who says so."""

from collections import OrderedDict

from .calculations import CALCULATIONS
from .catalogue import all_figures
from .catalogue.checks import all_checks
from .clearances import groove, piston, ring_gap
from .cutting import plan
from .fitting import fitting, land
from .making import bars, finish, machining, stock, tooling
from .measuring import bore_fit, inspection, spread, survey_findings
from .properties import expansion, fits, materials, steam, steam_properties
from .ring import (
    blank,
    chosen_section,
    design,
    heat_set,
    section,
    soak,
    spring,
    winding,
    without_heat,
)
from .running import (
    coil_expander,
    friction,
    leak,
    port_crossing,
    ring_duty,
    ring_leak,
    ring_spaces,
    running,
    steam_cycle,
    warming,
    wear,
)
from .sources import SOURCES
from .walk import limits
from .wall import bore_shape, free_shape, wall_contact

# Every module with METHODS of its own, in the order in which the list shows them. A test compares
# this with the files of the folder.
MODULES = (
    spring,
    section,
    chosen_section,
    design,
    heat_set,
    soak,
    winding,
    without_heat,
    wall_contact,
    free_shape,
    bore_shape,
    bore_fit,
    survey_findings,
    inspection,
    spread,
    ring_gap,
    groove,
    piston,
    expansion,
    materials,
    steam,
    blank,
    limits,
    tooling,
    bars,
    stock,
    plan,
    fits,
    machining,
    finish,
    steam_properties,
    steam_cycle,
    leak,
    ring_duty,
    ring_leak,
    ring_spaces,
    running,
    friction,
    wear,
    warming,
    port_crossing,
    coil_expander,
    fitting,
    land,
)


def modules():
    """Every module with METHODS: those above, and whatever calculation declares its own."""
    rest = [one for one in CALCULATIONS.modules() if one not in MODULES]
    return MODULES + tuple([one for one in rest if hasattr(one, "METHODS")])


SOURCE_OF_KEY = {}
for _entry in SOURCES:
    SOURCE_OF_KEY[_entry.key] = _entry


def calculate_methods(values):
    """Every method with formula, range and sources, and every source with how far it was checked.

    values: a dict, not read: the list takes no inputs.
    Returns an OrderedDict with "methods", "figures", "checks" and "sources", lists of
    OrderedDict. The basis of a source
    is read, run, memory, practice or derived (see sources.py); that of a method lists those of its
    sources, each once.
    """
    answers = [calculation.answer for calculation in CALCULATIONS.values()]
    figures = all_figures(answers)
    given_by = {}
    for declared in figures.values():
        for key in declared.methods:
            given_by.setdefault(key, []).append(declared.name)
    listing = []
    for module in modules():
        for method in module.METHODS:
            listing.append(_described(method, given_by.get(method.key, [])))
    sources = [
        OrderedDict((("key", e.key), ("title", e.title), ("where", e.where), ("basis", e.basis)))
        for e in SOURCES
    ]
    checks = [
        OrderedDict((("check", one.key), ("judges", one.judges)))
        for one in all_checks(answers).values()
    ]
    return OrderedDict(
        (
            ("methods", listing),
            ("figures", [_told(one) for one in figures.values()]),
            ("checks", checks),
            ("sources", sources),
        )
    )


def _told(declared):
    return OrderedDict(
        (
            ("name", declared.name),
            ("label", declared.label),
            ("meaning", declared.meaning),
            ("symbol", declared.symbol),
            ("unit", declared.unit),
            ("methods", list(declared.methods)),
        )
    )


def _described(method, figures):
    bases = []
    titles = []
    for key in method.sources:
        source = SOURCE_OF_KEY[key]
        titles.append(OrderedDict((("key", key), ("title", source.title), ("basis", source.basis))))
        if source.basis not in bases:
            bases.append(source.basis)
    return OrderedDict(
        (
            ("key", method.key),
            ("title", method.title),
            ("formula", method.formula),
            ("validity", method.validity),
            ("basis", bases),
            ("figures", figures),
            ("sources", titles),
        )
    )
