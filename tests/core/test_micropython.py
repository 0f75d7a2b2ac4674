"""The core gives under the phone's Python what it gives under this one, number for number."""

import json
import math
import random

import pytest

from core import phone, phone_python
from ringwright.core import calculations

# Made-up requests of each sort for each calculation: every day, and in a whole run.
FEW, MANY = 3, 24
# Answers have 12 or 13 digits, the last of which may differ by one where a tie falls between the
# engines' sines: two parts in 10^12 at most.
RELATIVE = 2.1e-12
# The share of all numbers that agree to their last digit.
ALIKE = 0.999
# The contact solver's pressures are fourth differences of what it solves for: they enlarge the last
# bit in which the two engines' sines differ; most where a ring that no heat has set hardly bears.
SOLVED = {"wall-pressure": 1e-10, "bore-survey": 1e-10, "ring-without-heat": 1e-9}
NEVER_GIVEN = 0.55  # share of the optional inputs left out of a request made up here


def random_request(fields, dice):
    """A request made up from the table of inputs: in range mostly, out of it now and then."""
    request = {}
    for entry in fields:
        if entry.required or dice.random() > NEVER_GIVEN:
            request[entry.name] = random_value(entry, dice)
    return request


def random_value(entry, dice):
    if entry.kind == "choice":
        return dice.choice(entry.choices)
    if entry.kind == "text":
        return dice.choice(("Marigold", "low pressure", "nº 2"))
    if entry.kind == "flag":
        return dice.random() < 0.5
    if entry.kind == "object":
        return random_request(entry.items, dice)
    if entry.kind == "records":
        fewest = max(entry.lowest or 0, 1)
        count = dice.randint(fewest, fewest + 3)
        if len(entry.items) == 1 and entry.items[0].name == "":
            return [random_value(entry.items[0], dice) for _ in range(count)]
        return [random_request(entry.items, dice) for _ in range(count)]
    low = 0.0 if entry.lowest is None else entry.lowest
    high = low + 100.0 if entry.highest is None else entry.highest
    if entry.kind == "count":
        return dice.randint(int(low), min(int(high), int(low) + 6))
    if low > 0 and high / low > 20:
        return math.exp(dice.uniform(math.log(low), math.log(high)))
    return dice.uniform(low, high)


def plausible(name, dice):
    """A request that a machinist might send: sizes that belong together."""
    bore = dice.choice((25.4, 38.1, 50.8, 63.5, 76.2, 80.0, 101.6, 127.0, 150.0, 203.2, 254.0))
    bore = bore + dice.choice((0.0, 0.05, 0.13, 0.31))
    request = {"bore": bore}
    known = {entry.name: entry for entry in calculations.CALCULATIONS[name].fields}
    for key, choices in (
        ("ring_type", ("plain", "double-turn")),
        ("rings", (1, 2, 4)),
        ("ring_material", ("grey-iron", "grey-iron-250", "ductile-iron", "phosphor-bronze")),
        ("piston_material", ("grey-iron", "steel", "gunmetal", "aluminium")),
        ("steam_pressure", (0.2, 0.55, 0.69, 0.83, 1.24)),
        ("setting", ("sprung", "bound", "spread")),
        ("radial_thickness", (bore / 20, bore / 25, bore / 32)),
        ("wall_pressure", (0.035, 0.048, 0.07)),
        ("relief", (0.6, 0.8, 0.95)),
    ):
        if key in known and (known[key].required or dice.random() < 0.45):
            request[key] = dice.choice(choices)
    if name in ("running", "piston-valve", "ring-pack"):
        request["stroke"] = dice.uniform(1.0, 1.6) * bore
        request["speed"] = dice.choice((90, 160, 250, 400))
        request["port_width"] = dice.uniform(0.1, 0.4) * bore
    if name == "groove-recut":
        wide = bore * dice.uniform(0.03, 0.08)
        request["groove_readings"] = [
            {"mouth": wide * dice.uniform(1.0, 1.1), "bottom": wide} for _ in range(3)
        ]
        request["end_land"], request["old_ring_width"] = 0.7 * wide, 0.8 * wide
    if name == "inspection":
        request["measured_free_gap"] = dice.uniform(0.04, 0.12) * bore
    if name == "bore-survey":
        request["readings"] = gauge_readings(bore, dice)
    if name == "stock":
        request.update(rings_and_bars(bore, dice))
    return {key: value for key, value in request.items() if key in known}


