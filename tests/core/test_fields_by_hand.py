"""What a request may hold: each limit from both sides, and its words worked by hand.

An inch is 25.4 mm, 1 psi 0.006894757 MPa, 1 lbf 4.448222 N, 1 lb 0.4535924 kg.
"""

import pytest

from ringwright.core import fields
from ringwright.core.fields import Default, Field, checked, field
from ringwright.core.problems import InputProblem


def faults_of(entries, request):
    with pytest.raises(InputProblem) as caught:
        checked(entries, request)
    return caught.value.faults


def size(kind="length", lowest=None, highest=None, **more):
    return field("size", kind, "a size of it", lowest=lowest, highest=highest, **more)


# --- limits ---


@pytest.mark.parametrize("kind", ["length", "count"])
def test_a_limit_is_allowed_and_what_is_past_it_is_not(kind):
    entry = size(kind, 3, 7)
    for value in (3, 3.0, 5, 7, 7.0):
        taken = checked((entry,), {"size": value})["size"]
        assert taken == value
        assert type(taken) is (int if kind == "count" else float)
    for value in (2, 8, -5):
        (fault,) = faults_of((entry,), {"size": value})
        assert (fault.code, fault.path, fault.value) == ("range", ("size",), value)
        assert (fault.lowest, fault.highest) == (3, 7)
    if kind == "length":
        for value in (2.9999, 7.0001):
            assert faults_of((entry,), {"size": value})[0].code == "range"


def test_a_limit_that_is_itself_not_allowed():
    entry = size(lowest=0.5, highest=4.0, above_lowest=True)
    assert checked((entry,), {"size": 0.5001}) == {"size": 0.5001}
    assert faults_of((entry,), {"size": 0.5})[0].code == "range"
    assert checked((entry,), {"size": 4.0}) == {"size": 4.0}


def test_one_limit_alone():
    assert checked((size(lowest=2.0),), {"size": 1e6}) == {"size": 1e6}
    assert checked((size(highest=2.0),), {"size": -1e6}) == {"size": -1e6}
    assert faults_of((size(lowest=2.0),), {"size": 1.9})[0].highest is None
    assert faults_of((size(highest=2.0),), {"size": 2.1})[0].lowest is None
    assert checked((size(),), {"size": 1e20}) == {"size": 1e20}


@pytest.mark.parametrize("value", [True, False, "3", [3], {}])
def test_what_is_no_number(value):
    (fault,) = faults_of((size(lowest=0.0),), {"size": value})
    assert (fault.code, fault.remedy) == ("number", "give a number in mm")


@pytest.mark.parametrize("value", [float("inf"), float("nan"), float("-inf")])
def test_what_is_no_ordinary_number(value):
    assert faults_of((size(),), {"size": value})[0].remedy == "give an ordinary number"


def test_a_count_is_whole():
    (fault,) = faults_of((size("count", 1, 9),), {"size": 2.5})
    assert (fault.code, fault.remedy) == ("whole-number", "give a whole number")
    assert faults_of((size("count", 1, 9),), {"size": "2"})[0].remedy == (
        "give a number in whole numbers"
    )
    assert faults_of((size("ratio"),), {"size": "2"})[0].remedy == "give a number in plain numbers"


def test_text_of_so_many_letters():
    short = size("text", highest=4)
    assert checked((short,), {"size": "abcd"}) == {"size": "abcd"}
    assert faults_of((short,), {"size": "abcde"})[0].remedy == "give text of at most 4 letters"
    assert faults_of((short,), {"size": 5})[0].code == "text"
    usual = size("text")
    assert checked((usual,), {"size": "x" * 200})
    assert faults_of((usual,), {"size": "x" * 201})[0].code == "text"


def test_flags_and_choices():
    assert checked((size("flag"),), {"size": False}) == {"size": False}
    assert checked((size("flag"),), {"size": True}) == {"size": True}
    for value in (0, 1, "true"):
        assert faults_of((size("flag"),), {"size": value})[0].remedy == "give true or false"
    choice = size("choice", choices=("a", "b"))
    assert checked((choice,), {"size": "b"}) == {"size": "b"}
    assert faults_of((choice,), {"size": "c"})[0].message == "size cannot be c"


