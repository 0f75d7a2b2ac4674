"""The words of the route card, operation by operation: what to hold and how, with what, what to do,
what to check, which cautions."""

from collections import OrderedDict

from .route_text_blank import BLANK_TEXT
from .route_text_ring import RING_TEXT

TEXT = OrderedDict(list(BLANK_TEXT.items()) + list(RING_TEXT.items()))
