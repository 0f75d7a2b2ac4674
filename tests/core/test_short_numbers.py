"""Answers carry short numbers: what is left off is less than any gauge or sum can tell.

Held against Python's own decimal arithmetic, which rounds exactly, and under both engines.
"""

import json
import math
import random
import re
from decimal import Decimal
from pathlib import Path

import pytest

from core import phone
from ringwright.api import answers, examples
from ringwright.core import calculations
from ringwright.core.fields import checked
from ringwright.core.problems import CoreProblem
from ringwright.core.records import plain, short

dice = random.Random(912)
NUMBERS = [dice.uniform(-1, 1) * 10.0 ** dice.randint(-9, 11) for _ in range(4000)]
# What inputs in inches, thou, fractions and psi become, and sums of such.
NUMBERS += [n / 64 * 25.4 for n in range(1, 600)] + [0.1 * n for n in range(1, 300)]
NUMBERS += [n * 6894.757293168361e-6 for n in range(1, 300)]
LONGEST = 13


def digits(text):
    """How many significant digits a number in text has."""
    return len(text.lower().partition("e")[0].lstrip("-").replace(".", "").strip("0"))


def test_float_noise_goes():
    for noisy, wanted in (
        (0.047999999999999994, "0.048"),
        (0.1 + 0.2, "0.3"),
        (3.125 * 25.4 * 1.0000000000000002, "79.375"),
        (210000.00000000003, "210000.0"),
        (-1.1 * 1.1, "-1.21"),
        (0.0, "0.0"),
        (-0.0, "0.0"),
        (2.4243207572873674e-20, "2.42e-20"),
        (5e-324, "0.0"),
    ):
        assert repr(short(noisy)) == wanted


def test_no_digit_that_means_something_goes():
    """By exact arithmetic, no more goes than half of the twelfth digit (and a thousandth of it)."""
    for number in NUMBERS:
        rounded = short(number)
        assert digits(repr(rounded)) <= LONGEST
        twelfth = Decimal(1).scaleb(Decimal(number).adjusted() - 11)
        gone = abs(Decimal(repr(rounded)) - Decimal(number))
        assert gone <= max(twelfth * Decimal("0.501"), Decimal("1e-22")), number
        assert short(rounded) == rounded


@pytest.mark.parametrize("number", [1e13, 123456789012345.6, 1e300, float("inf")])
def test_what_is_out_of_reach_stays(number):
    assert short(number) == number


def test_no_number_stays_none():
    assert math.isnan(short(float("nan")))


def test_the_phone_rounds_to_the_same_digits():
    """Every bit, and as its own JSON writes them the text is short too."""
    code = (
        "import json\n"
        "from ringwright.core.records import short\n"
        "answer = json.dumps([short(one) for one in json.loads(%r)])" % json.dumps(NUMBERS)
    )
    text = phone.asked([{"python": code}])[0]
    assert json.loads(text) == [short(number) for number in NUMBERS]


EXAMPLES = [
    pytest.param(name, shown["value"], id="%s: %s" % (name, title))
    for name, found in examples.read_all().items()
    for title, shown in found.items()
    if name in calculations.CALCULATIONS
]


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize(("name", "value"), EXAMPLES)
def test_no_answer_holds_a_long_number(client, name, value, units):
    query = {"units": units, "working": "true"}
    answer = client.post("/v1/" + name, query_string=query, json=value)
    assert answer.status_code == 200
    found = []
    numbers = json.loads(answer.data, parse_float=lambda text: found.append(text) or 0.0)
    assert numbers
    assert found
    assert [text for text in found if digits(text) > LONGEST] == []


@pytest.mark.parametrize("units", ["metric", "inch"])
def test_no_table_holds_a_long_number(client, units):
    for name in ("sizing", "tooling", "route", "job"):
        text = client.get("/v1/%s.csv?bore=79.375&units=%s" % (name, units)).get_data(as_text=True)
        numbers = re.findall(r"(?<![\d.])\d+\.\d+(?:e-?\d+)?", text)
        assert len(numbers) >= 4
        assert [one for one in numbers if digits(one) > LONGEST] == []


def test_the_core_and_the_service_say_the_same():
    vectors = Path(__file__).parents[1] / "vectors" / "requests.json"
    for row in json.loads(vectors.read_text(encoding="utf-8")):
        calculation = calculations.CALCULATIONS[row["calculation"]]
        try:
            answer = calculation.run(checked(calculation.fields, row["request"]))
        except CoreProblem:  # what is refused has no answer
            continue
        told = json.loads(answers.to_json(answer))
        assert told == json.loads(json.dumps(plain(answer))), row["name"]