def test_a_list_of_so_many():
    inner = (field("deep", "length", "a depth", lowest=1.0, required=True),)
    rows = field("rows", "records", "the rows", lowest=2, highest=3, items=inner)
    one = {"deep": 4.0}
    assert checked((rows,), {"rows": [one, one]}) == {"rows": [one, one]}
    assert len(checked((rows,), {"rows": [one] * 3})["rows"]) == 3
    (fault,) = faults_of((rows,), {"rows": [one]})
    assert (fault.code, fault.message) == ("list-length", "rows has 1 entry")
    assert fault.remedy == "give 2 to 3 entries"
    assert faults_of((rows,), {"rows": [one] * 4})[0].message == "rows has 4 entries"
    found = faults_of((rows,), {"rows": [one, {"deep": 0.5}, {}]})
    assert [(fault.path, fault.code) for fault in found] == [
        (("rows", 1, "deep"), "range"),
        (("rows", 2, "deep"), "required"),
    ]
    assert faults_of((rows,), {"rows": one})[0].code == "list"
    usual = field("rows", "records", "the rows", items=inner)
    assert checked((usual,), {"rows": []}) == {"rows": []}
    assert len(checked((usual,), {"rows": [one] * 500})["rows"]) == 500
    assert faults_of((usual,), {"rows": [one] * 501})[0].remedy == "give 0 to 500 entries"


def test_a_list_of_plain_numbers():
    item = field("", "length", "one", lowest=1.0)
    rows = field("rows", "records", "the sizes", items=(item,))
    assert checked((rows,), {"rows": [3, 4.5]}) == {"rows": [3.0, 4.5]}
    (fault,) = faults_of((rows,), {"rows": [3, 0.5]})
    assert fault.path == ("rows", 1)
    assert fault.message == "rows.1 is 0.5 mm (0.01969 in)"
    # One field that has a name is an object still, and so are two without.
    named = field("rows", "records", "the rows", items=(field("deep", "length", "it"),))
    assert checked((named,), {"rows": [{"deep": 2}]}) == {"rows": [{"deep": 2.0}]}


def test_everything_wrong_is_told_at_once():
    entries = (size(lowest=1.0), field("other", "flag", "another", required=True))
    found = faults_of(entries, {"size": 0.5, "stray": 1, "b": 2, "x" * 41: 3, "y" * 40: 4})
    assert [fault.code for fault in found] == ["unknown-field"] * 4 + ["range", "required"]
    said = [fault.message for fault in found]
    assert said[:4] == [
        "there is no input called b here",
        "there is no input called stray here",
        "there is no input called " + "x" * 40 + "... here",
        "there is no input called " + "y" * 40 + " here",
    ]
    assert found[5].remedy == "give another"
    assert faults_of(entries, [])[0].message == "this must be an object with named values"


def test_one_answer_to_one_question():
    fields.at_most_one({"a": 1.0, "b": None}, ("a", "b"))
    with pytest.raises(InputProblem, match="a and b cannot"):
        fields.at_most_one({"a": 1.0, "b": 0.0}, ("a", "b"))
    with pytest.raises(InputProblem) as caught:
        fields.at_most_one({"a": 1.0, "b": 0.0, "c": 2.0}, ("a", "b", "c"))
    assert [fault.path for fault in caught.value.faults] == [("b",), ("c",)]
    assert "a and b and c cannot be given together" in caught.value.faults[0].message


# --- words ---


@pytest.mark.parametrize(
    ("kind", "lowest", "highest", "above", "said"),
    [
        # 10/25.4 = 0.3937 up to 0.394; 900/25.4 = 35.43 down to 35.4.
        ("length", 10.0, 900.0, False, "10 to 900 mm (0.394 to 35.4 in)"),
        # 0.05/0.0068948 = 7.2519 up; 3/0.0068948 = 435.11 down.
        ("pressure", 0.05, 3.0, False, "0.0500 to 3 MPa (7.26 to 435 psi)"),
        ("temperature", -40.0, 250.0, False, "-40 to 250 degC (-40 to 482 degF)"),
        # 2.5/4.448222 = 0.56202 up; 40/4.448222 = 8.99236 down.
        ("force", 2.5, 40.0, False, "2.50 to 40 N (0.563 to 8.99 lbf)"),
        # 0.3/0.4535924 = 0.66139 up.
        ("mass", 0.3, None, False, "0.300 kg or more (0.662 lb or more)"),
        ("length", 0.0, None, True, "more than 0 mm (more than 0 in)"),
        ("angle", 0.0, 90.0, True, "more than 0 and at most 90 deg"),
        ("angle", None, 90.0, False, "at most 90 deg"),
        ("angle", None, 12.3449, False, "at most 12.3 deg"),
        ("ratio", 0.25, 1.5, False, "0.250 to 1.50"),
        ("count", 1, 40, False, "1 to 40"),
        ("number", None, None, False, "any number"),
        ("speed", None, None, False, "any number 1/min"),
    ],
)  # fmt: skip
def test_a_range_in_both_measures(kind, lowest, highest, above, said):
    entry = size(kind, lowest, highest, above_lowest=above)
    assert fields.range_words(entry) == said


