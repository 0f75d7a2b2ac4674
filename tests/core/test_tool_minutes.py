"""Minutes of turned tools by hand, out of the printed speeds and feeds themselves, and the piece at
the sizes where another way of work begins.

Mild steel with high-speed steel on a light lathe: roughed at 35 m/min and 0.1 mm a turn, 0.75 mm a
cut; faced at 0.05; parted at 17.5 m/min and 0.03; drilled at 30 m/min; bored at 28 m/min and 0.1,
0.5 mm a cut; finished at 50 m/min and 0.05 (read). 15 minutes to set up, 5 a size with limits.
"""

import math

import pytest

from ringwright.core.making.tool_work import Shape, piece, work


def shape(**changed):
    usual = {"outside": 40.0, "hole": 20.0, "length": 30.0, "fitted": 2, "beside": 4.0}
    return Shape(**{**usual, **changed})


def takes(speed, diameter, feed, travel, times, setting):
    turns = 1000.0 * speed / (math.pi * diameter)
    return times * (travel / (feed * turns) + setting)


# Over the 40 mm stand 3 mm, over the length of 30 mm 5.
TURNED = takes(35.0, 43.0, 0.1, 35.0, 2, 0.5)


def test_a_tool_with_two_sizes_to_limits():
    due = 15.0 + 2 * 5.0 + 4.0 + TURNED
    due += 2 * takes(35.0, 43.0, 0.05, 11.5, 1, 0.5)
    due += takes(17.5, 40.0, 0.03, 10.0, 1, 1.0)
    # A 20 mm drill: two sevenths of the way from 0.41 mm at 18 to 0.51 at 25.
    due += takes(30.0, 20.0, 0.41 + 0.1 * 2.0 / 7.0, 35.0, 1, 0.5)
    due += 2 * takes(50.0, 40.0, 0.05, 35.0, 1, 1.5) + 2 * takes(50.0, 20.0, 0.05, 35.0, 1, 1.5)
    made = work(shape(), "steel")
    assert made.minutes == pytest.approx(due)
    assert (made.diameter, made.hole, made.length) == (43.0, 0.0, 35.0)


def test_a_solid_tool_without_limits():
    due = 15.0 + TURNED + 2 * takes(35.0, 43.0, 0.05, 21.5, 1, 0.5)
    due += takes(17.5, 40.0, 0.03, 20.0, 1, 1.0)
    assert work(shape(hole=0.0, fitted=0, beside=0.0), "steel").minutes == pytest.approx(due)


def bored(hole, outside=80.0):
    """Minutes that the hole itself takes: of the whole less all else."""
    whole = work(shape(outside=outside, hole=hole, fitted=0, beside=0.0), "steel").minutes
    whole -= 15.0 + takes(35.0, outside + 3.0, 0.1, 35.0, 2, 0.5)
    whole -= 2 * takes(35.0, outside + 3.0, 0.05, 0.5 * (outside + 3.0 - hole), 1, 0.5)
    return whole - takes(17.5, outside, 0.03, 0.5 * (outside - hole), 1, 1.0)


DRILLED = takes(30.0, 25.0, 0.51, 35.0, 1, 0.5)


@pytest.mark.parametrize(
    ("hole", "due"),
    [
        # 25 mm is drilled and no more; beyond, half a millimetre a cut.
        (25.0, DRILLED),
        (25.4, DRILLED + takes(28.0, 25.4, 0.1, 35.0, 1, 0.5)),
        (26.2, DRILLED + takes(28.0, 26.2, 0.1, 35.0, 2, 0.5)),
        # Up to 60 mm out of the solid; beyond, 8 mm out of a ring, which is 8 cuts.
        (60.0, DRILLED + takes(28.0, 60.0, 0.1, 35.0, 35, 0.5)),
        (60.3, takes(28.0, 60.3, 0.1, 35.0, 8, 0.5)),
    ],
)
def test_a_hole_is_drilled_bored_or_bored_out_of_a_ring(hole, due):
    assert bored(hole) == pytest.approx(due)
    made = work(shape(outside=80.0, hole=hole), "steel")
    assert made.hole == (pytest.approx(52.3) if hole > 60.0 else 0.0)


def test_a_rigid_lathe_with_carbide_but_the_drill_of_high_speed_steel():
    """The middle of each range: roughed at 175 m/min and 0.25, 2 mm a cut; faced at 0.075; parted
    at the middle of 75 and 200 and 0.04; bored at the middle of 120 and 200, 0.15, 1.5 mm a cut;
    finished at 260 and 0.075. Drilled at 33 m/min, 0.51."""
    due = 15.0 + 5.0 + takes(175.0, 63.0, 0.25, 35.0, 1, 0.5)
    due += 2 * takes(175.0, 63.0, 0.075, 16.5, 1, 0.5)
    due += takes(137.5, 60.0, 0.04, 15.0, 1, 1.0)
    due += takes(33.0, 25.0, 0.51, 35.0, 1, 0.5)
    due += takes(160.0, 30.0, 0.15, 35.0, 2, 0.5)
    due += 2 * takes(260.0, 60.0, 0.075, 35.0, 1, 1.5)
    due += 2 * takes(260.0, 30.0, 0.075, 35.0, 1, 1.5)
    made = work(shape(outside=60.0, hole=30.0, fitted=1, beside=0.0), "steel", "rigid", "carbide")
    assert made.minutes == pytest.approx(due)


def test_a_tool_that_is_all_hole_is_not_faced_or_parted():
    """A hole as wide as the piece leaves nothing to face; no pass, no setting."""
    due = 15.0 + takes(35.0, 33.0, 0.1, 35.0, 2, 0.5)
    due += DRILLED + takes(28.0, 33.0, 0.1, 35.0, 8, 0.5)
    made = work(shape(outside=30.0, hole=33.0, fitted=0, beside=0.0), "steel")
    assert made.minutes == pytest.approx(due)


def test_the_piece_in_whole_millimetres_is_the_next_for_its_outside_and_below_for_its_hole():
    needed = work(shape(outside=77.2, hole=70.9, length=25.0), "steel")
    found = {name: size.value for name, size in piece(needed).items()}
    # 80.2, 62.9 and 30.0.
    assert found == {"diameter": 81.0, "hole": 62.0, "length": 30.0}
    solid = {name: size.value for name, size in piece(work(shape(), "steel")).items()}
    assert solid == {"diameter": 43.0, "hole": 0.0, "length": 35.0}
