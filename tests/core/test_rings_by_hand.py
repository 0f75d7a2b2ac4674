"""What is said of a ring being made: its sizes, what one out of limits costs, and the remedy."""

import pytest

from core.follow_by_hand import MADE, PLAN, settled
from ringwright.core.catalogue.inputs_rings import NAMES
from ringwright.core.ring.design import settle
from ringwright.core.walk import rings
from ringwright.core.walk.follow import Followed, Remedy
from ringwright.core.walk.ring_card import Step

WIDTH = Step(name="ring_width", value=3.7, lower=3.61, upper=3.74, measured=None, within=None)


def followed(*steps, faults=(), grave=False, remedy=None, relief=None, made=MADE, cost=()):
    return Followed(
        ring=7, steps=list(steps), plan=PLAN, made=made, relief=relief, faults=list(faults),
        grave=grave, cost=dict(cost), remedy=remedy,
    )  # fmt: skip


def said(*steps, **more):
    return rings.findings(settled(), followed(*steps, **more))


def out(measured):
    return WIDTH._replace(measured=measured, within=False)


@pytest.mark.parametrize(
    ("measured", "limit", "words"),
    [
        (3.783, 3.74, "Ring 7: width 3.783 mm (0.1489 in), 0.043 mm (0.0017 in) over its limit."),
        (3.587, 3.61, "Ring 7: width 3.587 mm (0.1412 in), 0.023 mm (0.0009 in) under its limit."),
    ],
)
def test_a_size_out_of_its_limits_says_by_how_much_and_which(measured, limit, words):
    row, ring = said(out(measured))
    assert row.check == "size-out" and row.why == words
    assert (row.value.value, row.limit.value, row.outcome) == (measured, limit, "watch")
    assert row.remedy == "Work on to the sizes that this ring's card now gives."
    assert ring.check == "ring-made" and ring.outcome == "good"


def test_within_its_limits_or_not_measured_yet_nothing_is_said_of_a_size():
    within = WIDTH._replace(measured=3.7, within=True)
    (ring,) = said(within, WIDTH, cost={"ring_width": MADE})
    assert ring.why == (
        "Ring 7 comes right: 2.930 mm (0.1154 in) thick, its gap 0.370 mm (0.0146 in) along the"
        " ring, pressing 0.050 N/mm2 (7.3 psi)."
    )


def test_a_size_out_of_its_limits_says_what_it_costs_by_itself():
    cost = {"ring_width": MADE._replace(thickness=2.87)}
    row = said(out(3.783), cost=cost)[0]
    assert row.why.endswith(
        "over its limit. By itself it makes the ring 2.870 mm (0.1130 in) thick, its gap 0.370 mm"
        " (0.0146 in) along the ring, pressing 0.050 N/mm2 (7.3 psi)."
    )


SET = Remedy(key="set", value=9.744, made=MADE._replace(wall_pressure=0.044), aim=0.055)
FACED = Remedy(key="face", value=3.7, made=MADE, aim=0.055)


@pytest.mark.parametrize(
    ("fault", "made", "words"),
    [
        ("thickness", {"thickness": 3.02}, "it comes out 3.020 mm (0.1189 in) thick"),
        ("gap", {"closed_gap": 0.67}, "its gap comes out 0.670 mm (0.0264 in) along the ring"),
        ("gap-short", {"closed_gap": 0.004}, "its gap is only 0.004 mm (0.0002 in) along the ring"),
        # Ends that overlap have no gap, and an outside under size nothing to turn.
        ("gap-short", {"closed_gap": -0.3}, "its gap is only 0.000 mm (0.0000 in) along the ring"),
        ("clean-up", {"clean_up": 0.003}, "only 0.003 mm (0.0001 in) is left to turn"),
        ("clean-up", {"clean_up": -0.2}, "only 0.000 mm (0.0000 in) is left to turn"),
        ("pressure", {"wall_pressure": 0.021}, "it presses with 0.021 N/mm2 (3.0 psi)"),
        ("width", {}, "it is 3.700 mm (0.1457 in) wide"),
    ],
)
def test_a_fault_says_its_figure(fault, made, words):
    (ring,) = said(faults=[fault], made=MADE._replace(**made))
    assert ring.why.startswith("Ring 7 as it stands: " + words)
    both = said(faults=[fault, "relief"], made=MADE._replace(**made))[0]
    assert both.why.endswith(" and its gap asks for a relief that no heat gives.")


def test_no_ring_says_so():
    (ring,) = said(faults=["no-ring"], grave=True, made=None)
    assert ring.why == "Ring 7 as it stands: no ring comes of these sizes."
    assert ring.outcome == "stop"