@pytest.mark.parametrize(
    ("value", "lowest", "said"),
    [
        (12.3449, True, "12.4"),
        (12.3449, False, "12.3"),
        (12.3, True, "12.3"),
        (12.3, False, "12.3"),
        (-0.12345, True, "-0.123"),
        (-0.12345, False, "-0.124"),
        (123456.7, True, "124 000"),
        (123456.0, False, "123456"),
        (999999.0, True, "999999"),
        (1000000.0, True, "1 000 000"),
        (1234567.0, False, "1 230 000"),
        (0.0, True, "0"),
        (-7.0, False, "-7"),
    ],
)
def test_a_bound_is_rounded_to_its_inner_side(value, lowest, said):
    assert fields.bound_words(value, lowest) == said


@pytest.mark.parametrize(
    ("kind", "value", "said"),
    [
        ("length", 3.5, "3.5 mm (0.1378 in)"),
        ("temperature", 212.0, "212 degC (413.6 degF)"),
        ("temperature", -7.5, "-7.5 degC (18.50 degF)"),
        ("pressure", 0.8, "0.8 MPa (116.0 psi)"),
        ("force", 12.25, "12.25 N (2.754 lbf)"),
        ("mass", 0.75, "0.75 kg (1.653 lb)"),
        ("count", 12, "12"),
        ("ratio", 0.123456789, "0.123457"),
        ("speed", 160.0, "160 1/min"),
        ("length", 1e9, "1000000000 mm"),
        ("length", -1e9, "-1000000000 mm"),
        ("length", 25.4 * 3e7, "762000000 mm (30 000 000 in)"),
        ("number", 1e15, "1e+15"),
        ("number", 999999999999999.0, "999999999999999"),
    ],
)
def test_a_value_in_both_measures(kind, value, said):
    assert fields.quantity_words(kind, value) == said


@pytest.mark.parametrize(
    ("kind", "lowest", "highest", "value", "unit"),
    [
        # 3.125 in are 79.4 mm; 3125 thou too.
        ("length", 10.0, 900.0, 3.125, "in"),
        ("length", 0.5, 5.0, 60.0, "thou"),
        ("length", 10.0, 900.0, 0.2, ""),
        ("length", 10.0, 900.0, -3.0, ""),
        ("length", None, None, 0.0, ""),
        # Just an inch is 25.4 mm, at either limit.
        ("length", 25.4, None, 1.0, "in"),
        ("length", None, 25.4, 1.0, "in"),
        ("length", 25.4001, None, 1.0, ""),
        # 8 bar are 0.8 MPa; 120 as bar would be 12, as psi it is 0.83.
        ("pressure", 0.05, 3.0, 8.0, "bar"),
        ("pressure", 0.05, 3.0, 120.0, "psi"),
        ("modulus", 50000.0, 250000.0, 110.0, "GPa"),
        ("modulus", 50000.0, 250000.0, 15e6, "psi"),
        # 500 degF are 260 C.
        ("temperature", 200.0, 300.0, 500.0, "degF"),
        ("temperature", 259.0, 261.0, 500.0, "degF"),
        ("force", 20.0, 25.0, 5.0, "lbf"),
        ("mass", 20.0, 25.0, 5.0, ""),
        # 5 thousandths of an inch are 0.127 mm.
        ("length", 0.1, 0.2, 0.005, "in"),
    ],
)
def test_the_unit_that_was_meant(kind, lowest, highest, value, unit):
    assert fields.likely_unit(size(kind, lowest, highest), value) == unit


