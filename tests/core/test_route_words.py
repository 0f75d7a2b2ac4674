"""Words of an operation: each sentence in its own place, by what holds of the ring."""

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
