"""Sizes that a shop measures by: of a size that was worked out, the roundest that is near enough.

A chosen size is never further from what was worked out than a stated share, so none jumps by more
than twice that share while the bore grows. The steps divide one another, fractions of an inch and
thousandths apart: a larger size never comes of a smaller one.
"""

import math

from .wording import MM_PER_INCH

# Coarsest first [mm]. Inch: fractions as on a rule, then thousandths and the tenth of one.
METRIC = (0.5, 0.1, 0.05, 0.01, 0.005, 0.001)
INCH = tuple(
    [MM_PER_INCH * step for step in (0.25, 0.125, 0.0625, 0.03125, 0.015625, 0.005, 0.001, 1e-4)]
)
INCH_FEEDS = tuple([MM_PER_INCH * step for step in (0.001, 5e-4, 1e-4)])
# How far a chosen size may lie from what was worked out [1]: the section, for some stresses go by
# the fourth power of the thickness; and what is sawn off or left to face, which decides little.
NEAR = 0.005
ABOUT = 0.06
# What a job in inches gives in its sizes where it is not given, and how near.
INCH_SHARES = {
    "end_kerf": ABOUT,
    "slit_width": ABOUT,
    "facing_allowance": ABOUT,
    "finishing_allowance": 0.02,
    "table_grip": ABOUT,
    "parting_width": ABOUT,
    "end_facing": ABOUT,
    "chucking_piece": ABOUT,
    "saw_width": ABOUT,
    "usable_offcut": ABOUT,
}


def roundest(value, steps, share=NEAR):
    """The multiple of the coarsest step that lies within `share` of `value` [mm].

    value: above 0 [mm]. steps: coarsest first [mm]; where none is near enough, the last. share [1].
    """
    for step in steps:
        found = math.floor(value / step + 0.5) * step
        if abs(found - value) <= share * value:
            return found
    return max(found, step)


def in_inches(name, value):
    """What is taken for an input, as a job in inches has it [mm]. name: of the input."""
    share = INCH_SHARES.get(name)
    return value if share is None or not value else roundest(value, INCH, share)


def thickness(value, inch):
    """Thickness of a ring in a shop's sizes [mm]. value: worked out [mm]. inch, or metric."""
    return roundest(value, INCH if inch else METRIC[1 if value >= 5.0 else 2 :])


def width(value, inch):
    """Width of a ring in a shop's sizes [mm]. value: worked out [mm]. inch, or metric."""
    return roundest(value, INCH if inch else METRIC)


def over(value, inch):
    """The roundest width not below a value, at most 2 % above it [mm]. inch, or metric."""
    steps = INCH if inch else METRIC
    for step in steps:
        found = math.ceil(value / step - 1e-9) * step
        if found <= 1.02 * value:
            break
    return found


def up(value, metric_step, inch_step, inch):
    """The next multiple up of one step in either system [mm]. Steps [mm], [in]."""
    step = inch_step * MM_PER_INCH if inch else metric_step
    return math.ceil(value / step - 1e-9) * step
