"""Blocks of words: their size on the sheet, against the letters' widths and the pitch of lines."""

import pytest

from ringwright.core.drawing import blocks, letters, style
from ringwright.core.drawing.words import Words


def test_a_block_is_as_wide_as_its_longest_line_and_as_high_as_its_lines():
    words = Words("\u00d8", ("80", "79.95"))
    found = blocks.block(words, 3.5)
    sign = letters.width("\u00d8", 3.5)
    assert found.words == words
    assert found.size == 3.5
    assert found.prefix == pytest.approx(sign + 0.3)
    assert found.width == pytest.approx(sign + 0.3 + letters.width("79.95", 3.5))
    assert found.height == pytest.approx(3.5 + 3.5 * style.PITCH)


def test_a_block_without_a_sign_has_no_room_for_one():
    found = blocks.block(Words("", ("80",)), 2.0)
    assert found.prefix == 0.0
    assert found.height == 2.0
    assert found.width == pytest.approx(letters.width("80", 2.0))
