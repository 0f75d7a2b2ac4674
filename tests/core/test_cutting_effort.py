"""What the cut list comes to in so much work, on lists drawn at random: yardsticks, measured once.

They hold how well and how fast it looks, not what is true: that is held by trying everything in
test_cutting_brute.py and test_cutting_bounds.py. None may grow worse without a reason.
"""

import random

import pytest

from core.test_cutting import check, drawn_question, plan

# Most sorts, pieces of a sort and own bars of a list; allowance of work, how many lists. Then of
# all of them: the steps they took, how many are proved least bought and least begun, money, worth
# [mm of own bars begun] and scrap [mm] they come to.
LISTS = (
    ((4, 8, 4), 14000, 60, 36200, (60, 60), None, None, 974.0),
    ((6, 12, 6), 3000, 40, 54800, (40, 35), 926.9, 33641.0, 1462.0),
    ((8, 20, 35), 6000, 12, 62300, (10, 5), 396.8, 38156.0, 1384.0),
)


@pytest.mark.parametrize(
    ("sizes", "allowance", "many", "work", "proved", "money", "worth", "scrap"), LISTS
)
def test_lists_come_out_as_well_and_as_soon_as_they_did(
    sizes, allowance, many, work, proved, money, worth, scrap
):
    found = []
    for at in range(many):
        pieces, bars, kerf = drawn_question(random.Random(9000 + at), *sizes)
        found.append(plan(pieces, bars, kerf, step_limit=allowance))
        check(found[-1], pieces, bars, kerf, 50.0)
    assert sum(one.steps for one in found) <= work
    assert sum(one.bought_proved for one in found) >= proved[0]
    assert sum(one.begun_proved for one in found) >= proved[1]
    assert sum(one.scrap for one in found) <= scrap
    assert money is None or sum(one.bought for one in found) <= money
    assert worth is None or sum(one.begun for one in found) <= worth
