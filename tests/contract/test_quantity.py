"""One grammar of quantities, two readers: service and app read the same, or refuse the same."""

import json
import random
import subprocess

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from contract import quantity_texts
from ringwright import units
from ringwright.core.calculations import CALCULATIONS
from ringwright.units import write

ROOT = quantity_texts.ROOT
KINDS = sorted(units.SCALES)


@pytest.fixture(scope="module")
def table():
    return json.loads(quantity_texts.TABLE.read_text(encoding="utf-8"))


class App:
    """The app's reader, running under Node."""

    def __init__(self, process):
        self.process = process

    def read(self, kind, text, unit=""):
        """A number, or the code, message and remedy of a refusal."""
        self.process.stdin.write(json.dumps([kind, text, unit]) + "\n")
        self.process.stdin.flush()
        answer = json.loads(self.process.stdout.readline())
        return tuple(answer) if isinstance(answer, list) else float(answer)


@pytest.fixture(scope="module")
def phone():
    command = ["node", str(ROOT / "tests" / "quantity.mjs")]
    pipe = subprocess.PIPE
    with subprocess.Popen(command, stdin=pipe, stdout=pipe, encoding="utf-8") as process:
        yield App(process)
        process.stdin.close()


def service(kind, text, unit=None):
    """What the service makes of a text, in the form of App.read."""
    try:
        return units.read(kind, text, unit)
    except units.UnitProblem as problem:
        return problem.code, problem.message, problem.remedy


def test_the_table_holds_thousands_of_texts_good_and_bad(table):
    assert len(table) > 3000
    good = [row for row in table if row[2] is not None]
    assert len(good) > 1500
    assert len(table) - len(good) > 1000


def test_the_service_reads_what_the_grammar_has_and_nothing_else(table):
    wrong = []
    for kind, text, expected in table:
        got = service(kind, text)
        if got != expected if expected is not None else isinstance(got, float):
            wrong.append((kind, text, expected, got))
    assert wrong == []


def test_the_app_reads_the_same_to_the_last_digit_and_refuses_in_the_same_words(table, phone):
    wrong = []
    for kind, text, _ in table:
        got, expected = phone.read(kind, text), service(kind, text)
        if got != expected:
            wrong.append((kind, text, expected, got))
    assert wrong == []


@pytest.mark.slow
def test_the_table_is_what_the_grammar_gives(table):
    """Made anew: another grammar or list of units gives another table."""
    assert quantity_texts.written() == quantity_texts.TABLE.read_text(encoding="utf-8")


def test_what_the_app_reads_by_is_what_the_service_reads_by():
    kept = (ROOT / "client_pwa/src/units/quantity.json").read_text(encoding="utf-8")
    assert kept == write.text(), (
        "python -m ringwright.units.write client_pwa/src/units/quantity.json"
    )


@pytest.mark.parametrize(
    ("kind", "text", "code", "remedy"),
    [
        # Read as 12 per minute before: a unit that begins with a digit stood close to the number.
        ("speed", "121/min", "unit-apart", 'write "121 1/min", with the space'),
        ("expansion", "11.71/K", "unit-apart", 'write "11.71 1/K", with the space'),
        # The app read 1.25 mm, the service refused; and thousands are as likely as not.
        ("length", "1,250 mm", "decimal-comma", 'write "1.250 mm" or "1250 mm"'),
        ("length", "-1,250 mm", "decimal-comma", 'write "-1.250 mm" or "-1250 mm"'),
        ("length", "1,250,000 mm", "decimal-marks", None),
        ("length", "1.250,5 mm", "decimal-marks", None),
        # The app read a thousand million times as much.
        ("pressure", "120 mPa", "unit-capitals", 'write "120 MPa" if that is meant'),
        # The app made this Infinity, JSON made that null, and null was "take the default".
        ("length", "1e308 in", "number-range", None),
        ("length", "1e100 mm", "number-range", None),
        ("length", "1234567890123456789 mm", "number-range", None),
        ("length", "3 4 mm", "measure-two", None),
        ("length", "3 1/8", "unit-missing", 'name its unit, such as "3 1/8 mm" or "3 1/8 in"'),
        ("length", "3'", "unit-unknown", None),
        ("count", "3 mm", "unit-unwanted", "give the number alone"),
        ("length", "", "measure", None),
        ("length", "9" * 60 + " mm", "measure-long", None),
    ],
)
def test_what_could_be_misread_is_refused_by_both_with_its_remedy(phone, kind, text, code, remedy):
    got = service(kind, text)
    assert got[0] == code
    assert got == phone.read(kind, text)
    assert got[1]
    assert got[2] == remedy if remedy else got[2]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("80,5 mm", 80.5),
        ("3\u215b in", 79.375),
        ("3-1/8 in", 79.375),
        ("3 1\u20448\u201d", 79.375),
        ("3,125\u00a0in", None),
        ("0,125 in", 3.175),
        ("1\u202f250,125 mm", 1250.125),
        ("\u22124 thou", -0.1016),
        ("80", 80.0),
    ],
)
def test_what_people_write_and_phones_make_of_it(phone, text, expected):
    got = service("length", text)
    assert got == phone.read("length", text)
    assert got == expected if expected is not None else got[0] == "decimal-comma"


