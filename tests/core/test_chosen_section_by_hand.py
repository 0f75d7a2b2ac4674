"""Which section is taken: the width in a groove, a thickness that springs, a pressure it bears."""

import pytest

from ringwright.core.catalogue.inputs import Chooser
from ringwright.core.catalogue.inputs_blank import BLANK
from ringwright.core.catalogue.inputs_ring import RING
from ringwright.core.problems import InputProblem
from ringwright.core.ring import chosen_section, section
from ringwright.core.ring.design import settle, settle_section

PLAIN = {"bore": 60.0, "ring_type": "plain"}


def settled(**more):
    design, chosen = settle({**PLAIN, **more})
    return design, {row.input: row for row in chosen}


@pytest.mark.parametrize(("ring_type", "times"), [("plain", 1.25), ("double-turn", 2.0)])
def test_a_ring_is_as_wide_as_its_type_wants(ring_type, times):
    """1.25 thicknesses of a plain ring, 2 of both turns together, to a tenth of a millimetre."""
    design, chosen = settled(ring_type=ring_type, radial_thickness=2.4)
    assert design.section.width == pytest.approx(times * 2.4, abs=1e-9)
    assert chosen["ring_width"].value == design.section.width


def test_a_ring_fills_a_groove_that_is_there():
    """Groove less the play of a ring of just that width: twice round leaves no more to say."""
    design, chosen = settled(groove_width=4.2, radial_thickness=2.4)
    width = design.section.width
    assert chosen["ring_width"].value == width
    play = chosen_section.side_clearance(design.duty, width)
    assert width + play == pytest.approx(4.2, abs=1e-6)
    assert design.side_clearance == pytest.approx(play, abs=1e-6)
    # A width that is given is not asked of the groove.
    design, chosen = settled(groove_width=4.2, ring_width=4.1, radial_thickness=2.4)
    assert design.section.width == 4.1
    assert "ring_width" not in chosen


def test_a_groove_wants_more_than_its_play(monkeypatch):
    monkeypatch.setattr(chosen_section, "side_clearance", lambda duty, width: 0.5)
    for groove in (0.4, 0.5):
        with pytest.raises(InputProblem) as caught:
            chosen_section._width_in_groove(None, groove)
        assert caught.value.faults[0].path == ("groove_width",)
    assert chosen_section._width_in_groove(None, 0.505) == pytest.approx(0.005)


def test_the_play_of_a_ring_and_not_of_its_groove(monkeypatch):
    monkeypatch.setattr(chosen_section, "side_clearance", lambda duty, width: 0.1 * width)
    # 5 less a tenth is 4.5, of which a tenth is 0.45.
    assert chosen_section._width_in_groove(None, 5.0) == pytest.approx(4.55)


@pytest.mark.parametrize(("thickness", "springs"), [(9.99, True), (10.0, True), (10.05, False)])
def test_no_ring_is_thicker_than_a_sixth_of_its_bore(thickness, springs):
    given = {"radial_thickness": thickness, "free_gap": 2.5, "end_kerf": 0.3, "closed_gap": 0.1}
    if springs:
        assert settled(**given)[0].section.thickness == thickness
        return
    with pytest.raises(InputProblem) as caught:
        settled(**given)
    (fault,) = caught.value.faults
    assert (fault.path, fault.value, fault.highest) == (("radial_thickness",), thickness, 10.0)
    assert fault.remedy == "give at most 10.00 mm (0.394 in)"


@pytest.mark.parametrize(
    ("ring_type", "turns", "ratio", "slit", "setting"),
    [("plain", 1, 1.25, 0.0, "spread"), ("double-turn", 2, 2.0, 0.9, "sprung")],
)
def test_a_section_is_looked_for_with_what_was_given(ring_type, turns, ratio, slit, setting):
    """Every size in its own place, the piston's clearance on a side."""
    design, _ = settled(
        ring_type=ring_type,
        ring_width=5.0,
        slit_width=0.9,
        facing_allowance=0.35,
        finishing_allowance=0.7,
        piston_diameter=59.4,
        modulus=104000.0,
        wall_pressure=0.043,
    )
    metal = design.duty.ring_material
    task = section.Task(
        bore=60.0,
        modulus=104000.0,
        poisson=metal.poisson,
        strength=metal.bending_strength,
        brittle=True,
        pressure=0.043,
        turns=turns,
        setting=setting,
        uniform=setting == "spread",
        width=5.0,
        width_ratio=ratio,
        slit=slit,
        facing=0.35,
        finishing=0.7,
        piston_clearance=0.3,
    )
    assert design.section.window == pytest.approx(section.window(task), rel=1e-9)


WEAK = {"ring_material": "filled-ptfe-carbon"}


def taken_section(**more):
    """The Section alone, before a former or spacer is looked for, and what was chosen."""
    take = Chooser({**PLAIN, **WEAK, **more}, RING, BLANK)
    return settle_section(take)[3], {row.input: row for row in take.chosen}


def test_a_weak_metal_is_asked_for_what_it_bears():
    found, _ = taken_section()
    assert found.why.startswith("the most that")
    assert found.pressure < 0.047
    assert found.window.lowest is not None
    # Asked for anything of its spring or section, it is not bettered.
    for given in ({"radial_thickness": 2.4}, {"free_gap": 9.0}, {"former_ratio": 1.1}):
        found, _ = taken_section(**given)
        assert found.pressure == pytest.approx(0.048)
        assert "usual" in found.why
    # Iron bears what practice asks.
    found, _ = taken_section(ring_material="grey-iron")
    assert found.pressure == pytest.approx(0.048)


@pytest.mark.parametrize(("bears", "taken"), [(0.0411, 0.039), (0.0413, 0.040), (0.0008, 0.000776)])
def test_what_a_metal_bears_is_rounded_down_with_room_for_a_thickness(monkeypatch, bears, taken):
    """0.97 * 0.0411 is 0.03987, 0.97 * 0.0413 is 0.04006; below a thousandth as it is."""
    monkeypatch.setattr(section, "bearable_pressure", lambda task: bears)
    asked = []

    def window(task):
        asked.append(task.pressure)
        return section.Window(None, 2.4, None)

    monkeypatch.setattr(section, "window", window)
    found, _ = taken_section()
    assert found.pressure == pytest.approx(taken, rel=1e-9)
    assert asked == [pytest.approx(0.048), found.pressure]
