"""How figures, answers, usual values and metals are declared, by hand; what may not be left out."""

import pytest

from core.test_catalogue_limits import declared
from ringwright.core.catalogue import Told, answer, inputs, table
from ringwright.core.catalogue import wall as figures_of_walls
from ringwright.core.catalogue.inputs_blank import BANDED, BLANK, _tenths_of_bore, standard_saw
from ringwright.core.catalogue.inputs_rings import NAMES, RINGS
from ringwright.core.catalogue.inputs_tools import TOOLING
from ringwright.core.catalogue.inputs_wall import LARGEST_ORDER
from ringwright.core.properties.material_table import _row

FIGURES = table(
    (
        (
            "force",
            "force",
            "F",
            "Tangential force",
            "spring, steam",
            "a|E, q",
            "Spring",
            "at the ends",
        ),
        ("gap", "length", "s1", "Gap", "neutral"),
    ),
    {"a": "length", "E": "modulus", "q": "pressure"},
)


def test_a_figure_is_declared_by_what_stands_in_its_row():
    """What is left out of the end of a row is left empty."""
    assert list(FIGURES) == ["force", "gap"]
    force, gap = FIGURES.values()
    assert (force.name, force.kind, force.unit, force.symbol) == ("force", "force", "N", "F")
    assert (force.label, force.group, force.meaning) == (
        "Tangential force",
        "Spring",
        "at the ends",
    )
    assert force.methods == ("spring", "steam")
    assert force.shows == ((("a", "mm"),), (("E", "MPa"), ("q", "MPa")))
    assert (gap.methods, gap.shows, gap.group, gap.meaning) == (("neutral",), ((),), "", "")
    # What one method shows, another shows too where nothing else is said.
    row = ("force", "force", "F", "Force", "spring, steam", "a")
    assert table((row,), {"a": "length"})["force"].shows == ((("a", "mm"),),) * 2
    with pytest.raises(ValueError, match="force"):
        table((("force", "force", "F", "Force", "spring", "a|a"),), {"a": "length"})


def test_an_answer_holds_its_figures_in_the_order_named():
    inner = answer("gap", [FIGURES])
    other = table((("gap", "length", "s", "Another gap", "other"),), {})
    made = answer("gap? force", [FIGURES, other], parts=[("ring", inner)], checks=("a check",))
    force, gap = FIGURES.values()
    # The first table that has it, and whether it is always there.
    assert made.figures == (Told(gap, False), Told(force, True))
    assert made.rows == (
        ("gap", "mm", "s1", "neutral", (), gap),
        ("force", "N", "F", "spring", (("a", "mm"),), force),
    )
    assert (dict(made.parts), made.lists, made.checks) == ({"ring": inner}, (), ("a check",))
    assert (dict(inner.parts), inner.checks) == ({}, ())
    with pytest.raises(KeyError, match="width"):
        answer("gap width", [FIGURES, other])


@pytest.mark.parametrize(
    "make",
    [lambda *why: inputs.rule("as wide", abs, *why), lambda *why: inputs.worked("as wide", *why)],
)
def test_what_is_worked_out_has_its_words_for_a_reason_where_there_is_no_better(make):
    assert (make().words, make().why) == ("as wide", "as wide")
    assert (make("it wears").words, make("it wears").why) == ("as wide", "it wears")
    assert inputs.fixed(0.3).why == "" and inputs.fixed(0.3, "thin").why == "thin"


# --- what may not be left out ---

# What is asked is about these, and the size that all hangs on is among them.
NEEDED = {"bore", "stroke", "port_width", "sets", "readings", "groove_readings"}
# An entry of a list that says nothing without these.
NEEDED_OF_ENTRIES = {
    "sets": {"outside_diameter", "inside_diameter", "part_length", "count"},
    "bars": {"diameter", "length"},
    "bars_to_buy": {"diameter", "length"},
    "metal_prices": {"material", "price"},
    "readings": {"diameter"},
    "gap_readings": {"hours", "gap"},
    "groove_readings": {"mouth", "bottom"},
    "free_shape": {"angle", "radius"},
    "bore_shape.harmonics": {"order", "amplitude"},
    "bore_shape.readings": {"angle", "radius"},
}
# A price of nothing is none; and a piston or bar of no diameter is none either.
ABOVE = {
    "bar_price",
    "bars_to_buy.price",
    "metal_prices.price",
    "outside_diameter",
    "inside_diameter",
}


