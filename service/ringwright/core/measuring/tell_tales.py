"""Calculation "soak": what a soak gives when no pyrometer tells its heat, and what that does."""

from collections import OrderedDict, namedtuple

from ..catalogue import figures_of, told
from ..catalogue.inputs import Chooser
from ..catalogue.inputs_blank import BLANK
from ..catalogue.inputs_ring import RING
from ..catalogue.inputs_soak import READ_OFF, SOAK, TELL_TALES
from ..catalogue.soak import ANSWER, FIGURES
from ..cautions import cautions
from ..records import GOOD, STOP, WATCH, Method, Quantity, finding
from ..ring import remedies
from ..ring.allowances import SMALLEST_RELIEF
from ..ring.design import settle
from ..ring.judging import judge_pressure, pressing
from ..ring.remedies import change
from ..ring.soak import WIDE_RELIEF, Relief, expected_relief, soak_range
from ..ring.spring_back import TARGETS
from ..wording import decimal, percent, temperature, wall_pressure
from .inspection_findings import LEAST_RELIEF
from .ring_sample import outcome

FIELDS = tuple(RING.values()) + tuple(BLANK.values()) + tuple(SOAK.values())
_INPUTS = dict([(entry.name, entry) for entry in FIELDS])

# Beyond this a metal is spoilt [degC]: grey iron near its critical point (a metallurgist: never
# past 1333 F); bronze goes dead soft, from memory.
SPOILT = {"iron": 720.0, "bronze": 500.0}
# Bounds of the relief's model [degC].
COLDEST, HOTTEST = 100.0, 900.0
# Soaks to compare, by tell-tale and hours; None: that of the request.
_COMPARED = (
    (None, 5.0 / 60.0),
    (None, 1.0),
    (None, 4.0),
    ("low-red", 5.0 / 60.0),
    ("thermocouple", 1.0),
)
_FIRST_RING = "Make one ring first: its free gap tells the relief for the next."

# coldest, likely, hottest: of the ring [degC].
Heat = namedtuple("Heat", ("coldest", "likely", "hottest"))
# design: a Design. heat: a Heat, hours it is held, relief: a Relief, moved: by the heat alone.
# pressures [MPa], gaps [mm]: Relief of the ring as it comes out.
Soaked = namedtuple("Soaked", ("design", "heat", "hours", "relief", "moved", "pressures", "gaps"))

METHODS = (
    Method(
        "tell-tales",
        "Heat by eye and by tell-tale",
        "coldest, likely and hottest by a table; d eta = eta(hottest) - eta(coldest)",
        "the ring's own heat, held once it is there; in daylight a glow is hotter",
        ("heat-colours", "its-90", "tell-tale-pages", "practice"),
    ),
    Method(
        "soaked-ring",
        "The ring that this soak makes on the tool",
        "the tool made for eta_0 and p_0; former-size or spacer-size backwards with eta",
        "eta low, likely and high by expected-relief at the coldest, likely and hottest",
        ("beam", "stress-relief-reports", "grey-iron-heat", "memory"),
    ),
)


def heat_of(tell_tale, read=0.0):
    """The Heat that a tell-tale shows, within 100 to 900 degC.

    tell_tale: a key of inputs_soak.TELL_TALES. read: by a thermocouple, crayon or dial [degC].
    Source: see inputs_soak.
    """
    beside = read if tell_tale in READ_OFF else 0.0
    shown = [min(max(beside + part, COLDEST), HOTTEST) for part in TELL_TALES[tell_tale][1:]]
    return Heat(coldest=shown[0], likely=shown[1], hottest=shown[2])


def relief_of(family, heat, hours):
    """Relief to expect of a Heat: low when coldest, high when hottest (shares of 1).

    family: iron or bronze. heat: a Heat. hours: held at it. Source: soak.expected_relief.
    """
    return Relief(
        low=expected_relief(family, heat.coldest, hours).low,
        likely=expected_relief(family, heat.likely, hours).likely,
        high=expected_relief(family, heat.hottest, hours).high,
    )


