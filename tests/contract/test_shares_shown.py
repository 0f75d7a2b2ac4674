"""One rule for the digits of a share in per cent: a little off nothing or all never reads so.

The table is worked by hand; the app's own tests read the same table.
"""

import json
from pathlib import Path

import pytest

from ringwright.core import wording

TABLE = json.loads(
    (Path(__file__).parent.parent / "vectors" / "shares_shown.json").read_text(encoding="utf-8")
)


@pytest.mark.parametrize("share, text", TABLE)
def test_a_share_in_words(share, text):
    assert wording.percent(share) == text + " %"


def test_nothing_and_all_are_said_of_nothing_and_all_alone():
    for step in range(1, 2000):
        for off in (step * 1e-5, 10.0 ** (-step / 250.0)):
            assert float(wording.percent(off)[:-2]) > 0.0
            assert float(wording.percent(1.0 - off)[:-2]) < 100.0
