"""Which bar a set of blanks is cut from, and how many of them one stick carries."""

from ..catalogue.inputs_stock import FORMS, INCH, OVERHANG
from ..problems import OutOfRange
from . import bars


def best_bar(*, outside, inside, family, form=None, system=None):
    """The bars.BarSize of least metal that serves, None when none is made.

    outside: largest diameter that must clean up; inside: smallest bore, below it [mm]. family: of
    the material. form: solid or cored, None for either. system: inch or metric, None for either.
    Source: as bars.bar_for.
    """
    asked = (outside, inside, family, form, system)
    if not (_kept and _kept[0] == asked):
        _kept[:] = [asked, _best_bar(*asked)]
    return _kept[1]


# What was asked for last, and its bar: card, drawings and stock of a job ask for the same.
_kept = []


def _best_bar(outside, inside, family, form, system):
    best = None
    metal = bars.metal_of(family)
    for one in (form,) if form else FORMS:
        try:
            size = bars.bar_for(
                outside=outside, inside=inside, form=one, system=system, metal=metal
            )
        except OutOfRange:
            continue
        if best is None or bars.section(size) < bars.section(best):
            best = size
    return best


def system_of(values):
    """Inch or metric bars as asked for; inch for a job in inches; None for either.

    values: checked inputs, a dict.
    """
    return values.get("bar_sizes") or (INCH if values.get("inch_sizes") else None)


def most_on_a_stick(outside, part):
    """The most blanks on one stick, so that it stands out by one and a half diameters [1].

    outside: of the blank; part: length that each takes, parting included [mm], above 0. At least 1.
    """
    return max(1, int(OVERHANG * outside / part))