def rings_and_bars(bore, dice):
    """Sets of rings of about that bore, ends of bar in the rack, and bars on offer."""
    sets = [
        {
            "outside_diameter": size,
            "inside_diameter": 0.9 * size,
            "part_length": dice.uniform(4.0, 20.0),
            "count": dice.choice((2, 6, 24)),
        }
        for size in (bore * dice.uniform(0.8, 1.1) for _ in range(dice.choice((1, 2, 4))))
    ]
    rack = [
        {"diameter": bore * dice.uniform(0.9, 1.4), "length": dice.uniform(50.0, 400.0)}
        for _ in range(dice.choice((0, 2, 6)))
    ]
    offers = [
        {"diameter": 1.2 * bore, "length": length, "price": dice.uniform(0.1, 0.2) * length}
        for length in dice.choice(((), (300.0,), (250.0, 1000.0)))
    ]
    return {"sets": sets, "bars": rack, "bars_to_buy": offers}


def gauge_readings(bore, dice):
    """Diameters of a worn bore at three heights, in two or four directions."""
    directions = dice.choice(((0.0, 90.0), (0.0, 45.0, 90.0, 135.0)))
    return [
        {
            "height": height,
            "direction": direction,
            "diameter": bore + dice.uniform(0.0, 0.004) * bore,
        }
        for height in (5.0, 60.0, 110.0)
        for direction in directions
    ]


def requests(per_calculation):
    """[name, request] for every calculation, the same each time."""
    dice = random.Random(20240229)
    asked = []
    for name, calculation in calculations.CALCULATIONS.items():
        asked.append([name, {}])
        if not calculation.fields:
            continue
        for _ in range(per_calculation):
            asked.append([name, plausible(name, dice)])
            asked.append([name, random_request(calculation.fields, dice)])
    asked.extend(
        [
            ["sizing", {"bore": -1}],
            ["sizing", {"bore": "eighty", "colour": 1}],
            ["sizing", {"bore": True}],
            ["sizing", []],
        ]
    )
    return asked


def differences(here, there, path="answer", relative=RELATIVE, least=1e-13):
    """Where two trees differ: text or shape at all, numbers by more than `relative`.

    What is no more than `least` apart is alike. A number in a row of numbers is held against the
    largest of the row: beside a slack end a pressure is what is left of larger ones.
    """
    number = (int, float)
    if isinstance(here, bool) or isinstance(there, bool) or here is None or there is None:
        return [] if here is there else ["%s: %r, %r" % (path, here, there)]
    if isinstance(here, number) and isinstance(there, number):
        near = math.isclose(here, there, rel_tol=relative, abs_tol=least)
        return [] if near else ["%s: %r, %r" % (path, here, there)]
    if isinstance(here, dict) and isinstance(there, dict):
        found = []
        for key in sorted({*here, *there}):
            if key not in here or key not in there:
                found.append("%s.%s: only in one" % (path, key))
            else:
                found.extend(differences(here[key], there[key], "%s.%s" % (path, key), relative))
        return found
    if isinstance(here, list) and isinstance(there, list):
        if len(here) != len(there):
            return ["%s: %d and %d entries" % (path, len(here), len(there))]
        found = []
        if all(type(one) in number for one in here):
            least = max([least] + [relative * abs(one) for one in here])
        for i, (one, other) in enumerate(zip(here, there, strict=True)):
            found.extend(differences(one, other, "%s[%d]" % (path, i), relative, least))
        return found
    return [] if here == there else ["%s: %r, %r" % (path, here, there)]


@pytest.fixture(
    scope="module",
    params=[
        pytest.param(FEW, id="few"),
        pytest.param(MANY, id="many", marks=pytest.mark.slow),
    ],
)
def both(request):
    """[(name, request, answer here, answer on the phone)]."""
    asked = requests(request.param)
    there = phone.asked(asked)
    rows = []
    for (name, made_up), text in zip(asked, there, strict=True):
        try:
            here = json.loads(calculations.run_json(name, json.dumps(made_up)))
        except Exception as error:  # so that one broken request does not hide the others
            here = {"broken here": repr(error)}
        rows.append((name, made_up, here, json.loads(text)))
    return rows


