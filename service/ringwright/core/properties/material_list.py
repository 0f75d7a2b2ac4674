"""Every material with what is known of it and where that is from, as people look it up.

By itself, for no sizing needs the list of sources.
"""

from collections import OrderedDict

from ..problems import OutOfRange
from ..sources import SOURCES
from .material_table import MATERIALS
from .materials import PAIRINGS

PROPERTIES = (
    ("modulus", "MPa"),
    ("modulus_low", "MPa"),
    ("modulus_high", "MPa"),
    ("poisson", "1"),
    ("density", "kg/m3"),
    ("expansion", "1/K"),
    ("bending_strength", "MPa"),
    ("tensile_low", "MPa"),
    ("tensile_high", "MPa"),
    ("hottest", "degC"),
)

_BASIS = {}
for _source in SOURCES:
    _BASIS[_source.key] = _source.basis


def source_of(entry, name):
    """The key of the source of one property of a Material.

    entry: a Material. name: a property, such as "modulus_low".
    """
    wanted = "modulus" if name[:7] == "modulus" else "tensile" if name[:7] == "tensile" else name
    for known, key in entry.sources:
        if known == wanted:
            return key
    raise OutOfRange("name", name, "the properties of a material", "table of materials")


def calculate_materials(values):
    """Every material with its properties, each with unit, source and how far that was checked.

    values: a dict, not read: the list takes no inputs.
    """
    listing = []
    for entry in MATERIALS.values():
        properties = OrderedDict()
        for name, unit in PROPERTIES:
            source = source_of(entry, name)
            properties[name] = OrderedDict(
                (
                    ("value", getattr(entry, name)),
                    ("unit", unit),
                    ("source", source),
                    ("basis", _BASIS[source]),
                )
            )
        listing.append(
            OrderedDict(
                (
                    ("key", entry.key),
                    ("title", entry.title),
                    ("family", entry.family),
                    ("uses", list(entry.uses)),
                    ("note", entry.note),
                    ("properties", properties),
                )
            )
        )
    return OrderedDict((("materials", listing), ("pairings", _pairing_list())))


def _pairing_list():
    rows = []
    for ring_family in ("iron", "bronze", "plastic"):
        for cylinder_family in ("iron", "bronze", "steel", "aluminium"):
            outcome, why, remedy = PAIRINGS[(ring_family, cylinder_family)]
            rows.append(
                OrderedDict(
                    (
                        ("ring", ring_family),
                        ("cylinder", cylinder_family),
                        ("outcome", outcome),
                        ("why", why),
                        ("remedy", remedy),
                    )
                )
            )
    return rows
