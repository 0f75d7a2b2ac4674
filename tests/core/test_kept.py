"""What the core keeps of a sum goes by all that the sum hangs on: asked in any order, the answer is
the one that is given with nothing kept."""

import itertools

import pytest

from ringwright.core import fields
from ringwright.core.calculations import CALCULATIONS
from ringwright.core.making import bar_choice, bars, machining
from ringwright.core.ring.design import settle
from ringwright.core.walk import limits

MODULES = (bar_choice, bars, limits, machining)


def forget():
    for module in MODULES:
        for name, kept in vars(module).items():
            if name.startswith("_kept") and isinstance(kept, list | dict):
                kept.clear()


def asked_twice(ask, questions):
    """Whether each answer, in that order and backwards, is the one with nothing kept."""
    afresh = []
    for question in questions:
        forget()
        afresh.append(ask(question))
    assert len({repr(each) for each in afresh}) > 1
    forget()
    there = [ask(question) for question in questions]
    back = [ask(question) for question in reversed(questions)][::-1]
    return afresh == there == back


def designs():
    for bore, ring_type in itertools.product((40.0, 80.0, 80.5), ("plain", "double-turn")):
        request = {"bore": bore, "ring_type": ring_type}
        yield settle(fields.checked(CALCULATIONS["sizing"].fields, request))[0]


def test_limits_of_a_card():
    questions = list(itertools.product(designs(), ("light", "rigid")))
    assert asked_twice(lambda asked: limits.card_limits(*asked), questions)


@pytest.mark.parametrize("form", [None, "solid", "cored"])
def test_bars(form):
    names = ("outside", "inside", "family", "system")
    all_of = itertools.product(
        (60.0, 84.0), (50.0, 55.0), ("iron", "bronze"), (None, "inch", "metric")
    )
    questions = [dict(zip(names, each, strict=True)) for each in all_of]
    assert asked_twice(lambda asked: bar_choice.best_bar(form=form, **asked), questions)


def test_speeds_and_feeds():
    questions = list(
        itertools.product(
            ("turn-rough", "face", "drill"), ("grey-iron", "gunmetal"), ("light", "rigid"),
            ("hss", "carbide"), (10.0, 20.0),
        )
    )  # fmt: skip

    def ask(asked):
        operation, metal, machine, tool, diameter = asked
        speed = machining.cutting_speed(operation, tool, metal, machine)
        return speed, machining.feed(operation, metal, machine, diameter)

    assert asked_twice(ask, questions)