@pytest.mark.parametrize("name", list(calculations.CALCULATIONS))
def test_same_answers_on_the_phone(both, name):
    worst = []
    compared = 0
    for asked, request, here, there in both:
        if asked == name and "broken here" not in here:
            compared += 1
            found = differences(here, there, relative=SOLVED.get(name, RELATIVE))
            if found:
                worst.append("%s\n    %s" % (json.dumps(request), "\n    ".join(found[:5])))
    assert compared
    assert not worst, "%d of %d differ:\n%s" % (len(worst), compared, "\n".join(worst[:5]))


def pairs(here, there):
    """Every float of one tree beside that of the other."""
    if isinstance(here, dict):
        return [pair for key in here if key in there for pair in pairs(here[key], there[key])]
    if isinstance(here, list):
        return [pair for one in zip(here, there, strict=False) for pair in pairs(*one)]
    return [(here, there)] if isinstance(here, float) and here else []


def test_nearly_all_numbers_agree_to_the_last_digit(both):
    """The rest are what RELATIVE allows; the contact solver's own are left out."""
    found = [
        pair
        for name, _request, here, there in both
        if name not in SOLVED
        for pair in pairs(here, there)
    ]
    assert len(found) > 5000
    alike = sum(one == other for one, other in found)
    assert alike >= ALIKE * len(found), "%d of %d" % (alike, len(found))


def test_no_request_breaks_the_core(both):
    """Whatever is asked comes back as an answer or as a problem, never as a bare exception."""
    broken = [
        "%s %s: %s" % (name, json.dumps(request), (here.get("broken here"), there.get("broken")))
        for name, request, here, there in both
        if "broken here" in here or "broken" in there
    ]
    assert not broken, "\n".join(broken[:10])


def test_most_requests_are_worked(both):
    """Comparing refusals alone would prove little."""
    for name, calculation in calculations.CALCULATIONS.items():
        rows = [here for asked, _request, here, _there in both if asked == name]
        answered = [here for here in rows if "answer" in here]
        assert len(answered) >= (len(rows) // 6 if calculation.fields else 1), name


def test_order_that_people_read_is_kept(both):
    """Figures come in the same order in both engines."""
    for name, _request, here, there in both:
        if "figures" in here.get("answer", {}):
            assert list(here["answer"]["figures"]) == list(there["answer"]["figures"]), name


def test_a_difference_is_noticed():
    assert differences({"a": [1.0]}, {"a": [1.0 + 1e-11]})
    assert differences({"a": "x"}, {"a": "y"})
    assert differences({"a": 1}, {"b": 1})
    assert differences([1, 2], [1])
    assert differences([1.0, 2.0, 0.01], [1.0, 2.0, 0.01 + 1e-11])
    assert not differences([1.0, 2.0, 1e-3], [1.0, 2.0, 1e-3 + 1e-12])
    assert differences(True, 1)
    assert not differences({"a": [1.0, "x", None]}, {"a": [1.0 + 1e-14, "x", None]})


def test_doubles_cross_unharmed():
    """Text in and out keeps every bit of a number."""
    dice = random.Random(7)
    numbers = [dice.uniform(-1, 1) * 10.0 ** dice.randint(-20, 20) for _ in range(500)]
    numbers += [0.1, 1 / 3, 2.0**53, 210000000000, 5e-324, 1.7976931348623157e308]
    code = "import json\nanswer = json.dumps(json.loads(%r))" % json.dumps(numbers)
    assert json.loads(phone.asked([{"python": code}])[0]) == numbers


def test_the_list_of_what_the_phone_has_is_what_it_has():
    code = (
        "import builtins, collections, functools, itertools, json, math\n"
        "found = {}\n"
        "for module in (collections, functools, itertools, json, math):\n"
        "    found[module.__name__] = dir(module)\n"
        "for kind in (str, list, tuple, dict, set, int, float):\n"
        "    found[kind.__name__] = dir(kind)\n"
        "found['builtins'] = dir(builtins)\n"
        "answer = json.dumps(found)\n"
    )
    found = json.loads(phone.asked([{"python": code}])[0])
    for name, listed in {**phone_python.MODULES, **phone_python.METHODS}.items():
        there = {entry for entry in found[name] if not entry.startswith("__")}
        assert set(listed) <= there, name
        assert there - set(listed) <= {"MutableMapping"}, name
    assert set(phone_python.BUILTINS) <= set(found["builtins"])
