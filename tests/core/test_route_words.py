"""Words of an operation: each sentence in its own place, by what holds of the ring."""

import pytest

from core.test_tools_hold import settled
from ringwright.core.making import route_words
from ringwright.core.making.route_words import DUST, Text


def test_each_part_of_an_operation_s_text_stays_in_its_place():
    text = Text(
        title="the title",
        hold="the holding",
        tool=(("iron", "a file"), ("bronze", "a scraper")),
        text=("First do this.", ("-iron", "Not this.")),
        check="the check",
        cautions=("rotating-work", DUST),
    )
    assert route_words.told(text, {"iron"}, "iron-dust")._asdict() == {
        "title": "the title",
        "hold": "the holding",
        "tool": "a file",
        "text": "First do this.",
        "check": "the check",
        "cautions": ["rotating-work", "iron-dust"],
    }


def marks(request, bar="3 1/4 in", keys=(), inside=None):
    design, _ = settled(request)
    if inside is not None:
        design = design._replace(allowances=design.allowances._replace(inside=inside))
    return route_words.marks_of(design, bar, list(keys))


PLAIN = {"bore": 80.0, "ring_type": "plain"}


@pytest.mark.parametrize(
    ("found", "expected"),
    [
        (lambda: marks(PLAIN), {"iron", "angled", "set"}),
        (lambda: marks({**PLAIN, "end_cut": "square"}), {"iron", "set"}),
        (lambda: marks({"bore": 80.0, "end_cut": "square"}), {"iron", "set", "double", "former"}),
        (lambda: marks(PLAIN, bar=None), {"iron", "angled", "set", "casting"}),
        (lambda: marks(PLAIN, keys=["survey", "drill"]), {"iron", "angled", "set", "solid"}),
        (lambda: marks(PLAIN, keys=["hold-stick"]), {"iron", "angled", "set", "stick"}),
        (lambda: marks(PLAIN, inside=0.0), {"iron", "angled", "set"}),
        (lambda: marks(PLAIN, inside=0.005), {"iron", "angled", "set", "banded"}),
        (lambda: marks({**PLAIN, "ring_material": "phosphor-bronze-drawn"}),
         {"bronze", "angled", "set", "drawn"}),
        (lambda: marks({**PLAIN, "ring_material": "phosphor-bronze"}),
         {"bronze", "angled", "set"}),
        (lambda: marks({**PLAIN, "ring_material": "filled-ptfe-carbon", "wall_pressure": 0.005}),
         {"plastic", "angled"}),
    ],
)  # fmt: skip
def test_a_ring_is_marked_by_what_it_is_and_nothing_else(found, expected):
    assert found() - {"light"} == expected


def test_a_ring_that_shows_light_is_marked_so():
    bound = {"bore": 300.0, "radial_thickness": 7.0, "setting": "bound",
             "finishing": "forced-round"}  # fmt: skip
    assert "light" in marks(bound)
    assert "light" not in marks({"bore": 80.0})


def test_a_sentence_holds_where_all_its_marks_are_there_and_those_it_excludes_are_not():
    parts = (
        "Always.", ("iron", "Iron."), ("iron double", "Both."), ("-iron", "No iron."),
        ("iron -double", "Plain iron."), ("-iron -double", "Neither."),
    )  # fmt: skip
    assert route_words.sentences(parts, {"iron"}) == "Always. Iron. Plain iron."
    assert route_words.sentences(parts, {"iron", "double"}) == "Always. Iron. Both."
    assert route_words.sentences(parts, {"double"}) == "Always. No iron."
    assert route_words.sentences(parts, set()) == "Always. No iron. Neither."
    assert route_words.sentences("As it is.", {"iron"}) == "As it is."
