"""What inspection says where an expander helps, a groove is yet to be cut, and at exact sizes.

Side clearance of practice: 0.001 to 0.003 in up to 50 mm of bore, 0.002 to 0.005 in from 300 mm (a
seal maker's sheet on cast iron rings; a book on compressors, table 4-4).
"""

from types import SimpleNamespace

import pytest

from core.test_inspection import inspection, outcome, value
from core.test_inspection_limits import PLAIN, pressed, relieved, row_of
from ringwright.core import calculations
from ringwright.core.measuring import inspection_findings
from ringwright.core.properties import fits
from ringwright.core.ring.design import settle


@pytest.mark.parametrize(
    ("wanted", "added", "share", "outcome_word", "remedy", "limit"),
    [
        # 0.1552 and 0.05 are over 0.2 together: the ring may press with 0.15.
        (0.16, 0.05, 0.97, "stop", "narrower spacer", 0.15),
        (0.16, 0.05, 0.93, "good", "", 0.16),
        # 0.0126 and 0.002 are below 0.015 together: the ring has to press with 0.013.
        (0.014, 0.002, 0.9, "stop", "wider spacer", 0.013),
        (0.014, 0.002, 0.95, "good", "", 0.014),
        # Off by more than a quarter, and within practice together: 0.048 and 0.01; else not.
        (0.03, 0.02, 1.4, "watch", "narrower spacer", 0.0375),
        (0.03, 0.02, 0.7, "watch", "wider spacer", 0.0225),
        (0.06, 0.03, 1.3, "stop", "narrower spacer", 0.075),
    ],
)
def test_an_expander_s_part_is_counted_on_its_own_side(
    wanted, added, share, outcome_word, remedy, limit
):
    row = row_of(pressed(share, wall_pressure=wanted, expander_pressure=added), "pressure")
    assert row["outcome"] == outcome_word
    assert remedy in row["remedy"]
    assert row["value"]["value"] == pytest.approx(share * wanted, rel=1e-9)
    assert row["limit"]["value"] == pytest.approx(limit, rel=1e-9)
    assert ("with only" in row["why"]) is (remedy == "wider spacer")
    if outcome_word != "good":
        assert "expander behind it adds %.3f N/mm2" % added in row["why"]
    assert "expander" not in row_of(pressed(1.4, wall_pressure=0.048), "pressure")["why"]


def test_the_modulus_that_both_agree_on_is_told_in_gpa():
    """Gap as designed, two fifths more force than that: so much stiffer is the metal."""
    design, _ = settle(PLAIN)
    gap = design.spring.gap_change + design.duty.closed_gap
    force = calculations.run("sizing", PLAIN)["figures"]["diametral_force"]["value"]
    answer = inspection(
        **PLAIN,
        measured_free_gap=gap,
        gap_measured_at="neutral-line",
        measured_force=1.4 * force,
    )
    # 103.5 GPa, the middle of 83 to 124 (Tribology Handbook, table 17.2), times 1.4.
    assert design.duty.modulus == 103500.0
    assert value(answer, "modulus_shown") == pytest.approx(144900.0, rel=1e-6)
    assert "modulus of about 145 GPa" in row_of(answer, "agreement")["remedy"]


@pytest.mark.parametrize(
    ("off", "check"), [(-0.005, "thickness"), (0.0, "thickness-over"), (0.005, "thickness-over")]
)
def test_a_thickness_within_limits_is_good_on_either_side(off, check):
    answer = inspection(**PLAIN, radial_thickness=3.0, measured_thickness=3.0 * (1.0 + off))
    row = row_of(answer, check)
    assert (row["outcome"], row["remedy"]) == ("good", "")
    assert (row["value"]["value"], row["limit"]["value"]) == pytest.approx((3.0 * (1.0 + off), 3.0))


# At 80 mm, 30 of the 250 mm from 50 to 300: of the least and the greatest, in millimetres.
LEAST = 25.4 * (0.001 + 0.12 * 0.001)
GREATEST = 25.4 * (0.003 + 0.12 * 0.002)


def wide(clear, **more):
    """A ring so much narrower than its groove of 4 mm; iron in iron: cold it is least."""
    return inspection(**PLAIN, groove_width=4.0, measured_width=4.0 - clear, **more)


@pytest.mark.parametrize(
    ("clear", "check", "said"),
    [
        (LEAST - 1e-6, "width", "stop"),
        (LEAST + 1e-6, "width", "good"),
        # Half as much again as the greatest is slack, three times that is another ring.
        (1.5 * GREATEST - 1e-6, "width", "good"),
        (1.5 * GREATEST + 1e-6, "width-lost", "watch"),
        (3.0 * GREATEST - 1e-6, "width-lost", "watch"),
        (3.0 * GREATEST + 1e-6, "width-lost", "stop"),
    ],
)
def test_a_ring_in_a_groove_that_is_there(clear, check, said):
    row = row_of(wide(clear), check)
    assert row["outcome"] == said
    assert row["value"]["value"] == pytest.approx(clear, abs=1e-9)
    limit = LEAST if clear < LEAST else GREATEST
    assert row["limit"]["value"] == pytest.approx(limit, rel=1e-9)
    assert row["why"].startswith("The ring stands %.3f mm" % clear)
    assert "upper limit" not in row["why"]
    assert "measure the groove" not in row["remedy"]