def test_the_inputs_of_a_job_file_are_a_request_body(client):
    """Whatever the app stored, counts and commas included, goes to the service as it stands."""
    stored = json.loads((ROOT / "tests/vectors/jobs/version_3.json").read_text(encoding="utf-8"))
    asked = [job["inputs"] for job in stored["jobs"]]
    asked.append(
        {"bore": "3\u215b in", "steam_pressure": "8,3 bar", "rings": "3", "relief": "0,85"}
    )
    for inputs in asked:
        for calculation in ("sizing", "tooling", *(["running"] if "stroke" in inputs else [])):
            known = {entry.name for entry in CALCULATIONS[calculation].fields}
            body = {name: value for name, value in inputs.items() if name in known}
            response = client.post("/v1/" + calculation, json=body)
            assert response.status_code == 200, (calculation, body, response.get_json())


def test_the_examples_of_the_specification_are_taken_where_a_newcomer_tries_them(client):
    """The example of a length was "4 thou", which no bore is."""
    tried = {
        "length": "bore",
        "steam_pressure": "steam_pressure",
        "temperature": "steam_temperature",
    }
    for kind, name in tried.items():
        for text in units.EXAMPLES[kind]:
            response = client.post("/v1/sizing", json={"bore": "80 mm", name: text})
            assert response.status_code == 200, response.get_json()
    for kind, texts in units.EXAMPLES.items():
        assert [text for text in texts if not isinstance(service(kind, text), float)] == []


@pytest.mark.parametrize(
    ("query", "code"),
    [
        ("speed=121/min", "unit-apart"),
        ("bore=1,250", "decimal-comma"),
        ("bore=1e308%20in", "number-range"),
    ],
)
def test_a_query_is_read_by_the_same_grammar(client, query, code):
    response = client.get(
        "/v1/running?bore=80&" + query if "bore" not in query else "/v1/sizing?" + query
    )
    assert code in [error["code"] for error in response.get_json()["errors"]]


@pytest.mark.parametrize(("unit", "expected"), [("mm", 3.125), ("in", 79.375), ("thou", 0.079375)])
def test_the_unit_beside_an_entry_is_taken_where_the_text_names_none(phone, unit, expected):
    assert service("length", "3 1/8", unit) == expected == phone.read("length", "3 1/8", unit)
    assert service("length", "3 1/8 in", unit) == 79.375 == phone.read("length", "3 1/8 in", unit)


def test_every_refusal_is_provoked(table):
    codes = {got[0] for kind, text, _ in table if isinstance(got := service(kind, text), tuple)}
    assert codes == units.reader.grammar.REFUSALS.keys() - {"measure-long"}


# Texts that nobody thought of, by what has been written and by what no hand would.
ANY_TEXT = st.one_of(
    st.text(max_size=60),
    st.text(alphabet=quantity_texts.OTHER_LETTERS, max_size=20),
    st.randoms(use_true_random=False).map(
        lambda dice: quantity_texts.altered(quantity_texts.drawn("length", dice), dice)
    ),
)


@settings(max_examples=500, deadline=None)
@given(kind=st.sampled_from(KINDS), text=ANY_TEXT)
def test_any_text_is_read_or_refused_alike(phone, kind, text):
    assert service(kind, text) == phone.read(kind, text)


@settings(max_examples=300, deadline=None)
@given(kind=st.sampled_from(sorted(quantity_texts.FACTORS)), text=ANY_TEXT)
def test_any_text_is_read_as_the_grammar_has_it(kind, text):
    got = service(kind, text)
    if "rad" not in text:
        assert quantity_texts.value(kind, text) == (got if isinstance(got, float) else None)


def test_rounding_is_to_the_nearest_double_in_both(phone):
    """Numbers just beside the middle between two doubles, where one rounding too many shows."""
    dice = random.Random(9)
    for _ in range(300):
        double = dice.uniform(1, 1000)
        middle = (int(double * 2**45) * 2 + 1, 2**46)
        text = "%d.%020d mm" % divmod(middle[0] * 10**20 // middle[1], 10**20)
        assert phone.read("length", text) == float(text[:-3]) == service("length", text)
