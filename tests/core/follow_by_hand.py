"""A ring being made with figures that a pencil can follow: what stands in for a settled design."""

from ringwright.core.catalogue.inputs_rings import NAMES
from ringwright.core.ring.design import settle
from ringwright.core.walk.follow import Ring
from ringwright.core.walk.plan import Made, Plan

# The wall is 3.3 thick; across a cut of sine 0.8, 1.2 is 1.5 along the ring.
PLAN = Plan(
    bore=90.0, turns=1, setting="spread", sine=0.8, relief=0.85, growth=1.0, modulus=98000.0,
    mean_share=1.0, bored=84.6, rough=91.2, length=4.6, slit=0.7, kerf=1.2, former=None,
    spacer=9.3, width=3.7, clamped_gap=0.42, bored_clamped=None, finish=90.1, closed_gap=0.35,
)  # fmt: skip

MADE = Made(
    thickness=2.93, width=3.7, closed_gap=0.37, before_dressing=0.31, dressed=0.06, free_gap=8.8,
    wall_pressure=0.05, closing_bore=90.9, clean_up=0.8, state=None,
)  # fmt: skip


def ring(design=None, plan=PLAN, relief=None, on_stick=False, **row):
    """A follow.Ring with limits of our own. row: what was measured."""
    d = design or settled()
    one = Ring(d, {**dict.fromkeys((*NAMES, "ring")), **row}, 7, "light", relief, on_stick)
    one.nominal = plan
    one.held = one.held._replace(clamped_gap=(0.2, 0.4), closed_gap=(0.28, 0.48))
    one.own = one.own._replace(
        thickness=(2.905, 2.96), width=(3.61, 3.74), closed_gap=(0.35, 0.6),
        wall_pressure=(0.04, 0.07),
    )  # fmt: skip
    one.largest, one.last = 0.6, 0.04
    return one


def settled(**more):
    d = settle({"bore": 90.0, "ring_type": "plain", "end_cut": "angled-60", **more})[0]
    return d._replace(
        section=d.section._replace(thickness=2.93, width=3.7),
        spring=d.spring._replace(gap_change=8.4, wall_pressure=0.055),
    )