def test_faced_to_leave_the_least_of_practice_to_a_micrometre_down():
    row = row_of(wide(0.005), "width")
    (faced,) = row["apply"]
    assert 4.0 - LEAST - 0.001 < faced["value"] <= 4.0 - LEAST
    assert "%.3f mm" % faced["value"] in row["remedy"]


@pytest.mark.parametrize(("beyond", "check"), [(-1e-6, "width"), (1e-6, "width-lost")])
def test_a_groove_yet_to_be_cut_counts_at_its_upper_limit(beyond, check):
    """Its H8 may be wider than was drawn: by that much a ring is slack sooner."""
    ring = {**PLAIN, "ring_width": 4.0}
    groove = settle(ring)[0].groove_width
    more = fits.limits(groove, "H8").upper - groove
    assert more > 0.01
    clear = 1.5 * GREATEST - more + beyond
    row = row_of(inspection(**ring, measured_width=groove - clear), check)
    assert row["why"].endswith("At its upper limit the groove leaves %.3f mm (%.4f in)." % (
        clear + more, (clear + more) / 25.4
    ))  # fmt: skip
    measure = "Or measure the groove" in row["remedy"]
    assert measure is (check == "width-lost")
    # What it leaves at the least, or where it is lost, at the most.
    told = clear + more if check == "width-lost" else clear
    assert row["value"]["value"] == pytest.approx(told, abs=1e-9)


@pytest.mark.parametrize(
    ("light", "said", "why"),
    [
        (0.0, "good", "Light-tight."),
        (0.05, "good", "Light of 0.050 mm (0.0020 in) will bed in."),
        (0.0501, "watch", "Light of 0.050 mm (0.0020 in) shows."),
        (0.25, "watch", "Light of 0.250 mm (0.0098 in) shows."),
        (0.2501, "stop", "Light of 0.250 mm (0.0098 in) shows."),
    ],
)
def test_light_up_to_a_twentieth_beds_in(light, said, why):
    row = row_of(inspection(**PLAIN, measured_light=light), "light")
    assert (row["outcome"], row["why"]) == (said, why)
    assert row["limit"]["value"] == 0.05


@pytest.mark.parametrize(
    ("relief", "impossible"), [(-0.001, True), (0.001, False), (1.0195, False), (1.0205, True)]
)
def test_a_relief_below_none_or_above_all_is_no_relief(relief, impossible):
    """A gap less than the saw left reads as less than none; two hundredths over all are noise."""
    rows = []
    found = SimpleNamespace(intended=settle(PLAIN)[0], relief=relief, next_design=None)
    inspection_findings._relief(rows, found)
    (row,) = rows
    assert ("no heat gives" in row.why) is impossible
    assert row.value.value == relief


def test_a_verdict_is_the_worst_that_was_found():
    """Too thin, too narrow and a gap too wide cannot be put back on."""
    thin = inspection(**PLAIN, radial_thickness=3.0, measured_thickness=2.6)
    assert (outcome(thin, "thickness"), thin["verdict"]) == ("stop", "scrap")
    thick = inspection(**PLAIN, radial_thickness=3.0, measured_thickness=3.4)
    assert (outcome(thick, "thickness-over"), thick["verdict"]) == ("stop", "rework")
    assert wide(3.2 * GREATEST)["verdict"] == "scrap"
    assert wide(2.0 * GREATEST)["verdict"] == "accept"
    assert relieved(0.95, **PLAIN, relief=0.9)["verdict"] == "accept"


def test_a_size_at_its_very_limit_is_within_it():
    assert outcome(wide(LEAST), "width") == "good"
    assert outcome(wide(1.5 * GREATEST), "width") == "good"


def test_a_ring_as_wide_as_its_groove_stands_neither_clear_nor_proud_of_it():
    why = row_of(wide(0.0), "width")["why"]
    assert why.startswith("The ring stands 0.000 mm (0.0000 in) clear in its groove of 4.000 mm")


@pytest.mark.parametrize(("soaked", "hotter"), [(650.0, 650.0), (450.0, None)])
def test_a_ring_that_kept_little_is_soaked_no_cooler_than_it_was(soaked, hotter):
    """As hot as it was to be, or as is usual where that is more."""
    ring = {**PLAIN, "relief": 0.9, "soak_temperature": soaked}
    remedy = row_of(relieved(0.4, **ring), "relief")["remedy"]
    said = float(remedy.split("Soak at ")[1].split(" C")[0])
    assert said == hotter if hotter else said > soaked


def test_what_stops_the_piston_is_told_once_and_to_be_mended_there():
    """A piston 0.01 mm small seizes, whatever ring is on it; the ring itself is well."""
    answer = inspection(**PLAIN, piston_diameter=79.99, measured_width=3.15)
    (row,) = [row for row in answer["findings"] if row["check"] == "piston-seizes"]
    assert row["remedy"].startswith("Mend it before the ring runs")
