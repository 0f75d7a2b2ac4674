"""What is said where a ring springs further than its sums of small movement were checked, or
further than they can settle.
"""

from ..problems import unworkable
from ..records import WATCH, Quantity, finding
from ..wording import percent
from .wall_contact import LARGEST_CHECKED


def findings(springiness, remedy):
    """List of at most one Finding. springiness: share of its curvature that the bore takes from
    the ring, 0 and more. remedy: text."""
    if springiness <= LARGEST_CHECKED:
        return []
    return [
        finding(
            "large-deflection",
            WATCH,
            "The bore takes %s of the ring's curvature; beyond %s these sums of small movement "
            "drift from the truth by more than 1 %%."
            % (percent(springiness), percent(LARGEST_CHECKED)),
            remedy,
            Quantity(springiness, "1"),
            Quantity(LARGEST_CHECKED, "1"),
        )
    ]


def unsettled(values, names):
    """The InputProblem of a contact with the wall that does not settle.

    values: checked inputs. names: those that may ask for it, the likeliest first; the last one is
    named where none was given.
    """
    given = [name for name in names if values.get(name) is not None]
    name = given[0] if given else names[-1]
    remedy = "give a smaller %s, or a larger radial_thickness" % name
    if name in _SHAPES:
        remedy = "look at the sizes of %s: they are far from round" % name
    return unworkable(name, "how so springy a ring bears on its wall cannot be worked out", remedy)


_SHAPES = ("bore_shape", "free_shape")
