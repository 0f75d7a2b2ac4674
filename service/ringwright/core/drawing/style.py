"""Sizes on paper: letters, arrows and the spacing of dimension lines. All mm.

Letter heights of ISO 3098, as open templates have them. Arrows three times as long as wide, as two
schools teach; their spacing (10 mm clear, 6 to 8 apart, 3 past) is closer here, for small sheets.
"""

LETTERS = 3.5
SMALL = 2.5
# From base line to base line over the height of a capital.
PITCH = 1.5
ARROW_LENGTH = 3.5
ARROW_HALF_WIDTH = 0.6
FIRST_RAIL = 8.0
RAIL_GAP = 2.5
# Between a dimension line and the words above it.
ABOVE_LINE = 1.0
# Extension lines: clear of the outline, and past the dimension line.
EXTENSION_CLEAR = 1.0
EXTENSION_PAST = 2.0
# Between words and whatever stands beside them.
CLEAR = 2.0
LEADER_REACH = 7.0
HATCH_SPACING = 2.5