def test_what_nothing_can_be_said_without_is_required():
    entries = {"%s.%s" % (of, name) for of, names in NEEDED_OF_ENTRIES.items() for name in names}
    assert {where for where, one in declared() if one.required} == NEEDED | entries


def test_a_price_and_a_diameter_are_above_nothing():
    assert {where for where, one in declared() if one.above_lowest} == ABOVE
    assert all(one.lowest == 0.0 for where, one in declared() if one.above_lowest)


# --- usual values ---


def test_what_is_left_to_turn_is_told_by_the_sizes_it_is_made_of():
    cases = BLANK["finishing_allowance"].default.cases
    for case, words in (
        ("", "0.5 mm and 0.4 % of the bore"),
        (BANDED, "0.5 mm and 1.2 % of the bore"),
    ):
        assert cases[case].words == words
        assert cases[case].why.startswith(words + ", ")
    other = _tenths_of_bore(0.25, 0.088, "so it is")
    assert other.words == "0.25 mm and 8.8 % of the bore"
    assert other.why == "0.25 mm and 8.8 % of the bore, so it is"
    # 0.5 and 1.2 % of 112.4 are 1.8488, just below the half of a tenth.
    assert cases[BANDED].rule(112.4) == pytest.approx(1.8)


def test_usual_sizes_just_below_a_step():
    # Twice 3.2748 and a tenth: 6.6496, in tenths.
    assert standard_saw(3.2748, 800.0) == pytest.approx(6.6)
    # A third of 90.5 is 30.17, up to the next five.
    assert TOOLING["table_grip"].default.rule(90.5) == 35.0


def test_lobes_go_from_an_oval_to_twelve():
    """As many as `bore_shape` may have; each has its symbol among those of the figures."""
    (order,) = [one for where, one in declared() if where == "bore_shape.harmonics.order"]
    assert (order.lowest, order.highest, LARGEST_ORDER) == (2, 12, 12)
    lobes = ["U_2", "U_3", "U_4", "U_5", "U_6", "U_7", "U_8", "U_9", "U_10", "U_11", "U_12"]
    assert lobes == figures_of_walls.LOBES
    known = {name for name in figures_of_walls.SYMBOLS if name.startswith("U_")}
    assert known == set(lobes)


def test_sizes_of_a_ring_are_measured_by_the_names_on_its_card():
    """Beside which ring it is; the first and the last as they are made."""
    number, *sizes = RINGS["measured"].items
    assert number.name == "ring"
    assert list(NAMES) == [one.name for one in sizes]
    assert (NAMES[0], NAMES[-1]) == ("bored_inside_diameter", "radial_thickness")


def test_a_row_of_the_table_is_read_in_its_order():
    """A modulus is told with its least and most, strengths as least and most."""
    found = _row(
        "it", "It", "iron", ("ring",), (104e3, 98e3, 112e3), 0.25, 7.2e-6, 11e-6, 240.0,
        (210.0, 290.0), 350.0, (("modulus", "memory"),), "none",
    )  # fmt: skip
    assert (found.modulus_low, found.modulus, found.modulus_high) == (98e3, 104e3, 112e3)
    assert (found.tensile_low, found.tensile_high) == (210.0, 290.0)
    assert (found.poisson, found.density, found.expansion) == (0.25, 7.2e-6, 11e-6)
    assert (found.bending_strength, found.hottest) == (240.0, 350.0)
    assert (found.key, found.title, found.family, found.uses) == ("it", "It", "iron", ("ring",))
    assert (found.sources, found.note) == ((("modulus", "memory"),), "none")
