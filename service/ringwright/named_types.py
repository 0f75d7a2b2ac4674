"""Types that many signatures name. The core names none: its second Python knows no typing."""

from collections.abc import Mapping
from typing import Any

from .core import calculations
from .core.calculations import Calculation
from .core.fields import Field

# An object of JSON: decoded, or still to be written.
Document = dict[str, Any]
# Checked values of fields by their names, in core units.
Values = dict[str, Any]
# The calculations that a service offers, by name.
Table = calculations.Table | Mapping[str, Calculation]
# Declared inputs.
Fields = tuple[Field, ...]
# Names and indexes from the top of a request to a value.
Path = tuple[str | int, ...]
# What the operating system says to a program.
Environment = Mapping[str, str]
# A record of core/drawing/entities.py: each kind has attributes of its own.
Entity = Any
# Along and up, in the unit of what is drawn.
Point = tuple[float, float]
