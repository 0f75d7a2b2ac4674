"""One rule for the digits of a length: 0.01 mm or a thou, below 1 mm a tenth of that.

The table is worked by hand, one inch being 25.4 mm; the app's own tests read the same table.
"""

import json
from pathlib import Path

import pytest

from ringwright.core import wording
from ringwright.core.drawing import words
from ringwright.export import values

TABLE = json.loads(
    (Path(__file__).parent.parent / "vectors" / "lengths_shown.json").read_text(encoding="utf-8")
)


@pytest.mark.parametrize("mm, metric, inch", TABLE)
def test_a_length_has_the_same_digits_in_words_on_drawing_and_card(mm, metric, inch):
    assert wording.length(mm) == "%s mm (%s in)" % (metric, inch)
    assert words.number(mm, "metric") == metric
    assert words.number(mm, "inch") == inch
    assert values.shown(mm, "mm", "metric") == metric + " mm"
    assert values.shown(mm, "mm", "inch") == inch + " in"


@pytest.mark.parametrize("mm, metric, inch", [row for row in TABLE if 0 < row[0] < 1])
def test_a_drawing_that_rounds_coarser_does_not_round_what_is_small(mm, metric, inch):
    assert words.number(mm, "metric", 1) == metric
    assert words.number(mm, "inch", 1) == inch
