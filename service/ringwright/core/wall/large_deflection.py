"""What is said where a ring springs further than its sums of small movement were checked."""

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
