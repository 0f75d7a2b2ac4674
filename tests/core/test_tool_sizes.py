"""Which sizes of a card are a tool's: measured with one ring, they hold for all.

A tool is made once (its card lists its sizes), and saw and strips are bought once; all else on the
card is a ring's own, and asked for ring by ring.
"""

import itertools

from core.test_tools_hold import KINDS
from ringwright.core import calculations
from ringwright.core.catalogue.inputs_rings import NAMES
from ringwright.core.catalogue.making import TOOL_SIZES

# Every tool there is, between them: with the tube slit on its stick as well.
JOBS = [*KINDS, {"bore": 79.375, "slit_on_stick": True}]
BOUGHT = {"cutter_diameter", "thick_strip", "thin_strip"}
# What a ring is gauged by at the bench when it has no tool's name.
OF_A_RING = {
    "bored_inside_diameter", "rough_outside_diameter", "blank_length", "slit_width", "end_kerf",
    "free_gap", "ring_width", "clamped_gap_reading", "finish_outside_diameter", "inside_diameter",
    "closed_gap_reading", "radial_thickness",
}  # fmt: skip


def names(calculation, listed):
    answers = [calculations.run(calculation, job)[listed] for job in JOBS]
    rows = itertools.chain.from_iterable(answers)
    return {size["name"] for row in rows for size in row["sizes"]}


def test_what_a_tool_and_the_card_both_list_is_the_tools():
    """A new tool that is left out here would be asked for with every ring."""
    assert names("route", "operations") & names("tooling", "tools") | BOUGHT == set(TOOL_SIZES)


def test_each_stands_on_some_card():
    assert set(TOOL_SIZES) <= names("route", "operations")


def test_a_rings_own_sizes_are_none_of_them():
    assert not OF_A_RING & set(TOOL_SIZES)
    assert OF_A_RING | set(TOOL_SIZES) >= set(NAMES)