@pytest.mark.parametrize(
    ("remedy", "grave", "outcome"),
    [(None, True, "stop"), (None, False, "watch"), (FACED, True, "watch"), (FACED, False, "watch")],
)
def test_a_ring_stops_only_where_its_fault_is_grave_and_nothing_mends_it(remedy, grave, outcome):
    assert said(faults=["width"], grave=grave, remedy=remedy)[0].outcome == outcome


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({"remedy": FACED}, "Face it to 3.700 mm (0.1457 in)."),
        ({"grave": True}, "Nothing that is left to do brings it right: make it again."),
        ({}, "It may run so; nothing that is left to do brings it nearer."),
        # What the heat gave is looked at first: a tenth of the set is little, but some.
        ({"relief": 0.0999}, "Set it again, hotter or longer: the heat gave it next to nothing."),
        ({"relief": 0.1}, "It may run so; nothing that is left to do brings it nearer."),
        ({"relief": 0.8}, "It may run so; nothing that is left to do brings it nearer."),
    ],
)
def test_what_is_left_to_do_is_told(more, words):
    assert said(faults=["width"], **more)[0].remedy == words


def test_a_ring_set_again_says_how_it_then_presses():
    """0.044 of 0.055 MPa."""
    rows = said(out(3.783), faults=["pressure"], remedy=SET)
    words = (
        "Set it again with a former or spacer of 9.744 mm (0.3836 in)."
        " Then it presses 0.044 N/mm2 (6.4 psi), 80 % of the aim."
    )
    assert [row.remedy for row in rows] == [words, words]
    assert "presses" not in said(faults=["width"], remedy=SET)[0].remedy


def answered(rows, machine="light", stick=None, **asked):
    design = settle({"bore": 90.0, **asked})[0]
    values = {"measured": rows, "machine": machine, "slit_on_stick": stick}
    return rings.answer(design, values)[0], design, values


def row(**sizes):
    return {**dict.fromkeys((*NAMES, "ring")), **sizes}


@pytest.mark.parametrize(
    ("asked", "stick", "expected"),
    [
        ({"ring_type": "double-turn"}, True, ("slit-stick", "saw-off", "face-step", True)),
        ({"ring_type": "double-turn"}, False, ("slit", "face-blank", "face-step", False)),
        ({"ring_type": "double-turn"}, None, ("slit", "face-blank", "face-step", False)),
        ({"ring_type": "plain"}, True, (None, "face-blank", "face-sides", False)),
    ],
)
def test_a_double_turn_blank_alone_is_slit_on_its_stick(asked, stick, expected):
    (ring,) = answered([row()], stick=stick, **asked)[0]
    made_at = {size["name"]: size["operation"] for size in ring["sizes"]}
    found = [made_at.get(name) for name in ("slit_width", "blank_length", "ring_width")]
    assert (*found, "cut_off_step" in made_at) == expected


@pytest.mark.parametrize(
    ("asked", "expected"),
    [
        ({"setting": "bound"}, ("saw-end", "put-on-former-bound", "clamp")),
        ({"setting": "sprung"}, ("saw-end", "put-on-former", "clamp")),
        ({"setting": "spread"}, ("saw-end", None, "clamp")),
        ({"setting": "bound", "end_cut": "stepped"}, ("saw-step", "put-on-former-bound", "clamp")),
        (
            {"setting": "bound", "finishing": "forced-round"},
            ("saw-end", "put-on-former-bound", "clamp-forced"),
        ),
        ({"setting": "sprung", "finishing": "band"}, ("saw-end", "put-on-former", "clamp-band")),
    ],
)
def test_a_size_stands_at_the_operation_that_makes_it(asked, expected):
    (ring,) = answered([row()], ring_type="plain", **asked)[0]
    made_at = {size["name"]: size["operation"] for size in ring["sizes"]}
    names = ("end_kerf", "former_diameter", "clamped_gap_reading")
    assert tuple(made_at.get(name) for name in names) == expected
    assert made_at["ring_width"] == "face-sides" and made_at["radial_thickness"] == "inspect"


def test_double_turn_ends_are_sawn_at_the_same_operation_whatever_their_cut():
    for cut in ("square", "stepped"):
        (ring,) = answered([row()], ring_type="double-turn", end_cut=cut)[0]
        made_at = {size["name"]: size["operation"] for size in ring["sizes"]}
        assert made_at["end_kerf"] == "saw-ends"


def test_a_ring_with_a_size_out_of_its_limits_is_watched_though_it_comes_right():
    listing, design, values = answered(
        [row(), row(rough_outside_diameter=90.6)], ring_type="plain", end_cut="square"
    )
    first, second = listing
    assert (first["outcome"], second["outcome"]) == ("good", "watch")
    assert "comes right" in first["why"] and "comes right" in second["why"]
    size = {each["name"]: each for each in second["sizes"]}["rough_outside_diameter"]
    assert size["outcome"] == "watch"
    # Each ring by its number; none where none was measured.
    assert rings.sizes_of(design, values, 2)["rough_outside_diameter"].measured == 90.6
    assert rings.sizes_of(design, values, 1)["rough_outside_diameter"].measured is None
    assert rings.sizes_of(design, values, 3) == {}


def test_a_rigid_lathe_bores_closer_and_a_light_one_is_taken_without_a_word():
    """IT7 for IT8, where the machine and not the thickness is the limit."""
    reach = {}
    for machine in ("light", "rigid", None):
        (ring,) = answered([row()], machine=machine, finishing="band", setting="bound")[0]
        size = {each["name"]: each for each in ring["sizes"]}["inside_diameter"]
        reach[machine] = size["limits"]["upper"].value - size["limits"]["lower"].value
    assert reach["rigid"] < reach["light"] == reach[None]