@pytest.mark.parametrize(
    ("kind", "value", "meant", "unit"),
    [
        ("length", 0.5, 12.7, "in"),
        ("length", 0.5, 0.0127, "thou"),
        ("pressure", 0.5, 0.05, "bar"),
        ("pressure", 0.5, 0.003447379, "psi"),
        ("modulus", 0.5, 500.0, "GPa"),
        ("modulus", 0.5, 0.003447379, "psi"),
        ("temperature", 50.0, 10.0, "degF"),
        ("force", 0.5, 2.224111, "lbf"),
    ],
)
def test_the_unit_that_was_meant_by_its_exact_measure(kind, value, meant, unit):
    """Half a per cent either side of what the number is in that unit it is meant, and no nearer."""
    assert fields.likely_unit(size(kind, 0.995 * meant, 1.005 * meant), value) == unit
    assert fields.likely_unit(size(kind, 1.002 * meant, 1.005 * meant), value) == ""
    assert fields.likely_unit(size(kind, 0.995 * meant, 0.998 * meant), value) == ""


def test_a_refusal_asks_what_was_meant():
    (fault,) = faults_of((size(lowest=10.0, highest=900.0),), {"size": 3.125})
    assert fault.message == "size is 3.125 mm (0.1230 in)"
    assert fault.remedy.endswith("; did you mean 3.125 in?")
    (fault,) = faults_of((size(lowest=10.0, highest=900.0),), {"size": 10**300})
    assert (fault.value, type(fault.value)) == (1e300, float)
    (fault,) = faults_of((size("count", 1, 9),), {"size": 10**9})
    assert type(fault.value) is float
    (fault,) = faults_of((size("count", 1, 9),), {"size": 10**9 - 1})
    assert type(fault.value) is int
    (fault,) = faults_of((size("count", 1, 9),), {"size": -(10**9)})
    assert type(fault.value) is float


# --- what is taken where nothing is given ---


def default(value=None, rule=None, words="", cases=None):
    return Default(words=words, value=value, rule=rule, why="so", cases=cases)


def test_a_default_says_its_value_in_its_kind():
    said = [
        (size("length", default=default(2.5)), "2.50 mm (0.098 in)"),
        (size("temperature", default=default(20.0)), "20 C (68 F)"),
        (size("mass", default=default(2.0)), "2.00 kg (4.4 lb)"),
        (size("force", default=default(10.0)), "10.0 N (2.2 lbf)"),
        (size("angle", default=default(45.0)), "45 deg"),
        (size("ratio", default=default(0.9)), "0.9"),
        (size("flag", default=default(True)), "true"),
        (size("flag", default=default(False)), "false"),
        (size("choice", default=default("plain")), "plain"),
        (size("length", default=default(2.5, words="a little")), "a little"),
    ]
    assert [entry.default.words for entry, _ in said] == [words for _, words in said]
    assert fields.value_words("number", None) == "none"
    cases = {"plain": default(2.5), "double-turn": default(words="half"), "": default(0.5)}
    entry = size("length", default=default(cases=cases))
    assert entry.default.words == (
        "plain: 2.50 mm (0.098 in); double-turn: half; 0.500 mm (0.0197 in)"
    )


def test_what_is_taken_comes_from_its_rule_or_value():
    assert fields.taken(size(default=default(2.5)), "", ()) == (2.5, "so")
    ruled = size(default=default(rule=lambda a, b: a - 2.0 * b, words="less"))
    assert fields.taken(ruled, "", (9.0, 2.0)) == (5.0, "so")
    cases = {"a": default(1.5), "b": default(rule=lambda: 7.0, words="seven")}
    entry = size(default=default(cases=cases))
    assert fields.taken(entry, "a", ())[0] == 1.5
    assert fields.taken(entry, "b", ())[0] == 7.0


def test_an_entry_of_a_list_takes_what_is_usual():
    usual = (size(default=default(2.5)), field("bare", "length", "without"))
    assert fields.with_usual(usual, {}) == {"size": 2.5, "bare": None}
    assert fields.with_usual(usual, {"size": 0.0, "bare": 1.0}) == {"size": 0.0, "bare": 1.0}


def test_a_steam_pressure_may_say_gauge():
    gauge = field("p", "pressure", "of the boiler, gauge")
    assert fields.read_as(gauge) == "steam_pressure"
    assert fields.read_as(field("p", "pressure", "of the ring")) == "pressure"
    assert fields.read_as(field("p", "length", "by a gauge")) == "length"


def test_what_is_seldom_needed_is_left_to_its_default():
    entry = field("size", "length", "it")
    assert entry == Field(
        name="size",
        kind="length",
        meaning="it",
        default=None,
        lowest=None,
        highest=None,
        choices=(),
        items=(),
        above_lowest=False,
        symbol="",
        required=False,
    )
    assert checked((entry,), {}) == {"size": None}
    assert checked((entry,), {"size": None}) == {"size": None}
