"""One guess of what touches and the next: what is let go, what is added, and when it is settled.

The strip's own answer is put in its place by hand, so that forces and places are round numbers.
"""

import pytest

from ringwright.core.wall import contact, strip

# A grid of 46 steps, and the square of its stiffness, by which the noise of forces grows.
PLACE = strip.grid(1, 46)
SQUARE = PLACE.k * PLACE.k
NODES = PLACE.nodes


def guesses(monkeypatch, answers, touching, scale, limit=5):
    """What _settled makes of these answers, (w, wall) of each pass: its result, and where each pass
    let the strip go free."""
    free = []
    left = list(answers)

    def settle(place, right, soft):
        free.append([i for i, each in enumerate(right) if each is not None])
        return left[0][0]

    def respond(place, conforming, load, w):
        if not any(w):
            return [0.0] * NODES, [0.0] * NODES
        return [0.0] * NODES, left.pop(0)[1] if len(left) > 1 else left[0][1]

    monkeypatch.setattr(contact, "settle", settle)
    monkeypatch.setattr(contact, "respond", respond)
    given = (PLACE, [1.0] * NODES, 0.0, None)
    return contact._settled(given, scale, list(touching), limit), free


def at(places, rest=0.0):
    """A row of nodes: rest, but for those places."""
    return [places.get(i, rest) for i in range(NODES)]


ALL = [True] * NODES


@pytest.mark.parametrize(
    ("moved", "noise"),
    # The farthest that the strip moved, inwards or outwards, by which the noise of forces goes.
    [({3: -2.0}, 2.0), ({3: -2.0, 9: 5e-7}, 2.0), ({3: -1e-9, 9: 6e-7}, 6e-7)],
)
def test_what_pulls_by_more_than_noise_is_let_go(moved, noise, monkeypatch):
    """A thousandth of the stiffness times the way here, and a thousand-millionth of the force."""
    monkeypatch.setattr(contact, "ROUNDING", 1e-3)
    scale = contact.Scale(1000.0, 1e6)
    pull = 1e-9 * 1e6 + 1e-3 * SQUARE * noise
    wall = at({5: -0.999 * pull, 6: -1.001 * pull, 7: -pull, 8: -5.0 * pull}, 1.0)
    # Node 12 is free: nothing of its force counts.
    touching = at({12: False}, True)
    wall[12] = -9.0 * pull
    settled, free = guesses(
        monkeypatch, [(at(moved), wall), (at({}), at({}, 1.0))], touching, scale
    )
    assert free[:2] == [[12], [6, 8, 12]]
    assert settled[3] == at({6: False, 8: False, 12: False}, True)


def test_what_pulls_by_a_thousand_millionth_of_the_force_may_stay(monkeypatch):
    """No noise: then 1 of a force of a thousand million is let be, 1.005 is not."""
    monkeypatch.setattr(contact, "ROUNDING", 0.0)
    scale = contact.Scale(1e9, 1e9)
    wall = at({5: -0.995, 6: -1.005}, 1.0)
    _, free = guesses(monkeypatch, [(at({3: -1.0}), wall), (at({}), at({}, 1.0))], ALL, scale)
    assert free[:2] == [[], [6]]


@pytest.mark.parametrize(("out", "added"), [(0.995, []), (1.005, [20])])
def test_what_stands_out_by_a_thousand_millionth_may_stay(out, added, monkeypatch):
    scale = contact.Scale(1e9, 1.0)
    touching = at({20: False, 21: False}, True)
    first = (at({20: out, 21: 0.5 * out}), at({}, 1.0))
    settled, free = guesses(monkeypatch, [first, (at({21: -0.1}), at({}, 1.0))], touching, scale)
    assert [i for i in (20, 21) if settled[3][i]] == added
    assert len(free) == (2 if added else 1)


@pytest.mark.parametrize(("share", "passes"), [(0.5, 1), (0.499, 2)])
def test_what_the_foundation_carries_is_given_back_where_it_counts(share, passes, monkeypatch):
    """At half the stiffness and a light of 1 it carries half; of a force of 1 that share is let be.
    The pass that gives it back counts as one."""
    monkeypatch.setattr(contact, "FOUNDATION", 0.5)
    monkeypatch.setattr(contact, "CARRIED", share)
    touching = at({20: False}, True)
    answer = (at({20: -1.0}), at({}, 1.0))
    settled, free = guesses(monkeypatch, [answer], touching, contact.Scale(1.0, 1.0))
    assert settled[4] == passes == len(free)