def soaked(design, heat, hours):
    """The Soaked of a tool. design: of iron or bronze. heat: a Heat. hours: held at it."""
    family = design.duty.ring_material.family
    relief = relief_of(family, heat, hours)
    ends = [outcome(design, {"relief": share - design.soak.relief.likely}) for share in relief]
    ends_of_heat = [
        expected_relief(family, end, hours).likely for end in (heat.coldest, heat.hottest)
    ]
    return Soaked(
        design=design,
        heat=heat,
        hours=hours,
        relief=relief,
        moved=ends_of_heat[1] - ends_of_heat[0],
        pressures=Relief(*[end.wall_pressure for end in ends]),
        gaps=Relief(*[end.free_gap for end in ends]),
    )


def calculate(values):
    """What a soak gives: figures, findings, "soaks", "tell_tales", "first_ring", chosen, cautions.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, heat, chosen = _asked(values)
    family = design.duty.ring_material.family
    answer = OrderedDict()
    if soak_range(family) is None:
        answer["figures"] = figures_of(ANSWER, {"ring_temperature": tuple(heat)}, {})
        answer["findings"] = [_cannot(design)]
        soaks = tell_tales = first = []
    else:
        own = soaked(design, heat, design.soak.hours)
        given = {
            "T": heat.likely,
            "t": own.hours,
            "eta": own.relief.likely,
            "eta_0": design.soak.relief.likely,
            "p_0": design.spring.wall_pressure,
            "s1": design.duty.closed_gap,
        }
        figures = {
            "ring_temperature": tuple(heat),
            "relief_expected": tuple(own.relief),
            "relief_by_heat": own.moved,
            "soak_pressure": tuple(own.pressures),
            "soak_gap": tuple(own.gaps),
        }
        answer["figures"] = figures_of(ANSWER, figures, given)
        answer["findings"] = remedies.tried(
            values, _findings(own), lambda row: _options(own, row), _judge, _INPUTS, _words
        )
        seen = values.get("tell_tale") or chosen[-1].value
        usual = soak_range(family).usual
        soaks = [
            _row(design, one or seen, usual if one else design.soak.temperature, hours)
            for one, hours in _COMPARED
        ]
        read = design.soak.temperature
        tell_tales = [_row(design, one, read, own.hours) for one in TELL_TALES]
        first = [_first(design, 0.1 * tenths) for tenths in range(3, 11)]
    answer["soaks"], answer["tell_tales"], answer["first_ring"] = soaks, tell_tales, first
    answer["chosen"] = chosen
    answer["cautions"] = cautions("figures", "hot-work", "molten", "stored-spring")
    return answer


def _asked(values):
    """(Design, Heat, list of Choice): what is told last is the tell-tale."""
    design, chosen = settle(values)
    take = Chooser(values, SOAK)
    heat = heat_of(take("tell_tale"), design.soak.temperature)
    return design, heat, chosen + take.chosen


def _judge(values):
    design, heat, _ = _asked(values)
    own = soaked(design, heat, design.soak.hours)
    return _findings(own), own


def _cannot(design):
    return finding(
        "soak",
        STOP,
        "%s takes no set by heat: it flows cold, and hot it gives off poison."
        % design.duty.ring_material.title,
        "Cut it to the bore and put a spring expander behind it, or choose iron or bronze.",
    )


def _row(design, seen, read, hours):
    own = soaked(design, heat_of(seen, read), hours)
    worst = [row.outcome for row in _of_heat(own)]
    row = OrderedDict((("soak", TELL_TALES[seen][0]), ("soak_time", Quantity(hours, "h"))))
    row["ring_temperature"] = told(FIGURES["ring_temperature"], tuple(own.heat), {})
    row["relief_expected"] = told(FIGURES["relief_expected"], tuple(own.relief), {})
    row["soak_pressure"] = told(FIGURES["soak_pressure"], tuple(own.pressures), {})
    row["outcome"] = STOP if STOP in worst else WATCH if WATCH in worst else GOOD
    return row


def _first(design, relief):
    made = outcome(design, {"relief": relief - design.soak.relief.likely})
    return OrderedDict(
        (
            ("soak_gap", told(FIGURES["soak_gap"], made.free_gap, {})),
            ("relief", Quantity(relief, "1")),
            ("soak_pressure", told(FIGURES["soak_pressure"], made.wall_pressure, {})),
        )
    )


def _findings(own):
    rows = _of_heat(own)
    relief = own.relief
    if relief.high - relief.low > WIDE_RELIEF:
        rows.append(
            finding(
                "relief",
                WATCH,
                "This soak may take out %s to %s of the bending; its heat alone moves that by %s."
                % (percent(relief.low), percent(relief.high), percent(own.moved)),
                _FIRST_RING,
                Quantity(relief.high - relief.low, "1"),
                Quantity(WIDE_RELIEF, "1"),
            )
        )
    d = own.design
    added = d.expander_pressure
    low = judge_pressure(own.pressures.low + added)
    high = judge_pressure(own.pressures.high + added)
    said = "On this tool the ring comes out pressing with %s to %s." % (
        wall_pressure(own.pressures.low),
        wall_pressure(own.pressures.high),
    )
    if added:
        said += " The expander behind it adds %s." % wall_pressure(added)
    remedy = _FIRST_RING
    if judge_pressure(pressing(d)).outcome != GOOD:
        remedy = "Look to the wall pressure under sizing first."
    if low.outcome != GOOD and low.value < low.limit:
        rows.append(finding("too-slack", low.outcome, said, remedy, *_told(low)))
    if high.outcome != GOOD and high.value > high.limit:
        rows.append(finding("too-stiff", high.outcome, said, remedy, *_told(high)))
    if low.outcome == high.outcome == GOOD:
        rows.append(finding("wall-pressure", GOOD, said, "", *_told(high)))
    return rows


def _told(judged):
    return Quantity(judged.value, "MPa"), Quantity(judged.limit, "MPa")


def _of_heat(own):
    """List of Finding: too cold to set, too hot for the metal, or neither."""
    heat, family = own.heat, own.design.duty.ring_material.family
    window, spoilt = soak_range(family), SPOILT[family]
    rows = []
    if heat.likely < window.coldest:
        rows.append(
            finding(
                "soak-cold",
                STOP if own.relief.likely < LEAST_RELIEF else WATCH,
                "At about %s the soak takes out some %s of the bending, and no two rings alike."
                % (temperature(heat.likely), percent(own.relief.likely)),
                "Soak at %s." % temperature(window.usual),
                Quantity(heat.likely, "degC"),
                Quantity(window.coldest, "degC"),
            )
        )
    if heat.hottest > window.hottest:
        stop = heat.hottest > spoilt
        why = "It may be %s: past %s %s grows, scales and softens."
        if stop:
            why = "It may be %s: past %s %s is spoilt, and the ring keeps no spring."
        limit = spoilt if stop else window.hottest
        rows.append(
            finding(
                "soak-hot",
                STOP if stop else WATCH,
                why % (temperature(heat.hottest), temperature(limit), family),
                "Soak at %s, for longer." % temperature(window.usual),
                Quantity(heat.hottest, "degC"),
                Quantity(limit, "degC"),
            )
        )
    if not rows:
        why = "At about %s the metal sets and is not harmed." % temperature(heat.likely)
        rows.append(finding("soak", GOOD, why, "", Quantity(heat.likely, "degC")))
    return rows


def _options(own, row):
    """What to try: the usual soak by thermocouple; for the pressure a tool made for this soak, or
    the usual relief, or no spring asked for."""
    steady = (("tell_tale", "thermocouple"), ("soak_temperature", None), ("soak_time", None))
    tries = [change(*steady)]
    if row.check in ("too-slack", "too-stiff"):
        suited = max(int(100.0 * own.relief.likely + 0.5) / 100.0, SMALLEST_RELIEF)
        tries.append(change(("relief", suited)))
        tries.append(change(*(steady + (("relief", None),))))
        tries.append(change(*(steady + tuple([(name, None) for name in TARGETS]))))
    return tries


def _words(name, value, own):
    if name == "tell_tale":
        return "hold the ring at %s for an hour by a thermocouple or a crayon" % temperature(
            own.design.soak.temperature
        )
    if name == "relief" and value is not None:
        return "make the tool for a relief of %s, which this soak likely gives" % decimal(value, 2)
    return remedies.plain_words(name, value)
