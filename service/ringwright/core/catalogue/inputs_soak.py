"""Tell-tales of heat: what is seen of a ring in the fire, and between what it then stands."""

from collections import OrderedDict

from ..fields import field
from .inputs import fixed, table

# Tell-tale -> what is seen, coldest, likely, hottest [degC]; READ_OFF: that far from what is read.
# Glow in deep shade: edges as two published tables print them. Metals and salt: their melting point,
# as printed, and what a bead is heated beyond it. That, dial and wood by practice; crayon and
# thermocouple stay within what is printed.
READ_OFF = ("thermocouple", "crayon", "oven-dial")
TELL_TALES = OrderedDict(
    (
        ("thermocouple", ("a thermocouple bound to the ring", -10.0, 0.0, 10.0)),
        ("crayon", ("a crayon of that temperature just melts on it", -10.0, 0.0, 10.0)),
        ("oven-dial", ("the dial of an oven", -40.0, 0.0, 40.0)),
        ("solder-melts", ("tinman's solder just melts on it", 183.0, 210.0, 245.0)),
        ("wood-browns", ("dry wood pressed on it turns brown", 200.0, 270.0, 320.0)),
        ("tin-melts", ("tin just melts", 231.0, 240.0, 260.0)),
        ("wood-chars", ("dry wood pressed on it chars black", 280.0, 340.0, 420.0)),
        ("lead-melts", ("lead just melts", 327.0, 335.0, 360.0)),
        ("zinc-melts", ("zinc just melts", 419.0, 430.0, 450.0)),
        ("zinc-not-aluminium", ("zinc melts, aluminium does not", 419.0, 540.0, 661.0)),
        ("first-red", ("red just to be seen in the dark", 426.0, 525.0, 593.0)),
        ("low-red", ("very dark red in shade", 593.0, 650.0, 704.0)),
        ("aluminium-melts", ("aluminium just melts", 660.0, 670.0, 690.0)),
        ("dull-red", ("dark or dull red in shade", 700.0, 760.0, 814.0)),
        ("salt-melts", ("table salt just melts", 800.0, 810.0, 830.0)),
        ("cherry-red", ("cherry red", 800.0, 850.0, 900.0)),
    )
)

SOAK = table(
    field(
        "tell_tale",
        "choice",
        "what tells the heat of the ring; a thermocouple, a crayon or a dial reads the "
        "soak_temperature",
        fixed("first-red", "what a shaded shop sees first"),
        choices=tuple(TELL_TALES),
    ),
)
